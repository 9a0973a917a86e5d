#pragma once

#include <array>
#include <cmath>
#include <cstddef>

namespace overwater {

/// W trials of one number side by side, for the Monte Carlo: plain loops that a compiler turns into vector instructions.
/// Each lane is computed as a double alone would be, to the last bit.
template <std::size_t W>
class Pack {
public:
    constexpr Pack() = default;
    constexpr Pack(double value) {  // NOLINT(google-explicit-constructor): a plain number is one, in every lane
        for (auto& lane : lanes_) lane = value;
    }
    constexpr double operator[](std::size_t i) const { return lanes_[i]; }
    constexpr double& operator[](std::size_t i) { return lanes_[i]; }

    friend constexpr Pack operator+(const Pack& a, const Pack& b) {
        return each(a, b, [](double x, double y) { return x + y; });
    }
    friend constexpr Pack operator-(const Pack& a, const Pack& b) {
        return each(a, b, [](double x, double y) { return x - y; });
    }
    friend constexpr Pack operator*(const Pack& a, const Pack& b) {
        return each(a, b, [](double x, double y) { return x * y; });
    }
    friend constexpr Pack operator/(const Pack& a, const Pack& b) {
        return each(a, b, [](double x, double y) { return x / y; });
    }
    friend constexpr Pack operator-(const Pack& a) {
        return each(a, a, [](double x, double) { return -x; });
    }
    friend Pack sqrt(const Pack& a) {
        return each(a, a, [](double x, double) { return std::sqrt(x); });
    }
    friend Pack exp(const Pack& a) {
        return each(a, a, [](double x, double) { return std::exp(x); });
    }
    friend Pack pow(const Pack& a, double exponent) {
        return each(a, a, [exponent](double x, double) { return std::pow(x, exponent); });
    }
    friend Pack rewritten(const Pack& a, double (*write)(double)) {
        return each(a, a, [write](double x, double) { return write(x); });
    }
    friend constexpr Pack min(const Pack& a, const Pack& b) {
        return each(a, b, [](double x, double y) { return y < x ? y : x; });
    }

private:
    template <class Operation>
    static constexpr Pack each(const Pack& a, const Pack& b, Operation operation) {
        Pack out;
        for (std::size_t i = 0; i < W; ++i) out.lanes_[i] = operation(a.lanes_[i], b.lanes_[i]);
        return out;
    }
    // Aligned so that no vector of lanes lies across two lines of the cache.
    alignas(W % 2 == 0 ? 16 : sizeof(double)) std::array<double, W> lanes_{};
};

}  // namespace overwater
