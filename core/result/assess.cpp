#include "core/result/assess.hpp"

#include <cmath>
#include <optional>

#include "core/result/evaluate.hpp"
#include "core/result/refusals.hpp"
#include "core/result/sense_checks.hpp"

namespace overwater {

namespace {

/// A share is not above the whole, except that a purity of 101 % tells of the readings' doubt.
bool beyond_whole(Output output, double value) { return output == Output::alloy_share && value > 1; }

bool must_be_positive(Output output) {
    return output != Output::column_pressure && output != Output::percent_error && output != Output::gas_at_start;
}

/// Why a computed value cannot be, or nothing.
std::optional<Message> refused_value(Output output, double value) {
    if (std::isfinite(value) && !beyond_whole(output, value) && (value > 0 || !must_be_positive(output))) {
        return std::nullopt;
    }
    if ((output == Output::gas_volume || output == Output::gas_at_end) && std::isfinite(value)) {
        return Message{"refusal.no_gas"};
    }
    if (output == Output::mass && std::isfinite(value)) return Message{"refusal.no_mass"};
    if (output == Output::pressure_at_bench && std::isfinite(value)) return Message{"refusal.no_air"};
    if (output == Output::alloy_share && std::isfinite(value)) return Message{"refusal.no_alloy"};
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
        const Setup& setup = all_.measured.setup;
        if (!is_asked(output, setup)) {
            own.kind = OutputState::Kind::not_asked;
            return;
        }
        own.kind = OutputState::Kind::value;
        const Needs needs = needs_of(output, setup);
        const FieldSet optional = not_waited_for(output, needs.fields);
        const FieldSet missing = (needs.fields | unreadable(optional)) - setup.present;
        if (!missing.empty()) {
            own.kind = OutputState::Kind::waiting;
            own.waiting_for = missing;
        }
        const FieldSet used = needs.fields | (optional & setup.present);
        for (const Check& check : all_.checks) {
            if (check.weight == Check::Weight::refusal && used.has(check.field)) refuse(own, check.message);
        }
        for (std::size_t i = 0; i < output_count; ++i) {
            const auto other = static_cast<Output>(i);
            if (needs.outputs.has(other)) inherit(own, state(other));
        }
        if (own.kind == OutputState::Kind::value) ready_.add(output);
    }

    /// Readings that count where they were typed, so that one of them may be refused.
    FieldSet not_waited_for(Output output, FieldSet needed) const {
        const Setup& setup = all_.measured.setup;
        FieldSet fields;
        if (needed.has(Field::scale_reading) || needed.has(Field::start_reading)) {
            fields.add(Field::tube_factor);
            if (setup.closed_end == ClosedEnd::largest) fields.add(Field::end_space);
        }
        switch (output) {
            case Output::amount_of_metal:
            case Output::molar_mass_found:
            case Output::equivalent_mass: fields.add(Field::purity); break;
            case Output::water_vapour_pressure: fields.add(Field::water_activity); break;
            case Output::gas_volume:
                fields.add(Field::injected_volume);
                if (setup.apparatus == Apparatus::pressure_sensor) fields.add(Field::acid_volume);
                break;
            default: break;
        }
        return fields;
    }

    /// Those of the fields that have a text which is no number yet: counting as blank it would change the result unseen.
    FieldSet unreadable(FieldSet fields) const {
        FieldSet found;
        for (std::size_t i = 0; i < static_cast<std::size_t>(first_choice); ++i) {
            const auto field = static_cast<Field>(i);
            const Reading& reading = all_.readings[field];
            if (!fields.has(field) || reading.there) continue;
            if (reading.number.state != NumberText::State::blank) found.add(field);
        }
        return found;
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
            if (const auto reason = refused_for_flask(output)) refuse(own, *reason);
            if (const auto reason = refused_value(output, all_.outcome[output])) refuse(own, *reason);
            if (const auto reason = refused_for_acid(output)) refuse(own, *reason);
        }
        if (own.kind != OutputState::Kind::value) ready_.remove(output);
    }

    /// In a closed flask the pressure has to rise.
    std::optional<Message> refused_for_flask(Output output) const {
        const bool closed = all_.measured.setup.apparatus == Apparatus::pressure_sensor;
        if (!closed || output != Output::dry_gas_pressure || all_.outcome[output] > 0) return std::nullopt;
        return Message{"refusal.no_rise"};
    }

    /// Where the acid gives out, metal is left over, and the gas does not tell of all of it.
    std::optional<Message> refused_for_acid(Output output) const {
        const bool of_all_metal = output >= Output::molar_mass_found && output <= Output::alloy_share;
        if (!of_all_metal || !all_.acid_gives_out()) return std::nullopt;
        return Message{"refusal.acid_gave_out"};
    }

    Assessment& all_;
    OutputSet ready_;
};

}  // namespace

Assessment assess(const Readings& readings, const Conventions& conventions) {
    Assessment assessment;
    assessment.readings = readings;
    // The molar mass of an own reaction is kept while another substance is chosen, and counts for nothing there.
    if (readings.sample != Substance::own) {
        assessment.readings.typed[static_cast<std::size_t>(Field::molar_mass)].there = false;
    }
    assessment.conventions = conventions;
    assessment.measured = measured_from(readings, conventions);
    assessment.checks = refusals(readings);
    Assessor(assessment).settle();
    add_sense_checks(assessment);
    return assessment;
}

Output headline_output(const Conventions& conventions) {
    return conventions.conversion == Conventions::Conversion::none ? Output::molar_volume_bench
                                                                   : Output::molar_volume_standard;
}

Output sought_output(const Conventions& conventions, Target target) {
    return sought_output(conventions.conversion != Conventions::Conversion::none, target);
}

Outcome<double> outcome_by(const Assessment& assessment, const Method& method) {
    return evaluate(assessment.measured, method, assessment.outcome.ready);
}

}  // namespace overwater
