#include "core/explain/working.hpp"

#include "core/explain/figures.hpp"
#include "core/explain/setter.hpp"
#include "core/explain/symbols.hpp"
#include "core/quantity/number_format.hpp"
#include "core/quantity/number_text.hpp"
#include "core/result/evaluate.hpp"

namespace overwater {

namespace {

using NodeKind = TraceNode::Kind;

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

int figures_shown(Output output, double value, UnitId unit, int decimals) {
    return parse_number(format_fixed(in_unit(output, value, unit), decimals, DecimalSign::point), Measure::number).figures;
}

UnitId shown_unit(Output output, const Readings& readings, const Conventions& conventions) {
    const UnitId usual = unit_of(output);
    if (usual != UnitId::kilopascal) return named_unit(usual, conventions.volume_unit);
    if (conventions.pressure_unit != UnitId::none) return conventions.pressure_unit;
    const Reading& barometer = readings[Field::barometer];
    return barometer.there ? barometer.unit : usual;
}

Working::Working(const Assessment& assessment, const Conventions& conventions, std::span<const StatedStep> stated) {
    const auto traced = assessment.measured.lifted<Traced>(
        [this](Input input, double value) { return Traced::input(trace_, input, value); });
    Outcome<Traced> known;
    for (const StatedStep& step : stated) {
        known.put(step.output, Traced::stated(trace_, step.output, step.value, step.last_digit));
    }
    const OutputSet ready = assessment.outcome.ready;
    evaluate(traced, RightMethod{}, ready - known.ready, known);
    const std::vector<Figured> figures = figures_through(
        trace_, assessment.readings, conventions.round == Conventions::Round::at_each_step, conventions.rounding);
    Setter setter(trace_, assessment, conventions, steps_);
    for (std::size_t i = 0; i < output_count; ++i) {
        const auto output = static_cast<Output>(i);
        if (!ready.has(output)) continue;
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
        if (output == Output::percent_error) {
            // A difference of neighbours leaves no figure to count: as many as its one decimal leaves.
            step.decimals = 1;
            step.figures = figures_shown(output, step.value, step.unit, step.decimals);
        }
        step.shown_decimals = precision.exact || !has_guard(trace_, expression) ? step.decimals : step.decimals + 1;
        step.symbol = symbol_of(output, assessment.readings);
        step.letters = setter.letters(expression);
        setter.set_numbers(step, expression);
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
