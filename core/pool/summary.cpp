#include "core/pool/summary.hpp"

#include <algorithm>
#include <vector>

#include "core/quantity/gum.hpp"

namespace overwater {

namespace {

double median_of(std::span<const double> values) {
    std::vector<double> sorted(values.begin(), values.end());
    double* const middle = sorted.data() + sorted.size() / 2;
    std::nth_element(sorted.data(), middle, sorted.data() + sorted.size());
    const double upper = *middle;
    if (sorted.size() % 2 == 1) return upper;
    const double lower = *std::max_element(sorted.data(), middle);
    return lower + (upper - lower) / 2;
}

}  // namespace

Summary summary_of(std::span<const double> values) {
    Summary all;
    all.count = values.size();
    if (values.empty()) return all;
    const Sample sample = sample_of(values);
    all.mean = sample.mean;
    all.median = median_of(values);
    all.low = *std::min_element(values.begin(), values.end());
    all.high = *std::max_element(values.begin(), values.end());
    if (values.size() < 2) return all;
    all.deviation = sample.deviation;
    all.standard_error = sample.of_mean;
    all.half_width = coverage_factor(static_cast<double>(values.size()) - 1) * all.standard_error;
    return all;
}

}  // namespace overwater
