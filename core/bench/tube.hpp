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

}  // namespace overwater
