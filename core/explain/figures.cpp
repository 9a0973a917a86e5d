#include "core/explain/figures.hpp"

#include <algorithm>
#include <cmath>

#include "core/quantity/number_format.hpp"

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

/// The precision of `value` with so many significant figures.
Precision precision_with(double value, int figures) {
    if (value == 0 || !std::isfinite(value)) return {};
    return {false, std::pow(10.0, leading_place(value) - figures + 1)};
}

Precision precision_of_sum(Precision a, Precision b) {
    return {a.exact && b.exact, std::max(a.resolution, b.resolution)};
}

Precision precision_of_product(Precision a, double value_a, Precision b, double value_b, double value) {
    if (a.exact && b.exact) return {};
    return precision_with(value, std::min(figures_of(a, value_a), figures_of(b, value_b)));
}

Precision precision_of(Function function) {
    switch (function) {
        case Function::water_density: return {false, density_table_resolution};
        case Function::compression_factor: return {};
        case Function::water_vapour_pressure:
        case Function::vapour_table: break;
    }
    return {false, vapour_table_resolution};
}

Precision precision_of(Input input, const Readings& readings) {
    // The capacity is the number printed at a mark, and molar masses and g are known far beyond a class's readings. The
    // bore and the outdoor temperature make small corrections whose digits no class counts.
    const Field field = field_of(input);
    const bool exempt =
        field == Field::tube_capacity || field == Field::tube_bore || field == Field::outdoor_temperature;
    if (field == Field::count || exempt || !readings[field].there) return {};
    const Reading& reading = readings[field];
    return {false, std::pow(10.0, reading.last_place) * info(reading.unit).factor};
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

namespace {

/// One node from those before it.
Figured figured(const TraceNode& node, const Figured& a, const Figured& b, const Readings& readings) {
    using Kind = TraceNode::Kind;
    const auto product = [&](double value) {
        return Figured{value, precision_of_product(a.precision, a.value, b.precision, b.value, value)};
    };
    const auto same_figures = [&](double value) {
        return Figured{value, a.precision.exact ? Precision{} : precision_with(value, figures_of(a.precision, a.value))};
    };
    switch (node.kind) {
        case Kind::literal:
        case Kind::constant: return {node.value, {}};
        case Kind::input: return {node.value, precision_of(node.input, readings)};
        case Kind::sum: return {a.value + b.value, precision_of_sum(a.precision, b.precision)};
        case Kind::difference: return {a.value - b.value, precision_of_sum(a.precision, b.precision)};
        case Kind::product: return product(a.value * b.value);
        case Kind::quotient: return product(a.value / b.value);
        case Kind::negative: return {-a.value, a.precision};
        case Kind::square_root: return same_figures(std::sqrt(a.value));
        case Kind::exponential: return same_figures(std::exp(a.value));
        case Kind::power: return same_figures(std::pow(a.value, b.value));
        case Kind::smaller: return b.value < a.value ? b : a;
        case Kind::looked_up: return {b.value, precision_of(node.function)};
        case Kind::step: break;
    }
    return a;
}

}  // namespace

std::vector<Figured> figures_through(const Trace& trace, const Readings& readings, bool round_steps) {
    std::vector<Figured> all;
    all.reserve(trace.size());
    const Figured none;
    for (std::size_t i = 0; i < trace.size(); ++i) {
        const TraceNode& node = trace[static_cast<std::int32_t>(i)];
        const auto child = [&](std::int32_t index) -> const Figured& {
            return index < 0 ? none : all[static_cast<std::size_t>(index)];
        };
        Figured here = figured(node, child(node.a), child(node.b), readings);
        const bool rounds = round_steps && node.kind == TraceNode::Kind::step && !here.precision.exact;
        if (rounds && here.value != 0 && std::isfinite(here.value)) {
            const int figures = figures_of(here.precision, here.value) + 1;
            here.value = round_to_place(here.value, place_of_figures(here.value, figures));
        }
        all.push_back(here);
    }
    return all;
}

}  // namespace overwater
