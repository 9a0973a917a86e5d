// The instrument that the reading at hand is read from, in a practice run.

#include <algorithm>
#include <cmath>

#include "web/app/app.hpp"
#include "web/draw/dial_picture.hpp"
#include "web/panels/panels.hpp"
#include "web/panels/wording.hpp"

namespace overwater {

namespace {

DialLook look_of(const App& app, const Dial& dial) {
    DialLook look;
    look.zoom = app.practice_desk().zoom;
    look.grows_upwards = app.entry(Field::number_at_closed_end).text != "zero";
    look.decimal_sign = app.language().decimal_sign();
    look.unit = info(dial.unit).symbol;
    if (dial.kind == DialKind::balance_display) look.title = app.say("practice.balance");
    if (dial.kind == DialKind::weather_report) {
        look.title = choice_words(app, Field::pressure_kind, app.entry(Field::pressure_kind).text);
    }
    look.description = app.say(eye_words(dial));
    return look;
}

}  // namespace

float draw_dial_at_hand(App& app, Ui& ui, Rect area, float height) {
    const Dial* dial = app.dial_at_hand();
    if (dial == nullptr) return 0;
    constexpr float most_width = 420;
    const float tall = ui.touch() ? 44.0f : 30.0f;
    const Type type{Face::semibold, 16, Ink::text};
    float y = area.y;
    const std::string words =
        app.say(Message{"practice.read"}.text("reading", app.say("field." + std::string(name_of(dial->field)))));
    y += ui.text("practice.read", {area.x, y, area.w, 0}, words, type) + 4;
    const bool zooms = !shows_digits(dial->kind);
    constexpr float display = 136;
    const float bottom = zooms ? area.y + height - tall - 6 : y + display;
    const float width = std::min(area.w, most_width);
    const Picture picture = draw_dial(*dial, look_of(app, *dial), width, bottom - y, ui.measure());
    const float left = area.x + std::round((area.w - width) / 2);
    ui.picture("practice.dial", {left, y}, picture);
    ui.frame({left, y, width, bottom - y}, Ink::line);
    if (zooms) {
        Flow flow(area.x, bottom + 6, area.w, tall, 8);
        const int zoom = static_cast<int>(app.practice_desk().zoom);
        const auto press = [&](const char* key, int by) {
            const bool possible = zoom + by >= 0 && zoom + by < dial_zooms;
            const std::string name = app.say(key);
            const Rect rect = flow.next(std::ceil(ui.text_width(name, Type{})) + 26);
            const auto look = possible ? Ui::ButtonLook::framed : Ui::ButtonLook::off;
            const bool pressed = ui.button(key, rect, name, look);
            if (!possible) ui.disable_last();
            if (pressed && possible) app.zoom_dial(by);
        };
        press("practice.larger", 1);
        press("practice.smaller", -1);
    }
    return std::max(area.h, (zooms ? bottom + 6 + tall : bottom) - area.y);
}

}  // namespace overwater
