#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>

#include "core/quantity/short_sort.hpp"
#include "web/draw/doubt_pictures.hpp"
#include "web/draw/geometry.hpp"

namespace overwater {

namespace {

/// A number of the axis and where it stands.
struct Tick {
    float x;
    std::string words;
};

struct Label {
    float x;
    std::string words;
    Face face;
    Ink ink;
};

class HistogramPicture {
public:
    HistogramPicture(const HistogramView& view, float width, float height, const TextMeasure& measure)
        : view_(view), measure_(measure), size_(view.text_size), unit_(view.text_size / 14) {
        picture_.width = width;
        picture_.height = height;
        picture_.description = view.description;
    }

    Picture draw() {
        possible_ =
            std::isfinite(view_.low) && std::isfinite(view_.high) && view_.low < view_.high && !view_.counts.empty();
        find_axis();
        find_rows();
        if (possible_) {
            bars();
            curve();
        }
        picture_.line({0, floor_ + 0.5f}, {picture_.width, floor_ + 0.5f}, Ink::field_edge);
        if (!possible_) return std::move(picture_);
        numbers();
        interval_below();
        legend();
        marks();
        return std::move(picture_);
    }

private:
    /// The interval goes on beyond the axis.
    bool open_end() const { return !(view_.interval_high <= right_); }
    bool has_interval() const { return std::isfinite(view_.interval_low) && view_.interval_high > view_.interval_low; }
    static bool there(const std::optional<double>& mark) { return mark && std::isfinite(*mark); }
    bool has_curve() const {
        return std::isfinite(view_.curve_mean) && std::isfinite(view_.curve_deviation) && view_.curve_deviation > 0;
    }
    bool has_numbers() const { return view_.number || !view_.low_words.empty() || !view_.high_words.empty(); }

    /// Not held back at the ends.
    float place(double value) const {
        return inset_ + static_cast<float>((value - left_) / (right_ - left_)) * (picture_.width - 2 * inset_);
    }
    float held(double value) const {
        if (value <= left_) return inset_;
        return value >= right_ ? picture_.width - inset_ : place(value);
    }

    void find_axis() {
        inset_ = std::round(10 * unit_);
        if (!possible_) return;
        left_ = view_.low;
        right_ = view_.high;
        const double reach = 0.5 * (right_ - left_);
        const auto take_in = [&](double value) {
            if (!std::isfinite(value)) return;
            left_ = std::min(left_, std::max(value, view_.low - reach));
            right_ = std::max(right_, std::min(value, view_.high + reach));
        };
        if (view_.value) take_in(*view_.value);
        if (view_.accepted) take_in(*view_.accepted);
        if (has_interval()) take_in(view_.interval_low), take_in(view_.interval_high);
    }

    void find_rows() {
        const float line = std::round(1.35f * size_);
        const bool labelled = (there(view_.value) && !view_.value_words.empty()) ||
                              (there(view_.accepted) && !view_.accepted_words.empty());
        top_ = labelled ? line + std::round(6 * unit_) : std::round(4 * unit_);
        float below = has_numbers() ? line + std::round(2 * unit_) : std::round(8 * unit_);
        numbers_bottom_ = below;
        if (has_interval()) {
            below += std::round(10 * unit_);
            if (interval_has_words()) below += line;
        }
        if (has_curve() && !view_.curve_words.empty()) below += line;
        floor_ = std::max(top_ + 20, std::round(picture_.height - below));
    }
    bool interval_has_words() const {
        return !view_.interval_low_words.empty() || !view_.interval_high_words.empty() || !view_.interval_words.empty();
    }

    double bin_width() const { return (view_.high - view_.low) / static_cast<double>(view_.counts.size()); }
    double total() const { return std::accumulate(view_.counts.begin(), view_.counts.end(), 0.0); }
    double curve_at(double value) const {
        constexpr double root_two_pi = 2.5066282746310002;
        const double z = (value - view_.curve_mean) / view_.curve_deviation;
        return total() * bin_width() / (view_.curve_deviation * root_two_pi) * std::exp(-z * z / 2);
    }
    float height_of(double count) const {
        return static_cast<float>(count / highest_) * (floor_ - top_ - std::round(3 * unit_));
    }

    void bars() {
        highest_ = static_cast<double>(*std::max_element(view_.counts.begin(), view_.counts.end()));
        if (!(highest_ > 0)) return;
        if (has_curve()) highest_ = std::max(highest_, curve_at(view_.curve_mean));
        // Edges on whole pixels, so that neighbours touch and the outline is sharp.
        const auto edge = [&](std::size_t i) {
            return std::round(place(view_.low + bin_width() * static_cast<double>(i)));
        };
        // What lies outside the interval is left empty: told by filling, not by colour alone.
        const float shade_from = has_interval() ? std::round(held(view_.interval_low)) : 0.0f;
        const float shade_to = has_interval() && !open_end() ? std::round(held(view_.interval_high)) : picture_.width;
        std::vector<Point> outline{{edge(0) + 0.5f, floor_ + 0.5f}};
        for (std::size_t i = 0; i < view_.counts.size(); ++i) {
            const float from = edge(i);
            const float to = edge(i + 1);
            const float top = floor_ - std::round(height_of(static_cast<double>(view_.counts[i])));
            const float shaded_from = std::max(from, shade_from);
            const float shaded_to = std::min(to, shade_to);
            if (top < floor_ && shaded_from < shaded_to) {
                picture_.filled_box({shaded_from, top}, {shaded_to, floor_}, Ink::liquid);
            }
            outline.push_back({from + 0.5f, top + 0.5f});
            outline.push_back({to + 0.5f, top + 0.5f});
        }
        outline.push_back({outline.back().x, floor_ + 0.5f});
        picture_.polyline(std::move(outline), Ink::liquid_edge, 1);
    }

    void curve() {
        if (!has_curve() || !(highest_ > 0)) return;
        const double reach = 3.7 * view_.curve_deviation;
        const double from = std::max(left_, view_.curve_mean - reach);
        const double to = std::min(right_, view_.curve_mean + reach);
        if (!(from < to)) return;
        constexpr int steps = 80;
        std::vector<Point> points;
        for (int i = 0; i <= steps; ++i) {
            const double value = from + (to - from) * i / steps;
            points.push_back({place(value), floor_ - height_of(curve_at(value))});
        }
        picture_.polyline(std::move(points), Ink::text, 2, true);
    }

    /// Moves labels of one row apart, in smaller letters where they would not fit beside each other.
    void write_row(std::vector<Label> row, float baseline) {
        std::erase_if(row, [](const Label& label) { return label.words.empty(); });
        short_sort(row.begin(), row.end(), [](const Label& a, const Label& b) { return a.x < b.x; });
        float size = size_;
        std::vector<float> halves;
        for (; size >= smallest_text; size -= 1) {
            halves.clear();
            float sum = 0;
            for (const Label& label : row) {
                halves.push_back(measure_.width(label.words, label.face, size) / 2 + 0.35f * size);
                sum += 2 * halves.back();
            }
            if (sum <= picture_.width + 0.7f * size) break;
        }
        size = std::max(size, smallest_text);
        std::vector<float> middles;
        for (const Label& label : row) middles.push_back(label.x);
        push_apart(middles, halves, -0.35f * size, picture_.width + 0.35f * size);
        for (std::size_t i = 0; i < row.size(); ++i) {
            picture_.text({middles[i], baseline}, row[i].words, row[i].ink, row[i].face, size, Anchor::middle);
        }
        middles_ = std::move(middles);
    }

    void numbers() {
        const float baseline = floor_ + std::round(6 * unit_) + 0.72f * size_;
        if (!view_.number) {
            write_row({{place(view_.low), view_.low_words, Face::regular, Ink::soft},
                       {place(view_.high), view_.high_words, Face::regular, Ink::soft}},
                      baseline);
            return;
        }
        const double px = static_cast<double>(place(right_) - place(left_)) / (right_ - left_);
        double least = static_cast<double>(3 * size_) / px;
        for (int attempt = 0; attempt < 8; ++attempt) {
            const AxisStep axis = round_step(least);
            const std::vector<Tick> ticks = ticks_of(axis);
            float widest = 0;
            for (const Tick& tick : ticks) widest = std::max(widest, measure_.width(tick.words, Face::regular, size_));
            if (static_cast<double>(widest + 1.2f * size_) > axis.step * px) {
                least = axis.step * 1.5;
                continue;
            }
            for (const Tick& tick : ticks) {
                picture_.line({std::round(tick.x) + 0.5f, floor_}, {std::round(tick.x) + 0.5f, floor_ + 4 * unit_},
                              Ink::field_edge);
                const float half = measure_.width(tick.words, Face::regular, size_) / 2;
                if (tick.x - half < 0 || tick.x + half > picture_.width) continue;
                picture_.text({tick.x, baseline}, tick.words, Ink::soft, Face::regular, size_, Anchor::middle);
            }
            return;
        }
    }
    std::vector<Tick> ticks_of(const AxisStep& axis) const {
        std::vector<Tick> ticks;
        const double first = std::ceil(left_ / axis.step - 1e-9);
        for (int i = 0; i < 100; ++i) {
            const double value = (first + i) * axis.step;
            if (value > right_ + 1e-9 * axis.step) break;
            ticks.push_back({place(value), view_.number(value, axis.decimals)});
        }
        return ticks;
    }

    /// A bracket below the numbers: which part of the axis the interval is, and its words.
    void interval_below() {
        if (!has_interval()) return;
        const float y = floor_ + numbers_bottom_ + std::round(5 * unit_) + 0.5f;
        const float from = std::round(held(view_.interval_low));
        const bool open = open_end();
        const float to = open ? picture_.width : std::round(held(view_.interval_high));
        const float tick = std::round(4 * unit_);
        picture_.line({from, y}, {open ? to - 2 * tick : to, y}, Ink::soft, 2);
        picture_.line({from, y - tick}, {from, y + tick}, Ink::soft, 2);
        if (open) {
            picture_.area({{to - 2 * tick, y - tick}, {to, y}, {to - 2 * tick, y + tick}}, Ink::soft);
        } else {
            picture_.line({to, y - tick}, {to, y + tick}, Ink::soft, 2);
        }
        write_row({{from, view_.interval_low_words, Face::regular, Ink::text},
                   {(from + to) / 2, view_.interval_words, Face::regular, Ink::soft},
                   {to, view_.interval_high_words, Face::regular, Ink::text}},
                  y + tick + std::round(4 * unit_) + 0.72f * size_);
    }

    void legend() {
        if (!has_curve() || view_.curve_words.empty()) return;
        const float baseline = picture_.height - std::round(0.3f * size_);
        const float sample = std::round(2.2f * size_);
        const float y = std::round(baseline - 0.325f * size_);
        picture_.line({inset_, y}, {inset_ + sample, y}, Ink::text, 2, true);
        float size = size_;
        const float x = inset_ + sample + 0.5f * size_;
        while (measure_.width(view_.curve_words, Face::regular, size) > picture_.width - x && size > smallest_text)
            size -= 1;
        picture_.text({x, baseline}, view_.curve_words, Ink::soft, Face::regular, size);
    }

    void marks() {
        struct Upright {
            double value;
            Label label;
        };
        std::vector<Upright> all;
        if (there(view_.accepted)) {
            all.push_back({*view_.accepted, {0, view_.accepted_words, Face::regular, Ink::text}});
        }
        if (there(view_.value)) all.push_back({*view_.value, {0, view_.value_words, Face::semibold, Ink::copper}});
        short_sort(all.begin(), all.end(), [](const Upright& a, const Upright& b) { return a.value < b.value; });
        std::vector<Label> row;
        for (Upright& mark : all) {
            const bool ours = mark.label.ink == Ink::copper;
            const float x = std::round(held(mark.value));
            picture_.line({x, top_}, {x, floor_ + (ours ? 0 : std::round(5 * unit_))}, mark.label.ink, 2);
            if (ours) {
                constexpr float turn = 6.28318531f;
                picture_.area(arc({x, floor_}, 5 * unit_, 5 * unit_, 0, turn, 24), Ink::copper);
            }
            point_outwards(mark.value, x, mark.label.ink);
            mark.label.x = x;
            if (!mark.label.words.empty()) row.push_back(mark.label);
        }
        const std::vector<Label> before = row;
        write_row(row, 0.72f * size_ + 1);
        // A label that had to move aside is led to its mark.
        for (std::size_t i = 0; i < before.size(); ++i) {
            const float half = measure_.width(before[i].words, before[i].face, size_) / 2;
            const float from = std::clamp(before[i].x, middles_[i] - half, middles_[i] + half);
            const float y = std::round(1.15f * size_);
            picture_.line({from, y}, {before[i].x, top_}, before[i].ink, 1.5f);
        }
    }

    void point_outwards(double value, float x, Ink ink) {
        const float y = top_ + std::round(8 * unit_);
        const float half = 4 * unit_;
        if (value < left_) picture_.area({{x - 1, y - half}, {x - 1 - 1.5f * half, y}, {x - 1, y + half}}, ink);
        if (value > right_) picture_.area({{x + 1, y - half}, {x + 1 + 1.5f * half, y}, {x + 1, y + half}}, ink);
    }

    const HistogramView& view_;
    const TextMeasure& measure_;
    Picture picture_;
    float size_;
    float unit_;
    bool possible_ = false;
    double left_ = 0;
    double right_ = 1;
    double highest_ = 0;
    float inset_ = 0;
    float top_ = 0;
    float floor_ = 0;
    float numbers_bottom_ = 0;
    std::vector<float> middles_;  ///< of the labels of the row written last
};

}  // namespace

Picture draw_histogram(const HistogramView& view, float width, float height, const TextMeasure& measure) {
    return HistogramPicture(view, width, height, measure).draw();
}

}  // namespace overwater
