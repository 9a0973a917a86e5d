#pragma once

#include <string>
#include <vector>

#include "web/draw/picture.hpp"

namespace overwater {

/// Half the height of a digit in em: a text whose baseline is this far below a line stands in the middle of it.
inline constexpr float digit_half_height = 0.325f;

/// One or two lines of text beside a drawing. The first line's middle wants to be at `first_line`.
struct SideLabel {
    std::string first, second;  ///< an empty one is left out
    Face first_face = Face::regular;
    Face second_face = Face::regular;
    Ink first_ink = Ink::soft;
    Ink second_ink = Ink::soft;
    float first_size = 14;
    float second_size = 14;
    float x = 0;
    Anchor anchor = Anchor::start;  ///< start or end
    float first_line = 0;

    bool shown() const { return !first.empty() || !second.empty(); }
    float half_height() const;
    /// Of the whole label.
    float middle() const;
    void move_middle_to(float y) { first_line += y - middle(); }
};

/// Adds labels that stand in one column, given from the upper to the lower one, pushed apart where they would overlap
/// and made smaller where they would leave the picture. Appends the rectangles of their texts to `taken`.
void place_side_labels(Picture& picture, const std::vector<SideLabel*>& labels, const TextMeasure& measure,
                       std::vector<Rect>& taken);

}  // namespace overwater
