#pragma once

#include "core/lesson/plan.hpp"

namespace overwater {

/// What the plan page holds; nothing of it is in the record that is open.
struct PlanDesk {
    PlanSheet sheet;
    Plan plan;                  ///< of the sheet; worked out once for each change
    bool known = false;         ///< `plan` is that of the sheet
    bool own = false;           ///< typed, kept or from a link; else the sheet is that of the open record
    bool linked = false;        ///< from a link and not kept yet: what was kept before is still there
    bool show_reading = false;  ///< the reading to be expected, on the bench cards
};

}  // namespace overwater
