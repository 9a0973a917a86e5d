#pragma once

#include "web/ui/ui.hpp"

namespace overwater {

class App;

/// The table of every value with more digits than the readings bear. Returns the height taken.
float draw_full_values(App& app, Ui& ui, Rect area);

}  // namespace overwater
