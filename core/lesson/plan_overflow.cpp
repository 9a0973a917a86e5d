#include "core/lesson/plan_overflow.hpp"

#include <cmath>
#include <numbers>

#include "core/bench/scale.hpp"
#include "core/result/budget.hpp"

namespace overwater {

namespace {

/// How well the meniscus is read does not move the gas.
bool moves_gas(const Doubt& doubt) {
    return doubt.input != Input::scale_reading || doubt.kind == DoubtKind::class_limit;
}

double above_normal(double limit, double mean, double u) {
    if (!(u > 0)) return mean > limit ? 1.0 : 0.0;
    return 0.5 * std::erfc((limit - mean) / (u * std::numbers::sqrt2));
}

Overflow::Level level_of(const Overflow& all) {
    using Level = Overflow::Level;
    if (all.planned > all.mouth) return Level::leaves;
    if (all.planned > all.holds) return Level::passes_scale;
    if (all.upper > all.mouth) return Level::may_leave;
    if (all.upper > all.holds) return Level::may_pass_scale;
    return all.warm > all.holds ? Level::warm : Level::fits;
}

}  // namespace

Overflow overflow_of(const Entries& sheet, const Conventions& by_nature, bool hangs, double mouth_space) {
    const Assessment bench = assess_sheet(sheet, by_nature);
    const Doubts doubts = doubts_of(bench);
    const Sensitivities slopes(doubts);
    constexpr Output result = Output::molar_volume_standard;
    // A reading that makes the molar volume found too small stands for gas that takes more room than planned.
    double by_scale = std::fabs(slopes.of(result, Input::scale_reading));
    // As the gas grows, less liquid hangs below it.
    const auto scale = scale_length(bench.readings);
    if (hangs && scale) by_scale += std::fabs(slopes.of(result, Input::level_difference)) * scale->per_volume;
    Overflow out;
    Doubts upper = doubts;
    double variance = 0;
    double middle = 0;
    double scale_off = 0;
    for (const Doubt& doubt : doubts.all()) {
        if (!moves_gas(doubt)) continue;
        const double slope = slopes.of(result, doubt.input);
        variance += slope * doubt.u * (slope * doubt.u);
        if (doubt.input == Input::scale_reading) {
            scale_off += doubt.high;
            continue;
        }
        middle -= slope * (doubt.low + doubt.high) / 2;
        // Acid in excess counts for nothing yet; it may no longer be in excess where there is more metal.
        const bool acid = doubt.input == Input::acid_volume || doubt.input == Input::acid_concentration;
        if (slope != 0 || acid) upper.measured[doubt.input] += slope > 0 ? doubt.low : doubt.high;
    }
    PlanModel as_planned(bench, hangs);
    out.planned = as_planned.fill();
    PlanModel warm = as_planned;
    warm.measured()[Input::temperature] += still_warm;
    out.warm = warm.fill();
    PlanModel at_limits = as_planned;
    at_limits.take(upper, doubts);
    out.upper = at_limits.fill() + scale_off;
    out.upper_volume = at_limits.at(out.upper).gas_volume;
    out.holds = bench.readings[Field::tube_capacity].base;
    out.mouth = out.holds + mouth_space;
    out.u = std::sqrt(variance) / by_scale;
    const double mean = out.planned + middle / by_scale;
    out.chance = above_normal(out.holds, mean, out.u);
    out.chance_leaves = above_normal(out.mouth, mean, out.u);
    out.level = level_of(out);
    return out;
}

}  // namespace overwater
