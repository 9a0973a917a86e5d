#include "web/draw/geometry.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>

#include "core/quantity/short_sort.hpp"

namespace overwater {

namespace {

constexpr float root_two = 1.41421356f;
/// A picture is never larger than this many strokes; guards against a picture of absurd size.
constexpr float most_strokes = 4000;

Point between(Point a, Point b, float t) { return {a.x + (b.x - a.x) * t, a.y + (b.y - a.y) * t}; }

}  // namespace

std::vector<Segment> hatch_segments(const std::vector<Point>& outline, float spacing) {
    std::vector<Segment> strokes;
    if (!(spacing >= 1) || outline.size() < 3) return strokes;
    float low = outline[0].x + outline[0].y;
    float high = low;
    for (const Point& p : outline) {
        low = std::min(low, p.x + p.y);
        high = std::max(high, p.x + p.y);
    }
    const float step = spacing * root_two;
    if (!((high - low) / step < most_strokes)) return strokes;

    std::vector<Point> crossings;
    for (float k = std::ceil(low / step); k * step <= high; k += 1) {
        const float sum = k * step;
        crossings.clear();
        for (std::size_t i = 0; i < outline.size(); ++i) {
            const Point a = outline[i];
            const Point b = outline[(i + 1) % outline.size()];
            const float above_a = a.x + a.y - sum;
            const float above_b = b.x + b.y - sum;
            // Half-open, so that a stroke through a corner crosses one of its two edges only.
            if ((above_a < 0) != (above_b < 0)) crossings.push_back(between(a, b, above_a / (above_a - above_b)));
        }
        short_sort(crossings.begin(), crossings.end(), [](Point a, Point b) { return a.x < b.x; });
        for (std::size_t i = 0; i + 1 < crossings.size(); i += 2) {
            if (crossings[i + 1].x - crossings[i].x > 0.25f) strokes.push_back({crossings[i], crossings[i + 1]});
        }
    }
    return strokes;
}

float dash_length(float width) { return std::max(4.0f, 3 * width); }
float gap_length(float width) { return std::max(3.0f, 2 * width); }

std::vector<Segment> dash_segments(const std::vector<Point>& points, float dash, float gap) {
    std::vector<Segment> dashes;
    if (!(dash > 0) || !(gap > 0)) return dashes;
    float left = dash;  // of the current dash or gap
    bool drawing = true;
    for (std::size_t i = 0; i + 1 < points.size(); ++i) {
        const Point a = points[i];
        const Point b = points[i + 1];
        const float length = std::hypot(b.x - a.x, b.y - a.y);
        if (!(length > 0) || !(length / (dash + gap) < most_strokes)) continue;
        float at = 0;
        while (at < length) {
            const float next = std::min(length, at + left);
            if (drawing) dashes.push_back({between(a, b, at / length), between(a, b, next / length)});
            left -= next - at;
            at = next;
            if (left <= 1e-4f) {
                drawing = !drawing;
                left = drawing ? dash : gap;
            }
        }
    }
    return dashes;
}

std::vector<Point> arc(Point centre, float radius_x, float radius_y, float from, float to, int count) {
    std::vector<Point> points;
    points.reserve(static_cast<std::size_t>(count) + 1);
    for (int i = 0; i <= count; ++i) {
        const float angle = from + (to - from) * static_cast<float>(i) / static_cast<float>(count);
        points.push_back({centre.x + radius_x * std::cos(angle), centre.y + radius_y * std::sin(angle)});
    }
    return points;
}

void push_apart(std::vector<float>& centres, const std::vector<float>& half_sizes, float low, float high) {
    if (centres.empty()) return;
    // Without their own sizes the labels only have to stay in order: the nearest ascending sequence in the sense of
    // least squares pools neighbours that are out of order and gives each pool its mean.
    std::vector<float> offsets(centres.size(), 0);
    for (std::size_t i = 1; i < centres.size(); ++i) {
        offsets[i] = offsets[i - 1] + half_sizes[i - 1] + half_sizes[i];
    }
    struct Pool {
        float sum;
        float count;
        float mean() const { return sum / count; }
    };
    std::vector<Pool> pools;
    for (std::size_t i = 0; i < centres.size(); ++i) {
        pools.push_back({centres[i] - offsets[i], 1});
        while (pools.size() > 1 && pools[pools.size() - 2].mean() >= pools.back().mean()) {
            const Pool last = pools.back();
            pools.pop_back();
            pools.back().sum += last.sum;
            pools.back().count += last.count;
        }
    }
    const float lowest = low + half_sizes.front();
    const float highest = std::max(lowest, high - half_sizes.back() - offsets.back());
    std::size_t i = 0;
    for (const Pool& pool : pools) {
        const float place = std::clamp(pool.mean(), lowest, highest);
        for (float k = 0; k < pool.count; k += 1, ++i) centres[i] = place + offsets[i];
    }
}

AxisStep round_step(double least) {
    int power = static_cast<int>(std::floor(std::log10(least)));
    const double scale = std::pow(10.0, power);
    double step = 10 * scale;
    for (const double factor : {1.0, 2.0, 5.0}) {
        if (factor * scale >= least * (1 - 1e-9)) {
            step = factor * scale;
            break;
        }
    }
    if (step > 9.5 * scale) ++power;
    return {step, std::max(0, -power)};
}

}  // namespace overwater
