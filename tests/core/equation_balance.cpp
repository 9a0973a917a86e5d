#include <doctest/doctest.h>

#include <cstdint>
#include <iterator>
#include <numeric>
#include <string>

#include "core/matter/balance.hpp"
#include "core/matter/periodic_table.hpp"
#include "tests/core/chemistry_support.hpp"
#include "tests/core/equation_table.hpp"

using namespace overwater;

namespace {

Balance balanced(std::string_view text) {
    const EquationReading reading = parse_equation(text);
    INFO(std::string(text));
    CHECK(reading.problem.none());
    return balance(reading.equation);
}

std::string written(std::string_view text) {
    const EquationReading reading = parse_equation(text);
    return equation_text(reading.equation, balance(reading.equation).coefficients, FormulaScript::plain);
}

}  // namespace

TEST_CASE("equations of textbooks balance: elements and charge counted, smallest whole coefficients") {
    static_assert(std::size(chemistry::equations) >= 200);
    for (const char* text : chemistry::equations) {
        INFO(std::string(text));
        std::size_t reactants = 0;
        const std::vector<std::string> all = chemistry::substances(text, reactants);
        const Balance found = balanced(text);
        CHECK(found.problem == BalanceProblem::none);
        CHECK(found.coefficients.size() == all.size());
        if (found.coefficients.size() != all.size()) continue;
        chemistry::Counts sum;
        std::int64_t factor = 0;
        for (std::size_t i = 0; i < all.size(); ++i) {
            CHECK(found.coefficients[i] >= 1);
            factor = std::gcd(factor, found.coefficients[i]);
            chemistry::add(sum, chemistry::count(all[i]),
                           i < reactants ? found.coefficients[i] : -found.coefficients[i]);
        }
        for (const auto& row : sum) {
            INFO(row.first);
            CHECK(row.second == 0);
        }
        // All solutions are multiples of one, and this one has no common factor: there is no smaller one.
        CHECK(chemistry::solutions(all, reactants) == 1);
        CHECK(factor == 1);
    }
}

TEST_CASE("the test's own counting finds what is wrong") {
    CHECK(chemistry::count("K4[Fe(CN)6]") == chemistry::Counts{{"K", 4}, {"Fe", 1}, {"C", 6}, {"N", 6}});
    CHECK(chemistry::count("CuSO4.5H2O") == chemistry::Counts{{"Cu", 1}, {"S", 1}, {"O", 9}, {"H", 10}});
    CHECK(chemistry::count("SO4^2-") == chemistry::Counts{{"S", 1}, {"O", 4}, {"+", -2}});
    CHECK(chemistry::count("e^-") == chemistry::Counts{{"+", -1}});
    CHECK(chemistry::count("H2O(l)") == chemistry::Counts{{"H", 2}, {"O", 1}});
    std::size_t reactants = 0;
    const auto all = chemistry::substances("H2 + O2 -> H2O + H2O2", reactants);
    CHECK(reactants == 2);
    CHECK(chemistry::solutions(all, reactants) == 2);
}

TEST_CASE("known coefficients") {
    // Worked in general-chemistry textbooks; from memory, and the count above holds for each.
    CHECK(written("CaCO3 + HCl -> CaCl2 + H2O + CO2") == "CaCO3 + 2 HCl -> CaCl2 + H2O + CO2");
    CHECK(written("C8H18 + O2 -> CO2 + H2O") == "2 C8H18 + 25 O2 -> 16 CO2 + 18 H2O");
    CHECK(written("Al + H2SO4 -> Al2(SO4)3 + H2") == "2 Al + 3 H2SO4 -> Al2(SO4)3 + 3 H2");
    CHECK(written("KMnO4 + HCl -> KCl + MnCl2 + Cl2 + H2O") == "2 KMnO4 + 16 HCl -> 2 KCl + 2 MnCl2 + 5 Cl2 + 8 H2O");
    CHECK(written("MnO4^- + Fe^2+ + H^+ -> Mn^2+ + Fe^3+ + H2O") ==
          "MnO4^- + 5 Fe^2+ + 8 H^+ -> Mn^2+ + 5 Fe^3+ + 4 H2O");
    CHECK(written("Cu + HNO3 -> Cu(NO3)2 + NO + H2O") == "3 Cu + 8 HNO3 -> 3 Cu(NO3)2 + 2 NO + 4 H2O");
    // R. J. Stout, J. Chem. Educ. 72 (1995) 1125; from memory, but for the water, which was counted by hydrogen:
    // (10 * 96 + 1399 * 2) / 2.
    CHECK(written("[Cr(N2H4CO)6]4[Cr(CN)6]3 + KMnO4 + H2SO4 -> K2Cr2O7 + MnSO4 + CO2 + KNO3 + K2SO4 + H2O") ==
          "10 [Cr(N2H4CO)6]4[Cr(CN)6]3 + 1176 KMnO4 + 1399 H2SO4 -> "
          "35 K2Cr2O7 + 1176 MnSO4 + 420 CO2 + 660 KNO3 + 223 K2SO4 + 1879 H2O");
}

TEST_CASE("why an equation cannot be balanced") {
    struct Row {
        const char* text;
        BalanceProblem problem;
        std::size_t term;
        std::size_t other_term;
    };
    const Row rows[] = {
        {"H2O + CO2 -> H2O + CO", BalanceProblem::same_on_both_sides, 0, 2},
        {"H2O(l) -> H2O", BalanceProblem::same_on_both_sides, 0, 1},
        {"H2 + O2 + H2 -> H2O", BalanceProblem::written_twice, 0, 2},
        {"Mg + HCl -> MgCl2 + O2", BalanceProblem::element_on_one_side, 1, no_term},
        {"H2 -> H2O", BalanceProblem::element_on_one_side, 1, no_term},
        {"CO -> CO2", BalanceProblem::no_solution, no_term, no_term},
        {"H2O -> H2O2", BalanceProblem::no_solution, no_term, no_term},
        // 2 H2O2 -> 2 H2O + O2 with O2 on the wrong side: one of three has the other sign.
        {"H2O2 + O2 -> H2O", BalanceProblem::wrong_side, 1, no_term},
        // O: a = 2c; H: a + b = c, so b = -c.
        {"H2O + H2 -> H2O2", BalanceProblem::wrong_side, 1, no_term},
        {"CH4 + H2 -> C2H4 + C2H6", BalanceProblem::wrong_side, no_term, no_term},
        // N2O4 = 2 NO2 leaves no room for oxygen.
        {"N2O4 -> NO2 + O2", BalanceProblem::takes_no_part, 2, no_term},
        {"Fe^2+ -> Fe^3+", BalanceProblem::charge, no_term, no_term},
        {"Na^+ + Cl -> NaCl", BalanceProblem::charge, no_term, no_term},
        {"MnO4^- + Fe^2+ + H2O -> Mn^2+ + Fe^3+ + OH^-", BalanceProblem::none, no_term, no_term},
        {"Cu + Ag^+ -> Cu^2+ + Ag + e^-", BalanceProblem::several_reactions, no_term, no_term},
        {"C + O2 -> CO + CO2", BalanceProblem::several_reactions, no_term, no_term},
        {"KClO3 + HCl -> KCl + Cl2 + ClO2 + H2O", BalanceProblem::several_reactions, no_term, no_term},
        {"KMnO4 + H2O2 + H2SO4 -> MnSO4 + K2SO4 + O2 + H2O", BalanceProblem::several_reactions, no_term, no_term},
    };
    for (const Row& row : rows) {
        INFO(std::string(row.text));
        const Balance found = balanced(row.text);
        CHECK(found.problem == row.problem);
        CHECK(found.term == row.term);
        CHECK(found.other_term == row.other_term);
        CHECK(found.coefficients.empty() == (row.problem != BalanceProblem::none));
    }
    CHECK(balanced("Mg + HCl -> MgCl2 + O2").atomic_number == *atomic_number("H"));
    CHECK(balanced("H2 -> H2O").atomic_number == *atomic_number("O"));
    CHECK(balanced("C + O2 -> CO + CO2").independent == 2);
    CHECK(balance(Equation{}).problem == BalanceProblem::nothing_to_balance);
}

TEST_CASE("several solutions of which none is positive are no several reactions") {
    // C: a = 2c + 2d; H: 4a + 2b = 4c + 6d, so b = -2c - d.
    const Balance found = balanced("CH4 + H2 -> C2H4 + C2H6");
    CHECK(found.independent == 2);
    CHECK(found.problem == BalanceProblem::wrong_side);
    CHECK(balanced("CH4 -> C2H4 + C2H6 + H2").problem == BalanceProblem::several_reactions);
    // Two by the elements, and the one ion has nothing to take its charge.
    CHECK(balanced("H^+ + H2 + O2 -> H2O").problem == BalanceProblem::charge);
}

TEST_CASE("numbers that grow beyond 64 bits are told and not wrong") {
    // A chain, each link on the other side: C + .. -> C9998N9997, N9996O9995 and so on. Each link multiplies the
    // coefficients by numbers without a common factor.
    const char* const symbols[] = {"C", "N", "O", "F", "Na", "Mg", "Al", "Si", "P", "S"};
    std::string sides[2] = {"C", ""};
    for (std::size_t i = 0; i + 1 < std::size(symbols); ++i) {
        std::string& side = sides[(i + 1) % 2];
        if (!side.empty()) side += " + ";
        const int count = 9998 - 2 * static_cast<int>(i);
        side += symbols[i] + std::to_string(count) + symbols[i + 1] + std::to_string(count - 1);
    }
    sides[0] += " + S";
    CHECK(balanced(sides[0] + " -> " + sides[1]).problem == BalanceProblem::too_large);
    // The same with three links, where they fit: by hand x0 = 9998 x1, 9997 x1 = 9996 x2, 9995 x2 = x3.
    CHECK(balanced("C + N9996O9995 -> C9998N9997 + O").coefficients ==
          std::vector<std::int64_t>{9998LL * 9996, 9997, 9996, 9997LL * 9995});
}
