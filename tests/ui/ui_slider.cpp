// The slider of the widget vocabulary: its node, its patch, and what comes back from it.

#include "doctest/doctest.h"
#include "tests/ui/document.hpp"
#include "tests/ui/draw_support.hpp"
#include "web/ui/mirror.hpp"
#include "web/ui/ui.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

class Sheet {
public:
    explicit Sheet(bool touch = false) : ui_(interaction, canvas_.fonts()) { input_.touch = touch; }

    bool frame(const Ui::Slider& slider, Rect rect = {40, 100, 324, 44}) {
        input_.width = 500;
        input_.height = 400;
        ui_.begin(input_, theme(ThemeName::light));
        ui_.label("gap.size.label", "gap.size", {40, 60, 100, 32}, "Size");
        const bool moved = ui_.slider("gap.size", rect, slider);
        ui_.end();
        PageInfo page;
        page.title = "Title";
        page.height = ui_.lowest();
        patch = mirror_.patch(ui_.nodes(), page);
        if (!patch.empty()) document.apply(patch);
        document.compare(ui_.nodes());
        CHECK(document.faults == std::vector<std::string>{});
        return moved;
    }
    const Node& node() const { return ui_.nodes().back(); }
    const Piece& piece() { return document.pieces["gap.size"]; }

    Interaction interaction;
    Document document;
    std::string patch;

private:
    Canvas canvas_;
    Ui ui_;
    FrameInput input_;
    Mirror mirror_;
};

Ui::Slider from_minus_two(double value, std::string spoken) {
    Ui::Slider slider;
    slider.low = -2;
    slider.high = 2;
    slider.step = 0.1;
    slider.value = value;
    slider.spoken = std::move(spoken);
    return slider;
}

}  // namespace

TEST_CASE("A slider is a real input of type range that says its value in words") {
    Sheet sheet;
    sheet.frame(from_minus_two(0.3, "0.3 mL too high"));
    CHECK(sheet.node().role == Role::slider);
    const Piece& piece = sheet.piece();
    CHECK(piece.tag == "input");
    CHECK(piece.attributes.at("type") == "range");
    CHECK(piece.attributes.at("min") == "-2");
    CHECK(piece.attributes.at("max") == "2");
    CHECK(piece.attributes.at("step") == "0.1");
    CHECK(piece.attributes.at("aria-valuetext") == "0.3 mL too high");
    CHECK(piece.attributes.count("aria-label") == 0);  // its label names it
    CHECK(piece.looks == "slider");
    CHECK(piece.value == "0.3");
    // Numbers come before the value they hold in bounds.
    CHECK(sheet.patch.find("\"max\"") < sheet.patch.find("\"v\""));
}

TEST_CASE("A slider's patch holds what changed, and nothing where nothing did") {
    Sheet sheet;
    sheet.frame(from_minus_two(0.3, "0.3 mL"));
    sheet.frame(from_minus_two(0.3, "0.3 mL"));
    CHECK(sheet.patch.empty());
    sheet.frame(from_minus_two(0.1 + 0.2, "0.3 mL"));  // as a sum of steps has it
    CHECK(sheet.patch.empty());
    sheet.frame(from_minus_two(0.4, "0.4 mL"));
    CHECK(sheet.document.changed == std::vector<std::string>{"gap.size"});
    CHECK(sheet.piece().value == "0.4");
    sheet.frame(from_minus_two(0.4, "0,4 mL"));
    CHECK(sheet.piece().attributes.at("aria-valuetext") == "0,4 mL");
    Ui::Slider wider = from_minus_two(0.4, "0,4 mL");
    wider.high = 3;
    sheet.frame(wider);
    CHECK(sheet.piece().attributes.at("max") == "3");
}

TEST_CASE("A slider that is let go is answered once") {
    Sheet sheet;
    CHECK_FALSE(sheet.frame(from_minus_two(0, "0 mL")));
    sheet.interaction.clicked.push_back("gap.size");  // what a `change` leaves
    CHECK(sheet.frame(from_minus_two(0, "0 mL")));
    CHECK_FALSE(sheet.frame(from_minus_two(0, "0 mL")));
}

TEST_CASE("A slider takes any numbers") {
    Sheet sheet;
    const double nan = std::numeric_limits<double>::quiet_NaN();
    for (const double value : {nan, -5.0, 5.0, -0.0}) sheet.frame(from_minus_two(value, "?"));
    CHECK(sheet.piece().value == "0");
    Ui::Slider odd;
    odd.low = 3;
    odd.high = 3;
    odd.value = 3;
    sheet.frame(odd);
    CHECK(sheet.piece().attributes.at("step") == "any");
    odd.high = 2;
    sheet.frame(odd);
    CHECK(sheet.piece().value == "3");
}

TEST_CASE("A finger has 44 px of a slider") {
    Sheet sheet(true);
    sheet.frame(from_minus_two(0, "0 mL"), {40, 100, 324, 32});
    CHECK(sheet.node().rect == Rect{40, 94, 324, 44});
}
