#include "web/app/certainty.hpp"

#include "core/result/known_value.hpp"
#include "web/browser/platform.hpp"

namespace overwater {

namespace {

/// So few that a slow machine needs less than a slice for them.
constexpr std::size_t trials_at_once = 4096;

}  // namespace

void Certainty::settle(const Assessment& assessment, Output output, bool comparable) {
    doubts_ = doubts_of(assessment);
    sensitivities_.emplace(doubts_);
    budget_ = budget_of(doubts_, *sensitivities_, output);
    caution_ = caution_of(doubts_, *sensitivities_, budget_);
    accepted_ = comparable ? known_value(assessment, output) : std::nullopt;
    verdict_ = verdict_of(budget_, caution_, nullptr, accepted_);
    trials_.reset();
    asked_ = false;
}

void Certainty::ask_trials() { asked_ = true; }

bool Certainty::run_trials(double milliseconds) {
    if (!trials_wanted()) return false;
    if (!trials_) trials_.emplace(doubts_, budget_.output);
    const double end = platform::now_ms() + milliseconds;
    while (!trials_->step(trials_at_once)) {
        if (platform::now_ms() >= end) return false;
    }
    verdict_ = verdict_of(budget_, caution_, &trials_->result(), accepted_);
    return true;
}

}  // namespace overwater
