#pragma once

#include <cmath>
#include <cstdlib>
#include <vector>

#include "core/matter/formula_text.hpp"
#include "core/matter/molar_mass.hpp"
#include "tests/fuzz/property.hpp"

/// Chemical formulas as typed.

namespace overwater::fuzz {

/// How often the element stands in the pieces, brackets multiplied out: counted from the end, where the counts stand.
inline long long atoms_in(const std::vector<FormulaPiece>& pieces, int atomic_number) {
    std::vector<long long> times{1};
    long long in_part = 0, all = 0;
    for (std::size_t i = pieces.size(); i-- > 0;) {
        const FormulaPiece& piece = pieces[i];
        switch (piece.kind) {
        case FormulaPiece::Kind::close: times.push_back(times.back() * piece.count); break;
        case FormulaPiece::Kind::open: times.pop_back(); break;
        case FormulaPiece::Kind::element:
            if (piece.atomic_number == atomic_number) in_part += times.back() * piece.count;
            break;
        case FormulaPiece::Kind::dot:
            all += in_part * piece.count;
            in_part = 0;
            break;
        }
    }
    return all + in_part;
}

inline std::string_view holds_for_problem(const FormulaProblem& problem, std::size_t size) {
    if (problem.at > size || problem.length > size - problem.at) return "a problem lies within the text";
    if (problem.likely_at > size || problem.likely_length > size - problem.likely_at)
        return "a likely spelling is one of the text";
    if (problem.likely.empty()) return kept;
    return parse_formula(problem.likely).problem.none() ? kept : "a likely spelling is a formula";
}

/// What is written is read as the same formula.
inline std::string_view comes_back(const ChemicalFormula& formula) {
    for (const FormulaScript script : {FormulaScript::plain, FormulaScript::raised}) {
        const std::string text = formula_text(formula, script);
        // Raised digits are three bytes, and brackets take their place: a long text may become too long.
        if (text.size() > longest_formula_text) continue;
        const FormulaReading again = parse_formula(text);
        if (!again.problem.none()) return "what was written can be read";
        if (!again.formula.same_formula(formula)) return "a formula comes back as it was";
        if (script == FormulaScript::raised && again.formula.state != formula.state) return "its state comes back";
    }
    return kept;
}

inline std::string_view holds_for_formula(std::string_view bytes) {
    const FormulaReading read = parse_formula(bytes);
    const ChemicalFormula& formula = read.formula;
    if (!read.problem.none()) {
        if (!formula.pieces.empty() || !formula.atoms.empty()) return "of a faulty text nothing is taken";
        return holds_for_problem(read.problem, bytes.size());
    }
    if (formula.pieces.empty() != formula.is_electron()) return "a formula has pieces, or it is the electron";
    if (std::abs(formula.charge) > largest_count) return "a charge has an end";
    for (std::size_t i = 0; i < formula.atoms.size(); ++i) {
        const ElementCount& one = formula.atoms[i];
        if (one.count < 1 || one.count > largest_atom_count) return "an element counts from 1 to its limit";
        if (atoms_in(formula.pieces, one.atomic_number) != one.count) return "brackets are multiplied out";
        for (std::size_t k = 0; k < i; ++k) {
            if (formula.atoms[k].atomic_number == one.atomic_number) return "each element is there once";
        }
    }
    const MolarMassReading weighed = molar_mass(formula);
    const double mass = weighed.mass.value.si();
    if (!std::isfinite(mass) || mass < 0) return "a mass is finite";
    if (weighed.problem.none() && !formula.atoms.empty() && !(mass > 0)) return "atoms weigh something";
    if (weighed.mass.lowest.si() > weighed.mass.highest.si()) return "bounds are in order";
    return comes_back(formula);
}

}  // namespace overwater::fuzz
