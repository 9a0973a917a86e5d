#include "core/matter/equation_check.hpp"

#include <algorithm>
#include <numeric>

namespace overwater {
namespace {

// Far from the ends of 64 bits: 24 substances of at most 10⁴ times 10⁶ atoms.
void add(std::vector<SideCounts>& counts, int atomic_number, std::int64_t number, bool left) {
    auto found = std::find_if(counts.begin(), counts.end(),
                              [&](const SideCounts& one) { return one.atomic_number == atomic_number; });
    if (found == counts.end()) found = counts.insert(found, {atomic_number, 0, 0});
    (left ? found->left : found->right) += number;
}

}  // namespace

CoefficientCheck check_coefficients(const Equation& equation) {
    CoefficientCheck check;
    std::vector<SideCounts> charge;
    std::int64_t factor = 0;
    for (std::size_t i = 0; i < equation.terms.size(); ++i) {
        const EquationTerm& term = equation.terms[i];
        const std::int64_t times = term.coefficient;
        const bool left = equation.is_reactant(i);
        for (const ElementCount& one : term.formula.atoms) {
            add(check.counts, one.atomic_number, times * one.count, left);
        }
        if (term.formula.charge != 0) add(charge, 0, times * term.formula.charge, left);
        factor = std::gcd(factor, times);
    }
    check.counts.insert(check.counts.end(), charge.begin(), charge.end());
    if (equation.terms.empty()) return check;
    check.common_factor = factor;
    const bool balanced =
        std::all_of(check.counts.begin(), check.counts.end(), [](const SideCounts& one) { return one.agree(); });
    if (balanced) check.verdict = factor == 1 ? CoefficientVerdict::right : CoefficientVerdict::multiple;
    return check;
}

}  // namespace overwater
