#include <doctest/doctest.h>

#include <cmath>

#include "core/lesson/practice.hpp"
#include "core/quantity/number_format.hpp"
#include "tests/ui/draw_support.hpp"
#include "web/draw/dial_picture.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

constexpr DialZoom zooms[] = {DialZoom::whole, DialZoom::around, DialZoom::between};

/// A tube of 50 mL with divisions of 0.1 mL, as a burette has (numbers at whole mL).
Dial burette(double position) {
    Dial dial;
    dial.unit = UnitId::millilitre;
    dial.high = 50;
    dial.division = 0.1;
    dial.position = position;
    dial.decimals = 2;
    return dial;
}

Dial of_kind(DialKind kind, double low, double high, double division, double position, int decimals) {
    Dial dial = burette(position);
    dial.field = kind == DialKind::ruler ? Field::level_difference : Field::barometer;
    dial.kind = kind;
    dial.low = low;
    dial.high = high;
    dial.division = division;
    dial.decimals = decimals;
    return dial;
}

DialLook look_at(DialZoom zoom, bool upwards = true) {
    DialLook look;
    look.zoom = zoom;
    look.grows_upwards = upwards;
    look.unit = "mL";
    look.description = "seen";
    return look;
}

/// The height of the mark beside a number: the line whose end is nearest to the number's middle.
float mark_beside(const Picture& picture, const Mark& number) {
    const float middle = number.points[0].y - number.size * 0.36F;
    float best = 1e9F;
    for (const Mark* line : marks_of(picture, Mark::Kind::line)) {
        if (line->points[0].y != line->points[1].y || line->dashed) continue;
        if (std::abs(line->points[0].y - middle) < std::abs(best - middle)) best = line->points[0].y;
    }
    return best;
}

/// The lowest point of the liquid's surface as drawn: y grows downwards.
float lowest_of_surface(const Picture& picture) {
    float lowest = -1e9F;
    for (const Mark* line : marks_of(picture, Mark::Kind::polyline)) {
        if (line->ink != Ink::liquid_edge) continue;
        for (const Point& p : line->points) lowest = std::max(lowest, p.y);
    }
    return lowest;
}

}  // namespace

TEST_CASE("the bottom of the meniscus lies between the right marks, at the right share of the way") {
    const PlainMeasure measure;
    for (const double position : {9.15, 0.07, 31.98, 43.20, 49.96}) {
        for (const bool upwards : {true, false}) {
            for (const DialZoom zoom : {DialZoom::around, DialZoom::between}) {
                const Dial dial = burette(position);
                const Picture p = draw_dial(dial, look_at(zoom, upwards), 262, 400, measure);
                const int below = static_cast<int>(std::floor(position));
                const Mark* low = text_mark(p, std::to_string(below));
                const Mark* high = text_mark(p, std::to_string(below + 1));
                INFO("position ", position, " upwards ", upwards);
                REQUIRE(low != nullptr);
                REQUIRE(high != nullptr);
                const float from = mark_beside(p, *low);
                const float to = mark_beside(p, *high);
                CHECK((to < from) == upwards);
                const double share = static_cast<double>((lowest_of_surface(p) - from) / (to - from));
                // A tenth of a division is a hundredth of the way.
                CHECK(share == doctest::Approx(position - below).epsilon(0).scale(1).epsilon(0.002));
            }
        }
    }
}

TEST_CASE("the meniscus hangs: it is higher at the glass than in the middle, liquid below it and gas above") {
    const PlainMeasure measure;
    const Picture p = draw_dial(burette(9.15), look_at(DialZoom::around), 262, 400, measure);
    const float lowest = lowest_of_surface(p);
    for (const Mark* line : marks_of(p, Mark::Kind::polyline)) {
        if (line->ink != Ink::liquid_edge) continue;
        CHECK(line->points.front().y < lowest - 3);
        CHECK(line->points.back().y < lowest - 3);
        CHECK(line->points[line->points.size() / 2].y == doctest::Approx(lowest));
    }
    Bounds liquid;
    Bounds gas;
    for (const Mark* area : marks_of(p, Mark::Kind::area)) {
        for (const Point& q : area->points) {
            if (area->ink == Ink::liquid) liquid.add(q.x, q.y);
            if (area->ink == Ink::gas) gas.add(q.x, q.y);
        }
    }
    CHECK(liquid.bottom == doctest::Approx(400));
    CHECK(gas.bottom == doctest::Approx(lowest));
    CHECK(gas.top == doctest::Approx(0));
}

TEST_CASE("the needle points where the reading is") {
    const PlainMeasure measure;
    // 1 hPa a division, as aneroid barometers have.
    for (const double position : {996.2, 1013.9, 940.3, 1059.8}) {
        for (const DialZoom zoom : zooms) {
            const Dial dial = of_kind(DialKind::barometer_dial, 940, 1060, 1, position, 1);
            const Picture p = draw_dial(dial, look_at(zoom), 262, 320, measure);
            const Mark* needle = nullptr;
            for (const Mark* line : marks_of(p, Mark::Kind::line)) {
                if (line->ink == Ink::copper) needle = line;
            }
            REQUIRE(needle != nullptr);
            const DialArc round = dial_arc(zoom, 262, 320);
            const auto angle_of = [&](Point q) {
                double angle = std::atan2(static_cast<double>(q.y - round.centre.y), static_cast<double>(q.x - round.centre.x));
                while (angle > 1.6) angle -= 2 * 3.14159265358979;
                return angle;
            };
            // The marks of the numbers on both sides, found by where the numbers stand.
            const double below = std::floor(position / 10) * 10;
            const auto number_angle = [&](double value) {
                const Mark* text = text_mark(p, format_fixed(value, 0, DecimalSign::point));
                REQUIRE(text != nullptr);
                return angle_of({text->points[0].x, text->points[0].y - text->size * 0.36F});
            };
            INFO("position ", position);
            if (zoom == DialZoom::whole) continue;
            const double from = number_angle(below);
            const double to = number_angle(below + 10);
            CHECK((angle_of(needle->points[1]) - from) / (to - from) == doctest::Approx((position - below) / 10).epsilon(0.01));
        }
    }
}

TEST_CASE("columns and what lies beside a ruler end where the reading is") {
    const PlainMeasure measure;
    struct Row {
        Dial dial;
        const char* below;
        const char* above;
        Ink ink;
        double share;  ///< of the way from one number to the next
    };
    const Row rows[] = {
        {of_kind(DialKind::thermometer, -10, 60, 1, 21.4, 1), "20", "30", Ink::warning, 0.14},
        {of_kind(DialKind::mercury_column, 700, 800, 1, 747.3, 1), "740", "750", Ink::soft, 0.73},
        {of_kind(DialKind::ruler, 0, 300, 1, 112.6, 1), "110", "120", Ink::liquid, 0.26},
    };
    for (const Row& row : rows) {
        const Picture p = draw_dial(row.dial, look_at(DialZoom::between), 300, 380, measure);
        float top = 1e9F;
        for (const Mark& mark : p.marks) {
            const bool body = mark.kind == Mark::Kind::area || (mark.kind == Mark::Kind::box && mark.width == 0);
            if (!body || mark.ink != row.ink) continue;
            for (const Point& q : mark.points) top = std::min(top, q.y);
        }
        const Mark* low = text_mark(p, row.below);
        const Mark* high = text_mark(p, row.above);
        REQUIRE(low != nullptr);
        REQUIRE(high != nullptr);
        const float from = mark_beside(p, *low);
        const float to = mark_beside(p, *high);
        INFO(row.below);
        CHECK(static_cast<double>((top - from) / (to - from)) == doctest::Approx(row.share).epsilon(0.02));
    }
}

TEST_CASE("a digit display shows its digits with every zero and the decimal sign of the page") {
    const PlainMeasure measure;
    Dial dial = of_kind(DialKind::balance_display, 0, 0, 0.0001, 0.041, 4);
    dial.unit = UnitId::gram;
    DialLook look = look_at(DialZoom::around);
    look.unit = "g";
    CHECK(text_mark(draw_dial(dial, look, 262, 300, measure), "0.0410 g") != nullptr);
    look.decimal_sign = DecimalSign::comma;
    CHECK(text_mark(draw_dial(dial, look, 262, 300, measure), "0,0410 g") != nullptr);
}

TEST_CASE("every instrument of sixty codes stays in its picture, with texts clear of each other") {
    const Canvas canvas;
    const ImguiMeasure measure = canvas.measure();
    struct Size {
        float width;
        float height;
    };
    for (int seed = 0; seed < 60; ++seed) {
        PracticeSettings settings;
        settings.seed = seed;
        settings.difficulty = static_cast<Difficulty>(seed % 3);
        for (const Dial& dial : practice_run(settings).dials) {
            for (const Size size : {Size{262, 300}, Size{362, 230}, Size{420, 500}}) {
                for (const DialZoom zoom : zooms) {
                    DialLook look = look_at(zoom, seed % 2 == 0);
                    look.unit = info(dial.unit).symbol;
                    look.title = "Reduced to sea level";
                    const Picture p = draw_dial(dial, look, size.width, size.height, measure);
                    INFO("seed ", seed, " kind ", name_of(dial.kind), " width ", size.width, " zoom ", static_cast<int>(zoom));
                    REQUIRE(overlapping_texts(p, measure, 1.0F) == "");
                    int outside = 0;
                    const auto inside = [&](const Bounds& b) {
                        return b.left >= -0.5F && b.right <= p.width + 0.5F && b.top >= -0.5F && b.bottom <= p.height + 0.5F;
                    };
                    for (const Mark& mark : p.marks) {
                        Bounds bounds;
                        for (const Point& q : mark.points) bounds.add(q.x, q.y);
                        if (mark.kind == Mark::Kind::text) bounds = text_bounds(mark, measure);
                        if (!inside(bounds)) ++outside;
                    }
                    CHECK(outside == 0);
                    if (shows_digits(dial.kind)) continue;
                    // No text says the reading.
                    CHECK(text_mark(p, perfect_reading(dial)) == nullptr);
                }
            }
        }
    }
}
