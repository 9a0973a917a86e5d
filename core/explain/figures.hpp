#pragma once

#include <vector>

#include "core/bench/readings.hpp"
#include "core/result/traced.hpp"

namespace overwater {

/// How far the digits of a number may be trusted by the school rule: sums keep the coarsest place, products the fewest
/// figures; exact numbers are exempt (method.md, section 5).
struct Precision {
    bool exact = true;
    double resolution = 0;  ///< in the base unit: the value of the last significant digit
};

/// Significant figures of `value`, at least 1; 15 for an exact number.
int figures_of(Precision precision, double value);
/// Decimals that show `figures` significant figures of `value`, 0 to 12.
int decimals_for(double value, int figures);

/// What the school rule makes of each node of a trace, in the order of the nodes.
struct Figured {
    double value = 0;  ///< where steps are rounded, computed from the rounded ones
    Precision precision;
};

/// Carries significant figures through a trace. With `round_steps` each named step is rounded to one digit more than is
/// significant, as it is written down in the working: what a class gets that rounds at each step.
std::vector<Figured> figures_through(const Trace& trace, const Readings& readings, bool round_steps);

}  // namespace overwater
