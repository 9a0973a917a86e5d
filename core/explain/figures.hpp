#pragma once

#include <algorithm>
#include <cmath>

#include "core/bench/readings.hpp"
#include "core/quantity/number_format.hpp"
#include "core/result/measured.hpp"
#include "core/result/tags.hpp"

namespace overwater {

/// How far the digits of a number may be trusted by the school rule: sums keep the coarsest place, products the fewest
/// figures; exact numbers are exempt (method.md, section 5).
struct Precision {
    bool exact = true;
    double resolution = 0;  ///< in the base unit: the value of the last significant digit
};

/// Significant figures of `value`, at least 1; 15 for an exact number.
int figures_of(Precision precision, double value);
/// The precision of `value` with so many significant figures.
Precision precision_with(double value, int figures);
/// Precision of a sum, and of a product or quotient whose value is `value`.
Precision precision_of_sum(Precision a, Precision b);
Precision precision_of_product(Precision a, double value_a, Precision b, double value_b, double value);
/// What a class's table gives for a looked-up quantity.
Precision precision_of(Function function);
/// The precision of a reading as typed; exact for what is looked up or printed on the tube.
Precision precision_of(Input input, const Readings& readings);

/// Decimals that show `figures` significant figures of `value`, 0 to 12.
int decimals_for(double value, int figures);

/// A number that carries its significant figures. With `RoundSteps` each named step of the model is rounded to one digit
/// more than is significant, as it is written down in the working: what a class gets that rounds at each step.
template <bool RoundSteps>
class Figured {
public:
    Figured() = default;
    Figured(double value) : value_(value) {}  // NOLINT(google-explicit-constructor): a plain number is exact
    Figured(double value, Precision precision) : value_(value), precision_(precision) {}

    double value() const { return value_; }
    Precision precision() const { return precision_; }

    friend Figured operator+(const Figured& a, const Figured& b) {
        return {a.value_ + b.value_, precision_of_sum(a.precision_, b.precision_)};
    }
    friend Figured operator-(const Figured& a, const Figured& b) {
        return {a.value_ - b.value_, precision_of_sum(a.precision_, b.precision_)};
    }
    friend Figured operator*(const Figured& a, const Figured& b) { return product(a.value_ * b.value_, a, b); }
    friend Figured operator/(const Figured& a, const Figured& b) { return product(a.value_ / b.value_, a, b); }
    friend Figured operator-(const Figured& a) { return {-a.value_, a.precision_}; }
    friend Figured sqrt(const Figured& a) { return same_figures(std::sqrt(a.value_), a); }
    friend Figured exp(const Figured& a) { return same_figures(std::exp(a.value_), a); }
    friend Figured pow(const Figured& a, double exponent) { return same_figures(std::pow(a.value_, exponent), a); }
    friend Figured min(const Figured& a, const Figured& b) { return b.value_ < a.value_ ? b : a; }
    friend Figured looked_up(Function function, const Figured&, const Figured& value) {
        return {value.value_, overwater::precision_of(function)};
    }
    friend Figured named_step(Output, const Figured& value) {
        if constexpr (!RoundSteps) return value;
        if (value.precision_.exact || value.value_ == 0 || !std::isfinite(value.value_)) return value;
        const int figures = figures_of(value.precision_, value.value_) + 1;
        return {round_to_place(value.value_, place_of_figures(value.value_, figures)), value.precision_};
    }

private:
    static Figured product(double value, const Figured& a, const Figured& b) {
        return {value, precision_of_product(a.precision_, a.value_, b.precision_, b.value_, value)};
    }
    static Figured same_figures(double value, const Figured& a) {
        return {value, a.precision_.exact ? Precision{} : precision_with(value, figures_of(a.precision_, a.value_))};
    }
    double value_ = 0;
    Precision precision_;
};

}  // namespace overwater
