#pragma once

#include <cstddef>
#include <span>

/// Tests whether the farthest of a class's values is too far to be one of them. They say that a value is unlikely, never
/// that it is wrong: a group is left out by hand, with a reason.

namespace overwater {

struct OutlierTest {
    bool possible = false;   ///< enough values, not all alike
    std::size_t index = 0;   ///< of the value tested
    double statistic = 0;
    double critical = 0;     ///< at 5 %, two-sided: a value on either side may be the one
    bool far_off() const { return possible && statistic > critical; }
};

/// Grubbs: G = the greatest |x - mean|/s (ASTM E178, ISO 5725-2). 3 values or more.
OutlierTest grubbs(std::span<const double> values);

/// Critical value of Grubbs' test: (n - 1)/sqrt(n) sqrt(t²/(n - 2 + t²)) with Student's t at alpha/(2n), n - 2 degrees of
/// freedom; `alpha` two-sided, 0.05 or 0.01 say. n of 3 or more.
double grubbs_critical(std::size_t n, double alpha);

/// Dixon: Q = gap to the neighbour over range (r10). 3 to 30 values. Critical values for two sides at 5 %: Rorabacher,
/// Anal. Chem. 63 (1991) 139.
OutlierTest dixon(std::span<const double> values);

}  // namespace overwater
