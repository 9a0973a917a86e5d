#pragma once

#include <array>
#include <cstdint>
#include <vector>

#include "core/lesson/slip.hpp"
#include "core/result/evaluate.hpp"

namespace overwater {

/// The slips of a run part by part. What the slips of one part make of its numbers is computed once; combinations across
/// parts then need the last steps of the model only.
class SlipParts {
public:
    /// Steps in `carried` stand as they are: slips before them change nothing.
    SlipParts(const Assessment& run, const Outcome<double>& carried);

    /// The outputs that are asked for.
    void want(OutputSet outputs);

    /// Makes the combinations of up to three slips of a part; those for which `agrees(outcome, known)` is false are left
    /// out.
    template <class Agrees>
    void fill(SlipPart part, Agrees agrees) {
        Part& own = parts_[static_cast<std::size_t>(part)];
        for (auto& list : own.made) list.clear();
        const auto keep = [&](const SlipSet& slips) {
            const Outcome<double> outcome = evaluate(run_.measured, method_of(slips), own.computed, carried_);
            if (!agrees(outcome, own.computed)) return;
            Combination made{slips, {}};
            for (std::size_t i = 0; i < own.handed_on.size(); ++i) made.values[i] = outcome[own.handed_on[i]];
            own.made[slips.count].push_back(made);
        };
        keep({});
        each_set(own.slips, {}, 0, keep);
    }

    /// Calls `offer(slips, outcome)` for all combinations of `count` slips.
    template <class Offer>
    void combine(int count, Offer offer) {
        combine_from(0, count, SlipSet{}, Method{}, known_, offer);
    }

private:
    static constexpr std::size_t most_handed_on = 5;
    struct Combination {
        SlipSet slips;
        std::array<double, most_handed_on> values;
    };
    struct Part {
        std::vector<SlipIndex> slips;
        OutputSet computed;
        std::vector<Output> handed_on;  ///< the outputs that later parts go on with
        std::array<std::vector<Combination>, 4> made;  ///< by the number of slips
    };

    template <class Keep>
    static void each_set(const std::vector<SlipIndex>& slips, SlipSet set, std::size_t from, Keep keep) {
        for (std::size_t i = from; i < slips.size(); ++i) {
            SlipSet more = set;
            if (!more.add(slips[i])) continue;
            keep(more);
            each_set(slips, more, i + 1, keep);
        }
    }

    template <class Offer>
    void combine_from(std::size_t part, int left, const SlipSet& slips, const Method& method,
                      const Outcome<double>& known, Offer& offer) {
        if (part == slip_part_count) {
            if (left == 0) offer(slips, evaluate(run_.measured, method, last_, known));
            return;
        }
        const Part& own = parts_[part];
        const int least = part + 1 == slip_part_count ? left : 0;
        for (int here = least; here <= left; ++here) {
            for (const Combination& made : own.made[static_cast<std::size_t>(here)]) {
                SlipSet all = slips;
                Method way = method;
                for (std::uint8_t i = 0; i < made.slips.count; ++i) {
                    all.slips[all.count++] = made.slips.slips[i];
                    make_slip(way, made.slips.slips[i]);
                }
                Outcome<double> next = known;
                for (std::size_t i = 0; i < own.handed_on.size(); ++i) next.put(own.handed_on[i], made.values[i]);
                combine_from(part + 1, left - here, all, way, next, offer);
            }
        }
    }

    const Assessment& run_;
    const Outcome<double>& carried_;
    std::array<Part, slip_part_count> parts_;
    Outcome<double> known_;  ///< what no slip changes
    OutputSet last_;         ///< what the last steps compute
};

}  // namespace overwater
