#include "core/explain/chemical_setting.hpp"

namespace overwater {

Formula set_chemical_formula(const ChemicalFormula& formula) {
    return Formula::leaf(Formula::Kind::words, formula_text(formula, FormulaScript::raised));
}

Formula set_equation(const Equation& equation, const std::vector<std::int64_t>& coefficients) {
    std::vector<Formula> parts;
    for (std::size_t i = 0; i < equation.terms.size() && i < coefficients.size(); ++i) {
        if (i != 0) parts.push_back(Formula::leaf(Formula::Kind::operation, i == equation.reactants ? "\u2192" : "+"));
        if (coefficients[i] != 1) {
            parts.push_back(Formula::leaf(Formula::Kind::number, std::to_string(coefficients[i])));
        }
        parts.push_back(set_chemical_formula(equation.terms[i].formula));
    }
    return Formula::of(Formula::Kind::row, std::move(parts));
}

}  // namespace overwater
