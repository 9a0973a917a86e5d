#pragma once

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

/// Carried through the tree of `node`.
Precision precision_of(const Trace& trace, std::int32_t node, const Readings& readings);

/// Decimals that show `figures` significant figures of `value`, 0 to 12.
int decimals_for(double value, int figures);

}  // namespace overwater
