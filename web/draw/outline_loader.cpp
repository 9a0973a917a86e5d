// What Dear ImGui asks of a font, answered from the unpacked outlines. It takes the place of stb_truetype, which reads
// files and formats that the page has not: 6 kB less to load (brotli).
#include "web/draw/outline_loader.hpp"

#include <algorithm>
#include <cmath>

#include "generated/font_data.hpp"
#include "imgui.h"
#include "imgui_internal.h"
#include "misc/freetype/imgui_freetype.h"
#include "web/draw/coverage.hpp"
#include "web/draw/packed_font.hpp"

namespace overwater {

namespace {

constexpr float reference_size = 16;  // px; the weights of one size share baselines

/// Of one unit, at a font size of 1 px: a font is as high as its ascender and descender.
constexpr float unit = 1.0F / (overwater_font_ascender - overwater_font_descender);

const Outline* find(const ImFontConfig* source, ImWchar character) {
    return unpacked_font(static_cast<int>(source->FontNo)).find(character);
}

bool contains(ImFontAtlas*, ImFontConfig* source, ImWchar character) { return find(source, character) != nullptr; }

bool measure(ImFontAtlas*, ImFontConfig*, ImFontBaked* baked, void*) {
    baked->Ascent = std::ceil(overwater_font_ascender * (unit * baked->Size));
    baked->Descent = std::floor(overwater_font_descender * (unit * baked->Size));
    return true;
}

/// Pixels that an outline touches. y goes down.
struct Box {
    float left = 1e9F;
    float top = 1e9F;
    float right = -1e9F;
    float bottom = -1e9F;

    Box(const Outline& outline, float x_scale, float y_scale) {
        for (const OutlinePoint& p : outline.points) {
            left = std::min(left, std::floor(p.x * x_scale));
            right = std::max(right, std::ceil(p.x * x_scale));
            top = std::min(top, std::floor(p.y * y_scale));
            bottom = std::max(bottom, std::ceil(p.y * y_scale));
        }
    }
};

bool load(ImFontAtlas* atlas, ImFontConfig* source, ImFontBaked* baked, void*, ImWchar character, ImFontGlyph* glyph,
          float* only_advance) {
    const Outline* outline = find(source, character);
    if (outline == nullptr) return false;
    const float scale = unit * baked->Size;
    const float advance = static_cast<float>(outline->advance) * scale;
    if (only_advance != nullptr) {
        *only_advance = advance;
        return true;
    }
    glyph->Codepoint = character;
    glyph->AdvanceX = advance;

    // Small letters have two pixels where the screen has one, so that they may lie between its pixels.
    int across = 1;
    int down = 1;
    ImFontAtlasBuildGetOversampleFactors(source, baked, &across, &down);
    const float density = source->RasterizerDensity * baked->RasterizerDensity;
    const float x_scale = scale * density * static_cast<float>(across);
    const float y_scale = -scale * density;
    const Box box(*outline, x_scale, y_scale);
    if (!(box.left < box.right && box.top < box.bottom)) return true;

    const int width = static_cast<int>(box.right - box.left);
    const int height = static_cast<int>(box.bottom - box.top);
    const int written = width + across - 1;
    const ImFontAtlasRectId place = ImFontAtlasPackAddRect(atlas, written, height);
    if (place == ImFontAtlasRectId_Invalid) return false;
    Coverage coverage(width, height);
    coverage.outline(outline->points, x_scale, y_scale, -box.left, -box.top);
    ImVector<unsigned char>& pixels = atlas->Builder->TempBuffer;
    pixels.resize(written * height);
    coverage.write(pixels.Data, across);

    // The mean with the pixel to the left moves a letter to the right by half a pixel of those.
    const float shift = static_cast<float>(1 - across) / static_cast<float>(2 * across);
    const float a_pixel = 1 / (static_cast<float>(across) * density);
    const float baseline = std::round(baked->Ascent);
    glyph->X0 = box.left * a_pixel + shift;
    glyph->X1 = (box.left + static_cast<float>(written)) * a_pixel + shift;
    glyph->Y0 = box.top / density + baseline;
    glyph->Y1 = box.bottom / density + baseline;
    glyph->Visible = true;
    glyph->PackId = place;
    ImFontAtlasBakedSetFontGlyphBitmap(atlas, baked, source, glyph, ImFontAtlasPackGetRect(atlas, place), pixels.Data,
                                       ImTextureFormat_Alpha8, written);
    return true;
}

}  // namespace

ImFont* add_font(int weight) {
    ImFontConfig config;
    config.FontLoader = ImGuiFreeType::GetFontLoader();
    config.FontNo = static_cast<ImU32>(weight);
    config.SizePixels = reference_size;
    return ImGui::GetIO().Fonts->AddFont(&config);
}

}  // namespace overwater

// IMGUI_ENABLE_FREETYPE makes Dear ImGui take its loader from here instead of compiling stb_truetype.
const ImFontLoader* ImGuiFreeType::GetFontLoader() {
    static ImFontLoader loader;
    loader.Name = "outlines";
    loader.FontSrcContainsGlyph = overwater::contains;
    loader.FontBakedInit = overwater::measure;
    loader.FontBakedLoadGlyph = overwater::load;
    return &loader;
}
