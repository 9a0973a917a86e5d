#include <cmath>

#include "core/matter/water.hpp"
#include "core/result/sense_checks.hpp"

/// A vapour pressure that a person looked up: of another temperature, or in another unit.

namespace overwater {

namespace {

/// Temperatures nearer than this are the same row of a table; K.
constexpr double same_row = 1.0;

double vapour_at(double celsius) { return water_vapour_pressure(Temperature<>::celsius(celsius)).si(); }

/// Where water has this vapour pressure: the formula, which rises all the way, inverted by halving; °C, to the nearest
/// end where the pressure is outside 0 to 100 °C.
double celsius_with(double pressure) {
    double low = water_vapour_pressure_range.lowest;
    double high = water_vapour_pressure_range.highest;
    for (int step = 0; step < 40; ++step) {
        const double middle = (low + high) / 2;
        (vapour_at(middle) < pressure ? low : high) = middle;
    }
    return (low + high) / 2;
}

bool is_water(double pressure) {
    return within(pressure, vapour_at(water_vapour_pressure_range.lowest),
                  vapour_at(water_vapour_pressure_range.highest));
}

/// Whether the number is water's at `celsius`, in `unit`, within its own rounding and a row of the table.
bool fits(const Reading& reading, UnitId unit, double celsius) {
    const double half = std::pow(10.0, reading.last_place) / 2;
    const double lowest = to_base(reading.number.value - half, unit);
    const double highest = to_base(reading.number.value + half, unit);
    return highest > vapour_at(celsius - same_row) && lowest < vapour_at(celsius + same_row);
}

Message with_temperature(std::string_view key, const Reading& vapour, const Reading& temperature) {
    Message message{key};
    message.quantity("reading", vapour.base, vapour.unit, decimals_of(vapour));
    message.quantity("temperature", temperature.base, temperature.unit, decimals_of(temperature));
    return message;
}

}  // namespace

void check_vapour(Remarks& remarks) {
    if (remarks.setup().vapour == VapourFrom::none) return;
    const Conventions& conventions = remarks.run().conventions;
    if (conventions.vapour == Conventions::Vapour::not_subtracted && remarks.typed(Field::barometer)) {
        remarks.note(Field::barometer, Message{"note.vapour_not_subtracted"});
    }
    if (conventions.vapour != Conventions::Vapour::own_value) return;
    if (!remarks.usable(Field::own_vapour_pressure) || !remarks.usable(Field::temperature)) return;
    const Reading& reading = remarks.reading(Field::own_vapour_pressure);
    const Reading& temperature = remarks.reading(Field::temperature);
    if (fits(reading, reading.unit, temperature.base)) return;
    std::vector<UnitId> units;
    for (const UnitId unit : units_of(Measure::pressure)) {
        if (unit != reading.unit && fits(reading, unit, temperature.base)) units.push_back(unit);
    }
    if (!units.empty()) {
        remarks.doubt(Field::own_vapour_pressure,
                      with_temperature("check.vapour_unit", reading, temperature).text("units", signs_of(units)));
    } else if (is_water(reading.base)) {
        remarks.doubt(Field::own_vapour_pressure,
                      with_temperature("check.vapour_of_other_temperature", reading, temperature)
                          .quantity("other", celsius_with(reading.base), temperature.unit, 1));
    } else {
        remarks.doubt(Field::own_vapour_pressure, with_temperature("check.vapour_impossible", reading, temperature)
                                                      .figures("usual", vapour_at(temperature.base), reading.unit, 3));
    }
}

}  // namespace overwater
