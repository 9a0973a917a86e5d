#pragma once

#include <string>

#include "core/result/outcome.hpp"
#include "web/ui/ui.hpp"

namespace overwater {

class App;

/// How much a row of the working shows.
enum class RowDetail { numbers, letters_too };

/// One step of the working in a row: number, name, formula with the numbers put in, result; the same in letters below
/// it where asked. Returns the height taken.
float draw_working_row(App& app, Ui& ui, Rect area, Output output, int number, const std::string& prefix,
                       RowDetail detail);
/// The height of a row that shows numbers alone.
float working_row_height(App& app, Ui& ui, float width, Output output);

}  // namespace overwater
