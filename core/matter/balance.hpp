#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "core/matter/equation.hpp"

/// Balancing an equation: the smallest whole coefficients, or why there are none. Exact, without rounding.

namespace overwater {

enum class BalanceProblem : std::uint8_t {
    none,
    nothing_to_balance,   ///< a side is empty
    same_on_both_sides,   ///< `term` and `other_term` are one substance, in one state or without one
    written_twice,        ///< the same on one side
    element_on_one_side,  ///< `atomic_number` stands on one side only, first in `term`
    no_solution,          ///< the elements can be balanced by nothing but zeros
    charge,               ///< the elements can be balanced, but not together with the charge
    wrong_side,           ///< only with a negative coefficient; of `term`, if there is but one solution
    takes_no_part,        ///< only without `term`
    several_reactions,    ///< `independent` solutions and so no one answer: several reactions at once
    too_large             ///< numbers beyond 64 bits
};

inline constexpr std::size_t no_term = static_cast<std::size_t>(-1);

struct Balance {
    BalanceProblem problem = BalanceProblem::none;
    std::vector<std::int64_t> coefficients{};  ///< one a term, positive, without a common factor; empty with a problem
    std::size_t term = no_term;                ///< which term of the equation the problem is about, if one is ...
    std::size_t other_term = no_term;          ///< ... and which other
    int atomic_number = 0;                     ///< element_on_one_side
    std::size_t independent = 0;               ///< how many independent solutions there are
};

/// Balances by elements and charge. Coefficients that were typed do not count (see equation_check.hpp).
Balance balance(const Equation& equation);

}  // namespace overwater
