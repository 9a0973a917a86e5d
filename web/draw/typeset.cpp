#include "web/draw/typeset.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string_view>
#include <utility>
#include <vector>

#include "web/draw/geometry.hpp"

namespace overwater {

namespace {

// All lengths in em. Axis, ascender, descender and digits are those of Source Sans 3 (its minus sign reaches from 0.299
// to 0.361, its ascender letters to 0.724, its g down to -0.224); the others are this page's own taste.
constexpr float axis = 0.33f;
constexpr float ascender = 0.724f;
constexpr float descender = 0.224f;
constexpr float part_size = 0.92f;  ///< of a fraction's parts
constexpr float script_size = 0.7f;
constexpr float fraction_gap = 0.16f;
constexpr float fraction_overhang = 0.1f;
constexpr float superscript_rise = 0.36f;
constexpr float subscript_drop = 0.16f;
constexpr float stacked_shift = 0.06f;  ///< further, where a base has both
constexpr float operation_space = 0.26f;
constexpr float tight_space = 0.06f;
constexpr float unit_space = 0.2f;  ///< as wide as the font's own space
constexpr float factor_space = 0.12f;

/// A part of the formula, drawn around the left end of its baseline.
struct Box {
    Picture picture;
    float width = 0;
    float ascent = 0;
    float descent = 0;

    void place(const Box& other, float x, float y) {
        picture.place(other.picture, {x, y});
        ascent = std::max(ascent, other.ascent - y);
        descent = std::max(descent, other.descent + y);
        width = std::max(width, x + other.width);
    }
};

using Kind = Formula::Kind;

/// What a part ends with, for the space after it: the base of an index, the last of a row.
Kind end_kind(const Formula& f) {
    if (f.children.empty()) return f.kind;
    if (f.kind == Kind::subscript || f.kind == Kind::superscript) return end_kind(f.children.front());
    if (f.kind == Kind::row) return end_kind(f.children.back());
    return f.kind;
}

Kind begin_kind(const Formula& f) {
    if (f.children.empty()) return f.kind;
    const bool looks_like_its_first = f.kind == Kind::subscript || f.kind == Kind::superscript || f.kind == Kind::row;
    return looks_like_its_first ? begin_kind(f.children.front()) : f.kind;
}

bool close_operation(std::string_view sign) { return sign == "/" || sign == "·" || sign == "⁄"; }

class Setter {
public:
    Setter(const TextMeasure& measure, Ink ink) : measure_(measure), ink_(ink) {}

    Box set(const Formula& f, float size) const {
        switch (f.kind) {
        case Kind::number:
        case Kind::unit:
        case Kind::words:
        case Kind::operation: return text(f, Face::regular, size);
        case Kind::variable: return text(f, Face::italic, size);
        case Kind::row: return row(f.children, size);
        case Kind::fraction:
            if (f.children.size() == 2) return fraction(f, size);
            break;
        case Kind::subscript:
        case Kind::superscript:
            if (f.children.size() == 2) return script(f, size);
            break;
        case Kind::root:
            if (f.children.size() == 1) return root(f, size);
            break;
        case Kind::bracketed:
            if (f.children.size() == 1) return bracketed(f, size);
            break;
        }
        return row(f.children, size);  // not what the kind promises: show what there is
    }

private:
    static float rule(float size) { return std::max(1.0f, std::round(size / 18)); }

    Box text(const Formula& f, Face face, float size) const {
        const std::string& words = f.text;
        const Ink ink = f.changed ? Ink::copper : ink_;
        Box box;
        const float whole = std::max(smallest_text, std::round(size));
        box.width = measure_.width(words, face, whole);
        // A slanted letter leans out of its own width, and its neighbour must not touch it.
        if (face == Face::italic) box.width += 0.06f * whole;
        box.ascent = ascender * whole;
        box.descent = descender * whole;
        box.picture.text({0, 0}, words, ink, face, whole);
        if (f.changed) {
            // Not by colour alone.
            const float y = std::round(0.16f * whole);
            box.picture.line({0, y}, {box.width, y}, ink, rule(1.5f * size));
        }
        return box;
    }

    float space_between(const Formula& left, const Formula& right, float size) const {
        const Kind a = end_kind(left);
        const Kind b = begin_kind(right);
        if (a == Kind::operation || b == Kind::operation) return 0;  // has its own
        if (b == Kind::bracketed && (a == Kind::variable || a == Kind::words)) return 0;
        if (b == Kind::unit || a == Kind::words || b == Kind::words) return unit_space * size;
        if (a == Kind::number && b == Kind::number) return unit_space * size;
        return factor_space * size;
    }

    Box row(const std::vector<Formula>& parts, float size) const {
        Box box;
        for (std::size_t i = 0; i < parts.size(); ++i) {
            const Formula& part = parts[i];
            if (part.kind == Kind::operation) {
                const bool signs_what_follows =
                    (i == 0 || parts[i - 1].kind == Kind::operation) && part.text != "=" && part.text != "≈";
                const float space = close_operation(part.text) ? tight_space : operation_space;
                const float before = i == 0 || signs_what_follows ? 0 : space * size;
                const float after = signs_what_follows || i + 1 == parts.size() ? 0 : space * size;
                box.place(set(part, size), box.width + before, 0);
                box.width += after;
                continue;
            }
            const float gap = i == 0 ? 0 : space_between(parts[i - 1], part, size);
            box.place(set(part, size), box.width + gap, 0);
        }
        return box;
    }

    Box fraction(const Formula& f, float size) const {
        const Box above = set(f.children[0], size * part_size);
        const Box below = set(f.children[1], size * part_size);
        const float width = std::max(above.width, below.width) + 2 * fraction_overhang * size;
        const float line = -axis * size;
        const float gap = fraction_gap * size;
        Box box;
        box.place(above, (width - above.width) / 2, std::round(line - gap - above.descent));
        box.place(below, (width - below.width) / 2, std::round(line + gap + below.ascent));
        box.width = width;
        box.picture.line({0, line}, {width, line}, ink_, rule(size));
        return box;
    }

    /// An index and an exponent of the same base, one above the other.
    Box two_scripts(const Formula& lowered, const Formula& exponent, float size) const {
        const Box base = set(lowered.children[0], size);
        Box box;
        box.place(base, 0, 0);
        place_lowered(box, base, lowered, size, stacked_shift);
        place_raised(box, base, exponent, size, stacked_shift);
        return box;
    }

    void place_lowered(Box& box, const Box& base, const Formula& f, float size, float shift) const {
        // A slanted letter's extra width serves a raised index only; a lowered one tucks in.
        const float tuck = end_kind(f.children[0]) == Kind::variable ? 0.08f : -0.03f;
        const float drop = (subscript_drop + shift) * size + std::max(0.0f, base.descent - descender * size);
        box.place(set(f.children[1], size * script_size), base.width - tuck * size, std::round(drop));
    }

    void place_raised(Box& box, const Box& base, const Formula& exponent, float size, float shift) const {
        // On a tall base the exponent stands at its shoulder.
        const float rise = (superscript_rise + shift) * size + std::max(0.0f, base.ascent - ascender * size);
        box.place(set(exponent, size * script_size), base.width + 0.03f * size, -std::round(rise));
    }

    Box script(const Formula& f, float size) const {
        const Formula& under = f.children[0];
        if (f.kind == Kind::superscript && under.kind == Kind::subscript && under.children.size() == 2) {
            return two_scripts(under, f.children[1], size);
        }
        const Box base = set(under, size);
        Box box;
        box.place(base, 0, 0);
        if (f.kind == Kind::superscript)
            place_raised(box, base, f.children[1], size, 0);
        else
            place_lowered(box, base, f, size, 0);
        return box;
    }

    Box root(const Formula& f, float size) const {
        const Box inside = set(f.children[0], size);
        const float pen = rule(size);
        const float top = -inside.ascent - 0.12f * size;
        const float bottom = inside.descent;
        const float hook = 0.5f * size;
        const float end = hook + inside.width + 0.18f * size;
        Box box;
        box.place(inside, hook + 0.08f * size, 0);
        const float middle = (top + bottom) / 2 + 0.1f * size;
        box.picture.polyline({{0, middle + 0.04f * size},
                              {0.1f * size, middle - 0.03f * size},
                              {0.27f * size, bottom},
                              {hook, top},
                              {end, top}},
                             ink_, pen);
        box.width = end;
        box.ascent = -top + pen;
        return box;
    }

    Box bracketed(const Formula& f, float size) const {
        const Box inside = set(f.children[0], size);
        Box box;
        if (inside.ascent < 1.1f * size && inside.descent < 0.5f * size) {
            box.place(text(Formula::leaf(Kind::words, "("), Face::regular, size), 0, 0);
            box.place(inside, box.width, 0);
            box.place(text(Formula::leaf(Kind::words, ")"), Face::regular, size), box.width, 0);
            return box;
        }
        constexpr float pi = 3.14159265f;
        constexpr float reach = 0.62f;  // part of a half-circle that the parenthesis bends
        const float half = (inside.ascent + inside.descent) / 2 + 0.04f * size;
        const float middle = (inside.descent - inside.ascent) / 2;
        const float depth = std::min(0.3f * size, 0.16f * half + 0.1f * size);
        const float gap = 0.1f * size;
        const float angle = reach * pi / 2;
        const float bulge = depth / (1 - std::cos(angle));
        const float tall = half / std::sin(angle);
        const float right = gap + depth + inside.width + 2 * gap;
        box.picture.polyline(arc({gap + bulge, middle}, bulge, tall, pi - angle, pi + angle, 16), ink_, rule(size));
        box.place(inside, gap + depth + gap, 0);
        box.picture.polyline(arc({right + depth - bulge, middle}, bulge, tall, -angle, angle, 16), ink_, rule(size));
        box.width = right + depth + gap;
        box.ascent = std::max(box.ascent, half - middle);
        box.descent = std::max(box.descent, half + middle);
        return box;
    }

    const TextMeasure& measure_;
    Ink ink_;
};

}  // namespace

Picture typeset(const Formula& formula, float size, Ink ink, const TextMeasure& measure, float* baseline) {
    const Box box = Setter(measure, ink).set(formula, std::max(smallest_text, std::round(size)));
    Picture picture;
    const float ascent = std::ceil(box.ascent);
    picture.width = std::ceil(box.width);
    picture.height = ascent + std::ceil(box.descent);
    picture.place(box.picture, {0, ascent});
    if (baseline != nullptr) *baseline = ascent;
    return picture;
}

}  // namespace overwater
