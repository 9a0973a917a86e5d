#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/lesson/plan_sheet.hpp"

/// The plan of a run as JSON text, for links and for the next visit: {"overwater": "plan", "version": 1, "bench": entries
/// as in record.md, "asked": the plan's own fields by name, "conventions": as in record.md}.

namespace overwater {

struct PlanLoad {
    std::optional<PlanSheet> sheet;
    Message problem{""};  ///< why there is no sheet
};

/// The plan in `text`, any bytes. The problem is one of those of `record_from_json`, or `plan.link.not_a_plan`,
/// `plan.link.newer`. Nothing of a faulty plan is taken.
PlanLoad plan_from_json(std::string_view text);

/// One line, members always in the same order. Bytes that are no UTF-8 become U+FFFD.
std::string plan_to_json(const PlanSheet& sheet);

}  // namespace overwater
