#include <algorithm>
#include <cmath>

#include "web/app/app.hpp"
#include "web/app/control_key.hpp"
#include "web/panels/panels.hpp"
#include "web/panels/wording.hpp"

namespace overwater {

namespace {

constexpr float three_columns = 1180;
constexpr float two_columns = 720;
constexpr float dock_needs_height = 520;

/// The invented example says so, and how to begin one's own; returns the height taken.
float example_banner(App& app, Ui& ui, Rect area, float margin) {
    if (!app.record().invented) return 0;
    const float top = area.y;
    const Type type{Face::regular, 15, Ink::text};
    const bool practice = app.practice() != nullptr;
    const std::string words =
        practice ? app.say(Message{"practice.banner"}.text("code", app.record().practice_code)) : app.say("example.banner");
    const std::string press = app.say(practice ? "practice.to_check" : "example.start_own");
    const float press_width = std::ceil(ui.text_width(press, Type{})) + 24;
    const float width = area.w - 2 * margin;
    const bool one_row = ui.text_width(words, type) + press_width + 20 < width;
    const float text_width = one_row ? width - press_width - 20 : width;
    const float tall = Ui::line_height(type) * static_cast<float>(ui.lines(words, type, text_width).size());
    const float press_height = ui.touch() ? 44.0f : 28.0f;
    const float height = one_row ? std::max(tall + 8, press_height + 8) : tall + press_height + 18;
    const float left = area.x + margin;
    ui.fill({area.x, top, area.w, height}, Ink::copper_soft, area.x > 0 ? 6.0f : 0.0f);
    ui.text("example.banner", {left, top + (one_row ? (height - tall) / 2 : 6), text_width, 0}, words, type);
    const Rect rect = one_row
                          ? Rect{left + std::min(text_width, ui.text_width(words, type)) + 18, top + (height - press_height) / 2, press_width, press_height}
                          : Rect{left, top + tall + 10, press_width, press_height};
    if (practice) {
        if (ui.button("practice.to_check", rect, press, Ui::ButtonLook::framed)) app.go(PageName::practice);
    } else if (ui.button("example.start_own", rect, press, Ui::ButtonLook::framed)) {
        app.new_record();
    }
    return height;
}

/// On a narrow screen the result stays in sight while readings are typed.
float dock(App& app, Ui& ui) {
    const float half = (ui.width() - 42) / 2;
    const Type type{};
    const Output shown[] = {Output::dry_gas_pressure, app.sought()};
    float tall = 0;
    for (const Output output : shown) {
        const auto lines = ui.lines(app.shown_briefly(output), type, half).size();
        tall = std::max(tall, Ui::line_height(type) * static_cast<float>(lines));
    }
    const float height = tall + 42;
    const float top = ui.height() - height;
    ui.begin_fixed();
    ui.fill({0, top, ui.width(), height}, Ink::card);
    ui.rule({0, top}, {ui.width(), top});
    ui.open("dock", Role::region, {0, top, ui.width(), height}, app.say("dock.name"));
    float x = 14;
    for (const Output output : shown) {
        const std::string key = "dock." + std::string(name_of(output));
        const bool value = app.assessment().has(output);
        ui.text(key + ".name", {x, top + 8, half, 0}, step_name(app, output), {Face::regular, 14, Ink::soft});
        ui.text(key, {x, top + 28, half, 0}, app.shown_briefly(output),
                {value ? Face::semibold : Face::regular, 16, value ? Ink::text : Ink::soft});
        x += half + 14;
    }
    ui.close();
    ui.end_fixed();
    return height;
}

void wide(App& app, Ui& ui, float top) {
    const float readings = 452;
    const float tube = 290;
    const float bottom = std::max(ui.height(), top + 540);
    ui.fill({readings, top, tube, bottom - top + 2000}, Ink::card);
    ui.rule({readings, top}, {readings, bottom + 2000});
    ui.rule({readings + tube, top}, {readings + tube, bottom + 2000});
    const float left = draw_readings(app, ui, {20, top + 2, readings - 40, 0}, false);
    // The instrument of a reading far down stays in sight, no further down than the readings go.
    const float down = std::min(app.follow(top), std::max(0.0f, left - (bottom - top)));
    draw_tube_column(app, ui, {readings + 14, top + 10 + down, tube - 28, bottom - top - 16}, 0, true);
    const float x = readings + tube + 28;
    const float width = ui.width() - x - 24;
    const float banner = example_banner(app, ui, {x - 12, top + 8, width + 24, 0}, 12);
    draw_results(app, ui, {x, top + (banner > 0 ? banner + 16 : 14), width, bottom - top});
    ui.reach(top + left);
}

void middle(App& app, Ui& ui, float top) {
    const float margin = 20;
    const float column = std::min(452.0f, (ui.width() - 3 * margin) * 0.58f);
    const float tall = draw_readings(app, ui, {margin, top + 6, column, 0}, false);
    constexpr float with_hints = 760;  ///< height of the tube's column
    const float down = std::min(app.follow(top), std::max(0.0f, tall - with_hints));
    const float tube = draw_tube_column(
        app, ui, {2 * margin + column, top + 12 + down, ui.width() - 3 * margin - column, 0}, 480, true);
    draw_results(app, ui, {margin, top + std::max(tall, tube + down) + 28, ui.width() - 2 * margin, 0});
}

void narrow(App& app, Ui& ui, float top) {
    const float margin = 14;
    const float width = ui.width() - 2 * margin;
    float y = top + 6;
    const bool practice = app.practice() != nullptr;
    if (!practice && app.assessment().readings.closed_end == ClosedEnd::unknown) {
        y += draw_closed_end_question(app, ui, {margin, y, width, 0}) + 10;
    }
    y += draw_readings(app, ui, {margin, y, width, 0}, true) + 18;
    if (!practice && app.assessment().readings.closed_end != ClosedEnd::unknown) {
        const float tube = std::min(width, 360.0f);
        y += draw_tube_column(app, ui, {margin + (width - tube) / 2, y, tube, 0}, 440, false) + 18;
    } else {
        y += draw_short_cautions(app, ui, {margin, y, width, 0}, short_cautions(app.assessment().measured.setup)) + 18;
    }
    draw_results(app, ui, {margin, y, width, 0});
}

}  // namespace

float draw_bench(App& app, Ui& ui, float top) {
    if (ui.width() >= three_columns) {
        wide(app, ui, top);
        return 0;
    }
    top += example_banner(app, ui, {0, top, ui.width(), 0}, ui.width() < 600 ? 14.0f : 20.0f);
    if (ui.width() >= two_columns) {
        middle(app, ui, top);
        ui.reach(ui.lowest() + 24);
        return 0;
    }
    narrow(app, ui, top);
    const bool docked = ui.height() >= dock_needs_height && app.reveals();
    const float height = docked ? dock(app, ui) : 0;
    ui.reach(ui.lowest() + 24 + height);
    return height;
}

}  // namespace overwater
