// The projector: which step is shown, and whether its number is.

#include "web/app/app.hpp"
#include "web/browser/platform.hpp"
#include "web/panels/panels.hpp"

namespace overwater {

void App::enter_projector() {
    if (page_ != PageName::projector) before_projector_ = page_;
    projector_before_working_.reset();
    projector_changes_ = false;
    go(PageName::projector);
}

void App::leave_projector() {
    projector_before_working_.reset();
    go(before_projector_);
}

void App::projector_toggle_changes() {
    projector_changes_ = !projector_changes_;
    platform::wake(2);
}

void App::projector_forget_marks() {
    projector_before_working_.reset();
    platform::wake(2);
}

/// Keeps the working as it was before the first change on the projector.
void App::projector_note_change() {
    if (page_ != PageName::projector || projector_before_working_) return;
    projector_before_working_ = std::make_unique<Working>(*working_);
}

void App::restart_projector() {
    projector_step_ = 0;
    projector_shows_ = false;
    projector_before_working_.reset();
}

void App::projector_show() {
    projector_shows_ = true;
    platform::wake(2);
}

void App::projector_go(int by) {
    const std::size_t last = projector_steps(*this).size() - 1;
    if (by > 0) {
        // Forward first shows the number asked for, then the next step.
        if (!projector_shows_) {
            projector_shows_ = true;
        } else if (projector_step_ < last) {
            ++projector_step_;
            projector_shows_ = false;
        }
    } else if (projector_step_ > 0) {
        --projector_step_;
        projector_shows_ = true;
    } else {
        projector_shows_ = false;
    }
    platform::wake(2);
}

bool App::projector_key(const std::string& key) {
    if (key == "ArrowRight" || key == "PageDown") {
        projector_go(1);
    } else if (key == "ArrowLeft" || key == "PageUp") {
        projector_go(-1);
    } else if (key == " " || key == "Space") {
        projector_go(1);
    } else if (key == "Escape") {
        leave_projector();
    } else {
        return false;
    }
    return true;
}

}  // namespace overwater
