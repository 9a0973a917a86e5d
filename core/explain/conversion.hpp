#pragma once

#include <string>

#include "core/bench/readings.hpp"
#include "core/explain/formula.hpp"
#include "core/result/conventions.hpp"

/// Readings are typed in the unit of the instrument; formulas are written in the units in which they work out. Between
/// the two stands one visible line.

namespace overwater {

/// The unit in which a measure enters a formula: g, m, mL, °C, mol/L, g/m, with cm³ and dm³ where conventions say so, and
/// for pressures the one given.
UnitId unit_in_formulas(Measure measure, UnitId pressure_unit, const Conventions& conventions);

/// Whether only the decimal sign moves between two units.
bool only_moves_the_point(UnitId from, UnitId to);

/// Decimals that a typed reading bears in another unit of its measure, 0 to 12: the same digits where only the decimal
/// sign moves, else its significant figures and one digit more.
int decimals_in(const Reading& reading, UnitId unit);

/// A number as it was written down, with its unit.
struct Written {
    std::string number;
    UnitId unit = UnitId::none;
};

/// "29.92 inHg = 29.92 × 3.386389 kPa = 101.32 kPa"; "112 mm = 0.112 m"; "1096 Pa = 1096/133.3224 mmHg = 8.221 mmHg";
/// "70.5 °F = (70.5 − 32)/1.8 °C = 21.39 °C". Factors are those of the unit table to seven digits.
Formula conversion_line(const Written& from, const Written& to, const Conventions& conventions);

/// A mass of water as the volume it fills: "2.34 g/(0.9979 g/mL) = 2.345 mL", or by cm³. `density` in kg/m³.
Formula water_weighed_line(const Written& mass, double density, const Written& volume, const Conventions& conventions);

}  // namespace overwater
