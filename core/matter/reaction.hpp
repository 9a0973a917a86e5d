#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>

#include "core/matter/gas.hpp"
#include "core/quantity/quantity.hpp"

/// What is weighed, and the gas it gives: a metal with an acid, a carbonate with an acid, a substance that gives off
/// oxygen, or a reaction of one's own.

namespace overwater {

/// What is weighed. The metals come first.
enum class Substance : std::uint8_t {
    magnesium,
    zinc,
    aluminium,
    iron,
    calcium,
    lithium,
    calcium_carbonate,
    sodium_hydrogencarbonate,
    hydrogen_peroxide,
    potassium_chlorate,
    own  ///< molar mass, gas and ratios are typed
};
enum class Acid : std::uint8_t { hydrochloric, sulfuric };

inline constexpr std::size_t metal_count = 6;
inline constexpr std::size_t sample_count = 11;
inline constexpr std::size_t acid_count = 2;
/// Names in records and keys.
inline constexpr std::array<std::string_view, sample_count> substance_names{
    "magnesium", "zinc", "aluminium", "iron", "calcium", "lithium", "calcium_carbonate", "sodium_hydrogencarbonate",
    "hydrogen_peroxide", "potassium_chlorate", "own"};

constexpr bool is_metal(Substance sample) { return static_cast<std::size_t>(sample) < metal_count; }

/// A balanced equation. Iron goes to iron(II). Both protons of sulfuric acid count.
struct Reaction {
    int sample;  ///< coefficients of the equation
    int acid;    ///< 0: no acid takes part
    int salt;    ///< of a metal's salt; 0 for other samples
    int gas;
    std::string_view equation;  ///< ASCII without spaces: "Mg+2HCl->MgCl2+H2"; empty for an own reaction
    Gas kind_of_gas;
    bool with_water;          ///< the metal reacts with the water too: the acid can never limit the gas
    bool demonstration_only;  ///< calcium and lithium: no class amounts, teacher only
    bool coats;               ///< a sulfate of calcium covers the piece and stops it
    bool slow;                ///< aluminium's oxide skin, iron in dilute acid

    double gas_per_sample;   ///< mole of gas a mole of what is weighed
    double acid_per_sample;  ///< mole of acid a mole of what is weighed; 0: none takes part
};

const Reaction& reaction(Substance sample, Acid acid);

/// Formula in plain ASCII, "Mg", "CaCO3"; "X" for an own reaction.
std::string_view symbol_of(Substance sample);
/// Formula in plain ASCII, "HCl".
std::string_view formula_of(Acid acid);
/// From abridged standard atomic weights (elements.hpp); zero for an own reaction.
MolarMass molar_mass_of(Substance sample);
/// The same of a gas; zero for helium, which the table of the bench has not, and for another gas.
MolarMass molar_mass_of(Gas gas);
/// Bounds of the molar mass of what is weighed, as the sum of the weights' own; they hold for any normal material.
MolarMass molar_mass_bounds_of(Substance sample);
/// Number of a metal in the periodic table; 0 for other samples.
int atomic_number_of(Substance sample);
/// Of one formula unit of a metal's salt, by what goes in and out of the equation; zero for other samples.
MolarMass molar_mass_of_salt(Substance sample, Acid acid);

/// The name in records and keys: "magnesium", "hydrochloric".
std::string_view key_of(Substance sample);
std::string_view key_of(Acid acid);
std::optional<Substance> substance_by_key(std::string_view key);
std::optional<Acid> acid_by_key(std::string_view key);

}  // namespace overwater
