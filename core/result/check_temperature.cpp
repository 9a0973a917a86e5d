#include "core/result/sense_checks.hpp"

/// Temperatures no room has, and those typed in another unit.

namespace overwater {

namespace {

/// A room in which a class works; °C. Whoever takes one unit for another lands far outside.
constexpr double coolest_class = 15;
constexpr double warmest_class = 30;

}  // namespace

void check_temperature(Remarks& remarks) {
    if (remarks.typed(Field::outdoor_temperature) && !within(remarks.base(Field::outdoor_temperature), -50, 50)) {
        remarks.doubt(Field::outdoor_temperature,
                      as_typed("check.outdoor_temperature", remarks.reading(Field::outdoor_temperature)));
    }
    if (!remarks.typed(Field::temperature)) return;
    const Reading& reading = remarks.reading(Field::temperature);
    if (within(reading.base, 10, 35)) return;
    const auto other = units_that_fit(reading, coolest_class, warmest_class);
    if (!other.empty()) {
        remarks.doubt(Field::temperature, as_typed("check.temperature_unit", reading)
                                              .quantity("other", to_base(reading.number.value, other.front()),
                                                        other.front(), decimals_of(reading)));
        return;
    }
    if (!remarks.usable(Field::temperature)) return;
    if (!within(reading.base, 0, 50)) {
        remarks.doubt(Field::temperature, as_typed("check.temperature_far", reading));
    } else {
        remarks.note(Field::temperature, as_typed("note.temperature_not_room", reading));
    }
}

}  // namespace overwater
