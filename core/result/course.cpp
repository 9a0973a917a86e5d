#include "core/result/course.hpp"

#include <array>

namespace overwater {

namespace {

using Digits = Conventions::MolarMassDigits;
using Vapour = Conventions::Vapour;
using Unit = Conventions::VolumeUnit;
using enum StandardConditions;

constexpr Course course(std::string_view key, StandardConditions standard, Vapour vapour, UnitId pressure, Unit volume,
                        Digits digits, DecimalSign sign) {
    Course made{key, {}};
    Conventions& by = made.conventions;
    by.standard = standard;
    by.vapour = vapour;
    by.pressure_unit = pressure;
    by.volume_unit = volume;
    by.molar_mass_digits = digits;
    by.decimal_sign = sign;
    return made;
}

/// The volume as collected, compared with 24.0 L/mol "at room temperature and pressure".
constexpr Course room(Course made) {
    made.conventions.conversion = Conventions::Conversion::none;
    made.conventions.accepted = Conventions::Accepted::typed;
    made.accepted = 24.0;
    return made;
}

constexpr Course by_uncertainty(Course made) {
    made.conventions.headline = Conventions::Headline::uncertainty;
    return made;
}

constexpr DecimalSign point = DecimalSign::point;
constexpr DecimalSign comma = DecimalSign::comma;

// State, vapour, units and decimal sign are those that general-chemistry and school texts of the places named state; where
// they subtract the vapour in mmHg or torr, they look it up in a table to 0.1. The digits of a molar mass are those of the
// periodic tables in use there (from memory, but for 24 in British schools).
constexpr std::array all{
    // General chemistry in the United States, Japan's teacher handbook, the Philippines, Indonesia; with torr the first too.
    course("0C_1atm_mmHg", zero_celsius_1_atmosphere, Vapour::table, UnitId::millimetre_of_mercury, Unit::mL,
           Digits::abridged, point),
    course("0C_1atm_torr", zero_celsius_1_atmosphere, Vapour::table, UnitId::torr, Unit::mL, Digits::abridged, point),
    // Canadian texts of either state; universities in China, and Indonesia, with 1 atm.
    course("0C_1atm_kPa", zero_celsius_1_atmosphere, Vapour::formula, UnitId::kilopascal, Unit::mL, Digits::abridged, point),
    course("0C_100kPa_kPa", zero_celsius_100_kilopascal, Vapour::formula, UnitId::kilopascal, Unit::mL, Digits::abridged,
           point),
    // International diploma courses: 273 K and 100 kPa, every reading with its uncertainty.
    by_uncertainty(course("0C_100kPa_kPa_cm3", zero_celsius_100_kilopascal, Vapour::formula, UnitId::kilopascal, Unit::cm3,
                          Digits::two_decimals, point)),
    // British schools up to 16, with 24 dm³ and vapour ignored; above 16 there, and courses like it abroad.
    room(course("room_kPa_cm3_24", zero_celsius_100_kilopascal, Vapour::not_subtracted, UnitId::kilopascal, Unit::cm3,
                Digits::whole, point)),
    room(course("room_kPa_cm3", zero_celsius_100_kilopascal, Vapour::not_subtracted, UnitId::kilopascal, Unit::cm3,
                Digits::one_decimal, point)),
    // West Africa: s.t.p. 273 K and 1.01 × 10⁵ Pa.
    course("0C_1atm_Pa_cm3", zero_celsius_1_atmosphere, Vapour::formula, UnitId::pascal, Unit::cm3, Digits::whole, point),
    // Schools in China: 24.5 L at 25 °C and 101 kPa.
    course("25C_1atm_kPa_wet", twenty_five_celsius_1_atmosphere, Vapour::not_subtracted, UnitId::kilopascal, Unit::mL,
           Digits::whole, point),
    // Germany: 0 °C and 1013 hPa, or 24 l/mol at room temperature.
    course("0C_1atm_hPa_wet", zero_celsius_1_atmosphere, Vapour::not_subtracted, UnitId::hectopascal, Unit::mL,
           Digits::one_decimal, comma),
    room(course("room_hPa", zero_celsius_100_kilopascal, Vapour::not_subtracted, UnitId::hectopascal, Unit::mL,
                Digits::one_decimal, comma)),
    // France: 24,0 L/mol at 20 °C, 24,5 at 25 °C.
    course("20C_1atm_hPa_wet", twenty_celsius_1_atmosphere, Vapour::not_subtracted, UnitId::hectopascal, Unit::mL,
           Digits::one_decimal, comma),
    course("25C_1atm_hPa_wet", twenty_five_celsius_1_atmosphere, Vapour::not_subtracted, UnitId::hectopascal, Unit::mL,
           Digits::one_decimal, comma),
    // Spain, Latin America, Brazil; Latin America by hPa too.
    course("0C_1atm_mmHg_comma", zero_celsius_1_atmosphere, Vapour::table, UnitId::millimetre_of_mercury, Unit::mL,
           Digits::one_decimal, comma),
    course("0C_1atm_hPa", zero_celsius_1_atmosphere, Vapour::formula, UnitId::hectopascal, Unit::mL, Digits::one_decimal,
           comma),
    // Italy, where p V = n R T is reckoned in atm.
    course("0C_1atm_atm", zero_celsius_1_atmosphere, Vapour::formula, UnitId::atmosphere, Unit::mL, Digits::two_decimals,
           comma),
};

}  // namespace

std::span<const Course> courses() { return all; }

}  // namespace overwater
