#pragma once

#include <string>
#include <vector>

#include "web/ui/ui.hpp"

namespace overwater {

/// A table drawn with rules between its rows, and its native twin. The first row has the names of the columns, of which
/// each row has a cell; the first column begins at the left, the others end at the right of theirs. Returns the height taken.
float draw_ruled_table(Ui& ui, const TextView& key, const Rect& area, const std::string& caption,
                       const std::vector<std::vector<std::string>>& rows);

}  // namespace overwater
