#include "core/matter/molar_mass.hpp"

#include <algorithm>

#include "core/matter/periodic_table.hpp"

namespace overwater {

MolarMassReading molar_mass(const ChemicalFormula& formula) {
    MolarMassReading reading;
    double value = 0.0;
    double plus_minus = 0.0;
    double lowest = 0.0;
    double highest = 0.0;
    for (const ElementCount& one : formula.atoms) {
        const std::optional<AtomicWeight> weight = standard_atomic_weight(one.atomic_number);
        if (!weight) {
            reading.mass = {};
            reading.problem.kind = FormulaProblemKind::no_weight;
            reading.problem.at = one.at;
            reading.problem.length = one.length;
            return reading;
        }
        value += one.count * weight->value;
        plus_minus += one.count * weight->plus_minus;
        lowest += one.count * weight->lowest;
        highest += one.count * weight->highest;
        reading.mass.decimals = std::min(reading.mass.decimals, weight->decimals);
    }
    // Added up in g/mol: one atom gives the same bits as AtomicWeight::molar_mass.
    reading.mass.value = MolarMass::si(value * 1e-3);
    reading.mass.plus_minus = MolarMass::si(plus_minus * 1e-3);
    reading.mass.lowest = MolarMass::si(lowest * 1e-3);
    reading.mass.highest = MolarMass::si(highest * 1e-3);
    return reading;
}

std::optional<double> mass_fraction(const ChemicalFormula& formula, int atomic_number) {
    const MolarMassReading all = molar_mass(formula);
    if (!all.problem.none() || all.mass.value.si() <= 0.0) return std::nullopt;
    const int count = formula.count_of(atomic_number);
    if (count == 0) return 0.0;
    return count * standard_atomic_weight(atomic_number)->molar_mass().si() / all.mass.value.si();
}

}  // namespace overwater
