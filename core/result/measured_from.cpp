#include <cmath>

#include "core/bench/meniscus.hpp"
#include "core/matter/air.hpp"
#include "core/matter/barometer.hpp"
#include "core/matter/constants.hpp"
#include "core/matter/reaction.hpp"
#include "core/matter/vapour_table.hpp"
#include "core/matter/water.hpp"
#include "core/quantity/units.hpp"
#include "core/result/assess.hpp"
#include "core/result/known_value.hpp"

/// From what was typed and chosen to what the model works with.

namespace overwater {

namespace {

/// Air outside at sea level where nobody measured it: that of the standard atmosphere (method.md, section 2).
constexpr double celsius_of_standard_air = atmosphere_sea_level_kelvin - celsius_zero_in_kelvin;

double molar_mass_by(const Conventions& conventions, Substance metal) {
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
    const bool in_flask = setup.apparatus == Apparatus::pressure_sensor;
    setup.pressure_kind = in_flask ? PressureKind::at_the_bench : readings.pressure_kind;
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
    if (in_flask || (setup.apparatus == Apparatus::gas_syringe && readings.dry)) setup.vapour = VapourFrom::none;
    if (!readings[Field::outdoor_temperature].there) {
        measured[Input::outdoor_temperature] =
            celsius_of_standard_air - atmosphere_lapse_rate * measured[Input::height_above_sea_level];
    }
}

/// A mercury column is brought to 0 °C by the barometer's own temperature, else the run's; and to the standard acceleration
/// where the latitude is known. The column of water follows the same acceleration.
void set_up_gravity(Measured<double>& measured, const Readings& readings) {
    Setup& setup = measured.setup;
    measured[Input::gravity] = standard_gravity.si();
    const auto base = [&](Field field) { return readings[field].base; };
    if (readings[Field::latitude].there && std::fabs(base(Field::latitude)) <= 90) {
        const double height = readings[Field::height_above_sea_level].there ? base(Field::height_above_sea_level) : 0.0;
        measured[Input::gravity] = local_gravity(base(Field::latitude), height);
        setup.gravity_to_standard = gravity_to_standard(base(Field::latitude), height);
    }
    const bool own = readings[Field::barometer_temperature].there;
    if (!own && !readings[Field::temperature].there) return;
    setup.present.add(Field::barometer_temperature);
    setup.mercury_to_zero = mercury_to_zero(base(own ? Field::barometer_temperature : Field::temperature));
}

/// The vessel decides where its gas stands: in a syringe and over weighed water at the pressure of the room.
void set_up_vessel(Setup& setup, const Readings& readings) {
    setup.apparatus = readings.apparatus;
    if (has_column(setup)) {
        if (setup.apparatus != Apparatus::generator_flask) setup.present.remove(Field::injected_volume);
        return;
    }
    setup.liquid_stands = LiquidStands::level;
    setup.present.add(Field::liquid_stands);
    if (setup.apparatus != Apparatus::gas_syringe) {
        // What was typed for a tube is kept, and counts for nothing here.
        for (const Field field : {Field::start_reading, Field::starting_bubble, Field::scale_reading, Field::tube_factor,
                                  Field::injected_volume}) {
            setup.present.remove(field);
        }
        return;
    }
    setup.closed_end = ClosedEnd::zero;
    setup.present.add(Field::number_at_closed_end);
    setup.present.remove(Field::starting_bubble);
}

/// What is weighed and what it gives.
void set_up_reaction(Measured<double>& measured, const Readings& readings, const Conventions& conventions) {
    Setup& setup = measured.setup;
    setup.target = readings.target;
    setup.gas = gas_of(readings);
    if (!readings.sample) return;
    const Substance sample = *readings.sample;
    const Acid acid = readings.acid.value_or(Acid::hydrochloric);
    const Reaction& equation = reaction(sample, acid);
    setup.own_reaction = sample == Substance::own;
    if (setup.own_reaction) {
        setup.gas_per_sample = readings[Field::gas_per_mole].base;
        setup.acid_per_sample = readings[Field::acid_per_mole].there ? readings[Field::acid_per_mole].base : 0.0;
        setup.atomic_number = setup.molar_mass_of_salt = 0;
    } else {
        setup.gas_per_sample = equation.gas_per_sample;
        setup.acid_per_sample = equation.acid_per_sample;
        setup.atomic_number = atomic_number_of(sample);
        setup.molar_mass_of_salt = molar_mass_of_salt(sample, acid).si();
        measured[Input::molar_mass] = molar_mass_by(conventions, sample);
        setup.present.remove(Field::molar_mass);
    }
    // Of how much substance the acid has to be enough for is known with its molar mass only.
    const bool counted = !setup.own_reaction || setup.present.has(Field::molar_mass);
    setup.acid_limits = counted && !equation.with_water && setup.acid_per_sample > 0 && readings.acid &&
                        setup.present.has(Field::acid_volume) && setup.present.has(Field::acid_concentration);
    if (readings.second && *readings.second != sample) {
        setup.present.add(Field::second_metal);
        setup.second_molar_mass = molar_mass_by(conventions, *readings.second);
        setup.gas_per_second = reaction(*readings.second, acid).gas_per_sample;
    }
}

void set_up_result(Measured<double>& measured, const Readings& readings, const Conventions& conventions) {
    Setup& setup = measured.setup;
    const StandardState state = standard_state(conventions);
    setup.standard_celsius = state.temperature.in_celsius();
    setup.standard_pressure = state.pressure.si();
    setup.converted = conventions.conversion == Conventions::Conversion::standard_conditions;
    setup.accepted_typed = conventions.accepted == Conventions::Accepted::typed || !setup.converted;
    setup.real_gas = setup.converted && conventions.accepted == Conventions::Accepted::real;
    setup.known = known_otherwise(readings, setup, sought_output(setup.converted, setup.target));
}

}  // namespace

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
    if (readings[Field::gas_per_mole].there) setup.present.add(Field::gas_per_mole);
    setup.mass_from = readings.mass_from;
    if (readings.sample) setup.present.add(Field::metal);
    if (readings.acid) setup.present.add(Field::acid);
    if (readings.closed_end != ClosedEnd::unknown) setup.present.add(Field::number_at_closed_end);
    if (readings.liquid_stands != LiquidStands::unknown) setup.present.add(Field::liquid_stands);
    setup.closed_end = readings.closed_end;
    setup.liquid_stands = readings.liquid_stands;
    set_up_vessel(setup, readings);
    set_up_reaction(measured, readings, conventions);
    set_up_gravity(measured, readings);
    set_up_tube(measured, readings);
    set_up_pressures(measured, readings, conventions);
    set_up_result(measured, readings, conventions);
    return measured;
}

}  // namespace overwater
