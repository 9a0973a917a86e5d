#pragma once

#include <optional>
#include <span>
#include <string_view>

#include "core/matter/elements.hpp"

/// All elements: symbols, and the standard atomic weight of those that have one.

namespace overwater {

/// Hydrogen has the number 1, oganesson 118.
inline constexpr int last_atomic_number = 118;

/// The symbol of the element with this atomic number, 1 to 118 ("Mg" for 12); empty outside. Source: IUPAC.
std::string_view element_symbol(int atomic_number);

/// The atomic number of a symbol ("Mg", capitals count), or nothing if no element has it.
std::optional<int> atomic_number(std::string_view symbol);

/// IUPAC/CIAAW 2021 (weight_table.hpp). Nothing for an element without a standard atomic weight (Tc, Pm, Po to Ac, Np and
/// beyond: no isotopic composition that is characteristic on Earth) and for a number outside 1 to 118.
std::optional<AtomicWeight> standard_atomic_weight(int atomic_number);

/// The 84 elements that have a standard atomic weight, by atomic number.
std::span<const AtomicWeight> standard_atomic_weights();

}  // namespace overwater
