#pragma once

#include <array>
#include <cstdint>
#include <string_view>

#include "core/quantity/number_format.hpp"
#include "core/quantity/quantity.hpp"
#include "core/quantity/temperature.hpp"
#include "core/quantity/unit_table.hpp"

/// The teacher's choices, which travel with every record (design, section 4).

namespace overwater {

enum class StandardConditions : std::uint8_t {
    zero_celsius_100_kilopascal,
    zero_celsius_1_atmosphere,
    twenty_celsius_1_atmosphere,
    twenty_five_celsius_100_kilopascal,
    twenty_five_celsius_1_atmosphere,
    own,
    count
};

/// Names in records and in the keys of messages and controls.
inline constexpr std::array<std::string_view, 6> standard_conditions_names{"0C_100kPa",  "0C_1atm", "20C_1atm",
                                                                           "25C_100kPa", "25C_1atm", "own"};

struct Conventions {
    enum class MolarMassDigits : std::uint8_t { abridged, two_decimals, one_decimal, whole };
    enum class Vapour : std::uint8_t { formula, table, older_table, own_value, not_subtracted };
    enum class VapourRows : std::uint8_t { interpolated, nearest };
    enum class Round : std::uint8_t { at_the_end, at_each_step };
    enum class Conversion : std::uint8_t { standard_conditions, none };
    enum class Accepted : std::uint8_t { ideal, real, typed };
    enum class PercentError : std::uint8_t { with_sign, magnitude };
    enum class Answers : std::uint8_t { live, after_attempt, hidden };
    enum class Headline : std::uint8_t { figures, uncertainty };
    enum class VolumeUnit : std::uint8_t { mL, cm3 };

    StandardConditions standard = StandardConditions::zero_celsius_100_kilopascal;
    double own_celsius = 0.0;         ///< °C, of own standard conditions
    double own_pressure = 100000.0;   ///< Pa, of own standard conditions
    MolarMassDigits molar_mass_digits = MolarMassDigits::abridged;
    Vapour vapour = Vapour::formula;
    VapourRows vapour_rows = VapourRows::interpolated;
    Round round = Round::at_the_end;
    Rounding rounding = Rounding::half_up;
    DecimalSign decimal_sign = DecimalSign::point;
    UnitId pressure_unit = UnitId::none;  ///< none: as the barometer was typed
    Conversion conversion = Conversion::standard_conditions;
    Accepted accepted = Accepted::ideal;
    PercentError percent_error = PercentError::with_sign;
    Answers answers = Answers::live;
    Headline headline = Headline::figures;
    VolumeUnit volume_unit = VolumeUnit::mL;

    friend bool operator==(const Conventions&, const Conventions&) = default;
};

/// The temperature and the pressure to which a volume is converted.
struct StandardState {
    Temperature<> temperature;
    Pressure pressure;
};

/// 0 °C and 100 kPa (IUPAC since 1982), 0 °C and 1 atm (before, and many classes still), 20 and 25 °C as named.
StandardState standard_state(const Conventions& conventions);

/// The unit that says the same by the name which conventions give it: cm³ for mL, dm³ for L, alone, per mole and below an
/// amount. Numbers do not change: 1 mL is 1 cm³ exactly (12th CGPM, 1964).
UnitId named_unit(UnitId unit, Conventions::VolumeUnit by);

}  // namespace overwater
