#include <doctest/doctest.h>

#include <algorithm>
#include <cctype>
#include <iterator>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "core/matter/elements.hpp"
#include "core/matter/reaction.hpp"

using namespace overwater;

namespace {

using Atoms = std::map<std::string, int>;

/// Counts the atoms of a formula like Al2(SO4)3: one level of parentheses.
Atoms atoms_of(std::string_view formula, int times) {
    Atoms atoms;
    const auto number_at = [&](std::size_t& at) {
        int number = 0;
        while (at < formula.size() && std::isdigit(formula[at])) number = number * 10 + (formula[at++] - '0');
        return number == 0 ? 1 : number;
    };
    for (std::size_t at = 0; at < formula.size();) {
        if (formula[at] == '(') {
            const std::size_t close = formula.find(')', at);
            const std::string_view group = formula.substr(at + 1, close - at - 1);
            at = close + 1;
            for (const auto& [symbol, count] : atoms_of(group, times * number_at(at))) atoms[symbol] += count;
            continue;
        }
        std::string symbol(1, formula[at++]);
        while (at < formula.size() && std::islower(formula[at])) symbol += formula[at++];
        atoms[symbol] += times * number_at(at);
    }
    return atoms;
}

/// A side of an equation like 2Al+3H2SO4: its terms, each a coefficient and a formula.
struct Term {
    int coefficient;
    std::string formula;
};

std::vector<Term> terms_of(std::string_view side) {
    std::vector<Term> terms;
    while (!side.empty()) {
        const std::size_t plus = std::min(side.find('+'), side.size());
        const std::string_view term = side.substr(0, plus);
        std::size_t at = 0;
        int coefficient = 0;
        while (at < term.size() && std::isdigit(term[at])) coefficient = 10 * coefficient + (term[at++] - '0');
        terms.push_back({coefficient == 0 ? 1 : coefficient, std::string(term.substr(at))});
        side.remove_prefix(std::min(plus + 1, side.size()));
    }
    return terms;
}

struct Sides {
    std::vector<Term> before;
    std::vector<Term> after;
};

Sides sides_of(std::string_view equation) {
    const std::size_t arrow = equation.find("->");
    REQUIRE(arrow != std::string_view::npos);
    return {terms_of(equation.substr(0, arrow)), terms_of(equation.substr(arrow + 2))};
}

Atoms atoms_of(const std::vector<Term>& side) {
    Atoms sum;
    for (const Term& term : side) {
        for (const auto& [symbol, count] : atoms_of(term.formula, term.coefficient)) sum[symbol] += count;
    }
    return sum;
}

/// How many of `formula` a side has; 0 for none.
int coefficient_of(const std::vector<Term>& side, std::string_view formula) {
    for (const Term& term : side) {
        if (term.formula == formula) return term.coefficient;
    }
    return 0;
}

constexpr Substance metals[] = {Substance::magnesium, Substance::zinc,    Substance::aluminium,
                                Substance::iron,      Substance::calcium, Substance::lithium};
constexpr Substance others[] = {Substance::calcium_carbonate, Substance::sodium_hydrogencarbonate,
                                Substance::hydrogen_peroxide, Substance::potassium_chlorate};
constexpr Acid acids[] = {Acid::hydrochloric, Acid::sulfuric};

std::vector<Substance> all_with_an_equation() {
    std::vector<Substance> all(std::begin(metals), std::end(metals));
    all.insert(all.end(), std::begin(others), std::end(others));
    return all;
}

}  // namespace

TEST_CASE("every equation is balanced, and says what the numbers of the row say") {
    for (const Substance sample : all_with_an_equation()) {
        for (const Acid acid : acids) {
            const Reaction& row = reaction(sample, acid);
            INFO(row.equation);
            const Sides sides = sides_of(row.equation);
            const std::vector<Term>& before = sides.before;
            const std::vector<Term>& after = sides.after;
            CHECK(atoms_of(before) == atoms_of(after));
            CHECK(row.sample == coefficient_of(before, symbol_of(sample)));
            CHECK(row.acid == coefficient_of(before, formula_of(acid)));
            CHECK(row.gas == coefficient_of(after, formula_of(row.kind_of_gas)));
            CHECK(before.size() == (row.acid == 0 ? 1 : 2));
            if (is_metal(sample)) {
                REQUIRE(after.size() == 2);
                CHECK(row.salt == after[0].coefficient);
            } else {
                CHECK(row.salt == 0);
            }
            CHECK(row.gas_per_sample == doctest::Approx(static_cast<double>(row.gas) / row.sample).epsilon(1e-15));
            CHECK(row.acid_per_sample == doctest::Approx(static_cast<double>(row.acid) / row.sample).epsilon(1e-15));
        }
    }
}

TEST_CASE("the counting of atoms finds an equation that is not balanced") {
    const auto balanced = [](std::string_view equation) {
        const Sides sides = sides_of(equation);
        return atoms_of(sides.before) == atoms_of(sides.after);
    };
    CHECK(balanced("2Al+3H2SO4->Al2(SO4)3+3H2"));
    CHECK_FALSE(balanced("2Al+3H2SO4->Al2(SO4)3+2H2"));
    CHECK_FALSE(balanced("Mg+HCl->MgCl2+H2"));
    CHECK_FALSE(balanced("2KClO3->2KCl+O2"));
}

TEST_CASE("carbonates give carbon dioxide, peroxide and chlorate oxygen") {
    // Textbook stoichiometry: CO3 2- + 2 H+; HCO3 - + H+; 2 H2O2 = 2 H2O + O2; 2 KClO3 = 2 KCl + 3 O2.
    struct Row {
        Substance sample;
        Gas gas;
        double hydrochloric;
        double sulfuric;
        double gas_per_sample;
    };
    const Row rows[] = {
        {Substance::calcium_carbonate, Gas::carbon_dioxide, 2, 1, 1},
        {Substance::sodium_hydrogencarbonate, Gas::carbon_dioxide, 1, 0.5, 1},
        {Substance::hydrogen_peroxide, Gas::oxygen, 0, 0, 0.5},
        {Substance::potassium_chlorate, Gas::oxygen, 0, 0, 1.5},
    };
    for (const Row& row : rows) {
        INFO(std::string(key_of(row.sample)));
        for (const Acid acid : acids) {
            const Reaction& found = reaction(row.sample, acid);
            CHECK(found.kind_of_gas == row.gas);
            CHECK(found.gas_per_sample == row.gas_per_sample);
            CHECK(found.acid_per_sample == (acid == Acid::sulfuric ? row.sulfuric : row.hydrochloric));
            CHECK_FALSE(found.with_water);
            CHECK_FALSE(found.demonstration_only);
            CHECK_FALSE(found.slow);
            // A sulfate covers the lumps of a carbonate of calcium too.
            CHECK(found.coats == (row.sample == Substance::calcium_carbonate && acid == Acid::sulfuric));
        }
    }
}

TEST_CASE("moles of acid and gas a mole of metal") {
    // Stoichiometry: metal to the ion of charge 2, 3 or 1; one proton of HCl or two of H2SO4; two protons a molecule of
    // gas.
    struct Row {
        Substance metal;
        double hydrochloric;
        double sulfuric;
        double gas;
    };
    const Row rows[] = {
        {Substance::magnesium, 2, 1, 1}, {Substance::zinc, 2, 1, 1},          {Substance::calcium, 2, 1, 1},
        {Substance::iron, 2, 1, 1},      {Substance::aluminium, 3, 1.5, 1.5}, {Substance::lithium, 1, 0.5, 0.5},
    };
    for (const Row& row : rows) {
        INFO(std::string(key_of(row.metal)));
        CHECK(reaction(row.metal, Acid::hydrochloric).acid_per_sample == row.hydrochloric);
        CHECK(reaction(row.metal, Acid::sulfuric).acid_per_sample == row.sulfuric);
        CHECK(reaction(row.metal, Acid::hydrochloric).gas_per_sample == row.gas);
        CHECK(reaction(row.metal, Acid::sulfuric).gas_per_sample == row.gas);
    }
}

TEST_CASE("metals that take the water too, coat themselves or are slow") {
    for (const Substance metal : metals) {
        const bool is_active = metal == Substance::calcium || metal == Substance::lithium;
        for (const Acid acid : acids) {
            const Reaction& row = reaction(metal, acid);
            CHECK(row.with_water == is_active);
            CHECK(row.demonstration_only == is_active);
            CHECK(row.coats == (metal == Substance::calcium && acid == Acid::sulfuric));
            CHECK(row.slow == (metal == Substance::aluminium || metal == Substance::iron));
        }
    }
}

TEST_CASE("substances and acids are found by their keys") {
    for (const Substance sample : all_with_an_equation()) CHECK(substance_by_key(key_of(sample)) == sample);
    CHECK(substance_by_key("own") == Substance::own);
    for (const Acid acid : acids) CHECK(acid_by_key(key_of(acid)) == acid);
    CHECK(key_of(Substance::magnesium) == "magnesium");
    CHECK(key_of(Acid::sulfuric) == "sulfuric");
    CHECK_FALSE(substance_by_key(""));
    CHECK_FALSE(substance_by_key("Mg"));
    CHECK_FALSE(acid_by_key("nitric"));
}

TEST_CASE("the molar mass of a metal is its abridged atomic weight") {
    // IUPAC/CIAAW 2021, abridged.
    CHECK(molar_mass_of(Substance::magnesium).si() == doctest::Approx(0.024305).epsilon(1e-15));
    CHECK(molar_mass_of(Substance::zinc).si() == doctest::Approx(0.06538).epsilon(1e-15));
    CHECK(molar_mass_of(Substance::aluminium).si() == doctest::Approx(0.026982).epsilon(1e-15));
    CHECK(molar_mass_of(Substance::iron).si() == doctest::Approx(0.055845).epsilon(1e-15));
    CHECK(molar_mass_of(Substance::calcium).si() == doctest::Approx(0.040078).epsilon(1e-15));
    CHECK(molar_mass_of(Substance::lithium).si() == doctest::Approx(0.00694).epsilon(1e-15));
}

TEST_CASE("molar masses of compounds are the sums of their abridged atomic weights") {
    // IUPAC/CIAAW 2021, abridged: Ca 40.078, C 12.011, O 15.999, Na 22.990, H 1.0080, K 39.098, Cl 35.45, summed by hand.
    CHECK(molar_mass_of(Substance::calcium_carbonate).si() * 1e3 == doctest::Approx(100.086).epsilon(1e-12));
    CHECK(molar_mass_of(Substance::sodium_hydrogencarbonate).si() * 1e3 == doctest::Approx(84.006).epsilon(1e-12));
    CHECK(molar_mass_of(Substance::hydrogen_peroxide).si() * 1e3 == doctest::Approx(34.014).epsilon(1e-12));
    CHECK(molar_mass_of(Substance::potassium_chlorate).si() * 1e3 == doctest::Approx(122.545).epsilon(1e-12));
    CHECK(molar_mass_of(Substance::own).si() == 0);
    // Their bounds, summed by hand: 0.004 + 0.002 + 3 x 0.001; 0.001 + 0.0002 + 0.002 + 3 x 0.001; 0.001 + 0.01 + 0.003.
    CHECK(molar_mass_bounds_of(Substance::calcium_carbonate).si() * 1e3 == doctest::Approx(0.009).epsilon(1e-12));
    CHECK(molar_mass_bounds_of(Substance::sodium_hydrogencarbonate).si() * 1e3 == doctest::Approx(0.0062).epsilon(1e-12));
    CHECK(molar_mass_bounds_of(Substance::potassium_chlorate).si() * 1e3 == doctest::Approx(0.014).epsilon(1e-12));
    CHECK(molar_mass_bounds_of(Substance::magnesium).si() * 1e3 == doctest::Approx(0.002).epsilon(1e-12));
}

TEST_CASE("atomic numbers and the molar masses of the salts") {
    CHECK(atomic_number_of(Substance::magnesium) == 12);
    CHECK(atomic_number_of(Substance::lithium) == 3);
    for (const Substance sample : others) {
        CHECK(atomic_number_of(sample) == 0);
        CHECK(molar_mass_of_salt(sample, Acid::hydrochloric).si() == 0);
    }
    // g/mol by python3-periodictable 1.6.0 (formula('MgCl2').mass and so on), within the bounds of abridged weights.
    CHECK(molar_mass_of_salt(Substance::magnesium, Acid::hydrochloric).si() * 1e3 == doctest::Approx(95.211).epsilon(3e-4));
    CHECK(molar_mass_of_salt(Substance::aluminium, Acid::sulfuric).si() * 1e3 == doctest::Approx(342.1509).epsilon(3e-4));
    CHECK(molar_mass_of_salt(Substance::calcium, Acid::hydrochloric).si() * 1e3 == doctest::Approx(110.984).epsilon(3e-4));
}
