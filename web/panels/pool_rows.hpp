#pragma once

#include "web/ui/ui.hpp"

namespace overwater {

class App;

/// The groups of the class, one below the other, the one that is open with its readings; returns the height taken.
float draw_pool_rows(App& app, Ui& ui, const Rect& area);

}  // namespace overwater
