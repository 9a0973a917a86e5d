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

Precision precision_of(Input input, double value, const Readings& readings) {
    // The capacity is the number printed at a mark, and molar masses and g are known far beyond a class's readings. The
    // bore and the outdoor temperature make small corrections whose digits no class counts.
    const Field field = field_of(input);
    const bool exempt =
        field == Field::tube_capacity || field == Field::tube_bore || field == Field::outdoor_temperature;
    if (field == Field::count || exempt || !readings[field].there) return {};
    const Reading& reading = readings[field];
    // "100 %" says that all of it is metal; it is no reading of three figures.
    if (field == Field::purity && reading.base == 1) return {};
    const double resolution = std::pow(10.0, reading.last_place) * info(reading.unit).factor;
    // Water weighed for the end space: the number was typed as a mass and counts as a volume.
    const bool weighed = field == Field::end_space && info(reading.unit).measure == Measure::mass;
    return {false, weighed && reading.base > 0 ? resolution * value / reading.base : resolution};
}

}  // namespace

int figures_of(Precision precision, double value) {
    if (precision.exact || value == 0) return figures_of_exact;
    const double digits = std::fabs(value) / precision.resolution;
    if (!(digits >= 1)) return 1;
    // The smallest numbers there are make the quotient infinite, which no whole number is.
    const double all = std::min(std::floor(std::log10(digits) + hair) + 1, static_cast<double>(figures_of_exact));
    return std::max(static_cast<int>(all), 1);
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
        case Kind::input: return {node.value, precision_of(node.input, node.value, readings)};
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
        case Kind::step:
            if (node.b != node.a) return {a.value, {false, b.value}};
            break;
    }
    return a;
}

}  // namespace

std::vector<Figured> figures_through(const Trace& trace, const Readings& readings, bool round_steps,
                                     Rounding rounding) {
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
            here.value = round_to_place(here.value, place_of_figures(here.value, figures), rounding);
        }
        all.push_back(here);
    }
    return all;
}

namespace {

/// Walks down from a result to the reading that decides its figures.
class Descent {
public:
    Descent(const Trace& trace, const Readings& readings)
        : trace_(trace), figured_(figures_through(trace, readings, false)) {}

    Limit from(std::int32_t index) const {
        using Kind = TraceNode::Kind;
        Limit limit;
        Output step = Output::count;
        bool in_sum = false;
        while (true) {
            const TraceNode& node = trace_[index];
            switch (node.kind) {
                case Kind::step:
                    // Below a sum the figures are those of the sum, whatever its terms are called.
                    if (!in_sum) step = node.output;
                    index = node.a;
                    continue;
                case Kind::sum:
                case Kind::difference:
                    if (!in_sum) {
                        limit.quantity = step;
                        limit.figures = figures_at(index);
                    }
                    in_sum = true;
                    index = coarser(node.a, node.b);
                    continue;
                case Kind::product:
                case Kind::quotient: index = fewer(node.a, node.b); continue;
                case Kind::smaller: index = trace_[node.b].value < trace_[node.a].value ? node.b : node.a; continue;
                case Kind::negative:
                case Kind::square_root:
                case Kind::exponential:
                case Kind::power: index = node.a; continue;
                case Kind::input: limit.input = node.input; break;
                case Kind::looked_up:
                    if (!in_sum) limit.quantity = step;
                    break;
                case Kind::literal:
                case Kind::constant: break;
            }
            if (!in_sum) limit.figures = figures_at(index);
            return limit;
        }
    }

    bool exact(std::int32_t index) const { return at(index).precision.exact; }

private:
    const Figured& at(std::int32_t index) const { return figured_[static_cast<std::size_t>(index)]; }
    int figures_at(std::int32_t index) const { return figures_of(at(index).precision, at(index).value); }
    double weight(std::int32_t index) const { return at(index).precision.resolution / std::fabs(at(index).value); }

    std::int32_t coarser(std::int32_t a, std::int32_t b) const {
        if (exact(a) || exact(b)) return exact(a) ? b : a;
        return at(b).precision.resolution > at(a).precision.resolution ? b : a;
    }
    std::int32_t fewer(std::int32_t a, std::int32_t b) const {
        if (exact(a) || exact(b)) return exact(a) ? b : a;
        const int of_a = figures_at(a);
        const int of_b = figures_at(b);
        if (of_a != of_b) return of_b < of_a ? b : a;
        return weight(b) > weight(a) ? b : a;
    }

    const Trace& trace_;
    std::vector<Figured> figured_;
};

}  // namespace

std::optional<Limit> limiting_input(const Trace& trace, const Readings& readings, Output output) {
    const std::int32_t index = trace.step(output);
    if (index < 0) return std::nullopt;
    const Descent descent(trace, readings);
    if (descent.exact(index)) return std::nullopt;
    return descent.from(index);
}

}  // namespace overwater
