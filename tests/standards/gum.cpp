#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <limits>

#include "core/quantity/gum.hpp"
#include "core/quantity/number_format.hpp"
#include "core/result/dual.hpp"

// The worked examples of JCGM 100:2008 (GUM), annex H. "Published": the GUM's figures, as open metrology libraries repeat
// them (GTC, Propagation, SUNC); "computed": by NumPy from the same data with all digits kept. The printed results came
// from rounded intermediate figures, so that the last printed digit may be off by one.

using namespace overwater;

namespace {

constexpr double without_limit = std::numeric_limits<double>::infinity();

bool near(double found, double expected, double tolerance) {
    INFO("found ", found, ", expected ", expected);
    CHECK(std::abs(found - expected) <= tolerance);
    return std::abs(found - expected) <= tolerance;
}

}  // namespace

TEST_CASE("GUM H.1, end gauge: combined uncertainty, effective degrees of freedom, 99 %") {
    // l = ls + d - ls (dalpha theta + alphas dtheta); nm and 1/°C.
    using D = Dual<6>;
    const D ls = D::input(50000623, 0);
    const D d = D::input(215, 1);
    const D dalpha = D::input(0, 2);
    const D theta = D::input(-0.1, 3);
    const D alphas = D::input(11.5e-6, 4);
    const D dtheta = D::input(0, 5);
    const D l = ls + d - ls * (dalpha * theta + alphas * dtheta);
    near(l.value(), 50000838, 0.5);  // published

    // d: 5.8 of five readings of a pool of 24, 3.9 random and 6.7 systematic of the comparator.
    const std::array<Part, 3> of_d{Part{5.8, 24}, Part{3.9, 5}, Part{6.7, 8}};
    const double u_d = std::sqrt(5.8 * 5.8 + 3.9 * 3.9 + 6.7 * 6.7);
    near(u_d, 9.7, 0.05);                                                // published
    near(effective_degrees(of_d) * std::pow(9.7 / u_d, 4), 25.6, 0.05);  // published, from the rounded 9.7
    near(degrees_of_doubtful(0.10), 50, 1e-9);                           // published
    near(degrees_of_doubtful(0.50), 2, 1e-9);                            // published

    const std::array<double, 6> u{
        25, 9.7, 1e-6 / std::sqrt(3), std::sqrt(0.2 * 0.2 + 0.5 * 0.5 / 2), 2e-6 / std::sqrt(3), 0.05 / std::sqrt(3)};
    near(u[3], 0.41, 0.005);  // published
    const std::array<double, 6> degrees{18, 25.6, 50, without_limit, without_limit, 2};
    std::array<Part, 6> parts{};
    std::array<double, 6> slopes{};
    std::array<double, 36> covariances{};
    for (std::size_t i = 0; i < 6; ++i) {
        slopes[i] = l.slope(i);
        covariances[7 * i] = u[i] * u[i];
        parts[i] = {std::abs(slopes[i]) * u[i], degrees[i]};
    }
    near(parts[2].u, 2.89, 0.005);   // computed; published 2.9
    near(parts[3].u, 0, 0);          // published: no part of the first order
    near(parts[4].u, 0, 0);          // published
    near(parts[5].u, 16.60, 0.005);  // computed; published 16.6
    const double u_c = combined_uncertainty(slopes, covariances);
    near(u_c, 32, 0.5);         // published
    near(u_c, 31.669, 0.0005);  // computed

    // The figures kept whole give 16.76; the GUM prints 16.7 (from memory) and goes on with 16.
    const double effective = effective_degrees(parts);
    near(effective, 16.76, 0.005);
    near(effective, 16.7, 0.1);
    CHECK(std::floor(effective) == 16);
    const double k = student_quantile(0.99, std::floor(effective));
    near(k, 2.92, 0.005);             // published
    near(k, 2.9208, 0.00005);         // computed
    near(k * u_c, 92.5, 0.05);        // computed, with all digits
    near(std::floor(k * 32), 93, 0);  // published: 2.92 times the rounded 32 nm

    // Who starts from the printed 32, 25, 9.7, 2.9 and 16.6 gets 17.47, and with it another k.
    const std::array<Part, 4> rounded{Part{25, 18}, Part{9.7, 25.6}, Part{2.9, 50}, Part{16.6, 2}};
    const double of_rounded = std::sqrt(25 * 25 + 9.7 * 9.7 + 2.9 * 2.9 + 16.6 * 16.6);
    near(effective_degrees(rounded) * std::pow(32 / of_rounded, 4), 17.47, 0.005);  // computed
}

TEST_CASE("GUM H.1.7, end gauge: the contribution of second order") {
    // GUM 5.1.2, note: the sum over i and j of ((d2f/dxi dxj)^2/2 + df/dxi d3f/dxi dxj^2) u(xi)^2 u(xj)^2. The model is linear
    // in each input: no third derivative of that kind, and a second one is exactly a difference of two slopes.
    using D = Dual<6>;
    const std::array<double, 6> x{50000623, 215, 0, -0.1, 11.5e-6, 0};
    const std::array<double, 6> u{
        25, 9.7, 1e-6 / std::sqrt(3), std::sqrt(0.2 * 0.2 + 0.5 * 0.5 / 2), 2e-6 / std::sqrt(3), 0.05 / std::sqrt(3)};
    const auto length = [&](std::size_t moved, double by) {
        std::array<D, 6> at{};
        for (std::size_t i = 0; i < 6; ++i) at[i] = D::input(x[i] + (i == moved ? by : 0), i);
        return at[0] + at[1] - at[0] * (at[2] * at[3] + at[4] * at[5]);
    };
    double first = 0;
    double second = 0;
    std::array<std::array<double, 6>, 6> parts{};
    const D here = length(0, 0);
    for (std::size_t j = 0; j < 6; ++j) {
        first += std::pow(here.slope(j) * u[j], 2);
        const D above = length(j, u[j]);
        const D below = length(j, -u[j]);
        for (std::size_t i = 0; i < 6; ++i) {
            parts[i][j] = (above.slope(i) - below.slope(i)) / 2 * u[i];  // (d2f/dxi dxj) u(xi) u(xj)
            second += parts[i][j] * parts[i][j] / 2;
        }
    }
    near(std::sqrt(first), 31.669, 0.0005);    // computed
    near(std::abs(parts[2][3]), 11.8, 0.1);    // computed, from the rounded 0.41 °C
    near(std::abs(parts[4][5]), 1.7, 0.05);    // computed
    near(parts[2][3], parts[3][2], 1e-6);      // both ways round
    near(std::sqrt(first + second), 34, 0.5);  // published
}

TEST_CASE("GUM H.2, resistance and reactance: correlated means from the readings themselves") {
    const std::array<double, 5> volt{5.007, 4.994, 5.005, 4.990, 4.999};
    const std::array<double, 5> ampere{19.663e-3, 19.639e-3, 19.640e-3, 19.685e-3, 19.678e-3};
    const std::array<double, 5> phase{1.0456, 1.0438, 1.0468, 1.0428, 1.0433};
    const Sample v = sample_of(volt);
    const Sample i = sample_of(ampere);
    const Sample f = sample_of(phase);
    near(v.mean, 4.9990, 5e-5);        // published
    near(i.mean, 19.6610e-3, 5e-8);    // published
    near(f.mean, 1.04446, 5e-6);       // published
    near(v.of_mean, 0.0032, 5e-5);     // published
    near(i.of_mean, 0.0095e-3, 5e-8);  // published
    near(f.of_mean, 0.00075, 5e-6);    // published
    near(v.of_mean, 0.003209, 5e-7);   // computed
    near(i.of_mean, 9.471e-6, 5e-10);  // computed
    near(f.of_mean, 7.521e-4, 5e-8);   // computed

    const double vi = covariance_of_means(volt, ampere);
    const double vf = covariance_of_means(volt, phase);
    const double fi = covariance_of_means(ampere, phase);
    near(vi / (v.of_mean * i.of_mean), -0.355, 0.0005);  // computed; published -0.36
    near(vf / (v.of_mean * f.of_mean), 0.858, 0.0005);   // computed; published 0.86
    near(fi / (i.of_mean * f.of_mean), -0.645, 0.0005);  // computed; published -0.65
    const std::array<double, 9> together{v.of_mean * v.of_mean, vi, vf, vi, i.of_mean * i.of_mean, fi, vf, fi,
                                         f.of_mean * f.of_mean};
    const std::array<double, 9> printed{
        0.0032 * 0.0032,       -0.36 * 0.0032 * 0.0095e-3,  0.86 * 0.0032 * 0.00075, -0.36 * 0.0032 * 0.0095e-3,
        0.0095e-3 * 0.0095e-3, -0.65 * 0.0095e-3 * 0.00075, 0.86 * 0.0032 * 0.00075, -0.65 * 0.0095e-3 * 0.00075,
        0.00075 * 0.00075};
    const std::array<double, 9> apart{printed[0], 0, 0, 0, printed[4], 0, 0, 0, printed[8]};

    // R = V/I cos phi, X = V/I sin phi, Z = V/I, and their slopes by V, I, phi.
    const double z = v.mean / i.mean;
    const double r = z * std::cos(f.mean);
    const double x = z * std::sin(f.mean);
    const std::array<double, 3> by_r{r / v.mean, -r / i.mean, -x};
    const std::array<double, 3> by_x{x / v.mean, -x / i.mean, r};
    const std::array<double, 3> by_z{z / v.mean, -z / i.mean, 0};
    near(r, 127.732, 0.0005);    // published
    near(x, 219.847, 0.0005);    // published
    near(z, 254.260, 0.0005);    // published
    near(r, 127.7322, 0.00005);  // computed
    near(x, 219.8465, 0.00005);  // computed
    near(z, 254.2597, 0.00005);  // computed
    const double u_r = combined_uncertainty(by_r, together);
    const double u_x = combined_uncertainty(by_x, together);
    const double u_z = combined_uncertainty(by_z, together);
    near(u_r, 0.071, 0.0005);  // published
    near(u_x, 0.295, 0.001);   // published; 0.2956 with all digits
    near(u_z, 0.236, 0.0005);  // published
    near(u_r, 0.07107, 5e-6);  // computed
    near(u_x, 0.29558, 5e-6);  // computed
    near(u_z, 0.23634, 5e-6);  // computed

    const auto correlation = [&](const std::array<double, 3>& a, double u_a, const std::array<double, 3>& b,
                                 double u_b) {
        const double u_sum =
            combined_uncertainty(std::array<double, 3>{a[0] + b[0], a[1] + b[1], a[2] + b[2]}, together);
        return (u_sum * u_sum - u_a * u_a - u_b * u_b) / (2 * u_a * u_b);
    };
    near(correlation(by_r, u_r, by_x, u_x), -0.588, 0.0005);  // published, from memory; computed -0.5884
    near(correlation(by_r, u_r, by_z, u_z), -0.485, 0.0005);  // published, from memory; computed -0.4853
    near(correlation(by_x, u_x, by_z, u_z), 0.993, 0.001);    // published, from memory; computed 0.9925

    // The printed, rounded inputs give 0.070 for R and not the printed 0.071 (computed; python3-uncertainties the same).
    near(combined_uncertainty(by_r, printed), 0.06998, 5e-6);
    near(combined_uncertainty(by_x, printed), 0.29572, 2e-5);
    near(combined_uncertainty(by_z, printed), 0.23660, 2e-5);
    // The correlations left out as well: far off (computed).
    near(combined_uncertainty(by_r, apart), 0.194, 0.0005);
    near(combined_uncertainty(by_x, apart), 0.201, 0.0005);
    near(combined_uncertainty(by_z, apart), 0.204, 0.0005);

    // Approach 2 of H.2.4: each set of readings to its own result first (computed).
    std::array<double, 5> resistance{};
    std::array<double, 5> reactance{};
    std::array<double, 5> impedance{};
    for (std::size_t n = 0; n < 5; ++n) {
        impedance[n] = volt[n] / ampere[n];
        resistance[n] = impedance[n] * std::cos(phase[n]);
        reactance[n] = impedance[n] * std::sin(phase[n]);
    }
    near(sample_of(resistance).mean, 127.7316, 5e-5);
    near(sample_of(resistance).of_mean, 0.07127, 5e-6);
    near(sample_of(reactance).mean, 219.8469, 5e-5);
    near(sample_of(reactance).of_mean, 0.29549, 5e-6);
    near(sample_of(impedance).mean, 254.2600, 5e-5);
    near(sample_of(impedance).of_mean, 0.23625, 5e-6);
}

TEST_CASE("GUM H.3, calibration line of a thermometer") {
    const std::array<double, 11> t{21.521, 22.012, 22.512, 23.003, 23.507, 23.999,
                                   24.513, 25.002, 25.503, 26.010, 26.511};
    const std::array<double, 11> b{-0.171, -0.169, -0.166, -0.159, -0.164, -0.165,
                                   -0.156, -0.157, -0.159, -0.161, -0.160};
    const Line line = fitted_line(t, b, 20);
    near(line.intercept, -0.1712, 5e-5);     // published
    near(line.u_intercept, 0.0029, 5e-5);    // published
    near(line.slope, 0.00218, 5e-6);         // published
    near(line.u_slope, 0.00067, 5e-6);       // published
    near(line.correlation, -0.930, 0.0005);  // published
    near(line.residual, 0.0035, 5e-5);       // published
    near(line.at(10), -0.1494, 5e-5);        // published, at 30 °C
    near(line.u_at(10), 0.0041, 5e-5);       // published
    CHECK(line.degrees == 9);                // published
    near(line.intercept, -0.171204, 5e-7);   // computed, as the rest
    near(line.u_intercept, 0.0028776, 5e-8);
    near(line.slope, 0.00218270, 5e-9);
    near(line.u_slope, 0.00066794, 5e-9);
    near(line.correlation, -0.93043, 5e-6);
    near(line.residual, 0.0034976, 5e-8);
    near(line.at(10), -0.149377, 5e-7);
    near(line.u_at(10), 0.0041386, 5e-8);
    near(coverage_factor(line.degrees), 2.262, 0.0005);
}

TEST_CASE("Student's t") {
    // SciPy 1.10.1, two-sided, rounded.
    struct Row {
        double degrees, p90, p95, p9545, p99;
    };
    const Row rows[] = {{1, 6.314, 12.706, 13.968, 63.657}, {2, 2.920, 4.303, 4.527, 9.925},
                        {3, 2.353, 3.182, 3.307, 5.841},    {4, 2.132, 2.776, 2.869, 4.604},
                        {5, 2.015, 2.571, 2.649, 4.032},    {6, 1.943, 2.447, 2.517, 3.707},
                        {7, 1.895, 2.365, 2.429, 3.499},    {8, 1.860, 2.306, 2.366, 3.355},
                        {9, 1.833, 2.262, 2.320, 3.250},    {10, 1.812, 2.228, 2.284, 3.169},
                        {12, 1.782, 2.179, 2.231, 3.055},   {15, 1.753, 2.131, 2.181, 2.947},
                        {20, 1.725, 2.086, 2.133, 2.845},   {25, 1.708, 2.060, 2.105, 2.787},
                        {30, 1.697, 2.042, 2.087, 2.750},   {50, 1.676, 2.009, 2.051, 2.678},
                        {100, 1.660, 1.984, 2.025, 2.626},  {without_limit, 1.645, 1.960, 2.000, 2.576}};
    for (const Row& row : rows) {
        INFO(row.degrees);
        near(student_quantile(0.90, row.degrees), row.p90, 0.00051);
        near(student_quantile(0.95, row.degrees), row.p95, 0.00051);
        near(student_quantile(0.9545, row.degrees), row.p9545, 0.0011);
        near(student_quantile(0.99, row.degrees), row.p99, 0.00051);
        near(coverage_factor(row.degrees), row.p95, 0.00051);
    }
    // GUM Table G.2, from a second-hand copy.
    near(student_quantile(0.95, 1), 12.71, 0.005);
    near(student_quantile(0.9973, 5), 5.51, 0.005);
    near(student_quantile(0.90, 20), 1.72, 0.0051);
    near(student_quantile(0.95, 20), 2.09, 0.005);
    near(student_quantile(0.99, 11), 3.11, 0.005);
    near(student_quantile(0.6827, 1), 1.84, 0.005);
    // In closed form: one degree of freedom tan(pi p/2), two p sqrt(2/(1 - p²)).
    near(student_quantile(0.95, 1), std::tan(0.95 * 1.5707963267948966), 1e-10);
    near(student_quantile(0.5, 1), 1, 1e-13);
    near(student_quantile(0.95, 2), 0.95 * std::sqrt(2 / (1 - 0.95 * 0.95)), 1e-12);
    near(student_quantile(0.01, 2), 0.01 * std::sqrt(2 / (1 - 0.01 * 0.01)), 1e-14);
}

TEST_CASE("the normal quantile") {
    // SciPy 1.10.1, scipy.special.ndtri.
    near(normal_quantile(0.5), 0, 0);
    near(normal_quantile(0.975), 1.959963984540054, 1e-14);
    near(normal_quantile(0.025), -1.959963984540054, 1e-14);
    near(normal_quantile(0.995), 2.5758293035489004, 1e-13);
    near(normal_quantile(1e-10), -6.361340902404056, 1e-13);
    near(normal_quantile(1e-300), -37.0470962993612, 1e-12);
}

TEST_CASE("effective degrees of freedom") {
    // GUM G.4.1, example, from memory: 0.25 %, 0.57 %, 0.82 % of 10, 5 and 15 readings give 19.0.
    const std::array<Part, 3> parts{Part{0.25, 9}, Part{0.57, 4}, Part{0.82, 14}};
    near(effective_degrees(parts), 19.0, 0.05);
    // One part of 5 readings beside an equal one that is sure: (2u²)²/(u⁴/4) = 16; in any unit.
    for (const double unit : {1.0, 1e-160, 1e160}) {
        near(effective_degrees(std::array<Part, 2>{Part{unit, 4}, Part{unit, without_limit}}), 16, 1e-12);
    }
    CHECK(std::isinf(effective_degrees(std::array<Part, 1>{Part{1, without_limit}})));
    CHECK(std::isinf(effective_degrees({})));
    // Truncated, not rounded (GUM G.4.1, note 1), never below 1; 1.96 where all is sure.
    CHECK(coverage_factor(16.99) == coverage_factor(16));
    CHECK(coverage_factor(0.5) == coverage_factor(1));
    CHECK(coverage_factor(without_limit) == 1.96);
}

TEST_CASE("GUM 7.2.6: an uncertainty and the value beside it") {
    // As quoted in open metrology software.
    CHECK(rounded_uncertainty(10.47) == 11);
    CHECK(rounded_uncertainty(28.05) == 28);
    CHECK(decimals_of_uncertainty(0.027) == 3);
    CHECK(format_fixed(10.05762, decimals_of_uncertainty(0.027), DecimalSign::point) == "10.058");
    // Worked by hand.
    CHECK(decimals_of_uncertainty(0.0996) == 2);  // 0.10
    CHECK(rounded_uncertainty(0.0996) == 0.10);
    CHECK(decimals_of_uncertainty(0.1204) == 2);
    CHECK(decimals_of_uncertainty(1234) == -2);
    CHECK(decimals_of_uncertainty(9.6, 1) == -1);  // 10
    CHECK(decimals_of_uncertainty(0.34, 1) == 1);
    CHECK(decimals_of_uncertainty(0) == 0);
    CHECK(decimals_of_uncertainty(without_limit) == 0);
}
