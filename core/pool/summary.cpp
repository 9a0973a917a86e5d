#include "core/pool/summary.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

#include "core/quantity/exact_sum.hpp"
#include "core/quantity/gum.hpp"

namespace overwater {

namespace {

double median_of(std::span<const double> values) {
    std::vector<double> sorted(values.begin(), values.end());
    std::nth_element(sorted.begin(), sorted.begin() + static_cast<std::ptrdiff_t>(sorted.size() / 2), sorted.end());
    const double upper = sorted[sorted.size() / 2];
    if (sorted.size() % 2 == 1) return upper;
    const double lower = *std::max_element(sorted.begin(), sorted.begin() + static_cast<std::ptrdiff_t>(sorted.size() / 2));
    return lower + (upper - lower) / 2;
}

}  // namespace

Summary summary_of(std::span<const double> values) {
    Summary all;
    all.count = values.size();
    if (values.empty()) return all;
    const double origin = values.front();
    const auto count = static_cast<double>(values.size());
    ExactSum sum;
    for (const double value : values) sum.add(value - origin);
    const double mean = sum.value() / count;
    all.mean = origin + mean;
    ExactSum squares;
    ExactSum rest;  // what is left of the deviations' sum, by which the squares are put right
    for (const double value : values) {
        const double deviation = (value - origin) - mean;
        squares.add(deviation * deviation);
        rest.add(deviation);
    }
    all.median = median_of(values);
    all.low = *std::min_element(values.begin(), values.end());
    all.high = *std::max_element(values.begin(), values.end());
    if (values.size() < 2) return all;
    const double corrected = squares.value() - rest.value() * rest.value() / count;
    all.deviation = std::sqrt(std::max(corrected, 0.0) / (count - 1));
    all.standard_error = all.deviation / std::sqrt(count);
    all.half_width = coverage_factor(count - 1) * all.standard_error;
    return all;
}

}  // namespace overwater
