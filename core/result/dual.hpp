#pragma once

#include <array>
#include <cmath>
#include <cstddef>

namespace overwater {

/// A number with its exact partial derivatives by N inputs (forward differentiation): what the uncertainty budget takes
/// as sensitivities. The value is computed by the same operations in the same order as with double, so it is the same
/// to the last bit.
template <std::size_t N>
class Dual {
public:
    constexpr Dual() = default;
    constexpr Dual(double value) : value_(value) {}  // NOLINT(google-explicit-constructor): a plain number is one
    /// The input number `index`, whose derivative by itself is 1.
    static constexpr Dual input(double value, std::size_t index) {
        Dual d(value);
        d.slope_[index] = 1.0;
        return d;
    }

    constexpr double value() const { return value_; }
    constexpr double slope(std::size_t index) const { return slope_[index]; }

    friend constexpr Dual operator+(const Dual& a, const Dual& b) {
        return combined(a.value_ + b.value_, a, 1.0, b, 1.0);
    }
    friend constexpr Dual operator-(const Dual& a, const Dual& b) {
        return combined(a.value_ - b.value_, a, 1.0, b, -1.0);
    }
    friend constexpr Dual operator*(const Dual& a, const Dual& b) {
        return combined(a.value_ * b.value_, a, b.value_, b, a.value_);
    }
    friend constexpr Dual operator/(const Dual& a, const Dual& b) {
        const double quotient = a.value_ / b.value_;
        return combined(quotient, a, 1.0 / b.value_, b, -quotient / b.value_);
    }
    friend constexpr Dual operator-(const Dual& a) { return combined(-a.value_, a, -1.0, a, 0.0); }
    friend Dual sqrt(const Dual& a) {
        const double root = std::sqrt(a.value_);
        return combined(root, a, 0.5 / root, a, 0.0);
    }
    friend Dual exp(const Dual& a) {
        const double value = std::exp(a.value_);
        return combined(value, a, value, a, 0.0);
    }
    friend Dual pow(const Dual& a, double exponent) {
        const double value = std::pow(a.value_, exponent);
        return combined(value, a, exponent * value / a.value_, a, 0.0);
    }
    /// The slopes stay: they are of no use where a number was rounded.
    friend Dual rewritten(const Dual& a, double (*write)(double)) {
        Dual d = a;
        d.value_ = write(a.value_);
        return d;
    }
    friend constexpr Dual min(const Dual& a, const Dual& b) { return b.value_ < a.value_ ? b : a; }

private:
    static constexpr Dual combined(double value, const Dual& a, double by_a, const Dual& b, double by_b) {
        Dual d(value);
        for (std::size_t i = 0; i < N; ++i) d.slope_[i] = by_a * a.slope_[i] + by_b * b.slope_[i];
        return d;
    }
    double value_ = 0;
    std::array<double, N> slope_{};
};

}  // namespace overwater
