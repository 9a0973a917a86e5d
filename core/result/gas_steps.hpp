#pragma once

#include "core/matter/air.hpp"
#include "core/matter/constants.hpp"
#include "core/matter/water.hpp"
#include "core/result/measured.hpp"
#include "core/result/method.hpp"
#include "core/result/method_numbers.hpp"
#include "core/result/outcome.hpp"
#include "core/result/tags.hpp"

namespace overwater {

/// The part of the model that is about the gas in the tube: its temperature, its pressure and its volume (method.md,
/// sections 1 and 2). What follows from them stands in evaluate.hpp.
template <class Real, class Way>
class GasSteps {
protected:
    GasSteps(const Measured<Real>& measured, const Way& method, OutputSet ready, const Outcome<Real>& known)
        : in_(measured), setup_(measured.setup), method_(method), out_(known) {
        out_.ready = ready;
    }

    using V = Quantity<dimension::Volume, Real>;
    using P = Quantity<dimension::Pressure, Real>;
    using N = Quantity<dimension::Amount, Real>;
    using M = Quantity<dimension::Mass, Real>;
    using T = Quantity<dimension::TemperatureDifference, Real>;
    using Vm = Quantity<dimension::MolarVolume, Real>;

    /// An exact number of the formulas, with its name.
    Real exact(Constant which, double value) const { return constant(in_[Input::gravity], which, value); }

    bool wants(Output o) const { return out_.ready.has(o); }
    bool has(Field f) const { return setup_.present.has(f); }

    template <class D>
    void set(Output o, Quantity<D, Real> q) {
        out_.si[static_cast<std::size_t>(o)] = named_step(o, q.si());
    }
    template <class D>
    Quantity<D, Real> get(Output o) const {
        return Quantity<D, Real>::si(out_[o]);
    }
    T kelvin_of(Output o) const { return get<dimension::TemperatureDifference>(o); }
    Vm molar_volume_of(Output o) const { return get<dimension::MolarVolume>(o); }
    Quantity<dimension::One, Real> number_of(Output o) const { return get<dimension::One>(o); }
    M mass_of(Output o) const { return get<dimension::Mass>(o); }
    P pressure_of(Output o) const { return get<dimension::Pressure>(o); }
    V volume_of(Output o) const { return get<dimension::Volume>(o); }
    N amount_of(Output o) const { return get<dimension::Amount>(o); }

    /// Section 2. One temperature serves the gas law, the vapour and the density of the column.
    void water() {
        const Temperature<Real> t = in_.temperature();
        if (wants(Output::absolute_temperature)) {
            const bool celsius = method_.temperature == Method::Temperature::celsius ||
                                 method_.temperature == Method::Temperature::celsius_both;
            set(Output::absolute_temperature,
                T::si(celsius ? t.in_celsius() : t.in_celsius() + exact(Constant::celsius_zero, celsius_zero())));
        }
        if (wants(Output::water_vapour_pressure)) set(Output::water_vapour_pressure, vapour());
        if (wants(Output::water_density)) {
            set(Output::water_density, Quantity<dimension::Density, Real>::si(looked_up(
                                           Function::water_density, t.in_celsius(), water_density(t).si())));
        }
    }

    /// Over the real liquid there is less vapour than over water: p = a p_sat.
    P vapour() const {
        const P water = vapour_of_water();
        return has(Field::water_activity) ? in_[Input::water_activity] * water : water;
    }

    /// A value from a table or a book was looked up at this temperature: it keeps the formula's slope, so that a doubt of
    /// the temperature still is a doubt of the vapour.
    P vapour_of_water() const {
        if (method_.vapour == Method::Vapour::celsius_number) {
            return P::si(in_.temperature().in_celsius() * exact(Constant::none, millimetre_of_mercury.factor));
        }
        const P value = vapour_at(in_.temperature());
        const double slip = slip_factor(method_.vapour);
        return slip == 1.0 ? value : exact(Constant::none, slip) * value;
    }

    P vapour_at(Temperature<Real> t) const {
        if (method_.vapour == Method::Vapour::of_25_celsius) {
            t = Temperature<Real>::celsius(exact(Constant::none, 25.0));
        } else if (const double rows = slip_in_rows(method_.vapour); rows != 0.0) {
            t = Temperature<Real>::celsius(t.in_celsius() + exact(Constant::none, rows));
        }
        const P formula = water_vapour_pressure(t);
        if (setup_.vapour != VapourFrom::looked_up) {
            return P::si(looked_up(Function::water_vapour_pressure, t.in_celsius(), formula.si()));
        }
        const double there = water_vapour_pressure(Temperature<>::celsius(setup_.vapour_looked_up_at)).si();
        return P::si(looked_up(Function::vapour_table, t.in_celsius(),
                               in_[Input::vapour_value] + (formula.si() - Real(there))));
    }

    void pressures() {
        if (wants(Output::pressure_at_bench)) set(Output::pressure_at_bench, pressure_at_bench());
        if (wants(Output::column_pressure)) set(Output::column_pressure, column(Input::level_difference));
        if (wants(Output::dry_gas_pressure)) {
            set(Output::dry_gas_pressure, dry(pressure_of(Output::column_pressure)));
        }
        if (wants(Output::start_dry_pressure)) {
            set(Output::start_dry_pressure, dry(column(Input::start_level_difference)));
        }
    }

    /// The barometer's reading, or what a weather report's comes to at the bench.
    P barometer() const {
        if (method_.barometer == Method::Barometer::one_atmosphere) {
            return P::si(exact(Constant::none, standard_atmosphere.si()));
        }
        if (method_.barometer == Method::Barometer::one_bar) {
            return P::si(exact(Constant::none, standard_state_pressure.si()));
        }
        if (method_.barometer == Method::Barometer::not_reduced) return in_.pressure(Input::barometer);
        return setup_.pressure_kind == PressureKind::at_the_bench ? P::si(barometer_read())
                                                                  : pressure_of(Output::pressure_at_bench);
    }

    Real barometer_read() const {
        const double slip = slip_factor(method_.barometer);
        return slip == 1.0 ? in_[Input::barometer] : exact(Constant::none, slip) * in_[Input::barometer];
    }

    P pressure_at_bench() const {
        using std::exp;
        using std::pow;
        const Real reported = barometer_read();
        if (setup_.pressure_kind == PressureKind::mercury_column) {
            return P::si(reported * exact(Constant::mercury_to_zero, setup_.mercury_to_zero) *
                         exact(Constant::gravity_to_standard, setup_.gravity_to_standard));
        }
        const Real height = in_[Input::height_above_sea_level];
        const Real lapse = exact(Constant::lapse_rate, atmosphere_lapse_rate);
        if (setup_.pressure_kind == PressureKind::altimeter_setting) {
            // The standard atmosphere inverted exactly (US Standard Atmosphere 1976 = ICAO Doc 7488).
            const Real p0 = exact(Constant::pressure_at_sea_level, standard_atmosphere.si());
            const Real t0 = exact(Constant::sea_level_temperature, atmosphere_sea_level_kelvin);
            return P::si(p0 * pow(pow(reported / p0, 1.0 / atmosphere_exponent) - lapse * height / t0,
                                  atmosphere_exponent));
        }
        // Reduced with the mean temperature of the layer, which is that of the air outside plus half the height's lapse.
        const Real outside = in_[Input::outdoor_temperature] + exact(Constant::celsius_zero, celsius_zero_in_kelvin);
        const Real mean = outside + lapse * height / exact(Constant::two, 2.0);
        return P::si(reported * exp(-(exact(Constant::free_fall, standard_gravity.si()) * height /
                                      (exact(Constant::air_gas_constant, atmosphere_air_gas_constant) * mean))));
    }

    P column(Input level) const {
        if (setup_.liquid_stands == LiquidStands::level) return P::si(exact(Constant::level_column, 0.0));
        const P column = density_of_column() * in_.template as<dimension::Acceleration>(Input::gravity) *
                         in_.template as<dimension::Length>(level);
        const double slip = slip_factor(method_.column_size);
        return slip == 1.0 ? column : exact(Constant::none, slip) * column;
    }

    Quantity<dimension::Density, Real> density_of_column() const {
        const double other = other_density(method_.column_size);
        if (other == 0.0) return get<dimension::Density>(Output::water_density);
        return Quantity<dimension::Density, Real>::si(exact(Constant::none, other));
    }

    P dry(P column) const {
        // In a closed flask the air and the vapour were there before: what the pressure rose by is the gas's own.
        if (setup_.apparatus == Apparatus::pressure_sensor) return in_.pressure(Input::pressure_after) - barometer();
        P p = barometer();
        if (setup_.liquid_stands != LiquidStands::level && method_.column != Method::Column::ignored) {
            const bool inside = setup_.liquid_stands == LiquidStands::higher_inside;
            const bool subtract = inside == (method_.column == Method::Column::right);
            p = subtract ? p - column : p + column;
        }
        if (!is_taken_off(setup_.vapour) || method_.vapour_use == Method::VapourUse::ignored) return p;
        const P vapour = pressure_of(Output::water_vapour_pressure);
        return method_.vapour_use == Method::VapourUse::added ? p + vapour : p - vapour;
    }

    /// Section 1. An upside-down scale counts from the open end: volume = capacity - reading + end space. A scale with 0
    /// at the closed end has counted its end already.
    V room_above(Input mark) const {
        using Way_of = Method::Volume;
        const V reading = read(mark);
        if (setup_.closed_end == ClosedEnd::zero) {
            return calibrated(method_.volume == Way_of::counted_from_capacity ? in_.volume(Input::tube_capacity) - reading
                                                                              : reading);
        }
        const bool as_if_upright =
            method_.volume == Way_of::reading_taken_as_gas || method_.volume == Way_of::reading_alone;
        const V seen = calibrated(as_if_upright ? reading : in_.volume(Input::tube_capacity) - reading);
        if (!has(Field::end_space) || method_.volume == Way_of::end_space_ignored ||
            method_.volume == Way_of::reading_alone) {
            return seen;
        }
        const V end_space = in_.volume(Input::end_space);
        return method_.volume == Way_of::end_space_subtracted ? seen - end_space : seen + end_space;
    }

    V calibrated(V scale) const {
        return has(Field::tube_factor) ? in_[Input::tube_factor] * scale : scale;
    }

    V read(Input mark) const {
        const V reading = in_.volume(mark);
        const auto write = mark == Input::scale_reading ? writing(method_.reading) : nullptr;
        return write == nullptr ? reading : V::si(rewritten(reading.si(), write));
    }

    /// The ring of liquid above the lowest point of the meniscus counts as gas nowhere: an upright scale added it, the
    /// inverted tube has it outside the gas. It cancels where the start was read on the same scale.
    V end_room() const {
        const V room = room_above(Input::scale_reading);
        if (!setup_.ring_known || setup_.start == Start::reading || method_.volume == Method::Volume::ring_ignored) {
            return room;
        }
        return room - exact(Constant::two, 2.0) * in_.volume(Input::meniscus_ring);
    }

    void volumes() {
        if (wants(Output::gas_at_end)) set(Output::gas_at_end, end_room());
        if (wants(Output::gas_at_start)) {
            set(Output::gas_at_start, setup_.start == Start::bubble ? in_.volume(Input::starting_bubble)
                                                                    : room_above(Input::start_reading));
        }
        if (!wants(Output::gas_volume)) return;
        const V volume = metal_gas();
        const double slip = slip_factor(method_.volume_scale);
        set(Output::gas_volume, slip == 1.0 ? volume : exact(Constant::none, slip) * volume);
    }

    V metal_gas() const {
        if (setup_.apparatus == Apparatus::displaced_water) {
            return in_.template as<dimension::Mass>(Input::displaced_mass) / get<dimension::Density>(Output::water_density);
        }
        if (setup_.apparatus == Apparatus::pressure_sensor) {
            const V flask = in_.volume(Input::flask_volume);
            return has(Field::acid_volume) ? flask - in_.volume(Input::acid_volume) : flask;
        }
        const V collected = new_gas();
        // What is injected into a closed flask drives as much air over.
        return has(Field::injected_volume) && method_.volume != Method::Volume::injected_ignored
                   ? collected - in_.volume(Input::injected_volume)
                   : collected;
    }

    /// Gas that came since the start, at the pressure of the end.
    V new_gas() const {
        if (setup_.start == Start::nothing) return end_room();
        if (method_.volume == Method::Volume::start_ignored) return volume_of(Output::gas_at_end);
        // n RT = (p_end - p_w) V_end - (p_start - p_w) V_start
        const V start = volume_of(Output::gas_at_start);
        const V counted = setup_.start_level_known
                              ? start * (pressure_of(Output::start_dry_pressure) / pressure_of(Output::dry_gas_pressure))
                                            .si()
                              : start;
        const V volume = volume_of(Output::gas_at_end) - counted;
        return method_.volume == Method::Volume::end_space_added_to_difference ? volume + in_.volume(Input::end_space)
                                                                               : volume;
    }

    double celsius_zero() const {
        return method_.temperature == Method::Temperature::whole_kelvin ? 273.0 : celsius_zero_in_kelvin;
    }
    const Measured<Real>& in_;
    const Setup& setup_;
    const Way& method_;
    Outcome<Real> out_;
};

}  // namespace overwater
