#pragma once

#include <string>

#include "web/panels/panels.hpp"

namespace overwater {

/// How the list shows the language spoken: its name in a box, its name alone, its tag alone.
enum class ChoiceLook { box, name, tag };

float language_choice_width(const App& app, const Ui& ui, ChoiceLook look);
/// The list of languages by their own names, so that each is found by those who read no other. `name` is its accessible
/// name where no label is.
void draw_language_choice(const App& app, Ui& ui, const std::string& key, const Rect& rect, ChoiceLook look,
                          std::string name = {});

}  // namespace overwater
