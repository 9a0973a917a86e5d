#include "core/result/assess.hpp"

namespace overwater {

namespace {

template <class... Outputs>
OutputSet outputs(Outputs... list) {
    OutputSet set;
    (set.add(list), ...);
    return set;
}

FieldSet volume_fields(const Setup& setup) {
    FieldSet fields = FieldSet::of(Field::number_at_closed_end, Field::scale_reading);
    if (setup.closed_end != ClosedEnd::zero) fields.add(Field::tube_capacity);
    return fields;
}

Needs column_needs(const Setup& setup) {
    if (setup.liquid_stands == LiquidStands::level) return {FieldSet::of(Field::liquid_stands), {}};
    return {FieldSet::of(Field::liquid_stands, Field::level_difference), outputs(Output::water_density)};
}

}  // namespace

Needs needs_of(Output output, const Setup& setup) {
    switch (output) {
        case Output::gas_volume: return {volume_fields(setup), {}};
        case Output::absolute_temperature:
        case Output::water_vapour_pressure:
        case Output::water_density: return {FieldSet::of(Field::temperature), {}};
        case Output::column_pressure: return column_needs(setup);
        case Output::dry_gas_pressure:
            return {FieldSet::of(Field::barometer), outputs(Output::water_vapour_pressure, Output::column_pressure)};
        case Output::amount_of_metal: return {FieldSet::of(Field::mass_of_metal, Field::metal), {}};
        case Output::amount_of_acid: return {FieldSet::of(Field::acid_volume, Field::acid_concentration), {}};
        case Output::acid_needed: return {FieldSet::of(Field::acid), outputs(Output::amount_of_metal)};
        case Output::acid_volume_needed:
            return {FieldSet::of(Field::acid_concentration), outputs(Output::acid_needed)};
        case Output::acid_excess: return {{}, outputs(Output::amount_of_acid, Output::acid_needed)};
        case Output::amount_of_gas:
            return {{}, setup.acid_limits ? outputs(Output::amount_of_metal, Output::amount_of_acid)
                                          : outputs(Output::amount_of_metal)};
        case Output::molar_volume_bench: return {{}, outputs(Output::gas_volume, Output::amount_of_gas)};
        case Output::dry_gas_at_barometer:
            return {{}, outputs(Output::gas_volume, Output::amount_of_gas, Output::dry_gas_pressure)};
        case Output::molar_volume_standard:
        case Output::gas_constant:
            return {{}, outputs(Output::gas_volume, Output::amount_of_gas, Output::dry_gas_pressure,
                                Output::absolute_temperature)};
        case Output::accepted_value: return {};
        case Output::percent_error: return {{}, outputs(Output::molar_volume_standard, Output::accepted_value)};
        case Output::count: break;
    }
    return {};
}

}  // namespace overwater
