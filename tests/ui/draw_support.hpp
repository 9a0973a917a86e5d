#pragma once

#include <algorithm>
#include <cmath>
#include <string>
#include <string_view>
#include <vector>

#include "imgui.h"
#include "web/browser/imgui_host.hpp"
#include "web/draw/imgui_measure.hpp"
#include "web/draw/outline_loader.hpp"
#include "web/draw/picture.hpp"

/// What the tests of the drawings share.
namespace overwater::test {

/// A width for each character that has nothing to do with a font, so that layout can be checked by hand.
class PlainMeasure final : public TextMeasure {
public:
    float width(std::string_view words, Face, float size) const override {
        float characters = 0;
        for (const char c : words) characters += (static_cast<unsigned char>(c) & 0xC0U) != 0x80U ? 1.0F : 0.0F;
        return characters * size / 2;
    }
};

struct Bounds {
    float left = 1e9F;
    float top = 1e9F;
    float right = -1e9F;
    float bottom = -1e9F;
    void add(float x, float y) {
        left = std::min(left, x);
        top = std::min(top, y);
        right = std::max(right, x);
        bottom = std::max(bottom, y);
    }
    bool empty() const { return right < left; }
    bool overlaps(const Bounds& o, float slack) const {
        return left + slack < o.right && o.left + slack < right && top + slack < o.bottom && o.top + slack < bottom;
    }
};

/// Dear ImGui with the page's fonts, in the middle of a frame, and a draw list without soft edges.
class Canvas {
public:
    explicit Canvas(float pixel_scale = 1) : scale_(pixel_scale), context_(ImGui::CreateContext()) {
        ImGui::SetCurrentContext(context_);
        set_up_imgui();
        ImGuiIO& io = ImGui::GetIO();
        io.BackendFlags |= ImGuiBackendFlags_RendererHasTextures;
        io.DisplaySize = ImVec2(4000, 4000);
        io.DisplayFramebufferScale = ImVec2(pixel_scale, pixel_scale);
        io.DeltaTime = 0.02F;
        fonts_.regular = add_font(0);
        fonts_.semibold = add_font(1);
        ImGui::NewFrame();
        list().Flags = ImDrawListFlags_None;
    }
    ~Canvas() {
        ImGui::Render();
        answer_textures(ImGui::GetDrawData());
        drop_textures();
        ImGui::DestroyContext(context_);
    }
    Canvas(const Canvas&) = delete;
    Canvas& operator=(const Canvas&) = delete;

    ImDrawList& list() const { return *ImGui::GetBackgroundDrawList(); }
    const Fonts& fonts() const { return fonts_; }
    ImguiMeasure measure() const { return ImguiMeasure(fonts_); }

    /// Bounds of all vertices that painting one picture added.
    Bounds painted(const Picture& picture, Point origin, const Theme& theme) const {
        // A list of its own: one list holds no more than 65,536 points.
        ImDrawList own(ImGui::GetDrawListSharedData());
        own._ResetForNewFrame();
        own.Flags = ImDrawListFlags_None;
        own.PushTexture(ImGui::GetIO().Fonts->TexRef);
        own.PushClipRectFullScreen();
        paint(picture, origin, theme, own, fonts_, scale_);
        Bounds bounds;
        for (const ImDrawVert& vertex : own.VtxBuffer) {
            bounds.add(vertex.pos.x - origin.x, vertex.pos.y - origin.y);
        }
        return bounds;
    }

private:
    float scale_;
    ImGuiContext* context_;
    Fonts fonts_;
};

/// Where a text mark's letters are: its width by the measure, from its ascenders to its descenders.
inline Bounds text_bounds(const Mark& mark, const TextMeasure& measure, float above = 0.7F, float below = 0.2F) {
    const float width = measure.width(mark.text, mark.face, mark.size);
    float left = mark.points[0].x;
    if (mark.anchor == Anchor::middle) left -= width / 2;
    if (mark.anchor == Anchor::end) left -= width;
    Bounds bounds;
    bounds.add(left, mark.points[0].y - above * mark.size);
    bounds.add(left + width, mark.points[0].y + below * mark.size);
    return bounds;
}

inline std::vector<const Mark*> marks_of(const Picture& picture, Mark::Kind kind) {
    std::vector<const Mark*> found;
    for (const Mark& mark : picture.marks) {
        if (mark.kind == kind) found.push_back(&mark);
    }
    return found;
}

inline const Mark* text_mark(const Picture& picture, std::string_view words) {
    for (const Mark& mark : picture.marks) {
        if (mark.kind == Mark::Kind::text && mark.text == words) return &mark;
    }
    return nullptr;
}

/// Names two texts that overlap by more than `slack` px, or nothing.
inline std::string overlapping_texts(const Picture& picture, const TextMeasure& measure, float slack) {
    const std::vector<const Mark*> texts = marks_of(picture, Mark::Kind::text);
    for (std::size_t i = 0; i < texts.size(); ++i) {
        for (std::size_t k = i + 1; k < texts.size(); ++k) {
            if (text_bounds(*texts[i], measure).overlaps(text_bounds(*texts[k], measure), slack)) {
                return texts[i]->text + " | " + texts[k]->text;
            }
        }
    }
    return {};
}

}  // namespace overwater::test
