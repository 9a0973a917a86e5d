// mg-de-class-8-groups: a class's table, published on a teacher's page; pooled independently for this project (each number
// to the digits printed in cases.md).
#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <vector>

#include "core/pool/line.hpp"
#include "core/pool/summary.hpp"

using namespace overwater;

TEST_CASE("case mg-de-class-8-groups: four reasonable ways to pool a class, 22.96 to 23.34 L/mol") {
    constexpr std::array<double, 8> grams{0.022, 0.029, 0.045, 0.054, 0.068, 0.073, 0.085, 0.092};
    constexpr std::array<double, 8> millilitres{19.5, 31.0, 44.0, 49.0, 66.5, 69.5, 83.0, 86.0};
    constexpr double grams_per_mole = 24.305;
    std::vector<double> millimoles;
    std::vector<double> ratios; // mL/mmol, which is L/mol
    for (std::size_t i = 0; i < grams.size(); ++i) {
        millimoles.push_back(1000 * grams[i] / grams_per_mole);
        ratios.push_back(millilitres[i] / millimoles.back());
    }
    constexpr std::array<double, 8> published{21.54, 25.98, 23.76, 22.05, 23.77, 23.14, 23.73, 22.72};
    for (std::size_t i = 0; i < published.size(); ++i) CHECK(ratios[i] == doctest::Approx(published[i]).epsilon(0.005 / 22));

    const auto to_two_decimals = [](double expected) { return doctest::Approx(expected).epsilon(0.0051 / expected); };
    const Summary summary = summary_of(ratios);
    CHECK(summary.mean == to_two_decimals(23.34));
    CHECK(summary.deviation == to_two_decimals(1.35));
    CHECK(summary.median == to_two_decimals(23.44));
    CHECK(mean_of_ratios(millimoles, millilitres).value == to_two_decimals(23.34));
    CHECK(ratio_of_totals(millimoles, millilitres).value == to_two_decimals(23.29));
    CHECK(line_through_origin(millimoles, millilitres).slope == to_two_decimals(23.25));
    const auto line = free_line(millimoles, millilitres);
    REQUIRE(line);
    CHECK(line->slope == to_two_decimals(22.96));
    CHECK(line->intercept == doctest::Approx(0.801).epsilon(0.0006));
}
