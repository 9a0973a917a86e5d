#pragma once

struct ImDrawData;

namespace overwater {

/// What the page takes of Dear ImGui: its context, font atlas and one draw list, without its windows. The document holds
/// the controls and scrolls, so a frame of windows, navigation and settings would do nothing and cost 25 kB to load and
/// most of a frame's time. Dear ImGui is pinned by checksum, so its internal functions used here stand still.
class PageCanvas {
public:
    /// Makes the context. Once.
    void start();
    /// Begins a frame of this size in CSS pixels; what is drawn goes to ImGui::GetBackgroundDrawList().
    void begin_frame(float width, float height, float pixel_ratio);
    /// Ends it: what a renderer draws, and the textures it has to bring up to date.
    ImDrawData* end_frame();
};

}  // namespace overwater
