#include "tests/ui/ink.hpp"

#include <algorithm>

#include "imgui.h"

namespace overwater::test {

namespace {

/// A letter is a quadrangle of two triangles, upright or leaning, with a rectangle of the font's texture. Everything else
/// is painted with one white pixel of it.
bool is_letter(const ImDrawVert* corners) {
    const ImVec2 a = corners[0].uv;
    const ImVec2 c = corners[2].uv;
    return a.x < c.x && a.y < c.y && corners[1].uv.x == c.x && corners[1].uv.y == a.y && corners[3].uv.x == a.x &&
           corners[3].uv.y == c.y;
}

}  // namespace

std::vector<Letter> painted_letters(float width, float height) {
    std::vector<Letter> letters;
    const ImDrawData* data = ImGui::GetDrawData();
    for (const ImDrawList* list : data->CmdLists) {
        for (const ImDrawCmd& command : list->CmdBuffer) {
            const ImVec4 clip = command.ClipRect;
            for (unsigned i = 0; i + 5 < command.ElemCount;) {
                const ImDrawIdx* index = list->IdxBuffer.Data + command.IdxOffset + i;
                const unsigned first = index[0];
                const bool quad = index[1] == first + 1 && index[2] == first + 2 && index[3] == first &&
                                  index[4] == first + 2 && index[5] == first + 3;
                const ImDrawVert* corners = list->VtxBuffer.Data + command.VtxOffset + first;
                if (!quad || !is_letter(corners)) {
                    i += 3;
                    continue;
                }
                i += 6;
                Letter letter;
                // Of a leaning letter the upright part within it.
                const float left = std::max(corners[0].pos.x, corners[3].pos.x);
                const float right = std::max(left + 1, std::min(corners[1].pos.x, corners[2].pos.x));
                letter.rect = {left, corners[0].pos.y, right - left, corners[2].pos.y - corners[0].pos.y};
                letter.framed = clip.z - clip.x < width - 1 || clip.w - clip.y < height - 1;
                letter.cut = letter.rect.x < clip.x - 0.6F || letter.rect.right() > clip.z + 0.6F;
                letter.order = letters.size();
                letters.push_back(letter);
            }
        }
    }
    return letters;
}

}  // namespace overwater::test
