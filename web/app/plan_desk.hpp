#pragma once

#include "core/lesson/plan.hpp"

namespace overwater {

/// What the plan page holds; nothing of it is in the record that is open.
struct PlanDesk {
    PlanSheet sheet;
};

}  // namespace overwater
