#include "core/lesson/sheet_steps.hpp"

#include <algorithm>
#include <iterator>
#include <span>

#include "core/result/assess.hpp"

namespace overwater {

namespace {

constexpr Output chain[]{Output::gas_volume,         Output::water_vapour_pressure, Output::dry_gas_pressure,
                         Output::amount_of_metal,    Output::amount_of_gas,         Output::volume_at_standard,
                         Output::molar_volume_standard};
constexpr Output chain_as_collected[]{Output::gas_volume, Output::amount_of_metal, Output::amount_of_gas,
                                      Output::molar_volume_bench};
constexpr Output chain_to_constant[]{Output::gas_volume,      Output::water_vapour_pressure, Output::dry_gas_pressure,
                                     Output::amount_of_metal, Output::amount_of_gas,         Output::gas_constant};
/// By the volume at standard conditions or by the gas law at once: what both have.
constexpr Output chain_by_volume[]{Output::gas_volume, Output::water_vapour_pressure, Output::dry_gas_pressure,
                                   Output::amount_by_volume};

std::span<const Output> chain_to(Output sought) {
    if (sought == Output::molar_volume_standard) return chain;
    if (sought == Output::molar_volume_bench) return chain_as_collected;
    if (sought == Output::gas_constant) return chain_to_constant;
    return chain_by_volume;
}

Setup setup_of(const Record& record, std::size_t run) {
    return measured_from(readings_of(record, run), record.conventions).setup;
}

}  // namespace

std::vector<SheetStep> sheet_steps(const Record& record) {
    std::vector<SheetStep> steps;
    const Output sought = sought_output(record);
    for (std::size_t i = 0; i < record.runs.size(); ++i) {
        for (const Output output : chain_to(sought)) {
            if (output == Output::water_vapour_pressure && !is_taken_off(setup_of(record, i).vapour)) continue;
            steps.push_back({output, static_cast<int>(i), false});
        }
        if (is_by_volume(sought)) steps.push_back({sought, static_cast<int>(i), false});
    }
    const auto counted = std::count_if(record.runs.begin(), record.runs.end(), [](const Run& run) { return run.counts(); });
    if (counted > 1) steps.push_back({sought, -1, true});
    if (is_molar_volume(sought) || setup_of(record, 0).known != 0) steps.push_back({Output::percent_error, -1, false});
    return steps;
}

std::string_view step_name(const SheetStep& step) { return step.mean ? "mean" : name_of(step.output); }

bool is_on_a_sheet(Output output) {
    return std::find(std::begin(chain), std::end(chain), output) != std::end(chain) ||
           output == Output::molar_volume_bench || output == Output::gas_constant ||
           output == Output::amount_by_volume || is_by_volume(output) || output == Output::percent_error;
}

const std::vector<Answer>& answers_of(const Record& record, const SheetStep& step) {
    return step.run < 0 ? record.answers : record.runs[static_cast<std::size_t>(step.run)].answers;
}
std::vector<Answer>& answers_of(Record& record, const SheetStep& step) {
    return step.run < 0 ? record.answers : record.runs[static_cast<std::size_t>(step.run)].answers;
}

}  // namespace overwater
