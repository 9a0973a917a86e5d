#pragma once

#include "web/ui/ui.hpp"

namespace overwater {

class App;

/// What a plan comes to: amounts with their cautions, presses, the mass window, and what is said about them. Returns the
/// height taken.
float draw_plan_result(App& app, Ui& ui, const Rect& area);

}  // namespace overwater
