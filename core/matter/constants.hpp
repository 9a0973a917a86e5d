#pragma once

#include "core/quantity/quantity.hpp"

/// Constants, apart by what they rest on. 273.15 stands in quantity/temperature.hpp; units of pressure in
/// quantity/units.hpp; what is measured of water and mercury in water.hpp and mercury.hpp.

namespace overwater {

// Exact: by the definition of the SI units since 2019 (CODATA 2018 and 2022).

/// Avogadro constant in 1/mol, exact.
inline constexpr double avogadro_constant = 6.02214076e23;
/// Boltzmann constant in J/K, exact.
inline constexpr double boltzmann_constant = 1.380649e-23;
/// Molar gas constant, the product of the two, exact (CODATA 2022: 8.314 462 618... J/(mol K)).
inline constexpr GasConstant gas_constant = GasConstant::si(8.31446261815324);

// Exact by convention.

/// Standard acceleration of free fall (CODATA 2022, adopted value; 3rd CGPM, 1901).
inline constexpr Acceleration standard_gravity = Acceleration::si(9.80665);
/// Standard atmosphere (CODATA 2022, adopted value; 10th CGPM, 1954).
inline constexpr Pressure standard_atmosphere = Pressure::si(101325.0);
/// Standard-state pressure (CODATA 2022, adopted value; IUPAC since 1982).
inline constexpr Pressure standard_state_pressure = Pressure::si(100000.0);
/// Density of mercury that defines the conventional millimetre of mercury (NIST SP 811 (2008), Appendix B.8). Not the
/// density of any mercury at room temperature.
inline constexpr Density conventional_mercury_density = Density::si(13595.1);

} // namespace overwater
