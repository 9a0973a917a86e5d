#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "core/quantity/quantity.hpp"

/// A metal and an acid that give hydrogen.

namespace overwater {

enum class Metal : std::uint8_t { magnesium, zinc, aluminium, iron, calcium, lithium };
enum class Acid : std::uint8_t { hydrochloric, sulfuric };

inline constexpr std::size_t metal_count = 6;
inline constexpr std::size_t acid_count = 2;

/// One term of an equation: 2 HCl.
struct Term {
    int coefficient;
    std::string_view formula; ///< plain ASCII: "Al2(SO4)3"
};

/// A balanced equation: metal + acid -> salt + hydrogen. Iron goes to iron(II). Both protons of sulfuric acid count.
struct Reaction {
    int metal; ///< coefficients of the equation
    int acid;
    int salt;
    int gas;
    std::string_view metal_formula;
    std::string_view acid_formula;
    std::string_view salt_formula;
    bool with_water;         ///< the metal reacts with the water too: the acid can never limit the gas
    bool demonstration_only; ///< calcium and lithium: no class amounts, teacher only
    bool coats;              ///< calcium sulfate covers the metal and stops it
    bool slow;               ///< aluminium's oxide skin, iron in dilute acid

    double gas_per_metal;  ///< mole of H2 a mole of metal
    double acid_per_metal; ///< mole of acid a mole of metal

    /// Metal, acid, salt, gas.
    constexpr std::array<Term, 4> terms() const {
        return {Term{metal, metal_formula}, Term{acid, acid_formula}, Term{salt, salt_formula}, Term{gas, "H2"}};
    }
};

const Reaction& reaction(Metal metal, Acid acid);

/// The equation in plain ASCII: "Mg + 2 HCl -> MgCl2 + H2".
std::string equation_plain(const Reaction& reaction);

/// Symbol of the element, "Mg".
std::string_view symbol_of(Metal metal);
/// Formula in plain ASCII, "HCl".
std::string_view formula_of(Acid acid);
/// Abridged standard atomic weight as a molar mass (elements.hpp).
MolarMass molar_mass_of(Metal metal);
/// Number of the element in the periodic table.
int atomic_number_of(Metal metal);
/// Of one formula unit of the salt, by what goes in and out of the equation.
MolarMass molar_mass_of_salt(Metal metal, Acid acid);

/// The name in records and keys: "magnesium", "hydrochloric".
std::string_view key_of(Metal metal);
std::string_view key_of(Acid acid);
std::optional<Metal> metal_by_key(std::string_view key);
std::optional<Acid> acid_by_key(std::string_view key);

} // namespace overwater
