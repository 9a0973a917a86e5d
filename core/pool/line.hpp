#pragma once

#include <cmath>
#include <cstddef>
#include <optional>
#include <span>

#include "core/quantity/gum.hpp"

/// Lines through a class's points: the gas reduced to standard conditions against its amount. The slope is a molar volume,
/// the intercept a gas room that nobody counted.

namespace overwater {

/// y = slope x, by least squares; every point weighs the same, so that the larger samples decide.
struct OriginLine {
    std::size_t count = 0;
    double slope = 0;
    double slope_u = 0;      ///< standard uncertainty, from the scatter; of 2 points or more
    double residual = 0;     ///< standard deviation of the residuals, n - 1 degrees of freedom
    double r_squared = 0;    ///< about zero, not about the mean, since the line has to go through the origin
    double u_at(double x) const { return slope_u * std::fabs(x); }
};
/// Of 1 point or more with an x other than 0; else no slope and `count` 0.
OriginLine line_through_origin(std::span<const double> x, std::span<const double> y);

/// y = intercept + slope x, by least squares. Of 2 points or more whose x differ, else nothing; uncertainties of 3 or more.
std::optional<Line> free_line(std::span<const double> x, std::span<const double> y);

/// Share of the scatter of y about its mean that the line takes away.
double r_squared(const Line& line, std::span<const double> x, std::span<const double> y);

/// How many times `u_at` the 95 % band of a line reaches to each side: where the line itself may lie. 0 where the scatter is
/// not known. A quantile of Student's t costs as much as a thousand points of the band: ask once a line.
double band_factor(const Line& line);
double band_factor(const OriginLine& line);

/// Three ways to pool y/x, each right for another scatter (weights of least squares): mean of ratios where the scatter
/// of y grows as x, ratio of totals where its square does, slope through the origin where it is the same for all.
struct PooledRatio {
    double value = 0;
    double u = 0;  ///< standard uncertainty, n - 1 degrees of freedom; of 2 points or more
};
/// Of points with x above 0.
PooledRatio mean_of_ratios(std::span<const double> x, std::span<const double> y);
PooledRatio ratio_of_totals(std::span<const double> x, std::span<const double> y);

}  // namespace overwater
