#include <doctest/doctest.h>

#include <string>

#include "core/explain/chemical_setting.hpp"
#include "core/matter/equation_check.hpp"
#include "core/matter/limiting.hpp"

using namespace overwater;
using Kind = FormulaProblemKind;

namespace {

/// The equation with its coefficients as typed, in one form.
std::string as_read(std::string_view text) {
    const EquationReading reading = parse_equation(text);
    if (!reading.problem.none()) return "problem";
    std::vector<std::int64_t> typed;
    for (const EquationTerm& term : reading.equation.terms) typed.push_back(term.coefficient);
    return equation_text(reading.equation, typed, FormulaScript::plain);
}

}  // namespace

TEST_CASE("equations in the ways in which they are typed") {
    const char* const rows[][2] = {
        {"CaCO3 + 2 HCl -> CaCl2 + H2O + CO2", "CaCO3 + 2 HCl -> CaCl2 + H2O + CO2"},
        {"CaCO3+2HCl->CaCl2+H2O+CO2", "CaCO3 + 2 HCl -> CaCl2 + H2O + CO2"},
        {"CaCO3 + 2HCl = CaCl2 + H2O + CO2", "CaCO3 + 2 HCl -> CaCl2 + H2O + CO2"},
        {"CaCO3 + 2HCl == CaCl2 + H2O + CO2", "CaCO3 + 2 HCl -> CaCl2 + H2O + CO2"},
        {"CaCO3 + 2 HCl --> CaCl2 + H2O + CO2", "CaCO3 + 2 HCl -> CaCl2 + H2O + CO2"},
        {"CaCO3 + 2 HCl => CaCl2 + H2O + CO2", "CaCO3 + 2 HCl -> CaCl2 + H2O + CO2"},
        {"CaCO\u2083 + 2 HCl \u2192 CaCl\u2082 + H\u2082O + CO\u2082\u2191", "CaCO3 + 2 HCl -> CaCl2 + H2O + CO2(g)"},
        {"N2 + 3 H2 \u21CC 2 NH3", "N2 + 3 H2 -> 2 NH3"},
        {"N2+3H2<=>2NH3", "N2 + 3 H2 -> 2 NH3"},
        {"N2+3H2 <-> 2NH3", "N2 + 3 H2 -> 2 NH3"},
        {"N2+3 H2\u2212>2 NH3", "N2 + 3 H2 -> 2 NH3"},
        {"CuSO4.5H2O -> CuSO4 + 5H2O", "CuSO4.5H2O -> CuSO4 + 5 H2O"},
        {"2H2O-->2H2+O2", "2 H2O -> 2 H2 + O2"},
        {"Mg(s) + 2HCl(aq) -> MgCl2(aq) + H2(g)", "Mg(s) + 2 HCl(aq) -> MgCl2(aq) + H2(g)"},
        {"Mg (s)+2 HCl (aq)=MgCl2 (aq)+H2 (g)", "Mg(s) + 2 HCl(aq) -> MgCl2(aq) + H2(g)"},
        // A plus that charges and one that stands between
        {"Na+ + Cl- -> NaCl", "Na^+ + Cl^- -> NaCl"},
        {"Na++Cl- ->NaCl", "Na^+ + Cl^- -> NaCl"},
        {"Na+Cl2->NaCl", "Na + Cl2 -> NaCl"},
        {"Na +Cl2 -> NaCl", "Na + Cl2 -> NaCl"},
        {"Na+ Cl2 -> NaCl", "Na + Cl2 -> NaCl"},
        {"Na+(aq)+Cl-(aq)->NaCl(s)", "Na^+(aq) + Cl^-(aq) -> NaCl(s)"},
        {"Na+(NH4)2SO4 -> NH3", "Na + (NH4)2SO4 -> NH3"},
        {"H+ + OH- = H2O", "H^+ + OH^- -> H2O"},
        {"H++OH-=H2O", "H^+ + OH^- -> H2O"},
        {"H\u207A+OH\u207B=H\u2082O", "H^+ + OH^- -> H2O"},
        {"H2O = H+ + OH-", "H2O -> H^+ + OH^-"},
        {"H2O -> OH-+H+", "H2O -> OH^- + H^+"},
        {"Fe3+ + e- -> Fe2+", "Fe^3+ + e^- -> Fe^2+"},
        {"Fe3++e-->Fe2+", "Fe^3+ + e^- -> Fe^2+"},
        {"Fe+3 + e- -> Fe+2", "Fe^3+ + e^- -> Fe^2+"},
        {"Fe+3+e- -> Fe+2", "Fe^3+ + e^- -> Fe^2+"},
        {"Cu+++2e- -> Cu", "Cu^2+ + 2 e^- -> Cu"},
        {"Ba^2++SO4^2-->BaSO4", "Ba^2+ + SO4^2- -> BaSO4"},
        {"Ba2+ + SO42- -> BaSO4", "Ba^2+ + SO4^2- -> BaSO4"},
        {"2MnO4- + 16H+ + 10 Cl- -> 2Mn2+ + 8H2O + 5Cl2", "2 MnO4^- + 16 H^+ + 10 Cl^- -> 2 Mn^2+ + 8 H2O + 5 Cl2"},
        {"NH4+ -> NH3 + H+", "NH4^+ -> NH3 + H^+"},
        {"Mg+2HCl->MgCl2+H2", "Mg + 2 HCl -> MgCl2 + H2"},
        {"Fe2+Cl2 -> FeCl3", "Fe2 + Cl2 -> FeCl3"},
        {"Cl-->Cl2", "Cl -> Cl2"},
    };
    for (const auto& row : rows) {
        INFO(std::string(row[0]));
        CHECK(as_read(row[0]) == row[1]);
    }
}

TEST_CASE("terms know their coefficients and places") {
    const Equation equation = parse_equation(" CaCO3 + 2 HCl (aq) \u2192 CO2").equation;
    REQUIRE(equation.terms.size() == 3);
    CHECK(equation.reactants == 2);
    CHECK(equation.is_reactant(1));
    CHECK_FALSE(equation.is_reactant(2));
    CHECK(equation.any_typed());
    CHECK_FALSE(equation.terms[0].is_typed);
    CHECK(equation.terms[1].is_typed);
    CHECK(equation.terms[0].at == 1);
    CHECK(equation.terms[0].length == 5);
    CHECK(equation.terms[1].at == 11);
    CHECK(equation.terms[1].length == 8);
    CHECK(equation.terms[2].at == 24);
    CHECK(equation.terms[2].formula.atoms[1].at == 25);
    CHECK_FALSE(parse_equation("C + O2 -> CO2").equation.any_typed());
}

TEST_CASE("nonsense equations point at the character") {
    std::string many = "H";
    for (std::size_t i = 1; i < most_substances; ++i) many += " + H";
    struct Row {
        std::string text;
        Kind kind;
        std::size_t at;
        std::size_t length;
    };
    const Row rows[] = {
        {"", Kind::nothing_there, 0, 0},
        {"  ", Kind::nothing_there, 2, 0},
        {"->", Kind::nothing_there, 0, 0},
        {"H2 ->", Kind::nothing_there, 5, 0},
        {"-> H2", Kind::nothing_there, 0, 0},
        {"H2 + -> H2O", Kind::nothing_there, 5, 0},
        {"+ H2 -> H2O", Kind::nothing_there, 0, 0},
        {"H2 + + O2 -> H2O", Kind::nothing_there, 5, 0},
        {"H2 + O2 -> H2O +", Kind::nothing_there, 16, 0},
        {"H2 + 2 -> H2O", Kind::nothing_there, 7, 0},
        {"H2 + O2", Kind::no_arrow, 7, 0},
        {"H2O", Kind::no_arrow, 3, 0},
        {"H2 + O2 H2O", Kind::no_arrow, 11, 0},
        {"H2 -> H -> H2", Kind::second_arrow, 8, 2},
        {"H2 = H = H2", Kind::second_arrow, 7, 1},
        {"H2 + O2 -> h2O", Kind::unknown_symbol, 11, 1},
        {"CACO3 -> CaO + CO2", Kind::unknown_symbol, 1, 1},
        {"0 H2 + O2 -> H2O", Kind::count_zero, 0, 1},
        {"02 H2 + O2 -> H2O", Kind::count_zero, 0, 2},
        {"10000 H2 + O2 -> H2O", Kind::count_too_large, 0, 5},
        {"1/2 O2 -> O", Kind::count_not_whole, 0, 3},
        {"H2 + 0.5 O2 -> H2O", Kind::count_not_whole, 5, 3},
        {"H2 + 1.5O2 -> H2O", Kind::count_not_whole, 5, 3},
        {"H2 + 0,5 O2 -> H2O", Kind::count_not_whole, 5, 3},
        {"H2 + \u00BDO2 -> H2O", Kind::count_not_whole, 5, 2},
        {"\u2082H2 -> H", Kind::count_out_of_place, 0, 3},
        {"2 2 H2 -> H", Kind::count_out_of_place, 2, 1},
        {"Na- Cl -> NaCl", Kind::stray_sign, 2, 1},
        {"H2 - O2 -> H2O", Kind::stray_sign, 3, 1},
        {"H2(g)O -> H2O", Kind::stray_state, 2, 3},
        {"Ca(OH -> CaO", Kind::unmatched_bracket, 2, 1},
        {"H2 + O2 > H2O", Kind::unknown_character, 8, 1},
        {"H2 <- H", Kind::unknown_character, 3, 1},
        {many + " -> H2", Kind::too_many_substances, many.size() + 4, 1},
        {std::string(longest_equation_text + 1, ' '), Kind::too_long, longest_equation_text, 1},
    };
    for (const Row& row : rows) {
        INFO(row.text);
        const EquationReading reading = parse_equation(row.text);
        CHECK(static_cast<int>(reading.problem.kind) == static_cast<int>(row.kind));
        CHECK(reading.problem.at == row.at);
        CHECK(reading.problem.length == row.length);
        CHECK(reading.equation.terms.empty());
    }
}

TEST_CASE("typed coefficients are counted") {
    const auto check = [](std::string_view text) { return check_coefficients(parse_equation(text).equation); };
    CHECK(check("CaCO3 + 2 HCl -> CaCl2 + H2O + CO2").verdict == CoefficientVerdict::right);
    CHECK(check("C + O2 -> CO2").verdict == CoefficientVerdict::right);
    CHECK(check("5 Fe2+ + MnO4- + 8 H+ -> 5 Fe3+ + Mn2+ + 4 H2O").verdict == CoefficientVerdict::right);
    // Several reactions at once may be right too.
    CHECK(check("2 C + 3 O2 -> 2 CO2 + O2").verdict == CoefficientVerdict::right);
    CHECK(check("4 H2 + 2 O2 -> 4 H2O").verdict == CoefficientVerdict::multiple);
    CHECK(check("4 H2 + 2 O2 -> 4 H2O").common_factor == 2);
    CHECK(check_coefficients(Equation{}).verdict == CoefficientVerdict::wrong);

    const CoefficientCheck oxygen = check("H2 + O2 -> H2O");
    CHECK(oxygen.verdict == CoefficientVerdict::wrong);
    REQUIRE(oxygen.counts.size() == 2);
    CHECK(oxygen.counts[0].atomic_number == 1);
    CHECK(oxygen.counts[0].agree());
    CHECK(oxygen.counts[1].atomic_number == 8);
    CHECK(oxygen.counts[1].left == 2);
    CHECK(oxygen.counts[1].right == 1);

    const CoefficientCheck charge = check("Cu + Ag+ -> Cu2+ + Ag");
    CHECK(charge.verdict == CoefficientVerdict::wrong);
    REQUIRE(charge.counts.size() == 3);
    CHECK(charge.counts[2].atomic_number == 0);
    CHECK(charge.counts[2].left == 1);
    CHECK(charge.counts[2].right == 2);
}

TEST_CASE("formulas and equations are set") {
    const Formula formula = set_chemical_formula(parse_formula("CaCO3").formula);
    CHECK(formula.kind == Formula::Kind::words);
    CHECK(formula.text == "CaCO\u2083");

    const Equation equation = parse_equation("CaCO3 + HCl -> CaCl2 + H2O + CO2\u2191").equation;
    const Formula set = set_equation(equation, {1, 2, 1, 1, 1});
    CHECK(set.kind == Formula::Kind::row);
    std::string all;
    for (const Formula& part : set.children) all += part.text + '|';
    CHECK(all == "CaCO\u2083|+|2|HCl|\u2192|CaCl\u2082|+|H\u2082O|+|CO\u2082\u2191|");
    CHECK(set.children[1].kind == Formula::Kind::operation);
    CHECK(set.children[2].kind == Formula::Kind::number);
}
