#pragma once

#include <optional>

#include "core/result/budget.hpp"
#include "core/result/monte_carlo.hpp"
#include "core/result/verdict.hpp"

namespace overwater {

/// How sure one output of a run is: the budget at once, the trials in slices of a few milliseconds when asked for.
class Certainty {
public:
    /// Forgets the trials. `comparable` tells whether the output is to be compared with what is known of it.
    void settle(const Assessment& assessment, Output output, bool comparable);

    const Doubts& doubts() const { return doubts_; }
    const Sensitivities& sensitivities() const { return *sensitivities_; }
    const Budget& budget() const { return budget_; }
    const Verdict& verdict() const { return verdict_; }
    Caution caution() const { return verdict_.caution; }
    /// There is a value, and its doubt is known.
    bool known() const { return !budget_.rows.empty(); }

    /// Asks for the trials; they begin with the next slice.
    void ask_trials();
    bool trials_wanted() const { return asked_ && known() && !(trials_ && trials_->done()); }
    /// Trials for about `milliseconds`. True when the verdict may have changed.
    bool run_trials(double milliseconds);
    /// Nothing before the first slice.
    const MonteCarlo* trials() const { return trials_ ? &*trials_ : nullptr; }
    /// Nothing before they are done.
    const MonteCarloResult* result() const { return trials_ && trials_->done() ? &trials_->result() : nullptr; }

private:
    Doubts doubts_;
    std::optional<Sensitivities> sensitivities_;
    Budget budget_;
    Caution caution_ = Caution::none;
    std::optional<double> accepted_;
    Verdict verdict_;
    std::optional<MonteCarlo> trials_;
    bool asked_ = false;
};

}  // namespace overwater
