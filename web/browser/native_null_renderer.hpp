#pragma once

#include "web/browser/event.hpp"

struct ImGuiContext;

namespace overwater {

/// Runs the page's application without a screen: a Dear ImGui context, and a renderer that draws nothing.
/// One at a time.
class NullRenderer {
public:
    /// Makes the context and loads the fonts through page_handler().
    NullRenderer();
    ~NullRenderer();
    NullRenderer(const NullRenderer&) = delete;
    NullRenderer& operator=(const NullRenderer&) = delete;

    /// One frame at this size in CSS pixels. Returns the number of further frames wanted.
    int run_frame(float width, float height);
    /// Frames until none is wanted, `most` at the most. Returns how many were drawn.
    int run_until_still(float width, float height, int most = 20);
    /// What the page does with an event.
    bool send(const Event& event);
    /// Moves the clock of the native platform and delivers the timers that come due.
    void pass_time(double milliseconds);

private:
    ImGuiContext* context_ = nullptr;
};

}  // namespace overwater
