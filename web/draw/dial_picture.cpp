#include "web/draw/dial_picture.hpp"

#include <algorithm>
#include <cmath>

#include "core/quantity/number_format.hpp"
#include "web/draw/geometry.hpp"
#include "web/draw/tube_shape.hpp"

namespace overwater {

namespace {

constexpr float edge = 16;  ///< above and below an upright scale
constexpr double half_turn = 3.14159265358979;
constexpr float number_size = 18;
constexpr float least_number_px = 24;

/// One line of a scale.
struct Line {
    double value = 0;
    bool numbered = false;
    bool middle = false;  ///< half way between two numbered ones
};

/// The lines that a window shows.
std::vector<Line> lines_of(const Dial& dial, const DialWindow& window, const DialSteps& steps) {
    std::vector<Line> lines;
    const auto at = [&](double value) { return (value - dial.low) / dial.division; };
    const int last = static_cast<int>(std::lround(at(dial.high)));
    const int from = std::max(0, static_cast<int>(std::ceil(at(window.low) - 1e-6)));
    const int to = std::min(last, static_cast<int>(std::floor(at(window.high) + 1e-6)));
    for (int i = from; i <= to; ++i) {
        if (i % steps.line != 0) continue;
        lines.push_back({dial.low + i * dial.division, i % steps.number == 0, 2 * i % dial.divisions_per_number == 0});
    }
    return lines;
}

std::string number_of(const Dial& dial, const DialLook& look, double value) {
    return format_fixed(value, dial.number_decimals, look.decimal_sign);
}

/// An upright scale with what stands beside or within it.
class Upright {
public:
    Upright(const Dial& dial, const DialLook& look, float width, float height)
        : dial_(dial), look_(look), centre_(std::round(width * 0.4f)) {
        picture_.width = width;
        picture_.height = height;
        picture_.description = look.description;
        const DialWindow window = dial_window(dial, look.zoom);
        px_ = static_cast<float>((height - 2 * edge) * dial.division / (window.high - window.low));
        lines_ = lines_of(dial, window, dial_steps(dial, static_cast<double>(px_), least_number_px));
        mark_ = y(dial.position);
    }

    Picture draw() {
        switch (dial_.kind) {
        case DialKind::tube_scale: tube(); break;
        case DialKind::ruler: ruler(); break;
        default: column(); break;
        }
        if (look_.zoom != DialZoom::whole) sight();
        picture_.text({picture_.width - 4, 15}, look_.unit, Ink::soft, Face::regular, 15, Anchor::end);
        return std::move(picture_);
    }

private:
    float y(double value) const { return dial_height_of(dial_, look_, value, picture_.height); }

    /// The scale's lines to the left of `x`, or to its right, and its numbers to the right of `numbers`.
    void scale(float x, float shortest, float numbers, float way) {
        for (const Line& line : lines_) {
            const float at = y(line.value);
            const float length = shortest * (line.numbered ? 2.2f : line.middle ? 1.6f : 1.0f);
            picture_.line({x, at}, {x + way * length, at}, Ink::text, line.numbered ? 1.6f : 1.1f);
            if (!line.numbered) continue;
            picture_.text({numbers, at + number_size * 0.36f}, number_of(dial_, look_, line.value), Ink::text,
                          Face::semibold, number_size);
        }
    }

    void tube() {
        const float half = std::clamp(picture_.width * 0.17f, 36.0f, 60.0f);
        const float bottom = picture_.height;
        const bool closed = look_.zoom == DialZoom::whole;
        TubeShape shape;
        shape.centre = centre_;
        shape.half_width = half;
        // Nearby the closed end is far above.
        shape.top = closed ? 3 : -2 * half;
        shape.mouth = bottom;
        const float rise = std::clamp(1.5f * px_, 5.0f, half * 0.45f);
        const std::vector<Point> surface = shape.surface(mark_, rise);
        const auto in_picture = [](std::vector<Point> outline) {
            for (Point& p : outline) p.y = std::max(p.y, 0.0f);
            return outline;
        };
        picture_.area(in_picture(shape.below(surface)), Ink::liquid);
        const std::vector<Point> gas = in_picture(shape.above(surface));
        picture_.area(gas, Ink::gas);
        picture_.hatched(gas, Ink::gas_hatch, 12);
        if (closed) {
            picture_.polyline(shape.wall(), Ink::text, 2);
        } else {
            for (const float x : {centre_ - half, centre_ + half}) picture_.line({x, 0}, {x, bottom}, Ink::text, 2);
        }
        picture_.polyline(surface, Ink::liquid_edge, 2.5f);
        scale(centre_ + half, half * 0.42f, centre_ + half + 9, -1);
        right_ = centre_ + half + 4;
    }

    /// A thin column in glass: it ends flat in a thermometer, highest in the middle if it is mercury.
    void column() {
        const bool mercury = dial_.kind == DialKind::mercury_column;
        const float half = mercury ? 9 : 4;
        const float glass = mercury ? 12 : 10;
        const float bottom = picture_.height;
        const Ink ink = mercury ? Ink::soft : Ink::warning;
        const float round = mercury ? 6.0f : 0.0f;
        std::vector<Point> outline = arc({centre_, mark_ + round}, half, round, static_cast<float>(half_turn),
                                         static_cast<float>(2 * half_turn), mercury ? 16 : 1);
        outline.push_back({centre_ + half, bottom});
        outline.push_back({centre_ - half, bottom});
        picture_.area(outline, ink);
        for (const float way : {-1.0f, 1.0f}) {
            picture_.line({centre_ + way * glass, 0}, {centre_ + way * glass, bottom}, Ink::text, 1.5f);
        }
        scale(centre_ + glass + 3, 15, centre_ + glass + 43, 1);
        right_ = centre_ + glass + 38;
    }

    /// A ruler with what is measured held beside it, from its 0 on.
    void ruler() {
        const float left = centre_ - 4;
        const float right = left + 84;
        picture_.filled_box({left, 0}, {right, picture_.height}, Ink::card);
        picture_.line({left, 0}, {left, picture_.height}, Ink::text, 1.5f);
        picture_.line({right, 0}, {right, picture_.height}, Ink::line, 1.5f);
        const float foot = std::min(y(0), picture_.height);
        const bool ribbon = dial_.field == Field::ribbon_length;
        picture_.filled_box({left - 40, std::min(mark_, foot)}, {left - 4, foot}, ribbon ? Ink::soft : Ink::liquid);
        picture_.line({left - 40, mark_}, {left - 2, mark_}, ribbon ? Ink::text : Ink::liquid_edge, 2);
        scale(left, 15, left + 42, 1);
        right_ = left + 34;
    }

    /// The line of sight, level with the position: nothing is read from above or below.
    void sight() { picture_.line({4, mark_}, {right_, mark_}, Ink::copper, 1, true); }

    const Dial& dial_;
    const DialLook& look_;
    Picture picture_;
    float centre_;
    float px_ = 1;      ///< from one division to the next
    float mark_ = 0;    ///< where the position is
    float right_ = 0;   ///< how far the line of sight goes
    std::vector<Line> lines_;
};

/// A needle before a round scale, of which a part is seen.
Picture draw_round(const Dial& dial, const DialLook& look, float width, float height) {
    Picture picture;
    picture.width = width;
    picture.height = height;
    picture.description = look.description;
    const DialArc round = dial_arc(look.zoom, width, height);
    const DialWindow window = dial_window(dial, look.zoom);
    const auto point = [&](double value, float radius) {
        const auto angle = static_cast<float>(dial_angle_of(dial, look, value, width, height));
        return Point{round.centre.x + radius * std::cos(angle), round.centre.y + radius * std::sin(angle)};
    };
    const double px = static_cast<double>(round.radius) * (round.high_angle - round.low_angle) * dial.division /
                      (window.high - window.low);
    const DialSteps steps = dial_steps(dial, px, look.zoom == DialZoom::whole ? 36 : 50);
    picture.polyline(arc(round.centre, round.radius, round.radius, static_cast<float>(round.low_angle),
                         static_cast<float>(round.high_angle), 48),
                     Ink::text, 1.5f);
    for (const Line& line : lines_of(dial, window, steps)) {
        const float length = line.numbered ? 24.0f : line.middle ? 17.0f : 11.0f;
        picture.line(point(line.value, round.radius), point(line.value, round.radius - length), Ink::text,
                     line.numbered ? 1.8f : 1.2f);
        if (!line.numbered) continue;
        const Point at = point(line.value, round.radius + 20);
        const float size = look.zoom == DialZoom::whole ? 14 : number_size;
        picture.text({at.x, at.y + size * 0.36f}, number_of(dial, look, line.value), Ink::text, Face::semibold, size,
                     Anchor::middle);
    }
    // The pivot may lie below the picture.
    const float top = round.centre.y - round.radius;
    const float reach = look.zoom == DialZoom::whole ? round.radius : std::min(round.radius, height - 28 - top);
    picture.line(point(dial.position, round.radius - reach), point(dial.position, round.radius - 1), Ink::copper, 2);
    if (look.zoom == DialZoom::whole) {
        picture.area(arc(round.centre, 6, 6, 0, static_cast<float>(2 * half_turn), 24), Ink::copper);
    }
    picture.text({width / 2, look.zoom == DialZoom::whole ? round.centre.y + round.radius * 0.7f : height - 8}, look.unit,
                 Ink::soft, Face::regular, 15, Anchor::middle);
    return picture;
}

/// Digits on a display, or printed on a slip.
Picture draw_digits(const Dial& dial, const DialLook& look, float width, float height, const TextMeasure& measure) {
    Picture picture;
    picture.width = width;
    picture.height = height;
    picture.description = look.description;
    const bool balance = dial.kind == DialKind::balance_display;
    const float wide = std::min(width - 8, 300.0f);
    const float left = (width - wide) / 2;
    const float top = std::max(4.0f, (height - 112) / 2);
    picture.framed_box({left, top}, {left + wide, top + 112}, Ink::field_edge, balance ? 3.0f : 1.0f,
                       balance ? 10.0f : 0.0f);
    float size = 15;
    while (size > 10 && measure.width(look.title, Face::regular, size) > wide - 20) size -= 1;
    picture.text({left + 14, top + 28}, look.title, Ink::soft, Face::regular, size);
    const std::string words = format_fixed(dial.position, dial.decimals, look.decimal_sign) + ' ' + look.unit;
    picture.text({left + wide - 16, top + 84}, words, Ink::text, Face::semibold, balance ? 40.0f : 32.0f, Anchor::end);
    return picture;
}

}  // namespace

DialWindow dial_window(const Dial& dial, DialZoom zoom) {
    if (zoom == DialZoom::whole) return {dial.low, dial.high};
    const EyePlace place = eye_place(dial);
    const double beyond = dial.division * (zoom == DialZoom::between ? 1 : dial.divisions_per_number);
    return {place.below - beyond, place.above + beyond};
}

DialSteps dial_steps(const Dial& dial, double px, double number_px) {
    DialSteps steps;
    for (const int line : {1, 2, 5, 10, 20, 50, 100}) {
        steps.line = line;
        if (line * px >= 4) break;
    }
    for (const int times : {1, 2, 5, 10, 20, 50}) {
        steps.number = times * dial.divisions_per_number;
        if (steps.number % steps.line == 0 && steps.number * px >= number_px) break;
    }
    return steps;
}

float dial_height_of(const Dial& dial, const DialLook& look, double value, float height) {
    const DialWindow window = dial_window(dial, look.zoom);
    const auto share = static_cast<float>((value - window.low) / (window.high - window.low));
    const bool upwards = look.grows_upwards || dial.kind != DialKind::tube_scale;
    return edge + (height - 2 * edge) * (upwards ? 1 - share : share);
}

DialArc dial_arc(DialZoom zoom, float width, float height) {
    constexpr double spans[dial_zooms]{270, 96, 62};
    const double half = spans[static_cast<std::size_t>(zoom)] / 2 * half_turn / 180;
    constexpr float outside = 38;  ///< for the numbers
    DialArc arc;
    if (zoom == DialZoom::whole) {
        arc.radius = std::min(width, height) / 2 - outside;
        arc.centre = {width / 2, height / 2 + 8};
    } else {
        arc.radius = (width - 2 * outside) / (2 * static_cast<float>(std::sin(half)));
        arc.centre = {width / 2, std::max(outside, height * 0.25f) + arc.radius};
    }
    arc.low_angle = -half_turn / 2 - half;
    arc.high_angle = -half_turn / 2 + half;
    return arc;
}

double dial_angle_of(const Dial& dial, const DialLook& look, double value, float width, float height) {
    const DialWindow window = dial_window(dial, look.zoom);
    const DialArc arc = dial_arc(look.zoom, width, height);
    return arc.low_angle + (arc.high_angle - arc.low_angle) * (value - window.low) / (window.high - window.low);
}

Picture draw_dial(const Dial& dial, const DialLook& look, float width, float height, const TextMeasure& measure) {
    if (shows_digits(dial.kind)) return draw_digits(dial, look, width, height, measure);
    if (dial.kind == DialKind::barometer_dial) return draw_round(dial, look, width, height);
    return Upright(dial, look, width, height).draw();
}

}  // namespace overwater
