#include "web/browser/native_null_renderer.hpp"

#include <algorithm>

#include "imgui.h"
#include "web/browser/imgui_host.hpp"
#include "web/browser/native_platform.hpp"

namespace overwater {

namespace {

constexpr float frame_time = 1.0F / 60;
constexpr int frames_an_event = 3;  // as in page_main.cpp

}  // namespace

NullRenderer::NullRenderer() : context_(ImGui::CreateContext()) {
    ImGui::SetCurrentContext(context_);
    set_up_imgui();
    ImGui::GetIO().BackendFlags |= ImGuiBackendFlags_RendererHasTextures;
    page_handler().load_fonts();
}

NullRenderer::~NullRenderer() {
    drop_textures();
    ImGui::DestroyContext(context_);
}

int NullRenderer::run_frame(float width, float height) {
    ImGuiIO& io = ImGui::GetIO();
    io.DisplaySize = ImVec2(width, height);
    io.DeltaTime = frame_time;
    native_world().frames_wanted = std::max(0, native_world().frames_wanted - 1);
    ImGui::NewFrame();
    const int wanted = page_handler().frame(width, height);
    ImGui::Render();
    answer_textures(ImGui::GetDrawData());
    return std::max(wanted, native_world().frames_wanted);
}

int NullRenderer::run_until_still(float width, float height, int most) {
    int drawn = 0;
    while (drawn < most) {
        ++drawn;
        if (run_frame(width, height) <= 0) break;
    }
    return drawn;
}

bool NullRenderer::send(const Event& event) {
    const bool used = page_handler().handle(event);
    platform::wake(frames_an_event);
    return used;
}

void NullRenderer::pass_time(double milliseconds) {
    for (const std::string& name : native_advance(milliseconds)) {
        Event event{};
        event.kind = Event::Kind::timer;
        event.key = name;
        send(event);
    }
}

}  // namespace overwater
