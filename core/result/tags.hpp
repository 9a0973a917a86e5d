#pragma once

#include <cstdint>

#include "core/result/outcome.hpp"

/// Tags by which the model says what a number is. Only the traced number type listens; for all others they cost nothing.

namespace overwater {

/// Exact numbers of the formulas.
enum class Constant : std::uint8_t {
    celsius_zero,          ///< 273.15
    standard_temperature,  ///< kelvin, by convention
    standard_pressure,     ///< pascal, by convention
    molar_gas_constant,
    pressure_at_sea_level,  ///< pascal, at sea level in the standard atmosphere
    sea_level_temperature,  ///< kelvin, there
    lapse_rate,             ///< kelvin a metre, there
    air_gas_constant,       ///< J/(kg K), of dry air
    free_fall,              ///< m/s², standard
    two,                    ///< a plain 2 of a formula
    gas_per_sample,   ///< mole ratio
    acid_per_sample,  ///< mole ratio
    hundred_percent,  ///< 1
    level_column,  ///< 0 Pa: inside and outside stand level
    mercury_to_zero,      ///< factor to mercury of 0 °C
    gravity_to_standard,  ///< factor to the standard acceleration of free fall
    second_molar_mass,    ///< kg/mol, of the other metal of an alloy
    gas_per_second,       ///< its mole ratio
    known_value,          ///< what another last line than the molar volume is compared with
    none
};

/// What one would look up in a table: shown as a value with its argument, not as a formula of its own.
enum class Function : std::uint8_t {
    water_vapour_pressure,
    water_density,
    vapour_table,       ///< a class's table, or a value looked up by the person
    compression_factor  ///< Z = 1 + B p/(R T)
};

/// `like` is any number of the computation: a traced constant is recorded in its trace.
template <class Real>
constexpr Real constant(const Real& /*like*/, Constant, double value) {
    return Real(value);
}

template <class Real>
constexpr Real named_step(Output, Real value) {
    return value;
}

/// A number that a person wrote down otherwise than it was: rounded, cut, with a sign lost.
constexpr double rewritten(double value, double (*write)(double)) { return write(value); }

template <class Real>
constexpr Real looked_up(Function, const Real& /*argument*/, Real value) {
    return value;
}

}  // namespace overwater
