#include "web/panels/typed_chemistry.hpp"

#include "core/matter/limiting.hpp"

namespace overwater {

namespace {

/// The terms of an equation that is still being typed: read with the least that would complete it.
Equation unfinished(const std::string& text) {
    struct Ending {
        const char* text;
        std::size_t left;   ///< terms it adds before the arrow ...
        std::size_t right;  ///< ... and behind
    };
    constexpr Ending endings[] = {{"\u2192H", 0, 1}, {"H", 0, 1}, {"H\u2192H", 1, 1}};
    for (const Ending& ending : endings) {
        // A space keeps what was typed apart from what is added.
        Equation equation = parse_equation(text + ' ' + ending.text).equation;
        if (equation.terms.empty()) continue;
        equation.terms.pop_back();
        for (std::size_t i = 0; i < ending.left; ++i) {
            equation.terms.pop_back();
            --equation.reactants;
        }
        return equation;
    }
    return {};
}

/// With a space before the plus.
bool ends_in_plus(const std::string& text) {
    const std::size_t last = text.find_last_not_of(' ');
    return last != std::string::npos && last > 0 && text[last] == '+' && text[last - 1] == ' ';
}

void mark_gases(Equation& equation) {
    for (const std::size_t gas : gases_formed(equation)) {
        State& state = equation.terms[gas].formula.state;
        if (state == State::none) state = State::evolved;
    }
}

}  // namespace

std::vector<std::int64_t> TypedChemistry::drawn() const {
    if (balanced()) return coefficients;
    std::vector<std::int64_t> typed;
    for (const EquationTerm& term : equation.terms) typed.push_back(term.coefficient);
    return typed;
}

TypedChemistry read_typed(const std::string& text) {
    using Kind = TypedChemistry::Kind;
    TypedChemistry out;
    if (text.find_first_not_of(' ') == std::string::npos) return out;
    EquationReading reading = parse_equation(text);
    if (reading.problem.none()) {
        out.kind = Kind::equation;
        out.equation = std::move(reading.equation);
        out.balance = balance(out.equation);
        out.check = check_coefficients(out.equation);
        out.coefficients = out.balance.coefficients;
        const bool chosen =
            out.balance.problem == BalanceProblem::several_reactions && out.check.verdict != CoefficientVerdict::wrong;
        if (chosen) out.coefficients = out.drawn();
        mark_gases(out.equation);
        return out;
    }
    FormulaReading formula = parse_formula(text);
    if (formula.problem.none() && ends_in_plus(text)) {
        // The next substance is on its way: Mg + is not Mg⁺.
        formula.problem.kind = FormulaProblemKind::nothing_there;
        formula.problem.at = text.size();
        reading.problem = formula.problem;
    }
    if (formula.problem.none()) {
        out.kind = Kind::formula;
        out.formula = std::move(formula.formula);
        return out;
    }
    out.kind = Kind::neither;
    out.problem = std::move(reading.problem);
    if (out.problem.at + out.problem.length >= text.size()) out.equation = unfinished(text);
    return out;
}

}  // namespace overwater
