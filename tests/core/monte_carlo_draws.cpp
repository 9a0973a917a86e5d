#include <doctest/doctest.h>

#include <cmath>
#include <vector>

#include "core/result/random.hpp"

using namespace overwater;

// The numbers that must be the same to the last bit everywhere were computed by tests/oracle/interval_draws.py, which has the
// published algorithms a second time, in NumPy. This file runs natively and as WebAssembly.

namespace {

std::uint64_t bits_of(double value) { return __builtin_bit_cast(std::uint64_t, value); }

/// h = 31 h + word over 100 000 draws.
template <class Draw>
std::uint64_t checksum(Draw draw) {
    std::uint64_t sum = 0;
    for (int i = 0; i < 12500; ++i) {
        const Random::Numbers numbers = draw();
        for (std::size_t k = 0; k < Random::lanes; ++k) sum = 31 * sum + bits_of(numbers[k]);
    }
    return sum;
}

template <class Draw>
std::vector<double> many(int packs, Draw draw) {
    std::vector<double> out;
    for (int i = 0; i < packs; ++i) {
        const Random::Numbers numbers = draw();
        for (std::size_t k = 0; k < Random::lanes; ++k) out.push_back(numbers[k]);
    }
    return out;
}

/// How often the size is below `limit`, and four standard errors of a fraction that should be `coverage`.
void check_coverage(const std::vector<double>& draws, double limit, double coverage) {
    double inside = 0;
    for (const double x : draws) inside += std::fabs(x) <= limit ? 1 : 0;
    const auto count = static_cast<double>(draws.size());
    CHECK(std::fabs(inside / count - coverage) <= 4 * std::sqrt(coverage * (1 - coverage) / count));
}

}  // namespace

TEST_CASE("the generator gives the published vectors") {
    // xoshiro256plus.c from the state 1 2 3 4, as the tests of rand_xoshiro (Rust) print it.
    constexpr std::uint64_t expected[]{5,
                                       211106232532999,
                                       211106635186183,
                                       9223759065350669058u,
                                       9250833439874351877u,
                                       13862484359527728515u,
                                       2346507365006083650,
                                       1168864526675804870,
                                       34095955243042024,
                                       3466914240207415127};
    Random random(Random::State{1, 2, 3, 4});
    for (const std::uint64_t word : expected) CHECK(random.next()[0] == word);
    // The state after one jump from 0 0 0 1, as the tests of xoshiro-fortran print it; a draw is its first and last word
    // added.
    CHECK(Random(Random::State{0, 0, 0, 1}).next()[1] == 0x934D05E8B2076310u + 0xC660C602A7330187u);
    // SplitMix64 from 1234567 begins with these four.
    CHECK(Random(1234567).next()[0] == 6457827717110365317u + 4593380528125082431u);
}

TEST_CASE("the first draws of each lane, and a checksum of 100 000, are those of the second implementation") {
    constexpr Random::Words first{0x2cbb47d774525cc,  0xd88f990e4ec5d487, 0x9308aa34cc1d6b02, 0xd15fb5529c79d1b8,
                                  0xcf71c301fa6742de, 0x9b3d03c13da99a3b, 0xbe3b206c32509183, 0x34c162014b623919};
    CHECK(Random(1).next() == first);
    Random words(1);
    std::uint64_t sum = 0;
    for (int i = 0; i < 12500; ++i) {
        for (const std::uint64_t word : words.next()) sum = 31 * sum + word;
    }
    CHECK(sum == 0x75d7ec3fbf46ce69);
    Random random(1);
    CHECK(checksum([&] { return random.uniform(); }) == 0x701b7697e2e38b3e);
}

TEST_CASE("normal and Student's t draws are the same to the last bit") {
    Random normal(1);
    CHECK(checksum([&] { return normal.normal(); }) == 0x8d0cc59585f0d2ae);
    const auto student = [](double degrees) {
        Random random(2);
        return checksum([&] { return random.student(degrees); });
    };
    CHECK(student(1) == 0x36eac58631fadd08);
    CHECK(student(2.5) == 0xb13afbf262912e0f);
    CHECK(student(4) == 0xaf0ecb836ec0c90f);
    CHECK(student(9) == 0xb0e92c973462a541);
}

TEST_CASE("the quantile of the normal agrees with scipy's") {
    // scipy.stats.norm.ppf, SciPy 1.10.
    struct Known {
        double probability, quantile;
    };
    constexpr Known known[]{{1e-15, -7.941345326170998},  {1e-12, -7.034483825301131}, {0.001, -3.090232306167813},
                                {0.025, -1.9599639845400545}, {0.3, -0.5244005127080409},  {0.5, 0.0},
                                {0.925, 1.4395314709384563},  {0.9251, 1.4402382675279635}, {0.975, 1.959963984540054}};
    for (const Known& row : known) {
        CAPTURE(row.probability);
        const double found = normal_by_rationals(row.probability);
        CHECK(std::fabs(found - row.quantile) <= 1e-15 * std::fmax(1, std::fabs(row.quantile)));
    }
}

TEST_CASE("logarithm and exponential by arithmetic agree with the library's within two units of the last place") {
    Random random(3);
    for (const double u : many(2000, [&] { return random.uniform(); })) {
        const double x = u < 0.5 ? u : 1 - std::ldexp(1 - u, -20);
        CAPTURE(x);
        CHECK(std::fabs(log_by_arithmetic(x) - std::log(x)) <= std::fmax(4.5e-16 * std::fabs(std::log(x)), 1e-16));
        const double y = 1400 * u - 700;
        CHECK(std::fabs(exp_by_arithmetic(y) / std::exp(y) - 1) <= 4.5e-16);
    }
    CHECK(log_by_arithmetic(1.0) == 0.0);
    CHECK(exp_by_arithmetic(0.0) == 1.0);
}

TEST_CASE("shapes have their moments and their quantiles") {
    constexpr int packs = 25000;
    Random random(4);
    const auto mean_square = [](const std::vector<double>& draws, double middle) {
        double sum = 0;
        for (const double x : draws) sum += (x - middle) * (x - middle);
        return sum / static_cast<double>(draws.size());
    };
    const double root = std::sqrt(8.0 * packs);
    // Mean square and its standard error from the fourth moment: rectangular of width 1: 1/12, 1/80; triangular: 1/24,
    // 1/240; normal: 1, 3.
    const auto rectangular = many(packs, [&] { return random.uniform(); });
    CHECK(std::fabs(mean_square(rectangular, 0.5) - 1.0 / 12) <= 4 * std::sqrt(1.0 / 80 - 1.0 / 144) / root);
    const auto triangular = many(packs, [&] { return random.triangular(); });
    CHECK(std::fabs(mean_square(triangular, 0.5) - 1.0 / 24) <= 4 * std::sqrt(1.0 / 240 - 1.0 / 576) / root);
    const auto normal = many(packs, [&] { return random.normal(); });
    CHECK(std::fabs(mean_square(normal, 0) - 1) <= 4 * std::sqrt(3.0 - 1.0) / root);
    check_coverage(normal, 1.959963984540054, 0.95);
    // Two-sided 95 and 99 % quantiles of t: standards.md, 8.5 (scipy; GUM Table G.2); that of 2.5 degrees: scipy.
    struct Quantiles {
        double degrees, t95, t99;
    };
    constexpr Quantiles table[]{{1, 12.7062, 63.6567},    {2, 4.30265, 9.92484}, {2.5, 3.57465, 7.16373},
                                {4, 2.77645, 4.60409}, {9, 2.26216, 3.24984}};
    for (const Quantiles& row : table) {
        CAPTURE(row.degrees);
        const auto draws = many(packs, [&] { return random.student(row.degrees); });
        check_coverage(draws, row.t95, 0.95);
        check_coverage(draws, row.t99, 0.99);
    }
    check_coverage(many(packs, [&] { return random.student(1e300); }), 1.959963984540054, 0.95);
    check_coverage(many(packs, [&] { return random.student(HUGE_VAL); }), 1.959963984540054, 0.95);
}
