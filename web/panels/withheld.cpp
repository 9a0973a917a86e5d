// The teacher's choice that results come after an answer of one's own, or not at all.

#include <algorithm>
#include <cmath>

#include "web/app/app.hpp"
#include "web/panels/panels.hpp"

namespace overwater {

float draw_withheld(App& app, Ui& ui, Rect area) {
    using Answers = Conventions::Answers;
    float y = area.y + 4;
    const PracticeRun* practice = app.practice();
    const Answers answers = practice != nullptr ? practice->record.conventions.answers : app.record().conventions.answers;
    const bool after = answers == Answers::after_attempt;
    const bool by_word = !after && practice != nullptr;
    y += ui.text("results.withheld", {area.x, y, area.w, 0},
                 app.say(after     ? "results.after_attempt"
                         : by_word ? "practice.word_first"
                                   : "results.hidden"),
                 {Face::regular, 17, Ink::text}) + 10;
    if (!after && !by_word) return y - area.y;
    const float tall = ui.touch() ? 44.0f : 30.0f;
    const std::string words = by_word ? app.say("practice.word")
                                      : app.say(Message{"results.own_answer"}.text("unit", app.language().sign_of(unit_of(app.sought()))));
    const float label = std::min(ui.text_width(words, Type{}) + 14, area.w - 130);
    // The same field in another place of the document is another node: one that has the focus is never moved.
    std::string key = by_word ? "answers.word" : "answers.molar_volume";
    if (app.page() != PageName::bench) key += ".away";
    ui.label(key + ".label", key, {area.x, y, label, tall}, words);
    Ui::Field field;
    field.value = by_word ? app.practice_desk().word : app.own_answer_draft();
    field.invalid = by_word && app.practice_desk().word_refused;
    if (by_word) field.input_mode = "text";
    field.number = !by_word;
    ui.field(key, {area.x + label, y, 120, tall}, field);
    const std::string press = app.say("results.show");
    const float press_width = std::ceil(ui.text_width(press, Type{})) + 26;
    const bool beside = label + 132 + press_width <= area.w;
    if (!beside) y += tall + 8;
    const Rect rect{beside ? area.x + label + 132 : area.x, y, press_width, tall};
    if (ui.button("answers.show", rect, press, Ui::ButtonLook::framed)) {
        if (by_word) {
            app.give_word();
        } else {
            app.give_answer();
        }
    }
    y += tall + 10;
    if (field.invalid) {
        y += ui.text("answers.word_wrong", {area.x, y - 4, area.w, 0}, app.say("practice.word_wrong"),
                     {Face::regular, 15, Ink::warning});
    }
    return y + 6 - area.y;
}

bool draw_withheld_page(App& app, Ui& ui, float top) {
    if (app.reveals()) return false;
    const float margin = page_margin(ui);
    draw_withheld(app, ui, {margin, top + 18, std::min(ui.width() - 2 * margin, 620.0f), 0});
    return true;
}

}  // namespace overwater
