#include "core/matter/reaction.hpp"

#include "core/matter/elements.hpp"

namespace overwater {
namespace {

constexpr std::array<std::string_view, sample_count> sample_formulas{
    "Mg", "Zn", "Al", "Fe", "Ca", "Li", "CaCO3", "NaHCO3", "H2O2", "KClO3", "X"};
constexpr std::array<std::string_view, acid_count> acid_keys{"hydrochloric", "sulfuric"};
constexpr std::array<std::string_view, acid_count> acid_formulas{"HCl", "H2SO4"};

constexpr Reaction row(int sample, int acid, int salt, int gas, std::string_view equation, Gas kind = Gas::hydrogen) {
    Reaction result{};
    result.sample = sample;
    result.acid = acid;
    result.salt = salt;
    result.gas = gas;
    result.equation = equation;
    result.kind_of_gas = kind;
    result.gas_per_sample = static_cast<double>(gas) / sample;
    result.acid_per_sample = static_cast<double>(acid) / sample;
    result.coats = equation.find("CaSO4") != std::string_view::npos;
    return result;
}

constexpr Reaction with_water(Reaction result) {
    result.with_water = result.demonstration_only = true;
    return result;
}

constexpr Reaction slow(Reaction result) {
    result.slow = true;
    return result;
}

constexpr Reaction of_peroxide = row(2, 0, 0, 1, "2H2O2->2H2O+O2", Gas::oxygen);
constexpr Reaction of_chlorate = row(2, 0, 0, 3, "2KClO3->2KCl+3O2", Gas::oxygen);
constexpr Reaction own_reaction = row(1, 0, 0, 1, "", Gas::other);

// Balanced by counting atoms (tests/core/matter_reaction.cpp does it again).
constexpr std::array<std::array<Reaction, acid_count>, sample_count> table{{
    {row(1, 2, 1, 1, "Mg+2HCl->MgCl2+H2"), row(1, 1, 1, 1, "Mg+H2SO4->MgSO4+H2")},
    {row(1, 2, 1, 1, "Zn+2HCl->ZnCl2+H2"), row(1, 1, 1, 1, "Zn+H2SO4->ZnSO4+H2")},
    {slow(row(2, 6, 2, 3, "2Al+6HCl->2AlCl3+3H2")), slow(row(2, 3, 1, 3, "2Al+3H2SO4->Al2(SO4)3+3H2"))},
    {slow(row(1, 2, 1, 1, "Fe+2HCl->FeCl2+H2")), slow(row(1, 1, 1, 1, "Fe+H2SO4->FeSO4+H2"))},
    {with_water(row(1, 2, 1, 1, "Ca+2HCl->CaCl2+H2")), with_water(row(1, 1, 1, 1, "Ca+H2SO4->CaSO4+H2"))},
    {with_water(row(2, 2, 2, 1, "2Li+2HCl->2LiCl+H2")), with_water(row(2, 1, 1, 1, "2Li+H2SO4->Li2SO4+H2"))},
    {row(1, 2, 0, 1, "CaCO3+2HCl->CaCl2+H2O+CO2", Gas::carbon_dioxide),
     row(1, 1, 0, 1, "CaCO3+H2SO4->CaSO4+H2O+CO2", Gas::carbon_dioxide)},
    {row(1, 1, 0, 1, "NaHCO3+HCl->NaCl+H2O+CO2", Gas::carbon_dioxide),
     row(2, 1, 0, 2, "2NaHCO3+H2SO4->Na2SO4+2H2O+2CO2", Gas::carbon_dioxide)},
    {of_peroxide, of_peroxide},
    {of_chlorate, of_chlorate},
    {own_reaction, own_reaction},
}};

/// Walks over the symbols of a formula without parentheses: `each(atomic weight, count)`.
template <class Each>
void for_each_element(std::string_view formula, Each each) {
    for (std::size_t at = 0; at < formula.size();) {
        std::size_t end = at + 1;
        while (end < formula.size() && formula[end] >= 'a' && formula[end] <= 'z') ++end;
        const auto weight = element(formula.substr(at, end - at));
        int count = 0;
        for (; end < formula.size() && formula[end] >= '0' && formula[end] <= '9'; ++end) {
            count = 10 * count + (formula[end] - '0');
        }
        if (weight) each(*weight, count == 0 ? 1 : count);
        at = end;
    }
}

MolarMass mass_of_formula(std::string_view formula) {
    MolarMass sum{};
    for_each_element(formula, [&](const AtomicWeight& weight, int count) {
        sum = sum + static_cast<double>(count) * weight.molar_mass();
    });
    return sum;
}

}  // namespace

const Reaction& reaction(Substance sample, Acid acid) {
    return table[static_cast<std::size_t>(sample)][static_cast<std::size_t>(acid)];
}

std::string_view symbol_of(Substance sample) { return sample_formulas[static_cast<std::size_t>(sample)]; }
std::string_view formula_of(Acid acid) { return acid_formulas[static_cast<std::size_t>(acid)]; }
MolarMass molar_mass_of(Substance sample) { return mass_of_formula(symbol_of(sample)); }

MolarMass molar_mass_of(Gas gas) { return mass_of_formula(formula_of(gas)); }

MolarMass molar_mass_bounds_of(Substance sample) {
    double sum = 0;
    for_each_element(symbol_of(sample), [&](const AtomicWeight& weight, int count) { sum += count * weight.plus_minus; });
    return MolarMass::si(sum * 1e-3);
}

int atomic_number_of(Substance sample) {
    constexpr std::array<int, metal_count> numbers{12, 30, 13, 26, 20, 3};
    return is_metal(sample) ? numbers[static_cast<std::size_t>(sample)] : 0;
}

MolarMass molar_mass_of_salt(Substance sample, Acid acid) {
    const Reaction& all = reaction(sample, acid);
    if (all.salt == 0) return {};
    const MolarMass salts = static_cast<double>(all.sample) * molar_mass_of(sample) +
                            static_cast<double>(all.acid) * mass_of_formula(formula_of(acid)) -
                            static_cast<double>(all.gas) * mass_of_formula("H2");
    return salts / static_cast<double>(all.salt);
}

std::string_view key_of(Substance sample) { return substance_names[static_cast<std::size_t>(sample)]; }
std::string_view key_of(Acid acid) { return acid_keys[static_cast<std::size_t>(acid)]; }
std::optional<Substance> substance_by_key(std::string_view key) { return choice_named<Substance>(substance_names, key); }
std::optional<Acid> acid_by_key(std::string_view key) { return choice_named<Acid>(acid_keys, key); }

}  // namespace overwater
