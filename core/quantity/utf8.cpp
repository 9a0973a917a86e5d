#include "core/quantity/utf8.hpp"

#include <cstdint>

namespace overwater {

CodePoint code_point_at(std::string_view text, std::size_t at) {
    if (at >= text.size()) return {not_utf8, 0};
    const auto byte = [&](std::size_t i) { return static_cast<std::uint8_t>(text[i]); };
    const std::uint8_t first = byte(at);
    if (first < 0x80) return {first, 1};

    // Lead bytes C0, C1 and F5 to FF never occur; the smallest value for each length rules out overlong forms.
    std::size_t length = 0;
    char32_t value = 0;
    char32_t smallest = 0;
    if (first >= 0xC2 && first <= 0xDF) {
        length = 2, value = first & 0x1Fu, smallest = 0x80;
    } else if (first >= 0xE0 && first <= 0xEF) {
        length = 3, value = first & 0x0Fu, smallest = 0x800;
    } else if (first >= 0xF0 && first <= 0xF4) {
        length = 4, value = first & 0x07u, smallest = 0x10000;
    } else {
        return {not_utf8, 1};
    }
    if (text.size() - at < length) return {not_utf8, 1};
    for (std::size_t i = 1; i < length; ++i) {
        const std::uint8_t next = byte(at + i);
        if ((next & 0xC0u) != 0x80u) return {not_utf8, 1};
        value = (value << 6) | (next & 0x3Fu);
    }
    const bool is_surrogate = value >= 0xD800 && value <= 0xDFFF;
    if (value < smallest || value > 0x10FFFF || is_surrogate) return {not_utf8, 1};
    return {value, length};
}

bool is_space(char32_t code_point) {
    if (code_point >= 0x2000 && code_point <= 0x200F) return true; // en quad to hair space, zero width, direction marks
    switch (code_point) {
    case 0x09:
    case 0x0A:
    case 0x0B:
    case 0x0C:
    case 0x0D:
    case 0x20:
    case 0x85:
    case 0xA0:  // no-break space
    case 0x61C: // Arabic letter mark
    case 0x1680:
    case 0x2028:
    case 0x2029:
    case 0x202F: // narrow no-break space
    case 0x205F:
    case 0x2060: // word joiner
    case 0x3000: // ideographic space
    case 0xFEFF: // byte order mark
        return true;
    default: return false;
    }
}

} // namespace overwater
