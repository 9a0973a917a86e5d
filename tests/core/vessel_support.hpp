#pragma once

#include <array>
#include <string>

#include "core/bench/apparatus.hpp"
#include "tests/core/check_support.hpp"

/// One good run in each vessel, and one sheet that has the readings of all of them.

namespace overwater::test {

inline constexpr std::array<Apparatus, apparatus_count> vessels{
    Apparatus::tube_over_water, Apparatus::generator_flask, Apparatus::gas_syringe, Apparatus::displaced_water,
    Apparatus::pressure_sensor};

/// Invented: 41.2 mg of magnesium in a room of 21.4 °C and 99.62 kPa. The readings of each vessel are such that it gives
/// about 22.7 L/mol at 0 °C and 100 kPa.
inline Sheet good_run(Apparatus vessel) {
    const Sheet room = Sheet().with({{Field::metal, "magnesium"},
                                     {Field::acid, "hydrochloric"},
                                     {Field::mass_of_metal, "0.0412"},
                                     {Field::temperature, "21.4"},
                                     {Field::barometer, "99.62"}});
    const Sheet here = room.with({{Field::apparatus, name_of(vessel).data()}});
    switch (vessel) {
        case Apparatus::tube_over_water:
            return here.with({{Field::number_at_closed_end, "zero"},
                              {Field::scale_reading, "43.20"},
                              {Field::liquid_stands, "higher_inside"},
                              {Field::level_difference, "112"}});
        case Apparatus::generator_flask:
            return here.with({{Field::number_at_closed_end, "zero"},
                              {Field::scale_reading, "48.20"},
                              {Field::injected_volume, "5.00"},
                              {Field::liquid_stands, "higher_inside"},
                              {Field::level_difference, "112"}});
        case Apparatus::gas_syringe: return here.with({{Field::scale_reading, "42.71"}});
        case Apparatus::displaced_water: return here.with({{Field::displaced_mass, "42.62"}});
        case Apparatus::pressure_sensor: break;
    }
    return here.with({{Field::flask_volume, "150.0"}, {Field::acid_volume, "10.0"}, {Field::pressure_after, "129.25"}});
}

/// What was typed for one vessel after the other, with nothing rubbed out; `vessel` is what is chosen now. Where one field
/// serves two vessels, it has the reading that suits this one.
inline Sheet all_typed(Apparatus vessel) {
    Sheet sheet = good_run(vessel);
    const auto add = [&](std::initializer_list<Typed> readings) { sheet = sheet.with(readings); };
    const bool column = vessel == Apparatus::tube_over_water || vessel == Apparatus::generator_flask;
    if (!column) {
        add({{Field::number_at_closed_end, "largest"},
             {Field::end_space, "2.35"},
             {Field::liquid_stands, "higher_outside"},
             {Field::level_difference, "95"},
             {Field::starting_bubble, "0.7"},
             {Field::tube_bore, "13"}});
    }
    if (column) add({{Field::gas_is, "dry"}});
    if (vessel != Apparatus::generator_flask && vessel != Apparatus::gas_syringe) add({{Field::injected_volume, "5.00"}});
    if (!column && vessel != Apparatus::gas_syringe) {
        add({{Field::scale_reading, "9.15"}, {Field::tube_factor, "1.02"}, {Field::start_reading, "2.0"}, {Field::gas_is, "dry"}});
    }
    if (vessel != Apparatus::displaced_water) add({{Field::displaced_mass, "33.3"}});
    if (vessel != Apparatus::pressure_sensor) add({{Field::flask_volume, "77.7"}, {Field::pressure_after, "111.1"}});
    if (vessel == Apparatus::pressure_sensor) {
        add({{Field::pressure_kind, "altimeter_setting"}, {Field::height_above_sea_level, "300"}, {Field::water_activity, "0.9"}});
    }
    // Of other substances, other last lines and other barometers.
    add({{Field::molar_mass, "118.7"},
         {Field::gas, "oxygen"},
         {Field::gas_per_mole, "3"},
         {Field::second_metal, "zinc"},
         {Field::barometer_temperature, "35"}});
    return sheet;
}

inline double litres_a_mole(const Assessment& run) {
    return from_base(run.value(Output::molar_volume_standard).value_or(__builtin_nan("")), UnitId::litre_per_mole);
}

}  // namespace overwater::test
