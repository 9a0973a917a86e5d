#pragma once

#include "core/quantity/quantity.hpp"

/// The units by name, for code. What a person types or chooses is in unit_table.hpp.

namespace overwater {

inline constexpr Unit<dimension::Mass> kilogram{1.0};
inline constexpr Unit<dimension::Mass> gram{1e-3};
inline constexpr Unit<dimension::Mass> milligram{1e-6};

inline constexpr Unit<dimension::Length> metre{1.0};
inline constexpr Unit<dimension::Length> centimetre{1e-2};
inline constexpr Unit<dimension::Length> millimetre{1e-3};
/// 25.4 mm, exact (NIST SP 811, Appendix B.8).
inline constexpr Unit<dimension::Length> inch{0.0254};

inline constexpr Unit<dimension::Volume> cubic_metre{1.0};
inline constexpr Unit<dimension::Volume> litre{1e-3};
inline constexpr Unit<dimension::Volume> millilitre{1e-6};
inline constexpr Unit<dimension::Volume> microlitre{1e-9};

inline constexpr Unit<dimension::Pressure> pascal{1.0};
inline constexpr Unit<dimension::Pressure> hectopascal{1e2};
inline constexpr Unit<dimension::Pressure> kilopascal{1e3};
inline constexpr Unit<dimension::Pressure> millibar{1e2};
inline constexpr Unit<dimension::Pressure> bar{1e5};
/// 101 325 Pa, exact (NIST SP 811, Appendix B.8).
inline constexpr Unit<dimension::Pressure> atmosphere{101325.0};
/// 101 325/760 Pa, exact (NIST SP 811 prints 1.333 224E+02).
inline constexpr Unit<dimension::Pressure> torr{101325.0 / 760.0};
/// Conventional millimetre of mercury: 13 595.1 kg/m³ x 9.806 65 m/s² x 1 mm (NIST SP 811, Appendix B.8).
inline constexpr Unit<dimension::Pressure> millimetre_of_mercury{13595.1 * 9.80665 * 1e-3};
/// Conventional inch of mercury: 25.4 conventional millimetres (NIST SP 811 prints 3.386 389E+03).
inline constexpr Unit<dimension::Pressure> inch_of_mercury{13595.1 * 9.80665 * 0.0254};
/// Pound-force per square inch: 0.453 592 37 kg x 9.806 65 m/s² / (0.0254 m)² (NIST SP 811 prints 6.894 757E+03).
inline constexpr Unit<dimension::Pressure> pound_per_square_inch{0.45359237 * 9.80665 / (0.0254 * 0.0254)};

inline constexpr Unit<dimension::Density> kilogram_per_cubic_metre{1.0};
inline constexpr Unit<dimension::Density> gram_per_millilitre{1e3};

inline constexpr Unit<dimension::Amount> mole{1.0};
inline constexpr Unit<dimension::Amount> millimole{1e-3};

inline constexpr Unit<dimension::MolarMass> gram_per_mole{1e-3};
inline constexpr Unit<dimension::MolarVolume> litre_per_mole{1e-3};
inline constexpr Unit<dimension::Concentration> mole_per_litre{1e3};
inline constexpr Unit<dimension::LinearDensity> gram_per_metre{1e-3};
inline constexpr Unit<dimension::MolarEntropy> joule_per_mole_kelvin{1.0};
inline constexpr Unit<dimension::Acceleration> metre_per_second_squared{1.0};

}  // namespace overwater
