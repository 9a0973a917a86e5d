#include "core/lesson/slip_search.hpp"

#include <algorithm>
#include <cmath>

#include "core/lesson/slip_parts.hpp"
#include "core/quantity/short_sort.hpp"
#include "core/result/evaluate.hpp"

namespace overwater {

namespace {

/// A second slip in the same calculation is that much rarer than its own commonness says: common practice, no source.
constexpr double rarity_of_another = 0.2;
/// One in ten works by another route than the run's own conventions: common practice, no source.
constexpr double share_by_other_routes = 0.1;

bool before(const SlipExplanation& a, const SlipExplanation& b) {
    const bool a_single = a.slips.count == 1 && a.exact;
    const bool b_single = b.slips.count == 1 && b.exact;
    if (a_single != b_single) return a_single;
    return a.weight > b.weight;
}

bool contains(const SlipSet& all, const SlipSet& some) {
    for (std::uint8_t i = 0; i < some.count; ++i) {
        if (!all.has(some.slips[i])) return false;
    }
    return true;
}

class Search {
public:
    Search(const Assessment& run, std::span<const StatedValue> answers, const Outcome<double>& carried)
        : run_(run),
          answers_(answers),
          bands_(route_bands(run, carried)),
          right_(evaluate(run.measured, Method{}, run.outcome.ready - carried.ready, carried)),
          parts_(run, carried) {
        for (const StatedValue& answer : answers) {
            last_.add(answer.output);
            Band& band = bands_.bands[static_cast<std::size_t>(answer.output)];
            if (&answer != &answers.back()) band = as_a_step(answer.output, band);
        }
        parts_.want(last_);
    }

    SlipFinding find() {
        SlipFinding finding;
        const StatedValue& asked = answers_.back();
        bool all_right = true;
        for (const StatedValue& answer : answers_) all_right = all_right && is_right(answer, bands_[answer.output]);
        if (all_right) {
            const double off = std::fabs(asked.si - right_[asked.output]);
            finding.kind = off <= asked.half_unit * (1 + 1e-9) ? SlipFinding::Kind::right
                                                               : SlipFinding::Kind::right_by_route;
            return finding;
        }
        for (std::size_t part = 0; part < slip_part_count; ++part) {
            parts_.fill(static_cast<SlipPart>(part),
                        [this](const Outcome<double>& outcome, OutputSet known) { return agrees(outcome, known); });
        }
        for (int count = 1; count <= 3; ++count) {
            parts_.combine(count, [&](const Outcome<double>& outcome, auto slips) {
                // Three slips have to give the very digits; nearly all combinations are done with here.
                if (count < 3 || agrees_exactly(outcome)) offer(slips(), outcome);
            });
        }
        rank();
        finding.kind = found_.empty() ? SlipFinding::Kind::unexplained : SlipFinding::Kind::explained;
        finding.explanations = std::move(found_);
        if (finding.explanations.empty()) finding.nearest = std::move(nearest_);
        return finding;
    }

private:
    /// How far a value is from a stated one, in half units of its last digit, and with the accepted routes' spread taken
    /// off. Percent errors are spread by so much, everything else by so many times.
    struct Distance {
        double plain;
        double by_routes;
    };
    Distance distance(const StatedValue& answer, double value) const {
        const double right = right_[answer.output];
        const Band& band = bands_[answer.output];
        Band here{value + (band.low - right), value + (band.high - right)};
        if (answer.output != Output::percent_error && right != 0) {
            here = Band{value * (band.low / right), value * (band.high / right)};
            if (value < 0) std::swap(here.low, here.high);
        }
        double stated = answer.si;
        if (answer.output == Output::percent_error && magnitude()) {
            stated = std::copysign(stated, value);
        }
        const double beyond = std::max({here.low - stated, stated - here.high, 0.0});
        return {std::fabs(value - stated) / answer.half_unit, beyond / answer.half_unit};
    }
    bool magnitude() const {
        return run_.conventions.percent_error == Conventions::PercentError::magnitude;
    }

    bool agrees(const Outcome<double>& outcome, OutputSet known) const {
        for (const StatedValue& answer : answers_) {
            if (known.has(answer.output) && distance(answer, outcome[answer.output]).by_routes > 1 + 1e-9) return false;
        }
        return true;
    }

    bool agrees_exactly(const Outcome<double>& outcome) const {
        const StatedValue& asked = answers_.back();
        const double value = outcome[asked.output];
        const double off = asked.output == Output::percent_error && magnitude() ? std::fabs(value) - std::fabs(asked.si)
                                                                                : value - asked.si;
        return std::fabs(off) <= asked.half_unit * (1 + 1e-9);
    }

    double weight_of(const SlipSet& slips, bool exact, const StatedValue& asked) const {
        double weight = 0;
        for (std::uint8_t i = 0; i < slips.count; ++i) weight += std::log(slip_table[slips.slips[i]].commonness / 1000.0);
        weight += (slips.count - 1) * std::log(rarity_of_another);
        if (exact) return weight;
        // Spread over the band, less of it falls into one rounding of the answer.
        const Band& band = bands_[asked.output];
        const double cells = 1 + (band.high - band.low) / (2 * asked.half_unit);
        return weight + std::log(share_by_other_routes / cells);
    }

    void offer(const SlipSet& slips, const Outcome<double>& outcome) {
        const StatedValue& asked = answers_.back();
        const double value = outcome[asked.output];
        if (!std::isfinite(value)) return;
        bool exact = true;
        double worst = 0;
        for (const StatedValue& answer : answers_) {
            const Distance off = distance(answer, outcome[answer.output]);
            exact = exact && off.plain <= 1 + 1e-9;
            worst = std::max(worst, off.by_routes);
        }
        SlipExplanation explanation{slips, value, exact, 0, 0};
        if (worst > 1 + 1e-9) {
            if (slips.count < 3) keep_near(explanation, worst);
            return;
        }
        if (slips.count == 3 && !exact) return;
        for (const SlipExplanation& fewer : found_) {
            // What adds nothing to fewer slips is no explanation; but it may be what makes the digits agree.
            const bool adds = exact && !fewer.exact;
            if (!adds && fewer.slips.count < slips.count && contains(slips, fewer.slips)) return;
        }
        explanation.weight = weight_of(slips, exact, asked);
        insert(explanation);
    }

    /// The list is kept sorted and short; sets of fewer slips come first, so that none is lost to what contains it.
    void insert(const SlipExplanation& explanation) {
        constexpr std::size_t most = 2 * most_explanations;
        auto place = std::upper_bound(found_.begin(), found_.end(), explanation, before);
        if (found_.size() == most && place == found_.end()) return;
        found_.insert(place, explanation);
        if (found_.size() > most) found_.pop_back();
    }

    void keep_near(SlipExplanation explanation, double worst) {
        explanation.weight = -worst;
        const auto farther = [](const SlipExplanation& a, const SlipExplanation& b) { return a.weight > b.weight; };
        if (nearest_.size() == 3 && !farther(explanation, nearest_.back())) return;
        for (const SlipExplanation& near : nearest_) {
            if (contains(explanation.slips, near.slips)) return;
        }
        nearest_.insert(std::upper_bound(nearest_.begin(), nearest_.end(), explanation, farther), explanation);
        if (nearest_.size() > 3) nearest_.pop_back();
    }

    void rank() {
        int rank = 0;
        for (std::size_t i = 0; i < found_.size(); ++i) {
            found_[i].rank = 0;
            for (std::size_t j = 0; j < i; ++j) {
                const bool same = std::fabs(found_[i].value - found_[j].value) <= 1e-9 * std::fabs(found_[j].value);
                if (same && found_[i].slips.count == found_[j].slips.count) {
                    found_[i].rank = found_[j].rank;
                    break;
                }
            }
            if (found_[i].rank == 0) found_[i].rank = ++rank;
        }
        short_sort(found_.begin(), found_.end(), [](const SlipExplanation& a, const SlipExplanation& b) {
            return a.rank != b.rank ? a.rank < b.rank : a.weight > b.weight;
        });
        if (found_.size() > most_explanations) found_.resize(most_explanations);
    }

    const Assessment& run_;
    std::span<const StatedValue> answers_;
    RouteBands bands_;
    Outcome<double> right_;  ///< what the bands lie around: steps that are carried taken as they are
    SlipParts parts_;
    OutputSet last_;
    std::vector<SlipExplanation> found_;
    std::vector<SlipExplanation> nearest_;
};

}  // namespace

bool is_right(const StatedValue& answer, const Band& band) {
    // What right work comes to is rounded to the answer's last digit: the band is wider by half of that.
    const double slack = answer.half_unit * (1 + 1e-9);
    return answer.si + slack >= band.low && answer.si - slack <= band.high;
}

SlipFinding find_slips(const Assessment& run, std::span<const StatedValue> answers, const Outcome<double>& carried) {
    if (answers.empty()) return {};
    return Search(run, answers, carried).find();
}

}  // namespace overwater
