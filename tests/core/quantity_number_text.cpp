#include <doctest/doctest.h>

#include <cmath>
#include <string>

#include "core/quantity/number_text.hpp"

// Expected values are the decimal literals that the texts mean, rounded by the compiler.

using namespace overwater;

namespace {

struct Good {
    std::string_view text;
    Measure expected;
    double value;
    int figures;
    int last_place;
    UnitId unit = UnitId::none;
};

const Good good[] = {
    {"0.0390", Measure::mass, 0.0390, 3, -4},
    {"0,0390", Measure::mass, 0.0390, 3, -4},
    {"9.15", Measure::volume, 9.15, 3, -2},
    {"1200", Measure::number, 1200, 2, 0},
    {"1200.", Measure::number, 1200, 4, 0},
    {"1200.0", Measure::number, 1200, 5, -1},
    {".5", Measure::number, 0.5, 1, -1},
    {"5.", Measure::number, 5, 1, 0},
    {"0", Measure::number, 0, 0, 0},
    {"0.00", Measure::number, 0, 0, -2},
    {"-0", Measure::number, 0, 0, 0},
    {"007", Measure::number, 7, 1, 0},
    {"-40", Measure::temperature, -40, 1, 0},
    {"\u221240", Measure::temperature, -40, 1, 0},
    {"\u201340", Measure::temperature, -40, 1, 0},
    {"+21.4", Measure::temperature, 21.4, 3, -1},
    {"- 5", Measure::temperature, -5, 1, 0},
    {" \t36.8\n", Measure::volume, 36.8, 3, -1},
    // with a unit
    {"29.92 inHg", Measure::pressure, 29.92, 4, -2, UnitId::inch_of_mercury},
    {"29.92 in. Hg", Measure::pressure, 29.92, 4, -2, UnitId::inch_of_mercury},
    {"72 °F", Measure::temperature, 72, 2, 0, UnitId::fahrenheit},
    {"72F", Measure::temperature, 72, 2, 0, UnitId::fahrenheit},
    {"21,4°C", Measure::temperature, 21.4, 3, -1, UnitId::celsius},
    {"36.8 mL", Measure::volume, 36.8, 3, -1, UnitId::millilitre},
    {"36.8mL", Measure::volume, 36.8, 3, -1, UnitId::millilitre},
    {"36.8\u2009mL", Measure::volume, 36.8, 3, -1, UnitId::millilitre},
    {"36.8\u00A0cm³", Measure::volume, 36.8, 3, -1, UnitId::cubic_centimetre},
    {"36.8\u202Fcc", Measure::volume, 36.8, 3, -1, UnitId::cubic_centimetre},
    {"3.0 M", Measure::concentration, 3.0, 2, -1, UnitId::mole_per_litre},
    {"3.0 mol·L⁻¹", Measure::concentration, 3.0, 2, -1, UnitId::mole_per_litre},
    {"99.8 %", Measure::fraction, 99.8, 3, -1, UnitId::percent},
    {"5.5\"", Measure::length, 5.5, 2, -1, UnitId::inch},
    {"5'", Measure::length, 5, 1, 0, UnitId::foot},
    {"0.0412g", Measure::mass, 0.0412, 3, -4, UnitId::gram},
    // powers of ten
    {"4.12e-2", Measure::mass, 4.12e-2, 3, -4},
    {"4.12E-2 g", Measure::mass, 4.12e-2, 3, -4, UnitId::gram},
    {"4.12e\u22122", Measure::mass, 4.12e-2, 3, -4},
    {"4,12·10^-2", Measure::mass, 4.12e-2, 3, -4},
    {"4.12 x 10^-2", Measure::mass, 4.12e-2, 3, -4},
    {"4.12*10^-2", Measure::mass, 4.12e-2, 3, -4},
    {"4.12×10⁻²", Measure::mass, 4.12e-2, 3, -4},
    {"4.12 × 10⁻² g", Measure::mass, 4.12e-2, 3, -4, UnitId::gram},
    {"4.12 × 10^5 Pa", Measure::pressure, 4.12e5, 3, 3, UnitId::pascal},
    {"1.0e+3", Measure::number, 1000, 2, 2},
    {"12e2", Measure::number, 1200, 2, 2},
    // groups of three
    {"101 325 Pa", Measure::pressure, 101325, 6, 0, UnitId::pascal},
    {"101\u2009325", Measure::pressure, 101325, 6, 0},
    {"101\u202F325.0", Measure::pressure, 101325, 7, -1},
    {"101'325", Measure::pressure, 101325, 6, 0},
    {"101\u2019325", Measure::pressure, 101325, 6, 0},
    {"0.039\u2009012", Measure::mass, 0.039012, 5, -6},
    {"1,013.25", Measure::pressure, 1013.25, 6, -2},
    {"1.013,25", Measure::pressure, 1013.25, 6, -2},
    {"1 013,25 hPa", Measure::pressure, 1013.25, 6, -2, UnitId::hectopascal},
    {"1,013,251", Measure::number, 1013251, 7, 0},
    {"1.013.251", Measure::number, 1013251, 7, 0},
    {"1,013.250 500", Measure::number, 1013.2505, 10, -6},
    {"1,013,251.5", Measure::number, 1013251.5, 8, -1},
    // other digits
    {"\uFF13\uFF16\uFF0E\uFF18", Measure::volume, 36.8, 3, -1},                         // full width
    {"\u0663\u0666\u066B\u0668", Measure::volume, 36.8, 3, -1},                         // Arabic-Indic
    {"\u06F3\u06F6\u066B\u06F8 mL", Measure::volume, 36.8, 3, -1, UnitId::millilitre},  // Extended Arabic-Indic
    {"\uFF10\uFF0C\uFF19", Measure::volume, 0.9, 1, -1},
    {"\u0660\u066B\u0669", Measure::volume, 0.9, 1, -1},
    {"\u06F0\u066B\u06F9", Measure::volume, 0.9, 1, -1},
    {"\u0661\u066C\u0660\u0661\u0663", Measure::pressure, 1013, 4, 0},  // Arabic thousands separator
    {"12 345", Measure::number, 12345, 5, 0},
    {"\u201240", Measure::temperature, -40, 1, 0},  // figure dash
    // the ends of the range
    {"1.7976931348623157e308", Measure::number, 1.7976931348623157e308, 17, 292},
    {"5e-324", Measure::number, 5e-324, 1, -324},
    {"2.2250738585072011e-308", Measure::number, 2.2250738585072011e-308, 17, -324},
    {"9007199254740993", Measure::number, 9007199254740992.0, 16, 0},  // tie: to even
    {"0.1", Measure::number, 0.1, 1, -1},
};

struct Bad {
    std::string_view text;
    Measure expected;
    Problem problem;
    std::size_t at;
};

const Bad bad[] = {
    {"abc", Measure::mass, Problem::no_digits, 0},
    {"mL", Measure::volume, Problem::no_digits, 0},
    {" ,", Measure::volume, Problem::no_digits, 1},
    {".", Measure::volume, Problem::no_digits, 0},
    {"nan", Measure::number, Problem::no_digits, 0},
    {"inf", Measure::number, Problem::no_digits, 0},
    {"±", Measure::number, Problem::no_digits, 0},
    {"-", Measure::temperature, Problem::sign_alone, 0},
    {" \u2212 ", Measure::temperature, Problem::sign_alone, 1},
    {"+", Measure::temperature, Problem::sign_alone, 0},
    {"--5", Measure::temperature, Problem::stray_character, 1},
    {"~36.8", Measure::volume, Problem::stray_character, 0},
    {"$5", Measure::volume, Problem::stray_character, 0},
    {"(36.8)", Measure::volume, Problem::stray_character, 0},
    {"about 36", Measure::volume, Problem::stray_character, 0},
    {"±0.5", Measure::number, Problem::stray_character, 0},
    {"36.8)", Measure::volume, Problem::stray_character, 4},
    {"1-2", Measure::number, Problem::stray_character, 1},
    {"36 8", Measure::volume, Problem::stray_character, 3},
    {"1234 567", Measure::number, Problem::stray_character, 5},
    {"1 0132", Measure::number, Problem::stray_character, 2},
    {"0.0390 012", Measure::number, Problem::stray_character, 7},
    {"1, 013", Measure::number, Problem::stray_character, 3},
    {"36.8 mL\xFF", Measure::volume, Problem::unknown_unit, 5},
    {"36.8\xFF", Measure::volume, Problem::stray_character, 4},
    {"36.8\xC3", Measure::volume, Problem::stray_character, 4},
    {"\xFF", Measure::volume, Problem::no_digits, 0},
    {"\xE0\x80\xB3", Measure::volume, Problem::no_digits, 0},  // an overlong 3
    {"0.03.90", Measure::mass, Problem::two_decimal_signs, 4},
    {"1,01.5", Measure::number, Problem::two_decimal_signs, 4},
    {"1,2,3", Measure::number, Problem::two_decimal_signs, 3},
    {"1..5", Measure::number, Problem::two_decimal_signs, 2},
    {"0,013.25", Measure::number, Problem::two_decimal_signs, 5},
    {"1234,567.8", Measure::number, Problem::two_decimal_signs, 8},
    {"1,013.250,5", Measure::number, Problem::two_decimal_signs, 5},
    {"1 013,250.5", Measure::number, Problem::two_decimal_signs, 9},
    {"36.8 parsec", Measure::volume, Problem::unknown_unit, 5},
    {"1×10⁻", Measure::number, Problem::unknown_unit, 1},
    {",013,250", Measure::number, Problem::two_decimal_signs, 4},
    {"1013,250,000", Measure::number, Problem::two_decimal_signs, 8},
    {"36.8 °", Measure::temperature, Problem::unknown_unit, 5},
    {"4e", Measure::number, Problem::unknown_unit, 1},
    {"0x1F", Measure::number, Problem::unknown_unit, 1},
    {"4.12 x 10", Measure::number, Problem::unknown_unit, 5},
    {"36.8 kPa", Measure::volume, Problem::wrong_kind_of_unit, 5},
    {"36.8 M", Measure::volume, Problem::wrong_kind_of_unit, 5},
    {"36.8 mL", Measure::number, Problem::wrong_kind_of_unit, 5},
    {"5 %", Measure::volume, Problem::wrong_kind_of_unit, 2},
    {"1e309", Measure::number, Problem::too_large, 0},
    {"1e999", Measure::number, Problem::too_large, 0},
    {"-1e99999999999999999999", Measure::number, Problem::too_large, 1},
    {"1e4294967297", Measure::number, Problem::too_large, 0},  // an exponent that wraps around is 1
    {"1e-400", Measure::number, Problem::too_small, 0},
    {"1e-99999999999999999999", Measure::number, Problem::too_small, 0},
    {"36.8 ±", Measure::volume, Problem::missing_plus_minus, 5},
    {"36.8 +/- ", Measure::volume, Problem::missing_plus_minus, 5},
    {"36.8 ± mL", Measure::volume, Problem::missing_plus_minus, 5},
    {"36.8 ± -0.1", Measure::volume, Problem::stray_character, 8},
    {"36.8 ± 0.1 ± 0.2", Measure::volume, Problem::stray_character, 12},
    {"36.8 ± 0.1 kPa", Measure::volume, Problem::wrong_kind_of_unit, 12},
    {"36.8 ± 0.1 parsec", Measure::volume, Problem::unknown_unit, 12},
    {"1e308 ± 1e999", Measure::number, Problem::too_large, 9},
};

struct Doubted {
    std::string_view text;
    Measure expected;
    double value;
    UnitId unit;
    double plus_minus;
    int last_place;
};

const Doubted doubted[] = {
    {"36.8 ± 0.05", Measure::volume, 36.8, UnitId::none, 0.05, -2},
    {"36.8 ± 0.05 mL", Measure::volume, 36.8, UnitId::millilitre, 0.05, -2},
    {"36.8 mL ± 0.05", Measure::volume, 36.8, UnitId::millilitre, 0.05, -2},
    {"36.8 mL ± 0.05 mL", Measure::volume, 36.8, UnitId::millilitre, 0.05, -2},
    {"36,8+/-0,1 mL", Measure::volume, 36.8, UnitId::millilitre, 0.1, -1},
    {"36.8 +/\u2212 0.1", Measure::volume, 36.8, UnitId::none, 0.1, -1},
    {"36.8+-0.1", Measure::volume, 36.8, UnitId::none, 0.1, -1},
    {"0.0412 g ± 0.1 mg", Measure::mass, 0.0412, UnitId::gram, 0.0001, -4},
    {"21.4 °C ± 0.5 K", Measure::temperature, 21.4, UnitId::celsius, 0.5, -1},
    {"294.55 K ± 0.9 °F", Measure::temperature, 294.55, UnitId::kelvin, 0.5, -1},
    {"3.0 M ± 5 %", Measure::concentration, 3.0, UnitId::mole_per_litre, 0.15, -2},
    {"30.0 ± 5 %", Measure::number, 30.0, UnitId::none, 1.5, -1},
    {"99.8 ± 0.2 %", Measure::fraction, 99.8, UnitId::percent, 0.2, -1},
    {"0.00 ± 5 %", Measure::number, 0.0, UnitId::none, 0.0, -2},
    {"0.5 mg ± 0.001 g", Measure::mass, 0.5, UnitId::milligram, 1.0, 0},
    {"36.8 ± 0", Measure::volume, 36.8, UnitId::none, 0.0, 0},
};

std::string readable(std::string_view text) { return std::string(text); }

}  // namespace

TEST_CASE("nothing but white space is blank") {
    for (const std::string_view text : {"", " ", "\t\n", "\u00A0\u2009\u202F", "\uFEFF"}) {
        const NumberText read = parse_number(text, Measure::mass);
        CHECK(read.state == NumberText::State::blank);
        CHECK(read.problem == Problem::none);
    }
}

TEST_CASE("typed numbers are read as people mean them") {
    for (const Good& row : good) {
        INFO(readable(row.text));
        const NumberText read = parse_number(row.text, row.expected);
        CHECK(read.state == NumberText::State::number);
        CHECK(read.problem == Problem::none);
        CHECK(read.value == row.value);
        CHECK(read.figures == row.figures);
        CHECK(read.last_place == row.last_place);
        CHECK(read.unit == row.unit);
        CHECK_FALSE(read.has_plus_minus);
        CHECK_FALSE(std::signbit(row.value == 0.0 ? read.value : 0.0));
    }
}

TEST_CASE("what is no number says why and where") {
    for (const Bad& row : bad) {
        INFO(readable(row.text));
        const NumberText read = parse_number(row.text, row.expected);
        CHECK(read.state == NumberText::State::not_a_number);
        CHECK(key_of(read.problem) == key_of(row.problem));
        CHECK(read.problem_at == row.at);
        CHECK(read.value == 0.0);
    }
}

TEST_CASE("a doubt typed with the number comes in the number's unit") {
    for (const Doubted& row : doubted) {
        INFO(readable(row.text));
        const NumberText read = parse_number(row.text, row.expected);
        REQUIRE(read.state == NumberText::State::number);
        CHECK(read.value == row.value);
        CHECK(read.unit == row.unit);
        CHECK(read.has_plus_minus);
        CHECK(read.plus_minus == doctest::Approx(row.plus_minus).epsilon(1e-14));
        CHECK(read.plus_minus_last_place == row.last_place);
    }
}

TEST_CASE("zeros at the end without a decimal sign are doubtful figures") {
    CHECK(parse_number("1200", Measure::number).ambiguous_zeros);
    CHECK(parse_number("-40", Measure::number).ambiguous_zeros);
    CHECK_FALSE(parse_number("1200.", Measure::number).ambiguous_zeros);
    CHECK_FALSE(parse_number("1201", Measure::number).ambiguous_zeros);
    CHECK_FALSE(parse_number("0", Measure::number).ambiguous_zeros);
}

TEST_CASE("a comma before exactly three digits is flagged") {
    const NumberText read = parse_number("1,013 hPa", Measure::pressure);
    CHECK(read.value == 1.013);
    CHECK(read.comma_before_three_digits);
    CHECK(parse_number("29,921", Measure::pressure).comma_before_three_digits);
    CHECK(parse_number("101,325", Measure::pressure).comma_before_three_digits);
    for (const std::string_view text :
         {"1.013", "1,0132", "1,01", "0,039", "1013,250", "1,013.25", ",013", "1,013,250"}) {
        INFO(readable(text));
        CHECK_FALSE(parse_number(text, Measure::number).comma_before_three_digits);
    }
}

TEST_CASE("a text may have 64 code points and no more") {
    const std::string longest(longest_number_text, '1');
    CHECK(parse_number(longest, Measure::number).state == NumberText::State::number);
    CHECK(parse_number(longest, Measure::number).figures == 64);
    const NumberText read = parse_number(longest + "1", Measure::number);
    CHECK(read.problem == Problem::too_long);
    CHECK(read.problem_at == longest_number_text);
    std::string wide;
    for (std::size_t i = 0; i < longest_number_text; ++i) wide += "\uFF11";
    CHECK(parse_number(wide, Measure::number).state == NumberText::State::number);
    CHECK(parse_number(std::string(1000000, '9'), Measure::number).problem == Problem::too_long);
}

TEST_CASE("a text may hold a null byte") {
    CHECK(parse_number(std::string_view("36.8\0mL", 7), Measure::volume).problem == Problem::stray_character);
}

TEST_CASE("every problem has a key") {
    for (int i = 1; i < static_cast<int>(Problem::count); ++i) CHECK_FALSE(key_of(static_cast<Problem>(i)).empty());
    CHECK(key_of(Problem::none).empty());
    CHECK(key_of(Problem::missing_plus_minus) == "missing_plus_minus");
    CHECK(key_of(Problem::too_small) == "too_small");
}
