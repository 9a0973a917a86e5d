#pragma once

#include "core/bench/field.hpp"

namespace overwater {

/// The readings as they stand on the bench page, for lists of them.
inline constexpr Field bench_order[] = {
    Field::apparatus,      Field::target,         Field::mass_of_metal,     Field::mass_before,
    Field::mass_after,     Field::ribbon_length,  Field::mass_per_metre,    Field::metal,
    Field::second_metal,   Field::molar_mass,     Field::gas,               Field::gas_per_mole,
    Field::acid_per_mole,  Field::purity,         Field::acid,              Field::acid_volume,
    Field::acid_concentration, Field::number_at_closed_end, Field::tube_capacity, Field::gas_is,
    Field::end_space,      Field::length_of_scale, Field::tube_bore,        Field::tube_factor,
    Field::flask_volume,   Field::start_reading,  Field::starting_bubble,   Field::start_level_difference,
    Field::injected_volume, Field::scale_reading, Field::displaced_mass,    Field::liquid_stands,
    Field::level_difference, Field::temperature,  Field::pressure_kind,     Field::barometer,
    Field::pressure_after, Field::barometer_temperature, Field::latitude,   Field::height_above_sea_level,
    Field::outdoor_temperature, Field::own_vapour_pressure, Field::water_activity, Field::accepted_value};

}  // namespace overwater
