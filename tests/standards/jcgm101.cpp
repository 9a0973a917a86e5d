#include <doctest/doctest.h>

#include <cmath>
#include <numbers>
#include <vector>

#include "core/result/random.hpp"
#include "tests/core/monte_carlo_support.hpp"

using namespace overwater;

// The examples of JCGM 101:2008, clause 9, by the draws and the collector that the product uses. Inputs, published numbers and
// exact ones: standards.md, 8.4. Tolerances are four standard errors of a Monte Carlo of a million trials, added to half a unit
// of the last digit where a printed number is compared; never tuned.

namespace {

using Numbers = Random::Numbers;
constexpr std::size_t count = 1000000;
const double root_count = std::sqrt(static_cast<double>(count));

template <class Trial>
MonteCarloResult simulated(Trial trial) {
    Random random(101);
    std::vector<double> values(count);
    for (std::size_t i = 0; i < count; i += Random::lanes) {
        const Numbers y = trial(random);
        for (std::size_t k = 0; k < Random::lanes; ++k) values[i + k] = y[k];
    }
    return collected(values);
}

/// Rectangular about 0 with this half-width.
Numbers rectangular(Random& random, double half_width) {
    return Numbers(2 * half_width) * random.uniform() - Numbers(half_width);
}

/// Four standard errors of an end of the symmetric interval, where the density of the result is `density`.
double of_end(double density) { return 4 * std::sqrt(0.025 * 0.975) / root_count / density; }

/// Four standard errors of the mean, and of the standard deviation from the fourth moment (in units of u^4).
double of_mean(double u) { return 4 * u / root_count; }
double of_deviation(double u, double kurtosis) { return 4 * u * std::sqrt((kurtosis - 1) / 4) / root_count; }

void check_near(double found, double expected, double tolerance) {
    CAPTURE(found);
    CAPTURE(expected);
    CHECK(std::fabs(found - expected) <= tolerance);
}

}  // namespace

TEST_CASE("JCGM 101 9.2.2: four standard normals added") {
    const MonteCarloResult result =
        simulated([](Random& r) { return r.normal() + r.normal() + r.normal() + r.normal(); });
    check_near(result.mean, 0, of_mean(2));
    check_near(result.u, 2.00, of_deviation(2, 3));
    // Exactly 2 x 1.959964; density of N(0, 2) there 0.05845/2.
    const double tolerance = of_end(0.05845 / 2);
    check_near(result.symmetric.low, -3.91993, tolerance);
    check_near(result.symmetric.high, 3.91993, tolerance);
    check_near(result.symmetric.low, -3.92, 0.005 + tolerance);
    check_near(result.symmetric.high, 3.92, 0.005 + tolerance);
    // The shortest is no longer than the symmetric one.
    CHECK(result.shortest.high - result.shortest.low <= result.symmetric.high - result.symmetric.low);
}

TEST_CASE("JCGM 101 9.2.3: four rectangular inputs of the same width added") {
    const double half = std::numbers::sqrt3;
    const MonteCarloResult result = simulated([&](Random& r) {
        return rectangular(r, half) + rectangular(r, half) + rectangular(r, half) + rectangular(r, half);
    });
    check_near(result.mean, 0, of_mean(2));
    // Kurtosis of a sum of four: 3 - 1.2/4.
    check_near(result.u, 2.00, of_deviation(2, 2.7));
    // Exactly 2 sqrt 3 (2 - (3/5)^(1/4)); near its end the density is d^3/6 in units of the width 2 sqrt 3, d = (3/5)^(1/4).
    const double d = std::pow(0.6, 0.25);
    const double tolerance = of_end(d * d * d / 6 / (2 * half));
    check_near(result.symmetric.low, -3.879407, tolerance);
    check_near(result.symmetric.high, 3.879407, tolerance);
    check_near(result.symmetric.low, -3.88, 0.005 + tolerance);
    check_near(result.symmetric.high, 3.88, 0.005 + tolerance);
}

TEST_CASE("JCGM 101 9.2.4: one rectangular input ten times as wide") {
    const double half = std::numbers::sqrt3;
    const MonteCarloResult result = simulated([&](Random& r) {
        return rectangular(r, half) + rectangular(r, half) + rectangular(r, half) + rectangular(r, 10 * half);
    });
    check_near(result.mean, 0, of_mean(10.14889));
    // Kurtosis: 3 - 1.2 (3 + 10^4)/(3 + 100)^2.
    check_near(result.u, 10.14889, of_deviation(10.14889, 3 - 1.2 * 10003 / (103.0 * 103.0)));
    check_near(result.u, 10.1, 0.05 + of_deviation(10.14889, 3 - 1.2 * 10003 / (103.0 * 103.0)));
    // The density at 17.016 is 1/(20 sqrt 3) times the probability that the three narrow ones make up for less than
    // 17.3205 - 17.0158, which is above one half.
    const double tolerance = of_end(0.5 / (20 * half));
    check_near(result.symmetric.low, -17.01581, tolerance);
    check_near(result.symmetric.high, 17.01581, tolerance);
    check_near(result.symmetric.low, -17.0, 0.05 + tolerance);
    check_near(result.symmetric.high, 17.0, 0.05 + tolerance);
}

TEST_CASE("JCGM 101 9.3: calibration of a mass") {
    // Deviation of the conventional mass from 100 g, in mg; densities in kg/m3.
    const MonteCarloResult result = simulated([](Random& r) {
        const Numbers reference = Numbers(100000) + Numbers(0.050) * r.normal();
        const Numbers added = Numbers(1.234) + Numbers(0.020) * r.normal();
        const Numbers air = Numbers(1.2) + rectangular(r, 0.1);
        const Numbers weight = Numbers(8000) + rectangular(r, 1000);
        const Numbers of_reference = Numbers(8000) + rectangular(r, 50);
        return (reference + added) * (Numbers(1) + (air - Numbers(1.2)) *
                                                       (Numbers(1) / weight - Numbers(1) / of_reference)) -
               Numbers(100000);
    });
    check_near(result.mean, 1.2341, 0.00005 + of_mean(0.07548));
    // The kurtosis is below 4: a normal part and a product of two rectangular ones.
    check_near(result.u, 0.075480, of_deviation(0.07548, 4));
    check_near(result.u, 0.0754, 0.00005 + of_deviation(0.07548, 4));
    // Shortest. Its minimum is flat: ends to 0.002 (standards.md).
    check_near(result.shortest.low, 1.0846, 0.002);
    check_near(result.shortest.high, 1.3838, 0.002);
    check_near(result.shortest.low, 1.0834, 0.002);
    check_near(result.shortest.high, 1.3825, 0.002);
}

namespace {

/// 9.4: X1^2 + X2^2, both N(., 0.005) with correlation r; in units of 1e-6.
MonteCarloResult loss(double x1, double r) {
    return simulated([&](Random& random) {
        const Numbers z1 = random.normal();
        const Numbers z2 = random.normal();
        const Numbers a = Numbers(x1) + Numbers(0.005) * z1;
        const Numbers b = Numbers(0.005) * (Numbers(r) * z1 + Numbers(std::sqrt(1 - r * r)) * z2);
        return Numbers(1e6) * (a * a + b * b);
    });
}

struct Row {
    double x1, r;
    double mean, u, low, high;                  ///< computed independently (standards.md)
    double published_mean, published_u, published_low, published_high;
};

}  // namespace

TEST_CASE("JCGM 101 9.4: comparison loss in microwave power meter calibration") {
    constexpr Row rows[]{
        {0, 0, 50, 50, 0, 149.79, 50, 50, 0, 150},
        {0.010, 0, 150, 111.80, 0, 366.0, 150, 112, 0, 367},
        {0.050, 0, 2550, 502.49, 1593.6, 3548.6, 2551, 502, 1590, 3543},
        {0, 0.9, 50, 67, 0, 185, 50, 67, 0, 185},
        {0.010, 0.9, 150, 121, 13, 397, 150, 121, 13, 398},
        {0.050, 0.9, 2550, 505, 1626, 3558, 2551, 505, 1628, 3555},
    };
    for (const Row& row : rows) {
        CAPTURE(row.x1);
        CAPTURE(row.r);
        const MonteCarloResult result = loss(row.x1, row.r);
        // Exact: mean x1^2 + 2 u^2, variance 4 u^2 x1^2 + 4 u^4 (1 + r^2).
        const double v = 25e-6;
        const double exact_mean = 1e6 * (row.x1 * row.x1 + 2 * v);
        const double exact_u = 1e6 * std::sqrt(4 * v * row.x1 * row.x1 + 4 * v * v * (1 + row.r * row.r));
        check_near(result.mean, exact_mean, of_mean(exact_u));
        // No kurtosis above that of a single square of a normal, 15.
        check_near(result.u, exact_u, of_deviation(exact_u, 15));
        check_near(result.mean, row.mean, 0.5 + of_mean(exact_u));
        check_near(result.mean, row.published_mean, 0.5 + 4 * row.u / root_count + of_mean(exact_u));
        check_near(result.u, row.published_u, 0.5 + 2 * of_deviation(exact_u, 15));
        // Shortest; flat minimum: ends to 8 units (standards.md). Where it begins at nothing, it ends sharply.
        check_near(result.shortest.low, row.low, 8);
        check_near(result.shortest.high, row.high, 8);
        check_near(result.shortest.low, row.published_low, 8);
        check_near(result.shortest.high, row.published_high, 8);
        CHECK(result.shortest.low >= 0);
    }
}
