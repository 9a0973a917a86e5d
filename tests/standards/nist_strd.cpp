#include <doctest/doctest.h>

#include <array>
#include <vector>

#include "core/pool/line.hpp"
#include "core/pool/summary.hpp"

// NIST Statistical Reference Datasets (public domain, www.itl.nist.gov/div898/strd): certified values, 15 digits.

using namespace overwater;

namespace {

std::vector<double> alternating(double first, double low, double high) {
    std::vector<double> values{first};
    for (int i = 0; i < 500; ++i) {
        values.push_back(low);
        values.push_back(high);
    }
    return values;
}

struct Points {
    std::vector<double> x, y;
};

Points norris() {
    constexpr double pairs[][2]{
        {0.2, 0.1},     {337.4, 338.8}, {118.2, 118.1}, {884.6, 888.0}, {10.1, 9.2},    {226.5, 228.1},
        {666.3, 668.5}, {996.3, 998.5}, {448.6, 449.1}, {777.0, 778.9}, {558.2, 559.2}, {0.4, 0.3},
        {0.6, 0.1},     {775.5, 778.1}, {666.9, 668.8}, {338.0, 339.3}, {447.5, 448.9}, {11.6, 10.8},
        {556.0, 557.7}, {228.1, 228.3}, {995.8, 998.0}, {887.6, 888.8}, {120.2, 119.6}, {0.3, 0.3},
        {0.3, 0.6},     {556.8, 557.6}, {339.1, 339.3}, {887.2, 888.0}, {999.0, 998.5}, {779.0, 778.9},
        {11.1, 10.2},   {118.3, 117.6}, {229.2, 228.9}, {669.1, 668.4}, {448.9, 449.2}, {0.5, 0.2}};
    Points points;
    for (const auto& pair : pairs) {
        points.x.push_back(pair[0]);
        points.y.push_back(pair[1]);
    }
    return points;
}

doctest::Approx to(double value, double relative) { return doctest::Approx(value).epsilon(relative).scale(0); }

}  // namespace

TEST_CASE("NIST Michelso: speed of light, 100 values") {
    const std::array<double, 100> values{
        299.85, 299.74, 299.90, 300.07, 299.93, 299.85, 299.95, 299.98, 299.98, 299.88, 300.00, 299.98, 299.93,
        299.65, 299.76, 299.81, 300.00, 300.00, 299.96, 299.96, 299.96, 299.94, 299.96, 299.94, 299.88, 299.80,
        299.85, 299.88, 299.90, 299.84, 299.83, 299.79, 299.81, 299.88, 299.88, 299.83, 299.80, 299.79, 299.76,
        299.80, 299.88, 299.88, 299.88, 299.86, 299.72, 299.72, 299.62, 299.86, 299.97, 299.95, 299.88, 299.91,
        299.85, 299.87, 299.84, 299.84, 299.85, 299.84, 299.84, 299.84, 299.89, 299.81, 299.81, 299.82, 299.80,
        299.77, 299.76, 299.74, 299.75, 299.76, 299.91, 299.92, 299.89, 299.86, 299.88, 299.72, 299.84, 299.85,
        299.85, 299.78, 299.89, 299.84, 299.78, 299.81, 299.76, 299.81, 299.79, 299.81, 299.82, 299.85, 299.87,
        299.87, 299.81, 299.74, 299.81, 299.94, 299.95, 299.80, 299.81, 299.87};
    const Summary all = summary_of(values);
    CHECK(all.mean == to(299.852400000000, 1e-15));
    CHECK(all.deviation == to(0.0790105478190518, 1e-13));
}

TEST_CASE("NIST NumAcc1 to 4: large equal parts cost no digits") {
    const std::array<double, 3> first{10000001, 10000003, 10000002};
    CHECK(summary_of(first).mean == 10000002);
    CHECK(summary_of(first).deviation == 1);
    const Summary second = summary_of(alternating(1.2, 1.1, 1.3));
    CHECK(second.mean == to(1.2, 1e-15));
    CHECK(second.deviation == to(0.1, 1e-15));
    const Summary third = summary_of(alternating(1000000.2, 1000000.1, 1000000.3));
    CHECK(third.mean == to(1000000.2, 1e-15));
    CHECK(third.deviation == to(0.1, 1e-9));
    const Summary fourth = summary_of(alternating(10000000.2, 10000000.1, 10000000.3));
    CHECK(fourth.mean == to(10000000.2, 1e-15));
    CHECK(fourth.deviation == to(0.1, 1e-7));
}

TEST_CASE("NIST Norris: free line") {
    const Points points = norris();
    const auto line = free_line(points.x, points.y);
    REQUIRE(line);
    CHECK(line->intercept == to(-0.262323073774029, 1e-12));
    CHECK(line->slope == to(1.00211681802045, 1e-14));
    CHECK(line->u_intercept == to(0.232818234301152, 1e-12));
    CHECK(line->u_slope == to(0.429796848199937e-3, 1e-12));
    CHECK(line->residual == to(0.884796396144373, 1e-12));
    CHECK(r_squared(*line, points.x, points.y) == to(0.999993745883712, 1e-14));
}

TEST_CASE("NIST NoInt1 and NoInt2: line through the origin, its share about zero and not about the mean") {
    std::vector<double> x;
    std::vector<double> y;
    for (int i = 60; i <= 70; ++i) {
        x.push_back(i);
        y.push_back(i + 70);
    }
    const OriginLine first = line_through_origin(x, y);
    CHECK(first.slope == to(2.07438016528926, 1e-14));
    CHECK(first.slope_u == to(0.165289256198347e-1, 1e-13));
    CHECK(first.residual == to(3.56753034006338, 1e-13));
    CHECK(first.r_squared == to(0.999365492298663, 1e-14));
    const std::array<double, 3> x2{4, 5, 6};
    const std::array<double, 3> y2{3, 4, 4};
    const OriginLine second = line_through_origin(x2, y2);
    CHECK(second.slope == to(0.727272727272727, 1e-14));
    CHECK(second.slope_u == to(0.420827318078432e-1, 1e-13));
    CHECK(second.residual == to(0.369274472937998, 1e-13));
    CHECK(second.r_squared == to(0.993348115299335, 1e-14));
}
