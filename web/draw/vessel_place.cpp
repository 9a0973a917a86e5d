#include "web/draw/vessel_place.hpp"

#include <algorithm>
#include <cmath>

namespace overwater {

float bench_of(float height) { return std::round(height - std::clamp(height * 0.035f, 8.0f, 24.0f)); }

SyringePlace::SyringePlace(float width) {
    zero = std::round(0.11f * width);
    // Pulled out all the way, the plunger's handle is as far behind the scale as the scale is long.
    length = std::round(0.395f * width);
}

RowPlace::RowPlace(float width, float height) {
    up = height / 235;
    across = std::min(width / 300, 1.25f * up);
    up = std::min(up, 1.25f * across);
    left = (width - 300 * across) / 2;
    const float bench = bench_of(height);
    const float spare = std::min(0.6f * (bench - 205 * up), 0.2f * height);
    floor = std::round(bench - (spare < 12 ? 0 : spare));
    neck = floor - 141 * up;
}

VesselScale vessel_scale(const VesselView& view, float width, float height) {
    VesselScale scale;
    if (view.kind == VesselView::Kind::gas_syringe) {
        const SyringePlace at(width);
        scale.zero = at.zero;
        scale.full = at.zero + at.length;
    } else {
        const RowPlace at(width, height);
        scale.zero = at.neck;
        scale.full = at.floor;
    }
    const auto place = [&](const std::optional<double>& value, std::optional<float>& found) {
        if (!value || !std::isfinite(*value) || !view.has_scale()) return;
        const auto share = static_cast<float>(*value / view.capacity_mL);
        found = scale.zero + (scale.full - scale.zero) * std::clamp(share, 0.0f, 1.0f);
    };
    place(view.reading_mL, scale.now);
    place(view.start_mL, scale.start);
    scale.beyond = scale.now && (*view.reading_mL < 0 || *view.reading_mL > view.capacity_mL);
    return scale;
}

}  // namespace overwater
