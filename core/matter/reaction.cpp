#include "core/matter/reaction.hpp"

#include "core/matter/elements.hpp"

namespace overwater {
namespace {

constexpr std::array<std::string_view, metal_count> metal_keys{"magnesium", "zinc",    "aluminium",
                                                               "iron",      "calcium", "lithium"};
constexpr std::array<std::string_view, metal_count> metal_symbols{"Mg", "Zn", "Al", "Fe", "Ca", "Li"};
constexpr std::array<std::string_view, acid_count> acid_keys{"hydrochloric", "sulfuric"};
constexpr std::array<std::string_view, acid_count> acid_formulas{"HCl", "H2SO4"};

constexpr Reaction row(int metal, std::string_view metal_formula, int acid, std::string_view acid_formula, int salt,
                       std::string_view salt_formula, int gas) {
    Reaction result{};
    result.metal = metal;
    result.acid = acid;
    result.salt = salt;
    result.gas = gas;
    result.metal_formula = metal_formula;
    result.acid_formula = acid_formula;
    result.salt_formula = salt_formula;
    result.gas_per_metal = static_cast<double>(gas) / metal;
    result.acid_per_metal = static_cast<double>(acid) / metal;
    const bool with_water = metal_formula == "Ca" || metal_formula == "Li";
    result.with_water = with_water;
    result.demonstration_only = with_water;
    result.coats = salt_formula == "CaSO4";
    result.slow = metal_formula == "Al" || metal_formula == "Fe";
    return result;
}

// Balanced by counting atoms and charges (tests/core/matter_reaction.cpp does it again).
constexpr std::array<std::array<Reaction, acid_count>, metal_count> table{{
    {row(1, "Mg", 2, "HCl", 1, "MgCl2", 1), row(1, "Mg", 1, "H2SO4", 1, "MgSO4", 1)},
    {row(1, "Zn", 2, "HCl", 1, "ZnCl2", 1), row(1, "Zn", 1, "H2SO4", 1, "ZnSO4", 1)},
    {row(2, "Al", 6, "HCl", 2, "AlCl3", 3), row(2, "Al", 3, "H2SO4", 1, "Al2(SO4)3", 3)},
    {row(1, "Fe", 2, "HCl", 1, "FeCl2", 1), row(1, "Fe", 1, "H2SO4", 1, "FeSO4", 1)},
    {row(1, "Ca", 2, "HCl", 1, "CaCl2", 1), row(1, "Ca", 1, "H2SO4", 1, "CaSO4", 1)},
    {row(2, "Li", 2, "HCl", 2, "LiCl", 1), row(2, "Li", 1, "H2SO4", 1, "Li2SO4", 1)},
}};

template <class Choice, std::size_t Count>
std::optional<Choice> find(const std::array<std::string_view, Count>& keys, std::string_view key) {
    for (std::size_t i = 0; i < Count; ++i) {
        if (keys[i] == key) return static_cast<Choice>(i);
    }
    return std::nullopt;
}

void append(std::string& text, Term term) {
    if (term.coefficient != 1) {
        text += std::to_string(term.coefficient);
        text += ' ';
    }
    text += term.formula;
}

} // namespace

const Reaction& reaction(Metal metal, Acid acid) {
    return table[static_cast<std::size_t>(metal)][static_cast<std::size_t>(acid)];
}

std::string equation_plain(const Reaction& reaction) {
    constexpr std::array<std::string_view, 4> before{"", "+", "->", "+"};
    const std::array<Term, 4> terms = reaction.terms();
    std::string text;
    for (std::size_t i = 0; i < terms.size(); ++i) {
        if (i != 0) {
            text += ' ';
            text += before[i];
            text += ' ';
        }
        append(text, terms[i]);
    }
    return text;
}

std::string_view symbol_of(Metal metal) { return metal_symbols[static_cast<std::size_t>(metal)]; }
std::string_view formula_of(Acid acid) { return acid_formulas[static_cast<std::size_t>(acid)]; }
MolarMass molar_mass_of(Metal metal) { return element(symbol_of(metal))->molar_mass(); }
int atomic_number_of(Metal metal) {
    constexpr std::array<int, metal_count> numbers{12, 30, 13, 26, 20, 3};
    return numbers[static_cast<std::size_t>(metal)];
}

MolarMass molar_mass_of_salt(Metal metal, Acid acid) {
    const auto of = [](std::string_view symbol) { return element(symbol)->molar_mass(); };
    const MolarMass acid_mass = acid == Acid::hydrochloric ? of("H") + of("Cl")
                                                           : 2.0 * of("H") + of("S") + 4.0 * of("O");
    const Reaction& all = reaction(metal, acid);
    const MolarMass salts = static_cast<double>(all.metal) * molar_mass_of(metal) +
                            static_cast<double>(all.acid) * acid_mass - static_cast<double>(2 * all.gas) * of("H");
    return salts / static_cast<double>(all.salt);
}

std::string_view key_of(Metal metal) { return metal_keys[static_cast<std::size_t>(metal)]; }
std::string_view key_of(Acid acid) { return acid_keys[static_cast<std::size_t>(acid)]; }
std::optional<Metal> metal_by_key(std::string_view key) { return find<Metal>(metal_keys, key); }
std::optional<Acid> acid_by_key(std::string_view key) { return find<Acid>(acid_keys, key); }

} // namespace overwater
