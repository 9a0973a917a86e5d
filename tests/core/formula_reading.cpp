#include <doctest/doctest.h>

#include <string>

#include "core/matter/chemical_formula.hpp"
#include "core/matter/formula_text.hpp"
#include "core/matter/periodic_table.hpp"
#include "tests/core/chemistry_support.hpp"

using namespace overwater;

namespace {

/// The composition and the charge in the form of the test's own counting.
chemistry::Counts counts(const ChemicalFormula& formula) {
    chemistry::Counts all;
    for (const ElementCount& one : formula.atoms) all[std::string(element_symbol(one.atomic_number))] = one.count;
    if (formula.charge != 0) all["+"] = formula.charge;
    return all;
}

}  // namespace

TEST_CASE("formulas in the ways in which they are typed") {
    // What is typed, and the same in a form without doubt, which the test counts itself; empty where it is no formula.
    const char* const rows[][2] = {
        {"H2O", "H2O"},
        {"CO", "CO"},
        {"Co", "Co"},
        {"CaCO3", "CaCO3"},
        {"C6H12O6", "C6H12O6"},
        {"Al2(SO4)3", "Al2(SO4)3"},
        {"Ca3(PO4)2", "Ca3(PO4)2"},
        {"(NH4)2SO4", "(NH4)2SO4"},
        {"K4[Fe(CN)6]", "K4[Fe(CN)6]"},
        {"K4{Fe(CN)6}", "K4[Fe(CN)6]"},
        {"((CH3)2CH)2O", "((CH3)2CH)2O"},
        {"CH3CH2CH(CH3)CH2OH", "C5H12O"},
        {"CuSO4.5H2O", "CuSO4.5H2O"},
        {"CuSO4\u00B75H2O", "CuSO4.5H2O"},
        {"CuSO4*5H2O", "CuSO4.5H2O"},
        {"CuSO4 \u2022 5 H2O", "CuSO4.5H2O"},
        {"CuSO\u2084\u22C55H\u2082O", "CuSO4.5H2O"},
        {"KAl(SO4)2.12H2O", "KAl(SO4)2.12H2O"},
        {"2MgO.SiO2", ""},
        {"MgO.2SiO2.H2O", "MgO.2SiO2.H2O"},
        {"CaCl2.NH3", "CaCl2.NH3"},
        {"H\u2082O", "H2O"},
        {"H\u00B2O", "H2O"},
        {"Al\u2082(SO\u2084)\u2083", "Al2(SO4)3"},
        {"C\u2081\u2082H\u2082\u2082O\u2081\u2081", "C12H22O11"},
        {"\uFF28\uFF12\uFF2F", "H2O"},
        {" H 2 O ", "H2O"},
        {"\u2009Na\u00A0Cl", "NaCl"},
        {"Mg (OH) 2", "Mg(OH)2"},
        {"H2O(l)", "H2O"},
        {"NaCl (aq)", "NaCl"},
        {"(NH4)2S(s)", "(NH4)2S"},
        {"CO2\u2191", "CO2"},
        {"UuO2", ""},
        {"Og", "Og"},
        // Charges without doubt
        {"SO4^2-", "SO4^2-"},
        {"SO4^-2", "SO4^2-"},
        {"SO4^{2-}", "SO4^2-"},
        {"SO4^(2-)", "SO4^2-"},
        {"SO4^{-2}", "SO4^2-"},
        {"SO4^--", "SO4^2-"},
        {"SO4 2-", "SO4^2-"},
        {"SO4--", "SO4^2-"},
        {"SO\u2084\u00B2\u207B", "SO4^2-"},
        {"SO\u2084\u207B\u00B2", "SO4^2-"},
        {"SO\u20842-", "SO4^2-"},
        {"SO4\u00B2-", "SO4^2-"},
        {"SO4^2\u2212", "SO4^2-"},
        {"SO4^2\u2013", "SO4^2-"},
        {"Na+", "Na^+"},
        {"Na\u207A", "Na^+"},
        {"Cl-", "Cl^-"},
        {"Cl\u2212", "Cl^-"},
        {"Cu++", "Cu^2+"},
        {"Cu+2", "Cu^2+"},
        {"Fe^3+", "Fe^3+"},
        {"Fe\u00B3\u207A", "Fe^3+"},
        {"Fe 3+", "Fe^3+"},
        {"O2 2-", "O2^2-"},
        {"O2^-", "O2^-"},
        {"I3^-", "I3^-"},
        {"Hg2^2+", "Hg2^2+"},
        {"[Cu(NH3)4]^2+", "[Cu(NH3)4]^2+"},
        {"[Cu(NH\u2083)\u2084]\u00B2\u207A", "[Cu(NH3)4]^2+"},
        {"[Al(H2O)6]^3+(aq)", "[Al(H2O)6]^3+"},
        {"Na+(aq)", "Na^+"},
        {"H3O+ (aq)", "H3O^+"},
        {"e-", "e^-"},
        {"e\u207B", "e^-"},
        {"e^-", "e^-"},
        {"e\u2212", "e^-"},
        // ... and with the doubt settled as chemical_formula.hpp says
        {"Fe3+", "Fe^3+"},
        {"Mg2+", "Mg^2+"},
        {"O2-", "O^2-"},
        {"S2-", "S^2-"},
        {"N3-", "N^3-"},
        {"I3-", "I^3-"},
        {"NH4+", "NH4^+"},
        {"H3O+", "H3O^+"},
        {"NO3-", "NO3^-"},
        {"HCO3-", "HCO3^-"},
        {"HSO4-", "HSO4^-"},
        {"MnO4-", "MnO4^-"},
        {"CH3COO-", "CH3COO^-"},
        {"SO42-", "SO4^2-"},
        {"CO32-", "CO3^2-"},
        {"PO43-", "PO4^3-"},
        {"S2O32-", "S2O3^2-"},
        {"Cr2O72-", "Cr2O7^2-"},
        {"Hg22+", "Hg2^2+"},
        {"[Fe(CN)6]3-", "[Fe(CN)6]^3-"},
        {"[Cu(NH3)4]2+", "[Cu(NH3)4]^2+"},
        {"(NH4)2+", "(NH4)2^+"},
        {"C12H22O11-", "C12H22O11^-"},
        {"C60-", "C60^-"},
        {"H10-", "H10^-"},
        {"C35-", "C35^-"},
        {"C34-", "C3^4-"},
    };
    for (const auto& row : rows) {
        INFO(std::string(row[0]));
        const FormulaReading reading = parse_formula(row[0]);
        const std::string meant = row[1];
        CHECK(reading.problem.none() == !meant.empty());
        if (!meant.empty()) CHECK(counts(reading.formula) == chemistry::count(meant));
    }
}

TEST_CASE("states and the electron") {
    CHECK(parse_formula("H2O(s)").formula.state == State::solid);
    CHECK(parse_formula("H2O(l)").formula.state == State::liquid);
    CHECK(parse_formula("H2O(g)").formula.state == State::gas);
    CHECK(parse_formula("NaCl(aq)").formula.state == State::aqueous);
    CHECK(parse_formula("CO2\u2191").formula.state == State::evolved);
    CHECK(parse_formula("BaSO4 \u2193").formula.state == State::precipitated);
    CHECK(parse_formula("H2O").formula.state == State::none);
    // A capital makes it a group.
    CHECK(parse_formula("Fe(S)2").formula.count_of(*atomic_number("S")) == 2);
    CHECK(parse_formula("e-").formula.is_electron());
    CHECK_FALSE(parse_formula("Cl-").formula.is_electron());
    CHECK_FALSE(ChemicalFormula{}.is_electron());
}

TEST_CASE("the composition is in the order of the text, with its places") {
    const ChemicalFormula formula = parse_formula("CH\u2083COOH").formula;
    REQUIRE(formula.atoms.size() == 3);
    CHECK(formula.atoms[0].count == 2);
    CHECK(formula.atoms[1].atomic_number == 1);
    CHECK(formula.atoms[1].at == 1);
    CHECK(formula.atoms[2].at == 6);
    CHECK(formula.atoms[2].length == 1);
    CHECK(formula.count_of(1) == 4);
    CHECK(formula.count_of(12) == 0);
}

TEST_CASE("formulas written out") {
    const char* const rows[][3] = {
        {"CaCO3", "CaCO3", "CaCO\u2083"},
        {"Al2(SO4)3", "Al2(SO4)3", "Al\u2082(SO\u2084)\u2083"},
        {"CuSO4*5H2O", "CuSO4.5H2O", "CuSO\u2084\u00B75H\u2082O"},
        {"SO42-", "SO4^2-", "SO\u2084\u00B2\u207B"},
        {"PO43-", "PO4^3-", "PO\u2084\u00B3\u207B"},
        {"Pb^4+", "Pb^4+", "Pb\u2074\u207A"},
        {"NH4+", "NH4^+", "NH\u2084\u207A"},
        {"C12H22O11", "C12H22O11", "C\u2081\u2082H\u2082\u2082O\u2081\u2081"},
        {"e-", "e^-", "e\u207B"},
        {"Na+ (aq)", "Na^+(aq)", "Na\u207A(aq)"},
        {"CO2\u2191", "CO2(g)", "CO\u2082\u2191"},
        {"K4[Fe(CN)6]", "K4[Fe(CN)6]", "K\u2084[Fe(CN)\u2086]"},
    };
    for (const auto& row : rows) {
        INFO(std::string(row[0]));
        const ChemicalFormula formula = parse_formula(row[0]).formula;
        CHECK(formula_text(formula, FormulaScript::plain) == row[1]);
        CHECK(formula_text(formula, FormulaScript::raised) == row[2]);
    }
    CHECK(charge_text(0, FormulaScript::raised).empty());
    CHECK(charge_text(-12, FormulaScript::raised) == "\u00B9\u00B2\u207B");
    CHECK(index_text(1, FormulaScript::plain).empty());
    CHECK(index_text(10, FormulaScript::raised) == "\u2081\u2080");
}
