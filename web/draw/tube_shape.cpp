#include "web/draw/tube_shape.hpp"

#include <algorithm>
#include <cmath>

#include "core/quantity/decimal.hpp"
#include "core/quantity/number_format.hpp"
#include "web/draw/geometry.hpp"

namespace overwater {

namespace {

constexpr float pi = 3.14159265f;
constexpr int dome_points = 24;

std::vector<Point> dome(const TubeShape& tube) {
    return arc({tube.centre, tube.dome_bottom()}, tube.half_width, tube.half_width, pi, 2 * pi, dome_points);
}

}  // namespace

float TubeShape::half_width_at(float y) const {
    if (y >= dome_bottom()) return half_width;
    if (y <= top) return 0;
    const float up = (dome_bottom() - y) / half_width;
    return half_width * std::sqrt(1 - up * up);
}

std::vector<Point> TubeShape::wall() const {
    std::vector<Point> points{{centre - half_width, mouth}};
    const std::vector<Point> round = dome(*this);
    points.insert(points.end(), round.begin(), round.end());
    points.push_back({centre + half_width, mouth});
    return points;
}

std::vector<Point> TubeShape::surface(float y, float rise) const {
    constexpr int parts = 16;
    std::vector<Point> points;
    const float reach = half_width_at(y);
    for (int i = 0; i <= parts; ++i) {
        const float t = 2 * static_cast<float>(i) / parts - 1;
        const float across = t * reach / half_width;
        const float glass = dome_bottom() - half_width * std::sqrt(std::max(0.0f, 1 - across * across));
        points.push_back({centre + t * reach, std::max(y - rise * t * t, std::min(glass, y))});
    }
    return points;
}

std::vector<Point> TubeShape::above(const std::vector<Point>& surface) const {
    std::vector<Point> points{surface.front()};
    for (const Point& p : dome(*this)) {
        if (p.y < surface.front().y) points.push_back(p);
    }
    points.insert(points.end(), surface.rbegin(), surface.rend() - 1);
    return points;
}

std::vector<Point> TubeShape::below(const std::vector<Point>& surface) const {
    std::vector<Point> points = surface;
    const std::vector<Point> round = dome(*this);
    for (const Point& p : round) {
        if (p.x > surface.back().x && p.y > surface.back().y) points.push_back(p);
    }
    points.push_back({centre + half_width, mouth});
    points.push_back({centre - half_width, mouth});
    for (const Point& p : round) {
        if (p.x < surface.front().x && p.y > surface.front().y) points.push_back(p);
    }
    return points;
}

ScaleSteps scale_steps(double px_per_unit, double least_px, double least_number_px) {
    constexpr double series[] = {1, 2, 5};
    ScaleSteps steps;
    bool found = false;
    for (double decade = 0.01; decade < 1e6; decade *= 10) {
        for (const double digit : series) {
            const double candidate = digit * decade;
            if (!found && candidate * px_per_unit >= least_px) {
                steps.step = candidate;
                found = true;
            }
            const double marks = candidate / steps.step;
            const bool on_a_mark = std::abs(marks - std::round(marks)) < 1e-6;
            if (found && on_a_mark && candidate * px_per_unit >= least_number_px) {
                steps.number_step = candidate;
                return steps;
            }
        }
    }
    return steps;
}

std::string scale_number(double value, std::string_view decimal_sign) {
    std::string out = machine_number(round_to_place(value, -2), 9);
    const std::size_t point = out.find('.');
    if (point != std::string::npos) out.replace(point, 1, decimal_sign);
    return out;
}

}  // namespace overwater
