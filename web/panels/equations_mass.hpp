#pragma once

#include "core/matter/molar_mass.hpp"
#include "web/ui/ui.hpp"

namespace overwater {

class App;

/// The molar mass of a formula with its bounds, and a row for each element; returns the height taken. `mass` is that of the
/// formula, without a problem.
float draw_formula_mass(App& app, Ui& ui, const Rect& area, const ChemicalFormula& formula, const FormulaMass& mass);

}  // namespace overwater
