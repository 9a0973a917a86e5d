#pragma once

#include "web/ui/ui.hpp"

namespace overwater {

class App;

/// What a teacher puts down for a plan, with what is said about it below each field; in two columns where `area.w` has
/// room for them. Returns the height taken.
float draw_plan_fields(App& app, Ui& ui, const Rect& area);

}  // namespace overwater
