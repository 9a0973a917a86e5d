// Decimal digits of doubles and back, beside the C library of this machine, which rounds correctly (glibc and musl both
// say so), beside hard cases whose midpoints were worked with whole numbers (Python's fractions), and there and back.
#include "core/quantity/decimal.hpp"

#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <limits>
#include <string>

#include "core/result/random.hpp"

using namespace overwater;

namespace {

double from_bits(std::uint64_t bits) {
    double value = 0;
    std::memcpy(&value, &bits, sizeof value);
    return value;
}

/// "d.dddde±xx" of the C library as digits and place.
Decimal by_printf(double magnitude, int figures) {
    std::array<char, 900> text{};
    std::snprintf(text.data(), text.size(), "%.*e", figures - 1, magnitude);
    const std::string all(text.data());
    Decimal decimal;
    const std::size_t e = all.find('e');
    for (const char letter : all.substr(0, e)) {
        if (letter >= '0' && letter <= '9') decimal.digits += letter;
    }
    decimal.first_place = std::atoi(all.c_str() + e + 1);
    return decimal;
}

double by_strtod(const std::string& digits, int place) {
    return std::strtod((digits + 'e' + std::to_string(place)).c_str(), nullptr);
}

std::array<std::uint64_t, 4000> random_words() {
    std::array<std::uint64_t, 4000> words{};
    Random random(20261128);
    random.fill(words.data(), words.size() / Random::lanes, 1);
    return words;
}

}  // namespace

TEST_CASE("decimal: digits of random doubles are those of the C library") {
    for (const std::uint64_t word : random_words()) {
        const double value = std::fabs(from_bits(word));
        if (!std::isfinite(value)) continue;
        for (const int figures : {1, 7, 15, 17}) {
            const Decimal ours = decimal_of(value, figures);
            const Decimal theirs = by_printf(value, figures);
            CHECK(ours.digits == theirs.digits);
            CHECK(ours.first_place == theirs.first_place);
        }
        // Of the size of readings and results too.
        const double usual = std::ldexp(static_cast<double>(word >> 11U), -50 - static_cast<int>(word % 24));
        for (const int figures : {1, 3, 4, 15, 17, 18}) {
            CHECK(decimal_of(usual, figures).digits == by_printf(usual, figures).digits);
            CHECK(decimal_of(usual, figures).first_place == by_printf(usual, figures).first_place);
        }
    }
}

TEST_CASE("decimal: in the middle between two, and beside a power of ten, digits are those of the C library") {
    const auto check = [](double value) {
        for (int figures = 1; figures <= 18; ++figures) {
            CAPTURE(value);
            CAPTURE(figures);
            CHECK(decimal_of(value, figures).digits == by_printf(value, figures).digits);
            CHECK(decimal_of(value, figures).first_place == by_printf(value, figures).first_place);
        }
    };
    // Whole numbers over powers of two end in 5, so each has a middle at some figure.
    for (int odd = 1; odd < 200; odd += 2) {
        for (int halvings = 1; halvings < 24; ++halvings) check(std::ldexp(odd, -halvings));
    }
    double power = 1e-9;
    for (int place = -9; place < 17; ++place, power *= 10) {
        check(power);
        check(std::nextafter(power, 0));
        check(std::nextafter(power, 1e300));
        check(power * (1 - 1e-9));
    }
}

TEST_CASE("decimal: seventeen digits lead back to the same double, as IEEE 754-2019, 5.12.2 has it") {
    for (const std::uint64_t word : random_words()) {
        const double value = std::fabs(from_bits(word));
        if (!std::isfinite(value) || value == 0.0) continue;
        const Decimal decimal = decimal_of(value, 17);
        CHECK(nearest_double(decimal.digits, decimal.last_place()) == value);
    }
}

TEST_CASE("decimal: random digits give the double of the C library") {
    const auto words = random_words();
    for (std::size_t i = 0; i + 1 < words.size(); i += 2) {
        std::string digits = std::to_string(words[i]) + std::to_string(words[i + 1]);
        digits.resize(1 + words[i] % digits.size());
        const int place = static_cast<int>(words[i + 1] % 700) - 380;
        CHECK(nearest_double(digits, place) == by_strtod(digits, place));
        const int usual = static_cast<int>(words[i + 1] % 12) - 9;
        CHECK(nearest_double(digits.substr(0, 6), usual) == by_strtod(digits.substr(0, 6), usual));
    }
}

TEST_CASE("decimal: the exact middle between two doubles goes to the even one, a hair above to the upper") {
    const auto words = random_words();
    for (std::size_t i = 0; i < 400; ++i) {
        const double low = std::fabs(from_bits(words[i]));
        if (!std::isfinite(low) || low > 1e300 || low < 1e-300) continue;
        // The middle has one more bit than a double: its digits are those of the sum of exact halves. 767 digits are
        // the most it can have, so printf gives all of them.
        const double high = std::nextafter(low, std::numeric_limits<double>::infinity());
        const Decimal a = by_printf(low, 780);
        const Decimal b = by_printf(high, 780);
        if (a.first_place != b.first_place) continue;
        std::string middle(781, '0');
        int rest = 0;
        for (std::size_t k = 0; k < 780; ++k) {  // (a + b) / 2 digit by digit
            const int sum = rest * 10 + (a.digits[k] - '0') + (b.digits[k] - '0');
            middle[k] = static_cast<char>('0' + sum / 2);
            rest = sum % 2;
        }
        middle[780] = static_cast<char>('0' + rest * 5);
        std::string plain;  // carries: a digit of `middle` may be above 9
        int carry = 0;
        for (std::size_t k = middle.size(); k-- > 0;) {
            const int digit = middle[k] - '0' + carry;
            plain.insert(plain.begin(), static_cast<char>('0' + digit % 10));
            carry = digit / 10;
        }
        REQUIRE(carry == 0);
        const int place = a.first_place - 780;
        std::uint64_t bits = 0;
        std::memcpy(&bits, &low, sizeof bits);
        CHECK(nearest_double(plain, place) == (bits % 2 == 0 ? low : high));
        CHECK(nearest_double(plain + "0000000000000000000000000000001", place - 31) == high);
    }
}

TEST_CASE("decimal: the ends of what a double can be") {
    CHECK(nearest_double("", 0) == 0.0);
    CHECK(nearest_double("000", 5) == 0.0);
    CHECK(nearest_double("1", 23) == 1e23);
    CHECK(nearest_double("9007199254740993", 0) == 9007199254740992.0);  // 2^53 + 1: a tie
    CHECK(nearest_double("90071992547409930000000000000000001", -19) == 9007199254740994.0);
    CHECK(nearest_double("17976931348623157", 292) == std::numeric_limits<double>::max());
    CHECK(nearest_double("17976931348623158", 292) ==
          std::numeric_limits<double>::max());  // the middle is ...580793...
    CHECK(std::isinf(nearest_double("17976931348623159", 292)));
    CHECK(std::isinf(nearest_double("1", 309)));
    CHECK(std::isinf(nearest_double("1", 99999)));
    CHECK(nearest_double("5", -324) == std::numeric_limits<double>::denorm_min());
    CHECK(nearest_double("24703282292062327", -340) == 0.0);  // half of the smallest is 2.47032822920623272...e-324
    CHECK(nearest_double("24703282292062328", -340) == std::numeric_limits<double>::denorm_min());
    CHECK(nearest_double("22250738585072011", -324) == from_bits(0x000FFFFFFFFFFFFFULL));  // the largest subnormal
    CHECK(nearest_double("22250738585072014", -324) == std::numeric_limits<double>::min());
    CHECK(nearest_double("1", -99999) == 0.0);
    CHECK(decimal_of(0.0, 15).digits.empty());
    CHECK(decimal_of(-1.0, 15).digits.empty());
    CHECK(decimal_of(std::numeric_limits<double>::infinity(), 15).digits.empty());
    CHECK(decimal_of(std::nan(""), 15).digits.empty());
    CHECK(decimal_of(9.999999, 3).digits == "100");
    CHECK(decimal_of(9.999999, 3).first_place == 1);
    CHECK(decimal_of(0.5, 3).digits == "500");
    CHECK(decimal_of(2.5, 1).digits == "2");  // a tie, to the even digit
    CHECK(decimal_of(3.5, 1).digits == "4");
}

TEST_CASE("decimal: numbers for machines") {
    CHECK(machine_number(0.0, 7) == "0");
    CHECK(machine_number(-0.0, 7) == "0");
    CHECK(machine_number(22.5, 7) == "22.5");
    CHECK(machine_number(-1366.0, 7) == "-1366");
    CHECK(machine_number(100.0, 7) == "100");
    CHECK(machine_number(0.1 + 0.2, 7) == "0.3");
    CHECK(machine_number(0.001, 7) == "0.001");
    CHECK(machine_number(1.0 / 3.0, 12) == "0.333333333333");
    CHECK(machine_number(1e-7, 7) == "1e-7");
    CHECK(machine_number(12345678.0, 7) == "1.234568e7");
    CHECK(machine_number(-2e30, 12) == "-2e30");
    // As JavaScript writes numbers, but for where the powers begin: below 0.00001, and beyond the figures.
    CHECK(machine_number(0.00001, 7) == "0.00001");
    CHECK(machine_number(0.0000123, 7) == "0.0000123");
    CHECK(machine_number(0.000001, 7) == "1e-6");
    CHECK(machine_number(0.00000123, 7) == "1.23e-6");
    CHECK(machine_number(1234567.0, 7) == "1234567");
    CHECK(machine_number(9999999.0, 7) == "9999999");
    CHECK(machine_number(1e6, 7) == "1000000");
    CHECK(machine_number(1e7, 7) == "1e7");
    CHECK(machine_number(12.5, 2) == "12");  // a tie, to the even digit
    CHECK(machine_number(123.0, 4) == "123");
    CHECK(machine_number(1230.0, 4) == "1230");
    CHECK(machine_number(123.4, 4) == "123.4");
}
