// The canvas and the SVG are painted from one picture; here each mark's vertices are compared with its element.
#include <doctest/doctest.h>

#include <cstdlib>
#include <numbers>

#include "tests/ui/draw_support.hpp"
#include "web/draw/doubt_pictures.hpp"
#include "web/draw/geometry.hpp"
#include "web/draw/result_pictures.hpp"
#include "web/draw/slider.hpp"
#include "web/draw/svg_painter.hpp"
#include "web/draw/tube.hpp"
#include "web/draw/typeset.hpp"
#include "web/draw/vessel.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

std::string attribute(const Element& element, std::string_view name) {
    for (const auto& [key, value] : element.attributes) {
        if (key == name) return value;
    }
    return {};
}

float number_in(const Element& element, std::string_view name) {
    return std::strtof(attribute(element, name).c_str(), nullptr);
}

/// All numbers of an attribute in their order.
std::vector<float> numbers_in(const std::string& text) {
    std::vector<float> found;
    const char* at = text.c_str();
    while (*at != '\0') {
        char* after = nullptr;
        const float value = std::strtof(at, &after);
        if (after == at) {
            ++at;
        } else {
            found.push_back(value);
            at = after;
        }
    }
    return found;
}

/// A straight stroke with flat ends.
void add_stroke(Bounds& bounds, float x1, float y1, float x2, float y2, float width) {
    const float length = std::max(1e-6F, std::hypot(x2 - x1, y2 - y1));
    const float dx = (y2 - y1) / length * width / 2;
    const float dy = (x2 - x1) / length * width / 2;
    bounds.add(x1 - dx, y1 + dy);
    bounds.add(x1 + dx, y1 - dy);
    bounds.add(x2 - dx, y2 + dy);
    bounds.add(x2 + dx, y2 - dy);
}

Bounds bounds_of(const Element& e) {
    Bounds bounds;
    const float width = number_in(e, "stroke-width");
    if (e.name == "line") {
        const float x1 = number_in(e, "x1");
        const float y1 = number_in(e, "y1");
        float x2 = number_in(e, "x2");
        float y2 = number_in(e, "y2");
        const std::vector<float> dashes = numbers_in(attribute(e, "stroke-dasharray"));
        if (dashes.size() == 2) {  // a line that ends in a gap ends with its last dash
            const float length = std::hypot(x2 - x1, y2 - y1);
            const float missing = std::max(0.0F, std::fmod(length, dashes[0] + dashes[1]) - dashes[0]);
            x2 -= (x2 - x1) * missing / length;
            y2 -= (y2 - y1) * missing / length;
        }
        add_stroke(bounds, x1, y1, x2, y2, width);
    } else if (e.name == "rect") {
        const float x = number_in(e, "x");
        const float y = number_in(e, "y");
        bounds.add(x - width / 2, y - width / 2);
        bounds.add(x + number_in(e, "width") + width / 2, y + number_in(e, "height") + width / 2);
    } else if (e.name == "polygon") {
        const std::vector<float> n = numbers_in(attribute(e, "points"));
        for (std::size_t i = 0; i + 1 < n.size(); i += 2) bounds.add(n[i], n[i + 1]);
    } else if (e.name == "polyline") {
        const std::vector<float> n = numbers_in(attribute(e, "points"));
        for (std::size_t i = 0; i + 3 < n.size(); i += 2) add_stroke(bounds, n[i], n[i + 1], n[i + 2], n[i + 3], width);
    } else if (e.name == "path") {
        const std::vector<float> n = numbers_in(attribute(e, "d"));
        for (std::size_t i = 0; i + 3 < n.size(); i += 4) add_stroke(bounds, n[i], n[i + 1], n[i + 2], n[i + 3], width);
    }
    return bounds;
}

std::vector<Picture> samples(const TextMeasure& measure) {
    TubeView view;
    view.end_space_mL = 2.35;
    view.end_space_known = true;
    view.reading_mL = 9.15;
    view.level_difference_mm = 112;
    TubeLabels labels;
    labels.gas_volume_number = "43.20";
    labels.gas_volume_unit = "mL gas";
    labels.end_space_word = "end space";
    labels.end_space_value = "2.35 mL";
    labels.level_number = "112";
    labels.level_unit = "mm";
    labels.reading_number = "9.15";
    labels.meniscus_word = "meniscus";
    std::vector<Picture> pictures{draw_tube(view, labels, 300, 540, measure)};
    view.end_space_known = false;
    view.reading_mL = 60;
    pictures.push_back(draw_tube(view, labels, 340, 420, measure));
    pictures.push_back(draw_scale_choice(true, "50", "", 96, 120, measure));
    pictures.push_back(draw_pressure_bar(99.62, 1.10, 2.55, 230, 12));
    VesselLabels words;
    words.injected = words.sample = words.start = words.reading = words.gas = {"44.5 mL", "gas"};
    words.display = words.display_2 = {"99.6 kPa", "before"};
    for (int i = 0; i < 4; ++i) {
        VesselView vessel;
        vessel.kind = static_cast<VesselView::Kind>(i);
        vessel.start_mL = 2;
        vessel.reading_mL = 44.5;
        pictures.push_back(draw_vessel(vessel, words, 300, 400, measure));
    }
    ResultScaleLabels scale;
    scale.low = "22.56";
    scale.high = "22.80";
    scale.accepted = "accepted 22.71";
    pictures.push_back(draw_result_scale(22.68, ScaleBand{22.56, 22.80}, 22.71, scale, 574, 64, measure));
    std::vector<BudgetBar> bars;
    for (int i = 0; i < 4; ++i) bars.push_back({"name", 0.4 - 0.1 * i, "share", static_cast<BarPattern>(i)});
    pictures.push_back(draw_budget_bars(bars, {}, 500, measure));
    HistogramView trials;
    trials.counts = {3, 8, 20, 12, 6, 2};
    trials.low = 22;
    trials.high = 23.2;
    trials.interval_low = 22.1;
    trials.interval_high = HUGE_VAL;
    trials.value = 22.5;
    trials.curve_mean = 22.55;
    trials.curve_deviation = 0.25;
    pictures.push_back(draw_histogram(trials, 420, 200, measure));
    for (int i = 0; i < 4; ++i) pictures.push_back(draw_need_bar(3, 2, i, 180, 16));
    pictures.push_back(draw_slider({0.7, 0.5, {0.5}, false}, 240, 44));
    const Formula base = Formula::of(Formula::Kind::subscript, {Formula::leaf(Formula::Kind::variable, "V"),
                                                                Formula::leaf(Formula::Kind::words, "m")});
    const Formula half = Formula::of(Formula::Kind::fraction, {base, Formula::leaf(Formula::Kind::number, "2")});
    const Formula row = Formula::of(
        Formula::Kind::row, {Formula::of(Formula::Kind::bracketed, {half}),
                             Formula::leaf(Formula::Kind::operation, "="), Formula::of(Formula::Kind::root, {half})});
    pictures.push_back(typeset(row, 30, Ink::text, measure));
    Picture boxes;
    boxes.framed_box({10, 10}, {80, 40}, Ink::soft, 2, 6, true);
    boxes.framed_box({10, 10}, {80, 40}, Ink::soft, 1);
    boxes.filled_box({80, 40}, {10, 10}, Ink::soft, 6);
    boxes.polyline({{5, 5}, {40, 30}, {70, 8}}, Ink::copper, 2, true);
    boxes.area({{70, 8}, {40, 30}, {5, 5}}, Ink::copper);  // anticlockwise
    pictures.push_back(boxes);
    return pictures;
}

void check_near(const Bounds& one, const Bounds& other, float slack) {
    CHECK(std::abs(one.left - other.left) <= slack);
    CHECK(std::abs(one.top - other.top) <= slack);
    CHECK(std::abs(one.right - other.right) <= slack);
    CHECK(std::abs(one.bottom - other.bottom) <= slack);
}

}  // namespace

TEST_CASE("canvas and SVG show each mark at the same place within a pixel") {
    for (const float scale : {1.0F, 1.25F, 2.0F}) {
        const Canvas canvas(scale);
        const ImguiMeasure measure = canvas.measure();
        const Theme& light = theme(ThemeName::light);
        for (const Picture& picture : samples(measure)) {
            const Element svg = svg_of(picture, light);
            REQUIRE(svg.name == "svg");
            REQUIRE(svg.children.size() == picture.marks.size());
            for (std::size_t i = 0; i < picture.marks.size(); ++i) {
                const Mark& mark = picture.marks[i];
                if (mark.kind == Mark::Kind::text) continue;
                Picture single;
                single.marks.push_back(mark);
                const Bounds painted = canvas.painted(single, {0, 0}, light);
                const Bounds described = bounds_of(svg.children[i]);
                INFO("scale ", scale, ", mark ", i, ", element ", svg.children[i].name);
                REQUIRE(painted.empty() == described.empty());
                if (!painted.empty()) check_near(painted, described, 1.01F);
            }
        }
    }
}

TEST_CASE("canvas and SVG anchor texts alike and give them the same width") {
    for (const float scale : {1.0F, 2.0F}) {
        const Canvas canvas(scale);
        const ImguiMeasure measure = canvas.measure();
        const Theme& light = theme(ThemeName::light);
        for (const Anchor anchor : {Anchor::start, Anchor::middle, Anchor::end}) {
            for (const Face face : {Face::regular, Face::semibold, Face::italic}) {
                Picture picture;
                // Upright letters from edge to edge, so that what is painted shows baseline, height and width.
                picture.text({200.3F, 100.6F}, "HIH", Ink::text, face, 40, anchor);
                const Bounds painted = canvas.painted(picture, {0, 0}, light);
                const Bounds wanted = text_bounds(picture.marks[0], measure, 0.656F, 0);  // cap height of the font
                const float lean = face == Face::italic ? 0.2F * 0.656F * 40 : 0;
                // The H's own side bearing is 0.09 em (0.083 in the semibold) on each side.
                const float bearing = (face == Face::semibold ? 0.083F : 0.09F) * 40;
                INFO("scale ", scale, ", anchor ", static_cast<int>(anchor), ", face ", static_cast<int>(face));
                CHECK(std::abs(painted.top - wanted.top) <= 2);  // with the glyph picture's own margin
                CHECK(std::abs(painted.bottom - wanted.bottom) <= 2);
                CHECK(std::abs(painted.left - (wanted.left + bearing)) <= 2);
                CHECK(std::abs(painted.right - (wanted.right - bearing + lean)) <= 2);

                const Element text = svg_of(picture, light).children[0];
                CHECK(text.name == "text");
                CHECK(attribute(text, "font-size") == "40");
                CHECK(attribute(text, "font-weight") == (face == Face::semibold ? "600" : ""));
                CHECK(attribute(text, "text-anchor") == (anchor == Anchor::middle ? "middle"
                                                         : anchor == Anchor::end  ? "end"
                                                                                  : ""));
                if (face == Face::italic) {
                    const std::vector<float> moved = numbers_in(attribute(text, "transform"));
                    REQUIRE(moved.size() == 3);
                    CHECK(moved[0] == doctest::Approx(200.3));
                    CHECK(moved[1] == doctest::Approx(100.6));
                    CHECK(std::tan(-moved[2] * std::numbers::pi_v<float> / 180) ==
                          doctest::Approx(italic_slant).epsilon(0.001));
                } else {
                    CHECK(attribute(text, "x") == "200.3");
                    CHECK(attribute(text, "y") == "100.6");
                }
            }
        }
    }
}

TEST_CASE("texts are as wide as the font's own table of advances says") {
    // Sums of advances in thousandths of an em, read with fontTools 4.38 from the hmtx table of the package
    // @expo-google-fonts/source-sans-3. A browser without kerning lays text out by the same table.
    struct Row {
        std::string_view words;
        float regular;
        float semibold;
    };
    const Row rows[] = {{"43.20", 2237, 2327},
                        {"mL gas", 2942, 3012},
                        {"accepted 22.71", 6293, 6470},
                        {"n(H₂) = 1 × n(Mg)", 6847, 7055}};
    const Canvas canvas;
    const ImguiMeasure measure = canvas.measure();
    for (const Row& row : rows) {
        for (const float size : {14.0F, 16.0F, 24.0F, 52.0F}) {
            CHECK(std::abs(measure.width(row.words, Face::regular, size) - row.regular * size / 1000) < 0.05F);
            CHECK(std::abs(measure.width(row.words, Face::italic, size) - row.regular * size / 1000) < 0.05F);
            CHECK(std::abs(measure.width(row.words, Face::semibold, size) - row.semibold * size / 1000) < 0.05F);
        }
    }
    CHECK(measure.width("", Face::regular, 16) == 0);
    CHECK(measure.width("x", Face::regular, 0) == 0);
}

TEST_CASE("level and upright lines lie on whole device pixels") {
    for (const float scale : {1.0F, 1.25F, 1.5F, 2.0F, 3.0F}) {
        const Canvas canvas(scale);
        for (const float y : {10.0F, 10.3F, 10.5F, 10.77F}) {
            Picture picture;
            picture.line({3, y}, {40, y}, Ink::text);
            const Bounds painted = canvas.painted(picture, {0.37F, 0.21F}, theme(ThemeName::light));
            const float top = (painted.top + 0.21F) * scale;
            const float bottom = (painted.bottom + 0.21F) * scale;
            CHECK(std::abs(top - std::round(top)) < 0.01F);
            CHECK(std::abs(bottom - std::round(bottom)) < 0.01F);
            CHECK(bottom - top >= 0.99F);
        }
    }
}

TEST_CASE("marks without their points, empty texts and absurd sizes are painted as nothing") {
    const Canvas canvas;
    Picture picture;
    picture.text({5, 5}, "", Ink::text, Face::regular, 16);
    picture.text({5, 5}, "a", Ink::text, Face::regular, 0);
    picture.area({{1, 1}, {1, 1}, {1, 1}, {1, 1}}, Ink::text);
    picture.area({}, Ink::text);
    picture.hatched({}, Ink::text, 4);
    picture.polyline({{1, 1}}, Ink::text);
    Mark bare;
    for (const Mark::Kind kind : {Mark::Kind::line, Mark::Kind::polyline, Mark::Kind::area, Mark::Kind::hatched,
                                  Mark::Kind::box, Mark::Kind::text}) {
        bare.kind = kind;
        picture.marks.push_back(bare);
    }
    CHECK(canvas.painted(picture, {0, 0}, theme(ThemeName::dark)).empty());
    CHECK(svg_of(picture, theme(ThemeName::dark)).children.size() == picture.marks.size());
}

TEST_CASE("an area's soft edge lies outside of it, whichever way round its outline is given") {
    const Canvas canvas;
    canvas.list().Flags = ImDrawListFlags_AntiAliasedFill;
    Picture clockwise;
    clockwise.area({{10, 10}, {50, 10}, {50, 40}, {30, 20}, {10, 40}}, Ink::text);
    Picture anticlockwise;
    anticlockwise.area({{10, 40}, {30, 20}, {50, 40}, {50, 10}, {10, 10}}, Ink::text);
    const Theme& light = theme(ThemeName::light);
    const auto reach_of_colour = [&](const Picture& picture) {
        const int first = canvas.list().VtxBuffer.Size;
        paint(picture, {0, 0}, light, canvas.list(), canvas.fonts(), 1);
        Bounds solid;
        for (int i = first; i < canvas.list().VtxBuffer.Size; ++i) {
            const ImDrawVert& v = canvas.list().VtxBuffer[i];
            if ((v.col & IM_COL32_A_MASK) != 0) solid.add(v.pos.x, v.pos.y);
        }
        return solid;
    };
    for (const Picture& picture : {clockwise, anticlockwise}) {
        const Bounds solid = reach_of_colour(picture);
        CHECK(solid.left == doctest::Approx(10.5));
        CHECK(solid.top == doctest::Approx(10.5));
        CHECK(solid.right == doctest::Approx(49.5));
    }
}
