#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>
#include <vector>

#include "core/result/random.hpp"
#include "tests/core/monte_carlo_support.hpp"

using namespace overwater;

namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();

bool same(double a, double b) { return __builtin_bit_cast(std::uint64_t, a) == __builtin_bit_cast(std::uint64_t, b); }

/// JCGM 101, 7.7, on all values sorted: slow and plain.
MonteCarloResult by_sorting(std::vector<double> y) {
    for (double& value : y) value = std::isnan(value) ? infinity : value;
    std::sort(y.begin(), y.end());
    const std::size_t count = y.size();
    const double whole = 0.95 * static_cast<double>(count);
    const auto q = static_cast<std::size_t>(whole == std::floor(whole) ? whole : std::floor(whole + 0.5));
    MonteCarloResult result;
    const double lower = y[(count - 1) / 2];
    const double upper = y[count / 2];
    result.median = std::isinf(upper) ? upper : lower + (upper - lower) / 2;
    if (count == q) {
        result.symmetric = result.shortest = {y[0], y[count - 1], std::isinf(y[count - 1])};
        return result;
    }
    const std::size_t r = (count - q) % 2 == 0 ? (count - q) / 2 : (count - q + 1) / 2;
    result.symmetric = {y[r - 1], y[r + q - 1], std::isinf(y[r + q - 1])};
    std::size_t best = count - q - 1;
    double width = infinity;
    for (std::size_t i = 0; i + q < count; ++i) {
        if (y[i + q] - y[i] < width) {
            width = y[i + q] - y[i];
            best = i;
        }
    }
    result.shortest = {y[best], y[best + q], std::isinf(y[best + q])};
    return result;
}

void check_same(const MonteCarloResult& found, const MonteCarloResult& expected) {
    CHECK(same(found.median, expected.median));
    CHECK(same(found.symmetric.low, expected.symmetric.low));
    CHECK(same(found.symmetric.high, expected.symmetric.high));
    CHECK(found.symmetric.open_above == expected.symmetric.open_above);
    CHECK(same(found.shortest.low, expected.shortest.low));
    CHECK(same(found.shortest.high, expected.shortest.high));
    CHECK(found.shortest.open_above == expected.shortest.open_above);
}

std::vector<double> drawn(std::size_t count, const std::function<double(double normal, double uniform)>& shape) {
    Random random(11);
    std::vector<double> out;
    while (out.size() < count) {
        const Random::Numbers z = random.normal();
        const Random::Numbers u = random.uniform();
        for (std::size_t k = 0; k < Random::lanes && out.size() < count; ++k) out.push_back(shape(z[k], u[k]));
    }
    return out;
}

}  // namespace

TEST_CASE("the collector's order statistics are those of sorting all values") {
    struct Named {
        const char* name;
        std::function<double(double, double)> shape;
    };
    const Named shapes[]{
        {"normal", [](double z, double) { return z; }},
        {"skewed", [](double z, double) { return z * z; }},
        {"heavy tails", [](double z, double u) { return z / (u * u * u); }},
        {"two humps", [](double z, double u) { return z + (u < 0.3 ? -20 : 20); }},
        {"few values", [](double z, double) { return std::floor(z); }},
        {"one value", [](double, double) { return 22.7; }},
        {"nothing but zero", [](double, double) { return 0.0; }},
        {"one in a hundred has none", [](double z, double u) { return u < 0.01 ? infinity : z; }},
        {"a tenth has none", [](double z, double u) { return u < 0.1 ? std::nan("") : z; }},
        {"most have none", [](double z, double u) { return u < 0.7 ? infinity : z; }},
        {"none has one", [](double, double) { return infinity; }},
        {"far apart", [](double z, double u) { return u < 0.5 ? z * 1e-9 : 1e300 * u; }},
    };
    for (const Named& row : shapes) {
        CAPTURE(row.name);
        for (const std::size_t count : {1u, 2u, 19u, 20u, 41u, 999u, 8192u, 8193u, 60001u}) {
            CAPTURE(count);
            const std::vector<double> values = drawn(count, row.shape);
            check_same(collected(values), by_sorting(values));
        }
    }
}

TEST_CASE("where the first trials mislead, the values are taken a second time and the result is right") {
    // The first tenth lies elsewhere than the rest.
    std::vector<double> values = drawn(100000, [](double z, double) { return z; });
    for (std::size_t i = 0; i < 10000; ++i) values[i] = values[i] * 0.001 + 50;
    Collector collector(values.size());
    collector.add(values);
    CHECK(collector.pass() == 1);
    CHECK(collector.wanted() == values.size());
    CHECK(collector.taken() == values.size());
    CHECK_FALSE(collector.finish_slice());
    check_same(collected(values), by_sorting(values));
    // Ascending values mislead most.
    std::sort(values.begin(), values.end());
    check_same(collected(values), by_sorting(values));
}

TEST_CASE("mean and standard deviation keep their digits where the spread is small beside the value") {
    // Long double and two passes.
    const std::vector<double> values = drawn(100000, [](double z, double) { return 1e6 + 1e-3 * z; });
    long double sum = 0;
    for (const double value : values) sum += static_cast<long double>(value) - 1e6L;
    const long double mean = sum / 100000;
    long double squares = 0;
    for (const double value : values) {
        const long double deviation = static_cast<long double>(value) - 1e6L - mean;
        squares += deviation * deviation;
    }
    const MonteCarloResult result = collected(values);
    CHECK(result.has_mean);
    CHECK(std::fabs(result.mean - static_cast<double>(1e6L + mean)) <= 2e-10);
    CHECK(result.u == doctest::Approx(static_cast<double>(std::sqrt(squares / 99999))).epsilon(1e-12));
}

TEST_CASE("the histogram counts what lies between its ends") {
    const std::vector<double> values = drawn(100000, [](double z, double) { return z; });
    Collector collector(values.size());
    collector.add(values);
    // The middle 99.8 % of the normal, widened by a tenth of it: 3.09 and 0.62; the pilot's tenths of a per cent are rough.
    CHECK(collector.histogram_low() == doctest::Approx(-3.71).epsilon(0.1));
    CHECK(collector.histogram_high() == doctest::Approx(3.71).epsilon(0.1));
    const double width = (collector.histogram_high() - collector.histogram_low()) / Collector::bins;
    std::array<std::uint32_t, Collector::bins> expected{};
    for (const double value : values) {
        const double place = (value - collector.histogram_low()) / width;
        if (place >= 0 && place < Collector::bins) ++expected[static_cast<std::size_t>(place)];
    }
    const auto found = collector.histogram();
    // A value on the border of two bins may fall to either side by rounding.
    for (std::size_t i = 0; i < found.size(); ++i) {
        CHECK(std::abs(static_cast<int>(found[i]) - static_cast<int>(expected[i])) <= 1);
    }
}
