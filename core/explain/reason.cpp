#include "core/explain/reason.hpp"

namespace overwater {

namespace {

std::string_view of_vapour(const Assessment& all) {
    if (!is_taken_off(all.measured.setup.vapour)) return "reason.water_vapour_pressure.unused";
    if (all.measured.setup.vapour == VapourFrom::formula) return "reason.water_vapour_pressure.formula";
    return all.conventions.vapour == Conventions::Vapour::own_value ? "reason.water_vapour_pressure.own"
                                                                    : "reason.water_vapour_pressure.table";
}

std::string_view of_dry_pressure(const Setup& setup) {
    if (setup.apparatus == Apparatus::pressure_sensor) return "reason.dry_gas_pressure.sensor";
    if (setup.vapour == VapourFrom::not_subtracted) return "reason.dry_gas_pressure.wet";
    if (setup.vapour == VapourFrom::none) return "reason.dry_gas_pressure.dry";
    switch (setup.liquid_stands) {
        case LiquidStands::higher_inside: return "reason.dry_gas_pressure.inside";
        case LiquidStands::higher_outside: return "reason.dry_gas_pressure.outside";
        default: return "reason.dry_gas_pressure.level";
    }
}

/// The room above the meniscus, by the way the scale runs.
std::string_view of_room(const Setup& setup) {
    if (setup.closed_end == ClosedEnd::zero) return "reason.gas_volume.zero";
    if (setup.ring_known && setup.start != Start::reading) return "reason.gas_volume.ring";
    return setup.present.has(Field::end_space) ? "reason.gas_volume.largest" : "reason.gas_volume.largest_alone";
}

std::string_view of_volume(const Setup& setup) {
    if (setup.apparatus == Apparatus::displaced_water) return "reason.gas_volume.displaced";
    if (setup.apparatus == Apparatus::pressure_sensor) return "reason.gas_volume.flask";
    if (setup.present.has(Field::injected_volume)) return "reason.gas_volume.injected";
    if (setup.start == Start::nothing) return of_room(setup);
    return setup.start_level_known ? "reason.gas_volume.start_level" : "reason.gas_volume.start";
}

/// What the equation says, in whole numbers of atoms and molecules.
std::string_view of_gas(const Assessment& all) {
    const Setup& setup = all.measured.setup;
    if (all.acid_gives_out()) return "reason.amount_of_gas.acid";
    if (!weighs_metal(all.readings)) return "reason.amount_of_gas.ratio";
    if (setup.gas_per_sample > 1) return "reason.amount_of_gas.three_for_two";
    return setup.gas_per_sample < 1 ? "reason.amount_of_gas.one_for_two" : "reason.amount_of_gas.one_for_one";
}

}  // namespace

std::string_view reason_of(const Assessment& all, Output output) {
    const Setup& setup = all.measured.setup;
    if (!is_asked(output, setup)) return {};
    switch (output) {
        case Output::absolute_temperature: return "reason.absolute_temperature";
        case Output::water_vapour_pressure: return of_vapour(all);
        case Output::water_density: return "reason.water_density";
        case Output::pressure_at_bench:
            return setup.pressure_kind == PressureKind::mercury_column ? "reason.pressure_at_bench.mercury"
                                                                       : "reason.pressure_at_bench";
        case Output::column_pressure:
            return setup.liquid_stands == LiquidStands::level ? "reason.column_pressure.level"
                                                              : "reason.column_pressure.column";
        case Output::dry_gas_pressure: return of_dry_pressure(setup);
        case Output::start_dry_pressure: return "reason.start_dry_pressure";
        case Output::gas_at_end: return of_room(setup);
        case Output::gas_at_start: return "reason.gas_at_start";
        case Output::gas_volume: return of_volume(setup);
        case Output::mass:
            return setup.mass_from == MassFrom::ribbon ? "reason.mass.ribbon" : "reason.mass.by_difference";
        case Output::amount_of_metal:
            return setup.present.has(Field::purity) ? "reason.amount_of_metal.purity" : "reason.amount_of_metal.whole";
        case Output::acid_needed: return "reason.acid_needed";
        case Output::amount_of_gas: return of_gas(all);
        case Output::molar_volume_bench: return "reason.molar_volume_bench";
        case Output::dry_gas_at_barometer: return "reason.dry_gas_at_barometer";
        case Output::compression_factor: return "reason.compression_factor";
        case Output::standard_compression_factor: return "reason.standard_compression_factor";
        case Output::molar_volume_standard:
            return setup.real_gas ? "reason.molar_volume_standard.real" : "reason.molar_volume_standard.ideal";
        case Output::gas_constant: return "reason.gas_constant";
        case Output::percent_error: return "reason.percent_error";
        case Output::volume_at_standard: return "reason.volume_at_standard";
        case Output::amount_by_volume: return "reason.amount_by_volume";
        case Output::molar_mass_found: return "reason.molar_mass_found";
        case Output::purity_found: return "reason.purity_found";
        case Output::equivalent_mass: return "reason.equivalent_mass";
        case Output::alloy_share: return "reason.alloy_share";
        case Output::gas_molar_mass: return "reason.gas_molar_mass";
        case Output::amount_of_acid:
        case Output::acid_volume_needed:
        case Output::acid_excess:
        case Output::accepted_value:
        case Output::count: break;
    }
    return {};
}

}  // namespace overwater
