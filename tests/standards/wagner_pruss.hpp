#pragma once

#include <cmath>

/// Reference formulas for tests only; the product has one formula for each thing.

namespace overwater::reference {

/// Saturation vapour pressure of water in Pa at `kelvin`, 273.16 to 647.096 K.
/// Source: IAPWS SR1-86(1992), Eq. 1; Wagner and Pruss, J. Phys. Chem. Ref. Data 22 (1993) 783.
inline double wagner_pruss_vapour_pressure(double kelvin) {
    const double critical_temperature = 647.096;
    const double critical_pressure = 22.064e6;
    const double v = 1.0 - kelvin / critical_temperature;
    const double sum = -7.85951783 * v + 1.84408259 * std::pow(v, 1.5) - 11.7866497 * std::pow(v, 3.0) +
                       22.6807411 * std::pow(v, 3.5) - 15.9618719 * std::pow(v, 4.0) + 1.80122502 * std::pow(v, 7.5);
    return critical_pressure * std::exp(critical_temperature / kelvin * sum);
}

} // namespace overwater::reference
