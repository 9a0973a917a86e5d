#include <algorithm>
#include <cmath>

#include "web/draw/tube.hpp"

namespace overwater {

namespace {

constexpr double assumed_capacity_mL = 50;
/// Gas room drawn where the end space is not measured: the middle of what method and budget allow for it, 0 to 4 mL.
constexpr double assumed_end_space_mL = 2;

bool positive(double v) { return std::isfinite(v) && v > 0; }
double capacity(const TubeView& view) { return view.has_scale() ? view.capacity_mL : assumed_capacity_mL; }
double length_mm(const TubeView& view) {
    if (positive(view.length_of_scale_mm)) return view.length_of_scale_mm;
    return capacity(view) * (capacity(view) > 60 ? 6 : 11);
}
/// The uncounted room at the closed end; one of absurd size is cut, so that the scale keeps its place.
double end_space(const TubeView& view) {
    if (view.direction_known && !view.closed_end_has_largest) return 0;
    const double known = view.end_space_known && std::isfinite(view.end_space_mL) ? view.end_space_mL : -1;
    return std::clamp(known >= 0 ? known : assumed_end_space_mL, 0.0, capacity(view) / 2);
}

}  // namespace

TubeGeometry tube_geometry(const TubeView& view, float height) {
    TubeGeometry place;
    const float top_margin = std::clamp(height * 0.05f, 12.0f, 40.0f);
    const float bottom_margin = std::clamp(height * 0.035f, 8.0f, 24.0f);
    place.top = std::round(top_margin);
    place.bucket_bottom = std::round(height - bottom_margin);
    place.mouth = std::round(place.bucket_bottom - height * 0.075f);

    const double mm_per_mL = length_mm(view) / capacity(view);
    const double end_mm = end_space(view) * mm_per_mL;
    const bool mouth_given = std::isfinite(view.mouth_beyond_scale_mm) && view.mouth_beyond_scale_mm >= 0;
    const double mouth_mm = mouth_given ? std::min(view.mouth_beyond_scale_mm, length_mm(view)) : 50;
    const double px_per_mm =
        static_cast<double>(std::max(1.0f, place.mouth - place.top)) / (end_mm + length_mm(view) + mouth_mm);
    place.px_per_mm = static_cast<float>(px_per_mm);
    place.px_per_mL = static_cast<float>(px_per_mm * mm_per_mL);
    place.first_mark = place.top + static_cast<float>(end_mm * px_per_mm);
    place.last_mark = place.mouth - static_cast<float>(mouth_mm * px_per_mm);

    const bool reading_known = view.reading_mL && std::isfinite(*view.reading_mL);
    if (!reading_known || !view.has_scale() || !view.direction_known) return place;
    // A slip of the point may put it very far away; beyond this it makes no difference to the drawing.
    const double way = std::clamp(*view.reading_mL * mm_per_mL * px_per_mm, -1e5, 1e5);
    const double meniscus = view.closed_end_has_largest ? static_cast<double>(place.last_mark) - way
                                                        : static_cast<double>(place.first_mark) + way;
    place.meniscus = static_cast<float>(meniscus);
    if (view.level_difference_mm && std::isfinite(*view.level_difference_mm)) {
        place.level = static_cast<float>(meniscus + std::clamp(*view.level_difference_mm * px_per_mm, -1e5, 1e5));
    }
    return place;
}

}  // namespace overwater
