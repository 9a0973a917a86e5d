#pragma once

#include <cmath>

#include "core/record/plan_json.hpp"
#include "tests/fuzz/property.hpp"

/// Plans as JSON text.

namespace overwater::fuzz {

inline std::string_view holds_for_plan(std::string_view bytes) {
    const PlanLoad load = plan_from_json(bytes);
    if (load.sheet.has_value() != load.problem.key.empty()) return "a plan is taken, or it says why not";
    if (!load.sheet) return is_said(load.problem) ? kept : "each problem has its sentence";

    const PlanAsked asked = read_asked(*load.sheet);
    for (const double number : {asked.least_share, asked.most_share, asked.share, asked.temperature_within,
                                asked.pressure_within, asked.mouth_space, asked.excess, asked.spare}) {
        if (!std::isfinite(number) || number < 0) return "what a plan asks for is finite and not below zero";
    }
    if (asked.runs < 1 || (asked.groups && (*asked.groups < 1 || *asked.groups > most_groups)))
        return "a class has groups and runs";
    for (const PlanCheck& check : asked.checks) {
        if (!is_said(check.message)) return "each remark has its sentence";
    }

    const std::string text = plan_to_json(*load.sheet);
    const PlanLoad again = plan_from_json(text);
    if (!again.sheet) return "what was written can be read";
    if (again.sheet->bench != load.sheet->bench) return "the bench comes back";
    if (again.sheet->asked != load.sheet->asked) return "what was asked comes back";
    if (again.sheet->conventions != load.sheet->conventions) return "the conventions come back";
    return plan_to_json(*again.sheet) == text ? kept : "equal plans have equal texts";
}

}  // namespace overwater::fuzz
