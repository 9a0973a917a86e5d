#include "core/result/verdict.hpp"

#include <algorithm>
#include <cmath>

#include "core/quantity/gum.hpp"

namespace overwater {

namespace {

constexpr double one_input_rules = 0.8;        // method.md, section 6
constexpr double denominator_is_gone = 0.1;    // method.md, section 6

bool is_limited(Shape shape) { return shape == Shape::rectangular || shape == Shape::triangular; }

/// The lowest amount of gas that the limits allow, as a fraction of the amount.
double lowest_amount(const Doubts& doubts, const Sensitivities& sensitivities) {
    const double amount = sensitivities.value(Output::amount_of_gas);
    double lowest = amount;
    for (const Doubt& doubt : doubts.all()) {
        const double slope = sensitivities.of(Output::amount_of_gas, doubt.input);
        if (slope == 0) continue;
        // Where there are no limits, three standard uncertainties stand for them.
        const double low = is_limited(doubt.shape) ? doubt.low : -3 * doubt.u;
        const double high = is_limited(doubt.shape) ? doubt.high : 3 * doubt.u;
        lowest += std::min(slope * low, slope * high);
    }
    return lowest / amount;
}

}  // namespace

Caution caution_of(const Doubts& doubts, const Sensitivities& sensitivities, const Budget& budget) {
    if (budget.rows.empty()) return Caution::none;
    if (sensitivities.has(Output::amount_of_gas) && lowest_amount(doubts, sensitivities) <= denominator_is_gone) {
        return Caution::no_denominator;
    }
    const BudgetRow& first = budget.rows.front();
    return first.share > one_input_rules && is_limited(first.doubt.shape) ? Caution::one_input : Caution::none;
}

CoverageInterval linear_interval(const Budget& budget) {
    const double middle = budget.value + budget.offset;
    return {middle - budget.expanded, middle + budget.expanded, false};
}

Agreement compared(const Budget& budget, const CoverageInterval& symmetric) {
    const CoverageInterval linear = linear_interval(budget);
    const auto half_unit = [](double size) { return std::pow(10.0, -decimals_of_uncertainty(size, 2)) / 2; };
    Agreement agreement;
    agreement.low = std::fabs(linear.low - symmetric.low);
    agreement.high = symmetric.open_above ? without_end : std::fabs(linear.high - symmetric.high);
    agreement.tolerance = half_unit(budget.u);
    const double largest = std::max(agreement.low, agreement.high);
    agreement.validated = largest <= agreement.tolerance;
    agreement.to_digits_shown = largest <= half_unit(budget.expanded);
    return agreement;
}

Verdict verdict_of(const Budget& budget, Caution caution, const MonteCarloResult* result,
                   std::optional<double> accepted) {
    Verdict verdict;
    verdict.caution = caution;
    if (budget.rows.empty()) return verdict;
    verdict.interval = linear_interval(budget);
    if (result != nullptr && caution == Caution::none && !compared(budget, result->symmetric).to_digits_shown) {
        verdict.caution = Caution::disagrees;
    }
    verdict.shows_plus_minus = caution != Caution::no_denominator;
    if (verdict.caution != Caution::none) {
        if (result != nullptr) {
            verdict.by_monte_carlo = true;
            verdict.interval = result->symmetric;
        } else {
            verdict.preliminary = true;
        }
    }
    if (!accepted) return verdict;
    if (verdict.interval.holds(*accepted)) {
        verdict.kind = Verdict::Kind::inside;
    } else if (*accepted < verdict.interval.low) {
        verdict.kind = Verdict::Kind::found_too_high;
        verdict.outside_by = verdict.interval.low - *accepted;
    } else {
        verdict.kind = Verdict::Kind::found_too_low;
        verdict.outside_by = *accepted - verdict.interval.high;
    }
    return verdict;
}

}  // namespace overwater
