#include "core/explain/figures.hpp"

#include <algorithm>
#include <cmath>

namespace overwater {

namespace {

constexpr int figures_of_exact = 15;

// 0.1 torr tables and kPa tables to two decimals are what a class looks up: 10 Pa, whichever formula stands behind it.
constexpr double vapour_table_resolution = 10.0;
// Tables of the density of water give 0.1 kg/m³ or better.
constexpr double density_table_resolution = 0.1;

/// A quotient that should be a power of ten may come out a hair below it.
constexpr double hair = 1e-9;

int leading_place(double value) { return static_cast<int>(std::floor(std::log10(std::fabs(value)) + hair)); }

Precision from_figures(double value, int figures) {
    if (value == 0 || !std::isfinite(value)) return {};
    return {false, std::pow(10.0, leading_place(value) - figures + 1)};
}

Precision of_input(Input input, const Readings& readings) {
    // The capacity is the number printed at a mark, and molar masses and g are known far beyond a class's readings.
    const Field field = field_of(input);
    const bool exact = field == Field::tube_capacity || field == Field::tube_bore || field == Field::outdoor_temperature;
    if (field == Field::count || exact || !readings[field].there) return {};
    const Reading& reading = readings[field];
    const UnitInfo& unit = info(reading.unit);
    return {false, std::pow(10.0, reading.last_place) * unit.factor};
}

}  // namespace

int figures_of(Precision precision, double value) {
    if (precision.exact || value == 0) return figures_of_exact;
    const double digits = std::fabs(value) / precision.resolution;
    if (!(digits >= 1)) return 1;
    return std::clamp(static_cast<int>(std::floor(std::log10(digits) + hair)) + 1, 1, figures_of_exact);
}

int decimals_for(double value, int figures) {
    if (value == 0 || !std::isfinite(value)) return 0;
    return std::clamp(figures - 1 - leading_place(value), 0, 12);
}

Precision precision_of(const Trace& trace, std::int32_t index, const Readings& readings) {
    using Kind = TraceNode::Kind;
    const TraceNode& node = trace[index];
    const auto of = [&](std::int32_t child) { return precision_of(trace, child, readings); };
    switch (node.kind) {
        case Kind::input: return of_input(node.input, readings);
        case Kind::sum:
        case Kind::difference: {
            const Precision a = of(node.a);
            const Precision b = of(node.b);
            return {a.exact && b.exact, std::max(a.resolution, b.resolution)};
        }
        case Kind::product:
        case Kind::quotient: {
            const Precision a = of(node.a);
            const Precision b = of(node.b);
            if (a.exact && b.exact) return {};
            return from_figures(node.value,
                                std::min(figures_of(a, trace[node.a].value), figures_of(b, trace[node.b].value)));
        }
        case Kind::smaller: return of(trace[node.b].value < trace[node.a].value ? node.b : node.a);
        case Kind::negative:
        case Kind::step: return of(node.a);
        case Kind::exponential:
        case Kind::power:
        case Kind::square_root: {
            const Precision a = of(node.a);
            return a.exact ? a : from_figures(node.value, figures_of(a, trace[node.a].value));
        }
        case Kind::looked_up:
            switch (node.function) {
                case Function::water_density: return {false, density_table_resolution};
                case Function::compression_factor: return {};
                case Function::water_vapour_pressure:
                case Function::vapour_table: break;
            }
            return {false, vapour_table_resolution};
        case Kind::literal:
        case Kind::constant: break;
    }
    return {};
}

}  // namespace overwater
