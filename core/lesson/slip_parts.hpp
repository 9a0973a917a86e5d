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

    /// Calls `offer(outcome, slips)` for all combinations of `count` slips; `slips()` says which. One model is run again
    /// and again: only what a combination changes is put into it.
    template <class Offer>
    void combine(int count, Offer offer) {
        Method method;
        Model<double> model(run_.measured, method, last_, carried_);
        Chosen chosen;
        combine_from(0, count, chosen, method, model, offer);
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

    /// One combination of each part.
    struct Chosen {
        std::array<const Combination*, slip_part_count> made{};
        SlipSet slips() const {
            SlipSet all;
            for (const Combination* one : made) {
                for (std::uint8_t i = 0; i < one->slips.count; ++i) all.slips[all.count++] = one->slips.slips[i];
            }
            return all;
        }
    };

    template <class Offer>
    void combine_from(std::size_t part, int left, Chosen& chosen, Method& method, Model<double>& model, Offer& offer) {
        if (part == slip_part_count) {
            offer(model.run(), [&chosen] { return chosen.slips(); });
            return;
        }
        const Part& own = parts_[part];
        const Method before = method;
        const std::size_t handed_on = own.handed_on.size();
        for (int here = part + 1 == slip_part_count ? left : 0; here <= left; ++here) {
            for (const Combination& made : own.made[static_cast<std::size_t>(here)]) {
                chosen.made[part] = &made;
                for (std::uint8_t i = 0; i < made.slips.count; ++i) make_slip(method, made.slips.slips[i]);
                for (std::size_t i = 0; i < handed_on; ++i) model.take(own.handed_on[i], made.values[i]);
                combine_from(part + 1, left - here, chosen, method, model, offer);
                method = before;
            }
        }
    }

    const Assessment& run_;
    const Outcome<double>& carried_;
    std::array<Part, slip_part_count> parts_;
    OutputSet last_;         ///< what the last steps compute
};

}  // namespace overwater
