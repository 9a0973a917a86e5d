#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/pool/line.hpp"
#include "core/pool/outlier.hpp"
#include "core/pool/summary.hpp"
#include "core/result/assess.hpp"

/// A class's runs together (method.md, section 8): the gas reduced to standard conditions against its amount.

namespace overwater {

/// One group of a class: a record with its runs.
struct ClassGroup {
    std::string name;  ///< its number, never a person's name
    std::vector<Assessment> runs;
    std::vector<double> relative_mass_u;  ///< u(m)/m of each run; may be shorter, then it is not known
    bool left_out = false;                ///< by hand only, never by a test
    std::string reason;                   ///< why; stays in the table
};

/// One run that has a result.
struct ClassPoint {
    std::size_t group = 0;
    std::size_t run = 0;
    double amount = 0;    ///< of gas by the metal, mol
    double volume = 0;    ///< reduced to standard conditions, m³
    double in_tube = 0;   ///< as it stood in the tube, m³
    double ratio = 0;     ///< volume/amount: the molar volume, m³/mol
    double accepted = 0;  ///< m³/mol; 0 where there is none
};

/// What the runs of the groups that are not left out say together. SI units.
struct ClassSet {
    std::vector<ClassPoint> points;    ///< those that count
    std::vector<ClassPoint> left_out;  ///< of groups left out by hand
    Summary ratios;                    ///< mean, median, spread, 95 % interval of the molar volumes
    PooledRatio mean_of_ratios;        ///< right where the scatter of the volume grows as the amount
    PooledRatio ratio_of_totals;       ///< right where its square does
    OriginLine origin;                 ///< right where the scatter is the same for all: the pooled molar volume
    std::optional<Line> free;          ///< with an intercept: gas room that nobody counted
    double reduction = 0;              ///< mean of volume/in_tube: 0.89 in record A
    double intercept_in_tube = 0;      ///< the free line's intercept as it stands in the tube, m³
    double intercept_half_width = 0;   ///< of its 95 % interval, m³ in the tube; 0 where it is not known
    OutlierTest grubbs;                ///< `index` into `points`
    OutlierTest dixon;
    /// u(m)/m is over a third of the residual scatter for most runs: then the amounts are as doubtful as the volumes, and a
    /// line that trusts them leans too little.
    bool masses_doubtful = false;
};

/// Pools points of their own: amount, volume, in_tube and ratio above zero. Without points all is empty.
ClassSet pooled(std::vector<ClassPoint> points);

/// The run as a point of its class; nothing without an amount or a volume at standard conditions.
std::optional<ClassPoint> point_of(const Assessment& run);

/// Pools `points` and keeps `left_out` beside them; `relative_mass_u` is u(m)/m of runs that count, where it is known.
ClassSet pooled(std::vector<ClassPoint> points, std::vector<ClassPoint> left_out,
                std::span<const double> relative_mass_u);

/// Pools the groups. Runs without an amount or a volume at standard conditions are no points.
ClassSet pooled(std::span<const ClassGroup> groups);

}  // namespace overwater
