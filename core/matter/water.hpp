#pragma once

#include <cmath>

#include "core/quantity/quantity.hpp"
#include "core/quantity/temperature.hpp"

/// Water as it stands in the tube: its vapour pressure and its density. Both formulas use + - * / and a square root
/// only, and never branch on a number, so that they serve sensitivities, packs of trials and traced expressions alike.

namespace overwater {

/// A span of Celsius temperatures, both ends included.
struct CelsiusRange {
    double lowest;
    double highest;
    constexpr bool contains(double celsius) const { return celsius >= lowest && celsius <= highest; }
};

/// Where `water_vapour_pressure` is used here. The standard itself goes from 0 °C to 373.946 °C.
inline constexpr CelsiusRange water_vapour_pressure_range{0.0, 100.0};
/// Where `water_density` holds.
inline constexpr CelsiusRange water_density_range{0.0, 40.0};

/// Saturation vapour pressure of water over the liquid.
/// Range: 0 to 100 °C. Outside it the number is an extrapolation; the caller checks.
/// Source: IAPWS R7-97(2012), Industrial Formulation 1997, region 4, Eq. 30 with the coefficients of Table 34. Within
/// 0.01 % of the Wagner-Pruss equation (IAPWS SR1-86(1992)) from 0 to 100 °C.
template <class Real>
Quantity<dimension::Pressure, Real> water_vapour_pressure(Temperature<Real> temperature) {
    using std::sqrt;
    const Real kelvin = temperature.in_kelvin();
    const Real theta = kelvin + Real(-0.23855557567849) / (kelvin - Real(0.65017534844798E3));
    const Real square = theta * theta;
    const Real a = square + Real(0.11670521452767E4) * theta + Real(-0.72421316703206E6);
    const Real b = Real(-0.17073846940092E2) * square + Real(0.12020824702470E5) * theta + Real(-0.32325550322333E7);
    const Real c = Real(0.14915108613530E2) * square + Real(-0.48232657361591E4) * theta + Real(0.40511340542057E6);
    const Real root = Real(2.0) * c / (sqrt(b * b - Real(4.0) * a * c) - b);
    const Real root_squared = root * root;
    const Real megapascal = root_squared * root_squared;
    return Quantity<dimension::Pressure, Real>::si(megapascal * Real(1e6));
}

/// Density of air-free water at 101.325 kPa. Air dissolved in it lowers the density by some 0.003 kg/m³ (from memory).
/// Range: 0 to 40 °C. Outside it the number is an extrapolation; the caller checks.
/// Source: CIPM 2001: Tanaka, Girard, Davis, Peuto and Bignell, Metrologia 38 (2001) 301, Table 1.
template <class Real>
constexpr Quantity<dimension::Density, Real> water_density(Temperature<Real> temperature) {
    const Real celsius = temperature.in_celsius();
    const Real from_greatest = celsius + Real(-3.983035);
    const Real share =
        from_greatest * from_greatest * (celsius + Real(301.797)) / (Real(522528.9) * (celsius + Real(69.34881)));
    return Quantity<dimension::Density, Real>::si(Real(999.974950) * (Real(1.0) - share));
}

} // namespace overwater
