#pragma once

#include "web/ui/ui.hpp"

namespace overwater {

class App;
class Certainty;
struct Budget;

/// The rows of a budget, each with its bar; returns the height taken.
float draw_budget_table(App& app, Ui& ui, Rect area, const Budget& budget);

/// The histogram of the trials and what comes of them, or how far they are; returns the height taken.
float draw_trials(App& app, Ui& ui, Rect area, const Certainty& certainty);

}  // namespace overwater
