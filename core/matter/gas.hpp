#pragma once

#include "core/matter/constants.hpp"
#include "core/quantity/quantity.hpp"
#include "core/quantity/temperature.hpp"

/// The gas itself: how far hydrogen is from ideal.

namespace overwater {

/// Second virial coefficient of hydrogen in m³/mol.
/// Range: 273 to 313 K, within 0.0002 cm³/mol of the reference equation of state (Leachman et al., J. Phys. Chem. Ref.
/// Data 38 (2009) 721, zero-density limit); the sources' spread is 0.6 cm³/mol.
/// Form: B = b0 + b1 x + b2 x², x = 298.15 K/T - 1.
template <class Real>
constexpr Quantity<dimension::MolarVolume, Real> second_virial_hydrogen(Real kelvin) {
    const Real x = Real(298.15) / kelvin - Real(1.0);
    const Real cubic_centimetres = Real(14.541) + x * (Real(-5.918) + x * Real(-2.390));
    return Quantity<dimension::MolarVolume, Real>::si(cubic_centimetres * Real(1e-6));
}

/// Compression factor Z = 1 + B p/(R T) of hydrogen, cut after the second virial coefficient: at 1 atm the third adds
/// less than 1e-6. `kelvin` in K, `pressure` in Pa.
template <class Real>
constexpr Real compression_factor_hydrogen(Real kelvin, Real pressure) {
    return Real(1.0) + second_virial_hydrogen(kelvin).si() * pressure / (Real(gas_constant.si()) * kelvin);
}

}  // namespace overwater
