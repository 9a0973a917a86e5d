#include "core/result/assess.hpp"

#include <cmath>
#include <string>

#include "core/bench/meniscus.hpp"
#include "core/matter/air.hpp"
#include "core/matter/constants.hpp"
#include "core/matter/vapour_table.hpp"
#include "core/matter/water.hpp"
#include "core/quantity/units.hpp"
#include "core/result/evaluate.hpp"
#include "core/result/refusals.hpp"
#include "core/result/sense_checks.hpp"

namespace overwater {

namespace {

/// Air outside at sea level where nobody measured it: that of the standard atmosphere (method.md, section 2).
constexpr double celsius_of_standard_air = atmosphere_sea_level_kelvin - celsius_zero_in_kelvin;

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

/// What the tube held at the start, and what its bore and the water weighed for its end come to.
void set_up_tube(Measured<double>& measured, const Readings& readings) {
    Setup& setup = measured.setup;
    if (setup.present.has(Field::start_reading)) {
        setup.start = Start::reading;
    } else if (setup.present.has(Field::starting_bubble)) {
        setup.start = Start::bubble;
    }
    setup.start_level_known =
        setup.present.has(Field::start_level_difference) && setup.liquid_stands != LiquidStands::level;
    if (readings[Field::tube_bore].there) {
        const auto ring = meniscus_ring(readings[Field::tube_bore].base);
        measured[Input::meniscus_ring] = ring.value_or(0.0);
        setup.ring_known = ring.has_value() && setup.closed_end == ClosedEnd::largest;
    }
    const Reading& end = readings[Field::end_space];
    if (end.there && info(end.unit).measure == Measure::mass) {
        // Water weighed: V = m/rho, at the temperature of the run where it is known; 20 °C else, 0.1 % at the most.
        const double celsius = readings[Field::temperature].there ? readings[Field::temperature].base : 20.0;
        measured[Input::end_space] = end.base / water_density(Temperature<>::celsius(celsius)).si();
    }
}

void set_up_pressures(Measured<double>& measured, const Readings& readings, const Conventions& conventions) {
    Setup& setup = measured.setup;
    setup.pressure_kind = readings.pressure_kind;
    const double celsius = readings[Field::temperature].base;
    setup.vapour_looked_up_at = celsius;
    const auto table = [&](VapourTable which) {
        const auto between = conventions.vapour_rows == Conventions::VapourRows::nearest ? BetweenRows::nearest
                                                                                         : BetweenRows::interpolated;
        setup.vapour = VapourFrom::looked_up;
        if (!readings[Field::temperature].there) {
            // The table waits for the temperature, not for a value of one's own.
            setup.present.add(Field::own_vapour_pressure);
            return;
        }
        if (const auto value = vapour_from_table(which, between, celsius)) {
            measured[Input::vapour_value] = *value;
            setup.present.add(Field::own_vapour_pressure);
        } else {
            setup.vapour = VapourFrom::formula;
        }
    };
    switch (conventions.vapour) {
        case Conventions::Vapour::table:
            setup.present.remove(Field::own_vapour_pressure);
            table(VapourTable::rounded_formula);
            break;
        case Conventions::Vapour::older_table:
            setup.present.remove(Field::own_vapour_pressure);
            table(VapourTable::older);
            break;
        case Conventions::Vapour::own_value: setup.vapour = VapourFrom::looked_up; break;
        case Conventions::Vapour::not_subtracted: setup.vapour = VapourFrom::not_subtracted; break;
        case Conventions::Vapour::formula: break;
    }
    if (!readings[Field::outdoor_temperature].there) {
        measured[Input::outdoor_temperature] =
            celsius_of_standard_air - atmosphere_lapse_rate * measured[Input::height_above_sea_level];
    }
}

void set_up_result(Measured<double>& measured, const Conventions& conventions) {
    Setup& setup = measured.setup;
    const StandardState state = standard_state(conventions);
    setup.standard_celsius = state.temperature.in_celsius();
    setup.standard_pressure = state.pressure.si();
    setup.converted = conventions.conversion == Conventions::Conversion::standard_conditions;
    setup.accepted_typed = conventions.accepted == Conventions::Accepted::typed || !setup.converted;
    setup.real_gas = setup.converted && conventions.accepted == Conventions::Accepted::real;
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
    setup.mass_from = readings.mass_from;
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
        setup.atomic_number = atomic_number_of(*readings.metal);
        setup.molar_mass_of_salt =
            molar_mass_of_salt(*readings.metal, readings.acid.value_or(Acid::hydrochloric)).si();
        measured[Input::molar_mass] = molar_mass_by(conventions, *readings.metal);
        setup.acid_limits = !equation.with_water && readings.acid && setup.present.has(Field::acid_volume) &&
                            setup.present.has(Field::acid_concentration);
    }
    measured[Input::gravity] = standard_gravity.si();
    set_up_tube(measured, readings);
    set_up_pressures(measured, readings, conventions);
    set_up_result(measured, conventions);
    return measured;
}

bool must_be_positive(Output output) {
    return output != Output::column_pressure && output != Output::percent_error && output != Output::gas_at_start;
}

/// Why a computed value cannot be, or nothing.
std::optional<Message> refused_value(Output output, double value) {
    if (std::isfinite(value) && (value > 0 || !must_be_positive(output))) return std::nullopt;
    if ((output == Output::gas_volume || output == Output::gas_at_end) && std::isfinite(value)) {
        return Message{"refusal.no_gas"};
    }
    if (output == Output::mass && std::isfinite(value)) return Message{"refusal.no_mass"};
    if (output == Output::pressure_at_bench && std::isfinite(value)) return Message{"refusal.no_air"};
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
        const FieldSet missing = needs.fields - setup.present;
        if (!missing.empty()) {
            own.kind = OutputState::Kind::waiting;
            own.waiting_for = missing;
        }
        FieldSet used = needs.fields;
        const bool by_scale = used.has(Field::scale_reading) || used.has(Field::start_reading);
        if (by_scale && setup.closed_end == ClosedEnd::largest) used.add(Field::end_space);
        if (output == Output::amount_of_metal || output == Output::molar_mass_found) used.add(Field::purity);
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
            if (const auto reason = refused_for_acid(output)) refuse(own, *reason);
        }
        if (own.kind != OutputState::Kind::value) ready_.remove(output);
    }

    /// Where the acid gives out, metal is left over, and the gas does not tell of all of it.
    std::optional<Message> refused_for_acid(Output output) const {
        const bool of_all_metal = output == Output::molar_mass_found || output == Output::purity_found;
        if (!of_all_metal || !all_.measured.setup.acid_limits || !(all_.outcome[Output::acid_excess] < 1)) {
            return std::nullopt;
        }
        return Message{"refusal.acid_gave_out"};
    }

    Assessment& all_;
    OutputSet ready_;
};

}  // namespace

Assessment assess(const Readings& readings, const Conventions& conventions) {
    Assessment assessment;
    assessment.readings = readings;
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

Outcome<double> outcome_by(const Assessment& assessment, const Method& method) {
    return evaluate(assessment.measured, method, assessment.outcome.ready);
}

}  // namespace overwater
