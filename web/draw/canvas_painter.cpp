#include "web/draw/canvas_painter.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <vector>

#include "web/draw/geometry.hpp"

namespace overwater {

namespace {

/// Puts lengths on whole device pixels.
struct Grid {
    float scale;
    float edge(float v) const { return std::round(v * scale) / scale; }
    float thickness(float v) const { return std::max(1.0f, std::round(v * scale)) / scale; }
    /// Where a line of this thickness begins, if its middle is to be near `middle`.
    float start(float middle, float thick) const { return std::round((middle - thick / 2) * scale) / scale; }
};

struct Brush {
    ImDrawList& list;
    const Fonts& fonts;
    Point origin;
    Grid grid;
    ImU32 colour = 0;

    ImVec2 at(Point p) const { return {origin.x + p.x, origin.y + p.y}; }

    void line(Point a, Point b, float width) const {
        const ImVec2 p = at(a);
        const ImVec2 q = at(b);
        const float thick = grid.thickness(width);
        if (p.y == q.y) {
            const float y = grid.start(p.y, thick);
            list.AddRectFilled({grid.edge(std::min(p.x, q.x)), y}, {grid.edge(std::max(p.x, q.x)), y + thick}, colour);
        } else if (p.x == q.x) {
            const float x = grid.start(p.x, thick);
            list.AddRectFilled({x, grid.edge(std::min(p.y, q.y))}, {x + thick, grid.edge(std::max(p.y, q.y))}, colour);
        } else {
            const ImVec2 ends[] = {p, q};
            list.AddPolyline(ends, 2, colour, ImDrawFlags_None, width);
        }
    }

    void lines(const std::vector<Segment>& segments, float width) const {
        for (const Segment& segment : segments) line(segment.a, segment.b, width);
    }

    std::vector<ImVec2> moved(const std::vector<Point>& points) const {
        std::vector<ImVec2> out;
        out.reserve(points.size());
        for (const Point& p : points) out.push_back(at(p));
        return out;
    }

    void polyline(const std::vector<Point>& points, float width) const {
        const std::vector<ImVec2> placed = moved(points);
        if (placed.size() > 1) {
            list.AddPolyline(placed.data(), static_cast<int>(placed.size()), colour, ImDrawFlags_None, width);
        }
    }

    void area(const std::vector<Point>& outline) const {
        if (outline.size() < 3) return;
        std::vector<ImVec2> placed = moved(outline);
        const auto same = [](ImVec2 a, ImVec2 b) { return std::abs(a.x - b.x) + std::abs(a.y - b.y) < 0.01f; };
        placed.erase(std::unique(placed.begin(), placed.end(), same), placed.end());
        while (placed.size() > 1 && same(placed.front(), placed.back())) placed.pop_back();
        if (placed.size() < 3) return;
        // Dear ImGui's smooth edges want the points clockwise on the screen.
        float twice_area = 0;
        for (std::size_t i = 0; i < placed.size(); ++i) {
            const ImVec2 p = placed[i];
            const ImVec2 q = placed[(i + 1) % placed.size()];
            twice_area += p.x * q.y - q.x * p.y;
        }
        if (twice_area < 0) std::reverse(placed.begin(), placed.end());
        list.AddConcavePolyFilled(placed.data(), static_cast<int>(placed.size()), colour);
    }

    void box(const Mark& mark) const {
        const ImVec2 p = at(mark.points[0]);
        const ImVec2 q = at(mark.points[1]);
        if (mark.width <= 0) {
            list.AddRectFilled({grid.edge(p.x), grid.edge(p.y)}, {grid.edge(q.x), grid.edge(q.y)}, colour,
                               mark.rounding);
            return;
        }
        if (mark.dashed) {
            lines(dash_segments(box_outline(mark.points[0], mark.points[1], mark.rounding), dash_length(mark.width),
                                gap_length(mark.width)),
                  mark.width);
            return;
        }
        const float thick = grid.thickness(mark.width);
        const float left = grid.start(p.x, thick) + thick / 2;
        const float top = grid.start(p.y, thick) + thick / 2;
        const float right = grid.start(q.x, thick) + thick / 2;
        const float bottom = grid.start(q.y, thick) + thick / 2;
        list.PathRect({left, top}, {right, bottom}, mark.rounding);
        list.PathStroke(colour, ImDrawFlags_Closed, thick);
    }

    static std::vector<Point> box_outline(Point a, Point b, float rounding) {
        constexpr float quarter = 1.57079633f;
        const float r = std::min({rounding, (b.x - a.x) / 2, (b.y - a.y) / 2});
        if (!(r > 0)) return {a, {b.x, a.y}, b, {a.x, b.y}, a};
        std::vector<Point> outline{{a.x + r, a.y}};
        const Point centres[] = {{b.x - r, a.y + r}, {b.x - r, b.y - r}, {a.x + r, b.y - r}, {a.x + r, a.y + r}};
        float angle = -quarter;
        for (const Point& centre : centres) {
            const std::vector<Point> corner = arc(centre, r, r, angle, angle + quarter, 6);
            outline.insert(outline.end(), corner.begin(), corner.end());
            angle += quarter;
        }
        return outline;
    }

    void mark(const Mark& m) const {
        switch (m.kind) {
        case Mark::Kind::line:
        case Mark::Kind::polyline:
            if (m.dashed)
                lines(dash_segments(m.points, dash_length(m.width), gap_length(m.width)), m.width);
            else if (m.points.size() == 2)
                line(m.points[0], m.points[1], m.width);
            else
                polyline(m.points, m.width);
            break;
        case Mark::Kind::area: area(m.points); break;
        case Mark::Kind::hatched: lines(hatch_segments(m.points, m.spacing), m.width); break;
        case Mark::Kind::box:
            if (m.points.size() == 2) box(m);
            break;
        case Mark::Kind::text:
            if (!m.points.empty()) {
                const ImVec2 p = at(m.points[0]);
                paint_text(list, fonts, {p.x, p.y}, m.text.data(), m.text.data() + m.text.size(), colour, m.face,
                           m.size, m.anchor, grid.scale);
            }
            break;
        }
    }
};

}  // namespace

float baseline_below_top(ImFont* font, float size) {
    const ImFontBaked* baked = font->GetFontBaked(size);
    return std::round(baked->Ascent) * size / baked->Size;  // glyphs are laid out on the rounded ascent
}

void paint_text(ImDrawList& list, const Fonts& fonts, Point baseline, const char* begin, const char* end, ImU32 colour,
                Face face, float size, Anchor anchor, float pixel_scale) {
    if (begin == end || !(size > 0)) return;
    ImFont* font = fonts.of(face);
    // Dear ImGui sets this for the font in use only; without it the other one's glyphs would be enlarged and soft.
    font->CurrentRasterizerDensity = pixel_scale;
    const Grid grid{pixel_scale};
    float left = baseline.x;
    if (anchor != Anchor::start) {
        const float width = font->CalcTextSizeA(size, 1e9f, 0, begin, end).x;
        left -= anchor == Anchor::middle ? width / 2 : width;
    }
    const ImVec2 wanted{grid.edge(left), grid.edge(baseline.y) - baseline_below_top(font, size)};
    const int first = list.VtxBuffer.Size;
    list.AddText(font, size, wanted, colour, begin, end);
    // AddText cuts positions to whole CSS pixels; what it cut is given back, and italics lean.
    const float dx = wanted.x - std::trunc(wanted.x);
    const float dy = wanted.y - std::trunc(wanted.y);
    const float slant = face == Face::italic ? italic_slant : 0;
    const float line_y = grid.edge(baseline.y);
    for (int i = first; i < list.VtxBuffer.Size; ++i) {
        ImVec2& p = list.VtxBuffer[i].pos;
        p.y += dy;
        p.x += dx + (line_y - p.y) * slant;
    }
}

void paint(const Picture& picture, Point origin, const Theme& theme, ImDrawList& list, const Fonts& fonts,
           float pixel_scale) {
    const float scale = pixel_scale > 0 ? pixel_scale : 1;
    // The soft edge of slanted lines is one device pixel wide, not one CSS pixel.
    const float fringe = list._FringeScale;
    list._FringeScale = fringe / scale;
    Brush brush{list, fonts, origin, Grid{scale}};
    for (const Mark& mark : picture.marks) {
        brush.colour = canvas_colour(theme.of(mark.ink));
        brush.mark(mark);
    }
    list._FringeScale = fringe;
}

}  // namespace overwater
