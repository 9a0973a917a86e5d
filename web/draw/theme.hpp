#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <string>

#include "web/draw/ink.hpp"

namespace overwater {

enum class ThemeName : std::uint8_t { light, dark, high_contrast };

/// The colours of the page, one for each ink, as 0xRRGGBBAA.
struct Theme {
    std::array<std::uint32_t, static_cast<std::size_t>(Ink::count)> rgba{};
    constexpr std::uint32_t of(Ink ink) const { return rgba[static_cast<std::size_t>(ink)]; }
};

const Theme& theme(ThemeName name);

/// Contrast of two opaque colours, 1 to 21 (WCAG 2.2, definitions of contrast ratio and relative luminance).
float contrast_ratio(std::uint32_t one, std::uint32_t other);

/// `#rrggbb`, or `#rrggbbaa` where the colour is not opaque.
std::string css_colour(std::uint32_t rgba);

}  // namespace overwater
