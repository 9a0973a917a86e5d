#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

#include "core/matter/equation.hpp"
#include "core/quantity/quantity.hpp"

/// From amounts of reactants by a balanced equation to what limits, what is left and what is formed.

namespace overwater {

/// An exact ratio of whole numbers, in lowest terms.
struct WholeRatio {
    std::int64_t numerator = 0;
    std::int64_t denominator = 1;

    double value() const { return static_cast<double>(numerator) / static_cast<double>(denominator); }
};

struct Extent {
    Amount extent{};                      ///< how many moles of the equation as written take place
    std::vector<std::size_t> limiting{};  ///< the reactants that are used up; two or more in an exact mixture
    std::vector<Amount>
        left{};  ///< one a reactant, zero for those that limit; for one in excess without an amount zero
    std::vector<Amount> used{};    ///< one a reactant
    std::vector<Amount> formed{};  ///< one a product
};

/// Amounts of 1e-12 of their size apart count as equal when it is asked what limits: they are products of roundings.
inline constexpr double equal_amounts = 1e-12;

/// What takes place when the reaction goes to its end. `amounts` has one a reactant, zero or more; nothing stands for a
/// reactant that is in excess whatever the others are. Nothing comes back if no reactant has an amount, an amount is
/// negative or no finite number, or the sizes do not fit the equation and its positive coefficients.
std::optional<Extent> reaction_extent(const Equation& equation, const std::vector<std::int64_t>& coefficients,
                                      const std::vector<std::optional<Amount>>& amounts);

/// Moles of the term `of` a mole of the term `per`. Both are terms of the equation and the coefficients positive; else 0.
WholeRatio moles_per_mole(const std::vector<std::int64_t>& coefficients, std::size_t of, std::size_t per);

/// The products that leave as a gas: those marked (g) or ↑; where no product has a mark, those whose formula is that of a
/// gas met at school (from memory: H2, O2, N2, Cl2, CO, CO2, NO, NO2, N2O, NH3, CH4, C2H2, C2H4, C2H6, SO2, H2S).
std::vector<std::size_t> gases_formed(const Equation& equation);

/// Moles of all gases formed a mole of the term `per`. 0 if there is none, or a number is out of range.
WholeRatio gas_per_mole(const Equation& equation, const std::vector<std::int64_t>& coefficients, std::size_t per);

}  // namespace overwater
