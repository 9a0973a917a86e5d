#pragma once

#include <optional>
#include <vector>

#include "core/bench/readings.hpp"
#include "core/quantity/number_format.hpp"
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
/// significant, as it is written down in the working: what a class gets that rounds at each step; ties by `rounding`.
std::vector<Figured> figures_through(const Trace& trace, const Readings& readings, bool round_steps,
                                     Rounding rounding = Rounding::half_up);

/// The reading that decides how many figures a result has.
struct Limit {
    Input input = Input::count;       ///< the reading; Input::count where a table's digits decide
    Output quantity = Output::count;  ///< the step in whose sum or difference that reading is the coarsest; Output::count
                                      ///< where the reading itself is the factor with the fewest figures
    int figures = 0;                  ///< of that step where there is one, else of the reading
};

/// By the school rule: of factors, the one with the fewest figures; of terms, the one with the coarsest place. Where
/// several have as few, the one whose last digit weighs most. Nothing where the output has no value or is exact.
std::optional<Limit> limiting_input(const Trace& trace, const Readings& readings, Output output);

}  // namespace overwater
