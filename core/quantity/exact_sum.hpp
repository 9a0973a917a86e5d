#pragma once

#include <cmath>

namespace overwater {

/// A sum that keeps what rounding takes from it (Neumaier, ZAMM 54 (1974) 39: improved Kahan-Babuska summation): series of
/// a thousand readings of seven equal leading digits lose nothing.
class ExactSum {
public:
    void add(double term) {
        const double sum = sum_ + term;
        lost_ += std::fabs(sum_) >= std::fabs(term) ? (sum_ - sum) + term : (term - sum) + sum_;
        sum_ = sum;
    }
    double value() const { return sum_ + lost_; }

private:
    double sum_ = 0;
    double lost_ = 0;
};

}  // namespace overwater
