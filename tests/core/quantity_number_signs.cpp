// Typed numbers in signs at the ends of what counts as a letter or a raised digit.

#include <doctest/doctest.h>

#include <cmath>
#include <string>

#include "core/quantity/number_text.hpp"

using namespace overwater;

TEST_CASE("a word behind a number is an unknown unit whatever letter begins it, and another sign is a stray one") {
    for (const char* word : {"Ax", "Zx", "ax", "zx", "\u00C4x", "\u03A9x", "\u00A1"}) {
        INFO(std::string(word));
        CHECK(parse_number("36.8 " + std::string(word), Measure::volume).problem == Problem::unknown_unit);
    }
    for (const char* word : {"@x", "[x", "`x", "{x", "!", "?"}) {
        INFO(std::string(word));
        CHECK(parse_number("36.8 " + std::string(word), Measure::volume).problem == Problem::stray_character);
    }
}

TEST_CASE("every raised digit is read in a power of ten") {
    const char* const raised[] = {"\u2070", "\u00B9", "\u00B2", "\u00B3", "\u2074",
                                  "\u2075", "\u2076", "\u2077", "\u2078", "\u2079"};
    for (int digit = 0; digit <= 9; ++digit) {
        CAPTURE(digit);
        const std::string power = raised[digit];
        CHECK(parse_number("1 \u00D7 10" + power, Measure::number).value == std::stod("1e" + std::to_string(digit)));
        CHECK(parse_number("1 \u00D7 10\u207A\u00B9" + power, Measure::number).last_place == 10 + digit);
        CHECK(parse_number("1 \u00D7 10\u207B\u00B9" + power, Measure::number).last_place == -10 - digit);
    }
    // superscript i, superscript plus behind the digit, and superscript equals are none
    for (const char* other : {"\u2071", "\u207C", "\u00B4"}) {
        CHECK(parse_number("1 \u00D7 10" + std::string(other), Measure::number).problem == Problem::unknown_unit);
    }
}
