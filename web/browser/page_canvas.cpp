#include "web/browser/page_canvas.hpp"

#include "imgui.h"
#include "imgui_internal.h"

namespace overwater {

void PageCanvas::start() {
    IMGUI_CHECKVERSION();
    // What ImGui::CreateContext() does for drawing, without the handlers of settings, clipboard and keyboard.
    ImGuiContext* context = IM_NEW(ImGuiContext)(nullptr);
    ImGui::SetCurrentContext(context);
    context->Viewports.push_back(IM_NEW(ImGuiViewportP)());
    context->DrawListSharedData.Context = context;
    ImGui::RegisterFontAtlas(context->IO.Fonts);
    context->Initialized = true;
}

void PageCanvas::begin_frame(float width, float height, float pixel_ratio) {
    ImGuiContext& g = *ImGui::GetCurrentContext();
    ++g.FrameCount;
    g.IO.DisplaySize = ImVec2(width, height);
    g.IO.DisplayFramebufferScale = ImVec2(pixel_ratio, pixel_ratio);
    g.Viewports[0]->Size = g.IO.DisplaySize;
    ImDrawListSharedData& shared = g.DrawListSharedData;
    shared.ClipRectFullscreen = ImVec4(0, 0, width, height);
    shared.CurveTessellationTol = g.Style.CurveTessellationTol;
    shared.SetCircleTessellationMaxError(g.Style.CircleTessellationMaxError);
    shared.InitialFlags =
        ImDrawListFlags_AntiAliasedLines | ImDrawListFlags_AntiAliasedLinesUseTex | ImDrawListFlags_AntiAliasedFill;
    if ((g.IO.BackendFlags & ImGuiBackendFlags_RendererHasVtxOffset) != 0) {
        shared.InitialFlags |= ImDrawListFlags_AllowVtxOffset;
    }
    shared.InitialFringeScale = 1.0f;
    shared.FontAtlas = g.IO.Fonts;
    ImFontAtlasUpdateNewFrame(g.IO.Fonts, g.FrameCount, true);
    // The atlas was begun before the lists knew it: without this nothing but letters is seen until it grows.
    ImFontAtlasUpdateDrawListsSharedData(g.IO.Fonts);
    shared.Font = g.IO.Fonts->Fonts[0];
    shared.FontSize = 16;
    shared.FontScale = 1;
}

ImDrawData* PageCanvas::end_frame() {
    ImGuiContext& g = *ImGui::GetCurrentContext();
    g.PlatformIO.Textures.resize(0);
    for (ImTextureData* texture : g.IO.Fonts->TexList) {
        texture->RefCount = 1;
        g.PlatformIO.Textures.push_back(texture);
    }
    ImDrawData& data = g.Viewports[0]->DrawDataP;
    data.Clear();
    data.Valid = true;
    data.DisplaySize = g.IO.DisplaySize;
    data.FramebufferScale = g.IO.DisplayFramebufferScale;
    data.Textures = &g.PlatformIO.Textures;
    data.AddDrawList(ImGui::GetBackgroundDrawList());
    return &data;
}

}  // namespace overwater
