#pragma once

#include "web/draw/canvas_painter.hpp"
#include "web/draw/picture.hpp"

namespace overwater {

/// Widths by the fonts of the canvas; a Dear ImGui context with these fonts has to be alive.
class ImguiMeasure final : public TextMeasure {
public:
    explicit ImguiMeasure(Fonts fonts) : fonts_(fonts) {}
    float width(std::string_view words, Face face, float size) const override;

private:
    Fonts fonts_;
};

}  // namespace overwater
