#pragma once

#include <string>
#include <string_view>

#include "core/bench/field.hpp"

namespace overwater {

/// The fixed key of a reading's control: bench.scale_reading; that of its unit ends in .unit.
inline std::string key_of_control(Field field) { return "bench." + std::string(name_of(field)); }

struct ControlField {
    Field field = Field::count;  ///< count: the key is of no reading
    bool is_unit = false;
};

/// The reading a control's key belongs to. Radio buttons have their value behind the field's name.
inline ControlField field_of_control(std::string_view key) {
    constexpr std::string_view prefix = "bench.";
    if (!key.starts_with(prefix)) return {};
    key.remove_prefix(prefix.size());
    const std::size_t dot = key.find('.');
    const std::string_view name = key.substr(0, dot);
    for (std::size_t i = 0; i < field_count; ++i) {
        if (field_names[i] == name) {
            return {static_cast<Field>(i), dot != std::string_view::npos && key.substr(dot) == ".unit"};
        }
    }
    return {};
}

}  // namespace overwater
