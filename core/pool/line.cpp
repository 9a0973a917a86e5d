#include "core/pool/line.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

#include "core/pool/summary.hpp"
#include "core/quantity/exact_sum.hpp"
#include "core/quantity/gum.hpp"

namespace overwater {

namespace {

double degrees_of(std::size_t count, std::size_t fitted) { return static_cast<double>(count - fitted); }

}  // namespace

OriginLine line_through_origin(std::span<const double> x, std::span<const double> y) {
    OriginLine line;
    ExactSum xx;
    ExactSum xy;
    ExactSum yy;
    for (std::size_t i = 0; i < x.size(); ++i) {
        xx.add(x[i] * x[i]);
        xy.add(x[i] * y[i]);
        yy.add(y[i] * y[i]);
    }
    if (!(xx.value() > 0)) return line;
    line.count = x.size();
    line.slope = xy.value() / xx.value();
    ExactSum left;
    for (std::size_t i = 0; i < x.size(); ++i) {
        const double off = y[i] - line.slope * x[i];
        left.add(off * off);
    }
    line.r_squared = yy.value() > 0 ? 1 - left.value() / yy.value() : 1;
    if (line.count < 2) return line;
    line.residual = std::sqrt(left.value() / degrees_of(line.count, 1));
    line.slope_u = line.residual / std::sqrt(xx.value());
    return line;
}

std::optional<Line> free_line(std::span<const double> x, std::span<const double> y) {
    if (x.size() < 2) return std::nullopt;
    const Summary all = summary_of(x);
    // x that differ by rounding alone are one x.
    if (!(all.deviation > 1e-12 * std::fabs(all.mean))) return std::nullopt;
    return fitted_line(x, y);
}

double r_squared(const Line& line, std::span<const double> x, std::span<const double> y) {
    const double mean = summary_of(y).mean;
    ExactSum left;
    ExactSum all;
    for (std::size_t i = 0; i < x.size(); ++i) {
        const double off = y[i] - line.at(x[i]);
        left.add(off * off);
        all.add((y[i] - mean) * (y[i] - mean));
    }
    return all.value() > 0 ? 1 - left.value() / all.value() : 1;
}

double band_factor(const Line& line) { return line.degrees > 0 ? coverage_factor(line.degrees) : 0; }

double band_factor(const OriginLine& line) {
    return line.count < 2 ? 0 : coverage_factor(degrees_of(line.count, 1));
}

PooledRatio mean_of_ratios(std::span<const double> x, std::span<const double> y) {
    std::vector<double> ratios;
    for (std::size_t i = 0; i < x.size(); ++i) ratios.push_back(y[i] / x[i]);
    const Summary all = summary_of(ratios);
    return {all.mean, all.standard_error};
}

PooledRatio ratio_of_totals(std::span<const double> x, std::span<const double> y) {
    ExactSum total_x;
    ExactSum total_y;
    for (std::size_t i = 0; i < x.size(); ++i) {
        total_x.add(x[i]);
        total_y.add(y[i]);
    }
    if (!(total_x.value() > 0)) return {};
    PooledRatio ratio{total_y.value() / total_x.value(), 0};
    if (x.size() < 2) return ratio;
    ExactSum left;  // weighted least squares: the square of the scatter in proportion to x
    for (std::size_t i = 0; i < x.size(); ++i) {
        const double off = y[i] - ratio.value * x[i];
        left.add(off * off / x[i]);
    }
    ratio.u = std::sqrt(left.value() / degrees_of(x.size(), 1) / total_x.value());
    return ratio;
}

}  // namespace overwater
