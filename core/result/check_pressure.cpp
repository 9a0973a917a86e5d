#include <array>
#include <cmath>

#include "core/matter/air.hpp"
#include "core/matter/constants.hpp"
#include "core/quantity/units.hpp"
#include "core/result/sense_checks.hpp"

/// The barometer, and the height above sea level that must go with it.

namespace overwater {

namespace {

/// Pressures of the air at a bench (method.md, section 2).
constexpr double lowest_air = 45 * kilopascal.factor;
constexpr double highest_air = 108.5 * kilopascal.factor;
/// At sea level no air was ever thinner (870 hPa, typhoon Tip, 1979).
constexpr double lowest_at_sea_level = 87 * kilopascal.factor;
/// As far as weather lifts the air pressure above that of the standard atmosphere.
constexpr double weather = 4 * kilopascal.factor;
constexpr double lowest_bench = -430;  ///< m, the shore of the Dead Sea
constexpr double highest_bench = 5500;

/// The standard atmosphere at a height in m (standards.md, section 6.3).
double usual_pressure(double height) {
    return standard_atmosphere.si() *
           std::pow(1 - atmosphere_lapse_rate * height / atmosphere_sea_level_kelvin, atmosphere_exponent);
}

bool is_near(double pressure, double height, double distance = weather) {
    return std::fabs(pressure - usual_pressure(height)) <= distance;
}

/// 1013, 1013.25, 760, 101.3, 101.325, 29.92, 1 atm: the numbers that stand in books.
bool is_a_book_value(double pressure) {
    constexpr std::array books{1013 * hectopascal.factor, standard_atmosphere.si(), 760 * torr.factor,
                               760 * millimetre_of_mercury.factor, 29.92 * inch_of_mercury.factor};
    for (const double book : books) {
        if (std::fabs(pressure / book - 1) < 1e-9) return true;
    }
    return false;
}

void thousands(Remarks& remarks, Field field) {
    const Reading& reading = remarks.reading(field);
    remarks.doubt(field,
                  as_typed("check.comma_thousands", reading).quantity("other", 1000 * reading.base, reading.unit, 0));
}

/// Whether the number can be a pressure of the air at all; if not, says so.
bool is_air(Remarks& remarks) {
    const Reading& reading = remarks.reading(Field::barometer);
    if (within(reading.base, lowest_air, highest_air)) return true;
    if (reading.number.comma_before_three_digits && within(1000 * reading.base, lowest_air, highest_air)) {
        thousands(remarks, Field::barometer);
        return false;
    }
    const auto units = units_that_fit(reading, lowest_air, highest_air);
    if (units.empty()) {
        remarks.doubt(Field::barometer, as_typed("check.pressure_impossible", reading)
                                            .figures("lowest", lowest_air, reading.unit, 4)
                                            .figures("highest", highest_air, reading.unit, 4));
    } else {
        remarks.doubt(Field::barometer, as_typed("check.pressure_unit", reading).text("units", signs_of(units)));
    }
    return false;
}

/// Whether a height is typed that a bench can have; if it cannot, says so.
bool is_height(Remarks& remarks) {
    if (!remarks.usable(Field::height_above_sea_level)) return false;
    const Reading& reading = remarks.reading(Field::height_above_sea_level);
    // Nobody knows a height to the millimetre.
    if (reading.number.comma_before_three_digits) {
        thousands(remarks, Field::height_above_sea_level);
        return false;
    }
    if (within(reading.base, lowest_bench, highest_bench)) return true;
    remarks.doubt(Field::height_above_sea_level, as_typed("check.height", reading));
    return false;
}

/// 748 hPa is what one gets who chooses the wrong unit for 748 mmHg; it is also the air 2400 m up.
void millimetres_of_mercury(Remarks& remarks, bool height_fits) {
    const Reading& reading = remarks.reading(Field::barometer);
    if (reading.unit != UnitId::hectopascal && reading.unit != UnitId::millibar) return;
    if (!within(reading.number.value, 700, 790) || height_fits) return;
    remarks.doubt(Field::barometer, as_typed("check.pressure_mmhg", reading));
}

/// A pressure read at a bench, against the height typed for it.
void at_height(Remarks& remarks) {
    const Reading& reading = remarks.reading(Field::barometer);
    const Reading& height = remarks.reading(Field::height_above_sea_level);
    const double usual = usual_pressure(height.base);
    if (reading.base <= usual + weather) return;
    const double in_feet = to_base(height.number.value, UnitId::foot);
    if (height.unit == UnitId::metre && in_feet > lowest_bench && is_near(reading.base, in_feet, weather / 2) &&
        !is_near(reading.base, 0)) {
        remarks.doubt(Field::height_above_sea_level,
                      as_typed("check.height_in_feet", height)
                          .figures("usual", usual, reading.unit, 3)
                          .quantity("pressure", reading.base, reading.unit, decimals_of(reading))
                          .quantity("other", in_feet, UnitId::foot, decimals_of(height)));
        return;
    }
    remarks.doubt(Field::barometer, as_typed("check.sea_level_in_high_place", reading)
                                        .figures("usual", usual, reading.unit, 3)
                                        .quantity("height", height.base, height.unit, decimals_of(height)));
}

}  // namespace

void check_pressure(Remarks& remarks) {
    const bool height = is_height(remarks);
    if (!remarks.usable(Field::barometer) || !is_air(remarks)) return;
    const Reading& reading = remarks.reading(Field::barometer);
    if (is_a_book_value(reading.base)) { remarks.doubt(Field::barometer, as_typed("check.pressure_assumed", reading)); }
    const PressureKind kind = remarks.setup().pressure_kind;
    if (kind == PressureKind::altimeter_setting || kind == PressureKind::reduced_to_sea_level) {
        if (reading.base < lowest_at_sea_level) {
            remarks.doubt(Field::barometer, as_typed("check.report_too_low", reading));
        }
        return;
    }
    millimetres_of_mercury(remarks, height && is_near(reading.base, remarks.base(Field::height_above_sea_level)));
    if (height) at_height(remarks);
}

}  // namespace overwater
