#include "core/explain/gap.hpp"

#include <algorithm>
#include <cmath>

#include "core/explain/cause_model.hpp"
#include "core/quantity/short_sort.hpp"
#include "core/result/doubt.hpp"
#include "core/result/known_value.hpp"

namespace overwater {

namespace {

double half_width(const Doubt& doubt) { return std::max(std::fabs(doubt.low), std::fabs(doubt.high)); }

/// How far one reading may be off by what is known of its instrument; 0 where nothing is.
double reading_half_width(const Doubts& doubts, Input input) {
    double widest = 0;
    for (const Doubt& doubt : doubts.all()) {
        const bool of_reading = doubt.kind == DoubtKind::reading || doubt.kind == DoubtKind::scatter;
        if (doubt.input == input && of_reading) widest = std::max(widest, half_width(doubt));
    }
    return widest;
}

double class_half_width(const Doubts& doubts) {
    double widest = 0;
    for (const Doubt& doubt : doubts.all()) {
        if (doubt.kind == DoubtKind::class_limit) widest = std::max(widest, half_width(doubt));
    }
    return widest;
}

/// What the run's own instruments may be off by, in the unit of the cause; 0 where the cause is no matter of one.
double instrument_half_width(Cause cause, const Doubts& doubts) {
    const auto of = [&](Input input) { return reading_half_width(doubts, input); };
    switch (cause) {
        case Cause::balance_off:
            return doubts.measured.setup.mass_from == MassFrom::by_difference
                       ? of(Input::mass_before) + of(Input::mass_after)
                       : of(Input::mass_of_metal);
        case Cause::ribbon_mass: return of(Input::mass_per_metre) / doubts.measured[Input::mass_per_metre];
        case Cause::thermometer_off: return of(Input::temperature);
        case Cause::levels_not_equal:
        case Cause::level_misread: return of(Input::level_difference);
        case Cause::end_space_off: return of(Input::end_space);
        case Cause::scale_misread: return of(Input::scale_reading);
        case Cause::tube_off: return class_half_width(doubts);
        case Cause::barometer_off: return of(Input::barometer);
        default: return 0;
    }
}

/// A coarse instrument makes larger errors usual.
void widen(Reach& reach, Cause cause, const Doubts& doubts) {
    const double own = instrument_half_width(cause, doubts);
    reach.usual = std::max(reach.usual, own);
    reach.largest = std::max(reach.largest, 2 * own);
}

class Search {
public:
    Search(const Assessment& assessment, double found, double accepted)
        : bench_(bench_of(assessment)), found_(as_volume(found)), accepted_(as_volume(accepted)) {}

    bool too_high() const { return found_ > accepted_; }

    Explanation explain(Cause cause, const Reach& reach) const {
        Explanation explanation;
        explanation.cause = cause;
        explanation.usual = reach.usual;
        explanation.largest = reach.largest;
        const double most = too_high() ? reach.most_raising : reach.most_lowering;
        explanation.share = share_of(cause, std::min(reach.usual, most));
        if (!goes_far_enough(cause, most)) {
            explanation.size = most;
            return explanation;
        }
        explanation.size = smallest_enough(cause, most);
        explanation.plausibility = explanation.size <= reach.usual     ? Plausibility::usual
                                   : explanation.size <= reach.largest ? Plausibility::possible
                                                                       : Plausibility::implausible;
        return explanation;
    }

private:
    std::optional<double> without(Cause cause, double size) const {
        const bool both = info(cause).raises && info(cause).lowers;
        const auto result = result_of(corrected(bench_, cause, both && !too_high() ? -size : size));
        return result ? std::optional(as_volume(*result)) : result;
    }
    /// In terms that rise with the volume of the gas, as causes are described.
    double as_volume(double result) const { return falls_with_volume(bench_.explained) ? 1 / result : result; }

    /// No result is one beyond all bounds: no gas is left, or no metal.
    bool goes_far_enough(Cause cause, double size) const {
        const auto result = without(cause, size);
        return !result || (too_high() ? *result <= accepted_ : *result >= accepted_);
    }

    /// The result moves one way with the size, so halving finds it, to 1e-12 of itself. A difference that is mere
    /// rounding needs next to nothing: there the halving stops.
    double smallest_enough(Cause cause, double most) const {
        double low = 0;
        double high = most;
        for (int step = 0; step < 200 && high - low > 1e-12 * high; ++step) {
            const double middle = low + (high - low) / 2;
            (goes_far_enough(cause, middle) ? high : low) = middle;
        }
        return high;
    }

    double share_of(Cause cause, double size) const {
        const auto result = without(cause, size);
        return result ? std::clamp((found_ - *result) / (found_ - accepted_), 0.0, 1.0) : 1.0;
    }

    Bench bench_;
    double found_;
    double accepted_;
};

/// The most plausible first; among equals, what is nearest to its usual size; of the impossible, what comes nearest.
bool before(const Explanation& one, const Explanation& other) {
    if (one.plausibility != other.plausibility) return one.plausibility < other.plausibility;
    if (one.plausibility == Plausibility::impossible) return one.share > other.share;
    return one.size / one.usual < other.size / other.usual;
}

}  // namespace

std::optional<Gap> gap_of(const Assessment& assessment, const Verdict& verdict) {
    const auto found = result_of(bench_of(assessment));
    const auto accepted = known_value(assessment, explained_output(assessment));
    if (!found || !accepted || !(*accepted > 0)) return std::nullopt;
    Gap gap;
    gap.found = *found;
    gap.accepted = *accepted;
    gap.nothing_to_explain = verdict.kind == Verdict::Kind::inside || *found == *accepted;
    if (*found == *accepted) return gap;

    const Search search(assessment, *found, *accepted);
    const Doubts doubts = doubts_of(assessment);
    for (std::size_t i = 0; i < cause_count; ++i) {
        const auto cause = static_cast<Cause>(i);
        auto reach = reach_of(assessment, cause);
        if (!reach || !(search.too_high() ? reach->raises : reach->lowers)) continue;
        widen(*reach, cause, doubts);
        gap.explanations.push_back(search.explain(cause, *reach));
    }
    short_sort(gap.explanations.begin(), gap.explanations.end(), before);
    return gap;
}

}  // namespace overwater
