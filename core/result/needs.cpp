#include "core/result/assess.hpp"

namespace overwater {

namespace {

Needs scale_needs(const Setup& setup, Field mark) {
    FieldSet fields = FieldSet::of(Field::number_at_closed_end, mark);
    if (setup.closed_end != ClosedEnd::zero) fields.add(Field::tube_capacity);
    return {fields, {}};
}

Needs volume_needs(const Setup& setup) {
    if (setup.apparatus == Apparatus::displaced_water) {
        return {FieldSet::of(Field::displaced_mass), OutputSet::of(Output::water_density)};
    }
    if (setup.apparatus == Apparatus::pressure_sensor) return {FieldSet::of(Field::flask_volume), {}};
    if (setup.start == Start::nothing) return scale_needs(setup, Field::scale_reading);
    Needs needs{{}, OutputSet::of(Output::gas_at_end, Output::gas_at_start)};
    if (setup.start_level_known) {
        needs.outputs.add(Output::start_dry_pressure);
        needs.outputs.add(Output::dry_gas_pressure);
    }
    return needs;
}

Needs column_needs(const Setup& setup, Field level) {
    if (setup.liquid_stands == LiquidStands::level) return {FieldSet::of(Field::liquid_stands), {}};
    return {FieldSet::of(Field::liquid_stands, level), OutputSet::of(Output::water_density)};
}

void add_barometer(Needs& needs, const Setup& setup) {
    if (setup.pressure_kind == PressureKind::at_the_bench) {
        needs.fields.add(Field::barometer);
    } else {
        needs.outputs.add(Output::pressure_at_bench);
    }
}

Needs dry_needs(const Setup& setup, Needs column) {
    if (setup.apparatus == Apparatus::pressure_sensor) return {FieldSet::of(Field::barometer, Field::pressure_after), {}};
    add_barometer(column, setup);
    if (is_taken_off(setup.vapour)) column.outputs.add(Output::water_vapour_pressure);
    return column;
}

Needs mass_needs(const Setup& setup) {
    switch (setup.mass_from) {
        case MassFrom::by_difference: return {FieldSet::of(Field::mass_before, Field::mass_after), {}};
        case MassFrom::ribbon: return {FieldSet::of(Field::ribbon_length, Field::mass_per_metre), {}};
        case MassFrom::weighed: break;
    }
    return {FieldSet::of(Field::mass_of_metal), {}};
}

/// An own reaction says with its molar mass and its ratio what the list says for the others.
FieldSet of_sample(const Setup& setup) {
    return setup.own_reaction ? FieldSet::of(Field::molar_mass, Field::gas_per_mole) : FieldSet::of(Field::metal);
}

Needs metal_needs(const Setup& setup) {
    Needs needs{of_sample(setup), {}};
    if (setup.mass_from == MassFrom::weighed) {
        needs.fields.add(Field::mass_of_metal);
    } else {
        needs.outputs.add(Output::mass);
    }
    return needs;
}

Needs standard_needs(const Setup& setup) {
    Needs needs{{}, OutputSet::of(Output::gas_volume, Output::amount_of_gas, Output::dry_gas_pressure,
                            Output::absolute_temperature)};
    if (setup.real_gas) {
        needs.outputs.add(Output::compression_factor);
        needs.outputs.add(Output::standard_compression_factor);
    }
    return needs;
}

/// What the metal is found out from: the gas by its volume, and the mass. Where the acid may be the scarcer one, its
/// excess is known first: with metal left over, the gas does not tell of all of it.
Needs by_volume_needs(const Setup& setup) {
    Needs needs = metal_needs(setup);
    needs.outputs.add(Output::amount_by_volume);
    if (setup.acid_limits) needs.outputs.add(Output::acid_excess);
    return needs;
}

/// A molar mass is found from the ratio alone: of an own reaction nothing else has to be known.
Needs mass_found_needs(const Setup& setup) {
    Needs needs = by_volume_needs(setup);
    needs.fields.remove(Field::molar_mass);
    return needs;
}

Needs volume_at_standard_needs(const Setup& setup) {
    Needs needs = standard_needs(setup);
    needs.outputs.remove(Output::amount_of_gas);
    return needs;
}

Needs at_barometer_needs(const Setup& setup) {
    Needs needs{{}, OutputSet::of(Output::gas_volume, Output::amount_of_gas, Output::dry_gas_pressure)};
    add_barometer(needs, setup);
    return needs;
}

}  // namespace

bool has_scale(const Setup& setup) { return has_column(setup) || setup.apparatus == Apparatus::gas_syringe; }

bool has_column(const Setup& setup) {
    return setup.apparatus == Apparatus::tube_over_water || setup.apparatus == Apparatus::generator_flask;
}

namespace {

/// All the gas comes of the one substance that is weighed.
bool of_one_substance(const Setup& setup) {
    return setup.target != Target::gas_molar_mass && setup.target != Target::alloy;
}

bool is_compared(const Setup& setup) {
    if (!is_molar_volume(sought_output(setup.converted, setup.target))) return setup.known != 0;
    // As collected in a closed flask the gas has its partial pressure: nothing to be compared with 24 L/mol.
    return setup.target != Target::gas_molar_mass && (setup.converted || setup.apparatus != Apparatus::pressure_sensor);
}

}  // namespace

bool is_asked(Output output, const Setup& setup) {
    switch (output) {
        case Output::amount_of_metal:
        case Output::amount_of_gas:
        case Output::molar_volume_bench:
        case Output::dry_gas_at_barometer:
        case Output::molar_volume_standard:
        case Output::gas_constant: return setup.target != Target::gas_molar_mass && !is_unknown(setup);
        case Output::percent_error: return is_compared(setup);
        case Output::water_vapour_pressure: return setup.vapour != VapourFrom::none;
        case Output::pressure_at_bench: return setup.pressure_kind != PressureKind::at_the_bench;
        case Output::start_dry_pressure: return setup.start != Start::nothing && setup.start_level_known;
        case Output::gas_at_end:
        case Output::gas_at_start: return setup.start != Start::nothing;
        case Output::mass: return setup.mass_from != MassFrom::weighed;
        case Output::compression_factor:
        case Output::standard_compression_factor: return setup.real_gas;
        case Output::volume_at_standard:
        case Output::amount_by_volume: return setup.converted;
        case Output::molar_mass_found: return setup.converted && of_one_substance(setup);
        case Output::purity_found: return setup.converted && of_one_substance(setup) && !is_unknown(setup);
        case Output::equivalent_mass: return setup.converted && setup.gas == Gas::hydrogen && of_one_substance(setup);
        case Output::alloy_share: return setup.converted && setup.target == Target::alloy;
        case Output::gas_molar_mass: return setup.converted && setup.target == Target::gas_molar_mass;
        case Output::column_pressure: return has_column(setup);
        case Output::amount_of_acid: return setup.acid_per_sample > 0 && setup.target != Target::gas_molar_mass;
        case Output::acid_needed:
        case Output::acid_volume_needed:
        case Output::acid_excess: return is_asked(Output::amount_of_acid, setup) && !is_unknown(setup);
        default: return true;
    }
}

bool is_unknown(const Setup& setup) {
    const bool seeks_it = setup.target == Target::molar_mass || setup.target == Target::equivalent_mass;
    return setup.own_reaction && seeks_it && !setup.present.has(Field::molar_mass);
}

FieldSet readings_asked_for(const Setup& setup) {
    FieldSet fields;
    for (std::size_t i = 0; i < output_count; ++i) {
        const auto output = static_cast<Output>(i);
        if (is_asked(output, setup)) fields = fields | needs_of(output, setup).fields;
    }
    return fields;
}

Needs needs_of(Output output, const Setup& setup) {
    switch (output) {
        case Output::absolute_temperature:
        case Output::water_density: return {FieldSet::of(Field::temperature), {}};
        case Output::water_vapour_pressure:
            return {setup.vapour == VapourFrom::looked_up
                        ? FieldSet::of(Field::temperature, Field::own_vapour_pressure)
                        : FieldSet::of(Field::temperature),
                    {}};
        case Output::pressure_at_bench:
            // The temperature of the room serves where the barometer has none of its own.
            return {FieldSet::of(Field::barometer, setup.pressure_kind != PressureKind::mercury_column
                                                       ? Field::height_above_sea_level
                                                   : setup.present.has(Field::barometer_temperature)
                                                       ? Field::barometer_temperature
                                                       : Field::temperature),
                    {}};
        case Output::column_pressure: return column_needs(setup, Field::level_difference);
        case Output::dry_gas_pressure:
            return dry_needs(setup, has_column(setup) ? Needs{{}, OutputSet::of(Output::column_pressure)} : Needs{});
        case Output::start_dry_pressure:
            return dry_needs(setup, column_needs(setup, Field::start_level_difference));
        case Output::gas_at_end: return scale_needs(setup, Field::scale_reading);
        case Output::gas_at_start:
            return setup.start == Start::bubble ? Needs{FieldSet::of(Field::starting_bubble), {}}
                                                : scale_needs(setup, Field::start_reading);
        case Output::gas_volume: return volume_needs(setup);
        case Output::mass: return mass_needs(setup);
        case Output::amount_of_metal: return metal_needs(setup);
        case Output::amount_of_acid: return {FieldSet::of(Field::acid_volume, Field::acid_concentration), {}};
        case Output::acid_needed: return {FieldSet::of(Field::acid), OutputSet::of(Output::amount_of_metal)};
        case Output::acid_volume_needed:
            return {FieldSet::of(Field::acid_concentration), OutputSet::of(Output::acid_needed)};
        case Output::acid_excess: return {{}, OutputSet::of(Output::amount_of_acid, Output::acid_needed)};
        case Output::amount_of_gas:
            return {{}, setup.acid_limits ? OutputSet::of(Output::amount_of_metal, Output::amount_of_acid)
                                          : OutputSet::of(Output::amount_of_metal)};
        case Output::molar_volume_bench: return {{}, OutputSet::of(Output::gas_volume, Output::amount_of_gas)};
        case Output::dry_gas_at_barometer: return at_barometer_needs(setup);
        case Output::compression_factor:
            return {{}, OutputSet::of(Output::absolute_temperature, Output::dry_gas_pressure)};
        case Output::standard_compression_factor: return {};
        case Output::molar_volume_standard: return standard_needs(setup);
        case Output::gas_constant:
            return {{}, OutputSet::of(Output::gas_volume, Output::amount_of_gas, Output::dry_gas_pressure,
                                Output::absolute_temperature)};
        case Output::accepted_value:
            if (setup.accepted_typed) return {FieldSet::of(Field::accepted_value), {}};
            return setup.real_gas ? Needs{{}, OutputSet::of(Output::standard_compression_factor)} : Needs{};
        case Output::percent_error: {
            const Output sought = sought_output(setup.converted, setup.target);
            return {{}, is_molar_volume(sought) ? OutputSet::of(sought, Output::accepted_value) : OutputSet::of(sought)};
        }
        case Output::volume_at_standard: return volume_at_standard_needs(setup);
        case Output::amount_by_volume: return {{}, OutputSet::of(Output::volume_at_standard, Output::accepted_value)};
        case Output::molar_mass_found:
        case Output::equivalent_mass: return mass_found_needs(setup);
        case Output::purity_found: return by_volume_needs(setup);
        case Output::alloy_share: {
            Needs needs = by_volume_needs(setup);
            needs.fields.add(Field::second_metal);
            return needs;
        }
        case Output::gas_molar_mass: {
            Needs needs = setup.mass_from == MassFrom::weighed ? Needs{FieldSet::of(Field::mass_of_metal), {}}
                                                               : Needs{{}, OutputSet::of(Output::mass)};
            needs.outputs.add(Output::amount_by_volume);
            return needs;
        }
        case Output::count: break;
    }
    return {};
}

}  // namespace overwater
