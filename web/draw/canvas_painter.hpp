#pragma once

#include <cstdint>

#include "imgui.h"

#include "web/draw/picture.hpp"
#include "web/draw/theme.hpp"

namespace overwater {

struct Fonts {
    ImFont* regular = nullptr;
    ImFont* semibold = nullptr;
    /// The font of a face; italics are the regular font, slanted by the painter.
    ImFont* of(Face face) const { return face == Face::semibold ? semibold : regular; }
};

/// How far an italic leans: x grows by this much for each pixel above the baseline.
inline constexpr float italic_slant = 0.2f;

/// A colour of a theme as Dear ImGui takes it.
constexpr ImU32 canvas_colour(std::uint32_t rgba) {
    return IM_COL32(rgba >> 24, (rgba >> 16) & 0xffu, (rgba >> 8) & 0xffu, rgba & 0xffu);
}

/// Height in px of the baseline below the top of a text drawn at `size` px.
float baseline_below_top(ImFont* font, float size);

/// Draws a text whose anchor point lies on its baseline, its upright strokes on whole device pixels.
/// `pixel_scale` is device pixels per CSS pixel.
void paint_text(ImDrawList& list, const Fonts& fonts, Point baseline, const char* begin, const char* end, ImU32 colour,
                Face face, float size, Anchor anchor, float pixel_scale);

/// Paints a picture with its upper left corner at `origin` (CSS px). Level and upright lines lie on whole device
/// pixels.
void paint(const Picture& picture, Point origin, const Theme& theme, ImDrawList& list, const Fonts& fonts,
           float pixel_scale = 1);

}  // namespace overwater
