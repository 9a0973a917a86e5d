#pragma once

#include "core/quantity/quantity.hpp"
#include "core/quantity/temperature.hpp"

/// Mercury as it stands in a barometer. The density that defines the mmHg is a convention: see constants.hpp.

namespace overwater {

/// Density of mercury at 101.325 kPa, measured. At 0 °C it is 13 595.083 kg/m³.
/// Range: 0 to 100 °C.
/// Source: polynomial of Beattie et al. (1941) for the expansion, with 13 595.0828 kg/m³ at 0 °C. The value at 20 °C
/// agrees with Bettin and Fehlauer, Metrologia 41 (2004) S16, within 0.4 ppm.
template <class Real>
constexpr Quantity<dimension::Density, Real> mercury_density(Temperature<Real> temperature) {
    const Real t = temperature.in_celsius();
    const Real expansion =
        Real(1.0) + t * (Real(1.815868e-4) + t * (Real(5.4583e-9) + t * (Real(3.4980e-11) + t * Real(1.5558e-14))));
    return Quantity<dimension::Density, Real>::si(Real(13595.0828) / expansion);
}

} // namespace overwater
