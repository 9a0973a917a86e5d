#pragma once

#include <optional>
#include <span>
#include <string_view>

#include "core/quantity/quantity.hpp"

/// Standard atomic weights of what this experiment meets: IUPAC/CIAAW 2021, Prohaska et al., Pure Appl. Chem. 94 (2022)
/// 573, Table 1. All elements: periodic_table.hpp.

namespace overwater {

/// The standard atomic weight of one element (relative, that is also in g/mol).
struct AtomicWeight {
    std::string_view symbol;
    double value;      ///< abridged standard atomic weight
    double plus_minus; ///< bounds of the abridged value, which hold for any normal material
    int decimals;      ///< decimals of the abridged value as printed
    double lowest;     ///< where CIAAW gives an interval, its ends; else the unabridged value minus its uncertainty
    double highest;    ///< ... and plus its uncertainty
    bool is_interval;  ///< CIAAW gives an interval, because the element's weight varies in nature

    /// The abridged value as a molar mass.
    constexpr MolarMass molar_mass() const { return MolarMass::si(value * 1e-3); }
};

/// The element with this symbol ("Mg", capitals count), or nothing if the table does not have it.
std::optional<AtomicWeight> element(std::string_view symbol);

/// All elements of the table, in the order of their numbers.
std::span<const AtomicWeight> elements();

} // namespace overwater
