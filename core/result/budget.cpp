#include "core/result/budget.hpp"

#include <algorithm>
#include <cmath>

#include "core/quantity/gum.hpp"
#include "core/quantity/short_sort.hpp"
#include "core/result/dual.hpp"
#include "core/result/evaluate.hpp"

namespace overwater {

Sensitivities::Sensitivities(const Doubts& doubts) : ready_(doubts.ready) {
    using Real = Dual<input_count>;
    const auto lifted = doubts.measured.lifted<Real>(
        [](Input input, double value) { return Real::input(value, static_cast<std::size_t>(input)); });
    const Outcome<Real> outcome = evaluate(lifted, RightMethod{}, doubts.ready);
    for (std::size_t o = 0; o < output_count; ++o) {
        if (!ready_.has(static_cast<Output>(o))) continue;
        values_[o] = outcome.si[o].value();
        for (std::size_t i = 0; i < input_count; ++i) slopes_[o][i] = outcome.si[o].slope(i);
    }
}

Budget budget_of(const Doubts& doubts, const Sensitivities& sensitivities, Output output) {
    Budget budget;
    budget.output = output;
    if (!sensitivities.has(output)) return budget;
    budget.value = sensitivities.value(output);
    double variance = 0;
    std::vector<Part> parts;
    for (const Doubt& doubt : doubts.all()) {
        const double sensitivity = sensitivities.of(output, doubt.input);
        const double contribution = std::fabs(sensitivity) * doubt.u;
        if (!(contribution > 0) || !std::isfinite(contribution)) continue;
        budget.rows.push_back({doubt, sensitivity, contribution, 0.0});
        budget.offset += sensitivity * (doubt.low + doubt.high) / 2;
        parts.push_back({contribution, doubt.degrees});
        variance += contribution * contribution;
    }
    for (BudgetRow& row : budget.rows) row.share = row.contribution * row.contribution / variance;
    short_sort(budget.rows.begin(), budget.rows.end(),
                     [](const BudgetRow& a, const BudgetRow& b) { return a.share > b.share; });
    budget.u = std::sqrt(variance);
    budget.degrees = effective_degrees(parts);
    budget.k = coverage_factor(budget.degrees);
    budget.expanded = budget.k * budget.u;
    return budget;
}

}  // namespace overwater
