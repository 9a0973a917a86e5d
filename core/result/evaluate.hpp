#pragma once

#include <algorithm>
#include <cmath>

#include "core/matter/constants.hpp"
#include "core/matter/gas.hpp"
#include "core/result/gas_steps.hpp"

namespace overwater {

/// The model, written once for every number type (method.md, sections 1 to 4): from the readings of one run to the molar
/// volume. Computes what is in `ready` and nothing else; never branches on a measured number and allocates nothing of
/// its own. `Real` is double for the value, Dual for the sensitivities, Pack for Monte Carlo trials, Traced for the
/// working. `Way` is Method, or RightMethod where no slip is asked about.
template <class Real, class Way = Method>
class Model : private GasSteps<Real, Way> {
    using Steps = GasSteps<Real, Way>;

public:
    /// Steps that are not in `ready` stand as `known` has them: what a person's later steps went on with.
    Model(const Measured<Real>& measured, const Way& method, OutputSet ready, const Outcome<Real>& known = {})
        : Steps(measured, method, ready, known) {}

    /// May be run again once the measured numbers have changed: where many trials are made, nothing is copied.
    const Outcome<Real>& run() {
        // Where a few last steps are run again and again, whole groups are left out.
        const auto any = [this](Output first, Output last) { return out_.ready.meets(OutputSet::span(first, last)); };
        if (any(Output::absolute_temperature, Output::water_density)) water();
        if (any(Output::pressure_at_bench, Output::start_dry_pressure)) pressures();
        if (any(Output::gas_at_end, Output::gas_volume)) volumes();
        if (any(Output::compression_factor, Output::standard_compression_factor)) compressions();
        if (any(Output::mass, Output::amount_of_gas)) amounts();
        if (any(Output::molar_volume_bench, Output::gas_constant)) results();
        if (wants(Output::accepted_value)) set(Output::accepted_value, accepted());
        if (any(Output::volume_at_standard, Output::gas_molar_mass)) other_results();
        if (wants(Output::percent_error)) comparison();
        return out_;
    }

    /// The value that an output not in `ready` stands at from now on.
    void take(Output output, const Real& value) { out_.si[static_cast<std::size_t>(output)] = value; }

private:
    using typename Steps::M;
    using typename Steps::N;
    using typename Steps::P;
    using typename Steps::T;
    using typename Steps::V;
    using typename Steps::Vm;
    using Steps::amount_of;
    using Steps::barometer;
    using Steps::celsius_zero;
    using Steps::exact;
    using Steps::kelvin_of;
    using Steps::mass_of;
    using Steps::molar_volume_of;
    using Steps::number_of;
    using Steps::has;
    using Steps::in_;
    using Steps::method_;
    using Steps::out_;
    using Steps::pressure_of;
    using Steps::pressures;
    using Steps::set;
    using Steps::setup_;
    using Steps::volume_of;
    using Steps::volumes;
    using Steps::wants;
    using Steps::water;

    /// Section 3. Two steps: the metal weighed, and the gas it gives; the scarcer of metal and acid sets the gas.
    void amounts() {
        using std::min;
        if (wants(Output::mass)) set(Output::mass, written_mass(derived_mass()));
        if (wants(Output::amount_of_metal)) set(Output::amount_of_metal, written_amount(pure_mass() / molar_mass()));
        const N metal = amount_of(Output::amount_of_metal);
        const Real acid_per_sample = exact(Constant::acid_per_sample, setup_.acid_per_sample);
        const auto concentration = in_.template as<dimension::Concentration>(Input::acid_concentration);
        if (wants(Output::amount_of_acid)) {
            set(Output::amount_of_acid, concentration * in_.volume(Input::acid_volume));
        }
        if (wants(Output::acid_needed)) set(Output::acid_needed, acid_per_sample * metal);
        const N needed = amount_of(Output::acid_needed);
        if (wants(Output::acid_volume_needed)) set(Output::acid_volume_needed, needed / concentration);
        if (wants(Output::acid_excess)) set(Output::acid_excess, amount_of(Output::amount_of_acid) / needed);
        if (!wants(Output::amount_of_gas)) return;
        if (method_.circular != Method::Circular::right) {
            set(Output::amount_of_gas, amount_of_its_own_gas());
            return;
        }
        const N from_metal = gas_ratio() * metal;
        if (!setup_.acid_limits) {
            set(Output::amount_of_gas, from_metal);
            return;
        }
        const N from_acid = gas_ratio() * (amount_of(Output::amount_of_acid) / acid_per_sample);
        set(Output::amount_of_gas, N::si(min(from_metal.si(), from_acid.si())));
    }

    M derived_mass() const {
        if (setup_.mass_from == MassFrom::ribbon) {
            const auto length = in_.template as<dimension::Length>(Input::ribbon_length);
            if (method_.mass == Method::Mass::nominal_ribbon) {
                return length * Quantity<dimension::LinearDensity, Real>::si(exact(Constant::none, 1e-3));
            }
            return length * in_.template as<dimension::LinearDensity>(Input::mass_per_metre);
        }
        return in_.template as<dimension::Mass>(Input::mass_before) - in_.template as<dimension::Mass>(Input::mass_after);
    }

    M mass_as_weighed() const {
        return setup_.mass_from == MassFrom::weighed
                   ? written_mass(in_.template as<dimension::Mass>(Input::mass_of_metal))
                   : mass_of(Output::mass);
    }
    M written_mass(M mass) const {
        if (const auto write = writing(method_.mass)) return M::si(rewritten(mass.si(), write));
        const double slip = slip_factor(method_.mass);
        return slip == 1.0 ? mass : exact(Constant::none, slip) * mass;
    }
    N written_amount(N amount) const {
        if (const auto write = writing(method_.amount)) return N::si(rewritten(amount.si(), write));
        const double slip = slip_factor(method_.amount);
        return slip == 1.0 ? amount : exact(Constant::none, slip) * amount;
    }
    /// Where the gas's amount is taken from the gas itself, nothing is found out about it.
    N amount_of_its_own_gas() const {
        const V volume = volume_of(Output::gas_volume);
        switch (method_.circular) {
            case Method::Circular::by_accepted_value: return volume / accepted();
            case Method::Circular::by_volume_at_standard: return converted(volume) / accepted();
            default: break;
        }
        return amount_by_gas_law();
    }
    N amount_by_gas_law() const {
        return (gas_law_pressure() * volume_of(Output::gas_volume)) /
               (molar_gas_constant() * kelvin_of(Output::absolute_temperature));
    }
    M pure_mass() const {
        return has(Field::purity) ? in_[Input::purity] * mass_as_weighed() : mass_as_weighed();
    }
    Quantity<dimension::MolarMass, Real> molar_mass() const {
        const double wrong = wrong_molar_mass(method_.molar_mass, setup_);
        if (wrong != 0.0) return Quantity<dimension::MolarMass, Real>::si(exact(Constant::none, wrong));
        if (method_.molar_mass == Method::MolarMass::doubled) {
            return exact(Constant::two, 2.0) * in_.template as<dimension::MolarMass>(Input::molar_mass);
        }
        return in_.template as<dimension::MolarMass>(Input::molar_mass);
    }

    Real gas_ratio() const {
        return exact(Constant::gas_per_sample, ratio_by(method_.gas_ratio, setup_.gas_per_sample));
    }

    T standard_kelvin() const {
        return T::si(exact(Constant::standard_temperature, setup_.standard_celsius + celsius_zero_in_kelvin));
    }
    P standard_pressure() const { return P::si(exact(Constant::standard_pressure, setup_.standard_pressure)); }

    /// The conditions that the volume is converted to, which by a slip are not those of the accepted value.
    T target_kelvin() const {
        const double celsius = method_.standard != Method::Standard::other_temperature ? setup_.standard_celsius
                               : setup_.standard_celsius == 0.0                        ? 25.0
                                                                                       : 0.0;
        const bool as_celsius = method_.temperature == Method::Temperature::celsius_both;
        return T::si(exact(Constant::standard_temperature, as_celsius ? celsius : celsius + celsius_zero()));
    }
    T one_kelvin() const { return T::si(exact(Constant::none, 1.0)); }
    P target_pressure() const {
        return P::si(exact(Constant::standard_pressure, standard_pressure_by(method_.standard, setup_.standard_pressure)));
    }
    Quantity<dimension::MolarEntropy, Real> molar_gas_constant() const {
        const double slip = method_.gas_law == Method::GasLaw::tenfold ? 10.0 : 1.0;
        return Quantity<dimension::MolarEntropy, Real>::si(
            exact(Constant::molar_gas_constant, slip * gas_constant.si()));
    }
    P gas_law_pressure() const {
        const P p = method_.conversion == Method::Conversion::whole_pressure_in_place_of_dry
                        ? barometer()
                        : pressure_of(Output::dry_gas_pressure);
        return method_.gas_law == Method::GasLaw::millimetre_with_atmosphere ? exact(Constant::none, 760.0) * p : p;
    }

    /// Section 4. Bench outputs and the conversion to standard conditions.
    void results() {
        const V volume = volume_of(Output::gas_volume);
        const N gas = amount_of(Output::amount_of_gas);
        const P dry = pressure_of(Output::dry_gas_pressure);
        const T kelvin = kelvin_of(Output::absolute_temperature);
        if (wants(Output::molar_volume_bench)) set(Output::molar_volume_bench, volume / gas);
        if (wants(Output::dry_gas_at_barometer)) {
            set(Output::dry_gas_at_barometer, (volume / gas) * (dry / barometer()));
        }
        if (wants(Output::molar_volume_standard)) set(Output::molar_volume_standard, converted(volume / gas));
        if (wants(Output::gas_constant)) {
            const auto found = (gas_law_pressure() * volume) / (gas * kelvin);
            set(Output::gas_constant,
                method_.gas_law == Method::GasLaw::tenfold ? exact(Constant::none, 10.0) * found : found);
        }
    }

    void compressions() {
        if (wants(Output::compression_factor)) {
            set(Output::compression_factor,
                compression(kelvin_of(Output::absolute_temperature),
                            pressure_of(Output::dry_gas_pressure)));
        }
        if (wants(Output::standard_compression_factor)) {
            set(Output::standard_compression_factor, compression(standard_kelvin(), standard_pressure()));
        }
    }

    Quantity<dimension::One, Real> compression(T kelvin, P pressure) const {
        return Quantity<dimension::One, Real>::si(
            looked_up(Function::compression_factor, kelvin.si(),
                      compression_factor(setup_.gas, kelvin.si(), pressure.si())));
    }

    /// A volume or a molar volume, from the bench to standard conditions.
    template <class D>
    Quantity<D, Real> converted(Quantity<D, Real> bench) const {
        using By = Method::Conversion;
        const By by = method_.conversion;
        if (by == By::none) return bench;
        const T kelvin = kelvin_of(Output::absolute_temperature);
        if (by == By::only_over_temperature) return bench * (one_kelvin() / kelvin);
        Quantity<D, Real> ideal = bench;
        if (by != By::pressure_left_out) {
            const P dry = by == By::whole_pressure_in_place_of_dry ? barometer() : pressure_of(Output::dry_gas_pressure);
            const bool turned = by == By::pressure_upside_down || by == By::both_upside_down;
            ideal = ideal * (turned ? target_pressure() / dry : dry / target_pressure());
        }
        if (by != By::temperature_left_out) {
            const bool turned = by == By::temperature_upside_down || by == By::both_upside_down;
            const T standard = by == By::standard_temperature_dropped ? one_kelvin() : target_kelvin();
            ideal = ideal * (turned ? kelvin / standard : standard / kelvin);
        }
        if (!setup_.real_gas) return ideal;
        return ideal * (number_of(Output::standard_compression_factor) /
                        number_of(Output::compression_factor));
    }

    /// The last line with what is known of it: the molar volume with the accepted one, another with its own.
    void comparison() {
        const Output sought = sought_output(setup_.converted, setup_.target);
        const auto with_known = [&](auto found) {
            set(Output::percent_error, error_of(found, decltype(found)::si(exact(Constant::known_value, setup_.known))));
        };
        if (sought == Output::gas_constant) return with_known(this->template get<dimension::MolarEntropy>(sought));
        if (is_by_volume(sought)) return with_known(this->template get<dimension::MolarMass>(sought));
        set(Output::percent_error, error_of(molar_volume_of(sought), molar_volume_of(Output::accepted_value)));
    }

    template <class D>
    Quantity<dimension::One, Real> error_of(Quantity<D, Real> found, Quantity<D, Real> accepted) const {
        // 100 % is the number 1: it stands in the formula so that the unit does.
        const Real hundred = exact(Constant::hundred_percent,
                                   method_.percent_error == Method::PercentError::as_fraction ? 0.01 : 1.0);
        switch (method_.percent_error) {
            case Method::PercentError::ratio: return hundred * (found / accepted);
            case Method::PercentError::over_found: return hundred * ((found - accepted) / found);
            case Method::PercentError::sign_lost: return hundred * ((accepted - found) / accepted);
            default: break;
        }
        return hundred * ((found - accepted) / accepted);
    }

    Vm accepted() const {
        const double wrong = wrong_accepted(method_.accepted);
        if (wrong != 0.0) return Vm::si(exact(Constant::none, wrong));
        if (method_.accepted == Method::Accepted::other_pressure) {
            const double right = setup_.standard_pressure;
            return accepted_right() * (right / standard_pressure_by(Method::Standard::other_pressure, right));
        }
        if (const auto write = writing(method_.accepted)) return Vm::si(rewritten(accepted_right().si(), write));
        return accepted_right();
    }

    Vm accepted_right() const {
        if (setup_.accepted_typed) return in_.template as<dimension::MolarVolume>(Input::accepted_value);
        const auto r =
            Quantity<dimension::MolarEntropy, Real>::si(exact(Constant::molar_gas_constant, gas_constant.si()));
        const Vm ideal = (r * standard_kelvin()) / standard_pressure();
        return setup_.real_gas ? ideal * number_of(Output::standard_compression_factor) : ideal;
    }

    /// Section 4. What the readings say of the metal where the molar volume is taken as known: the accepted one gives the
    /// amount of gas from its volume alone, and that the molar mass of the metal (M = w m ratio/n) or its purity by
    /// mass (w = n M/(ratio m)). The molar volume found never depends on them. The equivalent mass is what sets half a mole
    /// of hydrogen free (w m/(2 n)); of an alloy n = m (w r1/M1 + (1 - w) r2/M2) is solved for the share w; a gas that
    /// was weighed itself has m/n.
    void other_results() {
        if (wants(Output::volume_at_standard)) {
            set(Output::volume_at_standard, converted(volume_of(Output::gas_volume)));
        }
        if (wants(Output::amount_by_volume)) {
            // By the gas law at once is the same; who goes wrong with the gas constant went that way.
            set(Output::amount_by_volume,
                method_.gas_law == Method::GasLaw::right
                    ? volume_of(Output::volume_at_standard) / molar_volume_of(Output::accepted_value)
                    : amount_by_gas_law());
        }
        const N gas = amount_of(Output::amount_by_volume);
        if (wants(Output::molar_mass_found)) set(Output::molar_mass_found, (gas_ratio() * pure_mass()) / gas);
        if (wants(Output::purity_found)) {
            set(Output::purity_found, share(exact(Constant::hundred_percent, 1.0) *
                                            ((gas * molar_mass()) / (gas_ratio() * mass_as_weighed()))));
        }
        if (wants(Output::equivalent_mass)) {
            const bool whole = method_.last_line == Method::LastLine::whole_mole;
            set(Output::equivalent_mass, pure_mass() / (whole ? gas : exact(Constant::two, 2.0) * gas));
        }
        if (wants(Output::alloy_share)) set(Output::alloy_share, share(share_in_alloy(gas)));
        if (wants(Output::gas_molar_mass)) set(Output::gas_molar_mass, mass_as_weighed() / gas);
    }

    Quantity<dimension::One, Real> share(Quantity<dimension::One, Real> found) const {
        if (method_.last_line != Method::LastLine::other_share) return found;
        return Quantity<dimension::One, Real>::si(exact(Constant::hundred_percent, 1.0)) - found;
    }

    Quantity<dimension::One, Real> share_in_alloy(N gas) const {
        const auto plain = [](Real value) { return Quantity<dimension::One, Real>::si(value); };
        const auto second = plain(exact(Constant::gas_per_second, setup_.gas_per_second)) /
                            Quantity<dimension::MolarMass, Real>::si(
                                exact(Constant::second_molar_mass, setup_.second_molar_mass));
        return exact(Constant::hundred_percent, 1.0) *
               ((gas / mass_as_weighed() - second) / (plain(gas_ratio()) / molar_mass() - second));
    }
};

/// What is in `ready`; other steps stand as `known` has them.
template <class Real, class Way>
Outcome<Real> evaluate(const Measured<Real>& measured, const Way& method, OutputSet ready,
                       const Outcome<Real>& known = {}) {
    return Model<Real, Way>(measured, method, ready, known).run();
}

}  // namespace overwater
