#include "core/result/sense_checks.hpp"

#include <algorithm>

namespace overwater {

bool Remarks::usable(Field field) const {
    if (!typed(field)) return false;
    return std::none_of(all_.checks.begin(), all_.checks.end(), [field](const Check& check) {
        return check.field == field && check.weight == Check::Weight::refusal;
    });
}

bool Remarks::said(std::string_view key) const {
    return std::any_of(all_.checks.begin(), all_.checks.end(),
                       [key](const Check& check) { return check.message.key == key; });
}

int decimals_of(const Reading& reading) { return std::clamp(-reading.last_place, 0, 6); }

Message as_typed(std::string_view key, const Reading& reading) {
    Message message{key};
    message.quantity("reading", reading.base, reading.unit, decimals_of(reading));
    return message;
}

std::vector<UnitId> units_that_fit(const Reading& reading, double lowest, double highest) {
    std::vector<UnitId> fitting;
    for (const UnitId unit : units_of(info(reading.unit).measure)) {
        if (unit == reading.unit) continue;
        if (within(to_base(reading.number.value, unit), lowest, highest)) fitting.push_back(unit);
    }
    return fitting;
}

std::string signs_of(const std::vector<UnitId>& units) {
    std::string signs;
    for (const UnitId unit : units) {
        if (!signs.empty()) {
            signs += ',';
            signs += ' ';
        }
        signs += info(unit).symbol;
    }
    return signs;
}

Field field_of_mass(const Setup& setup) {
    switch (setup.mass_from) {
    case MassFrom::by_difference: return Field::mass_after;
    case MassFrom::ribbon: return Field::ribbon_length;
    case MassFrom::weighed: break;
    }
    return Field::mass_of_metal;
}

void add_sense_checks(Assessment& assessment) {
    Remarks remarks(assessment);
    check_vessel(remarks);
    // What was typed for a tube is kept, and nothing is said of it where there is none.
    const bool on_scale = has_scale(remarks.setup());
    const bool column = has_column(remarks.setup());
    if (on_scale) check_scale(remarks);
    if (column) check_end_space(remarks);
    if (on_scale) check_start(remarks);
    if (column) check_level(remarks);
    check_temperature(remarks);
    check_pressure(remarks);
    check_vapour(remarks);
    check_metal(remarks);
    check_digits(remarks);
    check_mass(remarks);
    check_acid(remarks);
    // It looks for a cause only where none was named above.
    check_result(remarks);
    check_doubt(remarks);
}

}  // namespace overwater
