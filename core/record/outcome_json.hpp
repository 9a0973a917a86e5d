#pragma once

#include <string>
#include <vector>

#include "core/quantity/message.hpp"
#include "core/record/json.hpp"
#include "core/record/record.hpp"
#include "core/result/assess.hpp"

/// What follows from a record, as JSON for other programs (record.md, "The outcome").

namespace overwater {

/// The assessment of each run, in their order.
std::vector<Assessment> assess_runs(const Record& record);

/// All outputs, checks and conventions; `assessments` are those of the runs of `record`.
std::string outcome_to_json(const Record& record, const std::vector<Assessment>& assessments,
                            JsonLayout layout = JsonLayout::indented);

/// Why there is no outcome: the key and the arguments of a message. `source` says where the record came from.
std::string problem_to_json(const Message& problem, const std::string& source, JsonLayout layout = JsonLayout::indented);

}  // namespace overwater
