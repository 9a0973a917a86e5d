#include "web/draw/picture.hpp"

#include <algorithm>
#include <utility>

namespace overwater {

namespace {

Mark stroke(Mark::Kind kind, std::vector<Point> points, Ink ink, float width, bool dashed) {
    Mark mark;
    mark.kind = kind;
    mark.points = std::move(points);
    mark.ink = ink;
    mark.width = width;
    mark.dashed = dashed;
    return mark;
}

std::vector<Point> corners(Point a, Point b) {
    return {{std::min(a.x, b.x), std::min(a.y, b.y)}, {std::max(a.x, b.x), std::max(a.y, b.y)}};
}

}  // namespace

void Picture::line(const Point& a, const Point& b, Ink ink, float line_width, bool dashed) {
    marks.push_back(stroke(Mark::Kind::line, {a, b}, ink, line_width, dashed));
}

void Picture::polyline(std::vector<Point> points, Ink ink, float line_width, bool dashed) {
    marks.push_back(stroke(Mark::Kind::polyline, std::move(points), ink, line_width, dashed));
}

void Picture::area(std::vector<Point> outline, Ink ink) {
    marks.push_back(stroke(Mark::Kind::area, std::move(outline), ink, 0, false));
}

void Picture::hatched(std::vector<Point> outline, Ink ink, float spacing, float line_width) {
    marks.push_back(stroke(Mark::Kind::hatched, std::move(outline), ink, line_width, false));
    marks.back().spacing = spacing;
}

void Picture::filled_box(const Point& a, const Point& b, Ink ink, float rounding) {
    marks.push_back(stroke(Mark::Kind::box, corners(a, b), ink, 0, false));
    marks.back().rounding = rounding;
}

void Picture::framed_box(const Point& a, const Point& b, Ink ink, float line_width, float rounding, bool dashed) {
    marks.push_back(stroke(Mark::Kind::box, corners(a, b), ink, line_width, dashed));
    marks.back().rounding = rounding;
}

void Picture::text(const Point& baseline, std::string words, Ink ink, Face face, float size, Anchor anchor) {
    Mark mark = stroke(Mark::Kind::text, {baseline}, ink, 0, false);
    mark.text = std::move(words);
    mark.face = face;
    mark.size = size;
    mark.anchor = anchor;
    marks.push_back(std::move(mark));
}

void Picture::place(const Picture& other, const Point& at) {
    marks.reserve(marks.size() + other.marks.size());
    for (Mark mark : other.marks) {
        for (Point& point : mark.points) {
            point.x += at.x;
            point.y += at.y;
        }
        marks.push_back(std::move(mark));
    }
}

}  // namespace overwater
