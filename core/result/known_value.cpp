#include "core/result/known_value.hpp"

#include "core/matter/constants.hpp"
#include "core/matter/elements.hpp"

namespace overwater {

namespace {

/// kg/mol; zero for a gas without a name.
double molar_mass_of_gas(Gas gas) {
    const auto weight = [](std::string_view symbol) { return element(symbol)->value * 1e-3; };
    switch (gas) {
        case Gas::hydrogen: return 2 * weight("H");
        case Gas::oxygen: return 2 * weight("O");
        case Gas::nitrogen: return 2 * weight("N");
        case Gas::carbon_dioxide: return weight("C") + 2 * weight("O");
        case Gas::methane: return weight("C") + 4 * weight("H");
        case Gas::helium:
        case Gas::other: break;
    }
    return 0;
}

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
        case Output::gas_molar_mass: return above_zero(molar_mass_of_gas(assessment.measured.setup.gas));
        case Output::molar_volume_bench:
        case Output::molar_volume_standard: return assessment.value(Output::accepted_value);
        default: return std::nullopt;
    }
}

}  // namespace overwater
