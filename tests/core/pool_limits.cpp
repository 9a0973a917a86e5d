// Where the sentences about a class begin: each limit just inside and just outside, in classes made by hand. Limits of
// scatter, swaps and percentages are common practice, no source.
#include <doctest/doctest.h>

#include <cmath>
#include <string>
#include <vector>

#include "core/pool/class_set.hpp"
#include "core/pool/pattern.hpp"

using namespace overwater;

namespace {

constexpr double accepted = 22.711e-3;  // m³/mol at 0 °C and 100 kPa, CODATA 2018
constexpr double reduction = 0.89;      // record A, method.md, section 8

/// Runs of `amounts` mmol that found `ratios` times the accepted value.
std::vector<ClassPoint> runs(const std::vector<double>& amounts, const std::vector<double>& ratios) {
    std::vector<ClassPoint> points;
    for (std::size_t i = 0; i < amounts.size(); ++i) {
        ClassPoint point;
        point.amount = 1e-3 * amounts[i];
        point.ratio = accepted * ratios[i];
        point.volume = point.amount * point.ratio;
        point.in_tube = point.volume / reduction;
        point.accepted = accepted;
        points.push_back(point);
    }
    return points;
}

std::vector<ClassPoint> alike(double ratio) { return runs({1, 2, 3}, {ratio, ratio, ratio}); }

// Invented, mean zero and without a trend: what careful groups scatter by.
const std::vector<double> millimoles{0.82, 0.95, 1.08, 1.21, 1.34, 1.47, 1.60, 1.73, 1.86, 1.99};
const std::vector<double> scatter{0.004, -0.005, 0.003, -0.004, 0.005, -0.003, 0.004, -0.005, 0.003, -0.002};

std::vector<ClassPoint> all_off_by(double percent) {
    std::vector<double> ratios;
    for (const double part : scatter) ratios.push_back((1 + part) * (1 + percent / 100));
    return runs(millimoles, ratios);
}

const Pattern* said(const std::vector<Pattern>& patterns, std::string_view key) {
    for (const Pattern& one : patterns) {
        if (one.message.key == key) return &one;
    }
    return nullptr;
}
bool says(const std::vector<ClassPoint>& points, std::string_view key) {
    return said(patterns_of(pooled(points)), key) != nullptr;
}
std::string suspects(const std::vector<ClassPoint>& points, std::string_view key) {
    const auto patterns = patterns_of(pooled(points));
    const Pattern* found = said(patterns, key);
    return found ? std::string(found->suspects) : "nothing";
}

/// The free line by the textbook's sums over deviations, its intercept's 95 % half-width with the quantile of a table.
struct ByHand {
    double slope, intercept, half_width;
};
ByHand by_hand(const std::vector<ClassPoint>& points, double t) {
    const auto n = static_cast<double>(points.size());
    double mean_x = 0;
    double mean_y = 0;
    for (const ClassPoint& one : points) {
        mean_x += one.amount / n;
        mean_y += one.volume / n;
    }
    double xx = 0;
    double xy = 0;
    for (const ClassPoint& one : points) {
        xx += (one.amount - mean_x) * (one.amount - mean_x);
        xy += (one.amount - mean_x) * (one.volume - mean_y);
    }
    const double slope = xy / xx;
    const double intercept = mean_y - slope * mean_x;
    double left = 0;
    for (const ClassPoint& one : points) left += std::pow(one.volume - intercept - slope * one.amount, 2);
    return {slope, intercept, t * std::sqrt(left / (n - 2) * (1 / n + mean_x * mean_x / xx))};
}

constexpr double t_8 = 2.306004;  // Student, 95 % two-sided, 8 and 9 degrees of freedom: tables
constexpr double t_9 = 2.262157;

}  // namespace

TEST_CASE("pattern: a factor is met within 6 percent of it, whichever conversion it comes from") {
    const std::pair<double, const char*> factors[] = {{0.5, "suspects.two"},
                                                      {2, "suspects.two"},
                                                      {25.4, "suspects.inches"},  // mm an inch
                                                      {1 / 25.4, "suspects.inches"},
                                                      {760 / 101.325, "suspects.torr_kpa"},
                                                      {101.325 / 760, "suspects.torr_kpa"},
                                                      {760, "suspects.torr_atm"},
                                                      {1.0 / 760, "suspects.torr_atm"},
                                                      {10, "suspects.ten"},
                                                      {0.1, "suspects.ten"},
                                                      {100, "suspects.ten"},
                                                      {0.01, "suspects.ten"},
                                                      {1000, "suspects.ten"},
                                                      {0.001, "suspects.ten"}};
    for (const auto& one : factors) {
        CAPTURE(one.first);
        for (const double inside : {1.05999, 0.94001}) {
            CHECK(suspects(alike(one.first * inside), "pattern.factor") == one.second);
        }
        for (const double outside : {1.06001, 0.93999}) CHECK_FALSE(says(alike(one.first * outside), "pattern.factor"));
    }
}

TEST_CASE("pattern: without an accepted value nothing is compared with one") {
    auto points = all_off_by(6);
    for (ClassPoint& one : points) one.accepted = 0;
    CHECK(patterns_of(pooled(points)).empty());
    // Nor where no gas came at all.
    for (ClassPoint& one : points) one.volume = one.ratio = 0;
    CHECK(patterns_of(pooled(points)).empty());
}

TEST_CASE("pattern: all within a thousandth of the accepted value is too good to be true") {
    CHECK(says(runs({1, 2, 3}, {1.00099, 0.99901, 1}), "pattern.too_good"));
    CHECK_FALSE(says(runs({1, 2, 3}, {1.00101, 1, 1}), "pattern.too_good"));
    CHECK_FALSE(says(runs({1, 2, 3}, {0.99899, 1, 1}), "pattern.too_good"));
    CHECK_FALSE(says(runs({1, 2}, {1, 1}), "pattern.too_good"));  // two runs say nothing
}

TEST_CASE("pattern: the percentages at which each band of suspects begins and ends") {
    const auto found = [](double percent) {
        return suspects(all_off_by(percent), percent > 0 ? "pattern.all_high" : "pattern.all_low");
    };
    struct Band {
        double low, high;
        const char* suspects;
    };
    const Band bands[] = {{2.4, 3.6, "suspects.vapour_left_in"},
                          {5, 7, "suspects.vapour_added"},
                          {9, 13, "suspects.not_reduced"},
                          {1.0, 1.6, "suspects.states_mixed"},
                          {-1.6, -1.0, "suspects.states_mixed"}};
    for (const Band& band : bands) {
        CAPTURE(band.low);
        const char* otherwise = band.low > 0 ? "suspects.all_high" : "suspects.all_low";
        CHECK(found(band.low - 0.001) == otherwise);
        CHECK(found(band.low + 0.001) == band.suspects);
        CHECK(found(band.high - 0.001) == band.suspects);
        CHECK(found(band.high + 0.001) == otherwise);
    }
}

TEST_CASE("pattern: a percentage counts beyond the 95 percent interval of the mean") {
    double squares = 0;
    for (const double part : scatter) squares += part * part;
    const double interval = 100 * t_9 * std::sqrt(squares / 9) / std::sqrt(10.0);  // about 0.3 %
    // The scatter grows with the result, so that the interval is that share of it.
    for (const double sign : {1.0, -1.0}) {
        const char* key = sign > 0 ? "pattern.all_high" : "pattern.all_low";
        CHECK_FALSE(says(all_off_by(sign * 0.98 * interval), key));
        CHECK(says(all_off_by(sign * 1.02 * interval), key));
    }
}

TEST_CASE("pattern: a volume counts beyond the 95 percent interval of the intercept, as it stands in the tube") {
    const ByHand line = by_hand(all_off_by(0), t_8);
    const auto shifted_to = [&line](double half_widths) {
        auto points = all_off_by(0);
        for (ClassPoint& one : points) {
            one.volume += half_widths * line.half_width - line.intercept;
            one.in_tube = one.volume / reduction;
            one.ratio = one.volume / one.amount;
        }
        return points;
    };
    const ClassSet set = pooled(shifted_to(3));
    CHECK(set.intercept_half_width == doctest::Approx(line.half_width / reduction).epsilon(1e-6));
    CHECK(set.intercept_in_tube == doctest::Approx(3 * line.half_width / reduction).epsilon(1e-6));
    CHECK(says(shifted_to(1.001), "pattern.too_much_by"));
    CHECK_FALSE(says(shifted_to(0.999), "pattern.too_much_by"));
    CHECK(says(shifted_to(-1.001), "pattern.short_by"));
    CHECK_FALSE(says(shifted_to(-0.999), "pattern.short_by"));
}

TEST_CASE("pattern: a line without any scatter says nothing of its intercept, nor of falling") {
    // 1, 2, 3 mol and 2, 3, 4 m³ are whole numbers, so that the line is met exactly.
    std::vector<ClassPoint> points(3);
    for (std::size_t i = 0; i < points.size(); ++i) {
        points[i].amount = static_cast<double>(i + 1);
        points[i].volume = points[i].in_tube = static_cast<double>(i + 2);
        points[i].ratio = points[i].volume / points[i].amount;
    }
    const ClassSet exact = pooled(points);
    REQUIRE(exact.free.has_value());
    CHECK(exact.free->intercept == 1);
    CHECK(exact.intercept_half_width == 0);
    CHECK(patterns_of(exact).empty());
    // All read the same volume: it does not fall.
    for (ClassPoint& one : points) one.volume = one.in_tube = 2;
    CHECK_FALSE(says(points, "pattern.falls"));
}

TEST_CASE("pattern: less gas from more metal is said where it is beyond chance") {
    // y = 3 - a x with residuals of 1, -2, 1 at x = 1, 2, 3: u(slope) = sqrt(6/1)/sqrt 2, t = 12.706 with one degree of freedom.
    const auto falling = [](double slope) {
        std::vector<ClassPoint> points(3);
        constexpr double residuals[] = {1, -2, 1};
        for (std::size_t i = 0; i < 3; ++i) {
            points[i].amount = static_cast<double>(i + 1);
            points[i].volume = points[i].in_tube = 1000 - slope * points[i].amount + residuals[i];
            points[i].ratio = points[i].volume / points[i].amount;
        }
        return points;
    };
    const double chance = 12.706 * std::sqrt(6.0) / std::sqrt(2.0);
    CHECK(says(falling(1.01 * chance), "pattern.falls"));
    CHECK_FALSE(says(falling(0.99 * chance), "pattern.falls"));
}

TEST_CASE("pattern: rows are exchanged where four or more runs agree three quarters better the other way round") {
    // The volumes of 2 and 3 mmol are exchanged, and that of 5 mmol is off by e: the squares are 2 + e², then e².
    const auto exchanged = [](double e) { return runs({1, 2, 3, 4, 5}, {1, 3.0 / 2, 2.0 / 3, 1, 1 + e / 5}); };
    // e²/(2 + e²) = 0.25 for e² = 2/3.
    CHECK(says(exchanged(std::sqrt(0.66)), "pattern.swapped"));
    CHECK_FALSE(says(exchanged(std::sqrt(0.67)), "pattern.swapped"));
    CHECK(says(runs({1, 2, 3, 4}, {1, 3.0 / 2, 2.0 / 3, 1}), "pattern.swapped"));
    CHECK_FALSE(says(runs({1, 2, 3}, {1, 3.0 / 2, 2.0 / 3}), "pattern.swapped"));
    // The first and the last run may be the ones.
    const auto ends = patterns_of(pooled(runs({1, 2, 3, 4}, {4, 1, 1, 1.0 / 4})));
    const Pattern* swap = said(ends, "pattern.swapped");
    REQUIRE(swap != nullptr);
    CHECK(swap->points == std::vector<std::size_t>{0, 3});
}

TEST_CASE("pattern: small samples that scatter two and a half times as much, of four or more each") {
    constexpr double b = 0.002;
    const auto scattered = [](double a) {
        return runs({1, 2, 3, 4, 10, 20, 30, 40}, {1 + a, 1 - a, 1 + a, 1 - a, 1 + b, 1 - b, 1 + b, 1 - b});
    };
    CHECK(says(scattered(2.51 * b), "pattern.small_scatter"));
    CHECK_FALSE(says(scattered(2.49 * b), "pattern.small_scatter"));
    // Three small samples are too few.
    CHECK_FALSE(
        says(runs({1, 2, 3, 10, 20, 30, 40}, {1.02, 0.98, 1.02, 1 + b, 1 - b, 1 + b, 1 - b}), "pattern.small_scatter"));
    // Of nine, the one in the middle is neither small nor large.
    const auto nine = [](double middle) {
        return runs({1, 2, 3, 4, 7, 10, 20, 30, 40}, {1.01, 0.99, 1.01, 0.99, middle, 1 + b, 1 - b, 1 + b, 1 - b});
    };
    CHECK(says(nine(1.05), "pattern.small_scatter"));
    // Whoever has one amount has no small samples.
    CHECK_FALSE(says(runs(std::vector<double>(8, 2.0), {1.02, 0.98, 1.02, 0.98, 1 + b, 1 - b, 1 + b, 1 - b}),
                     "pattern.small_scatter"));
}
