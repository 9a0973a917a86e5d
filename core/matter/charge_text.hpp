#pragma once

#include <cstddef>
#include <string_view>

#include "core/matter/formula_problem.hpp"
#include "core/matter/formula_signs.hpp"

/// The charge at the end of a formula. The inner part of reading formulas; the rules stand in chemical_formula.hpp.

namespace overwater::formula_signs {

/// Where a formula stands. In an equation a plus may be a charge or stand between two substances, and a minus may begin
/// the arrow.
enum class Within : unsigned char { formula, equation };

/// How many plain plus or minus signs from `at` on, all alike, belong to a charge. In an equation the last plus of a run
/// stands between two substances, unless what follows is another plus, an arrow, a state symbol or the end.
int plain_charge_signs(std::string_view text, std::size_t at, Within within);

struct ChargeText {
    int charge = 0;
    std::size_t length = 0;  ///< bytes; 0 if no charge begins here
    FormulaProblem problem{};
};

/// A charge that begins here and leaves no doubt: ^2-, ^{+2}, ²⁻, ⁺, +, ++, and +2 where no formula follows.
ChargeText charge_at(std::string_view text, std::size_t at, Within within);

/// Digits with one sign behind, that is `2-`: the number here as a charge. Without length if no single sign of a charge
/// follows.
ChargeText number_and_sign_at(std::string_view text, const Number& number, Within within);

}  // namespace overwater::formula_signs
