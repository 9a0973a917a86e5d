// The ring of water above the lowest point of a meniscus: method.md, section 1.

#include "core/bench/meniscus.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <numbers>

using namespace overwater;

namespace {

/// mL; -1 where nothing is known.
double ring(double millimetres) {
    const auto found = meniscus_ring(millimetres * 1e-3);
    return found ? *found * 1e6 : -1;
}

constexpr double square_of_capillary_length = 0.0728 / (998.2 * 9.80665);  // m²

/// Where the surface of a meniscus that is curved by `radius` at its lowest point stands upright: the radius of the tube, m. By
/// the angle of the surface, fourth order of Runge and Kutta.
double radius_of_wall(double radius) {
    constexpr int steps = 1000;
    constexpr double step = std::numbers::pi / 2 / steps;
    struct Place {
        double out;
        double up;
    };
    const auto slope = [&](double angle, Place at) {
        const double curved = 2 / radius + at.up / square_of_capillary_length - std::sin(angle) / at.out;
        return Place{std::cos(angle) / curved, std::sin(angle) / curved};
    };
    const auto moved = [](Place at, Place by, double much) {
        return Place{at.out + much * by.out, at.up + much * by.up};
    };
    Place at{radius * step, radius * step * step / 2};  // a sphere at the bottom
    for (int i = 1; i < steps; ++i) {
        const double angle = i * step;
        const Place a = slope(angle, at);
        const Place b = slope(angle + step / 2, moved(at, a, step / 2));
        const Place c = slope(angle + step / 2, moved(at, b, step / 2));
        const Place d = slope(angle + step, moved(at, c, step));
        at = moved(moved(moved(moved(at, a, step / 6), b, step / 3), c, step / 3), d, step / 6);
    }
    return at.out;
}

/// The water above the lowest point, mL: what the surface tension lifts along the wall, less what it lifts at the lowest point.
double ring_by_young_laplace(double millimetres) {
    const double wall = millimetres / 2e3;
    double low = wall / 2;
    double high = wall * 1e4;
    for (int i = 0; i < 60; ++i) {
        const double middle = std::sqrt(low * high);
        (radius_of_wall(middle) < wall ? low : high) = middle;
    }
    const double lifted = 2 * std::numbers::pi * wall * square_of_capillary_length;
    return (lifted - std::numbers::pi * wall * wall * 2 * square_of_capillary_length / low) * 1e6;
}

}  // namespace

TEST_CASE("the ring of the meniscus at each bore of the method") {
    // method.md, section 1: bore 9.5/11/13/15/18/25 mm.
    const double rows[][2] = {{9.5, 0.076}, {11, 0.107}, {13, 0.155}, {15, 0.209}, {18, 0.30}, {25, 0.51}};
    for (const auto& row : rows) {
        CAPTURE(row[0]);
        // A hair inside the ends: 9.5 mm need not be 9.5 again after metres.
        const double inside = row[0] + (row[0] < 10 ? 1e-9 : row[0] > 20 ? -1e-9 : 0);
        CHECK(ring(inside) == doctest::Approx(row[1]).epsilon(1e-6));
    }
}

TEST_CASE("between two bores the ring grows in proportion, and outside the bores it is not known") {
    // Halfway: the mean of two rows of method.md, section 1.
    CHECK(ring(10.25) == doctest::Approx((0.076 + 0.107) / 2));
    CHECK(ring(12) == doctest::Approx((0.107 + 0.155) / 2));
    CHECK(ring(14) == doctest::Approx((0.155 + 0.209) / 2));
    CHECK(ring(16.5) == doctest::Approx((0.209 + 0.30) / 2));
    CHECK(ring(21.5) == doctest::Approx((0.30 + 0.51) / 2));
    CHECK(ring(16) == doctest::Approx(0.209 + 0.091 / 3));  // a third of the way
    CHECK(ring(9.49) == -1);
    CHECK(ring(25.01) == -1);
    CHECK(ring(0) == -1);
    CHECK(ring(-15) == -1);
}

TEST_CASE("the ring of the meniscus against the Young-Laplace equation, integrated here") {
    // Water at 20 °C: surface tension 72.8 mN/m (IAPWS R1-76(2014)), 998.2 kg/m³. The table has two or three decimals, and a
    // tension of 0.5 % less is 0.001 mL less.
    const double rows[][2] = {{9.5, 0.001}, {11, 0.001}, {13, 0.001}, {15, 0.001}, {18, 0.005}, {25, 0.005}};
    for (const auto& row : rows) {
        CAPTURE(row[0]);
        const double inside = row[0] + (row[0] < 10 ? 1e-9 : row[0] > 20 ? -1e-9 : 0);
        CHECK(std::fabs(ring(inside) - ring_by_young_laplace(row[0])) <= row[1]);
    }
}

TEST_CASE("the most that a meniscus takes off counts a tube with the nearer of 50 and 100 mL") {
    // method.md, section 1: 0.25 mL for 50 mL, 0.45 mL for 100 mL; 75 mL is as near to both and counts with the smaller.
    const auto most = [](double millilitres) { return most_of_meniscus(millilitres * 1e-6) * 1e6; };
    CHECK(most(0) == doctest::Approx(0.25));
    CHECK(most(10) == doctest::Approx(0.25));
    CHECK(most(50) == doctest::Approx(0.25));
    CHECK(most(74.9) == doctest::Approx(0.25));
    CHECK(most_of_meniscus(75e-6) == doctest::Approx(0.25e-6));
    CHECK(most(75.1) == doctest::Approx(0.45));
    CHECK(most(100) == doctest::Approx(0.45));
}
