#pragma once

#include <array>
#include <vector>

struct ImDrawData;

namespace overwater {

/// Hands what Dear ImGui drew to shell/painter.mjs, which paints it by WebGL: textures as they change, then one list of
/// triangles. Dear ImGui's own renderer and Emscripten's copy of OpenGL would cost 8 kB to load.
class PagePainter {
public:
    /// True where the browser gives a context to paint on.
    bool start();
    /// The context came back empty: every texture is handed over again.
    void begin_anew();
    /// `behind` is what lies behind everything, red, green and blue from 0 to 1.
    void paint(const ImDrawData& drawn, const std::array<float, 3>& behind);

private:
    std::vector<float> commands_;
};

}  // namespace overwater
