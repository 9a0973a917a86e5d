#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "web/draw/ink.hpp"
#include "web/ui/node.hpp"

namespace overwater {

/// Words in a picture are set no smaller than this.
inline constexpr float smallest_text = 9;

struct Point {
    float x = 0;
    float y = 0;
};

/// One mark of a picture. Coordinates are CSS pixels from the picture's upper left corner, y downwards.
struct Mark {
    enum class Kind : unsigned char { line, polyline, area, hatched, box, text };
    Kind kind = Kind::line;
    /// line, polyline: its points; area, hatched: a closed outline; box: two corners; text: the anchor point on the
    /// baseline.
    std::vector<Point> points;
    Ink ink = Ink::text;
    float width = 1;     ///< of a line; 0 for a filled box or area
    float rounding = 0;  ///< of a box's corners
    float spacing = 0;   ///< hatched: distance between strokes
    bool dashed = false;
    std::string text;
    Face face = Face::regular;
    float size = 16;
    Anchor anchor = Anchor::start;
};

/// A drawing that knows nothing of where it is shown: painted on the canvas or as SVG, and described in words.
struct Picture {
    float width = 0;
    float height = 0;
    std::vector<Mark> marks;
    std::string description;

    void line(const Point& a, const Point& b, Ink ink, float width = 1, bool dashed = false);
    void polyline(std::vector<Point> points, Ink ink, float width = 1, bool dashed = false);
    void area(std::vector<Point> outline, Ink ink);
    void hatched(std::vector<Point> outline, Ink ink, float spacing, float width = 1);
    void filled_box(const Point& a, const Point& b, Ink ink, float rounding = 0);
    /// The frame's line runs along the box's edge, half of its width on each side.
    void framed_box(const Point& a, const Point& b, Ink ink, float width = 1, float rounding = 0, bool dashed = false);
    void text(const Point& baseline, std::string words, Ink ink, Face face, float size, Anchor anchor = Anchor::start);
    /// Adds another picture's marks, shifted.
    void place(const Picture& other, const Point& at);
};

/// Widths of texts as they will be drawn, so that layout is the same on the canvas and as SVG.
class TextMeasure {
public:
    virtual ~TextMeasure() = default;
    /// Width in CSS pixels of `words` at `size`.
    virtual float width(std::string_view words, Face face, float size) const = 0;
};

}  // namespace overwater
