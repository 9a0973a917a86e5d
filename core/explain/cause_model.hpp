#pragma once

#include <optional>

#include "core/explain/gap.hpp"

/// What a cause does to the readings of a run. The result comes from the one model (evaluate.hpp) each time.

namespace overwater {

/// Readings, the outputs that they give, and the one that is explained.
struct Bench {
    Measured<double> measured;
    OutputSet ready;
    Output explained;
};
Bench bench_of(const Assessment& assessment);

/// The result that is explained, SI; nothing where it is not finite and above zero.
std::optional<double> result_of(const Bench& bench);

/// The readings that would have been put down had `size` of the cause been at work, where `bench` has the truth.
Bench falsified(const Bench& bench, Cause cause, double size);

/// The truth, where `size` of the cause was at work and `bench` has what was put down: undoes `falsified` exactly.
Bench corrected(const Bench& bench, Cause cause, double size);

/// What one run leaves a cause to do. Sizes in the base unit of the cause's unit, none below zero.
struct Reach {
    bool raises;
    bool lowers;
    double usual;          ///< as in CauseInfo, for this run
    double largest;        ///< as in CauseInfo, for this run
    double most_raising;   ///< beyond it there is no such thing: no volume below zero, no water above 100 °C
    double most_lowering;
};
/// Nothing where a run like this cannot have the cause.
std::optional<Reach> reach_of(const Assessment& assessment, Cause cause);

}  // namespace overwater
