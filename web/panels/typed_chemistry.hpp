#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "core/matter/balance.hpp"
#include "core/matter/equation_check.hpp"
#include "core/quantity/text_view.hpp"

namespace overwater {

/// What a typed text is: a formula, an equation, or neither and why.
struct TypedChemistry {
    enum class Kind : std::uint8_t { blank, formula, equation, neither };

    Kind kind = Kind::blank;
    FormulaProblem problem{};  ///< neither; it may lie at the end of what is still being typed
    ChemicalFormula formula{};
    /// With an arrow ↑ at the gases, where no state was typed. Of an unfinished equation the terms that are there.
    Equation equation{};
    Balance balance{};
    CoefficientCheck check{};
    /// By which it balances: the smallest, or those typed where several reactions leave the choice. Empty where none do.
    std::vector<std::int64_t> coefficients{};

    bool balanced() const { return !coefficients.empty(); }
    /// What is drawn: coefficients that balance, else those typed.
    std::vector<std::int64_t> drawn() const;
};

/// Reads any text; the time is that of parse_equation and balance.
TypedChemistry read_typed(const std::string& text);

}  // namespace overwater
