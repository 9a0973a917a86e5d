#pragma once

struct ImFont;

namespace overwater {

/// Adds a weight of Overwater Sans (0 regular, 1 semibold) to the fonts of the current Dear ImGui context.
ImFont* add_font(int weight);

}  // namespace overwater
