#include "web/draw/vessel.hpp"

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

#include "web/draw/side_label.hpp"
#include "web/draw/tube_shape.hpp"
#include "web/draw/vessel_glass.hpp"
#include "web/draw/vessel_place.hpp"

namespace overwater {

namespace {

constexpr float smallest_text = 9;
constexpr float edge = 4;

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
        picture_.line({edge, bench_ + 1}, {width - edge, bench_ + 1}, Ink::field_edge);
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
    Glass glass(Point foot, float across, float up) { return Glass(picture_, foot, across, up, unit_); }

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
    void display(Point a, Point b, const VesselLabel& label) {
        picture_.filled_box(a, b, Ink::paper, 3);
        const float y = (a.y + b.y) / 2;
        const float room = (b.x - a.x) - 14;
        const float number = text(b.x - 7, y, label.number, Ink::text, std::round(text_ * 1.15f),
                                  label.word.empty() ? room : 0.55f * room, Face::semibold, Anchor::end);
        text(a.x + 7, y, label.word, Ink::soft, text_, room - number - 6, Face::regular);
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
};

void VesselDrawing::generator() {
    const float at = std::round(picture_.width * 0.273f);
    Picture tube = draw_tube(view_.tube, labels_.tube, picture_.width - at, picture_.height, measure_);
    // Where trough and tube came to stand: the trough is the line with four corners, the other line in the ink of text is
    // the tube's wall from one end of its mouth to the other. The trough is drawn anew, with gaps where a text stands.
    std::vector<Point> trough;
    std::vector<Rect> texts;
    Point mouth;
    for (Mark& mark : tube.marks) {
        for (Point& point : mark.points) point.x += at;
        const Point first = mark.points.front();
        if (mark.kind == Mark::Kind::text) {
            const float wide = measure_.width(mark.text, mark.face, mark.size);
            texts.push_back(
                {first.x - (mark.anchor == Anchor::end ? wide : 0), first.y - 0.75f * mark.size, wide, mark.size});
        } else if (mark.kind == Mark::Kind::polyline && mark.ink == Ink::text) {
            if (mark.points.size() == 4) {
                trough.swap(mark.points);
                mark.points.resize(2, first);
            } else {
                mouth = {(first.x + mark.points.back().x) / 2, first.y};
            }
        }
    }
    picture_.place(tube, {});
    line_around(picture_, trough, texts, 2);

    const Point rim = trough.front();
    const float room = rim.x - 12;
    unit_ = std::min(room / 82, unit_);
    Glass flask = glass({std::round(edge + room / 2), bench_}, 0.82f * unit_, 1.13f * unit_);
    flask.flask();
    const Point hole = flask.at(11, 92);
    const float run = std::max(6.0f, std::min(flask.at(0, 122).y, rim.y - 10));
    const float leg = rim.x + 2 + 4 * unit_;
    const float deep = bench_ - std::min(9 * unit_, 0.45f * (bench_ - mouth.y));
    flask.hose({hole, {hole.x, run}, {leg, run}, {leg, deep}, {mouth.x, deep}, {mouth.x, mouth.y - 7 * unit_}},
               Ink::gas, texts);
    // The acid's syringe, its plunger pressed down.
    static constexpr std::int16_t needle[] = {-11, 92, -11, 116};
    static constexpr std::int16_t acid[] = {-21, 116, -1, 116, -1, 127, -21, 127};
    static constexpr std::int16_t plunger[] = {-21, 127, -1, 127, -1, 132, -21, 132};
    static constexpr std::int16_t rod[] = {-14, 132, -8, 132, -8, 186, -14, 186};
    static constexpr std::int16_t handle[] = {-19, 186, -3, 186, -3, 190, -19, 190};
    static constexpr std::int16_t barrel[] = {-26, 160, -21, 160, -21, 116, -1, 116, -1, 160, 4, 160};
    flask.line(needle, Ink::text);
    flask.area(acid, Ink::liquid);
    flask.area(plunger, Ink::soft);
    flask.area(rod, Ink::field_edge);
    flask.area(handle, Ink::soft);
    flask.line(barrel, Ink::text);
    // Where the tubing goes high up, the label keeps to its left.
    const float top = flask.at(0, 195).y - 1.3f * text_;
    beside(edge + 2, top, labels_.injected, run < top + 1.3f * text_ ? hole.x - 5 * unit_ : at);
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
        picture_.line({x, foot}, {x, foot - length * (numbered ? 0.38f : 0.22f)}, Ink::text);
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
        fill_with_gas(picture_, {{found.zero, top}, {x, top}, {x, foot}, {found.zero, foot}}, 6 * u);
        picture_.filled_box({x, top}, {x + 7 * u, foot}, Ink::soft);
        picture_.filled_box({x + 7 * u, axis - 2.5f * u}, {handle, axis + 2.5f * u}, Ink::field_edge);
        picture_.filled_box({handle, top + 4 * u}, {handle + 4 * u, foot - 4 * u}, Ink::soft);
    }
    if (view_.has_scale()) scale(found, foot, bore);
    const float end = found.full + 10 * u;
    picture_.polyline(
        {{end, top - 5 * u}, {end, top}, {found.zero, top}, {found.zero, foot}, {end, foot}, {end, foot + 5 * u}},
        Ink::text, 2);
    if (found.start) picture_.line({*found.start, top}, {*found.start, foot}, Ink::text, 1.5f, true);
    if (found.beyond) { picture_.line({*found.now, top - 5 * u}, {*found.now, foot + 5 * u}, Ink::warning, 2, true); }

    // The left one of both has the upper line, so that its leader passes the other one's words.
    const bool start_first = !found.now || (found.start && *found.start <= *found.now);
    const auto mark = [&](const std::optional<float>& x, const VesselLabel& label, bool first, Ink ink) {
        if (!x || label.empty()) return;
        const float y = first ? upper_line : lower_line;
        picture_.line({*x, top}, {*x, y - 0.5f * text_}, Ink::soft);
        line(*x + 5, y, label, ink);
    };
    mark(found.start, labels_.start, start_first, Ink::text);
    mark(found.now, labels_.reading, !start_first && found.start, found.beyond ? Ink::warning : Ink::text);
    if (found.start && found.now && !labels_.gas.empty()) {
        const float from = std::min(*found.start, *found.now);
        const float to = std::max(*found.start, *found.now);
        const float serif = bracket - 5 * u;
        if (to - from > 4) {
            picture_.polyline({{from, serif}, {from, bracket}, {to, bracket}, {to, serif}}, Ink::soft, 1.2f);
        }
        line(from, volume, labels_.gas);
    }

    const float run = volume + 0.6f * text_ + 10 * u;
    const float half = std::min(0.26f * picture_.width, (bench_ - run - 20 * u) / 2.46f);
    Glass flask = glass({std::round(std::max(half + 12, 0.36f * picture_.width)), bench_}, half / 50, half * 0.023f);
    flask.flask();
    const Point hole = flask.at(0, 93);
    flask.hose({hole, {hole.x, run}, {12 * u, run}, {12 * u, axis}, {found.zero, axis}}, Ink::gas);
    beside(hole.x + half + 12, bench_ - 0.35f * half, labels_.sample);
}

void VesselDrawing::displaced() {
    const RowPlace at(picture_.width, picture_.height);
    const VesselScale found = vessel_scale(view_, picture_.width, picture_.height);
    unit_ = std::min(at.across, at.up);
    if (at.floor < bench_) { picture_.filled_box({edge, at.floor}, {at.left + 186 * at.across, bench_}, Ink::line); }
    glass({at.left + 52 * at.across, at.floor}, 0.8f * at.across, 1.12f * at.up).flask();
    Glass bottle = glass({at.left + 143 * at.across, at.floor}, at.across, at.up);
    static constexpr std::int16_t wall[] = {-20, 165, -20, 141, -38, 127, -38, 0, 38, 0, 38, 127, 20, 141, 20, 165};
    static constexpr std::int16_t stopper[] = {-23, 172, 23, 172, 19, 157, -19, 157};
    static constexpr std::int16_t gas_way[] = {-91, 103, -91, 199, -9, 199, -9, 151};
    static constexpr std::int16_t water_way[] = {9, 9, 9, 199, 72, 199};
    bottle.contents(rounded(bottle.points(wall), 12 * unit_), found.now.value_or(bottle.at(0, 165).y));
    bottle.area(stopper, Ink::field_edge);
    if (found.beyond) {
        picture_.line({bottle.at(-45, 0).x, *found.now}, {bottle.at(45, 0).x, *found.now}, Ink::warning, 2, true);
    }
    bottle.hose(bottle.points(gas_way), Ink::gas);

    Glass scales = glass({at.left + 241 * at.across, bench_}, at.across, at.up);
    static constexpr std::int16_t beaker[] = {-38, 128, -38, 46, 38, 46, 38, 128};
    static constexpr std::int16_t pan[] = {-42, 44, 42, 44};
    static constexpr std::int16_t stem[] = {-3, 44, 3, 44, 3, 38, -3, 38};
    const std::vector<Point> side = rounded(scales.points(beaker), 8 * unit_);
    const float share = found.now ? (*found.now - found.zero) / (found.full - found.zero) : 0;
    const std::vector<Point> water = cut_at(side, scales.at(0, 46 + 78 * share).y, 1);
    if (water.size() > 2) {
        picture_.area(water, Ink::liquid);
        picture_.line(water.front(), water.back(), Ink::liquid_edge, 2);
    }
    picture_.polyline(side, Ink::text, 2);
    scales.line(pan, Ink::text, 3);
    scales.area(stem, Ink::text);
    scales.casing(scales.at(-46, 38), scales.at(46, 0));
    display(scales.at(-41, 33), scales.at(41, 5), labels_.display);

    std::vector<Point> way = bottle.points(water_way);
    const float x = way.back().x;
    way.push_back({x, scales.at(0, 115).y});
    bottle.hose(way, Ink::liquid);
    beside(x + 10 * unit_, scales.at(0, 128).y - 6 - 1.3f * text_, labels_.gas);
}

void VesselDrawing::sensor() {
    const float width = picture_.width;
    const float row = 1.6f * text_;
    const float inset = 4;
    const float under = 6 + 2 * inset + row * (labels_.display_2.empty() ? 1 : 2);
    const float half = std::min(0.3f * width, 0.34f * (bench_ - under));
    Glass flask = glass({std::round(std::max(half + 12, 0.38f * width)), bench_}, half / 50,
                        std::min((bench_ - under) / 138, 0.024f * half));
    flask.flask();

    // From the room above the acid to the sensor, and from there to its display.
    static constexpr std::int16_t stem[] = {-11, 93, -11, 113};
    const Point sensor = flask.at(-11, 128);
    const float box = std::min(width - 2 * edge, 16 * text_);
    const float x = std::round((width - box) / 2);
    const float cable = std::min(sensor.x + 44 * unit_, x + box - 12);
    const float middle = (under + sensor.y) / 2;
    picture_.polyline(rounded({sensor, {sensor.x, middle}, {cable, middle}, {cable, under}}, 14 * unit_), Ink::soft,
                      2.5f * unit_);
    flask.hose(flask.points(stem), Ink::gas);
    flask.casing(flask.at(-18, 128), flask.at(-4, 113));
    const float letter = std::round(sensor.y - flask.at(0, 120.5f).y);
    text(sensor.x, sensor.y - letter, "p", Ink::soft, -1.2f * letter, width, Face::italic, Anchor::middle);
    flask.casing({x, 6}, {x + box, under});
    const float right = x + box - inset;
    display({x + inset, 6 + inset}, {right, 6 + inset + row}, labels_.display);
    if (!labels_.display_2.empty()) {
        display({x + inset, under - inset - row}, {right, under - inset}, labels_.display_2);
    }
    // A second way out, with a tap.
    static constexpr std::int16_t vent[] = {11, 93, 11, 121, 26, 121};
    static constexpr std::int16_t tap[] = {5, 113, 17, 113};
    flask.hose(flask.points(vent), Ink::gas);
    flask.casing(flask.at(8, 115), flask.at(14, 111));
    flask.line(tap, Ink::text, 3);

    const Point neck = flask.at(54, 92);
    const float level = flask.at(0, Glass::flask_level).y;
    const float words = neck.x + 8;
    if (!labels_.gas.empty()) {
        const float serif = neck.x - 6 * unit_;
        picture_.polyline({{serif, neck.y}, neck, {neck.x, level}, {serif, level}}, Ink::soft, 1.2f);
    }
    beside(words, (neck.y + level) / 2, labels_.gas);
    beside(words, (level + bench_) / 2, labels_.sample);
}

}  // namespace

Picture draw_vessel(const VesselView& view, const VesselLabels& labels, float width, float height,
                    const TextMeasure& measure) {
    return VesselDrawing(view, labels, width, height, measure).draw();
}

}  // namespace overwater
