#include "web/draw/doubt_pictures.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/quantity/short_sort.hpp"
#include "web/draw/bar_rows.hpp"
#include "web/draw/side_label.hpp"

namespace overwater {

namespace {

/// The largest size, in usual ones, that has a place of its own on the scale of need.
constexpr double largest_ratio = 30;

double share_of(const BudgetBar& bar) { return std::isfinite(bar.share) ? std::clamp(bar.share, 0.0, 1.0) : 0.0; }

/// Half a head at the right end of a bar: it would go on.
void arrow_head(Picture& picture, float tip, float top, float bottom, Ink ink) {
    const float length = (bottom - top) * 0.6f;
    picture.area({{tip - length, top}, {tip, (top + bottom) / 2}, {tip - length, bottom}}, ink);
}

}  // namespace

Picture draw_budget_bars(std::vector<BudgetBar> bars, const BarLabels& labels, float width,
                         const TextMeasure& measure) {
    Picture picture;
    picture.width = width;
    picture.description = labels.description;
    short_sort(bars.begin(), bars.end(),
                     [](const BudgetBar& a, const BudgetBar& b) { return share_of(a) > share_of(b); });
    std::vector<BarRows::Row> rows;
    for (const BudgetBar& bar : bars) rows.push_back({bar.label, bar.words});
    const BarRows layout(rows, labels.text_size, width, measure);
    float y = 0;
    float first = 0;
    float last = 0;
    for (std::size_t i = 0; i < bars.size(); ++i) {
        const float top = layout.write(picture, rows[i], y);
        const float long_one = static_cast<float>(share_of(bars[i])) * (layout.bar_width() - 1);
        const float left = layout.bar_left() + 1;
        last = top + layout.bar_height();
        if (i == 0) first = top;
        if (!layout.beside()) {
            // The whole, faintly: below its name a short bar alone would not say what it is a share of.
            const float middle = std::round(top + layout.bar_height() / 2) + 0.5f;
            picture.line({left, middle}, {width, middle}, Ink::line);
            picture.line({left - 0.5f, top}, {left - 0.5f, last}, Ink::field_edge);
        }
        pattern_bar(picture, {left, top}, {left + long_one, last}, bars[i].pattern);
    }
    if (layout.beside() && !bars.empty()) {
        picture.line({layout.bar_left() + 0.5f, std::max(0.0f, first - 3)}, {layout.bar_left() + 0.5f, last + 3}, Ink::field_edge);
    }
    picture.height = std::ceil(layout.write_legend(picture, labels.legend, y));
    return picture;
}

float need_place(double ratio) {
    if (!(ratio > 0)) return 0;
    return static_cast<float>(std::min(1.0, std::asinh(2 * ratio) / std::asinh(2 * largest_ratio)));
}

BarPattern pattern_of_plausibility(int plausibility) {
    return static_cast<BarPattern>(std::clamp(plausibility, 0, 3));
}

Picture draw_need_bar(double ratio_to_usual, double ratio_largest_to_usual, int plausibility, float width,
                      float height) {
    Picture picture;
    picture.width = width;
    picture.height = height;
    const float usual = std::round(need_place(1) * width);
    const float largest = std::round(need_place(ratio_largest_to_usual) * width);
    const float track = std::round(height * 0.1f);
    picture.filled_box({0, track}, {usual, height - track}, Ink::dry_bar);
    const float middle = std::round(height / 2) + 0.5f;
    picture.line({usual, middle}, {width, middle}, Ink::line);
    if (ratio_to_usual >= 0) {
        const float top = std::round(height * 0.2f);
        const float bottom = height - top;
        const bool beyond = plausibility >= 3 || ratio_to_usual > largest_ratio;
        const float head = (bottom - top + 4) * 0.6f;
        const float end = beyond ? width - head + 1 : need_place(ratio_to_usual) * width;
        pattern_bar(picture, {0, top}, {end, bottom}, pattern_of_plausibility(plausibility));
        if (beyond) arrow_head(picture, width, top - 2, bottom + 2, Ink::soft);
    }
    // Over the bar, so that it is seen which of them it passes.
    if (largest > usual && largest < width) picture.line({largest, 0}, {largest, height}, Ink::soft, 1, true);
    picture.line({usual, 0}, {usual, height}, Ink::text, 2);
    return picture;
}

}  // namespace overwater
