#include "core/result/assess.hpp"

#include <cmath>
#include <string>

#include "core/matter/constants.hpp"
#include "core/quantity/units.hpp"
#include "core/result/evaluate.hpp"
#include "core/result/refusals.hpp"

namespace overwater {

namespace {

double molar_mass_by(const Conventions& conventions, Metal metal) {
    const double full = molar_mass_of(metal).in(gram_per_mole);
    const auto rounded = [full](int place) {
        return MolarMass::from(round_to_place(full, place), gram_per_mole).si();
    };
    switch (conventions.molar_mass_digits) {
        case Conventions::MolarMassDigits::two_decimals: return rounded(-2);
        case Conventions::MolarMassDigits::one_decimal: return rounded(-1);
        case Conventions::MolarMassDigits::whole: return rounded(0);
        case Conventions::MolarMassDigits::abridged: break;
    }
    return molar_mass_of(metal).si();
}

Measured<double> measured_from(const Readings& readings, const Conventions& conventions) {
    Measured<double> measured;
    Setup& setup = measured.setup;
    for (std::size_t i = 0; i < input_count; ++i) {
        const auto input = static_cast<Input>(i);
        const Field field = field_of(input);
        if (field == Field::count || !readings[field].there) continue;
        measured[input] = readings[field].base;
        setup.present.add(field);
    }
    if (readings.metal) setup.present.add(Field::metal);
    if (readings.acid) setup.present.add(Field::acid);
    if (readings.closed_end != ClosedEnd::unknown) setup.present.add(Field::number_at_closed_end);
    if (readings.liquid_stands != LiquidStands::unknown) setup.present.add(Field::liquid_stands);
    setup.closed_end = readings.closed_end;
    setup.liquid_stands = readings.liquid_stands;
    if (readings.metal) {
        const Reaction& equation = reaction(*readings.metal, readings.acid.value_or(Acid::hydrochloric));
        setup.gas_per_metal = equation.gas_per_metal;
        setup.acid_per_metal = equation.acid_per_metal;
        measured[Input::molar_mass] = molar_mass_by(conventions, *readings.metal);
        setup.acid_limits = !equation.with_water && readings.acid && setup.present.has(Field::acid_volume) &&
                            setup.present.has(Field::acid_concentration);
    }
    measured[Input::gravity] = standard_gravity.si();
    const StandardState state = standard_state(conventions);
    setup.standard_celsius = state.temperature.in_celsius();
    setup.standard_pressure = state.pressure.si();
    setup.vapour_subtracted = conventions.vapour != Conventions::Vapour::not_subtracted;
    return measured;
}

bool must_be_positive(Output output) { return output != Output::column_pressure && output != Output::percent_error; }

/// Why a computed value cannot be, or nothing.
std::optional<Message> refused_value(Output output, double value) {
    if (std::isfinite(value) && (value > 0 || !must_be_positive(output))) return std::nullopt;
    if (output == Output::gas_volume && std::isfinite(value)) return Message{"refusal.no_gas"};
    if (output == Output::dry_gas_pressure && std::isfinite(value)) return Message{"refusal.no_dry_pressure"};
    return Message{"refusal.out_of_range"};
}

class Assessor {
public:
    Assessor(Assessment& assessment) : all_(assessment) {}

    void settle() {
        for (std::size_t i = 0; i < output_count; ++i) settle(static_cast<Output>(i));
        all_.outcome = evaluate(all_.measured, Method{}, ready_);
        for (std::size_t i = 0; i < output_count; ++i) examine(static_cast<Output>(i));
        all_.outcome.ready = ready_;
    }

private:
    OutputState& state(Output o) { return all_.states[static_cast<std::size_t>(o)]; }

    /// From the readings alone: does the output wait, or is it refused?
    void settle(Output output) {
        OutputState& own = state(output);
        own = OutputState{};
        own.kind = OutputState::Kind::value;
        const Setup& setup = all_.measured.setup;
        const Needs needs = needs_of(output, setup);
        const FieldSet missing = needs.fields - setup.present;
        if (!missing.empty()) {
            own.kind = OutputState::Kind::waiting;
            own.waiting_for = missing;
        }
        FieldSet used = needs.fields;
        if (output == Output::gas_volume && setup.closed_end == ClosedEnd::largest) used.add(Field::end_space);
        if (output == Output::amount_of_metal) used.add(Field::purity);
        for (const Check& check : all_.checks) {
            if (check.weight == Check::Weight::refusal && used.has(check.field)) refuse(own, check.message);
        }
        for (std::size_t i = 0; i < output_count; ++i) {
            const auto other = static_cast<Output>(i);
            if (needs.outputs.has(other)) inherit(own, state(other));
        }
        if (own.kind == OutputState::Kind::value) ready_.add(output);
    }

    static void refuse(OutputState& own, const Message& reason) {
        if (own.kind == OutputState::Kind::not_possible) return;
        own.kind = OutputState::Kind::not_possible;
        own.reason = reason;
    }

    static void inherit(OutputState& own, const OutputState& other) {
        if (other.kind == OutputState::Kind::not_possible) refuse(own, other.reason);
        if (other.kind != OutputState::Kind::waiting) return;
        own.waiting_for = own.waiting_for | other.waiting_for;
        if (own.kind == OutputState::Kind::value) own.kind = OutputState::Kind::waiting;
    }

    /// From the value: is it one that can be?
    void examine(Output output) {
        OutputState& own = state(output);
        if (own.kind != OutputState::Kind::value) return;
        const Needs needs = needs_of(output, all_.measured.setup);
        for (std::size_t i = 0; i < output_count; ++i) {
            if (needs.outputs.has(static_cast<Output>(i))) inherit(own, state(static_cast<Output>(i)));
        }
        if (own.kind == OutputState::Kind::value) {
            if (const auto reason = refused_value(output, all_.outcome[output])) refuse(own, *reason);
        }
        if (own.kind != OutputState::Kind::value) ready_.remove(output);
    }

    Assessment& all_;
    OutputSet ready_;
};

}  // namespace

Assessment assess(const Readings& readings, const Conventions& conventions) {
    Assessment assessment;
    assessment.readings = readings;
    assessment.measured = measured_from(readings, conventions);
    assessment.checks = refusals(readings);
    Assessor(assessment).settle();
    add_notes(assessment);
    return assessment;
}

Outcome<double> outcome_by(const Assessment& assessment, const Method& method) {
    return evaluate(assessment.measured, method, assessment.outcome.ready);
}

}  // namespace overwater
