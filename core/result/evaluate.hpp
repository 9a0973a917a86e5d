#pragma once

#include <algorithm>
#include <cmath>

#include "core/matter/constants.hpp"
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

    Outcome<Real> run() {
        if (wants(Output::gas_volume)) set(Output::gas_volume, gas_volume());
        pressures();
        amounts();
        results();
        return out_;
    }

private:
    using V = Quantity<dimension::Volume, Real>;
    using P = Quantity<dimension::Pressure, Real>;
    using N = Quantity<dimension::Amount, Real>;
    using T = Quantity<dimension::TemperatureDifference, Real>;

    /// An exact number of the formulas, with its name.
    Real exact(Constant which, double value) const { return constant(in_[Input::gravity], which, value); }

    bool wants(Output o) const { return out_.ready.has(o); }

    template <class D>
    void set(Output o, Quantity<D, Real> q) {
        out_.si[static_cast<std::size_t>(o)] = named_step(o, q.si());
    }
    template <class D>
    Quantity<D, Real> get(Output o) const {
        return Quantity<D, Real>::si(out_[o]);
    }

    /// Section 1. An upside-down scale counts from the open end: volume = capacity - reading + end space. A scale with 0
    /// at the closed end has counted its end already.
    V gas_volume() const {
        const V reading = in_.volume(Input::scale_reading);
        if (setup_.closed_end == ClosedEnd::zero) return reading;
        const bool end_space =
            setup_.present.has(Field::end_space) && method_.volume != Method::Volume::end_space_ignored;
        const V seen = method_.volume == Method::Volume::reading_taken_as_gas
                           ? reading
                           : in_.volume(Input::tube_capacity) - reading;
        return end_space ? seen + in_.volume(Input::end_space) : seen;
    }

    /// Section 2. One temperature serves the gas law, the vapour and the density of the column.
    void pressures() {
        const Temperature<Real> t = in_.temperature();
        if (wants(Output::absolute_temperature)) {
            set(Output::absolute_temperature,
                T::si(t.in_celsius() + exact(Constant::celsius_zero, celsius_zero_in_kelvin)));
        }
        if (wants(Output::water_vapour_pressure)) {
            set(Output::water_vapour_pressure,
                P::si(looked_up(Function::water_vapour_pressure, t.in_celsius(), water_vapour_pressure(t).si())));
        }
        if (wants(Output::water_density)) {
            set(Output::water_density, Quantity<dimension::Density, Real>::si(looked_up(
                                           Function::water_density, t.in_celsius(), water_density(t).si())));
        }
        if (wants(Output::column_pressure)) set(Output::column_pressure, column());
        if (wants(Output::dry_gas_pressure)) set(Output::dry_gas_pressure, dry_gas_pressure());
    }

    P column() const {
        if (setup_.liquid_stands == LiquidStands::level) return P::si(exact(Constant::level_column, 0.0));
        return get<dimension::Density>(Output::water_density) * in_.template as<dimension::Acceleration>(Input::gravity) *
               in_.template as<dimension::Length>(Input::level_difference);
    }

    P dry_gas_pressure() const {
        const P barometer = in_.pressure(Input::barometer);
        const P vapour = get<dimension::Pressure>(Output::water_vapour_pressure);
        P p = barometer;
        if (setup_.liquid_stands != LiquidStands::level && method_.column != Method::Column::ignored) {
            const P column = get<dimension::Pressure>(Output::column_pressure);
            const bool inside = setup_.liquid_stands == LiquidStands::higher_inside;
            const bool subtract = inside == (method_.column == Method::Column::right);
            p = subtract ? p - column : p + column;
        }
        if (!setup_.vapour_subtracted || method_.vapour == Method::Vapour::ignored) return p;
        return method_.vapour == Method::Vapour::added ? p + vapour : p - vapour;
    }

    /// Section 3. Two steps: the metal weighed, and the gas it gives; the scarcer of metal and acid sets the gas.
    void amounts() {
        using std::min;
        const auto molar_mass = in_.template as<dimension::MolarMass>(Input::molar_mass);
        if (wants(Output::amount_of_metal)) {
            auto mass = in_.template as<dimension::Mass>(Input::mass_of_metal);
            if (setup_.present.has(Field::purity)) mass = in_[Input::purity] * mass;
            set(Output::amount_of_metal, mass / molar_mass);
        }
        const N metal = get<dimension::Amount>(Output::amount_of_metal);
        const Real acid_per_metal = exact(Constant::acid_per_metal, setup_.acid_per_metal);
        const auto concentration = in_.template as<dimension::Concentration>(Input::acid_concentration);
        if (wants(Output::amount_of_acid)) {
            set(Output::amount_of_acid, concentration * in_.volume(Input::acid_volume));
        }
        if (wants(Output::acid_needed)) set(Output::acid_needed, acid_per_metal * metal);
        const N needed = get<dimension::Amount>(Output::acid_needed);
        if (wants(Output::acid_volume_needed)) set(Output::acid_volume_needed, needed / concentration);
        if (wants(Output::acid_excess)) {
            set(Output::acid_excess, get<dimension::Amount>(Output::amount_of_acid) / needed);
        }
        if (wants(Output::amount_of_gas)) {
            const N from_metal = gas_ratio() * metal;
            if (setup_.acid_limits) {
                const N from_acid = gas_ratio() * (get<dimension::Amount>(Output::amount_of_acid) / acid_per_metal);
                set(Output::amount_of_gas, N::si(min(from_metal.si(), from_acid.si())));
            } else {
                set(Output::amount_of_gas, from_metal);
            }
        }
    }

    Real gas_ratio() const {
        const double slip = method_.gas_ratio == Method::GasRatio::half    ? 0.5
                            : method_.gas_ratio == Method::GasRatio::twice ? 2.0
                                                                           : 1.0;
        return exact(Constant::gas_per_metal, setup_.gas_per_metal * slip);
    }

    /// Section 4. Bench outputs, the conversion to standard conditions and the comparison.
    void results() {
        const V volume = get<dimension::Volume>(Output::gas_volume);
        const N gas = get<dimension::Amount>(Output::amount_of_gas);
        const P dry = get<dimension::Pressure>(Output::dry_gas_pressure);
        const T kelvin = get<dimension::TemperatureDifference>(Output::absolute_temperature);
        const T standard_kelvin = T::si(exact(Constant::standard_temperature,
                                                       setup_.standard_celsius + celsius_zero_in_kelvin));
        const P standard_pressure = P::si(exact(Constant::standard_pressure, setup_.standard_pressure));
        if (wants(Output::molar_volume_bench)) set(Output::molar_volume_bench, volume / gas);
        if (wants(Output::dry_gas_at_barometer)) {
            set(Output::dry_gas_at_barometer, (volume / gas) * (dry / in_.pressure(Input::barometer)));
        }
        if (wants(Output::molar_volume_standard)) {
            const auto by_pressure = method_.conversion == Method::Conversion::pressure_upside_down
                                         ? standard_pressure / dry
                                         : dry / standard_pressure;
            const auto by_temperature = method_.conversion == Method::Conversion::temperature_upside_down
                                            ? kelvin / standard_kelvin
                                            : standard_kelvin / kelvin;
            const auto bench = volume / gas;
            set(Output::molar_volume_standard,
                method_.conversion == Method::Conversion::none ? bench : bench * by_pressure * by_temperature);
        }
        if (wants(Output::gas_constant)) set(Output::gas_constant, (dry * volume) / (gas * kelvin));
        if (wants(Output::accepted_value)) {
            const auto r =
                Quantity<dimension::MolarEntropy, Real>::si(exact(Constant::molar_gas_constant, gas_constant.si()));
            set(Output::accepted_value, (r * standard_kelvin) / standard_pressure);
        }
        if (wants(Output::percent_error)) {
            const auto found = get<dimension::MolarVolume>(Output::molar_volume_standard);
            const auto accepted = get<dimension::MolarVolume>(Output::accepted_value);
            // 100 % is the number 1: it stands in the formula so that the unit does.
            set(Output::percent_error, exact(Constant::hundred_percent, 1.0) * ((found - accepted) / accepted));
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
