#pragma once

#include <cstdint>
#include <vector>

#include "core/explain/formula.hpp"
#include "core/matter/equation.hpp"

/// Chemical formulas and equations as they are set, for canvas, SVG, MathML and speech.

namespace overwater {

/// CaCO₃, SO₄²⁻, CO₂↑: upright, with the font's own lowered and raised digits, which stand closer than an index of a
/// quantity does.
Formula set_chemical_formula(const ChemicalFormula& formula);

/// CaCO₃ + 2 HCl → CaCl₂ + H₂O + CO₂↑ with these coefficients, one a term; 1 is not set.
Formula set_equation(const Equation& equation, const std::vector<std::int64_t>& coefficients);

}  // namespace overwater
