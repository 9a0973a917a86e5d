#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <vector>

#include "core/quantity/gum.hpp"

// NIST Statistical Reference Datasets (public domain), certified to 15 digits.

using namespace overwater;

namespace {

void check_sample(const std::vector<double>& values, double mean, double deviation, double mean_tolerance,
                  double deviation_tolerance) {
    const Sample sample = sample_of(values);
    CHECK(std::abs(sample.mean - mean) <= mean_tolerance * std::abs(mean));
    CHECK(std::abs(sample.deviation - deviation) <= deviation_tolerance * deviation);
}

/// `first`, then 1000 values that alternate between `low` and `high`.
std::vector<double> alternating(double first, double low, double high) {
    std::vector<double> values{first};
    for (int i = 0; i < 500; ++i) {
        values.push_back(low);
        values.push_back(high);
    }
    return values;
}

const std::vector<double> michelso{
    299.85, 299.74, 299.90, 300.07, 299.93, 299.85, 299.95, 299.98, 299.98, 299.88, 300.00, 299.98, 299.93,
    299.65, 299.76, 299.81, 300.00, 300.00, 299.96, 299.96, 299.96, 299.94, 299.96, 299.94, 299.88, 299.80,
    299.85, 299.88, 299.90, 299.84, 299.83, 299.79, 299.81, 299.88, 299.88, 299.83, 299.80, 299.79, 299.76,
    299.80, 299.88, 299.88, 299.88, 299.86, 299.72, 299.72, 299.62, 299.86, 299.97, 299.95, 299.88, 299.91,
    299.85, 299.87, 299.84, 299.84, 299.85, 299.84, 299.84, 299.84, 299.89, 299.81, 299.81, 299.82, 299.80,
    299.77, 299.76, 299.74, 299.75, 299.76, 299.91, 299.92, 299.89, 299.86, 299.88, 299.72, 299.84, 299.85,
    299.85, 299.78, 299.89, 299.84, 299.78, 299.81, 299.76, 299.81, 299.79, 299.81, 299.82, 299.85, 299.87,
    299.87, 299.81, 299.74, 299.81, 299.94, 299.95, 299.80, 299.81, 299.87};

const std::vector<double> norris_x{0.2, 337.4, 118.2, 884.6, 10.1,  226.5, 666.3, 996.3, 448.6, 777.0, 558.2, 0.4,
                                   0.6, 775.5, 666.9, 338.0, 447.5, 11.6,  556.0, 228.1, 995.8, 887.6, 120.2, 0.3,
                                   0.3, 556.8, 339.1, 887.2, 999.0, 779.0, 11.1,  118.3, 229.2, 669.1, 448.9, 0.5};
const std::vector<double> norris_y{0.1, 338.8, 118.1, 888.0, 9.2,   228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3,
                                   0.1, 778.1, 668.8, 339.3, 448.9, 10.8,  557.7, 228.3, 998.0, 888.8, 119.6, 0.3,
                                   0.6, 557.6, 339.3, 888.0, 998.5, 778.9, 10.2,  117.6, 228.9, 668.4, 449.2, 0.2};

}  // namespace

TEST_CASE("means and deviations of the NIST reference data") {
    // The tolerances of the deviation are those the GNU Scientific Library takes for doubles.
    check_sample(michelso, 299.852400000000, 0.0790105478190518, 1e-15, 1e-13);
    check_sample({10000001, 10000003, 10000002}, 10000002, 1, 0, 1e-15);                          // NumAcc1
    check_sample(alternating(1.2, 1.1, 1.3), 1.2, 0.1, 1e-15, 1e-15);                             // NumAcc2
    check_sample(alternating(1000000.2, 1000000.1, 1000000.3), 1000000.2, 0.1, 1e-15, 1e-9);      // NumAcc3
    check_sample(alternating(10000000.2, 10000000.1, 10000000.3), 10000000.2, 0.1, 1e-15, 1e-7);  // NumAcc4
}

TEST_CASE("the straight line of the NIST reference data: Norris") {
    const Line line = fitted_line(norris_x, norris_y);
    CHECK(line.degrees == 34);
    CHECK(line.intercept == doctest::Approx(-0.262323073774029).epsilon(1e-12));
    CHECK(line.slope == doctest::Approx(1.00211681802045).epsilon(1e-14));
    CHECK(line.u_intercept == doctest::Approx(0.232818234301152).epsilon(1e-12));
    CHECK(line.u_slope == doctest::Approx(0.429796848199937e-3).epsilon(1e-12));
    CHECK(line.residual == doctest::Approx(0.884796396144373).epsilon(1e-12));
}
