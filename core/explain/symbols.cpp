#include "core/explain/symbols.hpp"

#include "core/bench/readings.hpp"

#include "core/explain/working.hpp"

namespace overwater {

namespace {

using Kind = Formula::Kind;

Formula variable(std::string letter) { return Formula::leaf(Kind::variable, std::move(letter)); }
Formula words(std::string text) { return Formula::leaf(Kind::words, std::move(text)); }
Formula indexed(std::string letter, std::string index) {
    return Formula::of(Kind::subscript, {variable(std::move(letter)), words(std::move(index))});
}
Formula of_substance(std::string letter, std::string substance) {
    return Formula::of(Kind::row, {variable(std::move(letter)),
                                   Formula::of(Kind::bracketed, {words(std::move(substance))})});
}
/// The same quantity of a substance, come by another way.
Formula found(std::string letter, std::string substance, std::string way) {
    return Formula::of(Kind::row, {indexed(std::move(letter), std::move(way)),
                                   Formula::of(Kind::bracketed, {words(std::move(substance))})});
}
Formula standard(std::string letter) {
    return Formula::of(Kind::superscript, {variable(std::move(letter)), words("°")});
}

std::string metal_symbol(const Readings& readings) {
    return readings.metal ? std::string(symbol_of(*readings.metal)) : std::string("M");
}

std::string acid_formula(const Readings& readings) {
    return readings.acid == Acid::sulfuric ? "H₂SO₄" : "HCl";
}

}  // namespace

Formula symbol_of(Output output, const Readings& readings) {
    switch (output) {
        case Output::gas_volume: return variable("V");
        case Output::absolute_temperature: return variable("T");
        case Output::water_vapour_pressure: return indexed("p", "w");
        case Output::water_density: return variable("ρ");
        case Output::column_pressure: return indexed("p", "col");
        case Output::pressure_at_bench: return indexed("p", "bar");
        case Output::dry_gas_pressure: return variable("p");
        case Output::start_dry_pressure: return indexed("p", "start");
        case Output::gas_at_end: return indexed("V", "end");
        case Output::gas_at_start: return indexed("V", "start");
        case Output::mass: return variable("m");
        case Output::compression_factor: return variable("Z");
        case Output::standard_compression_factor: return standard("Z");
        case Output::amount_of_metal: return of_substance("n", metal_symbol(readings));
        case Output::amount_of_acid:
        case Output::acid_needed: return of_substance("n", acid_formula(readings));
        case Output::acid_volume_needed: return of_substance("V", acid_formula(readings));
        case Output::acid_excess: return variable("x");
        case Output::amount_of_gas: return of_substance("n", "H₂");
        case Output::molar_volume_bench: return indexed("V", "m");
        case Output::dry_gas_at_barometer: return indexed("V", "m,bar");
        case Output::molar_volume_standard: return Formula::of(Kind::superscript, {indexed("V", "m"), words("°")});
        case Output::gas_constant: return variable("R");
        case Output::accepted_value: return indexed("V", "accepted");
        case Output::percent_error: return variable("e");
        case Output::volume_at_standard: return standard("V");
        case Output::amount_by_volume: return found("n", "H₂", "V");
        case Output::molar_mass_found: return found("M", metal_symbol(readings), "found");
        case Output::purity_found: return indexed("w", "found");
        case Output::count: break;
    }
    return {};
}

Formula symbol_of(Input input, const Readings& readings) {
    switch (input) {
        case Input::mass_of_metal: return variable("m");
        case Input::mass_before: return indexed("m", "before");
        case Input::mass_after: return indexed("m", "after");
        case Input::ribbon_length: return variable("l");
        case Input::mass_per_metre: return Formula::of(Kind::fraction, {variable("m"), variable("l")});
        case Input::start_reading: return indexed("V", "r,start");
        case Input::starting_bubble: return indexed("V", "bubble");
        case Input::start_level_difference: return indexed("h", "start");
        case Input::height_above_sea_level: return variable("H");
        case Input::outdoor_temperature: return indexed("t", "out");
        case Input::vapour_value: return indexed("p", "w");
        case Input::accepted_value: return indexed("V", "accepted");
        case Input::meniscus_ring: return indexed("V", "ring");
        case Input::purity: return variable("w");
        case Input::acid_volume: return of_substance("V", acid_formula(readings));
        case Input::acid_concentration: return of_substance("c", acid_formula(readings));
        case Input::tube_capacity: return indexed("V", "cap");
        case Input::end_space: return indexed("V", "space");
        case Input::scale_reading: return indexed("V", "read");
        case Input::level_difference: return variable("h");
        case Input::temperature: return variable("t");
        case Input::barometer:
            return indexed("p", readings.pressure_kind == PressureKind::at_the_bench ? "bar" : "report");
        case Input::molar_mass: return of_substance("M", metal_symbol(readings));
        case Input::gravity: return variable("g");
        case Input::count: break;
    }
    return {};
}

Formula symbol_of(Constant constant, double value) {
    switch (constant) {
        case Constant::celsius_zero: return Formula::leaf(Kind::number, "273.15");
        case Constant::standard_temperature: return standard("T");
        case Constant::standard_pressure: return standard("p");
        case Constant::molar_gas_constant: return variable("R");
        case Constant::pressure_at_sea_level: return indexed("p", "0");
        case Constant::sea_level_temperature: return indexed("T", "0");
        case Constant::lapse_rate: return variable("L");
        case Constant::air_gas_constant: return indexed("R", "air");
        case Constant::free_fall: return variable("g");
        case Constant::two: return Formula::leaf(Kind::number, "2");
        case Constant::hundred_percent: return Formula::leaf(Kind::number, "100");
        case Constant::gas_per_metal:
        case Constant::acid_per_metal:
        case Constant::level_column:
        case Constant::none: break;
    }
    // Mole ratios are small integers or halves.
    const bool whole = value == static_cast<double>(static_cast<int>(value));
    return Formula::leaf(Kind::number, format_fixed(value, whole ? 0 : 1, DecimalSign::point));
}

}  // namespace overwater
