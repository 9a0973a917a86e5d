#include <doctest/doctest.h>

#include <array>
#include <vector>

#include "core/pool/outlier.hpp"

using namespace overwater;

TEST_CASE("Grubbs: critical values") {
    // Formula of ASTM E178 / ISO 5725-2 evaluated with scipy 1.10.1 (t.ppf): n, two-sided 5 %, two-sided 1 %.
    constexpr double rows[][3]{{3, 1.1543, 1.1547},  {4, 1.4812, 1.4962},  {5, 1.7150, 1.7637},  {6, 1.8871, 1.9728},
                               {7, 2.0200, 2.1391},  {8, 2.1266, 2.2744},  {9, 2.2150, 2.3868},  {10, 2.2900, 2.4821},
                               {12, 2.4116, 2.6357}, {15, 2.5483, 2.8061}, {20, 2.7082, 3.0008}, {25, 2.8217, 3.1353},
                               {30, 2.9085, 3.2361}};
    for (const auto& row : rows) {
        CAPTURE(row[0]);
        const auto n = static_cast<std::size_t>(row[0]);
        CHECK(grubbs_critical(n, 0.05) == doctest::Approx(row[1]).epsilon(0.00005 / row[1]));
        CHECK(grubbs_critical(n, 0.01) == doctest::Approx(row[2]).epsilon(0.00005 / row[2]));
    }
    // One-sided 5 % is two-sided 10 %: 1.6714 for 5 values.
    CHECK(grubbs_critical(5, 0.10) == doctest::Approx(1.6714).epsilon(0.00005 / 1.6714));
}

TEST_CASE("Dixon: the values that are tabled for 95 %, two-sided") {
    // Rorabacher, Anal. Chem. 63 (1991) 139, r10.
    constexpr double rows[][2]{{3, .970},  {4, .829},  {5, .710},  {6, .625},  {7, .568},  {8, .526},  {9, .493},
                               {10, .466}, {11, .444}, {12, .426}, {13, .410}, {14, .396}, {15, .384}, {16, .374},
                               {17, .365}, {18, .356}, {19, .349}, {20, .342}, {21, .337}, {22, .331}, {23, .326},
                               {24, .321}, {25, .317}, {26, .312}, {27, .308}, {28, .305}, {29, .301}, {30, .298}};
    for (const auto& row : rows) {
        std::vector<double> values;
        for (int i = 0; i < static_cast<int>(row[0]); ++i) values.push_back(i);
        const OutlierTest test = dixon(values);
        REQUIRE(test.possible);
        CHECK(test.critical == row[1]);
    }
}

TEST_CASE("the farthest value is found on either side, and is told whether it is far off") {
    // An invented class; the gap and the range by hand.
    const std::array<double, 5> high{0.189, 0.167, 0.187, 0.183, 0.320};
    CHECK(dixon(high).index == 4);
    CHECK(dixon(high).statistic == doctest::Approx((0.320 - 0.189) / (0.320 - 0.167)).epsilon(1e-12));
    CHECK(dixon(high).far_off());
    CHECK(grubbs(high).index == 4);
    CHECK(grubbs(high).far_off());
    const std::array<double, 5> low{21.9, 22.4, 22.5, 22.6, 17.0};
    CHECK(grubbs(low).index == 4);
    CHECK(dixon(low).index == 4);
    const std::array<double, 4> calm{22.4, 22.6, 22.5, 22.8};
    CHECK_FALSE(grubbs(calm).far_off());
    CHECK_FALSE(dixon(calm).far_off());
}

TEST_CASE("too few values, or all alike, cannot be tested") {
    const std::array<double, 2> two{1, 2};
    const std::array<double, 4> alike{22.4, 22.4, 22.4, 22.4};
    CHECK_FALSE(grubbs(two).possible);
    CHECK_FALSE(dixon(two).possible);
    CHECK_FALSE(grubbs(alike).possible);
    CHECK_FALSE(dixon(alike).possible);
    CHECK_FALSE(dixon(std::vector<double>(31, 1.0)).possible);
}
