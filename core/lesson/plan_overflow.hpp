#pragma once

#include "core/lesson/plan_model.hpp"

/// Whether the gas stays in the tube, with everything that may be off.

namespace overwater {

struct Overflow {
    enum class Level : std::uint8_t {
        fits,            ///< whatever may be off, also while the gas is warm
        warm,            ///< while the gas is still warm it may pass the last mark
        may_pass_scale,  ///< may stand beyond the last mark, where it cannot be read, but not leave the tube
        may_leave,       ///< may leave by the mouth
        passes_scale,    ///< cannot be read, even if nothing is off
        leaves           ///< leaves by the mouth, even if nothing is off
    };
    Level level = Level::fits;
    // Volumes of scale from the mark at the closed end, m³.
    double planned = 0;
    double upper = 0;          ///< with every doubt at its limit
    double warm = 0;           ///< planned, with gas still warm
    double holds = 0;          ///< to the last mark
    double mouth = 0;          ///< to the mouth
    double upper_volume = 0;   ///< m³ of gas at `upper`, end space included
    double u = 0;              ///< standard uncertainty of the fill
    double chance = 0;         ///< that it passes the last mark, 0 to 1: normal about the middle of the doubts
    double chance_leaves = 0;  ///< that it leaves by the mouth
};

/// How much warmer than the room the gas may be while the metal still reacts, in K. Common practice, no source: the
/// largest that is reported of gas read too early.
inline constexpr double still_warm = 10;

/// `sheet` holds the expected readings, with the half-widths of the guesses at temperature and barometer.
Overflow overflow_of(const Entries& sheet, const Conventions& by_nature, bool hangs, double mouth_space);

}  // namespace overwater
