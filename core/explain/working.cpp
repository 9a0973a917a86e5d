#include "core/explain/working.hpp"

#include <algorithm>

#include "core/explain/figures.hpp"
#include "core/explain/symbols.hpp"
#include "core/result/evaluate.hpp"

namespace overwater {

namespace {

using Kind = Formula::Kind;
using NodeKind = TraceNode::Kind;

constexpr const char* minus_sign = "−";
constexpr const char* times_sign = "×";

/// Turns the tree of one step into a formula, in letters or with numbers.
class Setter {
public:
    Setter(const Trace& trace, const Readings& readings, const Conventions& conventions,
           const std::vector<WorkingStep>& earlier)
        : trace_(trace), readings_(readings), conventions_(conventions), earlier_(earlier) {}

    Formula letters(std::int32_t index) const {
        const TraceNode& node = trace_[index];
        switch (node.kind) {
            case NodeKind::input: return symbol_of(node.input, readings_);
            case NodeKind::constant: return constant_letters(node);
            case NodeKind::step: return symbol_of(node.output, readings_);
            case NodeKind::looked_up: return looked_up(node, letters(node.a));
            case NodeKind::sum: return joined("+", letters(node.a), letters(node.b));
            case NodeKind::difference: return joined(minus_sign, letters(node.a), letters(node.b));
            case NodeKind::product: return joined(nullptr, letters(node.a), letters(node.b));
            case NodeKind::quotient: return Formula::of(Kind::fraction, {letters(node.a), letters(node.b)});
            case NodeKind::smaller: return letters(chosen(node));
            case NodeKind::negative: return joined(minus_sign, Formula{}, letters(node.a));
            case NodeKind::square_root: return Formula::of(Kind::root, {letters(node.a)});
            case NodeKind::exponential: return raised(Formula::leaf(Kind::words, "e"), letters(node.a));
            case NodeKind::power: return raised(bracketed(letters(node.a)), letters(node.b));
            case NodeKind::literal: break;
        }
        return Formula::leaf(Kind::number, format_significant(node.value, 6, conventions_.decimal_sign));
    }

    /// With numbers; the terms of a sum are shown in `unit`, which is written once behind them.
    Formula numbers(std::int32_t index, UnitId unit, int decimals) const {
        const TraceNode& node = trace_[index];
        switch (node.kind) {
            case NodeKind::sum:
            case NodeKind::difference: {
                Formula row = terms(index, unit, decimals);
                row.children.push_back(Formula::leaf(Kind::unit, std::string(info(unit).symbol)));
                return row;
            }
            case NodeKind::product:
                return joined(times_sign, numbers(node.a, unit, decimals), numbers(node.b, unit, decimals));
            case NodeKind::quotient:
                return Formula::of(
                    Kind::fraction,
                    {numbers(node.a, unit_of_node(node.a, unit), decimals_of_node(node.a, decimals)),
                     numbers(node.b, unit_of_node(node.b, unit), decimals_of_node(node.b, decimals))});
            case NodeKind::smaller: return numbers(chosen(node), unit, decimals);
            case NodeKind::negative: return joined(minus_sign, Formula{}, numbers(node.a, unit, decimals));
            case NodeKind::square_root: return Formula::of(Kind::root, {numbers(node.a, unit, decimals)});
            case NodeKind::exponential:
                return raised(Formula::leaf(Kind::words, "e"), numbers(node.a, UnitId::none, decimals));
            case NodeKind::power:
                return raised(bracketed(numbers(node.a, UnitId::none, decimals)), leaf(trace_[node.b]));
            case NodeKind::looked_up: return looked_up(node, numbers(node.a, UnitId::celsius, decimals));
            default: return leaf(node);
        }
    }

private:
    std::int32_t chosen(const TraceNode& node) const {
        return trace_[node.b].value < trace_[node.a].value ? node.b : node.a;
    }

    Formula constant_letters(const TraceNode& node) const { return symbol_of(node.constant, node.value); }

    /// The name of the published formula with its argument: the reader finds it in standards and handbooks by it.
    static Formula looked_up(const TraceNode& node, Formula argument) {
        Formula symbol = source_of(node.function);
        return Formula::of(Kind::row, {std::move(symbol), Formula::of(Kind::bracketed, {std::move(argument)})});
    }

    static Formula source_of(Function function) {
        switch (function) {
            case Function::water_vapour_pressure: return Formula::leaf(Kind::words, "IAPWS-IF97");
            case Function::water_density: return Formula::leaf(Kind::words, "CIPM-2001");
            case Function::compression_factor: return Formula::leaf(Kind::variable, "Z");
            case Function::vapour_table: break;
        }
        return Formula::of(Kind::subscript, {Formula::leaf(Kind::variable, "p"), Formula::leaf(Kind::words, "w")});
    }

    /// e, or any base, to a power.
    static Formula raised(Formula base, Formula exponent) {
        return Formula::of(Kind::superscript, {std::move(base), std::move(exponent)});
    }
    static Formula bracketed(Formula inner) { return Formula::of(Kind::bracketed, {std::move(inner)}); }

    /// a sign b, flattened so that chains read as one row; without a sign the factors stand side by side.
    static Formula joined(const char* sign, Formula a, Formula b) {
        Formula row = a.kind == Kind::row ? std::move(a) : Formula::of(Kind::row, {std::move(a)});
        if (sign != nullptr) row.children.push_back(Formula::leaf(Kind::operation, sign));
        row.children.push_back(std::move(b));
        return row;
    }

    Formula terms(std::int32_t index, UnitId unit, int decimals) const {
        const TraceNode& node = trace_[index];
        const bool is_sum = node.kind == NodeKind::sum;
        if (!is_sum && node.kind != NodeKind::difference) {
            return Formula::of(Kind::row, {Formula::leaf(Kind::number, term(node, unit, decimals))});
        }
        return joined(is_sum ? "+" : minus_sign, terms(node.a, unit, decimals),
                      Formula::leaf(Kind::number, term(trace_[node.b], unit, decimals)));
    }

    /// One term of a sum, in the sum's unit: as typed where it was typed in that unit, else to the sum's decimals.
    std::string term(const TraceNode& node, UnitId unit, int decimals) const {
        if (node.kind == NodeKind::input && field_of(node.input) != Field::count) {
            const Reading& reading = readings_[field_of(node.input)];
            // A Celsius temperature and 273.15 are added as they stand: T = 21.4 + 273.15 K.
            const bool celsius = node.input == Input::temperature && reading.unit == UnitId::celsius;
            if (reading.unit == unit || celsius) return typed(reading);
        }
        if (node.kind == NodeKind::constant && node.constant == Constant::celsius_zero) return number(node.value, 2);
        if (unit == UnitId::kelvin) return number(node.value, decimals);
        return number(from_base(node.value, unit), decimals);
    }

    std::string number(double value, int decimals) const {
        return format_fixed(value, decimals, conventions_.decimal_sign, conventions_.rounding);
    }

    std::string typed(const Reading& reading) const {
        return number(reading.number.value, std::clamp(-reading.last_place, 0, 12));
    }

    static Formula with_unit(std::string number, UnitId unit) {
        Formula value = Formula::leaf(Kind::number, std::move(number));
        if (unit == UnitId::none) return value;
        return Formula::of(Kind::row,
                           {std::move(value), Formula::leaf(Kind::unit, std::string(info(unit).symbol))});
    }

    /// The unit in which a sum inside a fraction is shown: that of the step it contains.
    UnitId unit_of_node(std::int32_t index, UnitId fallback) const {
        const TraceNode& node = trace_[index];
        if (node.kind == NodeKind::step) return shown_unit(node.output, readings_, conventions_);
        if (node.kind == NodeKind::sum || node.kind == NodeKind::difference) return unit_of_node(node.a, fallback);
        return fallback;
    }

    /// The decimals of a sum inside a fraction: those of the steps it compares, not those of the fraction's result.
    int decimals_of_node(std::int32_t index, int fallback) const {
        const TraceNode& node = trace_[index];
        if (node.kind == NodeKind::sum || node.kind == NodeKind::difference) return decimals_of_node(node.a, fallback);
        if (node.kind == NodeKind::step && node.output != Output::accepted_value) {
            for (const WorkingStep& step : earlier_) {
                if (step.output == node.output) return step.shown_decimals;
            }
        }
        return fallback;
    }

    Formula leaf(const TraceNode& node) const {
        if (node.kind == NodeKind::input) return input_leaf(node);
        if (node.kind == NodeKind::constant) return constant_leaf(node);
        if (node.kind == NodeKind::step) {
            for (const WorkingStep& step : earlier_) {
                if (step.output == node.output) {
                    return with_unit(number(in_unit(step.output, step.value, step.unit), step.shown_decimals), step.unit);
                }
            }
        }
        return Formula::leaf(Kind::number, format_significant(node.value, 6, conventions_.decimal_sign));
    }

    Formula input_leaf(const TraceNode& node) const {
        const Field field = field_of(node.input);
        if (node.input == Input::meniscus_ring) {
            return with_unit(number(from_base(node.value, UnitId::millilitre), 3), UnitId::millilitre);
        }
        if (field != Field::count && readings_[field].there) {
            return with_unit(typed(readings_[field]), readings_[field].unit);
        }
        if (node.input == Input::outdoor_temperature) return with_unit(number(node.value, 1), UnitId::celsius);
        if (node.input == Input::molar_mass) {
            // Abridged atomic weights have at most three decimals; fewer where a class rounds them.
            return with_unit(trimmed(from_base(node.value, UnitId::gram_per_mole), 3), UnitId::gram_per_mole);
        }
        return with_unit_text(trimmed(node.value, 5), "m/s²");
    }

    static Formula with_unit_text(std::string number, std::string unit) {
        return Formula::of(Kind::row, {Formula::leaf(Kind::number, std::move(number)),
                                       Formula::leaf(Kind::unit, std::move(unit))});
    }

    /// At most `decimals` decimals, without zeros at the end that nobody wrote.
    std::string trimmed(double value, int decimals) const {
        std::string text = number(value, decimals);
        const char sign = conventions_.decimal_sign == DecimalSign::comma ? ',' : '.';
        if (text.find(sign) == std::string::npos) return text;
        while (text.back() == '0') text.pop_back();
        if (text.back() == sign) text.pop_back();
        return text;
    }

    Formula constant_leaf(const TraceNode& node) const {
        switch (node.constant) {
            case Constant::standard_temperature: return with_unit(trimmed(node.value, 4), UnitId::kelvin);
            case Constant::standard_pressure: {
                const UnitId unit = shown_unit(Output::dry_gas_pressure, readings_, conventions_);
                return with_unit(trimmed(from_base(node.value, unit), 5), unit);
            }
            case Constant::molar_gas_constant: return with_unit(number(node.value, 5), UnitId::joule_per_mole_kelvin);
            case Constant::pressure_at_sea_level: {
                const UnitId unit = shown_unit(Output::dry_gas_pressure, readings_, conventions_);
                return with_unit(trimmed(from_base(node.value, unit), 5), unit);
            }
            case Constant::sea_level_temperature: return with_unit(number(node.value, 2), UnitId::kelvin);
            case Constant::lapse_rate: return with_unit_text(number(node.value, 4), "K/m");
            case Constant::air_gas_constant: return with_unit_text(number(node.value, 2), "J/(kg·K)");
            case Constant::free_fall: return with_unit_text(number(node.value, 5), "m/s²");
            case Constant::hundred_percent:
                return with_unit(number(from_base(node.value, UnitId::percent), 0), UnitId::percent);
            default: return Formula::leaf(Kind::number, trimmed(node.value, 4));
        }
    }

    const Trace& trace_;
    const Readings& readings_;
    const Conventions& conventions_;
    const std::vector<WorkingStep>& earlier_;
};

bool is_sum(TraceNode::Kind kind) { return kind == NodeKind::sum || kind == NodeKind::difference; }

/// A sum of readings typed to the same unit has no digit beyond them; everything else gets one guard digit.
bool has_guard(const Trace& trace, std::int32_t index) {
    const TraceNode& node = trace[index];
    if (node.kind == NodeKind::input) return false;
    // 273.15 brings hundredths to any Celsius temperature.
    if (node.kind == NodeKind::constant) return node.constant == Constant::celsius_zero;
    if (!is_sum(node.kind)) return true;
    return has_guard(trace, node.a) || has_guard(trace, node.b);
}

}  // namespace

double in_unit(Output output, double value, UnitId unit) {
    // A unit table speaks of temperatures in °C; this one is a number of kelvin.
    return output == Output::absolute_temperature ? value : from_base(value, unit);
}

UnitId shown_unit(Output output, const Readings& readings, const Conventions& conventions) {
    const UnitId usual = unit_of(output);
    if (usual != UnitId::kilopascal) return usual;
    if (conventions.pressure_unit != UnitId::none) return conventions.pressure_unit;
    const Reading& barometer = readings[Field::barometer];
    return barometer.there ? barometer.unit : usual;
}

Working::Working(const Assessment& assessment, const Conventions& conventions) {
    const auto traced = assessment.measured.lifted<Traced>(
        [this](Input input, double value) { return Traced::input(trace_, input, value); });
    const Outcome<Traced> outcome = evaluate(traced, Method{}, assessment.outcome.ready);
    const std::vector<Figured> figures = figures_through(
        trace_, assessment.readings, conventions.round == Conventions::Round::at_each_step);
    const Setter setter(trace_, assessment.readings, conventions, steps_);
    for (std::size_t i = 0; i < output_count; ++i) {
        const auto output = static_cast<Output>(i);
        if (!outcome.ready.has(output)) continue;
        const std::int32_t index = trace_.step(output);
        if (index < 0) continue;
        const std::int32_t expression = trace_[index].a;
        WorkingStep step;
        step.output = output;
        step.value = figures[static_cast<std::size_t>(index)].value;
        step.unit = shown_unit(output, assessment.readings, conventions);
        // The accepted value and the exact constants have as many digits as one likes: six show what is used.
        const Precision precision = figures[static_cast<std::size_t>(index)].precision;
        step.figures = precision.exact ? 6 : figures_of(precision, step.value);
        step.decimals = decimals_for(in_unit(output, step.value, step.unit), step.figures);
        if (output == Output::percent_error) step.decimals = 1;  // a difference of neighbours leaves no figure to count
        step.shown_decimals = precision.exact || !has_guard(trace_, expression) ? step.decimals : step.decimals + 1;
        step.symbol = symbol_of(output, assessment.readings);
        step.letters = setter.letters(expression);
        step.numbers = setter.numbers(expression, step.unit, step.shown_decimals);
        steps_.push_back(std::move(step));
    }
}

const WorkingStep* Working::step(Output output) const {
    for (const WorkingStep& step : steps_) {
        if (step.output == output) return &step;
    }
    return nullptr;
}

}  // namespace overwater
