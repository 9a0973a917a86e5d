#include "core/pool/class_set.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace overwater {

std::optional<ClassPoint> point_of(const Assessment& run) {
    const auto amount = run.value(Output::amount_of_gas);
    const auto volume = run.value(Output::volume_at_standard);
    const auto in_tube = run.value(Output::gas_volume);
    if (!amount || !volume || !in_tube || !(*amount > 0)) return std::nullopt;
    ClassPoint point;
    point.amount = *amount;
    point.volume = *volume;
    point.in_tube = *in_tube;
    point.ratio = *volume / *amount;
    point.accepted = run.value(Output::accepted_value).value_or(0.0);
    return point;
}

ClassSet pooled(std::vector<ClassPoint> points) {
    ClassSet set;
    set.points = std::move(points);
    if (set.points.empty()) return set;
    std::vector<double> x;
    std::vector<double> y;
    std::vector<double> ratios;
    double reductions = 0;
    for (const ClassPoint& point : set.points) {
        x.push_back(point.amount);
        y.push_back(point.volume);
        ratios.push_back(point.ratio);
        reductions += point.volume / point.in_tube;
    }
    set.reduction = reductions / static_cast<double>(set.points.size());
    set.ratios = summary_of(ratios);
    set.mean_of_ratios = mean_of_ratios(x, y);
    set.ratio_of_totals = ratio_of_totals(x, y);
    set.origin = line_through_origin(x, y);
    set.free = free_line(x, y);
    set.grubbs = grubbs(ratios);
    set.dixon = dixon(ratios);
    if (set.free) {
        set.intercept_in_tube = set.free->intercept / set.reduction;
        if (set.free->degrees > 0) {
            set.intercept_half_width =
                student_quantile(0.95, set.free->degrees) * set.free->u_intercept / set.reduction;
        }
    }
    return set;
}

ClassSet pooled(std::span<const ClassGroup> groups) {
    std::vector<ClassPoint> points;
    std::vector<ClassPoint> left_out;
    std::vector<double> mass_doubts;
    for (std::size_t g = 0; g < groups.size(); ++g) {
        const ClassGroup& group = groups[g];
        for (std::size_t r = 0; r < group.runs.size(); ++r) {
            auto point = point_of(group.runs[r]);
            if (!point) continue;
            point->group = g;
            point->run = r;
            (group.left_out ? left_out : points).push_back(*point);
            if (!group.left_out && r < group.relative_mass_u.size()) mass_doubts.push_back(group.relative_mass_u[r]);
        }
    }
    return pooled(std::move(points), std::move(left_out), mass_doubts);
}

ClassSet pooled(std::vector<ClassPoint> points, std::vector<ClassPoint> left_out,
                std::span<const double> relative_mass_u) {
    ClassSet set = pooled(std::move(points));
    set.left_out = std::move(left_out);
    if (!relative_mass_u.empty() && set.ratios.deviation > 0) {
        const double scatter = set.ratios.deviation / set.ratios.mean;
        const auto doubtful = std::count_if(relative_mass_u.begin(), relative_mass_u.end(),
                                            [scatter](double u) { return u > scatter / 3; });
        set.masses_doubtful = 2 * static_cast<std::size_t>(doubtful) > relative_mass_u.size();
    }
    return set;
}

}  // namespace overwater
