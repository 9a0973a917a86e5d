#pragma once

#include <string>

#include "web/panels/panels.hpp"

namespace overwater {

/// How wide the list of languages is that shows no more than the tag of the one spoken.
float language_tag_width(const App& app, const Ui& ui);
/// The list of languages by their own names, so that each is found by those who read no other: the name of the one spoken in
/// a box, or its tag alone. `name` is its accessible name where no label is.
void draw_language_choice(const App& app, Ui& ui, const char* key, const Rect& rect, bool framed, std::string name = {});

}  // namespace overwater
