#pragma once

#include <array>
#include <optional>

#include "core/result/assess.hpp"

/// What right work comes to: not one number but a narrow band, since classes take 273 or 273.15, a table or the formula,
/// 24.3 or 24.305 g/mol, and write down steps with three figures or more (method.md, section 7).

namespace overwater {

/// Coherent SI units, percent error as a fraction.
struct Band {
    double low = 0;
    double high = 0;
    bool holds(double value) const { return value >= low && value <= high; }
};

struct RouteBands {
    OutputSet known;
    std::array<Band, output_count> bands{};
    const Band& operator[](Output output) const { return bands[static_cast<std::size_t>(output)]; }
};

/// The spread that accepted routes reach, for each output that the run has. Steps in `carried` are taken as they stand
/// there: what follows is then right for somebody who went on with those.
/// Routes (method.md, section 7): 273 or 273.15; vapour pressure by the formula or from a table to 0.1 torr, between rows
/// or the nearest row; a water column by its density, by 1000 kg/m³ or as h/13.6; molar mass with 0 to 3 decimals; gas
/// constant 8.31, 8.314, 0.0821, 0.08206; 22.4, 22.41, 22.414; 101.3 or 101.325 kPa; steps rounded to three figures or
/// more.
RouteBands route_bands(const Assessment& run, const Outcome<double>& carried = {});

/// The band of a number that others follow from: it may have been rounded to three figures or more, in any unit.
Band as_a_step(Output output, Band band);

}  // namespace overwater
