#include "core/quantity/gum.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/quantity/exact_sum.hpp"
#include "core/quantity/number_format.hpp"

namespace overwater {

namespace {

double mean_of(std::span<const double> values) {
    ExactSum sum;
    for (const double value : values) sum.add(value);
    return sum.value() / static_cast<double>(values.size());
}

/// Sum of (a - mean of a)(b - mean of b).
double products_about(std::span<const double> a, double mean_a, std::span<const double> b, double mean_b) {
    ExactSum sum;
    for (std::size_t i = 0; i < a.size(); ++i) sum.add((a[i] - mean_a) * (b[i] - mean_b));
    return sum.value();
}

}  // namespace

Sample sample_of(std::span<const double> values) {
    Sample sample;
    sample.count = values.size();
    if (values.empty()) return sample;
    sample.mean = mean_of(values);
    if (values.size() < 2) return sample;
    const auto n = static_cast<double>(values.size());
    sample.deviation = std::sqrt(products_about(values, sample.mean, values, sample.mean) / (n - 1));
    sample.of_mean = sample.deviation / std::sqrt(n);
    return sample;
}

double covariance_of_means(std::span<const double> a, std::span<const double> b) {
    const std::size_t count = std::min(a.size(), b.size());
    if (count < 2) return 0;
    const auto n = static_cast<double>(count);
    a = a.first(count);
    b = b.first(count);
    return products_about(a, mean_of(a), b, mean_of(b)) / (n * (n - 1));
}

double combined_uncertainty(std::span<const double> sensitivities, std::span<const double> covariances) {
    const std::size_t n = sensitivities.size();
    if (covariances.size() != n * n) return 0;
    double variance = 0;
    for (std::size_t i = 0; i < n; ++i) {
        for (std::size_t j = 0; j < n; ++j) {
            variance += sensitivities[i] * covariances[i * n + j] * sensitivities[j];
        }
    }
    return std::sqrt(std::max(variance, 0.0));
}

double effective_degrees(std::span<const Part> parts) {
    double largest = 0;
    for (const Part& part : parts) largest = std::max(largest, part.u);
    if (largest == 0) return std::numeric_limits<double>::infinity();
    double variance = 0;
    double doubt = 0;
    for (const Part& part : parts) {
        const double square = (part.u / largest) * (part.u / largest);
        variance += square;
        doubt += square * square / part.degrees;
    }
    return variance * variance / doubt;  // infinite where no part is finite
}

double degrees_of_doubtful(double relative_doubt) { return 0.5 / (relative_doubt * relative_doubt); }

double coverage_factor(double degrees) {
    if (std::isinf(degrees)) return 1.96;
    return student_quantile(0.95, std::max(1.0, std::floor(degrees)));
}

double Line::u_at(double x) const {
    const double slope_part = x * u_slope;
    const double variance =
        u_intercept * u_intercept + slope_part * slope_part + 2 * correlation * u_intercept * slope_part;
    return std::sqrt(std::max(variance, 0.0));
}

Line fitted_line(std::span<const double> x, std::span<const double> y, double origin) {
    const std::size_t count = std::min(x.size(), y.size());
    Line line;
    if (count < 2) return line;
    x = x.first(count);
    y = y.first(count);
    const auto n = static_cast<double>(count);
    const double mean_x = mean_of(x);
    const double mean_y = mean_of(y);
    const double spread = products_about(x, mean_x, x, mean_x);
    if (spread == 0) return line;
    line.slope = products_about(x, mean_x, y, mean_y) / spread;
    const double middle = mean_x - origin;
    line.intercept = mean_y - line.slope * middle;
    line.correlation = -middle / std::sqrt(spread / n + middle * middle);
    line.degrees = n - 2;
    if (count == 2) return line;
    ExactSum squares;
    for (std::size_t i = 0; i < count; ++i) {
        const double rest = (y[i] - mean_y) - line.slope * (x[i] - mean_x);
        squares.add(rest * rest);
    }
    line.residual = std::sqrt(squares.value() / line.degrees);
    line.u_slope = line.residual / std::sqrt(spread);
    line.u_intercept = line.residual * std::sqrt(1 / n + middle * middle / spread);
    return line;
}

double rounded_uncertainty(double u, int digits) {
    if (!(u > 0) || std::isinf(u)) return u;
    const int place = place_of_figures(u, digits);
    const double nearest = round_to_place(u, place);
    if (nearest >= 0.975 * u) return nearest;
    return round_to_place(nearest + std::pow(10.0, place), place);
}

int decimals_of_uncertainty(double u, int digits) {
    if (!(u > 0) || std::isinf(u)) return 0;
    return -place_of_figures(rounded_uncertainty(u, digits), digits);
}

}  // namespace overwater
