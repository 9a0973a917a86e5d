#pragma once

#include <optional>

#include "core/matter/chemical_formula.hpp"
#include "core/quantity/quantity.hpp"

/// What a formula weighs. Atomic weights: weight_table.hpp.

namespace overwater {

/// The molar mass of a formula. The bounds hold for any normal material: as one sample may have all its elements at the
/// same end, they are added up and not as squares.
struct FormulaMass {
    MolarMass value{};       ///< from the abridged standard atomic weights
    MolarMass plus_minus{};  ///< from their bounds
    MolarMass lowest{};      ///< from the ends of the intervals, or the unabridged weights and their uncertainties ...
    MolarMass highest{};     ///< ... and so narrower than `plus_minus` says
    int decimals = 4;        ///< in g/mol: those of the element with the fewest, as printed in the abridged table
};

struct MolarMassReading {
    FormulaMass mass{};
    /// `no_weight` with the place of the first element that has no standard atomic weight; the mass is zero then.
    FormulaProblem problem{};
};

/// The molar mass of one formula unit, of the whole text with its water of crystallization. The mass of electrons is
/// neglected, as usual: an ion weighs what its atoms weigh (0.0005 g/mol for each charge), e- nothing.
MolarMassReading molar_mass(const ChemicalFormula& formula);

/// The share of the element in the mass, 0 to 1, from the abridged weights; 0 if the formula has none of it. Nothing if the
/// molar mass is not known or zero.
std::optional<double> mass_fraction(const ChemicalFormula& formula, int atomic_number);

}  // namespace overwater
