// A class's runs together, and what their pattern says. Classes are made here from a known molar volume and known faults
// (mistakes as teachers list them); each fault has to be said, and the same class without it must be left in peace.
#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <string>
#include <vector>

#include "core/pool/class_set.hpp"
#include "core/pool/pattern.hpp"
#include "tests/core/check_support.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

constexpr double accepted = 22.711e-3;  // m³/mol at 0 °C and 100 kPa, CODATA 2018
constexpr double reduction = 0.89;      // record A, method.md section 8

// Amounts in mmol, and scatter in parts of the volume: invented, mean about zero, without a trend.
constexpr std::array<double, 10> millimoles{0.82, 0.95, 1.08, 1.21, 1.34, 1.47, 1.60, 1.73, 1.86, 1.99};
constexpr std::array<double, 10> scatter{0.004, -0.005, 0.003, -0.004, 0.005, -0.003, 0.004, -0.005, 0.003, -0.002};

std::vector<ClassPoint> honest_class() {
    std::vector<ClassPoint> points;
    for (std::size_t i = 0; i < millimoles.size(); ++i) {
        ClassPoint point;
        point.group = i;
        point.amount = 1e-3 * millimoles[i];
        point.volume = point.amount * accepted * (1 + scatter[i]);
        point.accepted = accepted;
        points.push_back(point);
    }
    return points;
}

ClassSet settled(std::vector<ClassPoint> points) {
    for (ClassPoint& point : points) {
        point.in_tube = point.volume / reduction;
        point.ratio = point.volume / point.amount;
    }
    return pooled(std::move(points));
}

const Pattern* said(const std::vector<Pattern>& patterns, std::string_view key) {
    for (const Pattern& one : patterns) {
        if (one.message.key == key) return &one;
    }
    return nullptr;
}

double argument(const Pattern& pattern, std::string_view name) {
    for (const Argument& one : pattern.message.arguments) {
        if (one.name == name) return one.base;
    }
    return std::nan("");
}

}  // namespace

TEST_CASE("class: groups are pooled run by run; a group left out by hand stays in the table") {
    std::vector<ClassGroup> groups;
    // Record A's molar volume is 22.6826 L/mol (method.md); the second run has twice the mass and, with the same tube and
    // room, twice the gas: 86.40 mL, in a tube of 100 mL.
    groups.push_back({"1", {record_a().assessed()}, {0.001}, false, {}});
    groups.push_back({"2",
                      {record_a().with({{Field::mass_of_metal, "0.0824"}, {Field::tube_capacity, "100"}, {Field::scale_reading, "15.95"}}).assessed(),
                       record_a().without(Field::temperature).assessed()},
                      {0.0005, 0.0005},
                      false,
                      {}});
    groups.push_back({"3", {record_a().with({{Field::mass_of_metal, "0.0200"}}).assessed()}, {}, true, "spilled"});
    const ClassSet set = pooled(groups);
    REQUIRE(set.points.size() == 2);  // without a temperature a run is no point
    REQUIRE(set.left_out.size() == 1);
    CHECK(set.left_out[0].group == 2);
    CHECK(set.points[0].ratio == doctest::Approx(22.6826e-3).epsilon(2e-6));
    CHECK(set.points[1].ratio == doctest::Approx(22.6826e-3).epsilon(2e-6));
    CHECK(set.reduction == doctest::Approx(0.89).epsilon(0.002));
    CHECK(set.origin.slope == doctest::Approx(22.6826e-3).epsilon(2e-6));
    CHECK(set.ratio_of_totals.value == doctest::Approx(22.6826e-3).epsilon(2e-6));
    CHECK(set.mean_of_ratios.value == doctest::Approx(22.6826e-3).epsilon(2e-6));
    CHECK(patterns_of(set).empty());  // two points say nothing
    CHECK(pooled(std::vector<ClassGroup>{}).points.empty());
}

TEST_CASE("class: doubtful masses are said where u(m)/m is over a third of the scatter (method.md, section 8)") {
    std::vector<ClassGroup> groups;
    for (const char* mass : {"0.0408", "0.0412", "0.0416", "0.0410"}) {
        groups.push_back({"", {record_a().with({{Field::mass_of_metal, mass}}).assessed()}, {0.0005}, false, {}});
    }
    const double scatter_of_class = pooled(groups).ratios.deviation / pooled(groups).ratios.mean;  // about 0.8 %
    CHECK_FALSE(pooled(groups).masses_doubtful);
    for (ClassGroup& group : groups) group.relative_mass_u = {scatter_of_class / 2.9};
    CHECK(pooled(groups).masses_doubtful);
    for (ClassGroup& group : groups) group.relative_mass_u = {scatter_of_class / 3.1};
    CHECK_FALSE(pooled(groups).masses_doubtful);
}

TEST_CASE("pattern: an honest class is left in peace") {
    CHECK(patterns_of(settled(honest_class())).empty());
    CHECK(patterns_of(settled({})).empty());
}

TEST_CASE("pattern: the same volume missing or too much, by the intercept, in the tube") {
    for (const double millilitres : {-1.5, 1.2}) {
        auto points = honest_class();
        for (ClassPoint& point : points) point.volume += 1e-6 * millilitres * reduction;
        const ClassSet set = settled(points);
        const auto patterns = patterns_of(set);
        const Pattern* offset = said(patterns, millilitres < 0 ? "pattern.short_by" : "pattern.too_much_by");
        REQUIRE(offset != nullptr);
        const double found = argument(*offset, "volume");
        const double half_width = argument(*offset, "half_width");
        CHECK(std::fabs(found - 1e-6 * std::fabs(millilitres)) < half_width);
        CHECK(half_width < 1e-6);
        CHECK(offset->suspects == (millilitres < 0 ? "suspects.short_by" : "suspects.too_much_by"));
        CHECK(said(patterns, "pattern.all_high") == nullptr);
        CHECK(said(patterns, "pattern.all_low") == nullptr);
    }
}

TEST_CASE("pattern: one percentage in every run, with what usually lies there") {
    const std::pair<double, const char*> cases[] = {{3.0, "suspects.vapour_left_in"}, {6.0, "suspects.vapour_added"},
                                                    {11.0, "suspects.not_reduced"},   {1.33, "suspects.states_mixed"},
                                                    {-1.32, "suspects.states_mixed"}, {-4.0, "suspects.all_low"},
                                                    {2.0, "suspects.all_high"}};
    for (const auto& one : cases) {
        const double percent = one.first;
        const char* suspects = one.second;
        CAPTURE(percent);
        auto points = honest_class();
        for (ClassPoint& point : points) point.volume *= 1 + percent / 100;
        const auto patterns = patterns_of(settled(points));
        const Pattern* all = said(patterns, percent > 0 ? "pattern.all_high" : "pattern.all_low");
        REQUIRE(all != nullptr);
        CHECK(all->suspects == suspects);
        CHECK(argument(*all, "percent") == doctest::Approx(std::fabs(percent) / 100).epsilon(0.05));
    }
}

TEST_CASE("pattern: factors, and numbers too good to be true") {
    const std::pair<double, const char*> cases[] = {{2, "suspects.two"},      {0.5, "suspects.two"},
                                                    {25.4, "suspects.inches"}, {1 / 7.50062, "suspects.torr_kpa"},
                                                    {1000, "suspects.ten"},   {1.0 / 760, "suspects.torr_atm"}};
    for (const auto& [factor, suspects] : cases) {
        auto points = honest_class();
        for (ClassPoint& point : points) point.volume *= factor;
        const auto patterns = patterns_of(settled(points));
        REQUIRE(patterns.size() == 1);
        CHECK(patterns[0].message.key == "pattern.factor");
        CHECK(patterns[0].suspects == suspects);
    }
    auto points = honest_class();
    for (ClassPoint& point : points) point.volume = point.amount * accepted * (1 + 1e-4 * static_cast<double>(point.group % 3));
    CHECK(said(patterns_of(settled(points)), "pattern.too_good") != nullptr);
    points[4].volume *= 1.003;  // one honest error is enough
    CHECK(said(patterns_of(settled(points)), "pattern.too_good") == nullptr);
}

TEST_CASE("pattern: rows exchanged, a reading not subtracted, one run far off, small samples that scatter") {
    auto swapped = honest_class();
    std::swap(swapped[2].volume, swapped[7].volume);
    const auto found_swap = patterns_of(settled(swapped));
    const Pattern* swap = said(found_swap, "pattern.swapped");
    REQUIRE(swap != nullptr);
    CHECK(swap->points == std::vector<std::size_t>{2, 7});

    auto falls = honest_class();  // 50 mL tube: the reading is what the gas leaves over
    for (ClassPoint& point : falls) point.volume = reduction * 60e-6 - point.volume;
    CHECK(said(patterns_of(settled(falls)), "pattern.falls") != nullptr);

    for (const double factor : {0.85, 1.15}) {
        auto one = honest_class();
        one[5].volume *= factor;
        const auto patterns = patterns_of(settled(one));
        const Pattern* far = said(patterns, factor < 1 ? "pattern.one_low" : "pattern.one_high");
        REQUIRE(far != nullptr);
        CHECK(far->points == std::vector<std::size_t>{5});
    }

    auto small = honest_class();
    for (std::size_t i = 0; i < 5; ++i) small[i].volume += (i % 2 == 0 ? 1 : -1) * 0.03 * small[i].volume;
    CHECK(said(patterns_of(settled(small)), "pattern.small_scatter") != nullptr);
}
