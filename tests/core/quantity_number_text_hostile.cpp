#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <cstdint>
#include <random>
#include <string>

#include "core/quantity/number_format.hpp"
#include "core/quantity/number_text.hpp"

using namespace overwater;

namespace {

constexpr int rounds = 100000;

/// What holds for every text, whatever its bytes.
bool keeps_its_word(std::string_view text, const NumberText& read) {
    const bool numbers_are_finite = std::isfinite(read.value) && std::isfinite(read.plus_minus);
    const bool places_make_sense = read.figures >= 0 && read.figures <= 64 && std::abs(read.last_place) <= 100100;
    const bool is_bad = read.state == NumberText::State::not_a_number;
    return numbers_are_finite && places_make_sense && read.plus_minus >= 0.0 &&
           is_bad == (read.problem != Problem::none) && read.problem_at <= text.size() &&
           (!is_bad || read.value == 0.0) && read.unit < UnitId::count;
}

Measure any_measure(std::mt19937& generator) { return static_cast<Measure>(generator() % 14); }

} // namespace

TEST_CASE("random bytes never break the reading of numbers") {
    std::mt19937 generator(20240229);
    std::string text;
    for (int i = 0; i < rounds; ++i) {
        text.resize(generator() % 80);
        for (char& byte : text) byte = static_cast<char>(generator() & 0xFF);
        const NumberText read = parse_number(text, any_measure(generator));
        if (!keeps_its_word(text, read)) FAIL_CHECK("broke its word in round " << i);
    }
}

TEST_CASE("random pieces of what people type never break the reading of numbers") {
    constexpr std::array<std::string_view, 40> pieces{
        "0",      "1",      "9",        "013",    "250",    "36.8",   ".",      ",",        " ",     "\u2009",
        "\u00A0", "'",      "\u2019",   "-",      "+",      "\u2212", "e",      "E-",       "x",     "10",
        "^",      "\u00D7", "10\u207B", "\u00B2", "\u00B1", "+/-",    "mL",     "cm\u00B3", "hPa",   "\u00B0",
        "C",      "%",      "(",        "\"",     "\xC3",   "\uFF13", "\u0663", "\u066B",   "1e308", "e-320"};
    std::mt19937 generator(42);
    std::string text;
    for (int i = 0; i < rounds; ++i) {
        text.clear();
        const std::size_t count = generator() % 9;
        for (std::size_t p = 0; p < count; ++p) text += pieces[generator() % pieces.size()];
        const NumberText read = parse_number(text, any_measure(generator));
        if (!keeps_its_word(text, read)) FAIL_CHECK("broke its word in round " << i << ": " << text);
    }
}

TEST_CASE("what is written by the formatter is read back") {
    std::mt19937_64 generator(7);
    for (int i = 0; i < 20000; ++i) {
        const int figures = 1 + static_cast<int>(generator() % 15);
        const double size = std::pow(10.0, static_cast<double>(generator() % 40) - 20.0);
        const double value = (static_cast<double>(generator() >> 11) * 0x1p-52 - 1.0) * size;
        const DecimalSign sign = generator() % 2 == 0 ? DecimalSign::point : DecimalSign::comma;
        const std::string text = format_significant(value, figures, sign);
        const NumberText read = parse_number(text, Measure::number);
        if (read.state != NumberText::State::number ||
            read.value != round_to_place(value, place_of_figures(value, figures))) {
            FAIL_CHECK("not read back: " << text);
        }
    }
}
