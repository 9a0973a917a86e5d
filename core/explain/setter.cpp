#include "core/explain/setter.hpp"

#include <algorithm>

#include "core/explain/figures.hpp"
#include "core/explain/symbols.hpp"
#include "core/matter/water.hpp"

namespace overwater {

namespace {

using Kind = Formula::Kind;
using NodeKind = TraceNode::Kind;

constexpr const char* minus_sign = "−";
constexpr const char* times_sign = "×";

Formula source_of(Function function) {
    switch (function) {
        case Function::water_vapour_pressure: return Formula::leaf(Kind::words, "IAPWS-IF97");
        case Function::water_density: return Formula::leaf(Kind::words, "CIPM-2001");
        case Function::compression_factor: return Formula::leaf(Kind::variable, "Z");
        case Function::vapour_table: break;
    }
    return Formula::of(Kind::subscript, {Formula::leaf(Kind::variable, "p"), Formula::leaf(Kind::words, "w")});
}

/// The name of the published formula with its argument: the reader finds it in standards and handbooks by it.
Formula looked_up_formula(const TraceNode& node, Formula argument) {
    return Formula::of(Kind::row, {source_of(node.function), Formula::of(Kind::bracketed, {std::move(argument)})});
}

/// e, or any base, to a power.
Formula raised(Formula base, Formula exponent) {
    return Formula::of(Kind::superscript, {std::move(base), std::move(exponent)});
}
Formula bracketed(Formula inner) { return Formula::of(Kind::bracketed, {std::move(inner)}); }

/// a sign b, flattened so that chains read as one row; without a sign the factors stand side by side.
Formula joined(const char* sign, Formula a, Formula b) {
    Formula row = a.kind == Kind::row ? std::move(a) : Formula::of(Kind::row, {std::move(a)});
    if (sign != nullptr) row.children.push_back(Formula::leaf(Kind::operation, sign));
    row.children.push_back(std::move(b));
    return row;
}

Formula with_unit_text(std::string number, std::string unit) {
    Formula value = Formula::leaf(Kind::number, number);
    if (unit.empty()) return value;
    return Formula::of(Kind::row, {std::move(value), Formula::leaf(Kind::unit, unit)});
}
Formula with_unit(std::string number, UnitId unit) {
    return with_unit_text(std::move(number), std::string(info(unit).symbol));
}

/// Kilopascal, or what stands for it: in p V/(n R T) only kPa x mL = mJ comes out without a factor.
bool takes_si_pressure(Output output) { return output == Output::gas_constant || output == Output::accepted_value; }
/// n M in g wants n in mol.
bool takes_whole_moles(Output output) {
    return output >= Output::molar_mass_found && output <= Output::gas_molar_mass;
}

}  // namespace

Formula Setter::letters(std::int32_t index) const {
    const TraceNode& node = trace_[index];
    switch (node.kind) {
        case NodeKind::input: return symbol_of(node.input, readings_);
        case NodeKind::constant: return symbol_of(node.constant, node.value, readings_, conventions_.decimal_sign);
        case NodeKind::step: return symbol_of(node.output, readings_);
        case NodeKind::looked_up: return looked_up_formula(node, letters(node.a));
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

void Setter::set_numbers(WorkingStep& step, std::int32_t index) {
    const UnitId shown = shown_unit(Output::dry_gas_pressure, readings_, conventions_);
    pressure_unit_ = takes_si_pressure(step.output) ? UnitId::kilopascal : shown;
    amount_unit_ = takes_whole_moles(step.output) ? UnitId::mole : UnitId::millimole;
    conversions_.clear();
    step.numbers = numbers(index, step.unit, step.shown_decimals);
    const TraceNode& node = trace_[index];
    const bool own_vapour = node.kind == NodeKind::looked_up && node.function == Function::vapour_table &&
                            conventions_.vapour == Conventions::Vapour::own_value;
    if (own_vapour) {
        const Reading& reading = readings_[Field::own_vapour_pressure];
        (void)converted(Input::vapour_value, reading, step.unit, decimals_in(reading, step.unit));
    }
    if (node.kind == NodeKind::product || node.kind == NodeKind::quotient) convert_result(step);
    step.conversions = std::move(conversions_);
}

/// With numbers; the terms of a sum are shown in `unit`, which is written once behind them.
Formula Setter::numbers(std::int32_t index, UnitId unit, int decimals) {
    const TraceNode& node = trace_[index];
    switch (node.kind) {
        case NodeKind::sum:
        case NodeKind::difference: {
            // The moles a gram of an alloy are no share: such terms are written out, each with its own units.
            if (unit == UnitId::percent && trace_[node.b].kind == NodeKind::quotient) {
                Formula first = numbers(node.a, unit, decimals);
                return joined(minus_sign, std::move(first), numbers(node.b, unit, decimals));
            }
            Formula row = terms(index, unit, decimals);
            row.children.push_back(Formula::leaf(Kind::unit, std::string(info(unit).symbol)));
            return row;
        }
        case NodeKind::product: {
            Formula first = numbers(node.a, unit, decimals);
            return joined(times_sign, std::move(first), numbers(node.b, unit, decimals));
        }
        case NodeKind::quotient: {
            Formula above = numbers(node.a, unit_of_node(node.a, unit), decimals_of_node(node.a, decimals));
            return Formula::of(Kind::fraction, {std::move(above), numbers(node.b, unit_of_node(node.b, unit),
                                                                          decimals_of_node(node.b, decimals))});
        }
        case NodeKind::smaller: return numbers(chosen(node), unit, decimals);
        case NodeKind::negative: return joined(minus_sign, Formula{}, numbers(node.a, unit, decimals));
        case NodeKind::square_root: return Formula::of(Kind::root, {numbers(node.a, unit, decimals)});
        case NodeKind::exponential:
            return raised(Formula::leaf(Kind::words, "e"), numbers(node.a, UnitId::none, decimals));
        case NodeKind::power:
            return raised(bracketed(numbers(node.a, UnitId::none, decimals)), leaf(trace_[node.b]));
        case NodeKind::looked_up: return looked_up_formula(node, numbers(node.a, UnitId::celsius, decimals));
        default: return leaf(node);
    }
}

Formula Setter::terms(std::int32_t index, UnitId unit, int decimals) {
    const TraceNode& node = trace_[index];
    const bool is_sum = node.kind == NodeKind::sum;
    if (!is_sum && node.kind != NodeKind::difference) {
        return Formula::of(Kind::row, {Formula::leaf(Kind::number, term(node, unit, decimals))});
    }
    Formula first = terms(node.a, unit, decimals);
    return joined(is_sum ? "+" : minus_sign, std::move(first),
                  Formula::leaf(Kind::number, term(trace_[node.b], unit, decimals)));
}

/// One term of a sum, in the sum's unit: as typed where it was typed in that unit, else to the sum's decimals.
std::string Setter::term(const TraceNode& node, UnitId unit, int decimals) {
    if (const Reading* reading = typed_reading(node)) {
        // A Celsius temperature and 273.15 are added as they stand: T = 21.4 + 273.15 K.
        const bool degrees = info(reading->unit).measure == Measure::temperature;
        return converted(node.input, *reading, degrees ? UnitId::celsius : unit, decimals);
    }
    if (node.kind == NodeKind::constant && node.constant == Constant::celsius_zero) return number(node.value, 2);
    if (unit == UnitId::kelvin) return number(node.value, decimals);
    return number(from_base(node.value, unit), decimals);
}

Formula Setter::leaf(const TraceNode& node) {
    if (node.kind == NodeKind::input) return input_leaf(node);
    if (node.kind == NodeKind::constant) return constant_leaf(node);
    if (node.kind == NodeKind::step) {
        if (const WorkingStep* step = earlier(node.output)) return step_leaf(*step);
    }
    return Formula::leaf(Kind::number, format_significant(node.value, 6, conventions_.decimal_sign));
}

Formula Setter::input_leaf(const TraceNode& node) {
    if (node.input == Input::meniscus_ring) {
        return with_number(from_base(node.value, UnitId::millilitre), 3,
                           named_unit(UnitId::millilitre, conventions_.volume_unit));
    }
    if (const Reading* reading = typed_reading(node)) {
        const UnitId unit = unit_in_formulas(info(reading->unit).measure, pressure_unit_, conventions_);
        return with_unit(converted(node.input, *reading, unit, decimals_in(*reading, unit)), unit);
    }
    if (node.input == Input::outdoor_temperature) return with_number(node.value, 1, UnitId::celsius);
    if (node.input == Input::molar_mass) {
        // Abridged atomic weights have at most three decimals; fewer where a class rounds them.
        return with_unit(trimmed(from_base(node.value, UnitId::gram_per_mole), 3), UnitId::gram_per_mole);
    }
    return trimmed_with_unit(node.value, 5, "m/s²");
}

/// What an earlier step came to, in the unit that this one needs.
Formula Setter::step_leaf(const WorkingStep& step) {
    const double value = in_unit(step.output, step.value, step.unit);
    const Measure measure = info(step.unit).measure;
    const UnitId wanted = measure == Measure::pressure ? pressure_unit_
                          : measure == Measure::amount ? amount_unit_
                                                       : step.unit;
    if (wanted == step.unit) return with_number(value, step.shown_decimals, step.unit);
    const int guard = step.shown_decimals - step.decimals;
    const double other = from_base(step.value, wanted);
    const Written from{number(value, step.shown_decimals), step.unit};
    const Written to{number(other, decimals_for(other, step.figures + guard)), wanted};
    conversions_.push_back(conversion_line(from, to, conventions_));
    return with_unit(to.number, wanted);
}

/// A product comes out in the unit of its factors; where the step is shown in another, that is said.
void Setter::convert_result(const WorkingStep& step) {
    const UnitId raw = step.output == Output::column_pressure   ? UnitId::pascal
                       : step.output == Output::amount_of_metal ? UnitId::mole
                                                                : step.unit;
    if (raw == step.unit) return;
    const double value = from_base(step.value, raw);
    const int guard = step.shown_decimals - step.decimals;
    const Written from{number(value, decimals_for(value, step.figures + guard)), raw};
    const Written to{number(from_base(step.value, step.unit), step.shown_decimals), step.unit};
    conversions_.push_back(conversion_line(from, to, conventions_));
}

/// A typed reading in `unit`, and the line that says so where it was typed in another. `decimals` count only where
/// more than the decimal sign moves.
std::string Setter::converted(Input input, const Reading& reading, UnitId unit, int decimals) {
    // Where nobody typed a unit, it goes by the name that the conventions give it.
    const bool untyped = reading.number.unit == UnitId::none;
    if ((untyped ? named_unit(reading.unit, conventions_.volume_unit) : reading.unit) == unit) return typed(reading);
    const auto at = static_cast<std::size_t>(input);
    const bool same_measure = info(reading.unit).measure == info(unit).measure;
    if (same_measure && only_moves_the_point(reading.unit, unit)) decimals = decimals_in(reading, unit);
    // What is not of the unit's measure is water weighed for its volume.
    const Written to{number(same_measure ? from_base(reading.base, unit) : from_base(measured_[input], unit), decimals),
                     unit};
    if (converted_[at] == unit) return to.number;
    converted_[at] = unit;
    const Written from{typed(reading), reading.unit};
    if (same_measure) {
        conversions_.push_back(conversion_line(from, to, conventions_));
    } else if (info(reading.unit).measure == Measure::mass) {
        conversions_.push_back(water_weighed_line(from, reading.base / measured_[input], to, conventions_));
    }
    return to.number;
}

const Reading* Setter::typed_reading(const TraceNode& node) const {
    if (node.kind != NodeKind::input || node.input == Input::meniscus_ring) return nullptr;
    const Field field = field_of(node.input);
    return field != Field::count && readings_[field].there ? &readings_[field] : nullptr;
}

const WorkingStep* Setter::earlier(Output output) const {
    for (const WorkingStep& step : earlier_) {
        if (step.output == output) return &step;
    }
    return nullptr;
}

std::int32_t Setter::chosen(const TraceNode& node) const {
    return trace_[node.b].value < trace_[node.a].value ? node.b : node.a;
}

/// The unit in which a sum inside a fraction is shown: that of the step it contains.
UnitId Setter::unit_of_node(std::int32_t index, UnitId fallback) const {
    const TraceNode& node = trace_[index];
    if (node.kind == NodeKind::step) return shown_unit(node.output, readings_, conventions_);
    if (node.kind == NodeKind::sum || node.kind == NodeKind::difference) return unit_of_node(node.a, fallback);
    return fallback;
}

/// The decimals of a sum inside a fraction: those of the steps it compares, not those of the fraction's result.
int Setter::decimals_of_node(std::int32_t index, int fallback) const {
    const TraceNode& node = trace_[index];
    if (node.kind == NodeKind::sum || node.kind == NodeKind::difference) return decimals_of_node(node.a, fallback);
    if (node.kind == NodeKind::step && node.output != Output::accepted_value) {
        if (const WorkingStep* step = earlier(node.output)) return step->shown_decimals;
    }
    return fallback;
}

Formula Setter::constant_leaf(const TraceNode& node) const {
    switch (node.constant) {
        case Constant::standard_temperature: return with_unit(trimmed(node.value, 4), UnitId::kelvin);
        case Constant::standard_pressure:
        case Constant::pressure_at_sea_level:
            // Six figures: 101.325 kPa are 760 mmHg and not 759.99989.
            return with_unit(without_end_zeros(format_significant(from_base(node.value, pressure_unit_), 6, conventions_.decimal_sign),
                                               conventions_.decimal_sign),
                             pressure_unit_);
        case Constant::molar_gas_constant: return with_number(node.value, 5, UnitId::joule_per_mole_kelvin);
        case Constant::sea_level_temperature: return with_number(node.value, 2, UnitId::kelvin);
        case Constant::lapse_rate: return with_unit_text(number(node.value, 4), "K/m");
        case Constant::air_gas_constant: return with_unit_text(number(node.value, 2), "J/(kg·K)");
        case Constant::free_fall: return with_unit_text(number(node.value, 5), "m/s²");
        case Constant::hundred_percent: return with_number(from_base(node.value, UnitId::percent), 0, UnitId::percent);
        case Constant::mercury_to_zero:
        case Constant::gravity_to_standard: return Formula::leaf(Kind::number, number(node.value, 5));
        case Constant::known_value:
            if (readings_.target == Target::gas_constant) return with_number(node.value, 5, UnitId::joule_per_mole_kelvin);
            return with_number(from_base(node.value, UnitId::gram_per_mole), 3, UnitId::gram_per_mole);
        case Constant::second_molar_mass:
            return with_unit(trimmed(from_base(node.value, UnitId::gram_per_mole), 3), UnitId::gram_per_mole);
        default: return Formula::leaf(Kind::number, trimmed(node.value, 4));
    }
}

Formula Setter::with_number(double value, int decimals, UnitId unit) const {
    return with_unit(number(value, decimals), unit);
}

Formula Setter::trimmed_with_unit(double value, int decimals, std::string unit) const {
    return with_unit_text(trimmed(value, decimals), std::move(unit));
}

std::string Setter::number(double value, int decimals) const {
    return format_fixed(value, decimals, conventions_.decimal_sign, conventions_.rounding);
}

/// At most `decimals` decimals, without zeros at the end that nobody wrote.
std::string Setter::trimmed(double value, int decimals) const {
    return without_end_zeros(number(value, decimals), conventions_.decimal_sign);
}

/// As typed; the mean of several readings with one digit more.
std::string Setter::typed(const Reading& reading) const {
    if (reading.doubt.count > 1) {
        return number(from_base(reading.base, reading.unit), std::clamp(1 - reading.last_place, 0, 12));
    }
    return number(reading.number.value, std::clamp(-reading.last_place, 0, 12));
}

}  // namespace overwater
