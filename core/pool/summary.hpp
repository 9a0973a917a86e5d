#pragma once

#include <cstddef>
#include <span>

/// What a class's values say together.

namespace overwater {

/// One value a group. The numbers have the unit of the values.
struct Summary {
    std::size_t count = 0;
    double mean = 0;            ///< of 1 value or more
    double median = 0;
    double low = 0;             ///< smallest and greatest value
    double high = 0;
    double deviation = 0;       ///< standard deviation with n - 1; of 2 values or more, else 0
    double standard_error = 0;  ///< of the mean: s/sqrt n
    double half_width = 0;      ///< of the 95 % interval of the mean by Student's t with n - 1 degrees of freedom
};

/// Finite values, any number of them; large equal parts cost no digits that count (NIST StRD, NumAcc1 to 4).
Summary summary_of(std::span<const double> values);

}  // namespace overwater
