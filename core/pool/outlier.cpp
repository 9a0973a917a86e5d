#include "core/pool/outlier.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include "core/pool/summary.hpp"
#include "core/quantity/gum.hpp"

namespace overwater {

namespace {

/// Two-sided 95 %, n = 3 to 30.
constexpr std::array<double, 28> dixon_critical{
    0.970, 0.829, 0.710, 0.625, 0.568, 0.526, 0.493, 0.466, 0.444, 0.426, 0.410, 0.396, 0.384, 0.374,
    0.365, 0.356, 0.349, 0.342, 0.337, 0.331, 0.326, 0.321, 0.317, 0.312, 0.308, 0.305, 0.301, 0.298};

std::size_t index_of(std::span<const double> values, double value) {
    return static_cast<std::size_t>(std::find(values.begin(), values.end(), value) - values.begin());
}

}  // namespace

double grubbs_critical(std::size_t n, double alpha) {
    const auto count = static_cast<double>(n);
    const double t = student_quantile(1 - alpha / count, count - 2);
    return (count - 1) / std::sqrt(count) * std::sqrt(t * t / (count - 2 + t * t));
}

OutlierTest grubbs(std::span<const double> values) {
    OutlierTest test;
    if (values.size() < 3) return test;
    const Summary all = summary_of(values);
    if (!(all.deviation > 1e-12 * std::fabs(all.mean))) return test;
    test.possible = true;
    const bool high = all.high - all.mean >= all.mean - all.low;
    test.index = index_of(values, high ? all.high : all.low);
    test.statistic = std::max(all.high - all.mean, all.mean - all.low) / all.deviation;
    test.critical = grubbs_critical(values.size(), 0.05);
    return test;
}

OutlierTest dixon(std::span<const double> values) {
    OutlierTest test;
    if (values.size() < 3 || values.size() - 3 >= dixon_critical.size()) return test;
    std::vector<double> sorted(values.begin(), values.end());
    std::sort(sorted.begin(), sorted.end());
    const std::size_t last = sorted.size() - 1;
    const double range = sorted[last] - sorted[0];
    if (!(range > 1e-12 * std::fabs(sorted[last]))) return test;
    const double low_gap = sorted[1] - sorted[0];
    const double high_gap = sorted[last] - sorted[last - 1];
    test.possible = true;
    test.index = index_of(values, high_gap >= low_gap ? sorted[last] : sorted[0]);
    test.statistic = std::max(low_gap, high_gap) / range;
    test.critical = dixon_critical[values.size() - 3];
    return test;
}

}  // namespace overwater
