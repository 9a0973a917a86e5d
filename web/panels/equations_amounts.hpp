#pragma once

#include "web/panels/typed_chemistry.hpp"
#include "web/ui/ui.hpp"

namespace overwater {

class App;

/// Fields for the amounts of the reactants of a balanced equation, and what becomes of them; returns the height taken.
float draw_equation_amounts(App& app, Ui& ui, const Rect& area, const TypedChemistry& typed);

}  // namespace overwater
