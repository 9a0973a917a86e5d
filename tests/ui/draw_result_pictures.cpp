#include "web/draw/result_pictures.hpp"

#include <doctest/doctest.h>

#include <limits>

#include "tests/ui/draw_support.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

/// Width of the boxes of one ink, the pixel between neighbours included.
float width_of(const Picture& picture, Ink ink) {
    float sum = 0;
    for (const Mark* box : marks_of(picture, Mark::Kind::box)) {
        if (box->ink == ink) sum += box->points[1].x - box->points[0].x + (box->points[0].x > 0 ? 1 : 0);
    }
    return sum;
}

bool has_break(const Picture& picture) { return !marks_of(picture, Mark::Kind::line).empty(); }

}  // namespace

TEST_CASE("the pressure bar's parts are as wide as their pressures") {
    // 100 = 75 + 15 + 10, no cut needed.
    const Picture p = draw_pressure_bar(100, 15, 10, 400, 12);
    CHECK(width_of(p, Ink::dry_bar) == doctest::Approx(300));
    CHECK(width_of(p, Ink::column_bar) == doctest::Approx(60));
    CHECK(width_of(p, Ink::vapour_bar) == doctest::Approx(40));
    CHECK_FALSE(has_break(p));
}

TEST_CASE("small parts keep their proportion where the bar is cut, and the cut is drawn") {
    const Picture p = draw_pressure_bar(99.62, 1.10, 2.55, 230, 12);
    CHECK(has_break(p));
    CHECK(width_of(p, Ink::vapour_bar) / width_of(p, Ink::column_bar) == doctest::Approx(2.55 / 1.10).epsilon(0.001));
    CHECK(width_of(p, Ink::dry_bar) + width_of(p, Ink::vapour_bar) + width_of(p, Ink::column_bar) ==
          doctest::Approx(230));
    CHECK(width_of(p, Ink::column_bar) >= 6);
}

TEST_CASE("a column that adds makes two rows of the same length") {
    const Picture p = draw_pressure_bar(90, -10, 20, 400, 20);  // 100 presses, 80 is dry gas
    CHECK(width_of(p, Ink::column_bar) == doctest::Approx(40));
    CHECK(width_of(p, Ink::vapour_bar) == doctest::Approx(80));
    CHECK(width_of(p, Ink::dry_bar) == doctest::Approx(360 + 320));
}

TEST_CASE("vapour is told from the column by its pattern too") {
    const std::vector<const Mark*> hatched =
        marks_of(draw_pressure_bar(99.62, 1.10, 2.55, 230, 12), Mark::Kind::hatched);
    CHECK(hatched.size() == 1);
}

TEST_CASE("pressures that cannot be draw no bar") {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const double inf = std::numeric_limits<double>::infinity();
    CHECK(draw_pressure_bar(nan, 1, 2, 230, 12).marks.empty());
    CHECK(draw_pressure_bar(inf, 1, 2, 230, 12).marks.empty());
    CHECK(draw_pressure_bar(100, 60, 50, 230, 12).marks.empty());
    CHECK(draw_pressure_bar(100, 1, -2, 230, 12).marks.empty());
    CHECK(draw_pressure_bar(-100, 1, 2, 230, 12).marks.empty());
    CHECK(draw_pressure_bar(100, 0, 0, 230, 12).marks.size() == 1);
}

TEST_CASE("the number line shows value, interval and accepted value on one scale") {
    const Canvas canvas;
    const ImguiMeasure measure = canvas.measure();
    ResultScaleLabels l;
    l.value = "22.68";
    l.low = "22.56";
    l.high = "22.80";
    l.accepted = "accepted 22.71";
    const Picture p = draw_result_scale(22.68, ScaleBand{22.56, 22.80}, 22.71, l, 574, 64, measure);
    const std::vector<const Mark*> bands = marks_of(p, Mark::Kind::box);
    const std::vector<const Mark*> dots = marks_of(p, Mark::Kind::area);
    REQUIRE(bands.size() == 1);
    REQUIRE(dots.size() == 1);
    const float low = bands[0]->points[0].x;
    const float high = bands[0]->points[1].x;
    Bounds dot;
    for (const Point& point : dots[0]->points) dot.add(point.x, point.y);
    CHECK((dot.left + dot.right) / 2 == doctest::Approx((low + high) / 2));
    float mark = -1;
    for (const Mark* line : marks_of(p, Mark::Kind::line)) {
        if (line->points[0].x == line->points[1].x) mark = line->points[0].x;
    }
    // 0.03 right of the value, with 0.24 from end to end; the mark is put on a whole pixel.
    CHECK(std::abs(mark - ((low + high) / 2 + (high - low) * 0.03F / 0.24F)) <= 0.5F);
    CHECK(text_mark(p, "22.68") == nullptr);  // the headline says it
}

TEST_CASE("the number line stays in order with any values") {
    const Canvas canvas;
    const ImguiMeasure measure = canvas.measure();
    ResultScaleLabels l;
    l.value = "22.681";
    l.low = "22.679";
    l.high = "22.683";
    l.accepted = "accepted 22.711";
    for (const double value : {22.68, 22.711, 6.038, 0.0, -3.0, 1e6, 24.5}) {
        for (const double half : {-1.0, 0.0, 0.0001, 0.12, 30.0, 1e6}) {
            for (const float width : {240.0F, 574.0F}) {
                std::optional<ScaleBand> interval;
                if (half >= 0) interval = ScaleBand{value - half, value + half};
                const Picture p = draw_result_scale(value, interval, 22.711, l, width, 64, measure);
                INFO("value ", value, ", half ", half, ", width ", width);
                CHECK(overlapping_texts(p, measure, 1.0F) == "");
                for (const Mark& mark : p.marks) {
                    for (const Point& point : mark.points) CHECK((point.x >= 0 && point.x <= width));
                    if (mark.kind != Mark::Kind::text) continue;
                    const Bounds b = text_bounds(mark, measure);
                    CHECK((b.left >= -0.5F && b.right <= width + 0.5F && b.top >= 0 && b.bottom <= 64));
                }
            }
        }
    }
    const double nan = std::numeric_limits<double>::quiet_NaN();
    CHECK(draw_result_scale(nan, ScaleBand{22, 23}, 22.7, l, 574, 64, measure).marks.size() == 1);
    CHECK(draw_result_scale(22.7, ScaleBand{nan, 23}, 22.7, l, 574, 64, measure).marks.size() == 1);
    CHECK(draw_result_scale(22.7, ScaleBand{23, 22}, 22.7, l, 574, 64, measure).marks.size() == 1);
}

TEST_CASE("the number line shows an interval that leans, and one without an upper end") {
    const Canvas canvas;
    const ImguiMeasure measure = canvas.measure();
    ResultScaleLabels l;
    l.low = "22.47";
    l.high = "22.76";
    l.accepted = "accepted 22.71";
    const auto band_of = [&](ScaleBand band) {
        const Picture p = draw_result_scale(22.68, band, 22.71, l, 574, 64, measure);
        const std::vector<const Mark*> boxes = marks_of(p, Mark::Kind::box);
        REQUIRE(boxes.size() == 1);
        Bounds dot;
        for (const Point& point : marks_of(p, Mark::Kind::area)[0]->points) dot.add(point.x, point.y);
        return std::array<float, 3>{boxes[0]->points[0].x, (dot.left + dot.right) / 2, boxes[0]->points[1].x};
    };
    const auto leans = band_of({22.47, 22.76});
    // 0.21 below the value and 0.08 above.
    CHECK((leans[1] - leans[0]) / (leans[2] - leans[1]) == doctest::Approx(0.21 / 0.08).epsilon(0.01));
    const auto open = band_of({16.0, std::numeric_limits<double>::infinity()});
    CHECK(open[2] == 574);
}
