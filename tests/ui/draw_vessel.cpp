#include <doctest/doctest.h>

#include <limits>

#include "tests/ui/draw_support.hpp"
#include "web/draw/vessel.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

using Kind = VesselView::Kind;
constexpr Kind kinds[] = {Kind::generator_flask, Kind::gas_syringe, Kind::displaced_water, Kind::pressure_sensor};

struct Size {
    float width;
    float height;
};
constexpr Size sizes[] = {{260, 360}, {300, 400}, {340, 300}, {420, 300}, {560, 640}, {900, 420}, {300, 800}};

/// Invented readings, of no experiment that was done.
VesselView record(Kind kind) {
    VesselView view;
    view.kind = kind;
    view.tube.end_space_mL = 2.35;
    view.tube.end_space_known = true;
    view.tube.reading_mL = 9.15;
    view.tube.level_difference_mm = 112;
    view.start_mL = 2;
    view.reading_mL = 44.5;
    return view;
}

VesselLabels labels(Kind kind) {
    VesselLabels l;
    l.tube.gas_volume_number = "43.20";
    l.tube.gas_volume_unit = "mL gas";
    l.tube.end_space_word = "end space";
    l.tube.end_space_value = "2.35 mL";
    l.tube.level_number = "112";
    l.tube.level_unit = "mm";
    l.tube.reading_number = "9.15";
    l.injected = {"10.00 mL", "acid"};
    l.sample = {"0.0412 g", "magnesium"};
    l.start = {"2.0 mL", "before"};
    l.reading = {"44.5 mL", "after"};
    l.gas = {"42.5 mL", "volume of the gas"};
    l.display = {"99.62 kPa", "before"};
    l.display_2 = {"128.40 kPa", "afterwards"};
    if (kind == Kind::displaced_water) {
        l.display = {"44.42 g", ""};
        l.gas.word = "mL of water";
    }
    l.description = "what is seen";
    return l;
}

/// A stretch of a line that ends in the inside of a box or runs through it.
bool runs_through(Point a, Point b, const Bounds& box) {
    constexpr int steps = 64;
    for (int i = 0; i <= steps; ++i) {
        const float t = static_cast<float>(i) / steps;
        const float x = a.x + (b.x - a.x) * t;
        const float y = a.y + (b.y - a.y) * t;
        if (x > box.left + 0.5F && x < box.right - 0.5F && y > box.top + 0.5F && y < box.bottom - 0.5F) return true;
    }
    return false;
}

/// Names a text through which a glass wall, a tubing or a leader runs.
std::string struck_text(const Picture& p, const TextMeasure& measure) {
    for (const Mark* text : marks_of(p, Mark::Kind::text)) {
        const Bounds box = text_bounds(*text, measure, 0.62F, 0.02F);
        for (const Mark& mark : p.marks) {
            if (mark.kind != Mark::Kind::polyline && mark.kind != Mark::Kind::line) continue;
            // The level of the trough and marks of what cannot be keep to rules of the tube's own (draw_tube.cpp).
            if (mark.dashed || mark.ink == Ink::liquid_edge || mark.ink == Ink::copper) continue;
            for (std::size_t i = 0; i + 1 < mark.points.size(); ++i) {
                if (runs_through(mark.points[i], mark.points[i + 1], box)) return text->text;
            }
        }
    }
    return {};
}

/// All that is drawn lies in the picture, no text meets another one, and no line runs through one.
void check_orderly(const Picture& p, const TextMeasure& measure) {
    CHECK(overlapping_texts(p, measure, 1.0F) == "");
    CHECK(struck_text(p, measure) == "");
    bool inside = true;
    for (const Mark& mark : p.marks) {
        for (const Point& point : mark.points) {
            inside = inside && point.x >= 0 && point.x <= p.width && point.y >= 0 && point.y <= p.height;
        }
        if (mark.kind != Mark::Kind::text) continue;
        const Bounds b = text_bounds(mark, measure);
        INFO("text ", mark.text);
        CHECK((b.left >= 0 && b.right <= p.width && b.top >= 0 && b.bottom <= p.height));
    }
    CHECK(inside);
}

/// Where the gas in the syringe ends, the one outline of four corners in the ink of gas; -1 without any.
float end_of_gas(const Picture& p) {
    for (const Mark& mark : p.marks) {
        if (mark.kind != Mark::Kind::area || mark.ink != Ink::gas || mark.points.size() != 4) continue;
        return std::max(mark.points[0].x, mark.points[2].x);
    }
    return -1;
}

}  // namespace

TEST_CASE("the vessels keep inside their picture and their labels clear, at any size and reading") {
    const Canvas canvas;
    const ImguiMeasure measure = canvas.measure();
    for (const Kind kind : kinds) {
        for (const Size& size : sizes) {
            for (const double reading :
                 {-3.0, 0.0, 0.5, 2.0, 4.0, 12.0, 44.5, 60.0, 88.0, 99.5, 100.0, 130.0, 4450.0}) {
                VesselView view = record(kind);
                view.reading_mL = reading;
                view.tube.reading_mL = reading;
                for (const double start : {0.0, 2.0, 50.0, 100.0}) {
                    // The other vessels do not look at it.
                    if (kind != Kind::gas_syringe && start > 0) continue;
                    view.start_mL = start;
                    INFO("kind ", static_cast<int>(kind), ", reading ", reading, ", start ", start, ", width ",
                         size.width, ", height ", size.height);
                    check_orderly(draw_vessel(view, labels(kind), size.width, size.height, measure), measure);
                }
            }
        }
    }
}

TEST_CASE("the tubing to the trough keeps clear of the tube's labels, wherever the levels are") {
    const Canvas canvas;
    const ImguiMeasure measure = canvas.measure();
    for (const Size& size : sizes) {
        for (const bool largest : {true, false}) {
            for (const double reading : {0.0, 9.15, 25.0, 41.0, 50.0}) {
                for (const double level : {-400.0, -60.0, -3.0, 0.0, 2.0, 30.0, 112.5, 180.0, 500.0}) {
                    VesselView view = record(Kind::generator_flask);
                    view.tube.closed_end_has_largest = largest;
                    view.tube.reading_mL = reading;
                    view.tube.level_difference_mm = level;
                    VesselLabels words = labels(view.kind);
                    words.tube.level_number = "112.5";
                    words.tube.gas_volume_unit = "mL of gas";
                    INFO("largest ", largest, ", reading ", reading, ", level ", level, ", width ", size.width,
                         ", height ", size.height);
                    check_orderly(draw_vessel(view, words, size.width, size.height, measure), measure);
                }
            }
        }
    }
}

TEST_CASE("the plunger stands to scale: as much of the barrel as the reading is of the capacity") {
    const PlainMeasure measure;
    for (const Size& size : sizes) {
        for (const double reading : {0.5, 12.0, 44.5, 100.0}) {
            VesselView view = record(Kind::gas_syringe);
            view.reading_mL = reading;
            const VesselScale scale = vessel_scale(view, size.width, size.height);
            REQUIRE((scale.now && scale.start));
            CHECK(scale.full - scale.zero > size.width / 3);
            // 44.5 of 100 mL is 0.445 of the way from 0 to 100.
            CHECK((*scale.now - scale.zero) / (scale.full - scale.zero) ==
                  doctest::Approx(reading / 100).epsilon(1e-4));
            CHECK((*scale.start - scale.zero) / (scale.full - scale.zero) == doctest::Approx(0.02).epsilon(1e-4));
            CHECK_FALSE(scale.beyond);
            const Picture p = draw_vessel(view, labels(view.kind), size.width, size.height, measure);
            CHECK(end_of_gas(p) == doctest::Approx(*scale.now));
            // Its numbers stand where they say.
            REQUIRE((text_mark(p, "0") != nullptr && text_mark(p, "100") != nullptr));
            CHECK(text_mark(p, "0")->points[0].x == doctest::Approx(scale.zero));
            CHECK(text_mark(p, "100")->points[0].x == doctest::Approx(scale.full));
        }
    }
}

TEST_CASE("the numbers of the syringe's scale grow to the right and carry the decimal sign") {
    const PlainMeasure measure;
    VesselView view = record(Kind::gas_syringe);
    view.capacity_mL = 2.5;
    view.start_mL = 0;
    view.reading_mL = 1.5;
    VesselLabels words = labels(view.kind);
    words.decimal_sign = ",";
    const Picture p = draw_vessel(view, words, 560, 640, measure);
    REQUIRE((text_mark(p, "0") != nullptr && text_mark(p, "1") != nullptr && text_mark(p, "2,5") != nullptr));
    const float zero = text_mark(p, "0")->points[0].x;
    const float full = text_mark(p, "2,5")->points[0].x;
    CHECK(text_mark(p, "1")->points[0].x - zero == doctest::Approx((full - zero) / 2.5));
}

TEST_CASE("the water in the bottle falls as far as the share of it that has left") {
    for (const Size& size : sizes) {
        VesselView view = record(Kind::displaced_water);
        view.capacity_mL = 250;
        view.reading_mL = 100;
        const VesselScale scale = vessel_scale(view, size.width, size.height);
        REQUIRE(scale.now);
        CHECK(scale.full > scale.zero);  // its floor is below its neck
        // 100 of 250 mL is 0.4 of the way down.
        CHECK(*scale.now - scale.zero == doctest::Approx(0.4 * static_cast<double>(scale.full - scale.zero)));
    }
}

TEST_CASE("a missing reading is missing: no plunger, no mark, a full bottle and an empty beaker") {
    const PlainMeasure measure;
    for (const Kind kind : kinds) {
        VesselView view = record(kind);
        view.reading_mL.reset();
        view.start_mL.reset();
        const VesselScale scale = vessel_scale(view, 300, 400);
        CHECK_FALSE((scale.now || scale.start || scale.beyond));
        VesselLabels words = labels(kind);
        const Picture p = draw_vessel(view, words, 300, 400, measure);
        check_orderly(p, measure);
        for (const Mark& mark : p.marks) CHECK(mark.ink != Ink::warning);
        if (kind == Kind::gas_syringe) {
            CHECK(end_of_gas(p) < 0);
            CHECK(text_mark(p, words.reading.number) == nullptr);
            CHECK(text_mark(p, words.start.number) == nullptr);
            CHECK(text_mark(p, words.gas.number) == nullptr);
        }
        // Two levels of acid and water in sight, only where they are known: in the flask always, in bottle and beaker not.
        std::size_t levels = 0;
        for (const Mark* mark : marks_of(p, Mark::Kind::line)) levels += mark->ink == Ink::liquid_edge ? 1 : 0;
        if (kind == Kind::displaced_water) CHECK(levels == 2);  // the acid's, and the water's up to the stopper
    }
}

TEST_CASE("without a scale nothing is read off, and its numbers are not made up") {
    const PlainMeasure measure;
    for (const double capacity : {0.0, -5.0, 1e9, std::numeric_limits<double>::quiet_NaN()}) {
        VesselView view = record(Kind::gas_syringe);
        view.capacity_mL = capacity;
        const Picture p = draw_vessel(view, labels(view.kind), 300, 400, measure);
        CHECK(text_mark(p, "0") == nullptr);
        CHECK(end_of_gas(p) < 0);
        check_orderly(p, measure);
    }
}

TEST_CASE("a plunger that cannot be there and a bottle that held less have a dashed mark in the colour of warnings") {
    const PlainMeasure measure;
    for (const Kind kind : {Kind::gas_syringe, Kind::displaced_water}) {
        for (const double reading : {-1.0, 44.5, 101.0}) {
            VesselView view = record(kind);
            view.reading_mL = reading;
            bool warned = false;
            for (const Mark& mark : draw_vessel(view, labels(kind), 300, 400, measure).marks) {
                warned = warned || (mark.dashed && mark.ink == Ink::warning);
            }
            CHECK(warned == (reading != 44.5));
            const VesselScale scale = vessel_scale(view, 300, 400);
            CHECK(scale.beyond == warned);
            if (reading < 0) CHECK(*scale.now == scale.zero);
            if (reading > 100) CHECK(*scale.now == scale.full);
        }
    }
}

TEST_CASE("numbers that are no numbers are as good as missing in every vessel") {
    const PlainMeasure measure;
    const double odd[] = {std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity(),
                          -std::numeric_limits<double>::infinity(), 1e300, -1e300};
    for (const Kind kind : kinds) {
        for (const double v : odd) {
            VesselView view = record(kind);
            view.reading_mL = v;
            view.start_mL = v;
            view.tube.reading_mL = v;
            view.tube.level_difference_mm = v;
            if (!std::isfinite(v)) CHECK_FALSE(vessel_scale(view, 300, 400).now.has_value());
            const Picture p = draw_vessel(view, labels(kind), 300, 400, measure);
            INFO("kind ", static_cast<int>(kind), ", value ", v);
            CHECK(p.marks.size() < 500);
            check_orderly(p, measure);
        }
    }
}

TEST_CASE("the vessels are described in the words given, and their displays show what they are told") {
    const PlainMeasure measure;
    for (const Kind kind : kinds) {
        const VesselLabels words = labels(kind);
        const Picture p = draw_vessel(record(kind), words, 300, 400, measure);
        CHECK(p.description == "what is seen");

        CHECK((text_mark(p, "128.40 kPa") != nullptr) == (kind == Kind::pressure_sensor));
        CHECK((text_mark(p, "44.42 g") != nullptr) == (kind == Kind::displaced_water));
        CHECK((text_mark(p, "10.00 mL") != nullptr) == (kind == Kind::generator_flask));
        CHECK((text_mark(p, "43.20") != nullptr) == (kind == Kind::generator_flask));
        // Without labels only a scale's own numbers are left.
        const Picture bare = draw_vessel(record(kind), {}, 300, 400, measure);
        for (const Mark* mark : marks_of(bare, Mark::Kind::text)) {
            CHECK(mark->text.find_first_not_of("0123456789") == std::string::npos);
        }
    }
}
