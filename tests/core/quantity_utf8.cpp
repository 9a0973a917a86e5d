#include <doctest/doctest.h>

#include <initializer_list>
#include <string_view>

#include "core/quantity/utf8.hpp"

// Well-formed byte sequences: Unicode Standard, Table 3-7 (RFC 3629, section 4).

using namespace overwater;

TEST_CASE("code points at the ends of each length") {
    struct Row {
        std::string_view bytes;
        char32_t value;
    };
    const Row rows[] = {{std::string_view("\0", 1), 0},
                        {"\x7F", 0x7F},
                        {"\xC2\x80", 0x80},
                        {"\xDF\xBF", 0x7FF},
                        {"\xE0\xA0\x80", 0x800},
                        {"\xED\x9F\xBF", 0xD7FF},
                        {"\xEE\x80\x80", 0xE000},
                        {"\xEF\xBF\xBF", 0xFFFF},
                        {"\xF0\x90\x80\x80", 0x10000},
                        {"\xF4\x8F\xBF\xBF", 0x10FFFF}};
    for (const Row& row : rows) {
        const CodePoint found = code_point_at(row.bytes, 0);
        CHECK(found.value == row.value);
        CHECK(found.bytes == row.bytes.size());
    }
}

TEST_CASE("bytes that are no UTF-8 are taken one at a time") {
    for (const std::string_view bytes : {"\x80", "\xBF", "\xC0\x80", "\xC1\xBF", "\xC2", "\xC2\x20", "\xE0\x80\xB3",
                                         "\xE0\x9F\xBF", "\xE2\x88", "\xED\xA0\x80", "\xED\xBF\xBF", "\xF0\x8F\xBF\xBF",
                                         "\xF0\x90\x80", "\xF4\x90\x80\x80", "\xF5\x80\x80\x80", "\xFF"}) {
        const CodePoint found = code_point_at(bytes, 0);
        CHECK(found.value == not_utf8);
        CHECK(found.bytes == 1);
    }
    CHECK(code_point_at("", 0).bytes == 0);
    CHECK(code_point_at("a", 1).bytes == 0);
    const std::string_view cut_off = std::string_view("\u2212", 2);  // the rest stands in memory, not in the text
    CHECK(code_point_at(cut_off, 0).value == not_utf8);
}

TEST_CASE("spaces") {
    for (const char32_t space :
         std::initializer_list<char32_t>{0x20, 0x09, 0x0A, 0xA0, 0x2009, 0x200B, 0x202F, 0x3000, 0xFEFF})
        CHECK(is_space(space));
    for (const char32_t other : std::initializer_list<char32_t>{0x00, 0x21, 0x30, 0x2010, 0x2212, 0x1FFF})
        CHECK_FALSE(is_space(other));
    CHECK_FALSE(is_space(not_utf8));
    // Unicode, PropList.txt: White_Space; and the signs without a width that come along with pasted text.
    for (const char32_t space : std::initializer_list<char32_t>{0x0B, 0x0C, 0x0D, 0x85, 0x61C, 0x1680, 0x2000, 0x200F,
                                                                0x2028, 0x2029, 0x205F, 0x2060})
        CHECK(is_space(space));
    for (const char32_t other : std::initializer_list<char32_t>{0x08,   0x0E,   0x1F,   0x84,   0x86,   0x9F,   0xA1,
                                                                0x61B,  0x61D,  0x167F, 0x1681, 0x2027, 0x202E, 0x2030,
                                                                0x205E, 0x2061, 0x2FFF, 0x3001, 0xFEFE, 0xFF00})
        CHECK_FALSE(is_space(other));
}
