#include "core/lesson/slip_parts.hpp"

namespace overwater {

SlipParts::SlipParts(const Assessment& run, const Outcome<double>& carried) : run_(run), carried_(carried) {
    const auto part = [this](SlipPart which) -> Part& { return parts_[static_cast<std::size_t>(which)]; };
    for (std::size_t i = 0; i < slip_count; ++i) {
        const auto slip = static_cast<SlipIndex>(i);
        if (can_happen(slip, run)) part(slip_table[i].part).slips.push_back(slip);
    }
    const auto there = [&](std::initializer_list<Output> list) {
        OutputSet set;
        for (const Output output : list) {
            if (run.has(output) && !carried.ready.has(output)) set.add(output);
        }
        return set;
    };
    const auto hand_on = [&](SlipPart which, std::initializer_list<Output> list) {
        for (const Output output : list) {
            if (part(which).computed.has(output)) part(which).handed_on.push_back(output);
        }
    };
    // Where the gas at the start stood at another pressure, the volume is found from both in the last steps.
    part(SlipPart::volume).computed = run.measured.setup.start_level_known
                                          ? there({Output::gas_at_end, Output::gas_at_start})
                                          : there({Output::water_density, Output::gas_at_end, Output::gas_at_start,
                                                   Output::gas_volume});
    hand_on(SlipPart::volume, {Output::gas_at_end, Output::gas_at_start, Output::gas_volume});
    part(SlipPart::pressure).computed =
        there({Output::water_vapour_pressure, Output::water_density, Output::pressure_at_bench,
               Output::column_pressure, Output::dry_gas_pressure, Output::start_dry_pressure});
    hand_on(SlipPart::pressure, {Output::dry_gas_pressure, Output::start_dry_pressure, Output::pressure_at_bench,
                                 Output::water_vapour_pressure, Output::column_pressure});
    part(SlipPart::amount).computed = there({Output::mass, Output::amount_of_metal});
    hand_on(SlipPart::amount, {Output::mass, Output::amount_of_metal});
}

void SlipParts::want(OutputSet outputs) {
    // What each of the last steps needs of the others.
    OutputSet last = OutputSet::of(Output::absolute_temperature, Output::compression_factor,
                             Output::standard_compression_factor, Output::gas_volume, Output::amount_of_acid,
                             Output::amount_of_gas);
    if (outputs.has(Output::percent_error)) {
        outputs.add(sought_output(run_.measured.setup.converted, run_.measured.setup.target));
    }
    const bool by_volume = outputs.meets(OutputSet::span(Output::amount_by_volume, Output::gas_molar_mass));
    const bool compared = outputs.has(Output::accepted_value) || outputs.has(Output::percent_error) || by_volume;
    for (std::size_t i = 0; i < output_count; ++i) {
        const auto output = static_cast<Output>(i);
        const bool between = (by_volume && (output == Output::volume_at_standard || output == Output::amount_by_volume)) ||
                             (compared && (is_molar_volume(output) || output == Output::accepted_value));
        if (between || outputs.has(output)) last.add(output);
    }
    if (!compared) parts_[static_cast<std::size_t>(SlipPart::comparison)].slips.clear();
    last_ = OutputSet{};
    OutputSet settled = carried_.ready;
    for (const Part& part : parts_) {
        for (std::size_t i = 0; i < output_count; ++i) {
            if (part.computed.has(static_cast<Output>(i))) settled.add(static_cast<Output>(i));
        }
    }
    last = last - settled;
    for (std::size_t i = 0; i < output_count; ++i) {
        const auto output = static_cast<Output>(i);
        if (last.has(output) && run_.has(output)) last_.add(output);
    }
}

}  // namespace overwater
