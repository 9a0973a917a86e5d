// Takes the place of imgui_widgets.cpp and imgui_tables.cpp on the page, which is one full window of drawing: widgets
// are drawn by web/ui and live in the document. imgui.cpp calls some functions of those files from its frame, and with
// them come text editing, tables, tabs and menus, 45 kB of WebAssembly that never run. A widget that is used after all is
// an undefined symbol at the link. The native build has all of Dear ImGui.

#include <cstddef>
#include <cstdlib>
#include <cstring>

#include "imgui.h"
#include "imgui_internal.h"

// tools/cmake/third_party.cmake has Dear ImGui call this for sscanf: for its settings file, and there is none.
extern "C" int overwater_scan(const char*, const char*, ...) { return 0; }

// For fprintf: what a shader compiler says goes nowhere; the page without its canvas is the document (shell/frames.mjs).
extern "C" int overwater_report(void*, const char*, ...) { return 0; }

namespace {

// Nothing on the page begins what these end.
[[noreturn]] void absent() { std::abort(); }

}  // namespace

// Called in every frame, at the start or when the focus moves; without menus, tables and text fields nothing is to do.
void ImGuiMenuColumns::Update(float, bool) {}
void ImGui::TableSettingsAddSettingsHandler() {}
void ImGui::TableGcCompactSettings() {}
void ImGui::InputTextDeactivateHook(ImGuiID) {}
ImGuiInputTextState::ImGuiInputTextState() { std::memset(static_cast<void*>(this), 0, sizeof(*this)); }

// Dear ImGui begins a window of its own in every frame, which is never seen and takes no press.
bool ImGui::ButtonBehavior(const ImRect&, ImGuiID, bool* hovered, bool* held, ImGuiButtonFlags) {
    if (hovered != nullptr) *hovered = false;
    if (held != nullptr) *held = false;
    return false;
}
bool ImGui::CloseButton(ImGuiID, const ImVec2&) { return false; }
bool ImGui::CollapseButton(ImGuiID, const ImVec2&) { return false; }
void ImGui::Scrollbar(ImGuiAxis) {}

void ImGui::Dummy(const ImVec2& size) {
    const ImVec2 at = GetCursorScreenPos();
    ItemSize(size);
    ItemAdd(ImRect(at.x, at.y, at.x + size.x, at.y + size.y), 0);
}

bool ImGui::Selectable(const char*, bool, ImGuiSelectableFlags, const ImVec2&) { absent(); }
void ImGui::EndColumns() { absent(); }
void ImGui::EndMenuBar() { absent(); }
ImGuiMultiSelectIO* ImGui::EndMultiSelect() { absent(); }
void ImGui::EndTabBar() { absent(); }
void ImGui::EndTable() { absent(); }
void ImGui::SeparatorText(const char*) { absent(); }
void ImGui::TableGcCompactTransientBuffers(ImGuiTable*) { absent(); }
void ImGui::TableGcCompactTransientBuffers(ImGuiTableTempData*) { absent(); }
void ImGui::TextV(const char*, va_list) { absent(); }
void ImGui::TreePop() { absent(); }
