#include "core/result/known_value.hpp"

#include "core/matter/constants.hpp"
#include "core/matter/reaction.hpp"

namespace overwater {

namespace {

std::optional<double> above_zero(double value) { return value > 0 ? std::optional(value) : std::nullopt; }

}  // namespace

std::optional<double> known_value(const Assessment& assessment, Output output) {
    if (!assessment.has(output)) return std::nullopt;
    const Readings& readings = assessment.readings;
    const double weighed = readings.sample ? molar_mass_of(*readings.sample).si() : 0.0;
    switch (output) {
        case Output::gas_constant: return gas_constant.si();
        case Output::molar_mass_found: return above_zero(weighed);
        case Output::equivalent_mass: return above_zero(weighed / (2 * assessment.measured.setup.gas_per_sample));
        case Output::gas_molar_mass: return above_zero(molar_mass_of(assessment.measured.setup.gas).si());
        case Output::molar_volume_bench:
        case Output::molar_volume_standard: return assessment.value(Output::accepted_value);
        default: return std::nullopt;
    }
}

}  // namespace overwater
