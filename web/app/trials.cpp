// How sure the result is, kept for the run at hand, and when the trials are made.

#include "web/app/app.hpp"
#include "web/browser/platform.hpp"
#include "web/panels/wording.hpp"

namespace overwater {

namespace {

/// Trials begin when typing pauses, and take a part of each frame until they are done.
constexpr int trials_after_ms = 250;
constexpr double slice_ms = 6;

}  // namespace

void App::settle_certainty() {
    gap_is_known_ = false;
    const Output headline = sought();
    certainty_.settle(assessment(), headline, true);
    if (looked_at_output_ == headline) looked_at_output_.reset();
    if (looked_at_output_) looked_at_.settle(assessment(), *looked_at_output_, false);
    platform::start_timer("trials", trials_after_ms);
}

Output App::output_looked_at() const { return looked_at_output_.value_or(sought()); }

void App::look_at(Output output) {
    looked_at_output_ = output;
    settle_certainty();
    ask_trials();
    platform::wake(2);
}

void App::ask_trials() {
    const bool looked_at = page_ == PageName::how_sure;
    if (!looked_at && certainty_.caution() == Caution::none) return;
    certainty_.ask_trials();
    if (looked_at) looked_at_.ask_trials();
    platform::wake(1);
}

bool App::run_trials() {
    if (!certainty_.trials_wanted() && !looked_at_.trials_wanted()) return false;
    // What is looked at comes first.
    if (looked_at_output_ && looked_at_.trials_wanted()) {
        looked_at_.run_trials(slice_ms);
    } else if (certainty_.run_trials(slice_ms)) {
        gap_is_known_ = false;
    }
    return true;
}

}  // namespace overwater
