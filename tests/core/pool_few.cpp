// Classes of one or two runs, of equal amounts, and without gas: where a line or a scatter is not to be had.
#include <doctest/doctest.h>

#include <vector>

#include "core/pool/class_set.hpp"
#include "core/pool/line.hpp"
#include "tests/core/check_support.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

using Numbers = std::vector<double>;

std::vector<ClassGroup> class_of(const std::vector<const char*>& masses, const Numbers& relative_mass_u) {
    std::vector<ClassGroup> groups;
    for (std::size_t i = 0; i < masses.size(); ++i) {
        groups.push_back(
            {"", {record_a().with({{Field::mass_of_metal, masses[i]}}).assessed()}, {relative_mass_u[i]}, false, {}});
    }
    return groups;
}

}  // namespace

TEST_CASE("the band of a line is as wide as the tables of Student's t say, and unknown without a run to spare") {
    // Two-sided 95 %: 12.706 for one degree of freedom, 4.303 for two (tables).
    const Numbers x{1, 2, 3, 4};
    const Numbers y{2, 3.9, 6.1, 8};
    const auto first = [](const Numbers& all, std::size_t n) {
        return Numbers(all.begin(), all.begin() + static_cast<long>(n));
    };
    const auto free_band = [&](std::size_t n) { return band_factor(free_line(first(x, n), first(y, n)).value()); };
    CHECK(free_band(2) == 0);
    CHECK(free_band(3) == doctest::Approx(12.706).epsilon(1e-4));
    CHECK(free_band(4) == doctest::Approx(4.303).epsilon(1e-4));
    const auto origin_band = [&](std::size_t n) { return band_factor(line_through_origin(first(x, n), first(y, n))); };
    CHECK(origin_band(1) == 0);
    CHECK(origin_band(2) == doctest::Approx(12.706).epsilon(1e-4));
    CHECK(origin_band(3) == doctest::Approx(4.303).epsilon(1e-4));
}

TEST_CASE("one run gives a slope without a doubt, none gives no slope") {
    const OriginLine one = line_through_origin(Numbers{2}, Numbers{5});
    CHECK(one.count == 1);
    CHECK(one.slope == 2.5);
    CHECK(one.slope_u == 0);
    CHECK(one.residual == 0);
    const OriginLine none = line_through_origin(Numbers{0, 0}, Numbers{1, 2});
    CHECK(none.count == 0);
    CHECK(none.slope == 0);
    CHECK(line_through_origin(Numbers{}, Numbers{}).count == 0);
    // By hand: two runs of 1 and 2 mol with 1 and 3 m³: slope 7/5, residuals -0.4 and 0.2, s² = 0.2, u² = 0.2/5.
    const OriginLine two = line_through_origin(Numbers{1, 2}, Numbers{1, 3});
    CHECK(two.slope == doctest::Approx(1.4));
    CHECK(two.residual * two.residual == doctest::Approx(0.2));
    CHECK(two.slope_u * two.slope_u == doctest::Approx(0.04));
    CHECK(two.r_squared == doctest::Approx(0.98));
    // Nothing to explain is explained.
    CHECK(line_through_origin(Numbers{1, 2}, Numbers{0, 0}).r_squared == 1);
}

TEST_CASE("a free line needs two amounts that differ by more than rounding") {
    CHECK_FALSE(free_line(Numbers{1}, Numbers{2}));
    CHECK_FALSE(free_line(Numbers{2, 2, 2}, Numbers{1, 2, 3}));
    CHECK_FALSE(free_line(Numbers{0, 0}, Numbers{1, 2}));
    CHECK_FALSE(free_line(Numbers{0.1 + 0.2, 0.3}, Numbers{1, 2}));
    const auto two = free_line(Numbers{1, 3}, Numbers{5, 9});
    REQUIRE(two);
    CHECK(two->slope == doctest::Approx(2));
    CHECK(two->intercept == doctest::Approx(3));
    // All the same volume: a level line has nothing left to explain.
    const Numbers x{1, 2, 3};
    const Numbers level{4, 4, 4};
    CHECK(r_squared(free_line(x, level).value(), x, level) == 1);
}

TEST_CASE("the three ways to pool a ratio, by hand") {
    const Numbers x{1, 2, 5};
    const Numbers y{1, 3, 5};
    // Mean of 1, 1.5 and 1: 7/6; s² = 1/12, u² = 1/36.
    const PooledRatio mean = mean_of_ratios(x, y);
    CHECK(mean.value == doctest::Approx(7.0 / 6));
    CHECK(mean.u == doctest::Approx(1.0 / 6));
    // 9/8; residuals -1/8, 3/4, -5/8: squares over x 1/64 + 9/32 + 5/64 = 3/8, over 2 degrees and 8 in all.
    const PooledRatio totals = ratio_of_totals(x, y);
    CHECK(totals.value == doctest::Approx(9.0 / 8));
    CHECK(totals.u * totals.u == doctest::Approx(3.0 / 8 / 2 / 8));
    CHECK(ratio_of_totals(Numbers{2}, Numbers{3}).value == 1.5);
    CHECK(ratio_of_totals(Numbers{2}, Numbers{3}).u == 0);
    CHECK(ratio_of_totals(Numbers{0}, Numbers{3}).value == 0);
    const PooledRatio pair = ratio_of_totals(Numbers{1, 3}, Numbers{1, 7});
    // 2; residuals -1 and 1: (1 + 1/3)/1/4.
    CHECK(pair.u * pair.u == doctest::Approx(1.0 / 3));
}

TEST_CASE("a summary of an odd and an even number of values") {
    const Summary odd = summary_of(Numbers{3, 1, 8});
    CHECK(odd.median == 3);
    CHECK(odd.low == 1);
    CHECK(odd.high == 8);
    CHECK(odd.mean == doctest::Approx(4));
    // s² = (1 + 9 + 16)/2 = 13; s/sqrt 3 = 2.0817, times 4.303 for two degrees of freedom.
    CHECK(odd.deviation * odd.deviation == doctest::Approx(13));
    CHECK(odd.standard_error * odd.standard_error == doctest::Approx(13.0 / 3));
    CHECK(odd.half_width == doctest::Approx(4.30265 * 2.081666).epsilon(1e-5));
    CHECK(summary_of(Numbers{4, 1, 2, 9}).median == 3);
    CHECK(summary_of(Numbers{4, 1}).median == 2.5);
    // Two values: 12.706 with one degree of freedom; s = 3/sqrt 2, s/sqrt 2 = 1.5.
    CHECK(summary_of(Numbers{4, 1}).half_width == doctest::Approx(12.7062 * 1.5).epsilon(1e-5));
    const Summary one = summary_of(Numbers{7});
    CHECK(one.count == 1);
    CHECK(one.mean == 7);
    CHECK(one.median == 7);
    CHECK(one.low == 7);
    CHECK(one.high == 7);
    CHECK(one.deviation == 0);
    CHECK(one.half_width == 0);
}

TEST_CASE("class: masses are doubtful where those of more than half of the runs are") {
    const std::vector<const char*> masses{"0.0408", "0.0412", "0.0416", "0.0410"};
    const auto doubtful = [&](const Numbers& u) { return pooled(class_of(masses, u)).masses_doubtful; };
    CHECK_FALSE(doubtful({0.1, 0.1, 0.00001, 0.00001}));
    CHECK(doubtful({0.1, 0.1, 0.1, 0.00001}));
    // One run has no scatter to compare with; nor have runs that agree.
    CHECK_FALSE(pooled(class_of({"0.0412"}, {0.1})).masses_doubtful);
}

TEST_CASE("class: two runs have a line and no doubt of its intercept") {
    const ClassSet two = pooled(class_of({"0.0408", "0.0416"}, {0.001, 0.001}));
    REQUIRE(two.free.has_value());
    CHECK(two.intercept_half_width == 0);
    CHECK(two.points.size() == 2);
    CHECK(two.points[0].accepted == doctest::Approx(22.711e-3).epsilon(1e-4));
}
