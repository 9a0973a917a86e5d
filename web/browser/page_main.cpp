// The page's own entry: what the shell calls (ow_...), and a frame of Dear ImGui.

#include <emscripten/emscripten.h>

#include <array>
#include <cstdlib>

#include "imgui.h"
#include "web/browser/event.hpp"
#include "web/browser/imgui_host.hpp"
#include "web/browser/page_canvas.hpp"
#include "web/browser/page_painter.hpp"
#include "web/browser/platform.hpp"
#include "web/draw/truetype_file.hpp"

namespace {

using overwater::Event;
using overwater::page_handler;

// The first frame lacks what the second knows (sizes, glyphs), so every event is worth three.
constexpr int frames_an_event = 3;

struct Page {
    float width = 1;
    float height = 1;
    float pixel_ratio = 1;
    overwater::PageCanvas canvas;
    overwater::PagePainter painter;
    ImDrawData* drawn = nullptr;
    overwater::TruetypeFile font;
    bool painting = false;  // there is a WebGL context, lost or not
    bool lost = false;
};
Page page;

bool tell(const Event& event) {
    const bool used = page_handler().handle(event);
    overwater::platform::wake(frames_an_event);
    return used;
}

int draw_until_render() {
    page.canvas.begin_frame(page.width, page.height, page.pixel_ratio);
    const int wanted = page_handler().frame(page.width, page.height);
    page.drawn = page.canvas.end_frame();
    return wanted;
}

void paint() {
    std::array<float, 3> behind{};
    page_handler().clear_color(behind.data());
    page.painter.paint(*page.drawn, behind);
}

}  // namespace

extern "C" {

/// Makes the Dear ImGui context and, where the browser gives one, a context to paint on.
EMSCRIPTEN_KEEPALIVE void ow_start() {
    page.canvas.start();
    page.painting = page.painter.start();
    ImGui::GetIO().BackendFlags |= ImGuiBackendFlags_RendererHasTextures;
    page_handler().load_fonts();
    tell({.kind = Event::Kind::painting, .a = page.painting ? 1.0 : 0.0});
}

/// 1 where the canvas is painted, 0 where the mirror is the page.
EMSCRIPTEN_KEEPALIVE int ow_painting() { return page.painting ? 1 : 0; }

/// An event (event.hpp). 1 when the browser's own action must not follow.
EMSCRIPTEN_KEEPALIVE int ow_handle(int kind, const char* key, const char* text, double a, double b, double c) {
    const Event event{.kind = static_cast<Event::Kind>(kind), .key = key, .text = text, .a = a, .b = b, .c = c};
    if (event.kind == Event::Kind::resize) {
        page.width = static_cast<float>(a);
        page.height = static_cast<float>(b);
        page.pixel_ratio = static_cast<float>(c);
    }
    if (event.kind == Event::Kind::context_lost) page.lost = true;
    if (event.kind == Event::Kind::context_restored) {
        page.lost = false;
        page.painter.begin_anew();
    }
    return tell(event) ? 1 : 0;
}

/// Draws one frame. Returns how many more are wanted.
EMSCRIPTEN_KEEPALIVE int ow_frame() {
    const int wanted = draw_until_render();
    if (!page.painting) {
        overwater::answer_textures(page.drawn);
    } else if (!page.lost) {
        paint();
    }
    return wanted;
}

/// Mean milliseconds of a frame, mirror included, over `n` frames, without painting. n >= 1.
EMSCRIPTEN_KEEPALIVE double ow_bench(int n) {
    const double begin = overwater::platform::now_ms();
    for (int i = 0; i < n; ++i) {
        draw_until_render();
        if (!page.painting) overwater::answer_textures(page.drawn);
    }
    return (overwater::platform::now_ms() - begin) / n;
}

/// The bytes of a font, for the document: 0 regular, 1 semibold. They are there until the next call.
EMSCRIPTEN_KEEPALIVE const unsigned char* ow_font(int which) {
    page.font = overwater::truetype_file(overwater::unpacked_font(which));
    return page.font.bytes.get();
}
/// The size of the font that was asked for last.
EMSCRIPTEN_KEEPALIVE unsigned ow_font_size(int) { return static_cast<unsigned>(page.font.size); }

/// Memory for a text that the shell hands over.
EMSCRIPTEN_KEEPALIVE void* ow_allocate(unsigned bytes) { return std::malloc(bytes); }
EMSCRIPTEN_KEEPALIVE void ow_release(void* memory) { std::free(memory); }
}

int main() { return 0; }
