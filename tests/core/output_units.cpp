#include <doctest/doctest.h>

#include "core/result/outcome.hpp"

using namespace overwater;

TEST_CASE("each result is shown in a unit of the size that the bench gives it, so that its number is easily read") {
    // method.md, record A, and record.md name those of the chain; the others are alike.
    for (const Output pressure : {Output::water_vapour_pressure, Output::pressure_at_bench, Output::column_pressure,
                                  Output::dry_gas_pressure, Output::start_dry_pressure}) {
        CHECK(unit_of(pressure) == UnitId::kilopascal);
    }
    for (const Output volume : {Output::gas_at_end, Output::gas_at_start, Output::gas_volume,
                                Output::acid_volume_needed, Output::volume_at_standard}) {
        CHECK(unit_of(volume) == UnitId::millilitre);
    }
    for (const Output amount : {Output::amount_of_metal, Output::amount_of_acid, Output::acid_needed,
                                Output::amount_of_gas, Output::amount_by_volume}) {
        CHECK(unit_of(amount) == UnitId::millimole);
    }
    for (const Output molar_volume : {Output::molar_volume_bench, Output::dry_gas_at_barometer,
                                      Output::molar_volume_standard, Output::accepted_value}) {
        CHECK(unit_of(molar_volume) == UnitId::litre_per_mole);
    }
    CHECK(unit_of(Output::absolute_temperature) == UnitId::kelvin);
    CHECK(unit_of(Output::water_density) == UnitId::kilogram_per_cubic_metre);
    CHECK(unit_of(Output::mass) == UnitId::gram);
    CHECK(unit_of(Output::gas_constant) == UnitId::joule_per_mole_kelvin);
    CHECK(unit_of(Output::molar_mass_found) == UnitId::gram_per_mole);
    for (const Output share : {Output::percent_error, Output::purity_found}) {
        CHECK(unit_of(share) == UnitId::percent);
    }
    for (const Output ratio : {Output::acid_excess, Output::compression_factor, Output::standard_compression_factor}) {
        CHECK(unit_of(ratio) == UnitId::none);
    }
}
