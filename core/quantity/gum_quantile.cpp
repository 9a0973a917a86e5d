#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "core/quantity/gum.hpp"

// Quantiles by Newton's method on the logarithm of a probability as a function of the logarithm of t: nearly a straight
// line for the heavy tails of few degrees of freedom and for small probabilities, and bent one way, so that the first
// step passes the answer at most once and the others come down to it.

namespace overwater {

namespace {

/// Probability above x, x >= 0, of the standard normal.
double normal_tail(double x) { return 0.5 * std::erfc(x / std::numbers::sqrt2); }
double normal_density(double x) { return std::exp(-0.5 * x * x) / std::sqrt(2 * std::numbers::pi); }

/// x >= 0 with probability `tail` (0 < tail <= 1/2) above it. Start: Abramowitz and Stegun 26.2.23 (good to 4.5e-4),
/// coefficients from memory.
double normal_above(double tail) {
    if (tail == 0.5) return 0;
    const double w = std::sqrt(-2 * std::log(tail));
    double x = w - (2.515517 + w * (0.802853 + w * 0.010328)) / (1 + w * (1.432788 + w * (0.189269 + w * 0.001308)));
    for (int i = 0; i < 4; ++i) {
        const double found = normal_tail(x);
        x += std::log(found / tail) * found / normal_density(x);
    }
    return x;
}

/// Gamma(x + 1/2)/Gamma(x): raised to x >= 50, then the asymptotic series (Tricomi and Erdélyi 1951), whose first term
/// left out is below 1e-14 there.
double gamma_ratio(double x) {
    double lowered = 1;
    for (; x < 50; x += 1) lowered *= x / (x + 0.5);
    const double r = 1 / x;
    const double series =
        1 + r * (-1.0 / 8 + r * (1.0 / 128 + r * (5.0 / 1024 + r * (-21.0 / 32768 + r * (-399.0 / 262144)))));
    return lowered * std::sqrt(x) * series;
}

/// The continued fraction of the incomplete beta function (Abramowitz and Stegun 26.5.8), evaluated from the top (Lentz).
/// Converges quickly for x < (a + 1)/(a + b + 2).
double beta_fraction(double a, double b, double x) {
    constexpr double tiny = 1e-300;
    const auto away_from_zero = [](double value) { return std::abs(value) < tiny ? tiny : value; };
    double c = 1;
    double d = 1 / away_from_zero(1 - (a + b) * x / (a + 1));
    double fraction = d;
    for (int m = 1; m < 10000; ++m) {
        const double even = m * (b - m) * x / ((a + 2 * m - 1) * (a + 2 * m));
        d = 1 / away_from_zero(1 + even * d);
        c = away_from_zero(1 + even / c);
        fraction *= d * c;
        const double odd = -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1));
        d = 1 / away_from_zero(1 + odd * d);
        c = away_from_zero(1 + odd / c);
        fraction *= d * c;
        if (std::abs(d * c - 1) < 1e-16) break;
    }
    return fraction;
}

/// Student's t with some degrees of freedom, both sides together.
class Student {
public:
    explicit Student(double degrees)
        : degrees_(degrees), scale_(gamma_ratio(degrees / 2) / std::sqrt(degrees * std::numbers::pi)) {}

    /// t f(t) for both sides: the slope of a probability by ln t.
    double slope(double t) const {
        return 2 * t * scale_ * std::exp(-0.5 * (degrees_ + 1) * std::log1p(t * t / degrees_));
    }
    /// P(|T| > t) and P(|T| < t); the smaller one is computed, whichever the fraction serves.
    struct Sides {
        double outside;
        double inside;
    };
    Sides sides(double t) const {
        // I_x(1/2, degrees/2) with x = t²/(degrees + t²); the power of x before the fraction is the slope.
        const double whole = degrees_ + t * t;
        const double x = t * t / whole;
        const double factor = slope(t);
        if (x < 1.5 / (degrees_ / 2 + 2.5)) {
            const double inside = factor * beta_fraction(0.5, degrees_ / 2, x);
            return {1 - inside, inside};
        }
        const double outside = factor / degrees_ * beta_fraction(degrees_ / 2, 0.5, degrees_ / whole);
        return {outside, 1 - outside};
    }

private:
    double degrees_;
    double scale_;  ///< density at 0
};

/// Quantile of many degrees of freedom from the normal one (Cornish and Fisher; Abramowitz and Stegun 26.7.5).
double student_from_normal(double z, double degrees) {
    const double s = z * z;
    const double r = 1 / degrees;
    return z *
           (1 + r * ((s + 1) / 4 + r * (((5 * s + 16) * s + 3) / 96 + r * ((((3 * s + 19) * s + 17) * s - 15) / 384))));
}

}  // namespace

double normal_quantile(double probability) {
    return probability < 0.5 ? -normal_above(probability) : normal_above(1 - probability);
}

double student_quantile(double coverage, double degrees) {
    const double z = normal_above((1 - coverage) / 2);
    if (std::isinf(degrees)) return z;
    if (degrees > 1e5) return student_from_normal(z, degrees);
    const Student student(degrees);
    double t = z;
    for (int i = 0; i < 50; ++i) {
        const Student::Sides sides = student.sides(t);
        const double slope = student.slope(t);
        const double step = coverage < 0.5 ? std::log(coverage / sides.inside) * sides.inside / slope
                                           : std::log(sides.outside / (1 - coverage)) * sides.outside / slope;
        t *= std::exp(step);
        if (!(std::abs(step) > 1e-15)) break;
    }
    return t;
}

}  // namespace overwater
