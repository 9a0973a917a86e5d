#pragma once

#include <string>
#include <vector>

#include "web/ui/node.hpp"

namespace overwater::test {

/// A letter as it was painted in the last frame.
struct Letter {
    Rect rect;            ///< in the viewport, to the edge of its ink
    bool cut = false;     ///< a clip rectangle took a part of it away
    bool framed = false;  ///< within a clip rectangle smaller than the page: the text of a field or a list
    std::size_t order = 0;
};

/// The letters among the triangles of the last frame of the current Dear ImGui context. Lines must be drawn without
/// textures (Desk sees to that).
std::vector<Letter> painted_letters(float width, float height);

}  // namespace overwater::test
