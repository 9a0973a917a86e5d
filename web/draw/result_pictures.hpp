#pragma once

#include <optional>
#include <string>

#include "web/draw/picture.hpp"

namespace overwater {

/// The pressures inside the tube side by side, all in one unit: dry gas, liquid column, vapour, together the barometer
/// reading. `column` positive: it is taken off (liquid higher inside); negative: it is added, and the bar has two rows,
/// what presses (barometer and column) and what bears it (dry gas and vapour). Where the small parts would be
/// thinner than 6 px the dry gas's part is cut short, with a break drawn. Told apart by pattern as well as
/// colour. Nothing is drawn where a pressure is not finite, the barometer or the dry gas is not positive, or the vapour
/// is negative.
Picture draw_pressure_bar(double barometer, double column, double vapour, float width, float height);

/// What is written at the number line, already formatted; an empty text is left out.
struct ResultScaleLabels {
    std::string value;      ///< below the dot, only where there is no interval
    std::string low, high;  ///< ends of the interval
    std::string accepted;
    std::string description;
    float text_size = 14;
};

/// From `low` to `high`, which is infinite where the interval has no upper end.
struct ScaleBand {
    double low = 0;
    double high = 0;
};

/// A number line with the value as a dot, its interval as a band, and the accepted value as an upright mark. All numbers
/// in one unit, finite but for the upper end of the band, low < high; otherwise only the line is drawn. Made for heights
/// of about 56 px and more.
Picture draw_result_scale(double value, std::optional<ScaleBand> band, double accepted,
                          const ResultScaleLabels& labels, float width, float height, const TextMeasure& measure);

}  // namespace overwater
