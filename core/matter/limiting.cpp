#include "core/matter/limiting.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <string>

namespace overwater {
namespace {

bool fits(const Equation& equation, const std::vector<std::int64_t>& coefficients) {
    return coefficients.size() == equation.terms.size() && equation.reactants != 0 &&
           std::all_of(coefficients.begin(), coefficients.end(), [](std::int64_t number) { return number > 0; });
}

WholeRatio lowest_terms(std::int64_t numerator, std::int64_t denominator) {
    const std::int64_t factor = std::gcd(numerator, denominator);
    return {numerator / factor, denominator / factor};
}

bool is_usual_gas(const ChemicalFormula& formula) {
    constexpr const char* gases[] = {"H2",  "O2",  "N2",  "Cl2",  "CO",   "CO2",  "NO",  "NO2",
                                     "N2O", "NH3", "CH4", "C2H2", "C2H4", "C2H6", "SO2", "H2S"};
    const std::string text = formula_text(formula, FormulaScript::plain);
    return std::find(std::begin(gases), std::end(gases), text) != std::end(gases);
}

}  // namespace

std::optional<Extent> reaction_extent(const Equation& equation, const std::vector<std::int64_t>& coefficients,
                                      const std::vector<std::optional<Amount>>& amounts) {
    if (!fits(equation, coefficients) || amounts.size() != equation.reactants) return std::nullopt;
    const auto coefficient = [&](std::size_t term) { return static_cast<double>(coefficients[term]); };
    std::optional<double> extent;
    for (std::size_t i = 0; i < amounts.size(); ++i) {
        if (!amounts[i]) continue;
        const double amount = amounts[i]->si();
        if (!std::isfinite(amount) || amount < 0.0) return std::nullopt;
        const double own = amount / coefficient(i);
        extent = extent ? std::min(*extent, own) : own;
    }
    if (!extent) return std::nullopt;

    Extent result;
    result.extent = Amount::si(*extent);
    for (std::size_t i = 0; i < equation.terms.size(); ++i) {
        const double turned_over = coefficient(i) * *extent;
        if (!equation.is_reactant(i)) {
            result.formed.push_back(Amount::si(turned_over));
            continue;
        }
        result.used.push_back(Amount::si(turned_over));
        double left = 0.0;
        if (amounts[i]) {
            const double amount = amounts[i]->si();
            const bool limits = amount - turned_over <= equal_amounts * amount;
            if (limits) result.limiting.push_back(i);
            left = limits ? 0.0 : amount - turned_over;
        }
        result.left.push_back(Amount::si(left));
    }
    return result;
}

WholeRatio moles_per_mole(const std::vector<std::int64_t>& coefficients, std::size_t of, std::size_t per) {
    if (of >= coefficients.size() || per >= coefficients.size()) return {};
    if (coefficients[of] <= 0 || coefficients[per] <= 0) return {};
    return lowest_terms(coefficients[of], coefficients[per]);
}

std::vector<std::size_t> gases_formed(const Equation& equation) {
    std::vector<std::size_t> marked;
    std::vector<std::size_t> usual;
    bool any_mark = false;
    for (std::size_t i = equation.reactants; i < equation.terms.size(); ++i) {
        const ChemicalFormula& formula = equation.terms[i].formula;
        any_mark = any_mark || formula.state != State::none;
        if (formula.state == State::gas || formula.state == State::evolved) marked.push_back(i);
        if (is_usual_gas(formula)) usual.push_back(i);
    }
    return any_mark ? marked : usual;
}

WholeRatio gas_per_mole(const Equation& equation, const std::vector<std::int64_t>& coefficients, std::size_t per) {
    if (!fits(equation, coefficients) || per >= coefficients.size()) return {};
    std::int64_t sum = 0;
    for (const std::size_t gas : gases_formed(equation)) {
        if (__builtin_add_overflow(sum, coefficients[gas], &sum)) return {};
    }
    return sum == 0 ? WholeRatio{} : lowest_terms(sum, coefficients[per]);
}

}  // namespace overwater
