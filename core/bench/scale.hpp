#pragma once

#include <optional>

#include "core/bench/readings.hpp"

namespace overwater {

/// Metres of tube for a cubic metre of gas along the scale.
struct ScaleLength {
    double per_volume;
    bool assumed;  ///< nobody measured it, or what was typed cannot be
};

/// What is usual: 11 mm a mL up to 75 mL of capacity, 6 mm a mL above, in m/m³; `capacity` in m³.
/// Common practice, no source (method.md, section 1).
double usual_scale(double capacity);

/// Whether a scale can be so long: 2 to 40 mm a mL. From memory of the tubes that are sold.
bool is_possible_scale(double per_volume);

/// By the length of the scale where one is typed that can be, else what is usual. Nothing without a capacity above zero.
std::optional<ScaleLength> scale_length(const Readings& readings);

}  // namespace overwater
