#include "web/draw/class_pictures.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "web/draw/geometry.hpp"

namespace overwater {

namespace {

constexpr float text_size = 14;
constexpr float dot_size = 4;
constexpr float tallest_rows = 420;

/// Numbers along one direction of a picture.
struct Axis {
    double low = 0;
    double high = 1;
    float from = 0;  ///< px of `low`
    float to = 1;

    float at(double value) const { return from + static_cast<float>((value - low) / (high - low)) * (to - from); }
    /// A little room at both ends; never without length.
    void give_room(double share) {
        const double room = std::max((high - low) * share, 1e-6 * std::max(std::fabs(high), 1e-3));
        low -= room;
        high += room;
    }
    void take_in(double value) {
        low = std::min(low, value);
        high = std::max(high, value);
    }
};

/// So many dots are small squares: round ones have more corners than a frame may have.
constexpr std::size_t many_dots = 200;

void dot(Picture& picture, const Point& at, bool hollow, std::size_t count) {
    const bool many = count > many_dots;
    const float r = many ? 1.5f : dot_size;
    const float rounding = many ? 0 : r;
    const Point a{at.x - r, at.y - r};
    const Point b{at.x + r, at.y + r};
    if (hollow) {
        picture.framed_box(a, b, Ink::soft, 1.5f, rounding);
    } else {
        picture.filled_box(a, b, Ink::copper, rounding);
    }
}

/// What lies beyond the picture stands at its edge as an arrow that points there: {-1, 0} to the left, {0, 1} down.
void beyond(Picture& picture, const Point& at, Point to) {
    const float r = dot_size + 1;
    const Point across{to.y * r, to.x * r};
    picture.area({{at.x + to.x * r, at.y + to.y * r},
                  {at.x + across.x - to.x * r, at.y + across.y - to.y * r},
                  {at.x - across.x - to.x * r, at.y - across.y - to.y * r}},
                 Ink::soft);
}

/// Where `place` had to be moved to stay between `low` and `high`: -1, 0 or 1.
float kept_between(float& place, float low, float high) {
    const float wanted = place;
    place = std::clamp(place, low, high);
    return wanted < place ? -1.0f : wanted > place ? 1.0f : 0.0f;
}

/// The numbers of an axis that lies along the bottom, with a stroke each.
void numbers_below(Picture& picture, const ClassView& view, const Axis& axis, float y, double least_gap) {
    const AxisStep step = round_step((axis.high - axis.low) * least_gap / static_cast<double>(axis.to - axis.from));
    for (double value = std::ceil(axis.low / step.step) * step.step; value <= axis.high; value += step.step) {
        const float x = std::round(axis.at(value)) + 0.5f;
        picture.line({x, y}, {x, y + 4}, Ink::field_edge);
        picture.text({x, y + 17}, view.number(value, step.decimals), Ink::soft, Face::regular, text_size,
                     Anchor::middle);
    }
}

/// The numbers of an axis that stands upright, with a thin line across the picture each.
void numbers_beside(Picture& picture, const ClassView& view, const Axis& axis, float left, float right,
                    double least_gap) {
    const AxisStep step = round_step((axis.high - axis.low) * least_gap / static_cast<double>(axis.from - axis.to));
    for (double value = std::ceil(axis.low / step.step) * step.step; value <= axis.high; value += step.step) {
        const float y = std::round(axis.at(value)) + 0.5f;
        picture.line({left, y}, {right, y}, std::fabs(value) < step.step / 2 ? Ink::field_edge : Ink::line);
        picture.text({left - 6, y + 5}, view.number(value, step.decimals), Ink::soft, Face::regular, text_size,
                     Anchor::end);
    }
}

constexpr double litre_per_mole = 1e-3;  // m³/mol
constexpr double millilitre = 1e-6;      // m³
constexpr double millimole = 1e-3;       // mol

}  // namespace

ClassPicture draw_class_dots(const ClassView& view, float width, const TextMeasure& measure) {
    ClassPicture out;
    Picture& picture = out.picture;
    picture.width = width;
    picture.description = view.description;
    const auto count = static_cast<float>(std::max<std::size_t>(view.dots.size(), 1));
    const float row = std::min(20.0f, tallest_rows / count);
    const bool named = row >= 14;
    float names = 8;
    for (const ClassDot& one : view.dots) {
        if (named) names = std::max(names, measure.width(one.name, Face::regular, text_size) + 10);
    }
    names = std::min(names, width * 0.3f);
    const float top = view.accepted > 0 ? 22.0f : 6.0f;
    const float bottom = top + row * count + 4;
    picture.height = bottom + 40;
    if (view.dots.empty()) return out;

    const Summary& ratios = view.set->ratios;
    Axis axis;
    // Whiskers may leave the picture; what decides its range are the dots and the accepted value.
    // Neither do groups that are left out: one far off would press all others together.
    bool first = true;
    for (const ClassDot& one : view.dots) {
        if (one.left_out && !view.set->points.empty()) continue;
        if (first) axis.low = axis.high = one.ratio;
        axis.take_in(one.ratio);
        first = false;
    }
    if (view.accepted > 0) axis.take_in(view.accepted);
    axis.give_room(0.08);
    axis.from = names;
    axis.to = width - 8;
    const auto inside = [&](double value) { return std::clamp(axis.at(value), axis.from, axis.to); };
    if (ratios.half_width > 0) {
        picture.filled_box({inside((ratios.mean - ratios.half_width) / litre_per_mole), top},
                           {inside((ratios.mean + ratios.half_width) / litre_per_mole), bottom}, Ink::band);
    }
    if (view.accepted > 0) {
        const float x = std::round(axis.at(view.accepted));
        picture.line({x, top - 4}, {x, bottom}, Ink::text, 2);
        const float half = measure.width(view.accepted_words, Face::regular, text_size) / 2;
        picture.text({std::clamp(x, half, std::max(half, width - half)), top - 8}, view.accepted_words, Ink::text,
                     Face::regular, text_size, Anchor::middle);
    }
    picture.line({names, bottom + 0.5f}, {width, bottom + 0.5f}, Ink::field_edge);
    numbers_below(picture, view, axis, bottom, 64);
    picture.text({width - 8, bottom + 34}, view.ratio_words, Ink::soft, Face::regular, text_size, Anchor::end);
    for (std::size_t i = 0; i < view.dots.size(); ++i) {
        const ClassDot& one = view.dots[i];
        Point at{axis.at(one.ratio), top + row * (static_cast<float>(i) + 0.5f)};
        const float side = kept_between(at.x, axis.from + dot_size, axis.to - dot_size);
        out.places.push_back(at);
        if (named) picture.text({0, at.y + 5}, one.name, Ink::soft, Face::regular, text_size);
        if (side != 0) {
            beyond(picture, at, {side, 0});
            continue;
        }
        if (one.half_width > 0) {
            picture.line({inside(one.ratio - one.half_width), at.y}, {inside(one.ratio + one.half_width), at.y},
                         one.left_out ? Ink::line : Ink::vapour_bar, std::min(2.0f, row));
        }
        dot(picture, at, one.left_out, view.dots.size());
    }
    return out;
}

ClassPicture draw_class_lines(const ClassView& view, float width, float height, const TextMeasure& measure) {
    ClassPicture out;
    Picture& picture = out.picture;
    picture.width = width;
    picture.height = height;
    picture.description = view.description;
    if (view.dots.empty()) return out;
    const ClassSet& set = *view.set;
    const double slope = set.origin.slope / litre_per_mole;  // mL/mmol is L/mol

    Axis x;
    Axis y;
    Axis rest;
    x.high = y.high = rest.low = rest.high = 0;
    for (const ClassDot& one : view.dots) {
        x.take_in(one.amount);
        if (one.left_out && !set.points.empty()) continue;
        y.take_in(one.volume);
        rest.take_in(one.volume - slope * one.amount);
    }
    x.high *= 1.06;
    y.high *= 1.06;
    if (set.free) y.take_in(set.free->intercept / millilitre);
    rest.give_room(0.15);
    const float left = 46;
    const float right = width - 8;
    // Paper has other letters, which may be wider.
    const auto wide = [&](const std::string& words) { return 46 + 1.2f * measure.width(words, Face::regular, text_size); };
    const bool one_row = !set.free || wide(view.origin_words) + wide(view.free_words) <= width;
    const float legend = one_row ? 40.0f : 60.0f;
    const float below = std::round((height - legend - 24) * 0.7f);
    x.from = left;
    x.to = right;
    y.from = below;
    y.to = legend + 10;
    rest.from = height - 40;
    rest.to = below + 34;

    numbers_beside(picture, view, y, left, right, 34);
    numbers_beside(picture, view, rest, left, right, 26);
    numbers_below(picture, view, x, height - 38, 56);
    picture.line({left, y.to}, {left, below}, Ink::field_edge);
    picture.line({left, rest.to}, {left, height - 38}, Ink::field_edge);
    picture.text({0, legend}, view.volume_words, Ink::soft, Face::regular, text_size);
    picture.text({0, below + 24}, view.residual_words, Ink::soft, Face::regular, text_size);
    picture.text({right, height - 4}, view.amount_words, Ink::soft, Face::regular, text_size, Anchor::end);

    constexpr int steps = 60;
    const auto amount_at = [&](int i) { return x.high * i / steps; };
    if (set.origin.count > 1) {
        // A wedge: both its edges are straight lines from the origin.
        const double far = x.high;
        const double reach = band_factor(set.origin) * set.origin.u_at(far * millimole) / millilitre;
        picture.area({{x.at(0), y.at(0)}, {x.at(far), y.at(slope * far + reach)}, {x.at(far), y.at(slope * far - reach)}},
                     Ink::band);
    }
    picture.line({x.at(0), y.at(0)}, {x.at(x.high), y.at(slope * x.high)}, Ink::copper, 2);
    if (set.free) {
        const double factor = band_factor(*set.free);
        for (const double side : {-factor, 0.0, factor}) {
            std::vector<Point> points;
            // Outside the picture it is not drawn at all: along its edge it would look like a line of its own. Where it leaves
            // and comes back, each part is a line.
            const auto draw = [&] {
                picture.polyline(std::exchange(points, {}), Ink::liquid_edge, side == 0.0 ? 1.8f : 1.0f, side != 0.0);
            };
            for (int i = 0; i <= steps; ++i) {
                const double n = amount_at(i) * millimole;
                const double value = set.free->at(n) + side * set.free->u_at(n);
                float height_at = y.at(value / millilitre);
                if (kept_between(height_at, y.to - 6, y.from + 6) == 0)
                    points.push_back({x.at(amount_at(i)), height_at});
                else if (!points.empty())
                    draw();
            }
            draw();
        }
    }

    const auto explain = [&](Point at, const std::string& words, Ink ink) {
        picture.line({at.x, at.y}, {at.x + 22, at.y}, ink, 2);
        picture.text({at.x + 28, at.y + 5}, words, Ink::text, Face::regular, text_size);
    };
    explain({0, 11}, view.origin_words, Ink::copper);
    if (set.free)
        explain(one_row ? Point{wide(view.origin_words), 11} : Point{0, 31}, view.free_words, Ink::liquid_edge);

    for (const ClassDot& one : view.dots) {
        Point place{x.at(one.amount), y.at(one.volume)};
        const float side = kept_between(place.y, y.to, y.from);
        out.places.push_back(place);
        Point off{place.x, rest.at(one.volume - slope * one.amount)};
        const float side_off = kept_between(off.y, rest.to, rest.from);
        for (const auto& [at, to] : {std::pair(place, side), std::pair(off, side_off)}) {
            if (to != 0) {
                beyond(picture, at, {0, to});
            } else {
                dot(picture, at, one.left_out, view.dots.size());
            }
        }
    }
    return out;
}

void ring(Picture& picture, Point at) {
    const float r = dot_size + 4;
    picture.framed_box({at.x - r, at.y - r}, {at.x + r, at.y + r}, Ink::text, 2, r);
}

std::size_t dot_near(const std::vector<Point>& places, Point at) {
    std::size_t nearest = ~std::size_t{0};
    float best = 14 * 14;
    for (std::size_t i = 0; i < places.size(); ++i) {
        const float x = places[i].x - at.x;
        const float y = places[i].y - at.y;
        if (x * x + y * y > best) continue;
        best = x * x + y * y;
        nearest = i;
    }
    return nearest;
}

}  // namespace overwater
