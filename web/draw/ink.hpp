#pragma once

#include <cstdint>

namespace overwater {

/// Colours by what they are for; the values are a theme's (theme.hpp).
enum class Ink : std::uint8_t {
    paper,
    card,
    line,
    field_edge,
    text,
    soft,
    copper,
    copper_soft,
    liquid,
    liquid_edge,
    bucket,  ///< liquid around the tube, paler than the liquid inside
    gas,
    gas_hatch,
    warning,
    warning_paper,
    good,
    dry_bar,
    column_bar,
    vapour_bar,
    band,  ///< an interval on a number line
    count
};

enum class Face : std::uint8_t { regular, semibold, italic };

enum class Anchor : std::uint8_t { start, middle, end };

}  // namespace overwater
