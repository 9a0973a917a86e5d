#include <doctest/doctest.h>

#include <cmath>
#include <cstdint>
#include <limits>
#include <string>

#include "core/quantity/number_format.hpp"

// Rounding rules with a source stand in tests/standards/rounding.cpp. Expected texts here: worked by hand.

using namespace overwater;

namespace {

constexpr DecimalSign point = DecimalSign::point;
constexpr DecimalSign comma = DecimalSign::comma;

struct Fixed {
    double value;
    int decimals;
    DecimalSign sign;
    std::string_view text;
};

const Fixed fixed[] = {
    {43.2, 2, point, "43.20"},
    {43.2, 2, comma, "43,20"},
    {0.0, 0, point, "0"},
    {0.0, 3, point, "0.000"},
    {-0.0, 2, point, "0.00"},
    {-0.001, 2, point, "0.00"},
    {-0.005, 2, point, "−0.01"},
    {-0.128, 2, comma, "−0,13"},
    {0.05, 1, point, "0.1"},
    {0.04, 1, point, "0.0"},
    {9.995, 2, point, "10.00"},
    {0.9996, 3, point, "1.000"},
    {999.96, 1, point, "1000.0"},
    {95974.0, 0, point, "95974"},
    {95974.0, -2, point, "96000"},
    {49.0, -2, point, "0"},
    {50.0, -2, point, "100"},
    {50.0, -3, point, "0"},
    {1e-20, 3, point, "0.000"},
    {123456789012345.0, 0, point, "123456789012345"},
    {1e15, 2, point, "1.00000000000000 × 10¹⁵"},
    {1.0 / 3.0, 20, point, "0.33333333333333300000"},
    {0.5, 30, point, "0.500000000000000000000000000000"},
    {0.5, 31, point, "0.500000000000000000000000000000"},  // no more than 30 decimals
    {6e14, -15, point, "1000000000000000"},
    {999999999999999.0, 0, point, "999999999999999"},
    {-50.0, -2, point, "−100"},
};

struct Significant {
    double value;
    int figures;
    DecimalSign sign;
    std::string_view text;
};

const Significant significant[] = {
    {22.6818, 3, point, "22.7"},
    {22.6818, 4, comma, "22,68"},
    {0.0390, 3, point, "0.0390"},
    {0.03899, 3, point, "0.0390"},
    {9.996, 3, point, "10.0"},
    {0.09996, 3, point, "0.100"},
    {-0.1281, 3, point, "−0.128"},
    {0.0, 3, point, "0"},
    {-0.0, 3, point, "0"},
    {1200.0, 2, point, "1200"},
    {95974.0, 3, point, "96000"},
    {999999.6, 6, point, "1.00000 × 10⁶"},
    {1234567.0, 8, point, "1234567.0"},
    {1234567.0, 7, point, "1234567"},
    {1234567.0, 3, point, "1.23 × 10⁶"},
    {0.00012, 2, point, "0.00012"},
    {0.000012, 2, point, "1.2 × 10⁻⁵"},
    {123456.0, 3, point, "123000"},
    {0.000000123, 2, point, "1.2 × 10⁻⁷"},
    {0.000000123, 2, comma, "1,2 × 10⁻⁷"},
    {-0.000000123, 1, point, "−1 × 10⁻⁷"},
    {6.02214076e23, 4, point, "6.022 × 10²³"},
    {5e-324, 1, point, "5 × 10⁻³²⁴"},
    {1.7976931348623157e308, 3, point, "1.80 × 10³⁰⁸"},
    {5.0, 0, point, "5"},                  // figures are at least 1
    {5.0, 99, point, "5.00000000000000"},  // ... and at most 15
};

}  // namespace

TEST_CASE("numbers with fixed decimals") {
    for (const Fixed& row : fixed) {
        INFO(row.value);
        CHECK(format_fixed(row.value, row.decimals, row.sign) == row.text);
    }
}

TEST_CASE("numbers with significant figures") {
    for (const Significant& row : significant) {
        INFO(row.value);
        CHECK(format_significant(row.value, row.figures, row.sign) == row.text);
    }
}

TEST_CASE("what is not a number has no text and is not rounded") {
    for (const double value : {std::numeric_limits<double>::infinity(), -std::numeric_limits<double>::infinity()}) {
        CHECK(format_fixed(value, 2, point).empty());
        CHECK(format_significant(value, 2, point).empty());
        CHECK(round_to_place(value, 0) == value);
    }
    const double nan = std::numeric_limits<double>::quiet_NaN();
    CHECK(format_fixed(nan, 2, point).empty());
    CHECK(format_significant(nan, 2, point).empty());
    CHECK(std::isnan(round_to_place(nan, 0)));
}

TEST_CASE("numbers rounded to a place") {
    CHECK(round_to_place(22.6818, -1) == 22.7);
    CHECK(round_to_place(22.6818, -2) == 22.68);
    CHECK(round_to_place(1250.0, 2, Rounding::half_to_even) == 1200.0);
    CHECK(round_to_place(1250.0, 2, Rounding::half_up) == 1300.0);
    CHECK(round_to_place(-2.5, 0) == -3.0);
    CHECK(round_to_place(-2.5, 0, Rounding::half_to_even) == -2.0);
    CHECK(round_to_place(0.5, 0, Rounding::half_to_even) == 0.0);
    CHECK(round_to_place(4.0, 1) == 0.0);
    CHECK(round_to_place(5.0, 1) == 10.0);
    CHECK_FALSE(std::signbit(round_to_place(-0.4, 0)));
    CHECK(round_to_place(0.1, -1000) == 0.1);
    CHECK(round_to_place(0.1, 1000) == 0.0);
    CHECK(std::isfinite(round_to_place(1.7976931348623157e308, 308)));
}

TEST_CASE("a tie in decimal stays a tie after a short calculation") {
    // On paper 50 - 9.15 + 2.30 = 43.15; in binary SI it is a hair beside it.
    const double volume = (50 * 1e-6 - 9.15 * 1e-6 + 2.3 * 1e-6) / 1e-6;
    CHECK(format_fixed(volume, 1, point) == "43.2");
    CHECK(format_fixed(0.1 + 0.2 + 0.05, 1, point) == "0.4");
}

TEST_CASE("the place of the last significant figure") {
    CHECK(place_of_figures(22.68, 3) == -1);
    CHECK(place_of_figures(9.996, 3) == -1);
    CHECK(place_of_figures(9.994, 3) == -2);
    CHECK(place_of_figures(-0.0390, 3) == -4);
    CHECK(place_of_figures(95974.0, 3) == 2);
    CHECK(place_of_figures(0.0, 3) == -2);
}

TEST_CASE("numbers as a person writes them down: rounded, cut, with the minus of the power lost") {
    // Python 3 decimal, quantize with ROUND_HALF_UP and ROUND_DOWN.
    CHECK(to_figures(0.00165, 1) == 0.002);
    CHECK(to_figures(0.00158, 1) == 0.002);
    CHECK(to_figures(2.675, 3) == 2.68);
    CHECK(to_figures(9.996, 3) == 10.0);
    CHECK(to_figures(-0.0345, 2) == -0.035);
    CHECK(to_figures(95974.0, 3) == 96000.0);
    CHECK(to_figures(0, 3) == 0);
    CHECK(to_figures(1e-300, 3) == 1e-300);
    CHECK(to_figures(123456789e12, 3) == 1.23e20);
    CHECK(cut_to_figures(0.00158, 1) == 0.001);
    CHECK(cut_to_figures(9.996, 3) == 9.99);
    CHECK(cut_to_figures(-9.996, 3) == -9.99);
    CHECK(cut_to_figures(0.002, 1) == 0.002);
    CHECK(power_without_minus(0.0017) == doctest::Approx(1700).epsilon(1e-14));
    CHECK(power_without_minus(1.7) == 1.7);
    CHECK(power_without_minus(0.5) == doctest::Approx(50).epsilon(1e-14));
    CHECK(power_without_minus(1.0) == 1.0);
    CHECK(power_without_minus(0.0) == 0.0);
}

/// 20,000 numbers from 10^-`powers` to 10^`powers`, rounded to at most so many figures.
void round_both_ways(std::uint64_t state, std::uint64_t powers, std::uint64_t most_figures) {
    for (int i = 0; i < 20000; ++i) {
        state = state * 6364136223846793005u + 1442695040888963407u;
        const double mantissa = 1.0 + static_cast<double>(state >> 20) * 0x1p-44 * 9.0;
        const int power = static_cast<int>(state % (2 * powers + 1)) - static_cast<int>(powers);
        const double value = mantissa * std::pow(10.0, power);
        const int figures = 1 + static_cast<int>((state >> 8) % most_figures);
        CAPTURE(value);
        CAPTURE(figures);
        REQUIRE(to_figures(value, figures) == round_to_place(value, place_of_figures(value, figures)));
    }
}

TEST_CASE("rounding by arithmetic gives the double that the decimal text gives") { round_both_ways(1, 9, 6); }

TEST_CASE("rounding by arithmetic gives the same for very small and very large numbers and many figures") {
    round_both_ways(2, 13, 11);
}
