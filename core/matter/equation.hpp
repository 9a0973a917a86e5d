#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "core/matter/chemical_formula.hpp"
#include "core/matter/formula_text.hpp"

/// Chemical equations as people type them:
///
///     CaCO3 + 2 HCl -> CaCl2 + H2O + CO2↑
///
/// - Arrows: -> --> => = == → ⇌ <-> <=> and like signs.
/// - Coefficients are whole numbers in front of a formula, with or without a space.
/// - A plus with a space before it stands between two substances. One that directly follows a formula is a charge if
///   another plus, an arrow, a state symbol or the end comes next (`Na+ + Cl-`), else it stands between (`Na+Cl2`); of
///   several the last stands between (`Na++Cl-`).
/// - Two hyphens or more with > are one long arrow, so Cl-->  has no charge (write Cl- ->); only e--> is e- and an arrow.

namespace overwater {

/// One substance of an equation.
struct EquationTerm {
    ChemicalFormula formula{};
    int coefficient = 1;
    bool is_typed = false;  ///< the coefficient was typed
    std::size_t at = 0;     ///< the formula's place in the text, in bytes
    std::size_t length = 0;
};

struct Equation {
    std::vector<EquationTerm> terms{};  ///< the reactants, then the products
    std::size_t reactants = 0;          ///< how many of them are reactants

    bool is_reactant(std::size_t term) const { return term < reactants; }
    bool any_typed() const;
};

struct EquationReading {
    Equation equation{};  ///< empty if there is a problem
    FormulaProblem problem{};
};

/// Reads one equation. Any bytes may be given. Where there are several problems the first in the text is told, but a
/// missing arrow only when all else is right.
EquationReading parse_equation(std::string_view text);

/// The equation with these coefficients, one a term, 1 not written: "CaCO3 + 2 HCl -> CaCl2 + H2O + CO2" or
/// "CaCO₃ + 2 HCl → CaCl₂ + H₂O + CO₂".
std::string equation_text(const Equation& equation, const std::vector<std::int64_t>& coefficients,
                          FormulaScript script);

}  // namespace overwater
