#pragma once

#include <array>
#include <cstddef>
#include <cstdint>

#include "core/bench/field.hpp"
#include "core/bench/tube.hpp"
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
        case Input::molar_mass:
        case Input::gravity:
        case Input::count: break;
    }
    return Field::count;
}

enum class VapourFrom : std::uint8_t { formula, looked_up, not_subtracted };

/// What is chosen rather than measured, and which readings are there. Settled before the model runs, so that the model
/// never branches on a measured number.
struct Setup {
    FieldSet present;
    ClosedEnd closed_end = ClosedEnd::unknown;
    LiquidStands liquid_stands = LiquidStands::unknown;
    bool acid_limits = false;     ///< the acid's amount is known and may set the gas (never for calcium and lithium)
    double gas_per_metal = 1.0;   ///< mole of gas per mole of metal, exact
    double acid_per_metal = 2.0;  ///< mole of acid per mole of metal, exact
    double atomic_number = 12;    ///< of the metal, and kg/mol of its salt: taken for its molar mass by a slip
    double molar_mass_of_salt = 95.205e-3;
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
