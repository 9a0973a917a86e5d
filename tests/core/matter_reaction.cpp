#include <doctest/doctest.h>

#include <cctype>
#include <map>
#include <string>

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

void add(Atoms& sum, const Term& term) {
    for (const auto& [symbol, count] : atoms_of(term.formula, term.coefficient)) sum[symbol] += count;
}

constexpr Substance metals[] = {Substance::magnesium, Substance::zinc,    Substance::aluminium,
                            Substance::iron,      Substance::calcium, Substance::lithium};
constexpr Acid acids[] = {Acid::hydrochloric, Acid::sulfuric};

} // namespace

TEST_CASE("every equation is balanced") {
    for (const Substance metal : metals) {
        for (const Acid acid : acids) {
            const Reaction& row = reaction(metal, acid);
            INFO(equation_plain(row));
            const auto terms = row.terms();
            Atoms before;
            Atoms after;
            add(before, terms[0]);
            add(before, terms[1]);
            add(after, terms[2]);
            add(after, terms[3]);
            CHECK(before == after);
            CHECK(row.metal_formula == symbol_of(metal));
            CHECK(row.acid_formula == formula_of(acid));
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

TEST_CASE("equations in plain text") {
    CHECK(equation_plain(reaction(Substance::magnesium, Acid::hydrochloric)) == "Mg + 2 HCl -> MgCl2 + H2");
    CHECK(equation_plain(reaction(Substance::aluminium, Acid::sulfuric)) == "2 Al + 3 H2SO4 -> Al2(SO4)3 + 3 H2");
    CHECK(equation_plain(reaction(Substance::lithium, Acid::sulfuric)) == "2 Li + H2SO4 -> Li2SO4 + H2");
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

TEST_CASE("metals and acids are found by their keys") {
    for (const Substance metal : metals) CHECK(substance_by_key(key_of(metal)) == metal);
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

TEST_CASE("atomic numbers and the molar masses of the salts") {
    CHECK(atomic_number_of(Substance::magnesium) == 12);
    CHECK(atomic_number_of(Substance::lithium) == 3);
    // g/mol by python3-periodictable 1.6.0 (formula('MgCl2').mass and so on), within the bounds of abridged weights.
    CHECK(molar_mass_of_salt(Substance::magnesium, Acid::hydrochloric).si() * 1e3 == doctest::Approx(95.211).epsilon(3e-4));
    CHECK(molar_mass_of_salt(Substance::aluminium, Acid::sulfuric).si() * 1e3 == doctest::Approx(342.1509).epsilon(3e-4));
    CHECK(molar_mass_of_salt(Substance::calcium, Acid::hydrochloric).si() * 1e3 == doctest::Approx(110.984).epsilon(3e-4));
}
