#include "web/draw/doubt_pictures.hpp"

#include <doctest/doctest.h>

#include <limits>

#include "tests/ui/draw_support.hpp"
#include "web/draw/slider.hpp"
#include "web/draw/svg_painter.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

const double nan_value = std::numeric_limits<double>::quiet_NaN();
const double infinite = std::numeric_limits<double>::infinity();

/// Nothing outside the picture, no texts over each other, and both painters take all of it.
void check_sound(const Canvas& canvas, const Picture& picture) {
    const ImguiMeasure measure = canvas.measure();
    CHECK(overlapping_texts(picture, measure, 1.0F) == "");
    for (const Mark& mark : picture.marks) {
        for (const Point& point : mark.points) {
            CHECK((point.x >= -0.01F && point.x <= picture.width + 0.01F));
            CHECK((point.y >= -0.01F && point.y <= picture.height + 0.01F));
        }
        if (mark.kind != Mark::Kind::text) continue;
        INFO(mark.text);
        const Bounds b = text_bounds(mark, measure);
        CHECK((b.left >= -0.5F && b.right <= picture.width + 0.5F && b.top >= 0 && b.bottom <= picture.height));
    }
    if (picture.marks.empty()) return;
    const Bounds painted = canvas.painted(picture, {50, 50}, theme(ThemeName::light));
    CHECK((painted.left >= -1.5F && painted.right <= picture.width + 1.5F));
    CHECK((painted.top >= -1.5F && painted.bottom <= picture.height + 1.5F));
    const Element svg = svg_of(picture, theme(ThemeName::light));
    CHECK(svg.children.size() == picture.marks.size());
    const std::string markup = to_markup(svg);
    CHECK(markup.find("nan") == std::string::npos);
    CHECK(markup.find("inf") == std::string::npos);
}

std::string decimal(double value, int decimals) {
    char text[32];
    std::snprintf(text, sizeof text, "%.*f", decimals, value);
    return text;
}

std::vector<BudgetBar> sixteen_bars() {
    const char* names[] = {"Mass of metal, last digit", "End space, not measured", "Tube, class B", "Temperature",
                           "Barometer", "Level difference", "Vapour pressure, formula", "Atomic weight"};
    std::vector<BudgetBar> bars;
    for (int i = 0; i < 16; ++i) {
        bars.push_back({names[i % 8], 0.5 / (1 << i), decimal(50.0 / (1 << i), 1) + " %",
                        static_cast<BarPattern>(i % 4)});
    }
    return bars;
}

const BarLabels legend_of_four{"words for those who hear it",
                               14,
                               {{BarPattern::solid, "reading"},
                                {BarPattern::hatched, "limit of the instrument"},
                                {BarPattern::striped, "published"},
                                {BarPattern::hollow, "not measured"}}};

std::vector<const Mark*> boxes_of(const Picture& picture, Ink ink) {
    std::vector<const Mark*> found = marks_of(picture, Mark::Kind::box);
    std::erase_if(found, [ink](const Mark* box) { return box->ink != ink || box->width > 0; });
    return found;
}

float width_of(const Mark& box) { return box.points[1].x - box.points[0].x; }

HistogramView triangle() {
    HistogramView view;
    view.counts = {10, 20, 40, 80, 100, 60, 40, 30, 20, 10};  // 410
    view.low = 20;
    view.high = 25;
    view.interval_low = 21;
    view.interval_high = 24;
    view.value = 22.25;
    view.accepted = 23;
    view.value_words = "22.25";
    view.accepted_words = "accepted 23.00";
    view.interval_low_words = "21.00";
    view.interval_high_words = "24.00";
    view.interval_words = "95 %";
    view.curve_mean = 22.3;
    view.curve_deviation = 1;
    view.curve_words = "normal curve";
    view.number = decimal;
    view.description = "trials";
    return view;
}

/// Where the axis has a number, from its text's middle.
float place_of(const Picture& picture, std::string_view words) {
    const Mark* text = text_mark(picture, words);
    REQUIRE(text != nullptr);
    return text->points[0].x;
}

const Mark* upright(const Picture& picture, Ink ink) {
    for (const Mark* line : marks_of(picture, Mark::Kind::line)) {
        if (line->ink == ink && line->points[0].x == line->points[1].x && line->width == 2) return line;
    }
    return nullptr;
}

}  // namespace

TEST_CASE("the budget's bars are as long as their shares, the longest first") {
    const Canvas canvas;
    const std::vector<BudgetBar> bars{{"small", 0.125, "12.5 %"}, {"large", 0.5, "50 %"}, {"middle", 0.25, "25 %"}};
    const Picture p = draw_budget_bars(bars, {"spoken", 14, {}}, 600, canvas.measure());
    CHECK(p.description == "spoken");
    const std::vector<const Mark*> boxes = boxes_of(p, Ink::column_bar);
    REQUIRE(boxes.size() == 3);
    CHECK(width_of(*boxes[0]) == doctest::Approx(2 * width_of(*boxes[1])));
    CHECK(width_of(*boxes[1]) == doctest::Approx(2 * width_of(*boxes[2])));
    CHECK(text_mark(p, "large")->points[0].y < text_mark(p, "middle")->points[0].y);
    CHECK(text_mark(p, "middle")->points[0].y < text_mark(p, "small")->points[0].y);
    // A half is half as long as the room to the right edge, and all begin on one line.
    CHECK(boxes[0]->points[1].x == doctest::Approx((boxes[0]->points[0].x + 600) / 2).epsilon(0.001));
    CHECK(boxes[0]->points[0].x == boxes[2]->points[0].x);
}

TEST_CASE("names stand left of the bars where there is room, else above them") {
    const Canvas canvas;
    const std::vector<BudgetBar> bars{{"Vapour pressure, by the formula", 0.5, "50 %"}};
    const auto below = [&](float width) {
        const Picture p = draw_budget_bars(bars, {}, width, canvas.measure());
        return boxes_of(p, Ink::column_bar)[0]->points[0].y > text_mark(p, bars[0].label)->points[0].y;
    };
    CHECK(below(300));
    CHECK_FALSE(below(700));
}

TEST_CASE("kinds of doubt are told apart by pattern") {
    const Canvas canvas;
    std::vector<BudgetBar> bars;
    for (int i = 0; i < 4; ++i) bars.push_back({"name", 0.25, "25 %", static_cast<BarPattern>(i)});
    const Picture p = draw_budget_bars(bars, {}, 600, canvas.measure());
    CHECK(marks_of(p, Mark::Kind::hatched).size() == 1);
    int dashed = 0;
    int stripes = 0;
    for (const Mark& mark : p.marks) {
        if (mark.kind == Mark::Kind::box && mark.dashed) ++dashed;
        if (mark.kind == Mark::Kind::line && mark.points[0].y == mark.points[1].y && mark.ink == Ink::soft) ++stripes;
    }
    CHECK(dashed == 1);
    CHECK(stripes == 2);
}

TEST_CASE("the budget's picture is sound at any width, with any shares") {
    const Canvas canvas;
    const ImguiMeasure measure = canvas.measure();
    std::vector<BudgetBar> odd{{"not a number", nan_value, "?", BarPattern::solid},
                               {"too large", 7, "700 %", BarPattern::hatched},
                               {"negative", -1, "-100 %", BarPattern::striped},
                               {"none", 0, "0 %", BarPattern::hollow},
                               {"Donaudampfschifffahrtsgesellschaftskapitänskajütenbarometer", 1, "100 %"}};
    for (const float width : {300.0F, 360.0F, 480.0F, 700.0F, 1200.0F, 1600.0F}) {
        for (const float size : {14.0F, 16.0F, 22.0F}) {
            INFO("width ", width, ", size ", size);
            BarLabels labels = legend_of_four;
            labels.text_size = size;
            check_sound(canvas, draw_budget_bars(sixteen_bars(), labels, width, measure));
            check_sound(canvas, draw_budget_bars(odd, labels, width, measure));
            check_sound(canvas, draw_budget_bars({}, labels, width, measure));
        }
    }
}

TEST_CASE("the histogram's bins are as high as their counts, and filled inside the interval only") {
    const Canvas canvas;
    const Picture p = draw_histogram(triangle(), 600, 230, canvas.measure());
    CHECK(p.description == "trials");
    const float px = (place_of(p, "24.0") - place_of(p, "21.0")) / 3;  // a unit
    const std::vector<const Mark*> bins = boxes_of(p, Ink::liquid);
    REQUIRE(bins.size() == 6);  // from 21 to 24, half a unit each
    CHECK(std::abs(bins.front()->points[0].x - place_of(p, "21.0")) <= 1);
    CHECK(std::abs(bins.back()->points[1].x - place_of(p, "24.0")) <= 1);
    const float floor = bins[0]->points[1].y;
    const float counts[] = {40, 80, 100, 60, 40, 30};
    for (std::size_t i = 0; i < 6; ++i) {
        CHECK(std::abs(width_of(*bins[i]) - px / 2) <= 1);
        CHECK(std::abs((floor - bins[i]->points[0].y) - (floor - bins[2]->points[0].y) * counts[i] / 100) <= 1);
    }
    // The outline goes over all ten bins.
    const std::vector<const Mark*> outline = marks_of(p, Mark::Kind::polyline);
    REQUIRE(outline.size() == 2);
    CHECK(outline[0]->points.size() == 22);
    CHECK(std::abs(outline[0]->points.back().x - outline[0]->points.front().x - 5 * px) <= 1);
}

TEST_CASE("the normal curve has the area of the bars, and its own dashes") {
    const Canvas canvas;
    const Picture p = draw_histogram(triangle(), 600, 230, canvas.measure());
    const Mark* curve = marks_of(p, Mark::Kind::polyline)[1];
    CHECK(curve->dashed);
    const std::vector<const Mark*> bins = boxes_of(p, Ink::liquid);
    const float floor = bins[0]->points[1].y;
    float highest = 0;
    float at = 0;
    for (const Point& point : curve->points) {
        if (floor - point.y > highest) {
            highest = floor - point.y;
            at = point.x;
        }
    }
    // The largest ordinate of the standard normal curve is 0.39894 (Abramowitz and Stegun, table 26.1): 410 trials in
    // bins of half a deviation have 410 * 0.5 * 0.39894 = 81.78 in the one at its top, where the highest has 100.
    CHECK(highest / (floor - bins[2]->points[0].y) == doctest::Approx(0.8178).epsilon(0.01));
    const float px = place_of(p, "23.0") - place_of(p, "22.0");
    CHECK(std::abs(at - (place_of(p, "22.0") + 0.3F * px)) <= 0.1F * px);
}

TEST_CASE("value and accepted value stand at their places, told apart by a dot") {
    const Canvas canvas;
    const Picture p = draw_histogram(triangle(), 600, 230, canvas.measure());
    const Mark* value = upright(p, Ink::copper);
    const Mark* accepted = upright(p, Ink::text);
    REQUIRE(value != nullptr);
    REQUIRE(accepted != nullptr);
    const float px = place_of(p, "23.0") - place_of(p, "22.0");
    CHECK(std::abs(value->points[0].x - (place_of(p, "22.0") + 0.25F * px)) <= 0.6F);
    CHECK(std::abs(accepted->points[0].x - place_of(p, "23.0")) <= 0.6F);
    CHECK(marks_of(p, Mark::Kind::area).size() == 1);  // the dot
    HistogramView view = triangle();
    view.accepted = 60;  // far off: it stands at the end and points there
    const Picture far = draw_histogram(view, 600, 230, canvas.measure());
    CHECK(marks_of(far, Mark::Kind::area).size() == 2);
    CHECK(upright(far, Ink::text)->points[0].x > 580);
}

TEST_CASE("an interval without an upper end has an arrow at the right") {
    const Canvas canvas;
    HistogramView view = triangle();
    view.accepted.reset();
    view.interval_high = infinite;
    view.interval_high_words = "no upper end";
    const Picture p = draw_histogram(view, 600, 230, canvas.measure());
    CHECK(boxes_of(p, Ink::liquid).size() == 8);
    float tip = 0;
    for (const Mark* area : marks_of(p, Mark::Kind::area)) {
        if (area->points.size() == 3) {
            for (const Point& point : area->points) tip = std::max(tip, point.x);
        }
    }
    CHECK(tip == doctest::Approx(600));
}

TEST_CASE("the histogram is sound with any numbers, at any size") {
    const Canvas canvas;
    const ImguiMeasure measure = canvas.measure();
    for (const double accepted : {-1e9, 19.0, 22.25, 22.26, 24.9, 26.0, 1e12}) {
        for (const double high : {21.5, 24.0, 40.0, infinite, nan_value}) {
            for (const float width : {300.0F, 390.0F, 640.0F, 1600.0F}) {
                INFO("accepted ", accepted, ", high ", high, ", width ", width);
                HistogramView view = triangle();
                view.accepted = accepted;
                view.interval_high = high;
                view.text_size = width > 1000 ? 22 : 14;
                check_sound(canvas, draw_histogram(view, width, width > 1000 ? 320 : 180, measure));
                view.number = nullptr;
                view.low_words = "20.00";
                view.high_words = "25.00 L/mol";
                check_sound(canvas, draw_histogram(view, width, 200, measure));
            }
        }
    }
    for (const double scale : {1e-9, 1e-3, 1e6}) {
        HistogramView view = triangle();
        view.low = 0;
        view.high = scale;
        view.interval_low = 0.2 * scale;
        view.interval_high = 0.9 * scale;
        view.value = 0.5 * scale;
        view.accepted = 0.55 * scale;
        view.curve_mean = 0.5 * scale;
        view.curve_deviation = 0.001 * scale;
        check_sound(canvas, draw_histogram(view, 390, 190, measure));
    }
    HistogramView view = triangle();
    view.counts.assign(10, 0);
    check_sound(canvas, draw_histogram(view, 300, 180, measure));
    view.counts.clear();
    CHECK(draw_histogram(view, 300, 180, measure).marks.size() == 1);
    view = triangle();
    view.high = view.low;
    CHECK(draw_histogram(view, 300, 180, measure).marks.size() == 1);
    view.high = nan_value;
    CHECK(draw_histogram(view, 300, 180, measure).marks.size() == 1);
    view = triangle();
    view.value = nan_value;
    view.accepted = infinite;
    view.curve_mean = nan_value;
    check_sound(canvas, draw_histogram(view, 300, 180, measure));
}

TEST_CASE("the scale of need is even near nothing, then each doubling takes the same") {
    CHECK(need_place(0) == 0);
    CHECK(need_place(nan_value) == 0);
    CHECK(need_place(30) == doctest::Approx(1));
    CHECK(need_place(infinite) == doctest::Approx(1));
    // arsinh x = ln(x + sqrt(x^2 + 1)) (Abramowitz and Stegun, 4.6.20).
    CHECK(static_cast<double>(need_place(1)) ==
          doctest::Approx(std::log(2 + std::sqrt(5.0)) / std::log(60 + std::sqrt(3601.0))));
    const float doubling = need_place(8) - need_place(4);
    CHECK(need_place(16) - need_place(8) == doctest::Approx(doubling).epsilon(0.01));
    CHECK(need_place(0.2) == doctest::Approx(2 * need_place(0.1)).epsilon(0.02));
    CHECK(need_place(0.1) * 200 > 6);  // to be seen
}

TEST_CASE("a need bar ends at its size, with the usual one marked") {
    const Canvas canvas;
    const Picture p = draw_need_bar(4, 2, 0, 200, 16);
    CHECK(width_of(*boxes_of(p, Ink::column_bar)[0]) == doctest::Approx(need_place(4) * 200));
    CHECK(std::abs(upright(p, Ink::text)->points[0].x - need_place(1) * 200) <= 0.5F);
    CHECK(marks_of(p, Mark::Kind::area).empty());
    const auto arrows = [](double ratio, int plausibility) {
        return marks_of(draw_need_bar(ratio, 3, plausibility, 200, 16), Mark::Kind::area).size();
    };
    CHECK(arrows(30, 2) == 0);
    CHECK(arrows(31, 2) == 1);
    CHECK(arrows(2, 3) == 1);  // no size is enough
    CHECK(arrows(infinite, 2) == 1);
    CHECK(boxes_of(draw_need_bar(nan_value, 3, 0, 200, 16), Ink::column_bar).empty());
    for (const double ratio : {nan_value, -1.0, 0.0, 0.1, 1.0, 29.0, 31.0, infinite}) {
        for (const double largest : {nan_value, 0.5, 1.0, 5.0, infinite}) {
            for (int plausibility = -1; plausibility <= 4; ++plausibility) {
                for (const float height : {12.0F, 16.0F, 28.0F}) {
                    check_sound(canvas, draw_need_bar(ratio, largest, plausibility, 80, height));
                }
            }
        }
    }
}

TEST_CASE("a slider's thumb goes from end to end, and the colour begins where nothing is") {
    const Canvas canvas;
    CHECK(slider_place(0, 300) == slider_thumb / 2);
    CHECK(slider_place(1, 300) == 300 - slider_thumb / 2);
    CHECK(slider_place(0.5, 300) == 150);
    CHECK(slider_place(nan_value, 300) == slider_thumb / 2);
    SliderLook look;
    look.origin = 0.5;
    look.share = 0.25;
    look.marks = {0.5, 2};
    const Picture p = draw_slider(look, 324, 44);
    const std::vector<const Mark*> coloured = boxes_of(p, Ink::copper);
    REQUIRE(coloured.size() == 1);
    CHECK(coloured[0]->points[0].x == doctest::Approx(slider_place(0.25, 324)));
    CHECK(coloured[0]->points[1].x == doctest::Approx(162));
    CHECK(marks_of(p, Mark::Kind::line).size() == 1);
    // Ring, thumb and track against what they may lie on (WCAG 2.2, 1.4.11).
    for (const ThemeName name : {ThemeName::light, ThemeName::dark, ThemeName::high_contrast}) {
        const Theme& t = theme(name);
        for (const Ink back : {Ink::paper, Ink::card}) {
            CHECK(contrast_ratio(t.of(Ink::copper), t.of(back)) >= 3.0F);
            CHECK(contrast_ratio(t.of(Ink::field_edge), t.of(back)) >= 3.0F);
            // Bars and outlines of the pictures above.
            CHECK(contrast_ratio(t.of(Ink::column_bar), t.of(back)) >= 3.0F);
            CHECK(contrast_ratio(t.of(Ink::soft), t.of(back)) >= 3.0F);
            CHECK(contrast_ratio(t.of(Ink::liquid_edge), t.of(back)) >= 3.0F);
        }
        CHECK(contrast_ratio(t.of(Ink::text), t.of(Ink::liquid)) >= 3.0F);
        CHECK(contrast_ratio(t.of(Ink::soft), t.of(Ink::dry_bar)) >= 3.0F);
    }
    for (const double share : {nan_value, -1.0, 0.0, 0.5, 1.0, 2.0, infinite}) {
        look.share = share;
        look.hot = !look.hot;
        check_sound(canvas, draw_slider(look, 120, 32));
    }
}
