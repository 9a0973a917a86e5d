#include "core/lesson/mean_slip.hpp"

#include <cmath>

#include "core/quantity/gum.hpp"

namespace overwater {

MeanSlip mean_slip_of(std::span<const double> values, double value, double half_unit) {
    const auto is = [&](double other) { return std::fabs(value - other) <= half_unit * (1 + 1e-9); };
    const auto count = static_cast<double>(values.size());
    const double sum = sample_of(values).mean * count;
    if (is(sum)) return MeanSlip::not_divided;
    if (is(sum / (count + 1))) return MeanSlip::divided_by_more;
    for (const double one : values) {
        if (is(one)) return MeanSlip::one_run_alone;
    }
    for (const double one : values) {
        if (values.size() > 2 && is((sum - one) / (count - 1))) return MeanSlip::one_left_out;
    }
    double magnitudes = 0;
    for (const double one : values) magnitudes += std::fabs(one);
    if (magnitudes != std::fabs(sum) && is(magnitudes / count)) return MeanSlip::percent_averaged;
    return MeanSlip::none;
}

}  // namespace overwater
