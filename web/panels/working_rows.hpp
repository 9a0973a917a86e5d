#pragma once

#include <string>
#include <vector>

#include "core/result/outcome.hpp"
#include "web/ui/ui.hpp"

namespace overwater {

class App;

/// How much a row of the working shows.
enum class RowDetail { numbers, full };

/// One step of the working in a row: number, name, formula with the numbers put in, result. In full also, below it, the
/// same in letters, what had to be converted, the reason, and `remarks`. Returns the height taken.
float draw_working_row(App& app, Ui& ui, Rect area, Output output, int number, const std::string& prefix,
                       RowDetail detail, const std::vector<std::string>& remarks = {});
/// The height of a row that shows numbers alone.
float working_row_height(App& app, Ui& ui, float width, Output output);

/// The result at the end of a row, as it is shown and said: whatever accompanies the number stands in it.
std::string result_text(const App& app, Output output);

}  // namespace overwater
