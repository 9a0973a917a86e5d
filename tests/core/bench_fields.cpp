// What each field of the bench measures, and the unit that counts where none is typed: the placeholders of method.md, section 9.

#include <doctest/doctest.h>

#include <string>

#include "core/bench/readings.hpp"

using namespace overwater;

namespace {

/// What is typed without a unit, in the base of its measure (SI; °C).
struct UsualUnit {
    Field field;
    double base_of_2;
};

const UsualUnit rows[] = {
    // grams, centimetres, grams a metre, percent, g/mol
    {Field::mass_of_metal, 2e-3},
    {Field::mass_before, 2e-3},
    {Field::mass_after, 2e-3},
    {Field::ribbon_length, 2e-2},
    {Field::mass_per_metre, 2e-3},
    {Field::purity, 0.02},
    {Field::molar_mass, 2e-3},
    {Field::gas_per_mole, 2},
    {Field::acid_per_mole, 2},
    // millilitres, mol/L, millimetres
    {Field::acid_volume, 2e-6},
    {Field::acid_concentration, 2e3},
    {Field::tube_capacity, 2e-6},
    {Field::end_space, 2e-6},
    {Field::start_reading, 2e-6},
    {Field::starting_bubble, 2e-6},
    {Field::start_level_difference, 2e-3},
    {Field::scale_reading, 2e-6},
    {Field::level_difference, 2e-3},
    {Field::length_of_scale, 2e-3},
    {Field::tube_bore, 2e-3},
    {Field::tube_factor, 2},
    {Field::injected_volume, 2e-6},
    {Field::flask_volume, 2e-6},
    {Field::displaced_mass, 2e-3},
    // °C, kilopascals, metres above the sea, litres a mole
    {Field::temperature, 2},
    {Field::barometer, 2e3},
    {Field::pressure_after, 2e3},
    {Field::barometer_temperature, 2},
    {Field::latitude, 2},
    {Field::height_above_sea_level, 2},
    {Field::outdoor_temperature, 2},
    {Field::own_vapour_pressure, 2e3},
    {Field::water_activity, 2},
    {Field::accepted_value, 2e-3},
};

Entry typed(const char* text, UnitId unit = UnitId::none) {
    Entry entry;
    entry.text = text;
    entry.unit = unit;
    return entry;
}

}  // namespace

TEST_CASE("a number typed without a unit counts in the unit that the bench has for it") {
    CHECK(std::size(rows) == static_cast<std::size_t>(first_choice));
    for (const UsualUnit& row : rows) {
        INFO(std::string(name_of(row.field)));
        const Reading reading = read_entry(row.field, typed("2"));
        CHECK(reading.there);
        CHECK(reading.base == doctest::Approx(row.base_of_2).epsilon(1e-14));
    }
}

TEST_CASE("the unit typed counts before the one chosen, and that before the usual one") {
    CHECK(read_entry(Field::mass_of_metal, typed("41.2 mg", UnitId::kilogram)).base == doctest::Approx(41.2e-6));
    CHECK(read_entry(Field::mass_of_metal, typed("41.2", UnitId::milligram)).base == doctest::Approx(41.2e-6));
    CHECK(read_entry(Field::barometer, typed("29.92", UnitId::inch_of_mercury)).base ==
          doctest::Approx(101321).epsilon(1e-5));
}

TEST_CASE("the end space may be weighed as water: by its own unit or the one chosen, and else it is a volume") {
    CHECK(read_entry(Field::end_space, typed("2.34 g")).unit == UnitId::gram);
    CHECK(read_entry(Field::end_space, typed("2.34 g")).base == doctest::Approx(2.34e-3));
    CHECK(read_entry(Field::end_space, typed("2340", UnitId::milligram)).base == doctest::Approx(2.34e-3));
    CHECK(read_entry(Field::end_space, typed("2.35")).unit == UnitId::millilitre);
    CHECK(read_entry(Field::end_space, typed("2.35 mL", UnitId::gram)).base == doctest::Approx(2.35e-6));
    CHECK_FALSE(read_entry(Field::end_space, typed("2.35 kPa")).there);
    // No other volume is weighed.
    CHECK(read_entry(Field::scale_reading, typed("2.34 g")).number.problem == Problem::wrong_kind_of_unit);
}

TEST_CASE("no number beyond 1e100 of a base unit is a reading") {
    // readings.hpp: sums and squares stay finite below it.
    CHECK(read_entry(Field::barometer, typed("1e100 Pa")).there);
    CHECK(read_entry(Field::barometer, typed("-1e100 Pa")).there);
    CHECK(read_entry(Field::barometer, typed("1e94 bar")).there);
    for (const char* text : {"1.01e100 Pa", "-1.01e100 Pa", "1e96 bar"}) {
        INFO(std::string(text));
        CHECK_FALSE(read_entry(Field::barometer, typed(text)).there);
    }
    const Reading reading = read_entry(Field::barometer, typed("1.01e100 Pa"));
    CHECK(reading.number.state == NumberText::State::not_a_number);
    CHECK(reading.number.problem == Problem::too_large);
    Entry several = typed("99620 Pa");
    several.repeats = {"1.01e100 Pa", "99640 Pa"};
    CHECK(read_entry(Field::barometer, several).doubt.misread == 1);
    CHECK(read_entry(Field::barometer, several).base == doctest::Approx(99630));
}

TEST_CASE("a share of a reading of zero is no half-width, and nor is one too large") {
    Entry zero = typed("0.0");
    zero.plus_minus = "5 %";
    CHECK(read_entry(Field::scale_reading, zero).doubt.problem == Problem::too_small);
    CHECK_FALSE(read_entry(Field::scale_reading, zero).doubt.half_width.has_value());
    Entry vast = typed("1");
    vast.plus_minus = "1.01e100 Pa";
    CHECK(read_entry(Field::barometer, vast).doubt.problem == Problem::too_large);
    vast.plus_minus = "1e100 Pa";
    CHECK(read_entry(Field::barometer, vast).doubt.half_width == 1e100);
    CHECK_FALSE(read_entry(Field::scale_reading, typed("9.15 ± 0")).doubt.half_width.has_value());
    CHECK(read_entry(Field::scale_reading, typed("9.15 ± 0")).doubt.problem == Problem::none);
    Entry blank = typed("9.15");
    blank.plus_minus = " ";
    CHECK(read_entry(Field::scale_reading, blank).doubt.problem == Problem::none);
}

TEST_CASE("two readings are the fewest that scatter") {
    Entry two = typed("9.10");
    two.repeats = {"9.20"};
    const Reading reading = read_entry(Field::scale_reading, two);
    // By hand: mean 9.15, s = 0.1/sqrt 2, s/sqrt 2 = 0.05; either is 0.10 from the other, and the later is asked about.
    CHECK(reading.base == doctest::Approx(9.15e-6));
    CHECK(reading.doubt.count == 2);
    CHECK(reading.doubt.of_mean == doctest::Approx(0.05e-6));
    CHECK(reading.doubt.odd == doctest::Approx(9.20e-6));
    CHECK(reading.doubt.odd_by == doctest::Approx(0.10e-6));
    two.repeats = {"x", ""};
    const Reading alone = read_entry(Field::scale_reading, two);
    CHECK(alone.base == doctest::Approx(9.10e-6));
    CHECK(alone.doubt.count == 1);
    CHECK(alone.doubt.misread == 1);
    CHECK(alone.doubt.of_mean == 0);
    CHECK(alone.doubt.odd_by == 0);
}

TEST_CASE("the gas is that of what is weighed, or the one chosen where there is no reaction to tell it") {
    Readings readings;
    readings.own_gas = Gas::nitrogen;
    CHECK(gas_of(readings) == Gas::hydrogen);  // as long as nothing is chosen
    CHECK(weighs_metal(readings));
    readings.sample = Substance::calcium_carbonate;
    CHECK(gas_of(readings) == Gas::carbon_dioxide);
    CHECK_FALSE(weighs_metal(readings));
    readings.sample = Substance::own;
    CHECK(gas_of(readings) == Gas::nitrogen);
    CHECK_FALSE(weighs_metal(readings));
    readings.sample = Substance::zinc;
    CHECK(gas_of(readings) == Gas::hydrogen);
    CHECK(weighs_metal(readings));
    readings.target = Target::gas_molar_mass;
    CHECK(gas_of(readings) == Gas::nitrogen);
    CHECK_FALSE(weighs_metal(readings));
}
