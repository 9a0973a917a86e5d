#include "web/draw/vessel.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <utility>
#include <vector>

#include "web/draw/side_label.hpp"
#include "web/draw/tube_shape.hpp"
#include "web/draw/vessel_glass.hpp"
#include "web/draw/vessel_place.hpp"

namespace overwater {

namespace {

constexpr float edge = 4;
/// Inks as tables of pieces have them.
constexpr std::int16_t in(Ink ink) { return static_cast<std::int16_t>(ink); }

constexpr float trough_from = 0.273f;  ///< of the width: the part that the tube is drawn in

class VesselDrawing {
public:
    VesselDrawing(const VesselView& view, const VesselLabels& labels, float width, float height,
                  const TextMeasure& measure)
        : view_(view), labels_(labels), measure_(measure), bench_(bench_of(height)) {
        picture_.width = width;
        picture_.height = height;
        picture_.description = labels.description;
        const float small = std::min(width, height);
        unit_ = small / 300;
        text_ = labels.text_size > 0 ? labels.text_size : std::clamp(std::round(small / 28), 14.0f, 24.0f);
        // A trough has its own floor.
        const float right = view.kind == VesselView::Kind::generator_flask ? trough_from * width : width - edge;
        picture_.line({edge, bench_ + 1}, {right, bench_ + 1}, Ink::field_edge);
    }

    Picture draw() {
        switch (view_.kind) {
        case VesselView::Kind::generator_flask: generator(); break;
        case VesselView::Kind::gas_syringe: syringe(); break;
        case VesselView::Kind::displaced_water: displaced(); break;
        case VesselView::Kind::pressure_sensor: sensor(); break;
        }
        return std::move(picture_);
    }

private:
    Glass glass(float x, float foot, float across, float up) { return {picture_, x, foot, across, up, unit_}; }

    /// Tubing, and what flows in it.
    void hose(float x, float y, std::initializer_list<float> turns, Ink inside) {
        line_around(picture_, turning(x, y, turns, 12 * unit_), texts_, 6.5f * unit_, inside, 3.5f * unit_);
    }
    void bent(float x, float y, std::initializer_list<float> turns, Ink ink, float width, float radius = 0) {
        picture_.polyline(turning(x, y, turns, radius), ink, width);
    }
    void upright(float x, float from, float to, Ink ink, float width = 1, bool dashed = false) {
        picture_.line({x, from}, {x, to}, ink, width, dashed);
    }
    void box(float left, float top, float right, float bottom, Ink ink) {
        picture_.filled_box({left, top}, {right, bottom}, ink);
    }
    /// Words made smaller where they would be wider than `room`; answers how wide they are.
    float text(float x, float middle, const std::string& words, Ink ink, float size, float room,
               Face face = Face::semibold, Anchor anchor = Anchor::start) {
        float width = 0;
        while ((width = measure_.width(words, face, size)) > room && size > smallest_text) size -= 1;
        if (width > 0) picture_.text({x, middle + digit_half_height * size}, words, ink, face, size, anchor);
        return width;
    }

    /// Number and word in one line.
    void line(float x, float middle, const VesselLabel& label, Ink ink = Ink::text) {
        const float room = picture_.width - edge - x;
        const float number = text(x, middle, label.number, ink, text_, 0.6f * room);
        const float gap = number > 0 ? number + 0.4f * text_ : 0;
        text(x + gap, middle, label.word, Ink::soft, text_, room - gap, Face::regular);
    }

    /// The number above the word.
    void beside(float x, float middle, const VesselLabel& label, float right) {
        const float half = label.number.empty() || label.word.empty() ? 0 : 0.65f * text_;
        text(x, middle - half, label.number, Ink::text, text_, right - x);
        text(x, middle + half, label.word, Ink::soft, text_, right - x, Face::regular);
    }
    void beside(float x, float middle, const VesselLabel& label) { beside(x, middle, label, picture_.width - edge); }

    /// A line on an instrument.
    void display(float left, float top, float right, float bottom, const VesselLabel& label) {
        picture_.filled_box({left, top}, {right, bottom}, Ink::paper, 3);
        const float y = (top + bottom) / 2;
        const float room = right - left - 14;
        const float number = text(right - 7, y, label.number, Ink::text, std::round(text_ * 1.15f),
                                  label.word.empty() ? room : 0.55f * room, Face::semibold, Anchor::end);
        text(left + 7, y, label.word, Ink::soft, text_, room - number - 6, Face::regular);
    }

    void generator();
    void syringe();
    void scale(const VesselScale& at, float foot, float length);
    void displaced();
    void sensor();

    const VesselView& view_;
    const VesselLabels& labels_;
    const TextMeasure& measure_;
    Picture picture_;
    float bench_;
    float unit_ = 1;
    float text_ = 14;
    std::vector<Rect> texts_;  ///< what tubing passes behind
};

void VesselDrawing::generator() {
    const float at = std::round(picture_.width * trough_from);
    Picture tube = draw_tube(view_.tube, labels_.tube, picture_.width - at, picture_.height, measure_);
    // Where trough and tube came to stand: the trough is the line with four corners, the other line in the ink of text is
    // the tube's wall from one end of its mouth to the other. The trough is drawn anew, with gaps where a text stands.
    std::vector<Point> trough;
    Mark* drawn = &tube.marks.back();
    Point mouth;
    for (Mark& mark : tube.marks) {
        for (Point& point : mark.points) point.x += at;
        const Point first = mark.points.front();
        if (mark.kind == Mark::Kind::text) {
            const float wide = measure_.width(mark.text, mark.face, mark.size);
            texts_.push_back(
                {first.x - (mark.anchor == Anchor::end ? wide : 0), first.y - 0.75f * mark.size, wide, mark.size});
        } else if (mark.kind == Mark::Kind::polyline && mark.ink == Ink::text) {
            if (mark.points.size() == 4) {
                trough.swap(mark.points);
                drawn = &mark;
            } else {
                mouth = {(first.x + mark.points.back().x) / 2, first.y};
            }
        }
    }
    if (drawn != &tube.marks.back()) std::swap(*drawn, tube.marks.back());
    tube.marks.pop_back();
    picture_.place(tube, {});
    line_around(picture_, trough, texts_, 2, Ink::text, 0);

    const Point rim = trough.front();
    const float room = rim.x - 12;
    unit_ = std::min(room / 82, unit_);
    Glass flask = glass(std::round(edge + room / 2), bench_, 0.82f * unit_, 1.13f * unit_);
    flask.flask();
    const float hole = flask.x(11);
    const float run = std::max(6.0f, std::min(flask.y(122), rim.y - 10));
    const float deep = bench_ - std::min(9 * unit_, 0.45f * (bench_ - mouth.y));
    hose(hole, flask.y(92), {run, rim.x + 2 + 4 * unit_, deep, mouth.x, mouth.y - 7 * unit_}, Ink::gas);
    // The acid's syringe, its plunger pressed down.
    static constexpr std::int16_t syringe[] = {
        piece::area, in(Ink::text),       4, -12, 92,  -12, 116, -10, 116, -10, 92,   //
        piece::area, in(Ink::liquid),     4, -21, 116, -1,  116, -1,  127, -21, 127,  //
        piece::area, in(Ink::soft),       4, -21, 127, -1,  127, -1,  132, -21, 132,  //
        piece::area, in(Ink::field_edge), 4, -14, 132, -8,  132, -8,  186, -14, 186,  //
        piece::area, in(Ink::soft),       4, -19, 186, -3,  186, -3,  190, -19, 190,  //
        piece::line, in(Ink::text),       6, -26, 160, -21, 160, -21, 116, -1,  116, -1, 160, 4, 160};
    flask.draw(syringe);
    // Where the tubing goes high up, the label keeps to its left.
    const float top = flask.y(195) - 1.3f * text_;
    beside(edge + 2, top, labels_.injected, run < top + 1.3f * text_ ? hole - 5 * unit_ : at);
}

void VesselDrawing::scale(const VesselScale& at, float foot, float length) {
    const float px = (at.full - at.zero) / static_cast<float>(view_.capacity_mL);
    const std::string last = scale_number(view_.capacity_mL, labels_.decimal_sign);
    const float number_room = measure_.width(last, Face::regular, text_) + 8;
    const ScaleSteps steps = scale_steps(static_cast<double>(px), 4.5, static_cast<double>(number_room));
    const int count = static_cast<int>(std::floor(view_.capacity_mL / steps.step + 1e-6));
    for (int i = 0; i <= count + 1; ++i) {
        const bool end = i > count;
        const double value = end ? view_.capacity_mL : i * steps.step;
        const double numbers = value / steps.number_step;
        const bool numbered = end || std::abs(numbers - std::round(numbers)) < 1e-6;
        const float x = at.zero + px * static_cast<float>(value);
        upright(x, foot, foot - length * (numbered ? 0.38f : 0.22f), Ink::text);
        if (!numbered || (!end && at.full - x < number_room)) continue;
        picture_.text({x, foot + 5 + 0.9f * text_}, end ? last : scale_number(value, labels_.decimal_sign), Ink::soft,
                      Face::regular, text_, Anchor::middle);
    }
}

void VesselDrawing::syringe() {
    const float u = unit_;
    const VesselScale found = vessel_scale(view_, picture_.width, picture_.height);
    const float upper_line = 6 + 0.65f * text_;
    const float lower_line = upper_line + 1.45f * text_;
    const float top = std::round(lower_line + 0.9f * text_ + 4);
    const float bore = std::round(std::clamp(picture_.height * 0.11f, 26.0f, 70.0f));
    const float foot = top + bore;
    const float axis = top + bore / 2;
    const float bracket = foot + 9 + 1.4f * text_;
    const float volume = bracket + 6 + 0.75f * text_;

    if (found.now) {
        const float x = *found.now;
        const float handle = x + found.full - found.zero + 0.055f * picture_.width;
        fill_with_gas(picture_, turning(found.zero, top, {foot, x, top}, 0), 6 * u);
        box(x, top, x + 7 * u, foot, Ink::soft);
        box(x + 7 * u, axis - 2.5f * u, handle, axis + 2.5f * u, Ink::field_edge);
        box(handle, top + 4 * u, handle + 4 * u, foot - 4 * u, Ink::soft);
    }
    if (view_.has_scale()) scale(found, foot, bore);
    const float end = found.full + 10 * u;
    const float lip = 5 * u;
    bent(end, top - lip, {top, found.zero, foot, end, foot + lip}, Ink::text, 2);
    if (found.start) upright(*found.start, top, foot, Ink::text, 1.5f, true);
    if (found.beyond) upright(*found.now, top - lip, foot + lip, Ink::warning, 2, true);

    // The left one of both has the upper line, so that its leader passes the other one's words.
    const bool start_first = !found.now || (found.start && *found.start <= *found.now);
    const auto mark = [&](const std::optional<float>& x, const VesselLabel& label, bool first, Ink ink) {
        if (!x || label.empty()) return;
        const float y = first ? upper_line : lower_line;
        upright(*x, top, y - 0.5f * text_, Ink::soft);
        line(*x + 5, y, label, ink);
    };
    mark(found.start, labels_.start, start_first, Ink::text);
    mark(found.now, labels_.reading, !start_first && found.start, found.beyond ? Ink::warning : Ink::text);
    if (found.start && found.now && !labels_.gas.empty()) {
        const float from = std::min(*found.start, *found.now);
        const float to = std::max(*found.start, *found.now);
        if (to - from > 4) bent(from, bracket - lip, {bracket, to, bracket - lip}, Ink::soft, 1.2f);
        line(from, volume, labels_.gas);
    }

    const float run = volume + 0.6f * text_ + 10 * u;
    const float half = std::min(0.26f * picture_.width, (bench_ - run - 20 * u) / 2.46f);
    const float x = std::round(std::max(half + 12, 0.36f * picture_.width));
    Glass flask = glass(x, bench_, half / 50, half * 0.023f);
    flask.flask();
    hose(x, flask.y(93), {run, 12 * u, axis, found.zero}, Ink::gas);
    beside(x + half + 12, bench_ - 0.35f * half, labels_.sample);
}

void VesselDrawing::displaced() {
    const RowPlace at(picture_.width, picture_.height);
    const VesselScale found = vessel_scale(view_, picture_.width, picture_.height);
    unit_ = std::min(at.across, at.up);
    if (at.floor < bench_) { picture_.filled_box({edge, at.floor}, {at.left + 186 * at.across, bench_}, Ink::line); }
    glass(at.left + 52 * at.across, at.floor, 0.8f * at.across, 1.12f * at.up).flask();
    Glass bottle = glass(at.left + 143 * at.across, at.floor, at.across, at.up);
    static constexpr std::int16_t wall[] = {-20, 165, -20, 141, -38, 127, -38, 0, 38, 0, 38, 127, 20, 141, 20, 165};
    static constexpr std::int16_t stopper[] = {
        piece::area, in(Ink::field_edge), 4, -23, 172, 23,  172, 19, 157, -19, 157,  //
        piece::hose, in(Ink::gas),        4, -91, 103, -91, 199, -9, 199, -9,  151};
    bottle.contents(wall, found.now.value_or(bottle.y(165)), true);
    if (found.beyond) picture_.line({bottle.x(-45), *found.now}, {bottle.x(45), *found.now}, Ink::warning, 2, true);
    bottle.draw(stopper);

    Glass balance = glass(at.left + 241 * at.across, bench_, at.across, at.up);
    static constexpr std::int16_t beaker[] = {-38, 128, -38, 46, 38, 46, 38, 128};
    static constexpr std::int16_t pan[] = {piece::area,   in(Ink::text), 4, -42, 45, 42, 45, 42, 43, -42, 43,  //
                                           piece::area,   in(Ink::text), 4, -3,  43, 3,  43, 3,  38, -3,  38,  //
                                           piece::casing, in(Ink::text), 2, -46, 38, 46, 0};
    const float share = found.now ? (*found.now - found.zero) / (found.full - found.zero) : 0;
    balance.contents(beaker, balance.y(46 + 78 * share), false);
    balance.draw(pan);
    display(balance.x(-41), balance.y(33), balance.x(41), balance.y(5), labels_.display);
    const float spout = balance.x(-26);
    hose(bottle.x(9), bottle.y(9), {bottle.y(199), spout, balance.y(115)}, Ink::liquid);
    beside(spout + 10 * unit_, balance.y(128) - 6 - 1.3f * text_, labels_.gas);
}

void VesselDrawing::sensor() {
    const float width = picture_.width;
    const float row = 1.6f * text_;
    const float inset = 5;
    const float top = 6;
    const float under = top + 2 * inset + row * (labels_.display_2.empty() ? 1 : 2);
    const float half = std::min(0.3f * width, 0.34f * (bench_ - under));
    Glass flask = glass(std::round(std::max(half + 12, 0.38f * width)), bench_, half / 50,
                        std::min((bench_ - under) / 138, 0.024f * half));
    flask.flask();

    // From the room above the acid to the sensor, and from there to its display.
    const float x = flask.x(-11);
    const float y = flask.y(128);
    const float box_half = std::min(width / 2 - edge, 8 * text_);
    const float left = std::round(width / 2 - box_half);
    const float right = left + 2 * box_half;
    bent(x, y, {(under + y) / 2, std::min(x + 44 * unit_, right - 12), under}, Ink::soft, 2.5f * unit_, 14 * unit_);
    picture_.filled_box({left, top}, {right, under}, Ink::card, 5);
    picture_.framed_box({left, top}, {right, under}, Ink::text, 2, 5);
    display(left + inset, top + inset, right - inset, top + inset + row, labels_.display);
    if (!labels_.display_2.empty()) {
        display(left + inset, under - inset - row, right - inset, under - inset, labels_.display_2);
    }
    // The sensor with an eye, and a second way out with a tap.
    static constexpr std::int16_t on_the_stopper[] = {
        piece::hose,   in(Ink::gas),  2, -11, 93,  -11, 113,           //
        piece::casing, in(Ink::text), 2, -18, 128, -4,  113,           //
        piece::bubble, in(Ink::soft), 2, -11, 120, -8,  120,           //
        piece::hose,   in(Ink::gas),  3, 11,  93,  11,  121, 27, 121,  //
        piece::casing, in(Ink::text), 2, 8,   115, 14,  111,           //
        piece::area,   in(Ink::text), 4, 5,   114, 17,  114, 17, 112, 5, 112};
    flask.draw(on_the_stopper);

    const float neck = flask.y(92);
    const float level = flask.y(Glass::flask_level);
    const float words = flask.x(54) + 8;
    if (!labels_.gas.empty()) {
        static constexpr std::int16_t bracket[] = {piece::line, in(Ink::soft), 4, 51, 92, 54, 92, 54, 30, 51, 30};
        flask.draw(bracket);
    }
    beside(words, (neck + level) / 2, labels_.gas);
    beside(words, (level + bench_) / 2, labels_.sample);
}

}  // namespace

Picture draw_vessel(const VesselView& view, const VesselLabels& labels, float width, float height,
                    const TextMeasure& measure) {
    return VesselDrawing(view, labels, width, height, measure).draw();
}

}  // namespace overwater
