#include "web/panels/language_choice.hpp"

#include <cmath>

#include "web/app/app.hpp"

namespace overwater {

float language_tag_width(const App& app, const Ui& ui) {
    return std::ceil(ui.text_width(app.language().name().shown, Type{})) + 16;
}

void draw_language_choice(const App& app, Ui& ui, const char* key, const Rect& rect, bool framed, std::string name) {
    Ui::Choice choice;
    choice.name = std::move(name);
    for (const LanguageName& language : language_names) {
        const std::string_view tag = language.tag;
        const std::string_view words = language.name;
        choice.options.emplace_back(tag, words);
    }
    choice.chosen = app.language().name().tag;
    choice.framed = framed;
    if (!framed) choice.shown = app.language().name().shown;
    ui.select(key, rect, choice);
}

}  // namespace overwater
