#include <doctest/doctest.h>

#include <limits>

#include "core/matter/balance.hpp"
#include "core/matter/limiting.hpp"
#include "core/matter/molar_mass.hpp"

using namespace overwater;

namespace {

struct Balanced {
    Equation equation;
    std::vector<std::int64_t> coefficients;
};

Balanced balanced(std::string_view text) {
    Equation equation = parse_equation(text).equation;
    std::vector<std::int64_t> coefficients = balance(equation).coefficients;
    CHECK_FALSE(coefficients.empty());
    return {std::move(equation), std::move(coefficients)};
}

std::optional<Amount> mole(double amount) { return Amount::si(amount); }

}  // namespace

TEST_CASE("the limiting reactant of mixtures, by hand") {
    const auto [equation, coefficients] = balanced("CaCO3 + HCl -> CaCl2 + H2O + CO2");
    {
        // 0.025 mol CaCO3 need 0.050 mol of HCl; there are 0.080.
        const auto extent = reaction_extent(equation, coefficients, {mole(0.025), mole(0.080)});
        REQUIRE(extent.has_value());
        CHECK(extent->extent.si() == doctest::Approx(0.025));
        CHECK(extent->limiting == std::vector<std::size_t>{0});
        CHECK(extent->left[0].si() == 0.0);
        CHECK(extent->left[1].si() == doctest::Approx(0.030));
        CHECK(extent->used[1].si() == doctest::Approx(0.050));
        REQUIRE(extent->formed.size() == 3);
        CHECK(extent->formed[2].si() == doctest::Approx(0.025));
    }
    {
        const auto extent = reaction_extent(equation, coefficients, {mole(0.025), mole(0.030)});
        CHECK(extent->extent.si() == doctest::Approx(0.015));
        CHECK(extent->limiting == std::vector<std::size_t>{1});
        CHECK(extent->left[0].si() == doctest::Approx(0.010));
        CHECK(extent->left[1].si() == 0.0);
    }
    {
        // An exact mixture, with roundings: both are used up.
        const auto extent = reaction_extent(equation, coefficients, {mole(0.1 + 0.2), mole(0.6)});
        CHECK(extent->limiting == std::vector<std::size_t>{0, 1});
        CHECK(extent->left[0].si() == 0.0);
        CHECK(extent->left[1].si() == 0.0);
    }
    {
        // Acid in excess, however much.
        const auto extent = reaction_extent(equation, coefficients, {mole(0.025), std::nullopt});
        CHECK(extent->limiting == std::vector<std::size_t>{0});
        CHECK(extent->used[1].si() == doctest::Approx(0.050));
    }
    {
        const auto extent = reaction_extent(equation, coefficients, {mole(0.0), mole(1.0)});
        CHECK(extent->extent.si() == 0.0);
        CHECK(extent->limiting == std::vector<std::size_t>{0});
        CHECK(extent->left[1].si() == 1.0);
    }
}

TEST_CASE("three reactants") {
    // 2 KMnO4 + 5 H2C2O4 + 3 H2SO4 -> K2SO4 + 2 MnSO4 + 10 CO2 + 8 H2O
    const auto [equation, coefficients] = balanced("KMnO4 + H2C2O4 + H2SO4 -> K2SO4 + MnSO4 + CO2 + H2O");
    // 0.02/2 = 0.010, 0.04/5 = 0.008, 0.06/3 = 0.020
    const auto extent = reaction_extent(equation, coefficients, {mole(0.02), mole(0.04), mole(0.06)});
    REQUIRE(extent.has_value());
    CHECK(extent->limiting == std::vector<std::size_t>{1});
    CHECK(extent->left[0].si() == doctest::Approx(0.004));
    CHECK(extent->left[2].si() == doctest::Approx(0.036));
    CHECK(extent->formed[2].si() == doctest::Approx(0.080));
}

TEST_CASE("mass goes in as it comes out") {
    for (const char* text : {"Al + Fe2O3 -> Al2O3 + Fe", "C8H18 + O2 -> CO2 + H2O", "Mg + HCl -> MgCl2 + H2",
                             "KMnO4 + FeSO4 + H2SO4 -> K2SO4 + MnSO4 + Fe2(SO4)3 + H2O"}) {
        INFO(std::string(text));
        const auto [equation, coefficients] = balanced(text);
        std::vector<std::optional<Amount>> amounts;
        for (std::size_t i = 0; i < equation.reactants; ++i)
            amounts.push_back(mole(0.3 + 0.7 * static_cast<double>(i)));
        const auto extent = reaction_extent(equation, coefficients, amounts);
        REQUIRE(extent.has_value());
        double before = 0.0;
        double after = 0.0;
        for (std::size_t i = 0; i < equation.terms.size(); ++i) {
            const double mass = molar_mass(equation.terms[i].formula).mass.value.si();
            if (equation.is_reactant(i)) {
                before += mass * amounts[i]->si();
                after += mass * extent->left[i].si();
                CHECK(extent->left[i].si() + extent->used[i].si() == doctest::Approx(amounts[i]->si()).epsilon(1e-14));
            } else {
                after += mass * extent->formed[i - equation.reactants].si();
            }
        }
        CHECK(after == doctest::Approx(before).epsilon(1e-13));
    }
}

TEST_CASE("amounts are an exact mixture where they differ by less than roundings can tell") {
    // limiting.hpp: 1e-12 of their size apart count as equal.
    CHECK(equal_amounts == 1e-12);
    const Balanced one_to_one = balanced("H2 + Cl2 -> HCl");
    const auto extent = [&](double apart) {
        return *reaction_extent(one_to_one.equation, one_to_one.coefficients, {mole(1.0), mole(1.0 + apart)});
    };
    CHECK(extent(0.9e-12).limiting == std::vector<std::size_t>{0, 1});
    CHECK(extent(1.2e-12).limiting == std::vector<std::size_t>{0});
    CHECK(extent(1e-9).left[1].si() == doctest::Approx(1e-9).epsilon(1e-6));
}

TEST_CASE("a ratio of moles has positive coefficients alone") {
    CHECK(moles_per_mole({2, 1, 2}, 0, 1).value() == 2.0);
    for (const std::int64_t none : {0, -1}) {
        CHECK(moles_per_mole({none, 1}, 0, 1).numerator == 0);
        CHECK(moles_per_mole({1, none}, 0, 1).numerator == 0);
    }
    CHECK(moles_per_mole({2, 1}, 2, 1).numerator == 0);
    CHECK(moles_per_mole({2, 1}, 0, 2).numerator == 0);
    CHECK(moles_per_mole({2, 1}, 0, 2).denominator == 1);
    const auto [equation, coefficients] = balanced("H2O -> H2 + O2");
    CHECK(gas_per_mole(equation, coefficients, 3).numerator == 0);
    CHECK(gas_per_mole(equation, coefficients, 2).value() == 3.0);
    // Two gases whose coefficients together are beyond 64 bits.
    constexpr std::int64_t most = std::numeric_limits<std::int64_t>::max();
    CHECK(gas_per_mole(equation, {1, most, 1}, 0).numerator == 0);
    CHECK(gas_per_mole(equation, {1, most - 1, 1}, 0).numerator == most);
}

TEST_CASE("amounts that are none give nothing") {
    const auto [equation, coefficients] = balanced("H2 + O2 -> H2O");
    const double infinite = std::numeric_limits<double>::infinity();
    const double no_number = std::numeric_limits<double>::quiet_NaN();
    CHECK_FALSE(reaction_extent(equation, coefficients, {mole(-1.0), mole(1.0)}).has_value());
    CHECK_FALSE(reaction_extent(equation, coefficients, {mole(infinite), mole(1.0)}).has_value());
    CHECK_FALSE(reaction_extent(equation, coefficients, {mole(1.0), mole(no_number)}).has_value());
    CHECK_FALSE(reaction_extent(equation, coefficients, {std::nullopt, std::nullopt}).has_value());
    CHECK_FALSE(reaction_extent(equation, coefficients, {mole(1.0)}).has_value());
    CHECK_FALSE(reaction_extent(equation, {2, 1}, {mole(1.0), mole(1.0)}).has_value());
    CHECK_FALSE(reaction_extent(equation, {2, 0, 2}, {mole(1.0), mole(1.0)}).has_value());
    CHECK_FALSE(reaction_extent(Equation{}, {}, {}).has_value());
}

TEST_CASE("gas a mole of the weighed substance") {
    struct Row {
        const char* text;
        std::size_t per;
        std::int64_t numerator;
        std::int64_t denominator;
    };
    // By the equations balanced by hand.
    const Row rows[] = {
        {"Mg + HCl -> MgCl2 + H2", 0, 1, 1},
        {"Al + HCl -> AlCl3 + H2", 0, 3, 2},
        {"Li + H2SO4 -> Li2SO4 + H2", 0, 1, 2},
        {"Mg + HCl -> MgCl2 + H2", 1, 1, 2},
        {"KClO3 -> KCl + O2", 0, 3, 2},
        {"H2O2 -> H2O + O2", 0, 1, 2},
        {"NaHCO3 + HCl -> NaCl + H2O + CO2", 0, 1, 1},
        {"NaHCO3 -> Na2CO3 + H2O + CO2", 0, 1, 2},
        {"Pb(NO3)2 -> PbO + NO2 + O2", 0, 5, 2},            // 4 NO2 and one O2 from two
        {"C8H18(l) + O2(g) -> CO2(g) + H2O(g)", 0, 17, 1},  // 16 CO2 and 18 H2O from two
        {"C8H18(l) + O2(g) -> CO2(g) + H2O(l)", 0, 8, 1},   // the water is no gas here
        {"NH4Cl + NaOH -> NaCl + H2O + NH3\u2191", 0, 1, 1},
        {"HCl + NaOH -> NaCl + H2O", 0, 0, 1},
    };
    for (const Row& row : rows) {
        INFO(std::string(row.text));
        const auto [equation, coefficients] = balanced(row.text);
        const WholeRatio ratio = gas_per_mole(equation, coefficients, row.per);
        CHECK(ratio.numerator == row.numerator);
        CHECK(ratio.denominator == row.denominator);
    }
    const auto [equation, coefficients] = balanced("Al + HCl -> AlCl3 + H2");
    CHECK(moles_per_mole(coefficients, 1, 0).value() == 3.0);
    CHECK(moles_per_mole(coefficients, 3, 0).value() == 1.5);
    CHECK(moles_per_mole(coefficients, 9, 0).numerator == 0);
    CHECK(gas_per_mole(equation, coefficients, 9).numerator == 0);
    CHECK(gases_formed(equation) == std::vector<std::size_t>{3});
}
