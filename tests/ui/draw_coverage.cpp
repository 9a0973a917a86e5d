#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>
#include <vector>

#include "tests/ui/draw_support.hpp"
#include "web/draw/coverage.hpp"
#include "web/draw/packed_font.hpp"
#include "web/draw/truetype_file.hpp"

// The rasteriser of Dear ImGui, which the page does without, reads the font as a file.
#define STBTT_STATIC
#define STB_TRUETYPE_IMPLEMENTATION
#include "imstb_truetype.h"

using namespace overwater;
using namespace overwater::test;

namespace {

std::vector<unsigned char> written(Coverage& coverage, int width, int height, int blur = 1) {
    std::vector<unsigned char> pixels(static_cast<std::size_t>((width + blur - 1) * height), 77);
    coverage.write(pixels.data(), blur);
    return pixels;
}

double area_of(const std::vector<unsigned char>& pixels) {
    double sum = 0;
    for (const unsigned char pixel : pixels) sum += pixel;
    return sum / 255;
}

void polygon(Coverage& coverage, const std::vector<Point>& corners) {
    for (std::size_t i = 0; i < corners.size(); ++i) {
        const Point a = corners[i];
        const Point b = corners[(i + 1) % corners.size()];
        coverage.line(a.x, a.y, b.x, b.y);
    }
}

/// Four quadratic curves a quarter, whose middle points lie where the tangents of neighbours meet.
std::vector<OutlinePoint> circle(int centre, int radius) {
    constexpr int parts = 16;
    const double step = 2 * std::numbers::pi / parts;
    std::vector<OutlinePoint> points;
    for (int i = 0; i < parts; ++i) {
        for (const bool on : {true, false}) {
            const double angle = step * (on ? i : i + 0.5);
            const double distance = on ? radius : radius / std::cos(step / 2);
            points.push_back({static_cast<std::int16_t>(std::lround(centre + distance * std::cos(angle))),
                              static_cast<std::int16_t>(std::lround(centre + distance * std::sin(angle))), on, false});
        }
    }
    points.back().last = true;
    return points;
}

struct Letter {
    std::vector<unsigned char> pixels;
    int width = 0;
    int height = 0;
    int left = 0;
    int top = 0;
};

/// As Dear ImGui's own loader has it, but for curves in finer chords.
Letter by_stb(const stbtt_fontinfo& font, int character, float scale, int across) {
    Letter letter;
    const float x_scale = scale * static_cast<float>(across);
    const int glyph = stbtt_FindGlyphIndex(&font, character);
    int right = 0;
    int bottom = 0;
    stbtt_GetGlyphBitmapBox(&font, glyph, x_scale, scale, &letter.left, &letter.top, &right, &bottom);
    letter.width = right - letter.left + across - 1;
    letter.height = bottom - letter.top;
    if (letter.width <= 0 || letter.height <= 0) return letter;
    letter.pixels.resize(static_cast<std::size_t>(letter.width * letter.height));
    stbtt_vertex* vertices = nullptr;
    const int count = stbtt_GetGlyphShape(&font, glyph, &vertices);
    stbtt__bitmap bitmap{letter.width - across + 1, letter.height, letter.width, letter.pixels.data()};
    constexpr float most_off = 0.01F;  // px, of a chord; Dear ImGui has stb_truetype take 0.35
    stbtt_Rasterize(&bitmap, most_off, vertices, count, x_scale, scale, 0, 0, letter.left, letter.top, 1, nullptr);
    if (across > 1) {
        stbtt__h_prefilter(letter.pixels.data(), letter.width, letter.height, letter.width,
                           static_cast<unsigned>(across));
    }
    stbtt_FreeShape(&font, vertices);
    return letter;
}

}  // namespace

TEST_CASE("Coverage: a square between pixels covers each by its share") {
    Coverage coverage(4, 4);
    polygon(coverage, {{0.5F, 1}, {2.25F, 1}, {2.25F, 2.5F}, {0.5F, 2.5F}});
    const std::vector<unsigned char> expected{0, 0, 0, 0, 128, 255, 64, 0, 64, 128, 32, 0, 0, 0, 0, 0};
    CHECK(written(coverage, 4, 4) == expected);
}

TEST_CASE("Coverage: the way round does not matter, and twice inside is inside") {
    const std::vector<Point> there{{1, 1}, {3, 1}, {3, 3}, {1, 3}};
    const std::vector<Point> back(there.rbegin(), there.rend());
    Coverage one(4, 4);
    polygon(one, there);
    Coverage other(4, 4);
    polygon(other, back);
    Coverage twice(4, 4);
    polygon(twice, there);
    polygon(twice, there);
    Coverage hole(4, 4);
    polygon(hole, {{0, 0}, {4, 0}, {4, 4}, {0, 4}});
    polygon(hole, back);
    const auto expected = written(one, 4, 4);
    CHECK(area_of(expected) == 4);
    CHECK(written(other, 4, 4) == expected);
    CHECK(written(twice, 4, 4) == expected);
    CHECK(area_of(written(hole, 4, 4)) == 12);
}

TEST_CASE("Coverage: a triangle halves the pixels on its long side") {
    Coverage coverage(3, 3);
    polygon(coverage, {{0, 0}, {3, 3}, {0, 3}});
    CHECK(written(coverage, 3, 3) == std::vector<unsigned char>{128, 0, 0, 255, 128, 0, 255, 255, 128});
    // A flat one: below the line y = x/4, so 1/8, 3/8, 5/8 and 7/8 of the pixels.
    Coverage flat(4, 1);
    polygon(flat, {{0, 0}, {4, 0}, {4, 1}});
    CHECK(written(flat, 4, 1) == std::vector<unsigned char>{32, 96, 159, 223});
}

TEST_CASE("Coverage: a circle of quadratic curves has the area of a circle") {
    for (const float radius : {3.0F, 8.0F, 40.0F}) {
        const float scale = radius / 4000;
        const int size = static_cast<int>(2 * radius) + 4;
        Coverage coverage(size, size);
        coverage.outline(circle(0, 4000), scale, scale, static_cast<float>(size) / 2 + 0.3F,
                         static_cast<float>(size) / 2);
        const double expected = std::numbers::pi * static_cast<double>(radius * radius);
        // Chords within the curve take away up to two thirds of 0.02 px along the whole edge.
        const double most = 2.0 / 3 * 0.02 * 2 * std::numbers::pi * static_cast<double>(radius);
        const double area = area_of(written(coverage, size, size));
        CHECK(area < expected);
        CHECK(area > expected - most);
    }
}

TEST_CASE("Coverage: contours may begin off the curve") {
    std::vector<OutlinePoint> points = circle(0, 3000);
    std::vector<OutlinePoint> turned(points.begin() + 1, points.end());
    turned.back().last = false;
    turned.push_back(points.front());
    turned.back().last = true;
    // Without the points on the curve, which are halfway between the others.
    std::vector<OutlinePoint> bare;
    std::copy_if(points.begin(), points.end(), std::back_inserter(bare), [](const auto& p) { return !p.on_curve; });
    std::vector<std::vector<unsigned char>> drawn;
    for (const auto& outline : {points, turned, bare}) {
        Coverage coverage(20, 20);
        coverage.outline(outline, 0.003F, 0.003F, 10, 10);
        drawn.push_back(written(coverage, 20, 20));
    }
    for (std::size_t i = 0; i < drawn[0].size(); ++i) {
        CHECK(std::abs(drawn[1][i] - drawn[0][i]) <= 1);
        CHECK(std::abs(drawn[2][i] - drawn[0][i]) <= 1);
    }
}

TEST_CASE("Coverage: a blurred pixel is the mean with its neighbour to the left") {
    Coverage coverage(2, 1);
    polygon(coverage, {{0, 0}, {1, 0}, {1, 1}, {0, 1}});
    CHECK(written(coverage, 2, 1, 2) == std::vector<unsigned char>{128, 128, 0});
}

TEST_CASE("Letters are painted as stb_truetype would paint them") {
    for (int weight = 0; weight < 2; ++weight) {
        const TruetypeFile file = truetype_file(unpacked_font(weight));
        stbtt_fontinfo font;
        REQUIRE(stbtt_InitFont(&font, file.bytes.get(), 0) != 0);
        CAPTURE(weight);
        double total = 0;
        double count = 0;
        for (const float size : {13.0F, 16.0F, 26.0F, 52.0F, 104.0F}) {
            const float scale = stbtt_ScaleForPixelHeight(&font, size);
            const int across = size > 36 ? 1 : 2;
            for (const Outline& outline : unpacked_font(weight).glyphs.subspan(1)) {
                CAPTURE(size);
                CAPTURE(outline.character);
                const Letter expected = by_stb(font, outline.character, scale, across);
                if (expected.pixels.empty()) continue;
                Coverage coverage(expected.width - across + 1, expected.height);
                coverage.outline(outline.points, scale * static_cast<float>(across), -scale,
                                 static_cast<float>(-expected.left), static_cast<float>(-expected.top));
                const auto found = written(coverage, expected.width - across + 1, expected.height, across);
                REQUIRE(found.size() == expected.pixels.size());
                int most = 0;
                for (std::size_t i = 0; i < found.size(); ++i) {
                    const int off = std::abs(found[i] - expected.pixels[i]);
                    most = std::max(most, off);
                    total += off;
                }
                count += static_cast<double>(found.size());
                CHECK(most <= 7);  // chords of both, 0.02 px and 0.01 px
            }
        }
        CHECK(total / count < 0.5);
    }
}

TEST_CASE("Letters stand where Dear ImGui's own loader put them") {
    for (const float density : {1.0F, 2.0F}) {
        Canvas canvas(density);
        for (int weight = 0; weight < 2; ++weight) {
            ImFont* font = weight == 0 ? canvas.fonts().regular : canvas.fonts().semibold;
            const TruetypeFile file = truetype_file(unpacked_font(weight));
            stbtt_fontinfo info;
            REQUIRE(stbtt_InitFont(&info, file.bytes.get(), 0) != 0);
            for (const float size : {13.0F, 16.0F, 28.0F, 52.0F}) {
                font->CurrentRasterizerDensity = density;
                ImFontBaked* baked = font->GetFontBaked(size);
                const float scale = stbtt_ScaleForPixelHeight(&info, size);
                CHECK(baked->Ascent == std::ceil(812 * scale));
                CHECK(baked->Descent == std::floor(-188 * scale));
                for (const int character : {0x41, 0x67, 0x30, 0x6A, 0xC5, 0x2192}) {
                    if (stbtt_FindGlyphIndex(&info, character) == 0) continue;
                    CAPTURE(character);
                    CAPTURE(size);
                    const int across = size * density > 36 ? 1 : 2;
                    const Letter expected = by_stb(info, character, scale * density, across);
                    const ImFontGlyph* glyph = baked->FindGlyph(static_cast<ImWchar>(character));
                    const float pixel = 1 / density;
                    const float shift = across == 2 ? -0.25F : 0;
                    const auto close = [](float a, float b) { return std::abs(a - b) < 1e-4F; };
                    CHECK(close(glyph->X0,
                                static_cast<float>(expected.left) * pixel / static_cast<float>(across) + shift));
                    CHECK(close(glyph->X1 - glyph->X0,
                                static_cast<float>(expected.width) * pixel / static_cast<float>(across)));
                    CHECK(close(glyph->Y0, static_cast<float>(expected.top) * pixel + std::round(baked->Ascent)));
                    CHECK(close(glyph->Y1 - glyph->Y0, static_cast<float>(expected.height) * pixel));
                    int advance = 0;
                    int left = 0;
                    stbtt_GetCodepointHMetrics(&info, character, &advance, &left);
                    CHECK(close(glyph->AdvanceX, static_cast<float>(advance) * scale));
                }
                CHECK(baked->FindGlyphNoFallback(0x4E00) == nullptr);
            }
        }
    }
}
