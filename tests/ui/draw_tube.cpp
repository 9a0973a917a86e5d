#include <doctest/doctest.h>

#include <limits>

#include "tests/ui/draw_support.hpp"
#include "web/draw/tube.hpp"
#include "web/draw/tube_shape.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

struct Size {
    float width;
    float height;
};
constexpr Size sizes[] = {{300, 540}, {340, 420}, {560, 640}};

/// The record of the method paper: 50 mL tube with 50 at the closed end, 2.35 mL end space, reading 9.15 mL, liquid
/// 112 mm higher inside.
TubeView record() {
    TubeView view;
    view.end_space_mL = 2.35;
    view.end_space_known = true;
    view.reading_mL = 9.15;
    view.level_difference_mm = 112;
    return view;
}

TubeLabels labels() {
    TubeLabels l;
    l.gas_volume_number = "43.20";
    l.gas_volume_unit = "mL gas";
    l.end_space_word = "end space";
    l.end_space_value = "2.35 mL";
    l.level_number = "112";
    l.level_unit = "mm";
    l.reading_number = "9.15";
    l.meniscus_word = "meniscus";
    return l;
}

/// All that is drawn lies in the picture, texts keep clear of each other, and no upright line runs through one.
void check_orderly(const Picture& p, const TextMeasure& measure) {
    CHECK(overlapping_texts(p, measure, 1.0F) == "");
    for (const Mark& mark : p.marks) {
        for (const Point& point : mark.points) {
            CHECK((point.x >= 0 && point.x <= p.width && point.y >= 0 && point.y <= p.height));
        }
        if (mark.kind == Mark::Kind::text) {
            const Bounds b = text_bounds(mark, measure);
            CHECK((b.left >= 0 && b.right <= p.width && b.top >= 0 && b.bottom <= p.height));
        }
        if (mark.kind != Mark::Kind::line || mark.points[0].x != mark.points[1].x) continue;
        Bounds line;
        line.add(mark.points[0].x - 1, std::min(mark.points[0].y, mark.points[1].y));
        line.add(mark.points[0].x + 1, std::max(mark.points[0].y, mark.points[1].y));
        for (const Mark* text : marks_of(p, Mark::Kind::text)) {
            INFO("text ", text->text);
            CHECK_FALSE(line.overlaps(text_bounds(*text, measure), 0.5F));
        }
    }
}

}  // namespace

TEST_CASE("the tube is to scale: 11 mm for each mL of a 50 mL tube, levels in the same mm") {
    const TubeGeometry g = tube_geometry(record(), 540);
    // Method, section 1: gas volume = 50 - 9.15 + 2.35 = 43.20 mL; default length of scale 11 mm per mL.
    REQUIRE(g.meniscus.has_value());
    REQUIRE(g.level.has_value());
    CHECK(g.px_per_mL / g.px_per_mm == doctest::Approx(11));
    CHECK(g.last_mark - g.first_mark == doctest::Approx(550 * g.px_per_mm));
    CHECK(g.first_mark - g.top == doctest::Approx(2.35 * 11 * g.px_per_mm));
    CHECK(*g.meniscus - g.top == doctest::Approx(43.20 * g.px_per_mL));
    CHECK((*g.meniscus - g.top) / (g.last_mark - g.first_mark) == doctest::Approx(43.20 / 50));
    CHECK(*g.level - *g.meniscus == doctest::Approx(112 * g.px_per_mm));
    CHECK(*g.level < g.mouth);  // the mouth is under the liquid, as in the record
    CHECK(g.mouth < g.bucket_bottom);
}

TEST_CASE("a scale with 0 at the closed end begins there, and the reading is the gas volume") {
    TubeView view = record();
    view.closed_end_has_largest = false;
    view.reading_mL = 43.20;
    view.capacity_mL = 100;
    view.length_of_scale_mm = 600;
    const TubeGeometry g = tube_geometry(view, 640);
    CHECK(g.first_mark == g.top);
    CHECK(g.px_per_mL / g.px_per_mm == doctest::Approx(6));
    CHECK(*g.meniscus - g.top == doctest::Approx(43.20 * g.px_per_mL));
}

TEST_CASE("numbers grow towards the closed end or away from it as the scale does") {
    const PlainMeasure measure;
    for (const bool largest : {true, false}) {
        TubeView view = record();
        view.closed_end_has_largest = largest;
        const Picture p = draw_tube(view, TubeLabels{}, 300, 540, measure);
        float previous = largest ? 1e9F : -1e9F;
        for (const char* value : {"0", "10", "20", "30", "40", "50"}) {
            const Mark* mark = text_mark(p, value);
            REQUIRE(mark != nullptr);
            CHECK((largest ? mark->points[0].y < previous : mark->points[0].y > previous));
            previous = mark->points[0].y;
        }
    }
}

TEST_CASE("marks are spaced by the room there is") {
    const auto steps = [](double px) {
        const ScaleSteps s = scale_steps(px, 5, 50);
        return std::pair(s.step, s.number_step);
    };
    CHECK(steps(7.8) == std::pair(1.0, 10.0));
    CHECK(steps(3.9) == std::pair(2.0, 20.0));
    CHECK(steps(2.4) == std::pair(5.0, 50.0));
    CHECK(steps(0.6) == std::pair(10.0, 100.0));
    CHECK(steps(60).first == doctest::Approx(0.1));
    CHECK(scale_number(50, ".") == "50");
    CHECK(scale_number(0.5, ",") == "0,5");
    CHECK(scale_number(100, ".") == "100");
}

TEST_CASE("the meniscus curves upwards at the glass and is lowest at the reading") {
    TubeShape tube;
    tube.centre = 100;
    tube.half_width = 20;
    tube.top = 10;
    tube.mouth = 400;
    const std::vector<Point> surface = tube.surface(200, 5);
    CHECK(surface.front().x == doctest::Approx(80));
    CHECK(surface.back().x == doctest::Approx(120));
    CHECK(surface[surface.size() / 2].y == doctest::Approx(200));
    for (const Point& p : surface) CHECK((p.y <= 200.001F && p.y >= 194.99F));
    CHECK(surface.front().y == doctest::Approx(195));
    // In the round end it stays inside the glass.
    for (const float y : {11.0F, 15.0F, 29.0F}) {
        for (const Point& p : tube.surface(y, 5)) { CHECK(std::hypot(p.x - 100, std::min(0.0F, p.y - 30)) <= 20.01F); }
    }
}

TEST_CASE("whatever the readings, labels do not collide and nothing leaves the picture") {
    const Canvas canvas;
    const ImguiMeasure measure = canvas.measure();
    for (const Size& size : sizes) {
        for (const bool largest : {true, false}) {
            for (const double reading : {-3.0, 0.0, 0.5, 9.15, 25.0, 41.0, 48.5, 50.0, 51.0, 59.15, 915.0}) {
                for (const double level : {-1120.0, -400.0, -60.0, -3.0, 0.0, 2.0, 30.0, 112.0, 180.0, 500.0, 1120.0}) {
                    TubeView view = record();
                    view.closed_end_has_largest = largest;
                    view.reading_mL = reading;
                    view.level_difference_mm = level;
                    INFO("largest ", largest, ", reading ", reading, ", level ", level, ", width ", size.width);
                    check_orderly(draw_tube(view, labels(), size.width, size.height, measure), measure);
                }
            }
        }
    }
}

TEST_CASE("a missing reading leaves a full tube without a meniscus") {
    const PlainMeasure measure;
    TubeView view = record();
    view.reading_mL.reset();
    TubeLabels l = labels();
    const Picture p = draw_tube(view, l, 300, 540, measure);
    CHECK(text_mark(p, "meniscus") == nullptr);
    CHECK(text_mark(p, "mL gas") == nullptr);
    CHECK(text_mark(p, "mm") == nullptr);
    for (const Mark& mark : p.marks) CHECK(mark.ink != Ink::gas);
    CHECK_FALSE(tube_geometry(view, 540).meniscus.has_value());
}

TEST_CASE("before the scale is chosen there are no numbers, whatever else is known") {
    const PlainMeasure measure;
    TubeView view = record();
    view.direction_known = false;
    CHECK(marks_of(draw_tube(view, labels(), 300, 540, measure), Mark::Kind::text).empty());
    view = record();
    view.capacity_mL = 0;
    CHECK(marks_of(draw_tube(view, labels(), 300, 540, measure), Mark::Kind::text).empty());
}

TEST_CASE("what cannot be has a dashed mark in the colour of warnings") {
    const PlainMeasure measure;
    const auto warned = [&](const TubeView& view) {
        for (const Mark& mark : draw_tube(view, labels(), 300, 540, measure).marks) {
            if (mark.dashed && mark.ink == Ink::warning) return true;
        }
        return false;
    };
    CHECK_FALSE(warned(record()));
    TubeView view = record();
    view.reading_mL = 59.15;
    CHECK(warned(view));
    view.reading_mL = -1;
    CHECK(warned(view));
    view = record();
    view.level_difference_mm = 1120;  // cm for mm: the mouth would be out of the liquid
    CHECK(warned(view));
    view.level_difference_mm = -1120;  // the picture does not reach that far
    CHECK(warned(view));
    view = record();
    view.level_difference_mm.reset();  // missing is not wrong
    CHECK_FALSE(warned(view));
}

TEST_CASE("numbers that are no numbers are as good as missing") {
    const PlainMeasure measure;
    const double odd[] = {std::numeric_limits<double>::quiet_NaN(),
                          std::numeric_limits<double>::infinity(),
                          -std::numeric_limits<double>::infinity(),
                          -1.0,
                          0.0,
                          1e300,
                          -1e300};
    for (const double v : odd) {
        for (int which = 0; which < 6; ++which) {
            TubeView view = record();
            double* const fields[] = {&view.capacity_mL, &view.end_space_mL, &view.length_of_scale_mm,
                                      &view.mouth_beyond_scale_mm};
            if (which < 4) *fields[which] = v;
            if (which == 4) view.reading_mL = v;
            if (which == 5) view.level_difference_mm = v;
            const Picture p = draw_tube(view, labels(), 300, 540, measure);
            INFO("value ", v, " in place ", which);
            CHECK(p.marks.size() < 2000);
            check_orderly(p, measure);
        }
    }
}

TEST_CASE("the two drawings of the question differ in where the largest number is") {
    const Canvas canvas;
    const ImguiMeasure measure = canvas.measure();
    for (const bool largest : {true, false}) {
        const Picture p = draw_scale_choice(largest, "50", "a tube", 96, 120, measure);
        CHECK(p.description == "a tube");
        check_orderly(p, measure);
        REQUIRE((text_mark(p, "50") != nullptr && text_mark(p, "0") != nullptr));
        CHECK((text_mark(p, "50")->points[0].y < text_mark(p, "0")->points[0].y) == largest);
        CHECK(text_mark(p, largest ? "50" : "0")->face == Face::semibold);
    }
}
