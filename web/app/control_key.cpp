#include "web/app/control_key.hpp"

#include <algorithm>
#include <array>

namespace overwater {

namespace {

constexpr std::string_view prefix = "bench.";
/// In the order of `ControlPart`.
constexpr std::array<std::string_view, 7> part_names{"", ".unit", ".doubt", ".instrument", ".plus_minus", ".shape", ".repeat"};

}  // namespace

std::string key_of_control(Field field, ControlPart part, std::size_t repeat) {
    std::string key = key_of_control(field) + std::string(part_names[static_cast<std::size_t>(part)]);
    if (part == ControlPart::repeat) key += '.' + std::to_string(repeat);
    return key;
}

Field chooses_instrument(Field field) {
    return field == Field::tube_capacity || field == Field::start_reading ? Field::scale_reading : field;
}

ControlField field_of_control(std::string_view key) {
    ControlField control;
    if (!key.starts_with(prefix)) return control;
    key.remove_prefix(prefix.size());
    const std::string_view name = key.substr(0, key.find('.'));
    const auto found = std::find(field_names.begin(), field_names.end(), name);
    if (found == field_names.end()) return control;
    control.field = static_cast<Field>(found - field_names.begin());
    std::string_view part = key.substr(name.size());
    if (const std::size_t dot = part.rfind('.'); part.starts_with(".repeat.") && part.size() == dot + 2) {
        const char digit = part.back();
        if (digit >= '0' && digit <= '9') {
            control.repeat = static_cast<std::size_t>(digit - '0');
            part = part.substr(0, dot);
        }
    }
    const auto place = std::find(part_names.begin() + 1, part_names.end(), part);
    if (place != part_names.end()) control.part = static_cast<ControlPart>(place - part_names.begin());
    control.is_unit = control.part == ControlPart::unit;
    return control;
}

}  // namespace overwater
