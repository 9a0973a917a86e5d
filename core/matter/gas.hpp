#pragma once

#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>

#include "core/matter/constants.hpp"
#include "core/quantity/choice_names.hpp"
#include "core/quantity/quantity.hpp"
#include "core/quantity/temperature.hpp"

/// The gas itself: how far it is from ideal, and how much of it water takes up.

namespace overwater {

/// Gases that are collected over water in schools. `other` is taken as ideal and as not dissolving.
enum class Gas : std::uint8_t { hydrogen, oxygen, carbon_dioxide, nitrogen, methane, helium, other };

inline constexpr std::size_t gas_count = 7;
/// Names in records and in the keys of messages.
inline constexpr std::array<std::string_view, gas_count> gas_names{"hydrogen", "oxygen", "carbon_dioxide", "nitrogen",
                                                                   "methane",  "helium", "other_gas"};
inline constexpr std::array<std::string_view, gas_count> gas_formulas{"H2", "O2", "CO2", "N2", "CH4", "He", "X"};

constexpr std::string_view formula_of(Gas gas) { return gas_formulas[static_cast<std::size_t>(gas)]; }

/// The gas with this name in records, or nothing.
constexpr std::optional<Gas> gas_by_key(std::string_view key) {
    return choice_named<Gas>(gas_names, key);
}

namespace gas_data {

struct Row {
    double b[3];        ///< cm³/mol: B = b0 + b1 x + b2 x², x = 298.15 K/T - 1
    double henry;       ///< mol/(m³ Pa) at 298.15 K: concentration in water over partial pressure; 0: not known
    double henry_slope; ///< K: -d ln H/d(1/T)
};

/// Virial coefficients, fitted to the zero-density limit of the reference equations of state between 273 and 313 K:
/// hydrogen Leachman 2009, oxygen Schmidt and Wagner 1985, carbon dioxide Span and Wagner 1996, nitrogen Span 2000,
/// methane Setzmann and Wagner 1991, helium Ortiz-Vega. The fit is within 0.01 cm³/mol; the sources' spread is 0.1
/// (helium) to 3 cm³/mol (carbon dioxide).
/// Henry's law: Sander, Compilation of Henry's law constants, v5.0.0 (2023); methane from IAPWS G7-04: 1.55e-3 and
/// 1.42e-3 mol/(L atm) at 20 and 25 °C.
inline constexpr std::array<Row, gas_count> rows{{
    {{14.541, -5.918, -2.390}, 7.8e-6, 530},
    {{-15.857, -63.170, -11.714}, 1.3e-5, 1500},
    {{-123.008, -282.978, -165.414}, 3.3e-4, 2350},
    {{-4.910, -57.881, -10.471}, 6.45e-6, 1300},
    {{-42.910, -113.593, -23.945}, 1.40e-5, 1530},
    {{11.844, 1.239, -1.414}, 0, 0},
    {{0, 0, 0}, 0, 0},
}};

constexpr const Row& of(Gas gas) { return rows[static_cast<std::size_t>(gas)]; }

}  // namespace gas_data

/// Second virial coefficient in m³/mol. Range: 273 to 313 K.
template <class Real>
constexpr Quantity<dimension::MolarVolume, Real> second_virial(Gas gas, Real kelvin) {
    const auto& b = gas_data::of(gas).b;
    const Real x = Real(298.15) / kelvin - Real(1.0);
    const Real cubic_centimetres = Real(b[0]) + x * (Real(b[1]) + x * Real(b[2]));
    return Quantity<dimension::MolarVolume, Real>::si(cubic_centimetres * Real(1e-6));
}

/// Compression factor Z = 1 + B p/(R T), cut after the second virial coefficient: at 1 atm the third adds less than 1e-6
/// for hydrogen and some 1e-5 for carbon dioxide. `kelvin` in K, `pressure` in Pa.
template <class Real>
constexpr Real compression_factor(Gas gas, Real kelvin, Real pressure) {
    return Real(1.0) + second_virial(gas, kelvin).si() * pressure / (Real(gas_constant.si()) * kelvin);
}

/// How many volumes of the gas, at its own temperature and whatever its pressure, one volume of water takes up until it is
/// saturated: H R T. `kelvin` from 273 to 323 K. Zero where it is not known.
inline double volumes_dissolved(Gas gas, double kelvin) {
    const gas_data::Row& row = gas_data::of(gas);
    return row.henry * std::exp(row.henry_slope * (1 / kelvin - 1 / 298.15)) * gas_constant.si() * kelvin;
}

}  // namespace overwater
