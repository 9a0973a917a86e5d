#pragma once

#include <cstdint>
#include <span>

/// The fonts of the page, unpacked. Lengths are in units of the font, 1000 an em; y goes up from the baseline.
namespace overwater {

struct OutlinePoint {
    std::int16_t x;
    std::int16_t y;
    bool on_curve;  ///< off it: the middle point of a quadratic curve
    bool last;      ///< of its contour, which closes
};

struct Outline {
    int character;
    int advance;
    std::span<const OutlinePoint> points;
};

/// Tables of a TrueType file that do not follow from the glyphs: OS/2, head, hhea, maxp, name and post, in this order.
constexpr int kept_tables = 6;

struct UnpackedFont {
    std::span<const Outline> glyphs;  ///< by character; the first, of character 0, is for what the font lacks
    std::span<const unsigned char> tables[kept_tables];

    /// The glyph of a character, or nothing where the font has none.
    const Outline* find(unsigned character) const;
};

/// A weight of Overwater Sans: 0 regular, 1 semibold. The first call unpacks both; they stay for good.
const UnpackedFont& unpacked_font(int weight);

}  // namespace overwater
