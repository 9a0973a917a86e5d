#include "web/browser/page_painter.hpp"

#include <algorithm>
#include <cmath>

#include "imgui.h"

// Carried out by shell/platform.library.js.
extern "C" {
int ow_paint_start();
void ow_paint_texture(int id, int width, int height, const void* pixels);
void ow_paint_drop_texture(int id);
void ow_paint(const float* page, const void* vertices, unsigned vertex_bytes, const void* indices, unsigned index_bytes,
              const float* commands, unsigned numbers);
}

namespace overwater {

static_assert(sizeof(ImDrawVert) == 20 && sizeof(ImDrawIdx) == 2, "shell/painter.mjs reads them so");

bool PagePainter::start() { return ow_paint_start() != 0; }

void PagePainter::begin_anew() {
    for (ImTextureData* texture : ImGui::GetPlatformIO().Textures) {
        if (texture->Status == ImTextureStatus_OK) texture->SetStatus(ImTextureStatus_WantCreate);
    }
}

void PagePainter::paint(const ImDrawData& drawn, const std::array<float, 3>& behind) {
    for (ImTextureData* texture : *drawn.Textures) {
        const int id = texture->UniqueID + 1;
        if (texture->Status == ImTextureStatus_WantDestroy) {
            ow_paint_drop_texture(id);
            texture->SetTexID(ImTextureID_Invalid);
            texture->SetStatus(ImTextureStatus_Destroyed);
        } else if (texture->Status == ImTextureStatus_WantCreate || texture->Status == ImTextureStatus_WantUpdates) {
            ow_paint_texture(id, texture->Width, texture->Height, texture->GetPixels());
            texture->SetTexID(static_cast<ImTextureID>(id));
            texture->SetStatus(ImTextureStatus_OK);
        }
    }
    const ImVec2 scale = drawn.FramebufferScale;
    const float page[] = {drawn.DisplaySize.x, drawn.DisplaySize.y, behind[0], behind[1], behind[2]};
    const ImDrawList& list = *drawn.CmdLists[0];
    commands_.clear();
    for (const ImDrawCmd& command : list.CmdBuffer) {
        const ImVec4& clip = command.ClipRect;
        const float numbers[] = {
            std::floor(std::max(clip.x, 0.0f) * scale.x),   std::floor(std::max(clip.y, 0.0f) * scale.y),
            std::ceil(std::min(clip.z, page[0]) * scale.x), std::ceil(std::min(clip.w, page[1]) * scale.y),
            static_cast<float>(command.GetTexID()),         static_cast<float>(command.IdxOffset),
            static_cast<float>(command.ElemCount)};
        commands_.insert(commands_.end(), std::begin(numbers), std::end(numbers));
    }
    ow_paint(page, list.VtxBuffer.Data, static_cast<unsigned>(list.VtxBuffer.size_in_bytes()), list.IdxBuffer.Data,
             static_cast<unsigned>(list.IdxBuffer.size_in_bytes()), commands_.data(),
             static_cast<unsigned>(commands_.size()));
}

}  // namespace overwater
