// Limits of the remarks below a reading: met exactly, just inside, and just outside. Each from method.md, or own choice as the
// sources say; the volumes of record A by hand.

#include <doctest/doctest.h>

#include <string>

#include "tests/core/check_support.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

Sheet with(Field field, const char* text) { return record_a().with({{field, text}}); }
Sheet weighs(const char* mass) { return with(Field::mass_of_metal, mass); }

Sheet ribbon(const char* length, const char* per_metre) {
    return record_a()
        .without(Field::mass_of_metal)
        .with({{Field::mass_from, "ribbon"}, {Field::ribbon_length, length}, {Field::mass_per_metre, per_metre}});
}
Sheet by_difference(const char* before, const char* after) {
    return record_a()
        .without(Field::mass_of_metal)
        .with({{Field::mass_from, "by_difference"}, {Field::mass_before, before}, {Field::mass_after, after}});
}

/// Weight of the remark on few digits, and nothing where there is none.
std::string weight_of(const Sheet& sheet, Field field, const char* key) {
    const auto check = found(sheet, field, key);
    if (!check) return "nothing";
    return check->weight == Check::Weight::note ? "note" : "doubt";
}

}  // namespace

TEST_CASE("one figure is doubted, two that begin with a one are noted, and 20 of the last digit are enough") {
    const auto digits = [](const char* mass) {
        return weight_of(weighs(mass), Field::mass_of_metal, "check.few_digits");
    };
    CHECK(digits("0.01") == "doubt");
    CHECK(digits("0.09") == "doubt");
    CHECK(digits("0.009") == "doubt");
    CHECK(digits("0.010") == "note");
    CHECK(digits("0.019") == "note");
    CHECK(digits("0.020") == "nothing");
    const auto between = [](const char* before, const char* after) {
        return weight_of(by_difference(before, after), Field::mass_after, "check.few_digits_between");
    };
    CHECK(between("1.29", "1.20") == "doubt");
    CHECK(between("1.30", "1.20") == "note");
    CHECK(between("1.39", "1.20") == "note");
    CHECK(between("1.40", "1.20") == "nothing");
    // The coarser of two masses has the doubt: 0.04 to half of 0.01, whichever was read so.
    for (const Sheet& sheet : {by_difference("1.2400", "1.20"), by_difference("1.24", "1.2000")}) {
        const auto check = found(sheet, Field::mass_after, "check.few_digits_between");
        CHECK(number_in(check, "share") == doctest::Approx(1.0 / 8));
        REQUIRE(check);
        CHECK(place(*check, "reading")->digits == 2);
    }
    CHECK(weight_of(ribbon("4.10", "1"), Field::mass_per_metre, "check.few_digits") == "doubt");
    // Nothing was used up: that is said otherwise.
    CHECK_FALSE(says(by_difference("1.20", "1.20"), "check.few_digits_between"));
    CHECK_FALSE(says(by_difference("1.20", "1.20"), "check.after_larger"));
}

TEST_CASE("acid of exactly the amount needed suffices, and exactly twice of it is enough") {
    // A whole mole of an invented metal, so that the ratio is exact: it needs a mole of acid, which is in 1 L.
    const auto acid = [](const char* volume) {
        return record_a().with({{Field::metal, "own"},
                                {Field::gas, "hydrogen"},
                                {Field::molar_mass, "1000"},
                                {Field::gas_per_mole, "1"},
                                {Field::acid_per_mole, "1"},
                                {Field::mass_of_metal, "1 kg"},
                                {Field::acid_volume, volume},
                                {Field::acid_concentration, "1"}});
    };
    CHECK(says(acid("0.999 L"), "check.acid_limits"));
    CHECK_FALSE(says(acid("1 L"), "check.acid_limits"));
    CHECK(says(acid("1 L"), "check.acid_short"));
    CHECK(says(acid("1.999 L"), "check.acid_short"));
    CHECK_FALSE(says(acid("2 L"), "check.acid_short"));
}

TEST_CASE("the strongest acids: 13 and 18.4 mol/L, with the teacher above 3 mol/L, and not above 2 mol/L of sulfuric") {
    // method.md, sections 3 and 10; 37 % and 98 % are what is sold.
    const auto acid = [](const char* which, const char* concentration) {
        return record_a().with({{Field::acid, which}, {Field::acid_concentration, concentration}});
    };
    CHECK_FALSE(says(acid("hydrochloric", "13"), "check.no_such_acid"));
    CHECK(says(acid("hydrochloric", "13"), "note.strong_hydrochloric"));
    CHECK(says(acid("hydrochloric", "13.1"), "check.no_such_acid"));
    CHECK_FALSE(says(acid("hydrochloric", "3"), "note.strong_hydrochloric"));
    CHECK(says(acid("hydrochloric", "3.01"), "note.strong_hydrochloric"));
    CHECK_FALSE(says(acid("sulfuric", "18.4"), "check.no_such_acid"));
    CHECK(says(acid("sulfuric", "18.5"), "check.no_such_acid"));
    CHECK_FALSE(says(acid("sulfuric", "2"), "check.strong_sulfuric"));
    CHECK(says(acid("sulfuric", "2.01"), "check.strong_sulfuric"));
}

TEST_CASE("tubes from 5 to 500 mL are usual, and a ring is known for bores of 9.5 to 25 mm") {
    for (const char* usual : {"5", "500"})
        CHECK_FALSE(says(with(Field::tube_capacity, usual), "check.capacity_unusual"));
    for (const char* unusual : {"4.9", "501"})
        CHECK(says(with(Field::tube_capacity, unusual), "check.capacity_unusual"));
    for (const char* unknown : {"9.4", "25.1"}) {
        const auto note = found(with(Field::tube_bore, unknown), Field::tube_bore, "note.bore_unknown");
        REQUIRE(note);
        CHECK(number_in(note, "lowest") == doctest::Approx(9.5e-3));
        CHECK(number_in(note, "highest") == doctest::Approx(25e-3));
        CHECK(place(*note, "lowest")->unit == UnitId::millimetre);
        CHECK(place(*note, "lowest")->digits == 1);  // 9.5 and 25, as they are
        CHECK(place(*note, "highest")->digits == 0);
    }
}

TEST_CASE("a column reaches a quarter beyond an assumed scale, a twentieth beyond a measured one, and 100 mm more") {
    // 9.15 mL at 11 mm a mL are 100.65 mm: 1.25 x 100.65 + 100 = 225.8 mm; 1.05 x 100.65 + 100 = 205.7 mm.
    const auto out = [](const Sheet& sheet) { return says(sheet, "check.mouth_out_of_water"); };
    const auto level = [](const char* millimetres) { return with(Field::level_difference, millimetres); };
    CHECK_FALSE(out(level("225")));
    CHECK(out(level("226")));
    CHECK_FALSE(out(level("205").with({{Field::length_of_scale, "550"}})));
    CHECK(out(level("206").with({{Field::length_of_scale, "550"}})));
    // Gas down to the last mark: the 100 mm beyond it are all that is left.
    CHECK_FALSE(out(level("99").with({{Field::scale_reading, "0"}})));
    CHECK(out(level("101").with({{Field::scale_reading, "0"}})));
    // Outside higher it is the gas's side: 40.85 mL are 449.35 mm, 661.7 mm with what is allowed.
    const auto under = [&](const char* millimetres) {
        return says(level(millimetres).with({{Field::liquid_stands, "higher_outside"}}),
                    "check.closed_end_under_water");
    };
    CHECK_FALSE(under("661"));
    CHECK(under("662"));
    // At the start a bubble leaves 550 mm of scale: 787.5 mm, whichever end has the 0.
    for (const char* end : {"largest", "zero"}) {
        CAPTURE(end);
        const Sheet bubble = record_a().with({{Field::starting_bubble, "2.0"},
                                              {Field::number_at_closed_end, end},
                                              {Field::scale_reading, "25.0"},
                                              {Field::level_difference, "112"}});
        CHECK_FALSE(out(bubble.with({{Field::start_level_difference, "787"}})));
        CHECK(out(bubble.with({{Field::start_level_difference, "788"}})));
    }
}

TEST_CASE("tenths of a millimetre below 30 look like centimetres, as far as the tube goes") {
    const auto looks = [](const Sheet& sheet) { return says(sheet, "check.level_in_centimetres"); };
    // 22.4 cm fit into the 225.8 mm of record A, 22.6 cm do not.
    CHECK(looks(with(Field::level_difference, "22.4")));
    CHECK_FALSE(looks(with(Field::level_difference, "22.6")));
    const Sheet long_tube = record_a().with({{Field::scale_reading, "30.0"}});
    CHECK(looks(long_tube.with({{Field::level_difference, "29.9"}})));
    CHECK_FALSE(looks(long_tube.with({{Field::level_difference, "30.1"}})));
    CHECK_FALSE(looks(long_tube.with({{Field::level_difference, "11.23"}})));
    const auto check =
        found(with(Field::level_difference, "22.4"), Field::level_difference, "check.level_in_centimetres");
    REQUIRE(check);
    CHECK(place(*check, "other")->unit == UnitId::centimetre);
    CHECK(place(*check, "other")->digits == 1);
}

TEST_CASE("the gas of the metal fills a twentieth of the tube, and not more than all of it") {
    // 1 mg of magnesium gives 8.314462618 x 294.55/95974/24.305 m³/kg = 1.04989 mL: 2.5 mL are 2.3812 mg, 52.35 mL 49.862 mg.
    CHECK(says(weighs("0.002381"), "check.too_little_metal"));
    CHECK_FALSE(says(weighs("0.002382"), "check.too_little_metal"));
    CHECK_FALSE(says(weighs("0.04986"), "check.too_much_metal"));
    CHECK(says(weighs("0.04987"), "check.too_much_metal"));
    // Without an end space the 50 mL of the scale: 47.624 mg.
    const Sheet alone = record_a().without(Field::end_space);
    CHECK_FALSE(says(alone.with({{Field::mass_of_metal, "0.04762"}}), "check.too_much_metal"));
    CHECK(says(alone.with({{Field::mass_of_metal, "0.04763"}}), "check.too_much_metal"));
}

TEST_CASE("the room of the gas is taken as 25 °C and 100 kPa where the one put down cannot be") {
    // Invented: 15.0 g for 15.0 mg, whose gas the tube holds in thin air too; a room of 0 to 50 °C with 40 to 110 kPa of dry
    // gas is believed.
    const double moles = 15.0 / 24.305;
    const auto volume = [](const Sheet& sheet) {
        return number_in(found(sheet.with({{Field::mass_of_metal, "15.0"}}), Field::mass_of_metal, "check.mass_unit"),
                         "volume");
    };
    const auto in_room = [&](const Sheet& sheet) {
        const Assessment run = sheet.assessed();
        return moles * 8.314462618 * run.value(Output::absolute_temperature).value() /
               run.value(Output::dry_gas_pressure).value();
    };
    const double otherwise = moles * 8.314462618 * 298.15 / 1e5;
    for (const char* believed : {"0", "50"}) {
        CHECK(volume(with(Field::temperature, believed)) ==
              doctest::Approx(in_room(with(Field::temperature, believed))));
    }
    for (const char* not_believed : {"50.1", "95"}) {
        CHECK(volume(with(Field::temperature, not_believed)) == doctest::Approx(otherwise));
    }
    // 3.646 kPa of column and vapour: 40.15 kPa and 109.85 kPa of dry gas, and 0.2 kPa beyond.
    for (const char* believed : {"43.80", "113.5"}) {
        CHECK(volume(with(Field::barometer, believed)) == doctest::Approx(in_room(with(Field::barometer, believed))));
    }
    for (const char* not_believed : {"43.50", "113.8"}) {
        const Sheet sheet = with(Field::barometer, not_believed);
        CHECK(volume(sheet) == doctest::Approx(moles * 8.314462618 * 294.55 / 1e5));
    }
}

TEST_CASE("a purity that may be a fraction is shown in as many decimals as it was typed with") {
    const auto other = [](const char* typed) {
        return found(with(Field::purity, typed), Field::purity, "check.purity_fraction");
    };
    REQUIRE(other("0.98"));
    CHECK(place(*other("0.98"), "other")->digits == 0);  // 98 %
    REQUIRE(other("0.985"));
    CHECK(place(*other("0.985"), "other")->digits == 1);  // 98.5 %
    REQUIRE(other("1"));
    CHECK(place(*other("1"), "other")->digits == 0);
    CHECK_FALSE(other("1.1"));
}

TEST_CASE("ribbon of exactly 0.5 and 2 g/m is usual, and these are the limits named") {
    for (const char* usual : {"0.50", "2.0"}) CHECK_FALSE(says(ribbon("41.0", usual), "check.ribbon"));
    for (const char* unusual : {"0.49", "2.1"}) {
        CAPTURE(unusual);
        const auto check = found(ribbon("41.0", unusual), Field::mass_per_metre, "check.ribbon");
        REQUIRE(check);
        CHECK(number_in(check, "lowest") == doctest::Approx(0.5e-3));
        CHECK(number_in(check, "highest") == doctest::Approx(2.0e-3));
        CHECK(place(*check, "lowest")->unit == UnitId::gram_per_metre);
        CHECK(place(*check, "lowest")->digits == 1);
        CHECK(place(*check, "highest")->digits == 1);
    }
    CHECK_FALSE(says(ribbon("0", "1.0"), "check.below_zero"));
}

TEST_CASE("gas at the start: exactly as much as at the end, exactly nothing") {
    CHECK_FALSE(says(with(Field::start_reading, "9.15"), "check.more_gas_at_start"));
    CHECK(says(with(Field::start_reading, "9.14"), "check.more_gas_at_start"));
    CHECK_FALSE(says(with(Field::start_reading, "0"), "check.below_zero"));
    CHECK_FALSE(says(with(Field::start_reading, "50"), "check.start_beyond_scale"));
    CHECK(says(with(Field::start_reading, "50.1"), "check.start_beyond_scale"));
}

TEST_CASE("a start level that nobody measured is said from a thousandth of the result") {
    // b mL of bubble: b x 4286.3 Pa/(95974 Pa x (43.20 - b)) is a thousandth for 0.946 mL.
    CHECK_FALSE(says(with(Field::starting_bubble, "0.94"), "note.start_level_blank"));
    CHECK(says(with(Field::starting_bubble, "0.95"), "note.start_level_blank"));
    // Outside higher the pressure at the end was the greater one: the same column, with the other sign.
    const Sheet outside = record_a().with({{Field::starting_bubble, "2.0"}, {Field::liquid_stands, "higher_outside"}});
    const double column = 997.907 * 9.80665 * 0.112;
    const double hanging = 997.907 * 9.80665 * 0.550;
    CHECK(number_in(found(outside, Field::start_level_difference, "note.start_level_blank"), "share") ==
          doctest::Approx(2.0 * (hanging + column) / ((99620 - 2549.94 + column) * 41.2)).epsilon(1e-4));
    // Against a start reading of 48 mL: 528 mm of scale, 2 mL and the end space of gas.
    const Sheet start = with(Field::start_reading, "48.0");
    CHECK(number_in(found(start, Field::start_level_difference, "note.start_level_blank"), "share") ==
          doctest::Approx(4.35 * (997.907 * 9.80665 * 0.528 - column) / (95974.0 * (43.20 - 4.35))).epsilon(1e-4));
}

TEST_CASE(
    "rooms from 10 to 35 °C draw no remark, from 0 to 50 °C a note, and a class's from 15 to 30 °C names its unit") {
    const auto at = [](const char* celsius) { return with(Field::temperature, celsius); };
    for (const char* note : {"0", "9.9", "35.1", "50"}) {
        CAPTURE(note);
        CHECK(says(at(note), "note.temperature_not_room"));
    }
    for (const char* far : {"50.1", "-0.1"}) CHECK_FALSE(says(at(far), "note.temperature_not_room"));
    CHECK(says(at("50.1"), "check.temperature_far"));
    // 59 °F and 86 °F are 15 and 30 °C.
    for (const char* fahrenheit : {"59", "86"}) CHECK(says(at(fahrenheit), "check.temperature_unit"));
    for (const char* neither : {"58", "87"}) CHECK_FALSE(says(at(neither), "check.temperature_unit"));
    const auto outdoors = [](const char* celsius) {
        return says(with(Field::outdoor_temperature, celsius), "check.outdoor_temperature");
    };
    for (const char* weather : {"-50", "50"}) CHECK_FALSE(outdoors(weather));
    for (const char* none : {"-50.1", "50.1"}) CHECK(outdoors(none));
}
