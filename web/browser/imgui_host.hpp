#pragma once

#include "imgui.h"

/// What page and tests do alike with Dear ImGui, so that the tests see what the page does.
namespace overwater {

/// Settings of the current context: nothing is kept in a file, the keyboard is the document's, nothing blinks.
inline void set_up_imgui() {
    ImGuiIO& io = ImGui::GetIO();
    io.IniFilename = nullptr;
    io.LogFilename = nullptr;
    io.ConfigFlags &= ~(ImGuiConfigFlags_NavEnableKeyboard | ImGuiConfigFlags_NavEnableGamepad);
    io.ConfigFlags |= ImGuiConfigFlags_NoMouseCursorChange;
    io.ConfigInputTextCursorBlink = false;
}

/// Stands in for a renderer: says that every texture asked for is there.
inline void answer_textures(const ImDrawData* data) {
    if (data == nullptr || data->Textures == nullptr) return;
    for (ImTextureData* texture : *data->Textures) {
        if (texture->Status == ImTextureStatus_WantDestroy) {
            texture->SetTexID(ImTextureID_Invalid);
            texture->SetStatus(ImTextureStatus_Destroyed);
        } else if (texture->Status != ImTextureStatus_OK && texture->Status != ImTextureStatus_Destroyed) {
            texture->SetTexID(static_cast<ImTextureID>(texture->UniqueID + 1));
            texture->SetStatus(ImTextureStatus_OK);
        }
    }
}

/// Before the context is destroyed: lets go of the textures that answer_textures() promised.
inline void drop_textures() {
    for (ImTextureData* texture : ImGui::GetPlatformIO().Textures) {
        texture->SetTexID(ImTextureID_Invalid);
        texture->SetStatus(ImTextureStatus_Destroyed);
    }
}

}  // namespace overwater
