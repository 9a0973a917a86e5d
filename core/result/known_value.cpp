#include "core/result/known_value.hpp"

#include "core/matter/constants.hpp"
#include "core/matter/reaction.hpp"

namespace overwater {

double known_otherwise(const Readings& readings, const Setup& setup, Output output) {
    const double weighed = readings.sample ? molar_mass_of(*readings.sample).si() : 0.0;
    switch (output) {
        case Output::gas_constant: return gas_constant.si();
        case Output::molar_mass_found: return weighed;
        case Output::equivalent_mass: return weighed / (2 * setup.gas_per_sample);
        case Output::gas_molar_mass: return molar_mass_of(setup.gas).si();
        default: return 0.0;
    }
}

std::optional<double> known_value(const Assessment& assessment, Output output) {
    if (!assessment.has(output)) return std::nullopt;
    if (is_molar_volume(output)) return assessment.value(Output::accepted_value);
    const double known = known_otherwise(assessment.readings, assessment.measured.setup, output);
    return known > 0 ? std::optional(known) : std::nullopt;
}

}  // namespace overwater
