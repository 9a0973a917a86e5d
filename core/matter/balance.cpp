#include "core/matter/balance.hpp"

#include <algorithm>

#include "core/matter/null_space.hpp"
#include "core/matter/periodic_table.hpp"

namespace overwater {
namespace {

Balance because(BalanceProblem problem, std::size_t term = no_term, std::size_t other_term = no_term) {
    Balance result;
    result.problem = problem;
    result.term = term;
    result.other_term = other_term;
    return result;
}

bool same_substance(const ChemicalFormula& a, const ChemicalFormula& b) {
    const bool states_agree = a.state == b.state || a.state == State::none || b.state == State::none;
    return states_agree && a.same_formula(b);
}

/// What each term has of something, the products' negative.
template <class Having>
WholeRow row_of(const Equation& equation, Having having) {
    WholeRow row;
    for (std::size_t i = 0; i < equation.terms.size(); ++i) {
        const int count = having(equation.terms[i].formula);
        row.push_back(equation.is_reactant(i) ? count : -count);
    }
    return row;
}

bool has_positive(const WholeRow& row) {
    return std::any_of(row.begin(), row.end(), [](std::int64_t number) { return number > 0; });
}
bool has_negative(const WholeRow& row) {
    return std::any_of(row.begin(), row.end(), [](std::int64_t number) { return number < 0; });
}

Balance repeated_substance(const Equation& equation) {
    for (std::size_t i = 0; i < equation.terms.size(); ++i) {
        for (std::size_t k = i + 1; k < equation.terms.size(); ++k) {
            if (!same_substance(equation.terms[i].formula, equation.terms[k].formula)) continue;
            const bool one_side = equation.is_reactant(i) == equation.is_reactant(k);
            return because(one_side ? BalanceProblem::written_twice : BalanceProblem::same_on_both_sides, i, k);
        }
    }
    return {};
}

/// The one solution there is, or what is wrong with it.
Balance from_one_solution(WholeRow solution) {
    const auto positive = std::count_if(solution.begin(), solution.end(), [](std::int64_t n) { return n > 0; });
    const auto negative = std::count_if(solution.begin(), solution.end(), [](std::int64_t n) { return n < 0; });
    if (negative > positive) {
        for (std::int64_t& number : solution) number = -number;
    }
    const auto place = [&](auto found) { return static_cast<std::size_t>(found - solution.begin()); };
    Balance result;
    if (positive != 0 && negative != 0) {
        const auto found = std::find_if(solution.begin(), solution.end(), [](std::int64_t n) { return n < 0; });
        result = because(BalanceProblem::wrong_side, place(found));
    } else if (const auto zero = std::find(solution.begin(), solution.end(), 0); zero != solution.end()) {
        result = because(BalanceProblem::takes_no_part, place(zero));
    } else {
        result.coefficients = std::move(solution);
    }
    result.independent = 1;
    return result;
}

/// Why elements and charge together have no positive solution.
Balance without_positive_solution(const std::vector<WholeRow>& elements, std::size_t terms, bool charged) {
    if (!charged) return because(BalanceProblem::wrong_side);
    const auto without_charge = has_positive_solution(elements, terms);
    if (!without_charge) return because(BalanceProblem::too_large);
    return because(*without_charge ? BalanceProblem::charge : BalanceProblem::wrong_side);
}

}  // namespace

Balance balance(const Equation& equation) {
    const std::size_t terms = equation.terms.size();
    if (equation.reactants == 0 || equation.reactants >= terms) return because(BalanceProblem::nothing_to_balance);
    if (Balance found = repeated_substance(equation); found.problem != BalanceProblem::none) return found;

    std::vector<WholeRow> rows;
    std::vector<bool> seen(last_atomic_number + 1, false);
    for (std::size_t i = 0; i < terms; ++i) {
        for (const ElementCount& one : equation.terms[i].formula.atoms) {
            const int number = one.atomic_number;
            if (seen[static_cast<std::size_t>(number)]) continue;
            seen[static_cast<std::size_t>(number)] = true;
            WholeRow row = row_of(equation, [&](const ChemicalFormula& formula) { return formula.count_of(number); });
            if (!has_positive(row) || !has_negative(row)) {
                Balance result = because(BalanceProblem::element_on_one_side, i);
                result.atomic_number = number;
                return result;
            }
            rows.push_back(std::move(row));
        }
    }
    const std::vector<WholeRow> elements = rows;
    WholeRow charges = row_of(equation, [](const ChemicalFormula& formula) { return formula.charge; });
    const bool charged = has_positive(charges) || has_negative(charges);
    if (charged) rows.push_back(std::move(charges));

    const auto basis = null_space(rows, terms);
    if (!basis) return because(BalanceProblem::too_large);
    if (basis->empty()) {
        const auto by_elements = null_space(elements, terms);
        if (!by_elements) return because(BalanceProblem::too_large);
        if (by_elements->empty()) return because(BalanceProblem::no_solution);
        const Balance alone = from_one_solution(by_elements->front());
        return alone.problem == BalanceProblem::none ? because(BalanceProblem::charge) : alone;
    }
    if (basis->size() == 1) {
        Balance result = from_one_solution(basis->front());
        // A charge that lies on one side only makes its substances take no part.
        if (result.problem != BalanceProblem::none && charged) {
            Balance reason = without_positive_solution(elements, terms, charged);
            if (reason.problem != BalanceProblem::wrong_side) return reason;
        }
        return result;
    }
    const auto possible = has_positive_solution(rows, terms);
    if (!possible) return because(BalanceProblem::too_large);
    Balance result =
        *possible ? because(BalanceProblem::several_reactions) : without_positive_solution(elements, terms, charged);
    result.independent = basis->size();
    return result;
}

}  // namespace overwater
