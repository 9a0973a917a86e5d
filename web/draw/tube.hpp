#pragma once

#include <optional>
#include <string>

#include "web/draw/picture.hpp"

namespace overwater {

/// What the tube looks like, from the readings. Not a reading: a missing one is a missing one, never a zero.
struct TubeView {
    /// Where the scale is not chosen yet there are no numbers and no meniscus.
    bool direction_known = true;
    bool closed_end_has_largest = true;
    double capacity_mL = 50;  ///< not a positive number: unknown, the tube has no scale
    double end_space_mL = 0;  ///< gas room beyond the last mark, only where the largest number is at the closed end
    bool end_space_known = false;
    std::optional<double> reading_mL;
    std::optional<double> level_difference_mm;  ///< positive: liquid higher inside; negative: higher outside
    double length_of_scale_mm = 550;            ///< from 0 to the capacity
    double mouth_beyond_scale_mm = 50;          ///< plain tube between the scale's open end and the mouth
    bool has_scale() const { return capacity_mL > 0 && capacity_mL < 1e6; }
};

/// What is written beside it, already worded and formatted; an empty text is left out.
struct TubeLabels {
    std::string gas_volume_number, gas_volume_unit;
    std::string end_space_word, end_space_value;
    std::string level_number, level_unit;
    std::string reading_number, meniscus_word;
    std::string decimal_sign = ".";  ///< of the scale's own numbers
    std::string description;
    float text_size = 0;  ///< px of the small words; 0: chosen by the picture's width
};

/// Where things of the drawing lie, in px from the picture's top; for tests and for whoever points at them.
struct TubeGeometry {
    float top = 0;         ///< closed end, inside
    float first_mark = 0;  ///< the mark nearest to the closed end
    float last_mark = 0;   ///< the mark nearest to the mouth
    float mouth = 0;
    float bucket_bottom = 0;
    float px_per_mm = 0;
    float px_per_mL = 0;
    std::optional<float> meniscus;  ///< where the reading is, also outside the picture
    std::optional<float> level;     ///< of the liquid outside, where known
};

/// Heights are to scale along the tube (`length_of_scale_mm` from 0 to the capacity, the end space as a cylinder of
/// the same bore); widths are not.
TubeGeometry tube_geometry(const TubeView& view, float height);

/// The tube upside down in its bucket. What cannot be (a reading beyond the scale, a mouth out of the liquid) is drawn
/// where it would be, at most at the picture's edge, with a dashed mark. Made for 260 x 360 px and more.
Picture draw_tube(const TubeView& view, const TubeLabels& labels, float width, float height,
                  const TextMeasure& measure);

/// A small drawing for the question which number is at the closed end; `largest` is the number written for the
/// capacity. Made for 96 x 120 px and more.
Picture draw_scale_choice(bool largest_at_closed_end, const std::string& largest, const std::string& description,
                          float width, float height, const TextMeasure& measure);

}  // namespace overwater
