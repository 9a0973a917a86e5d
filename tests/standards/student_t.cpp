// Student's t to the last digits, by closed forms and by many digits: the series behind it change from one to another.

#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>

#include "core/quantity/gum.hpp"

using namespace overwater;

TEST_CASE("Student's t of one, two and four degrees of freedom has closed forms") {
    for (const double p : {0.001, 0.1, 0.4999, 0.5, 0.5001, 0.6827, 0.9, 0.95, 0.9973}) {
        CAPTURE(p);
        // tan(pi p/2); p sqrt(2/(1 - p²)); and of four: 2 sqrt(q - 1), q = cos(acos(root)/3)/root, root = sqrt(1 - p²).
        const double root = std::sqrt((1 - p) * (1 + p));
        CHECK(student_quantile(p, 1) == doctest::Approx(std::tan(std::numbers::pi / 2 * p)).epsilon(2e-13));
        CHECK(student_quantile(p, 2) == doctest::Approx(p * std::sqrt(2) / root).epsilon(2e-13));
        if (p < 0.05) continue;  // q - 1 loses digits
        const double q = std::cos(std::acos(root) / 3) / root;
        CHECK(student_quantile(p, 4) == doctest::Approx(2 * std::sqrt(q - 1)).epsilon(1e-12));
    }
}

TEST_CASE("Student's t against thirty digits, few degrees of freedom and many") {
    // The incomplete beta function of mpmath 1.2.1, 30 digits, solved for t. (scipy.stats.t.ppf of SciPy 1.10.1 is off by up to
    // 4e-9 here.)
    constexpr double coverages[] = {0.1, 0.5, 0.95, 0.9973};
    struct Row {
        double degrees;
        double t[4];
    };
    constexpr Row rows[] = {
        {3, {0.1365981993536989, 0.7648923284043453, 3.18244630528371, 9.218701822037347}},
        {7.5, {0.1299803322341484, 0.7085995804442595, 2.333039626864975, 4.392058062698209}},
        {99, {0.1259841139162059, 0.6769759855461526, 1.984216951586417, 3.07752442171739}},
        {100, {0.1259808820415397, 0.6769510430114715, 1.983971518523552, 3.076730898917827}},
        {1000, {0.1256932625187164, 0.6747351646070094, 1.962339080826408, 3.007494111288684}},
        {99999, {0.1256616659727831, 0.6744922035778261, 1.959987707771845, 3.000051993567891}},
        {100001, {0.1256616659664008, 0.6744922035287588, 1.959987707297379, 3.000051992067855}},
        {200000, {0.1256615064122265, 0.6744909768726997, 1.959975845966769, 3.000014492329383}},
        {1000000, {0.1256613787664875, 0.6744899955310874, 1.959966356814107, 2.999984492559593}},
    };
    for (const Row& row : rows) {
        CAPTURE(row.degrees);
        for (std::size_t i = 0; i < 4; ++i) {
            CAPTURE(coverages[i]);
            CHECK(std::fabs(student_quantile(coverages[i], row.degrees) - row.t[i]) <= 1e-12 * std::max(1.0, row.t[i]));
        }
    }
}

TEST_CASE("an uncertainty is rounded up where the nearest would be more than 2.5 % too small") {
    // gum.hpp: the share is the program's choice. 10/10.25 is 0.9756, 10/10.26 is 0.9747.
    CHECK(rounded_uncertainty(10.25) == 10);
    CHECK(rounded_uncertainty(10.26) == 11);
    CHECK(rounded_uncertainty(0.1025) == 0.10);
    CHECK(rounded_uncertainty(0.1026) == 0.11);
    CHECK(rounded_uncertainty(2.04, 1) == 2);  // 2/2.04 is 0.980
    CHECK(rounded_uncertainty(2.06, 1) == 3);  // 2/2.06 is 0.971
    CHECK(rounded_uncertainty(-1) == -1);
    CHECK(rounded_uncertainty(0) == 0);
    CHECK(decimals_of_uncertainty(-1) == 0);
}

TEST_CASE("statistics of too few readings are none") {
    CHECK(sample_of({}).count == 0);
    CHECK(sample_of(std::array<double, 1>{3}).mean == 3);
    CHECK(sample_of(std::array<double, 1>{3}).deviation == 0);
    CHECK(sample_of(std::array<double, 2>{3, 5}).deviation == doctest::Approx(std::numbers::sqrt2));
    CHECK(sample_of(std::array<double, 2>{3, 5}).of_mean == doctest::Approx(1));
    CHECK(covariance_of_means(std::array<double, 1>{3}, std::array<double, 1>{4}) == 0);
    // (3 - 4)(10 - 20) + (5 - 4)(30 - 20) over 2 (2 - 1).
    CHECK(covariance_of_means(std::array<double, 2>{3, 5}, std::array<double, 2>{10, 30}) == doctest::Approx(10));
    CHECK(fitted_line(std::array<double, 1>{3}, std::array<double, 1>{4}).slope == 0);
    // Through two points a line is exact, and nothing is left for its doubt; one above the other there is none.
    const Line two = fitted_line(std::array<double, 2>{1, 3}, std::array<double, 2>{5, 9});
    CHECK(two.slope == doctest::Approx(2));
    CHECK(two.intercept == doctest::Approx(3));
    CHECK(two.degrees == 0);
    CHECK(two.u_slope == 0);
    CHECK(two.residual == 0);
    CHECK(fitted_line(std::array<double, 2>{1, 1}, std::array<double, 2>{5, 9}).slope == 0);
    // Three points, by hand: y = x but the middle one 3 above; slope 1, residuals -1, 2, -1: s = sqrt(6), u(slope) = s/sqrt 2.
    const Line three = fitted_line(std::array<double, 3>{-1, 0, 1}, std::array<double, 3>{-1, 3, 1});
    CHECK(three.degrees == 1);
    CHECK(three.residual == doctest::Approx(std::sqrt(6.0)));
    CHECK(three.u_slope == doctest::Approx(std::sqrt(3.0)));
    CHECK(three.u_intercept == doctest::Approx(std::sqrt(2.0)));
    CHECK(combined_uncertainty(std::array<double, 2>{1, 1}, std::array<double, 3>{1, 0, 1}) == 0);
    CHECK(coverage_factor(std::numeric_limits<double>::infinity()) == 1.96);
}
