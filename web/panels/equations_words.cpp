#include "web/panels/equations_words.hpp"

#include <algorithm>
#include <cmath>

#include "core/matter/periodic_table.hpp"
#include "core/quantity/number_format.hpp"
#include "core/quantity/utf8.hpp"
#include "web/app/app.hpp"

namespace overwater {

namespace {

const char* key_of(FormulaProblemKind kind) {
    switch (kind) {
    case FormulaProblemKind::none:
    case FormulaProblemKind::nothing_there: break;
    case FormulaProblemKind::too_long: return "equations.problem.long";
    case FormulaProblemKind::too_deep: return "equations.problem.deep";
    case FormulaProblemKind::too_many_substances: return "equations.problem.many";
    case FormulaProblemKind::not_utf8:
    case FormulaProblemKind::unknown_character: return "equations.problem.character";
    case FormulaProblemKind::unknown_symbol: return "equations.problem.symbol";
    case FormulaProblemKind::unmatched_bracket: return "equations.problem.bracket";
    case FormulaProblemKind::empty_bracket: return "equations.problem.empty";
    case FormulaProblemKind::count_zero: return "equations.problem.zero";
    case FormulaProblemKind::count_too_large: return "equations.problem.large";
    case FormulaProblemKind::count_not_whole: return "equations.problem.whole";
    case FormulaProblemKind::count_out_of_place: return "equations.problem.place";
    case FormulaProblemKind::stray_sign: return "equations.problem.sign";
    case FormulaProblemKind::stray_state: return "equations.problem.state";
    case FormulaProblemKind::no_arrow: return "equations.problem.no_arrow";
    case FormulaProblemKind::second_arrow: return "equations.problem.second_arrow";
    case FormulaProblemKind::no_weight: return "equations.problem.no_weight";
    }
    return "equations.problem.missing";
}

std::string check_words(const App& app, const CoefficientCheck& check) {
    if (check.verdict == CoefficientVerdict::right) return app.say("equations.right");
    if (check.verdict == CoefficientVerdict::multiple) {
        return app.say(Message{"equations.multiple"}.text("factor", std::to_string(check.common_factor)));
    }
    std::vector<std::string> sides;
    const DecimalSign sign = app.language().decimal_sign();
    for (const SideCounts& one : check.counts) {
        if (one.agree()) continue;
        const std::string element = one.atomic_number == 0 ? app.say("equations.charge")
                                                           : std::string(element_symbol(one.atomic_number));
        sides.push_back(app.say(Message{"equations.side"}
                                    .text("element", element)
                                    .text("left", format_fixed(static_cast<double>(one.left), 0, sign))
                                    .text("right", format_fixed(static_cast<double>(one.right), 0, sign))));
    }
    return app.say(Message{"equations.wrong"}.text("list", app.language().list(sides)));
}

const char* key_of_substance(BalanceProblem problem) {
    switch (problem) {
    case BalanceProblem::same_on_both_sides: return "equations.balance.both_sides";
    case BalanceProblem::written_twice: return "equations.balance.twice";
    case BalanceProblem::wrong_side: return "equations.balance.wrong_side";
    default: return "equations.balance.no_part";
    }
}

}  // namespace

std::string substance_words(ChemicalFormula formula) {
    if (formula.state == State::evolved || formula.state == State::precipitated) formula.state = State::none;
    return formula_text(formula, FormulaScript::raised);
}

std::string problem_words(const App& app, std::string_view text, const FormulaProblem& problem, bool with_place) {
    if (!with_place) return app.say(key_of(problem.kind));
    long long number = 1;
    for (std::size_t at = 0; at < problem.at && at < text.size(); at += code_point_at(text, at).bytes) ++number;
    return app.say(Message{"equations.at"}.count("number", number).text("problem", app.say(key_of(problem.kind))));
}

std::string balance_words(const App& app, const TypedChemistry& typed) {
    const Balance& balance = typed.balance;
    if (typed.balanced()) return check_words(app, typed.check);
    switch (balance.problem) {
    case BalanceProblem::element_on_one_side:
        return app.say(Message{"equations.balance.one_side"}.text(
            "element", std::string(element_symbol(balance.atomic_number))));
    case BalanceProblem::charge: return app.say("equations.balance.charge");
    case BalanceProblem::several_reactions: return app.say("equations.balance.several");
    case BalanceProblem::too_large: return app.say("equations.problem.large");
    case BalanceProblem::none:
    case BalanceProblem::nothing_to_balance:
    case BalanceProblem::no_solution:
    case BalanceProblem::same_on_both_sides:
    case BalanceProblem::written_twice:
    case BalanceProblem::wrong_side:
    case BalanceProblem::takes_no_part: break;
    }
    if (balance.term >= typed.equation.terms.size()) return app.say("equations.balance.none");
    return app.say(Message{key_of_substance(balance.problem)}.text(
        "substance", substance_words(typed.equation.terms[balance.term].formula)));
}

std::string standard_words(const App& app) {
    const Conventions& conventions = app.record().conventions;
    if (conventions.standard != StandardConditions::own) {
        return app.say("conventions.standard." +
                       std::string(standard_conditions_names[static_cast<std::size_t>(conventions.standard)]));
    }
    const auto number = [&](double base, UnitId unit) {
        return app.language().with_unit(
            format_significant(from_base(base, unit), 6, app.language().decimal_sign()), unit);
    };
    return number(conventions.own_celsius, UnitId::celsius) + app.say("list.comma") +
           number(conventions.own_pressure, UnitId::kilopascal);
}

std::string mass_words(const App& app, double gram_per_mole, double plus_minus, int decimals) {
    const Conventions& conventions = app.record().conventions;
    const auto number = [&](double value, int places) {
        return format_fixed(value, places, conventions.decimal_sign, conventions.rounding);
    };
    int places = decimals;
    while (places < 4 && plus_minus > 0 && round_to_place(plus_minus, -places) <= 0) ++places;
    return number(gram_per_mole, places) + "\u00a0±\u00a0" + number(plus_minus, places);
}

double class_molar_mass(const Conventions& conventions, const ChemicalFormula& formula) {
    using Digits = Conventions::MolarMassDigits;
    const Digits digits = conventions.molar_mass_digits;
    double sum = 0;
    for (const ElementCount& one : formula.atoms) {
        const auto weight = standard_atomic_weight(one.atomic_number);
        if (!weight) return 0;
        double value = weight->value;
        if (digits == Digits::two_decimals) value = round_to_place(value, -2, conventions.rounding);
        if (digits == Digits::one_decimal) value = round_to_place(value, -1, conventions.rounding);
        if (digits == Digits::whole) value = round_to_place(value, 0, conventions.rounding);
        sum += one.count * value;
    }
    return sum * 1e-3;
}

}  // namespace overwater
