#pragma once

#include <cstddef>
#include <string_view>

/// Reading UTF-8 one code point at a time.

namespace overwater {

struct CodePoint {
    char32_t value;    ///< `not_utf8` where the bytes are no UTF-8
    std::size_t bytes; ///< how many bytes it took; 1 for a byte that is no UTF-8; 0 at the end
};

/// Stands for a byte that belongs to no code point (stray, cut off, overlong, surrogate, beyond U+10FFFF).
inline constexpr char32_t not_utf8 = 0xFFFFFFFF;

/// The code point of `text` that begins at byte `at`. Any bytes may be given.
CodePoint code_point_at(std::string_view text, std::size_t at);

/// White space of any width, and the invisible marks that keyboards and word processors leave behind.
bool is_space(char32_t code_point);

} // namespace overwater
