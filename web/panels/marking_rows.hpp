#pragma once

#include "web/ui/ui.hpp"

namespace overwater {

class App;

/// The marked sheets of the class within `area.w`, a row each, the steps of the open one below its row; only those in
/// view and some around are drawn where there are many. Returns the height taken.
float draw_marked_rows(App& app, Ui& ui, Rect area);

}  // namespace overwater
