#pragma once

#include <string>

#include "web/panels/panels.hpp"

namespace overwater {

/// How wide the list of languages is that shows the one spoken.
float language_choice_width(const App& app, const Ui& ui, bool framed);
/// The list of languages by their own names, so that each is found by those who read no other. `name` is its accessible
/// name where no label is.
void draw_language_choice(const App& app, Ui& ui, const std::string& key, const Rect& rect, bool framed,
                          std::string name = {});

}  // namespace overwater
