#pragma once

#include <array>
#include <cstddef>
#include <string_view>

#include "core/quantity/number_text.hpp"
#include "core/quantity/utf8.hpp"

/// The inner part of reading a typed number: digits, decimal sign and power of ten, without sign and unit. The grammar
/// stands in number_text.hpp, which is what the rest of the program uses.

namespace overwater {

/// The many ways of typing one sign (full-width forms, Arabic digits, dashes), brought to ASCII; anything else as it
/// is.
char32_t folded(char32_t sign);

inline bool is_digit(char32_t sign) { return sign >= U'0' && sign <= U'9'; }

/// A place in a text, moved forward code point by code point.
struct TextReader {
    std::string_view text;
    std::size_t at = 0;

    bool at_end() const { return at >= text.size(); }
    /// The sign `ahead` places further on, folded; `not_utf8` at the end.
    char32_t peek(std::size_t ahead = 0) const {
        std::size_t place = at;
        for (std::size_t i = 0; i < ahead; ++i) place += code_point_at(text, place).bytes;
        return folded(code_point_at(text, place).value);
    }
    void skip(std::size_t signs = 1) {
        for (std::size_t i = 0; i < signs; ++i) at += code_point_at(text, at).bytes;
    }
    void skip_spaces() {
        while (!at_end() && is_space(peek())) skip();
    }
    bool accept(char32_t sign) {
        if (at_end() || peek() != sign) return false;
        skip();
        return true;
    }
    /// How many signs "±", "+/-" or "+-" takes here; 0 if it does not stand here.
    std::size_t plus_minus_signs() const {
        if (at_end()) return 0;
        if (peek() == 0xB1) return 1;
        if (peek() != U'+') return 0;
        if (peek(1) == U'-') return 2;
        return peek(1) == U'/' && peek(2) == U'-' ? 3 : 0;
    }
    bool has_digit_left() const {
        for (TextReader rest = *this; !rest.at_end(); rest.skip()) {
            if (is_digit(rest.peek())) return true;
        }
        return false;
    }
};

/// A number without sign and unit, on its way to a value.
struct PlainNumber {
    std::array<char, longest_number_text> digits{};
    std::size_t size = 0;
    std::size_t decimals = 0; ///< how many of the digits stand after the decimal sign
    bool has_decimal_sign = false;
    bool comma_before_three_digits = false;
    int exponent = 0;

    Problem problem = Problem::none;
    std::size_t problem_at = 0;
    double value = 0.0;

    void fail(Problem what, std::size_t where) { problem = what, problem_at = where; }
    int last_place() const { return exponent - static_cast<int>(decimals); }
    std::size_t leading_zeros() const {
        std::size_t zeros = 0;
        while (zeros < size && digits[zeros] == '0') ++zeros;
        return zeros;
    }
    std::size_t trailing_zeros() const {
        std::size_t zeros = 0;
        while (zeros < size && digits[size - 1 - zeros] == '0') ++zeros;
        return zeros;
    }
};

/// Reads a number without sign where `reader` stands and moves it behind. The problem is `no_digits`,
/// `two_decimal_signs`, `too_large`, `too_small` or none. The text has at most `longest_number_text` code points.
PlainNumber read_plain_number(TextReader& reader);

} // namespace overwater
