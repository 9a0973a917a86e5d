#include "core/explain/symbols.hpp"

#include <algorithm>

#include "core/bench/readings.hpp"
#include "core/explain/working.hpp"
#include "core/quantity/temperature.hpp"

namespace overwater {

namespace {

using Kind = Formula::Kind;

Formula words(std::string_view text) { return Formula::leaf(Kind::words, text); }

/// A symbol from a short notation, which is a table where a formula for each would be a program: a letter, then each of
/// these or not: "_index", "(substance)", "°". In parentheses "M", "A", "G" and "B" stand for what
/// is weighed in the run, its acid, its gas, and the other metal of an alloy.
Formula symbol(std::string_view notation, const Readings& readings) {
    std::size_t letter = 1;
    while (letter < notation.size() && (static_cast<unsigned char>(notation[letter]) & 0xC0U) == 0x80U) ++letter;
    Formula formula = Formula::leaf(Kind::variable, notation.substr(0, letter));
    notation.remove_prefix(letter);
    if (notation.starts_with('_')) {
        const std::size_t end = std::min(notation.find_first_of("(\xC2"), notation.size()); // "°" begins with C2
        formula = Formula::of(Kind::subscript, {std::move(formula), words(notation.substr(1, end - 1))});
        notation.remove_prefix(end);
    }
    if (notation == "°") return Formula::of(Kind::superscript, {std::move(formula), words("°")});
    if (notation.empty()) return formula;
    std::string_view substance = notation.substr(1, notation.size() - 2);
    if (substance == "M" && readings.sample) substance = symbol_of(*readings.sample);
    if (substance == "A") substance = formula_of(readings.acid.value_or(Acid::hydrochloric));
    if (substance == "G") substance = formula_of(gas_of(readings));
    if (substance == "B" && readings.second) substance = symbol_of(*readings.second);
    return Formula::of(Kind::row, {std::move(formula), Formula::of(Kind::bracketed, {words(lowered(substance))})});
}

const char* notation_of(Output output) {
    switch (output) {
        case Output::gas_volume: return "V";
        case Output::absolute_temperature: return "T";
        case Output::water_vapour_pressure: return "p_w";
        case Output::water_density: return "ρ";
        case Output::column_pressure: return "p_col";
        case Output::pressure_at_bench: return "p_bar";
        case Output::dry_gas_pressure: return "p";
        case Output::start_dry_pressure: return "p_start";
        case Output::gas_at_end: return "V_end";
        case Output::gas_at_start: return "V_start";
        case Output::mass: return "m";
        case Output::compression_factor: return "Z";
        case Output::standard_compression_factor: return "Z°";
        case Output::amount_of_metal: return "n(M)";
        case Output::amount_of_acid:
        case Output::acid_needed: return "n(A)";
        case Output::acid_volume_needed: return "V(A)";
        case Output::acid_excess: return "x";
        case Output::amount_of_gas: return "n(G)";
        case Output::molar_volume_bench: return "V_m";
        case Output::dry_gas_at_barometer: return "V_m,bar";
        case Output::molar_volume_standard: return "V_m°";
        case Output::gas_constant: return "R";
        case Output::accepted_value: return "V_accepted";
        case Output::percent_error: return "e";
        case Output::volume_at_standard: return "V°";
        case Output::amount_by_volume: return "n_V(G)";
        case Output::molar_mass_found: return "M_found(M)";
        case Output::purity_found: return "w_found";
        case Output::equivalent_mass: return "M_eq(M)";
        case Output::alloy_share: return "w(M)";
        case Output::gas_molar_mass: return "M_found(G)";
        case Output::count: break;
    }
    return "";
}

const char* notation_of(Input input, const Readings& readings) {
    switch (input) {
        case Input::mass_of_metal: return "m";
        case Input::mass_before: return "m_before";
        case Input::mass_after: return "m_after";
        case Input::ribbon_length: return "l";
        case Input::start_reading: return "V_r,start";
        case Input::starting_bubble: return "V_bubble";
        case Input::start_level_difference: return "h_start";
        case Input::height_above_sea_level: return "H";
        case Input::outdoor_temperature: return "t_out";
        case Input::vapour_value: return "p_w";
        case Input::accepted_value: return "V_accepted";
        case Input::meniscus_ring: return "V_ring";
        case Input::purity: return "w";
        case Input::acid_volume: return "V(A)";
        case Input::acid_concentration: return "c(A)";
        case Input::tube_capacity: return "V_cap";
        case Input::end_space: return "V_space";
        case Input::scale_reading: return "V_read";
        case Input::level_difference: return "h";
        case Input::temperature: return "t";
        case Input::barometer:
            return readings.pressure_kind == PressureKind::at_the_bench ? "p_bar" : "p_report";
        case Input::molar_mass: return "M(M)";
        case Input::gravity: return "g";
        case Input::tube_factor: return "f";
        case Input::injected_volume: return "V_inj";
        case Input::flask_volume: return "V_flask";
        case Input::displaced_mass: return "m_water";
        case Input::pressure_after: return "p_after";
        case Input::water_activity: return "a_w";
        case Input::mass_per_metre: // a fraction
        case Input::count: break;
    }
    return "";
}

}  // namespace

Formula symbol_of(Output output, const Readings& readings) {
    const std::string_view notation = notation_of(output);
    return notation.empty() ? Formula{} : symbol(notation, readings);
}

Formula symbol_of(Input input, const Readings& readings) {
    if (input == Input::mass_per_metre) {
        return Formula::of(Kind::fraction, {symbol("m", readings), symbol("l", readings)});
    }
    const std::string_view notation = notation_of(input, readings);
    return notation.empty() ? Formula{} : symbol(notation, readings);
}

Formula symbol_of(Constant constant, double value, const Readings& readings, DecimalSign decimal_sign) {
    const auto plain = [&](const char* notation) { return symbol(notation, readings); };
    switch (constant) {
        case Constant::celsius_zero: return Formula::leaf(Kind::number, format_fixed(celsius_zero_in_kelvin, 2, decimal_sign));
        case Constant::standard_temperature: return plain("T°");
        case Constant::standard_pressure: return plain("p°");
        case Constant::molar_gas_constant: return plain("R");
        case Constant::pressure_at_sea_level: return plain("p_0");
        case Constant::sea_level_temperature: return plain("T_0");
        case Constant::lapse_rate: return plain("L");
        case Constant::air_gas_constant: return plain("R_air");
        case Constant::free_fall: return plain("g");
        case Constant::two: return Formula::leaf(Kind::number, "2");
        case Constant::hundred_percent: return Formula::leaf(Kind::number, "100");
        case Constant::second_molar_mass: return plain("M_2");
        case Constant::mercury_to_zero: return plain("k_t");
        case Constant::gravity_to_standard: return plain("k_g");
        case Constant::known_value:
            return plain(readings.target == Target::gas_constant      ? "R_accepted"
                         : readings.target == Target::equivalent_mass ? "M_eq,accepted"
                         : readings.target == Target::gas_molar_mass  ? "M(G)"
                                                                      : "M(M)");
        case Constant::gas_per_sample:
        case Constant::acid_per_sample:
        case Constant::gas_per_second:
        case Constant::level_column:
        case Constant::none: break;
    }
    // Mole ratios are small integers or halves.
    const bool whole = value == static_cast<double>(static_cast<int>(value));
    return Formula::leaf(Kind::number, format_fixed(value, whole ? 0 : 1, decimal_sign));
}

std::string lowered(std::string_view formula) {
    std::string text;
    for (const char c : formula) {
        if (c < '0' || c > '9') {
            text += c;
            continue;
        }
        // U+2080 to U+2089 are E2 82 80 to E2 82 89.
        text += "\xe2\x82";
        text += static_cast<char>(0x80 + (c - '0'));
    }
    return text;
}

}  // namespace overwater
