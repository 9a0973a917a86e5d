#include <algorithm>
#include <cmath>

#include "web/app/app.hpp"
#include "web/panels/panels.hpp"

namespace overwater {

void draw_records_page(App& app, Ui& ui, float top) {
    const float margin = ui.width() < 600 ? 14.0f : 24.0f;
    const float width = std::min(ui.width() - 2 * margin, 720.0f);
    const float row = ui.touch() ? 48.0f : 40.0f;
    const Type soft{Face::regular, 14, Ink::soft};
    float y = top + 18;
    ui.open("records", Role::region, {margin, y, width, 0}, app.say("page.records"));
    y += ui.heading("records.heading", 2, {margin, y, width, 0}, app.say("page.records"), {Face::semibold, 22, Ink::text});
    y += ui.text("records.about", {margin, y + 2, width, 0}, app.say("records.about"), soft) + 16;

    const float label = ui.text_width(app.say("records.name"), Type{}) + 14;
    const float field_height = ui.touch() ? 40.0f : 32.0f;
    ui.label("records.name.label", "records.name", {margin, y, label, field_height}, app.say("records.name"));
    Ui::Field name;
    name.value = app.record().name;
    name.number = false;
    name.input_mode = "text";
    ui.field("records.name", {margin + label, y, std::min(320.0f, width - label), field_height}, name);
    y += field_height + 18;

    const std::string fresh = app.say("records.new");
    if (ui.button("records.new", {margin, y, std::ceil(ui.text_width(fresh, Type{})) + 28, field_height}, fresh,
                  Ui::ButtonLook::framed)) {
        app.new_record();
    }
    y += field_height + 16;

    const auto entry = [&](const std::string& id, const std::string& words, const std::string& detail) {
        const std::string key = "records.open." + id;
        const bool current = id == app.record().id;
        const Type type{Face::regular, 16, Ink::copper};
        // A long name takes more lines, never the place of the date.
        const auto broken = ui.lines(words, type, width - ui.text_width(detail, soft) - 40);
        const float step = Ui::line_height(type);
        const Rect rect{margin, y, width, row + step * static_cast<float>(broken.size() - 1)};
        if (current) ui.fill(rect, Ink::copper_soft, 5);
        float line = y + row / 2 - 8;
        for (const std::string& part : broken) {
            ui.draw_text({margin + 12, line}, part, type);
            line += step;
        }
        ui.draw_text({margin + width - 12, y + row / 2 - 7}, detail, soft, Anchor::end);
        if (ui.button(key, rect, {}, Ui::ButtonLook::plain, current,
                      app.say(Message{"records.open"}.text("name", words).text("detail", detail)))) {
            app.open_record(id);
        }
        y += rect.h;
        ui.rule({margin, y}, {margin + width, y});
    };
    bool example_listed = false;
    for (const Shelf::Card& card : std::vector<Shelf::Card>(app.shelf().cards())) {
        if (card.invented) example_listed = true;
        const std::string name_shown = card.name.empty() ? app.say("record.unnamed") : card.name;
        const std::string date = card.saved.substr(0, 10);
        entry(card.id, name_shown, card.invented ? app.say("records.invented") : date);
    }
    if (!example_listed) entry("example", app.say("example.name"), app.say("records.invented"));
    if (app.shelf().unreadable() > 0) {
        y += ui.text("records.unreadable", {margin, y + 8, width, 0},
                     app.say(Message{"records.unreadable"}.count("number", app.shelf().unreadable())),
                     {Face::regular, 14, Ink::warning}) + 8;
    }
    ui.close();
    ui.reach(y + 28);
}

}  // namespace overwater
