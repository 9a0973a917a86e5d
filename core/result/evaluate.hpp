#pragma once

#include <algorithm>
#include <cmath>

#include "core/matter/air.hpp"
#include "core/matter/constants.hpp"
#include "core/matter/gas.hpp"
#include "core/matter/water.hpp"
#include "core/result/measured.hpp"
#include "core/result/method.hpp"
#include "core/result/outcome.hpp"
#include "core/result/tags.hpp"

namespace overwater {

/// The model, written once for every number type (method.md, sections 1 to 4): from the readings of one run to the molar
/// volume. Computes what is in `ready` and nothing else; never branches on a measured number and allocates nothing of
/// its own. `Real` is double for the value, Dual for the sensitivities, Pack for Monte Carlo trials, Traced for the
/// working.
template <class Real>
class Model {
public:
    Model(const Measured<Real>& measured, const Method& method, OutputSet ready)
        : in_(measured), setup_(measured.setup), method_(method) {
        out_.ready = ready;
    }

    /// May be run again once the measured numbers have changed: where many trials are made, nothing is copied.
    const Outcome<Real>& run() {
        water();
        pressures();
        volumes();
        amounts();
        results();
        comparison();
        other_results();
        return out_;
    }

private:
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
    P pressure_of(Output o) const { return get<dimension::Pressure>(o); }
    V volume_of(Output o) const { return get<dimension::Volume>(o); }
    N amount_of(Output o) const { return get<dimension::Amount>(o); }

    /// Section 2. One temperature serves the gas law, the vapour and the density of the column.
    void water() {
        const Temperature<Real> t = in_.temperature();
        if (wants(Output::absolute_temperature)) {
            set(Output::absolute_temperature,
                T::si(t.in_celsius() + exact(Constant::celsius_zero, celsius_zero_in_kelvin)));
        }
        if (wants(Output::water_vapour_pressure)) set(Output::water_vapour_pressure, vapour());
        if (wants(Output::water_density)) {
            set(Output::water_density, Quantity<dimension::Density, Real>::si(looked_up(
                                           Function::water_density, t.in_celsius(), water_density(t).si())));
        }
    }

    /// A value from a table or a book was looked up at this temperature: it keeps the formula's slope, so that a doubt of
    /// the temperature still is a doubt of the vapour.
    P vapour() const {
        const Temperature<Real> t = in_.temperature();
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
        return setup_.pressure_kind == PressureKind::at_the_bench ? in_.pressure(Input::barometer)
                                                                  : pressure_of(Output::pressure_at_bench);
    }

    P pressure_at_bench() const {
        using std::exp;
        using std::pow;
        const Real reported = in_[Input::barometer];
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
        return get<dimension::Density>(Output::water_density) *
               in_.template as<dimension::Acceleration>(Input::gravity) * in_.template as<dimension::Length>(level);
    }

    P dry(P column) const {
        P p = barometer();
        if (setup_.liquid_stands != LiquidStands::level && method_.column != Method::Column::ignored) {
            const bool inside = setup_.liquid_stands == LiquidStands::higher_inside;
            const bool subtract = inside == (method_.column == Method::Column::right);
            p = subtract ? p - column : p + column;
        }
        if (setup_.vapour == VapourFrom::not_subtracted || method_.vapour == Method::Vapour::ignored) return p;
        const P vapour = pressure_of(Output::water_vapour_pressure);
        return method_.vapour == Method::Vapour::added ? p + vapour : p - vapour;
    }

    /// Section 1. An upside-down scale counts from the open end: volume = capacity - reading + end space. A scale with 0
    /// at the closed end has counted its end already.
    V room_above(Input mark) const {
        const V reading = in_.volume(mark);
        if (setup_.closed_end == ClosedEnd::zero) return reading;
        const bool end_space = has(Field::end_space) && method_.volume != Method::Volume::end_space_ignored;
        const V seen = method_.volume == Method::Volume::reading_taken_as_gas
                           ? reading
                           : in_.volume(Input::tube_capacity) - reading;
        return end_space ? seen + in_.volume(Input::end_space) : seen;
    }

    /// The ring of liquid above the lowest point of the meniscus counts as gas nowhere: an upright scale added it, the
    /// inverted tube has it outside the gas. It cancels where the start was read on the same scale.
    V end_room() const {
        const V room = room_above(Input::scale_reading);
        if (!setup_.ring_known || setup_.start == Start::reading) return room;
        return room - exact(Constant::two, 2.0) * in_.volume(Input::meniscus_ring);
    }

    void volumes() {
        if (wants(Output::gas_at_end)) set(Output::gas_at_end, end_room());
        if (wants(Output::gas_at_start)) {
            set(Output::gas_at_start, setup_.start == Start::bubble ? in_.volume(Input::starting_bubble)
                                                                    : room_above(Input::start_reading));
        }
        if (!wants(Output::gas_volume)) return;
        if (setup_.start == Start::nothing) {
            set(Output::gas_volume, end_room());
            return;
        }
        // n RT = (p_end - p_w) V_end - (p_start - p_w) V_start
        const V start = volume_of(Output::gas_at_start);
        const V counted = setup_.start_level_known
                              ? start * (pressure_of(Output::start_dry_pressure) / pressure_of(Output::dry_gas_pressure))
                                            .si()
                              : start;
        set(Output::gas_volume, volume_of(Output::gas_at_end) - counted);
    }

    /// Section 3. Two steps: the metal weighed, and the gas it gives; the scarcer of metal and acid sets the gas.
    void amounts() {
        using std::min;
        if (wants(Output::mass)) set(Output::mass, derived_mass());
        if (wants(Output::amount_of_metal)) {
            set(Output::amount_of_metal, pure_mass() / molar_mass());
        }
        const N metal = amount_of(Output::amount_of_metal);
        const Real acid_per_metal = exact(Constant::acid_per_metal, setup_.acid_per_metal);
        const auto concentration = in_.template as<dimension::Concentration>(Input::acid_concentration);
        if (wants(Output::amount_of_acid)) {
            set(Output::amount_of_acid, concentration * in_.volume(Input::acid_volume));
        }
        if (wants(Output::acid_needed)) set(Output::acid_needed, acid_per_metal * metal);
        const N needed = amount_of(Output::acid_needed);
        if (wants(Output::acid_volume_needed)) set(Output::acid_volume_needed, needed / concentration);
        if (wants(Output::acid_excess)) set(Output::acid_excess, amount_of(Output::amount_of_acid) / needed);
        if (!wants(Output::amount_of_gas)) return;
        const N from_metal = gas_ratio() * metal;
        if (!setup_.acid_limits) {
            set(Output::amount_of_gas, from_metal);
            return;
        }
        const N from_acid = gas_ratio() * (amount_of(Output::amount_of_acid) / acid_per_metal);
        set(Output::amount_of_gas, N::si(min(from_metal.si(), from_acid.si())));
    }

    M derived_mass() const {
        if (setup_.mass_from == MassFrom::ribbon) {
            return in_.template as<dimension::Length>(Input::ribbon_length) *
                   in_.template as<dimension::LinearDensity>(Input::mass_per_metre);
        }
        return in_.template as<dimension::Mass>(Input::mass_before) - in_.template as<dimension::Mass>(Input::mass_after);
    }

    M mass_as_weighed() const {
        return setup_.mass_from == MassFrom::weighed ? in_.template as<dimension::Mass>(Input::mass_of_metal)
                                                     : get<dimension::Mass>(Output::mass);
    }
    M pure_mass() const {
        return has(Field::purity) ? in_[Input::purity] * mass_as_weighed() : mass_as_weighed();
    }
    Quantity<dimension::MolarMass, Real> molar_mass() const {
        return in_.template as<dimension::MolarMass>(Input::molar_mass);
    }

    Real gas_ratio() const {
        const double slip = method_.gas_ratio == Method::GasRatio::half    ? 0.5
                            : method_.gas_ratio == Method::GasRatio::twice ? 2.0
                                                                           : 1.0;
        return exact(Constant::gas_per_metal, setup_.gas_per_metal * slip);
    }

    T standard_kelvin() const {
        return T::si(exact(Constant::standard_temperature, setup_.standard_celsius + celsius_zero_in_kelvin));
    }
    P standard_pressure() const { return P::si(exact(Constant::standard_pressure, setup_.standard_pressure)); }

    /// Section 4. Bench outputs and the conversion to standard conditions.
    void results() {
        const V volume = volume_of(Output::gas_volume);
        const N gas = amount_of(Output::amount_of_gas);
        const P dry = pressure_of(Output::dry_gas_pressure);
        const T kelvin = get<dimension::TemperatureDifference>(Output::absolute_temperature);
        if (wants(Output::molar_volume_bench)) set(Output::molar_volume_bench, volume / gas);
        if (wants(Output::dry_gas_at_barometer)) {
            set(Output::dry_gas_at_barometer, (volume / gas) * (dry / barometer()));
        }
        if (wants(Output::compression_factor)) set(Output::compression_factor, compression(kelvin, dry));
        if (wants(Output::standard_compression_factor)) {
            set(Output::standard_compression_factor, compression(standard_kelvin(), standard_pressure()));
        }
        if (wants(Output::molar_volume_standard)) set(Output::molar_volume_standard, converted(volume / gas));
        if (wants(Output::gas_constant)) set(Output::gas_constant, (dry * volume) / (gas * kelvin));
    }

    Quantity<dimension::One, Real> compression(T kelvin, P pressure) const {
        return Quantity<dimension::One, Real>::si(
            looked_up(Function::compression_factor, kelvin.si(),
                      compression_factor_hydrogen(kelvin.si(), pressure.si())));
    }

    /// A volume or a molar volume, from the bench to standard conditions.
    template <class D>
    Quantity<D, Real> converted(Quantity<D, Real> bench) const {
        if (method_.conversion == Method::Conversion::none) return bench;
        const P dry = pressure_of(Output::dry_gas_pressure);
        const T kelvin = get<dimension::TemperatureDifference>(Output::absolute_temperature);
        const auto by_pressure = method_.conversion == Method::Conversion::pressure_upside_down
                                     ? standard_pressure() / dry
                                     : dry / standard_pressure();
        const auto by_temperature = method_.conversion == Method::Conversion::temperature_upside_down
                                        ? kelvin / standard_kelvin()
                                        : standard_kelvin() / kelvin;
        const Quantity<D, Real> ideal = bench * by_pressure * by_temperature;
        if (!setup_.real_gas) return ideal;
        return ideal * (get<dimension::One>(Output::standard_compression_factor) /
                        get<dimension::One>(Output::compression_factor));
    }

    void comparison() {
        if (wants(Output::accepted_value)) set(Output::accepted_value, accepted());
        if (!wants(Output::percent_error)) return;
        const Vm found = get<dimension::MolarVolume>(setup_.converted ? Output::molar_volume_standard
                                                                      : Output::molar_volume_bench);
        const Vm accepted = get<dimension::MolarVolume>(Output::accepted_value);
        // 100 % is the number 1: it stands in the formula so that the unit does.
        set(Output::percent_error, exact(Constant::hundred_percent, 1.0) * ((found - accepted) / accepted));
    }

    Vm accepted() const {
        if (setup_.accepted_typed) return in_.template as<dimension::MolarVolume>(Input::accepted_value);
        const auto r =
            Quantity<dimension::MolarEntropy, Real>::si(exact(Constant::molar_gas_constant, gas_constant.si()));
        const Vm ideal = (r * standard_kelvin()) / standard_pressure();
        return setup_.real_gas ? ideal * get<dimension::One>(Output::standard_compression_factor) : ideal;
    }

    /// Section 4. What the readings say of the metal where the molar volume is taken as known: the accepted one gives the
    /// amount of gas from its volume alone, and that the molar mass of the metal (M = w m ratio/n) or its purity by
    /// mass (w = n M/(ratio m)). The molar volume found never depends on them.
    void other_results() {
        if (wants(Output::volume_at_standard)) {
            set(Output::volume_at_standard, converted(volume_of(Output::gas_volume)));
        }
        if (wants(Output::amount_by_volume)) {
            set(Output::amount_by_volume,
                volume_of(Output::volume_at_standard) / get<dimension::MolarVolume>(Output::accepted_value));
        }
        const N gas = amount_of(Output::amount_by_volume);
        if (wants(Output::molar_mass_found)) set(Output::molar_mass_found, (gas_ratio() * pure_mass()) / gas);
        if (wants(Output::purity_found)) {
            set(Output::purity_found, exact(Constant::hundred_percent, 1.0) *
                                          ((gas * molar_mass()) / (gas_ratio() * mass_as_weighed())));
        }
    }

    const Measured<Real>& in_;
    const Setup& setup_;
    const Method& method_;
    Outcome<Real> out_;
};

template <class Real>
Outcome<Real> evaluate(const Measured<Real>& measured, const Method& method, OutputSet ready) {
    return Model<Real>(measured, method, ready).run();
}

}  // namespace overwater
