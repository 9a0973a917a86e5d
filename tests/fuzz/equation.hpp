#pragma once

#include <numeric>

#include "core/matter/balance.hpp"
#include "core/matter/equation_check.hpp"
#include "tests/fuzz/formula.hpp"

/// Chemical equations as typed, and their balance.

namespace overwater::fuzz {

/// Atoms of the element, or with 0 the charge, that are more on the left than on the right.
inline long double surplus(const Equation& equation, const std::vector<std::int64_t>& coefficients, int atomic_number) {
    long double sum = 0;
    for (std::size_t i = 0; i < equation.terms.size(); ++i) {
        const ChemicalFormula& formula = equation.terms[i].formula;
        const int each = atomic_number == 0 ? formula.charge : formula.count_of(atomic_number);
        sum += static_cast<long double>(each) * static_cast<long double>(coefficients[i]) *
               (equation.is_reactant(i) ? 1 : -1);
    }
    return sum;
}

inline std::string_view conserves(const Equation& equation, const std::vector<std::int64_t>& coefficients) {
    if (coefficients.size() != equation.terms.size()) return "each substance has its coefficient";
    std::int64_t common = 0;
    for (const std::int64_t one : coefficients) {
        if (one < 1) return "coefficients are positive";
        common = std::gcd(common, one);
    }
    if (common != 1) return "coefficients are the smallest";
    for (const EquationTerm& term : equation.terms) {
        for (const ElementCount& one : term.formula.atoms) {
            if (surplus(equation, coefficients, one.atomic_number) != 0) return "a balance conserves atoms";
        }
    }
    return surplus(equation, coefficients, 0) == 0 ? kept : "a balance conserves charge";
}

inline std::string_view holds_for_balance(Equation equation) {
    const Balance balanced = balance(equation);
    if ((balanced.problem == BalanceProblem::none) == balanced.coefficients.empty())
        return "there are coefficients, or it says why not";
    const std::size_t terms = equation.terms.size();
    if ((balanced.term != no_term && balanced.term >= terms) ||
        (balanced.other_term != no_term && balanced.other_term >= terms))
        return "a problem is about a substance that is there";
    if (balanced.coefficients.empty()) return kept;
    const std::string_view broken = conserves(equation, balanced.coefficients);
    if (!broken.empty()) return broken;
    for (std::size_t i = 0; i < terms; ++i) {
        if (balanced.coefficients[i] > largest_count) return kept;  // beyond what can be typed
        equation.terms[i].coefficient = static_cast<int>(balanced.coefficients[i]);
    }
    return check_coefficients(equation).verdict == CoefficientVerdict::right ? kept : "the balance is found right";
}

inline std::string_view holds_for_equation(std::string_view bytes) {
    const EquationReading read = parse_equation(bytes);
    const Equation& equation = read.equation;
    if (!read.problem.none()) {
        if (!equation.terms.empty()) return "of a faulty text nothing is taken";
        return holds_for_problem(read.problem, bytes.size());
    }
    const std::size_t terms = equation.terms.size();
    if (terms > most_substances) return "an equation has an end";
    if (equation.reactants == 0 || equation.reactants >= terms) return "both sides have a substance";
    std::vector<std::int64_t> typed;
    for (const EquationTerm& term : equation.terms) {
        if (term.at > bytes.size() || term.length > bytes.size() - term.at) return "a substance lies within the text";
        if (term.coefficient < 1 || term.coefficient > largest_count) return "a coefficient has its limits";
        typed.push_back(term.coefficient);
    }
    const std::string text = equation_text(equation, typed, FormulaScript::raised);
    if (text.size() <= longest_equation_text) {
        const EquationReading again = parse_equation(text);
        // A raised formula is longer than what was typed.
        if (again.problem.kind == FormulaProblemKind::too_long) return kept;
        if (!again.problem.none()) return "what was written can be read";
        if (again.equation.terms.size() != terms || again.equation.reactants != equation.reactants)
            return "an equation comes back with its sides";
        for (std::size_t i = 0; i < terms; ++i) {
            if (!again.equation.terms[i].formula.same_formula(equation.terms[i].formula) ||
                again.equation.terms[i].coefficient != typed[i])
                return "a substance comes back with its coefficient";
        }
    }
    return holds_for_balance(equation);
}

}  // namespace overwater::fuzz
