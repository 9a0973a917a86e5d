#include "web/draw/vessel_glass.hpp"

#include <algorithm>
#include <cmath>

#include "web/draw/geometry.hpp"

namespace overwater {

namespace {

Point between(Point a, Point b, float t) { return {a.x + (b.x - a.x) * t, a.y + (b.y - a.y) * t}; }

/// A line whose corners are cut round, by `radius` where there is room.
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

/// What of the inside of a wall lies below a level (`way` 1) or above it (`way` -1).
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

bool within(const std::vector<Rect>& boxes, Point p) {
    constexpr float air = 4;
    for (const Rect& box : boxes) {
        if (p.x > box.x - air && p.x < box.right() + air && p.y > box.y - air && p.y < box.bottom() + air) return true;
    }
    return false;
}

}  // namespace

std::vector<Point> turning(float x, float y, std::initializer_list<float> turns, float radius) {
    std::vector<Point> corners{{x, y}};
    bool up = true;
    for (const float turn : turns) {
        (up ? y : x) = turn;
        up = !up;
        corners.push_back({x, y});
    }
    return radius > 0 ? rounded(corners, radius) : corners;
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

float Glass::x(float units) const { return x_ + units * across_; }
float Glass::y(float units) const { return foot_ - units * up_; }

std::vector<Point> Glass::points(Table table) const {
    std::vector<Point> out;
    for (std::size_t i = 0; i < table.size(); i += 2) out.push_back({x(table[i]), y(table[i + 1])});
    return out;
}

void Glass::contents(Table wall, float level, bool stoppered) {
    const std::vector<Point> glass = rounded(points(wall), 12 * across_);
    if (stoppered) fill_with_gas(picture_, cut_at(glass, level, -1), 6 * unit_);
    const std::vector<Point> liquid = cut_at(glass, level, 1);
    if (liquid.size() > 2) {
        picture_.area(liquid, Ink::liquid);
        picture_.line(liquid.front(), liquid.back(), Ink::liquid_edge, 2);
    }
    picture_.polyline(glass, Ink::text, 2);
}

void Glass::draw(Table pieces) {
    for (std::size_t i = 0; i < pieces.size();) {
        const auto ink = static_cast<Ink>(pieces[i + 1]);
        const auto count = 2 * static_cast<std::size_t>(pieces[i + 2]);
        const std::vector<Point> at = points(pieces.subspan(i + 3, count));
        switch (pieces[i]) {
        case piece::area: picture_.area(at, ink); break;
        case piece::hose: line_around(picture_, rounded(at, 12 * unit_), {}, 6.5f * unit_, ink, 3.5f * unit_); break;
        case piece::casing:
            picture_.filled_box(at[0], at[1], Ink::card, 5 * unit_);
            picture_.framed_box(at[0], at[1], ink, 2, 5 * unit_);
            break;
        case piece::bubble: {
            const float radius = at[1].x - at[0].x;
            picture_.polyline(arc(at[0], radius, radius, 0, 6.2831853f, 12), ink, 1.2f);
            break;
        }
        default: picture_.polyline(at, ink, ink == Ink::text ? 2 : 1.2f); break;
        }
        i += 3 + count;
    }
}

void Glass::flask() {
    static constexpr std::int16_t wall[] = {-23, 100, -23, 74, -50, 5, -50, 0, 50, 0, 50, 5, 23, 74, 23, 100};
    contents(wall, y(flask_level), true);
    constexpr auto soft = static_cast<std::int16_t>(Ink::soft);
    constexpr auto edge = static_cast<std::int16_t>(Ink::liquid_edge);
    // A strip of metal, gas rising from it; the stopper.
    static constexpr std::int16_t pieces[] = {piece::area,
                                              soft,
                                              10,
                                              -16,
                                              6,
                                              -8,
                                              11,
                                              0,
                                              6,
                                              8,
                                              11,
                                              16,
                                              6,
                                              16,
                                              3,
                                              8,
                                              8,
                                              0,
                                              3,
                                              -8,
                                              8,
                                              -16,
                                              3,  //
                                              piece::bubble,
                                              edge,
                                              2,
                                              -10,
                                              17,
                                              -8,
                                              17,  //
                                              piece::bubble,
                                              edge,
                                              2,
                                              5,
                                              15,
                                              7,
                                              15,  //
                                              piece::bubble,
                                              edge,
                                              2,
                                              11,
                                              22,
                                              14,
                                              22,  //
                                              piece::area,
                                              static_cast<std::int16_t>(Ink::field_edge),
                                              4,
                                              -26,
                                              105,
                                              26,
                                              105,
                                              22,
                                              93,
                                              -22,
                                              93};
    draw(pieces);
}

}  // namespace overwater
