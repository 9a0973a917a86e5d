#pragma once

#include <array>
#include <cstddef>
#include <cstdint>

#include "core/bench/apparatus.hpp"
#include "core/bench/field.hpp"
#include "core/bench/tube.hpp"
#include "core/matter/gas.hpp"
#include "core/quantity/quantity.hpp"
#include "core/quantity/temperature.hpp"

namespace overwater {

/// The numbers that enter the model: the typed readings, and what is looked up for them.
enum class Input : std::uint8_t {
    mass_of_metal,
    mass_before,
    mass_after,
    ribbon_length,
    mass_per_metre,
    purity,
    acid_volume,
    acid_concentration,
    tube_capacity,
    end_space,
    start_reading,
    starting_bubble,
    start_level_difference,
    scale_reading,
    level_difference,
    temperature,
    barometer,
    height_above_sea_level,
    outdoor_temperature,
    vapour_value,  ///< from a table, or looked up by the person
    accepted_value,
    molar_mass,
    gravity,
    meniscus_ring,  ///< volume of liquid above the lowest point of the meniscus, by the tube's bore
    tube_factor,    ///< true volume over the scale's, where the tube was calibrated
    injected_volume,
    flask_volume,
    displaced_mass,
    pressure_after,
    water_activity,
    count
};

inline constexpr std::size_t input_count = static_cast<std::size_t>(Input::count);

/// The field a number was typed in; Field::count for what is looked up.
constexpr Field field_of(Input input) {
    switch (input) {
        case Input::mass_of_metal: return Field::mass_of_metal;
        case Input::mass_before: return Field::mass_before;
        case Input::mass_after: return Field::mass_after;
        case Input::ribbon_length: return Field::ribbon_length;
        case Input::mass_per_metre: return Field::mass_per_metre;
        case Input::start_reading: return Field::start_reading;
        case Input::starting_bubble: return Field::starting_bubble;
        case Input::start_level_difference: return Field::start_level_difference;
        case Input::height_above_sea_level: return Field::height_above_sea_level;
        case Input::outdoor_temperature: return Field::outdoor_temperature;
        case Input::vapour_value: return Field::own_vapour_pressure;
        case Input::accepted_value: return Field::accepted_value;
        case Input::meniscus_ring: return Field::tube_bore;
        case Input::purity: return Field::purity;
        case Input::acid_volume: return Field::acid_volume;
        case Input::acid_concentration: return Field::acid_concentration;
        case Input::tube_capacity: return Field::tube_capacity;
        case Input::end_space: return Field::end_space;
        case Input::scale_reading: return Field::scale_reading;
        case Input::level_difference: return Field::level_difference;
        case Input::temperature: return Field::temperature;
        case Input::barometer: return Field::barometer;
        case Input::tube_factor: return Field::tube_factor;
        case Input::injected_volume: return Field::injected_volume;
        case Input::flask_volume: return Field::flask_volume;
        case Input::displaced_mass: return Field::displaced_mass;
        case Input::pressure_after: return Field::pressure_after;
        case Input::water_activity: return Field::water_activity;
        case Input::molar_mass: return Field::molar_mass;
        case Input::gravity:
        case Input::count: break;
    }
    return Field::count;
}

/// `none`: there is no vapour in what is counted, as the gas is dry or only the rise of a pressure counts.
enum class VapourFrom : std::uint8_t { formula, looked_up, not_subtracted, none };
constexpr bool is_taken_off(VapourFrom vapour) { return vapour == VapourFrom::formula || vapour == VapourFrom::looked_up; }

/// What is chosen rather than measured, and which readings are there. Settled before the model runs, so that the model
/// never branches on a measured number.
struct Setup {
    FieldSet present;
    ClosedEnd closed_end = ClosedEnd::unknown;
    LiquidStands liquid_stands = LiquidStands::unknown;
    Apparatus apparatus = Apparatus::tube_over_water;
    Gas gas = Gas::hydrogen;
    Target target = Target::molar_volume;
    bool own_reaction = false;    ///< molar mass and ratios are typed
    bool acid_limits = false;     ///< the acid's amount is known and may set the gas (never for calcium and lithium)
    double gas_per_sample = 1.0;   ///< mole of gas per mole of what was weighed, exact
    double acid_per_sample = 2.0;  ///< mole of acid per mole of it, exact; 0: no acid takes part
    double atomic_number = 12;     ///< of the metal, and kg/mol of its salt: taken for its molar mass by a slip
    double molar_mass_of_salt = 95.205e-3;
    double second_molar_mass = 0;     ///< kg/mol, of the other metal of an alloy; 0: none was chosen
    double gas_per_second = 1.0;      ///< mole of gas per mole of it
    double mercury_to_zero = 1.0;     ///< factor to mercury of 0 °C, from the barometer's temperature
    double gravity_to_standard = 1.0; ///< factor to the standard acceleration, from latitude and height
    double standard_celsius = 0.0;      ///< °C, exact by convention
    double standard_pressure = 100000;  ///< Pa, exact by convention
    MassFrom mass_from = MassFrom::weighed;
    Start start = Start::nothing;
    bool start_level_known = false;  ///< else it was that of the end
    bool ring_known = false;         ///< the bore is known and the scale was made for the upright tube
    PressureKind pressure_kind = PressureKind::at_the_bench;
    VapourFrom vapour = VapourFrom::formula;
    double vapour_looked_up_at = 0;  ///< °C at which a table or own value was looked up: the run's temperature
    bool converted = true;           ///< to standard conditions; else V/n as collected is the result
    bool real_gas = false;           ///< the accepted value and the conversion are the real gas's
    bool accepted_typed = false;
    double known = 0;  ///< what another last line than the molar volume is compared with, SI; 0: nobody knows it
};

template <class Real>
struct Measured {
    Setup setup;
    std::array<Real, input_count> base{};  ///< coherent SI units; the temperature in °C

    const Real& operator[](Input i) const { return base[static_cast<std::size_t>(i)]; }
    Real& operator[](Input i) { return base[static_cast<std::size_t>(i)]; }

    template <class D>
    Quantity<D, Real> as(Input i) const {
        return Quantity<D, Real>::si((*this)[i]);
    }
    Quantity<dimension::Volume, Real> volume(Input i) const { return as<dimension::Volume>(i); }
    Quantity<dimension::Pressure, Real> pressure(Input i) const { return as<dimension::Pressure>(i); }
    Temperature<Real> temperature() const { return Temperature<Real>::celsius((*this)[Input::temperature]); }

    /// The same readings in another number type; `convert(Input, double)` makes each number.
    template <class Other, class Convert>
    Measured<Other> lifted(Convert convert) const {
        Measured<Other> other;
        other.setup = setup;
        for (std::size_t i = 0; i < input_count; ++i) other.base[i] = convert(static_cast<Input>(i), base[i]);
        return other;
    }
};

}  // namespace overwater
