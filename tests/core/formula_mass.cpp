#include <doctest/doctest.h>

#include <cmath>
#include <string>

#include "core/matter/elements.hpp"
#include "core/matter/molar_mass.hpp"
#include "core/matter/periodic_table.hpp"

using namespace overwater;

namespace {

double gram_per_mole(MolarMass mass) { return mass.si() * 1e3; }

FormulaMass mass_of(std::string_view formula) {
    const MolarMassReading reading = molar_mass(parse_formula(formula).formula);
    CHECK(reading.problem.none());
    return reading.mass;
}

}  // namespace

TEST_CASE("molar masses against published ones") {
    struct Row {
        const char* formula;
        double published;
        const char* source;
    };
    const char* const webbook = "NIST Chemistry WebBook";
    const char* const webbook_memory = "NIST Chemistry WebBook, from memory; the same by python3-periodictable 1.6.0";
    const char* const crc = "CRC Handbook, from memory; the same by python3-periodictable 1.6.0";
    const Row rows[] = {
        {"CO2", 44.0095, webbook},
        {"H2O", 18.0153, webbook_memory},
        {"NH3", 17.0305, webbook_memory},
        {"CH4", 16.0425, webbook_memory},
        {"C2H5OH", 46.0684, webbook_memory},
        {"C6H12O6", 180.1559, webbook_memory},
        {"C12H22O11", 342.2965, webbook_memory},
        {"C8H10N4O2", 194.1906, webbook_memory},
        {"CH3COOH", 60.0520, webbook_memory},
        {"HCl", 36.461, webbook_memory},
        {"H2SO4", 98.078, webbook_memory},
        {"H2O2", 34.0147, webbook_memory},
        {"NaCl", 58.443, crc},
        {"NaOH", 39.997, crc},
        {"HNO3", 63.013, crc},
        {"CaCO3", 100.087, crc},
        {"NaHCO3", 84.007, crc},
        {"Na2CO3", 105.988, crc},
        {"KMnO4", 158.034, crc},
        {"K2Cr2O7", 294.185, crc},
        {"KClO3", 122.549, crc},
        {"AgNO3", 169.873, crc},
        {"BaSO4", 233.390, crc},
        {"PbI2", 461.0, crc},
        {"Fe2O3", 159.688, crc},
        {"Ca3(PO4)2", 310.177, crc},
        {"Al2(SO4)3", 342.151, crc},
        {"(NH4)2SO4", 132.140, crc},
        {"K4[Fe(CN)6]", 368.343, crc},
        {"CuSO4.5H2O", 249.685, crc},
        {"MgSO4.7H2O", 246.475, crc},
        {"KAl(SO4)2.12H2O", 474.388, crc},
    };
    for (const Row& row : rows) {
        INFO(std::string(row.formula));
        INFO(std::string(row.source));
        const FormulaMass mass = mass_of(row.formula);
        const double half_a_digit = 0.0005;
        CHECK(std::abs(gram_per_mole(mass.value) - row.published) <= gram_per_mole(mass.plus_minus) + half_a_digit);
    }
}

TEST_CASE("molar masses are sums of the abridged weights, and so are their bounds") {
    struct Row {
        const char* formula;
        double value;
        double plus_minus;
        int decimals;
    };
    // Added by hand from Table 1 of Prohaska et al., Pure Appl. Chem. 94 (2022) 573.
    const Row rows[] = {
        {"H2O", 18.015, 0.0014, 3},           // 2.0160 + 15.999; 0.0004 + 0.001
        {"CaCO3", 100.086, 0.009, 3},         // 40.078 + 12.011 + 47.997; 0.004 + 0.002 + 0.003
        {"CuSO4.5H2O", 249.677, 0.034, 2},    // 63.546 + 32.06 + 143.991 + 10.080; 0.003 + 0.02 + 0.009 + 0.002
        {"Al2(SO4)3", 342.132, 0.074, 2},     // 53.964 + 96.18 + 191.988; 0.002 + 0.06 + 0.012
        {"PbO2", 239.198, 1.102, 1},          // 207.2 + 31.998; 1.1 + 0.002
        {"HCl", 36.458, 0.0102, 2},           // 1.0080 + 35.45; 0.0002 + 0.01
        {"MgCl2", 95.205, 0.022, 2},          // 24.305 + 70.90; 0.002 + 0.02
        {"[Fe(CN)6]^4-", 211.953, 0.020, 3},  // 55.845 + 72.066 + 84.042; 0.002 + 0.012 + 0.006
    };
    for (const Row& row : rows) {
        INFO(std::string(row.formula));
        const FormulaMass mass = mass_of(row.formula);
        CHECK(gram_per_mole(mass.value) == doctest::Approx(row.value).epsilon(1e-13));
        CHECK(gram_per_mole(mass.plus_minus) == doctest::Approx(row.plus_minus).epsilon(1e-12));
        CHECK(mass.decimals == row.decimals);
        CHECK(gram_per_mole(mass.lowest) >= gram_per_mole(mass.value) - row.plus_minus - 1e-9);
        CHECK(gram_per_mole(mass.highest) <= gram_per_mole(mass.value) + row.plus_minus + 1e-9);
    }
    // 2 [1.00784, 1.00811] + [15.99903, 15.99977]
    CHECK(gram_per_mole(mass_of("H2O").lowest) == doctest::Approx(18.01471).epsilon(1e-13));
    CHECK(gram_per_mole(mass_of("H2O").highest) == doctest::Approx(18.01599).epsilon(1e-13));
}

TEST_CASE("one atom weighs the same bits as in the experiment's table") {
    for (const AtomicWeight& row : elements()) {
        INFO(std::string(row.symbol));
        CHECK(mass_of(row.symbol).value.si() == row.molar_mass().si());
        const auto number = atomic_number(row.symbol);
        REQUIRE(number.has_value());
        const auto same = standard_atomic_weight(*number);
        REQUIRE(same.has_value());
        CHECK(same->value == row.value);
        CHECK(same->lowest == row.lowest);
        CHECK(same->highest == row.highest);
    }
}

TEST_CASE("the electron weighs nothing and an ion what its atoms weigh") {
    CHECK(mass_of("e-").value.si() == 0.0);
    CHECK(mass_of("Na+").value.si() == mass_of("Na").value.si());
    CHECK_FALSE(mass_fraction(parse_formula("e-").formula, 1).has_value());
}

TEST_CASE("an element without a standard atomic weight is named by its place") {
    const char* const without[] = {"Tc", "Pm", "Po", "At", "Rn", "Fr", "Ra", "Ac", "Np", "Pu", "Am", "Cm",
                                   "Bk", "Cf", "Es", "Fm", "Md", "No", "Lr", "Rf", "Db", "Sg", "Bh", "Hs",
                                   "Mt", "Ds", "Rg", "Cn", "Nh", "Fl", "Mc", "Lv", "Ts", "Og"};
    CHECK(std::size(without) + standard_atomic_weights().size() == last_atomic_number);
    for (const char* symbol : without) {
        INFO(std::string(symbol));
        REQUIRE(atomic_number(symbol).has_value());
        CHECK_FALSE(standard_atomic_weight(*atomic_number(symbol)).has_value());
        const ChemicalFormula formula = parse_formula("H2(" + std::string(symbol) + "O4)").formula;
        const MolarMassReading reading = molar_mass(formula);
        CHECK(reading.problem.kind == FormulaProblemKind::no_weight);
        CHECK(reading.problem.at == 3);
        CHECK(reading.problem.length == 2);
        CHECK(reading.mass.value.si() == 0.0);
        CHECK_FALSE(mass_fraction(formula, 1).has_value());
    }
    for (const char* symbol : {"Th", "Pa", "U", "Bi"}) CHECK(mass_of(symbol).value.si() > 0.2);
}

TEST_CASE("symbols and atomic numbers") {
    CHECK(element_symbol(1) == "H");
    CHECK(element_symbol(12) == "Mg");
    CHECK(element_symbol(74) == "W");
    CHECK(element_symbol(118) == "Og");
    CHECK(element_symbol(0).empty());
    CHECK(element_symbol(119).empty());
    CHECK(element_symbol(-1).empty());
    for (int number = 1; number <= last_atomic_number; ++number) CHECK(atomic_number(element_symbol(number)) == number);
    CHECK_FALSE(atomic_number("").has_value());
    CHECK_FALSE(atomic_number("mg").has_value());
    CHECK_FALSE(atomic_number("H_").has_value());
    CHECK_FALSE(standard_atomic_weight(0).has_value());
    CHECK_FALSE(standard_atomic_weight(119).has_value());
}

TEST_CASE("shares of the mass") {
    const auto share = [](std::string_view formula, std::string_view symbol) {
        return mass_fraction(parse_formula(formula).formula, *atomic_number(symbol));
    };
    // By hand from the abridged weights.
    CHECK(*share("CaCO3", "Ca") == doctest::Approx(40.078 / 100.086).epsilon(1e-13));
    CHECK(*share("Al2(SO4)3", "S") == doctest::Approx(96.18 / 342.132).epsilon(1e-13));
    CHECK(*share("CuSO4.5H2O", "H") == doctest::Approx(10.080 / 249.677).epsilon(1e-13));
    CHECK(*share("Mg", "Mg") == 1.0);
    CHECK(*share("CaCO3", "Mg") == 0.0);
    const double all = *share("KMnO4", "K") + *share("KMnO4", "Mn") + *share("KMnO4", "O");
    CHECK(all == doctest::Approx(1.0).epsilon(1e-15));
}
