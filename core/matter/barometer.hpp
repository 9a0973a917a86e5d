#pragma once

#include <cmath>

#include "core/matter/constants.hpp"

/// What a column of mercury in a brass scale says of the pressure. A mmHg is defined with mercury of 0 °C and the standard
/// acceleration of free fall, so a barometer's reading is brought to both.

namespace overwater {

/// Cubic expansion of mercury and linear expansion of brass, 1/K: the constants that reproduce the temperature table of
/// the CRC Handbook (750 to 770 mm, 20 to 23 °C) within 0.005 mm.
inline constexpr double mercury_expansion = 1.818e-4;
inline constexpr double brass_expansion = 1.84e-5;

/// Factor by which a height of mercury, read on a brass scale that is true at 0 °C, is brought to mercury of 0 °C:
/// 1 - (a - b) t/(1 + a t). Range: -10 to 50 °C. Source: form of WMO-No. 8, Part I, chapter 3 (from memory), checked
/// against the CRC Handbook's table.
constexpr double mercury_to_zero(double celsius) {
    return 1 - (mercury_expansion - brass_expansion) * celsius / (1 + mercury_expansion * celsius);
}

/// Local acceleration of free fall in m/s². `latitude` in degrees, -90 to 90; `height` above sea level in m, to 5500.
/// Source: National Physical Laboratory's note on local gravity (International Gravity Formula 1980 and the free-air
/// gradient), stated within 5e-5 m/s² for most places.
inline double local_gravity(double latitude, double height) {
    const double radian = latitude * 3.14159265358979323846 / 180;
    const double sine = std::sin(radian);
    const double twice = std::sin(2 * radian);
    return 9.780327 * (1 + 0.0053024 * sine * sine - 0.0000058 * twice * twice) - 3.086e-6 * height;
}

/// Factor by which a height of mercury (or of water) under the local gravity is brought to the standard one.
inline double gravity_to_standard(double latitude, double height) {
    return local_gravity(latitude, height) / standard_gravity.si();
}

}  // namespace overwater
