#include <doctest/doctest.h>

#include <initializer_list>
#include <string>
#include <string_view>

#include "core/lesson/slip.hpp"
#include "tests/core/check_support.hpp"

using namespace overwater;
using namespace overwater::test;

// A slip can be made only in a run that has what it is made of, and where it changes what is sought.

namespace {

bool happens(const Sheet& sheet, std::string_view name) {
    const Assessment run = sheet.assessed();
    for (std::size_t i = 0; i < slip_count; ++i) {
        if (slip_table[i].name == name) return can_happen(static_cast<SlipIndex>(i), run);
    }
    FAIL("no slip " << name);
    return false;
}

void all(bool expected, const Sheet& sheet, std::initializer_list<std::string_view> names) {
    for (const std::string_view name : names) CHECK_MESSAGE(happens(sheet, name) == expected, std::string(name));
}

Sheet seeking(const char* target) {
    return record_a().with({{Field::target, target}, {Field::second_metal, "zinc"}, {Field::mass_of_metal, "0.0500"}});
}

}  // namespace

TEST_CASE("what is found from the gas alone cannot be off by the moles of the metal, nor found in a circle") {
    for (const char* target : {"molar_mass", "equivalent_mass", "purity", "alloy"}) {
        CAPTURE(std::string(target));
        const Sheet sheet = seeking(target);
        all(false, sheet, {"circular_by_gas_law", "circular_by_accepted_value", "amount_one_figure", "amount_tenfold"});
        all(true, sheet,
            {"mass_tenfold", "vapour_ignored", "end_space_ignored", "no_conversion", "celsius_in_gas_law"});
    }
    for (const char* target : {"molar_volume", "gas_constant"}) {
        CAPTURE(std::string(target));
        all(true, seeking(target), {"circular_by_gas_law", "amount_one_figure", "amount_tenfold", "ratio_twice"});
    }
}

TEST_CASE("a slip of one last line happens with that line only") {
    all(true, seeking("purity"), {"share_of_the_other"});
    all(true, seeking("alloy"), {"share_of_the_other"});
    all(true, seeking("equivalent_mass"), {"equivalent_not_halved"});
    all(false, seeking("molar_volume"), {"share_of_the_other", "equivalent_not_halved"});
    all(false, seeking("equivalent_mass"), {"share_of_the_other"});
    all(false, seeking("purity"), {"equivalent_not_halved"});
}

TEST_CASE("manganese is written for magnesium, the salt for the metal, hydrogen for what gives it") {
    all(true, record_a(), {"molar_mass_of_manganese", "molar_mass_of_salt", "molar_mass_of_hydrogen"});
    const Sheet zinc = record_a().with({{Field::metal, "zinc"}, {Field::mass_of_metal, "0.110"}});
    all(false, zinc, {"molar_mass_of_manganese"});
    all(true, zinc, {"molar_mass_of_hydrogen", "molar_mass_of_salt"});
}

TEST_CASE("what belongs to a conversion needs one") {
    all(true, record_a(),
        {"no_conversion", "temperature_upside_down", "standard_other_pressure", "accepted_other_pressure"});
    all(false, record_a(), {"accepted_at_standard"});
    Conventions none;
    none.conversion = Conventions::Conversion::none;
    const Sheet collected = record_a().with({{Field::accepted_value, "24.0"}}).by(none);
    all(false, collected,
        {"no_conversion", "temperature_upside_down", "standard_other_pressure", "accepted_other_pressure"});
    all(true, collected, {"accepted_at_standard", "circular_by_gas_law", "end_space_ignored"});
    // At 0 °C a Celsius number in the place of the standard temperature gives nothing at all.
    all(false, record_a(), {"celsius_both"});
    Conventions room;
    room.standard = StandardConditions::twenty_five_celsius_1_atmosphere;
    all(true, record_a().by(room), {"celsius_both"});
}

TEST_CASE("only a scale that counts from the mouth can be read as the gas") {
    all(true, record_a(), {"reading_taken_as_gas", "reading_alone", "end_space_ignored", "end_space_subtracted"});
    all(false, record_a(), {"end_space_added_to_difference", "start_ignored", "injected_ignored"});
    const Sheet upright = record_a().with({{Field::number_at_closed_end, "zero"}, {Field::end_space, ""}});
    all(false, upright, {"reading_taken_as_gas", "reading_alone", "end_space_ignored", "end_space_subtracted"});
    all(true, upright, {"counted_from_capacity"});
    all(false, upright.without(Field::tube_capacity), {"counted_from_capacity"});
    const Sheet start = record_a().with({{Field::start_reading, "48.50"}});
    all(true, start, {"end_space_added_to_difference", "start_ignored"});
    all(false, start.without(Field::end_space), {"end_space_added_to_difference"});
    const Sheet bubble = record_a().with({{Field::starting_bubble, "0.50"}});
    all(true, bubble, {"start_ignored"});
    all(false, bubble, {"end_space_added_to_difference"});
}

TEST_CASE("a pressure of the place cannot be one that was not reduced, a length none without a ribbon") {
    all(false, record_a(), {"barometer_not_reduced", "mass_nominal_ribbon"});
    const Sheet report = record_a().with({{Field::pressure_kind, "altimeter_setting"},
                                          {Field::barometer, "1021.5 hPa"},
                                          {Field::height_above_sea_level, "210"}});
    all(true, report, {"barometer_not_reduced"});
    const Sheet ribbon = record_a().with({{Field::mass_from, "ribbon"},
                                          {Field::mass_of_metal, ""},
                                          {Field::ribbon_length, "4.00 cm"},
                                          {Field::mass_per_metre, "1.03"}});
    all(true, ribbon, {"mass_nominal_ribbon"});
    // Equal levels have no column to forget.
    const Sheet level = record_a().with({{Field::liquid_stands, "level"}, {Field::level_difference, ""}});
    all(true, record_a(), {"column_ignored", "column_wrong_side", "column_as_mercury", "column_tenth"});
    all(false, level, {"column_ignored", "column_wrong_side", "column_as_mercury", "column_tenth"});
}

TEST_CASE("vapour can be forgotten only where it is taken off") {
    all(true, record_a(), {"vapour_ignored", "vapour_added", "vapour_row_above", "vapour_celsius_number"});
    Conventions dry;
    dry.vapour = Conventions::Vapour::not_subtracted;
    all(false, record_a().by(dry), {"vapour_ignored", "vapour_added", "vapour_row_above", "vapour_celsius_number"});
}
