#include "web/draw/vessel_glass.hpp"

#include <algorithm>
#include <cmath>

#include "web/draw/geometry.hpp"

namespace overwater {

namespace {

Point between(Point a, Point b, float t) { return {a.x + (b.x - a.x) * t, a.y + (b.y - a.y) * t}; }

bool within(const std::vector<Rect>& boxes, Point p) {
    constexpr float air = 4;
    for (const Rect& box : boxes) {
        if (p.x > box.x - air && p.x < box.right() + air && p.y > box.y - air && p.y < box.bottom() + air) return true;
    }
    return false;
}

}  // namespace

std::vector<Point> rounded(const std::vector<Point>& corners, float radius) {
    constexpr int parts = 6;
    std::vector<Point> points{corners.front()};
    for (std::size_t i = 1; i + 1 < corners.size(); ++i) {
        const Point corner = corners[i];
        Point ends[2];
        for (std::size_t k = 0; k < 2; ++k) {
            const Point far = corners[i - 1 + 2 * k];
            const float length = std::hypot(far.x - corner.x, far.y - corner.y);
            ends[k] = between(corner, far, std::min(0.5f, radius / std::max(length, 0.1f)));
        }
        for (int k = 0; k <= parts; ++k) {
            const float t = static_cast<float>(k) / parts;
            points.push_back(between(between(ends[0], corner, t), between(corner, ends[1], t), t));
        }
    }
    points.push_back(corners.back());
    return points;
}

std::vector<Point> cut_at(const std::vector<Point>& wall, float level, float way) {
    std::vector<Point> part;
    Point last = wall.front();
    for (const Point& p : wall) {
        const float in = (p.y - level) * way;
        const float before = (last.y - level) * way;
        if ((in > 0) != (before > 0)) part.push_back(between(last, p, before / (before - in)));
        if (in > 0) part.push_back(p);
        last = p;
    }
    return part;
}

void fill_with_gas(Picture& picture, const std::vector<Point>& outline, float spacing) {
    picture.area(outline, Ink::gas);
    picture.hatched(outline, Ink::gas_hatch, spacing);
}

void line_around(Picture& picture, const std::vector<Point>& line, const std::vector<Rect>& boxes, float width,
                 Ink inside, float inside_width) {
    std::vector<Point> run;
    const auto end_run = [&] {
        if (run.size() > 1) {
            picture.polyline(run, Ink::text, width);
            if (inside_width > 0) picture.polyline(run, inside, inside_width);
        }
        run.clear();
    };
    Point last = line.front();
    for (const Point& p : line) {
        // Only where something may stand in the way are there points between the corners.
        const float length = boxes.empty() ? 1 : std::max(1.0f, std::hypot(p.x - last.x, p.y - last.y) / 3);
        for (float k = 1; k < length + 1; ++k) {
            const Point next = between(last, p, std::min(1.0f, k / length));
            if (within(boxes, next)) {
                end_run();
            } else {
                run.push_back(next);
            }
        }
        last = p;
    }
    end_run();
}

Point Glass::at(float x, float y) const { return {foot_.x + x * across_, foot_.y - y * up_}; }

std::vector<Point> Glass::points(Corners corners) const {
    std::vector<Point> out;
    for (std::size_t i = 0; i < corners.size(); i += 2) out.push_back(at(corners[i], corners[i + 1]));
    return out;
}

void Glass::area(Corners corners, Ink ink) { picture_.area(points(corners), ink); }
void Glass::line(Corners corners, Ink ink, float width) { picture_.polyline(points(corners), ink, width); }

void Glass::contents(const std::vector<Point>& wall, float level) {
    fill_with_gas(picture_, cut_at(wall, level, -1), 6 * unit_);
    const std::vector<Point> liquid = cut_at(wall, level, 1);
    if (liquid.size() > 1) {
        picture_.area(liquid, Ink::liquid);
        picture_.line(liquid.front(), liquid.back(), Ink::liquid_edge, 2);
    }
    picture_.polyline(wall, Ink::text, 2);
}

void Glass::flask() {
    static constexpr std::int16_t wall[] = {-23, 100, -23, 74, -50, 5, -50, 0, 50, 0, 50, 5, 23, 74, 23, 100};
    contents(rounded(points(wall), 15 * across_), at(0, flask_level).y);
    // A strip of metal, gas rising from it.
    static constexpr std::int16_t metal[] = {-16, 5, -8, 10, 0, 5, 8, 10, 16, 5};
    line(metal, Ink::soft, 3.5f * across_);
    static constexpr std::int8_t bubbles[] = {-10, 16, 5, 5, 14, 4, 11, 21, 6};
    for (std::size_t i = 0; i < std::size(bubbles); i += 3) {
        const float radius = bubbles[i + 2] * across_ / 2;
        picture_.polyline(arc(at(bubbles[i], bubbles[i + 1]), radius, radius, 0, 6.2831853f, 12), Ink::liquid_edge,
                          1.2f);
    }
    static constexpr std::int16_t stopper[] = {-26, 105, 26, 105, 22, 93, -22, 93};
    area(stopper, Ink::field_edge);
}

void Glass::hose(const std::vector<Point>& corners, Ink inside, const std::vector<Rect>& boxes) {
    line_around(picture_, rounded(corners, 12 * unit_), boxes, 6.5f * unit_, inside, 3.5f * unit_);
}

void Glass::casing(Point a, Point b) {
    picture_.filled_box(a, b, Ink::card, 5 * unit_);
    picture_.framed_box(a, b, Ink::text, 2, 5 * unit_);
}

}  // namespace overwater
