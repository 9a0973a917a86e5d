#pragma once

#include <cstdint>

namespace overwater {

/// Which end of the scale is at the closed end of the tube: the first question, which has no default.
enum class ClosedEnd : std::uint8_t {
    unknown,
    zero,    ///< measuring tube or cylinder: the reading is the gas volume
    largest  ///< upside-down burette: the scale counts from the open end
};

/// Where the liquid stands higher when the scale is read. Never taken as level without being told.
enum class LiquidStands : std::uint8_t { unknown, higher_inside, higher_outside, level };

/// How the mass of the metal was found.
enum class MassFrom : std::uint8_t { weighed, by_difference, ribbon };
/// Gas that was in the tube before the reaction.
enum class Start : std::uint8_t { nothing, reading, bubble };
/// What the barometer's number is: read at the bench, of a weather report, or the height of a mercury column as it stands.
enum class PressureKind : std::uint8_t { at_the_bench, altimeter_setting, reduced_to_sea_level, mercury_column };


}  // namespace overwater
