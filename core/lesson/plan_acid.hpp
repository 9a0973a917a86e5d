#pragma once

#include <vector>

#include "core/lesson/plan_sheet.hpp"

/// How much acid of which strength, and what it will be like.

namespace overwater {

struct PlanAcid {
    double needed = 0;           ///< mol
    double volume = 0;           ///< m³
    double concentration = 0;    ///< mol/m³
    double excess = 0;           ///< times the acid needed
    bool needs_consent = false;  ///< stronger than 3 mol/L
    bool slow = false;           ///< so dilute that the metal may take long
    bool brisk = false;          ///< so concentrated that much gas comes before the tube stands
    std::vector<Check> checks;   ///< of acid, its volume and its concentration
};

struct PlannedAcid {
    OutputState state;
    bool asks_consent = false;  ///< waits for the teacher's consent, not for a reading
    PlanAcid acid;
};

/// `run` is the expected sheet of a run, with its mass; what the teacher typed for the acid stands in `typed`. Volume and
/// concentration: one of them is found for the excess wanted; where both are typed, the excess is.
PlannedAcid plan_acid(const Entries& run, const Entries& typed, const Conventions& by_nature, const PlanAsked& asked);

}  // namespace overwater
