#pragma once

#include <vector>

#include "web/draw/picture.hpp"

namespace overwater {

/// Width of the thumb in px; the page's real one (shell/style.css) is as wide, or the pointer would not take hold of it.
inline constexpr float slider_thumb = 24;

/// The middle of the thumb from the slider's left edge where the value is `share` (0 to 1) of the way from its lowest
/// to its highest: half a thumb is left at either end.
float slider_place(double share, float width);

struct SliderLook {
    double share = 0;   ///< of the way; held between 0 and 1, not a number as 0
    double origin = 0;  ///< where nothing is: the track is coloured from here to the thumb
    std::vector<double> marks;  ///< strokes below the track
    bool hot = false;           ///< pointed at, or with the focus
};

/// Track and thumb of a slider, halfway down its height.
Picture draw_slider(const SliderLook& look, float width, float height);

}  // namespace overwater
