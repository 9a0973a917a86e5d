#include "web/panels/language_choice.hpp"

#include <algorithm>
#include <cmath>

#include "web/app/app.hpp"

namespace overwater {

namespace {

constexpr std::size_t plain_tag = 2;  // en-x-pseudo is listed as what it is made of

const LanguageName& spoken(const App& app) {
    const std::string_view tag = app.language().tag();
    for (const LanguageName& language : language_names) {
        if (language.tag == tag.substr(0, plain_tag)) return language;
    }
    return language_names[0];
}

/// The tag in capitals.
std::string tag_words(const App& app) {
    std::string words(spoken(app).tag);
    for (char& c : words) c = static_cast<char>(c - 'a' + 'A');
    return words;
}

}  // namespace

float language_choice_width(const App& app, const Ui& ui, ChoiceLook look) {
    const bool framed = look == ChoiceLook::box;
    float words = look == ChoiceLook::tag ? ui.text_width(tag_words(app), Type{}) : ui.text_width(spoken(app).name, Type{});
    if (framed) {
        for (const LanguageName& language : language_names) words = std::max(words, ui.text_width(language.name, Type{}));
    }
    return std::ceil(words) + (framed ? 34.0f : 16.0f);
}

void draw_language_choice(const App& app, Ui& ui, const std::string& key, const Rect& rect, ChoiceLook look,
                          std::string name) {
    Ui::Choice choice;
    choice.name = std::move(name);
    for (const LanguageName& language : language_names) choice.options.emplace_back(language.tag, language.name);
    choice.chosen = spoken(app).tag;
    choice.framed = look == ChoiceLook::box;
    if (look == ChoiceLook::tag) choice.shown = tag_words(app);
    ui.select(key, rect, choice);
}

}  // namespace overwater
