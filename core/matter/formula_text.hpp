#pragma once

#include <string>

#include "core/matter/chemical_formula.hpp"

/// Formulas written out. What is written is read back as the same formula (plain ASCII has no arrow for a gas: it is (g)).

namespace overwater {

enum class FormulaScript : std::uint8_t {
    plain,  ///< ASCII: CuSO4.5H2O, SO4^2-, CO2(g)
    raised  ///< Unicode's lowered and raised digits: CuSO₄·5H₂O, SO₄²⁻, CO₂(g)
};

std::string formula_text(const ChemicalFormula& formula, FormulaScript script);

/// A count as an index of a formula, "12" or "₁₂"; empty for 1. `count` is positive.
std::string index_text(int count, FormulaScript script);

/// A charge, "^2-" or "²⁻", "^+" or "⁺"; empty for 0.
std::string charge_text(int charge, FormulaScript script);

/// "(s)", "(aq)", "↑" and "↓" ("(g)" and "(s)" in plain ASCII); empty for none.
std::string state_text(State state, FormulaScript script);

}  // namespace overwater
