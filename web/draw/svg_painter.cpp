#include "web/draw/svg_painter.hpp"

#include <utility>

#include "core/quantity/decimal.hpp"
#include "core/quantity/number_format.hpp"
#include "web/draw/geometry.hpp"
#include "web/draw/markup_reference.hpp"

namespace overwater {

namespace {

/// At most two decimals, without trailing zeros.
std::string number(float value) {
    return machine_number(round_to_place(static_cast<double>(value), -2), 9);
}

std::string point_list(const std::vector<Point>& points) {
    std::string out;
    for (const Point& p : points) {
        if (!out.empty()) out += ' ';
        out += number(p.x) + ',' + number(p.y);
    }
    return out;
}

void stroke(Element& element, const Mark& mark, const std::string& colour) {
    element.with("stroke", colour).with("stroke-width", number(mark.width));
    if (mark.dashed) {
        element.with("stroke-dasharray", number(dash_length(mark.width)) + ' ' + number(gap_length(mark.width)));
    }
}

Element line(const Mark& mark, const std::string& colour) {
    const Point a = mark.points[0];
    const Point b = mark.points[1];
    Element e = Element::named("line");
    e.with("x1", number(a.x)).with("y1", number(a.y)).with("x2", number(b.x)).with("y2", number(b.y));
    stroke(e, mark, colour);
    if (a.x == b.x || a.y == b.y) e.with("shape-rendering", "crispEdges");
    return e;
}

Element polyline(const Mark& mark, const std::string& colour) {
    Element e = Element::named("polyline");
    e.with("points", point_list(mark.points)).with("fill", "none");
    stroke(e, mark, colour);
    e.with("stroke-linejoin", "round");
    return e;
}

Element area(const Mark& mark, const std::string& colour) {
    Element e = Element::named("polygon");
    e.with("points", point_list(mark.points)).with("fill", colour);
    return e;
}

Element hatched(const Mark& mark, const std::string& colour) {
    std::string path;
    for (const Segment& s : hatch_segments(mark.points, mark.spacing)) {
        path += 'M' + number(s.a.x) + ' ' + number(s.a.y) + 'L' + number(s.b.x) + ' ' + number(s.b.y);
    }
    Element e = Element::named("path");
    e.with("d", std::move(path)).with("fill", "none");
    stroke(e, mark, colour);
    return e;
}

Element box(const Mark& mark, const std::string& colour) {
    const Point a = mark.points[0];
    const Point b = mark.points[1];
    Element e = Element::named("rect");
    e.with("x", number(a.x)).with("y", number(a.y)).with("width", number(b.x - a.x)).with("height", number(b.y - a.y));
    if (mark.rounding > 0) e.with("rx", number(mark.rounding));
    if (mark.width > 0) {
        e.with("fill", "none");
        stroke(e, mark, colour);
    } else {
        e.with("fill", colour);
    }
    if (!(mark.rounding > 0)) e.with("shape-rendering", "crispEdges");
    return e;
}

Element text(const Mark& mark, const std::string& colour) {
    Element e = Element::named("text");
    if (mark.face == Face::italic) {
        // Leans by 1 in 5, as on the canvas, instead of the italic of whatever font there is.
        e.with("transform",
               "translate(" + number(mark.points[0].x) + ' ' + number(mark.points[0].y) + ") skewX(-11.31)");
    } else {
        e.with("x", number(mark.points[0].x)).with("y", number(mark.points[0].y));
    }
    e.with("font-size", number(mark.size));
    if (mark.face == Face::semibold) e.with("font-weight", "600");
    if (mark.anchor == Anchor::middle) e.with("text-anchor", "middle");
    if (mark.anchor == Anchor::end) e.with("text-anchor", "end");
    e.with("fill", colour);
    e.add(Element::text_node(mark.text));
    return e;
}

Element element_of(const Mark& mark, const std::string& colour) {
    const std::size_t points = mark.points.size();
    switch (mark.kind) {
    case Mark::Kind::line:
        if (points == 2) return line(mark, colour);
        break;
    case Mark::Kind::polyline: return polyline(mark, colour);
    case Mark::Kind::area: return area(mark, colour);
    case Mark::Kind::hatched: return hatched(mark, colour);
    case Mark::Kind::box:
        if (points == 2) return box(mark, colour);
        break;
    case Mark::Kind::text:
        if (points > 0) return text(mark, colour);
        break;
    }
    return Element::named("g");  // a mark without its points: nothing to see, but still one child
}

void append_escaped(std::string& out, std::string_view words) {
    for (const char c : words) {
        if (const char* reference = markup_reference(c)) {
            out += reference;
            continue;
        }
        // Control characters may not stand in a document at all, not even escaped.
        const auto byte = static_cast<unsigned char>(c);
        if (byte >= 0x20 || c == '\n' || c == '\t') out += c;
    }
}

bool plain_name(std::string_view name) {
    for (const char c : name) {
        const bool letter = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
        if (!letter && !(c >= '0' && c <= '9') && c != '-' && c != '_' && c != ':') return false;
    }
    return !name.empty();
}

void append_markup(std::string& out, const Element& element) {
    if (element.name.empty()) {
        append_escaped(out, element.text);
        return;
    }
    if (!plain_name(element.name)) return;
    out += '<' + element.name;
    for (const auto& [name, value] : element.attributes) {
        if (!plain_name(name)) continue;
        out += ' ' + name + "=\"";
        append_escaped(out, value);
        out += '"';
    }
    out += '>';
    append_escaped(out, element.text);
    for (const Element& child : element.children) append_markup(out, child);
    out += "</" + element.name + '>';
}

}  // namespace

Element svg_of(const Picture& picture, const Theme& theme) {
    Element svg = Element::named("svg");
    svg.with("xmlns", "http://www.w3.org/2000/svg")
        .with("width", number(picture.width))
        .with("height", number(picture.height))
        .with("viewBox", "0 0 " + number(picture.width) + ' ' + number(picture.height))
        .with("font-family", std::string(svg_font_family));
    if (!picture.description.empty()) svg.with("role", "img").with("aria-label", picture.description);
    svg.children.reserve(picture.marks.size());
    for (const Mark& mark : picture.marks) svg.add(element_of(mark, css_colour(theme.of(mark.ink))));
    return svg;
}

std::string to_markup(const Element& element) {
    std::string out;
    append_markup(out, element);
    return out;
}

}  // namespace overwater
