#include "web/draw/theme.hpp"

#include <cmath>

namespace overwater {

namespace {

constexpr std::size_t count = static_cast<std::size_t>(Ink::count);

/// Opaque colours given as 0xRRGGBB; too few of them do not compile.
template <std::size_t N>
constexpr Theme from(const std::uint32_t (&rgb)[N]) {
    static_assert(N == count);
    Theme t;
    for (std::size_t i = 0; i < count; ++i) t.rgba[i] = rgb[i] << 8 | 0xffu;
    return t;
}

// In the order of Ink: paper, card, line, field_edge, text, soft, copper, copper_soft, liquid, liquid_edge, bucket,
// gas, gas_hatch, warning, warning_paper, good, dry_bar, column_bar, vapour_bar, band.
constexpr Theme light = from({
    0xf6f4ee, 0xfffefb, 0xddd8cc, 0x8c8575, 0x1e2a33, 0x5b6670, 0x9a4521, 0xf3e3d8, 0xbfdde3, 0x2f7687,
    0xe6f2f4, 0xfbf1dc, 0xe6d3ac, 0x7a5200, 0xfdf3d7, 0x21663f, 0xdcd7ca, 0x2f7687, 0xcf9f86, 0xe6cbbd,
});
constexpr Theme dark = from({
    0x14181c, 0x1b2126, 0x343c43, 0x7d8890, 0xece8df, 0xa8b1b8, 0xe79c74, 0x3a291f, 0x255260, 0x83c6d5,
    0x1d3841, 0x393325, 0x5f553b, 0xf0c566, 0x362c13, 0x82cba0, 0x4b545b, 0x83c6d5, 0xb87c5f, 0x5d4031,
});
constexpr Theme high_contrast = from({
    0xffffff, 0xffffff, 0x595959, 0x000000, 0x000000, 0x262626, 0x6b2500, 0xffe2d1, 0xa6d6e2, 0x003f52,
    0xd3ecf2, 0xfff3d6, 0x8a6d2e, 0x4f3300, 0xfff3cc, 0x00441f, 0xd0d0d0, 0x003f52, 0xc06a42, 0xf0bda3,
});

double linear(std::uint32_t channel) {
    const double c = static_cast<double>(channel) / 255.0;
    return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
}

double luminance(std::uint32_t rgba) {
    return 0.2126 * linear(rgba >> 24) + 0.7152 * linear((rgba >> 16) & 0xffu) + 0.0722 * linear((rgba >> 8) & 0xffu);
}

}  // namespace

const Theme& theme(ThemeName name) {
    switch (name) {
    case ThemeName::dark: return dark;
    case ThemeName::high_contrast: return high_contrast;
    case ThemeName::light: break;
    }
    return light;
}

float contrast_ratio(std::uint32_t one, std::uint32_t other) {
    const double a = luminance(one);
    const double b = luminance(other);
    return static_cast<float>(a > b ? (a + 0.05) / (b + 0.05) : (b + 0.05) / (a + 0.05));
}

std::string css_colour(std::uint32_t rgba) {
    constexpr char digits[] = "0123456789abcdef";
    std::string out = "#";
    const int last = (rgba & 0xffu) == 0xffu ? 8 : 0;
    for (int shift = 28; shift >= last; shift -= 4) out += digits[(rgba >> shift) & 0xfu];
    return out;
}

}  // namespace overwater
