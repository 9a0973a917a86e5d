#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "web/draw/picture.hpp"

/// Pictures of the doubt of a result: where it comes from, how the trials fall, how large a cause would have to be.

namespace overwater {

/// Bars are told apart by these as well as by their colour.
enum class BarPattern : std::uint8_t { solid, hatched, striped, hollow };

/// What a pattern stands for, written below the bars.
struct PatternWords {
    BarPattern pattern = BarPattern::solid;
    std::string words;
};

struct BudgetBar {
    std::string label;
    double share = 0;   ///< of the variance, 0 to 1; anything else counts as the nearer end, not a number as 0
    std::string words;  ///< the share, formatted
    BarPattern pattern = BarPattern::solid;
};

struct BarLabels {
    std::string description;
    float text_size = 14;
    std::vector<PatternWords> legend;
};

/// One bar a row, the largest share first (equal ones as given), on one scale from 0 to 1: a share of a half is half as
/// long as the room for bars. Name and share stand left of the bars while 160 px are left for these at 14 px text, else
/// above each bar. The height is what the rows need. Made for widths from 300 px.
Picture draw_budget_bars(std::vector<BudgetBar> bars, const BarLabels& labels, float width, const TextMeasure& measure);

/// Counts of trials in bins of one width between `low` and `high`, with their 95 % interval, and what is written there,
/// formatted; an empty text is left out. All numbers in one unit.
struct HistogramView {
    std::vector<std::uint32_t> counts;
    double low = 0;
    double high = 0;
    double interval_low = 0;   ///< there is no interval unless low < high
    double interval_high = 0;  ///< infinite: open above
    std::optional<double> value;  ///< the value, or the median
    std::optional<double> accepted;
    double curve_mean = 0;       ///< of the linear result's normal curve
    double curve_deviation = 0;  ///< no curve unless positive
    std::string value_words, accepted_words;  ///< above their marks
    /// Words of a number on the axis, with so many decimals.
    std::function<std::string(double value, int decimals)> number;
    std::string low_words, high_words;  ///< at the ends of the bins, where `number` is not given
    std::string interval_low_words, interval_high_words;  ///< below the ends of the interval
    std::string interval_words;                           ///< below its middle
    std::string curve_words;                              ///< what the dashed curve is
    std::string description;
    float text_size = 14;
};

/// Bars of the trials, filled inside the interval, whose bracket stands below the axis (an arrow to the right where it
/// is open above), the normal curve of the same area dashed over them so that a skew is seen, value and accepted value
/// as upright marks, the value with a dot. The axis reaches out to marks and interval up to half of the bins' length;
/// what lies further off stands at its end with a pointer outwards. Where a number is not finite or low < high does not
/// hold, only the axis is drawn. For 300 px by 170 px and more.
Picture draw_histogram(const HistogramView& view, float width, float height, const TextMeasure& measure);

/// How far from the left, as a part of the bar's room, a size stands that is `ratio` times the usual one: nearly even
/// up to 1, each doubling equally far from about 2 on, 30 and more at 1.
float need_place(double ratio);

/// How large a cause would have to be, as a bar from 0 with its end at need_place(`ratio_to_usual`) of the width. Behind
/// it a track up to the usual size, which has an upright stroke; the largest size seen has a dashed one. `plausibility` is
/// 0 usual, 1 possible, 2 implausible, 3 impossible, each with a pattern of its own; impossible, or beyond 30: the bar
/// goes to the end and has an arrow. A ratio that is not a number or negative draws no bar. For 80 px by
/// 12 px and more.
Picture draw_need_bar(double ratio_to_usual, double ratio_largest_to_usual, int plausibility, float width,
                      float height);
/// The pattern of draw_need_bar's bar.
BarPattern pattern_of_plausibility(int plausibility);

}  // namespace overwater
