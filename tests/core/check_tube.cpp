#include <doctest/doctest.h>

#include "tests/core/check_support.hpp"

using namespace overwater;
using namespace overwater::test;

TEST_CASE("record A, a careful run, draws no remark at all") { CHECK(record_a().assessed().checks.empty()); }

TEST_CASE("an end space left blank says what each missing mL costs") {
    const Sheet blank = record_a().without(Field::end_space);
    // 50 - 9.15 = 40.85 mL of gas are seen: 1/40.85.
    CHECK(number_in(found(blank, Field::end_space, "note.end_space_blank"), "share") == doctest::Approx(0.0244798));
    // A molar mass is divided by the amount of gas.
    const Sheet mass = blank.with({{Field::target, "molar_mass"}});
    CHECK(number_in(found(mass, Field::end_space, "note.end_space_blank_high"), "share") == doctest::Approx(0.0244798));
    CHECK(!says(record_a(), "note.end_space_blank"));
    CHECK(!says(blank.with({{Field::number_at_closed_end, "zero"}}), "note.end_space_blank"));
}

TEST_CASE("an end space that is no number is waited for, and does not count as blank") {
    for (const char* text : {"abc", "1e308", "2.3.5", "-"}) {
        CAPTURE(text);
        const Assessment run = record_a().with({{Field::end_space, text}}).assessed();
        CHECK(run.state(Output::gas_volume).kind != OutputState::Kind::value);
        CHECK(run.state(Output::gas_volume).waiting_for.has(Field::end_space));
        CHECK_FALSE(run.has(Output::molar_volume_standard));
        CHECK(!says(record_a().with({{Field::end_space, text}}), "note.end_space_blank"));
    }
    // So is a purity; the gas is there.
    const Assessment impure = record_a().with({{Field::purity, "x"}, {Field::target, "molar_mass"}}).assessed();
    CHECK(impure.has(Output::gas_volume));
    CHECK(impure.state(Output::molar_mass_found).waiting_for.has(Field::purity));
}

TEST_CASE("against a start reading the end space drops out, and a blank one is not asked for") {
    const Sheet start = record_a().without(Field::end_space).with({{Field::start_reading, "49.00"}});
    CHECK(says(start, Field::end_space, "note.end_space_cancels"));
    CHECK(!says(start, "note.end_space_blank"));
    CHECK(!says(start.with({{Field::end_space, "2.35"}}), "note.end_space_cancels"));
    // With its own level, 1 - p_start/p_end of it counts: 3 kPa more column make some 3 %.
    const Sheet level = start.with({{Field::start_level_difference, "420"}});
    const double column_more = 997.907 * 9.80665 * (0.420 - 0.112);
    const double share = number_in(found(level, Field::end_space, "note.end_space_blank"), "share");
    const double ratio = 1 - column_more / 95974.0;
    CHECK(share == doctest::Approx((1 - ratio) * 1.0 / (40.85 - 1.0 * ratio)).epsilon(1e-4));
}

TEST_CASE("an end space of exactly 0 is asked about, a small one is not") {
    CHECK(says(record_a().with({{Field::end_space, "0"}}), Field::end_space, "check.end_space_zero"));
    CHECK(!says(record_a().with({{Field::end_space, "0.1"}}), "check.end_space_zero"));
    CHECK(!says(record_a().with({{Field::end_space, "0"}, {Field::number_at_closed_end, "zero"}}),
                "check.end_space_zero"));
}

TEST_CASE("an end space of more than a fifth of the tube is asked about") {
    CHECK(says(record_a().with({{Field::end_space, "10.1"}}), Field::end_space, "check.end_space_large"));
    CHECK(!says(record_a().with({{Field::end_space, "10.0"}}), "check.end_space_large"));
    // Water weighed: 12 g are 12 mL, 4 g are the tap end of a burette.
    CHECK(says(record_a().with({{Field::end_space, "12.0 g"}}), Field::end_space, "check.end_space_large"));
    CHECK(!says(record_a().with({{Field::end_space, "4.0 g"}}), "check.end_space_large"));
}

TEST_CASE("capacities that no tube has are asked about") {
    CHECK(says(record_a().with({{Field::tube_capacity, "5000"}}), Field::tube_capacity, "check.capacity_unusual"));
    CHECK(says(record_a().with({{Field::tube_capacity, "50 µL"}}), Field::tube_capacity, "check.capacity_unusual"));
    for (const char* tube : {"10", "50", "100", "500"}) {
        CHECK(!says(record_a().with({{Field::tube_capacity, tube}}), "check.capacity_unusual"));
    }
}

TEST_CASE("a length of scale that the capacity does not go with is asked about") {
    const Sheet centimetres = record_a().with({{Field::length_of_scale, "55 mm"}});
    const auto check = found(centimetres, Field::length_of_scale, "check.length_of_scale");
    REQUIRE(check);
    CHECK(number_in(check, "usual") == doctest::Approx(0.550));
    CHECK(says(record_a().with({{Field::length_of_scale, "550 cm"}}), "check.length_of_scale"));
    CHECK(!says(record_a().with({{Field::length_of_scale, "55 cm"}}), "check.length_of_scale"));
    CHECK(!says(record_a().with({{Field::length_of_scale, "630"}}), "check.length_of_scale"));
}

TEST_CASE("a bore that changes nothing says why") {
    CHECK(says(record_a().with({{Field::tube_bore, "8"}}), Field::tube_bore, "note.bore_unknown"));
    CHECK(says(record_a().with({{Field::tube_bore, "1.1"}}), Field::tube_bore, "note.bore_unknown"));
    CHECK(says(record_a().with({{Field::tube_bore, "11"}, {Field::number_at_closed_end, "zero"}}), Field::tube_bore,
               "note.bore_counted"));
    CHECK(says(record_a().with({{Field::tube_bore, "11"}, {Field::start_reading, "49.0"}}), Field::tube_bore,
               "note.bore_cancels"));
    for (const char* bore : {"9.5", "11", "25"}) {
        CHECK(record_a().with({{Field::tube_bore, bore}}).assessed().checks.empty());
    }
}

TEST_CASE("gas down to the scale's end may have gone past it") {
    CHECK(says(record_a().with({{Field::scale_reading, "0"}}), Field::scale_reading, "check.gas_to_last_mark"));
    CHECK(!says(record_a().with({{Field::scale_reading, "0.20"}}), "check.gas_to_last_mark"));
    const Sheet upright = record_a().with({{Field::number_at_closed_end, "zero"}});
    CHECK(says(upright.with({{Field::scale_reading, "50.0"}}), Field::scale_reading, "check.gas_to_last_mark"));
    CHECK(!says(upright.with({{Field::scale_reading, "49.8"}}), "check.gas_to_last_mark"));
}

TEST_CASE("of a start reading and a bubble one counts, and it is said which") {
    const Sheet both = record_a().with({{Field::start_reading, "49.00"}, {Field::starting_bubble, "1.0"}});
    CHECK(says(both, Field::starting_bubble, "check.start_and_bubble"));
    CHECK(both.assessed().value(Output::gas_volume) ==
          record_a().with({{Field::start_reading, "49.00"}}).assessed().value(Output::gas_volume));
    CHECK(!says(record_a().with({{Field::start_reading, "49.00"}}), "check.start_and_bubble"));
    CHECK(!says(record_a().with({{Field::starting_bubble, "1.0"}}), "check.start_and_bubble"));
}

TEST_CASE("more gas at the start than at the end means that something is exchanged") {
    CHECK(says(record_a().with({{Field::start_reading, "8.00"}}), Field::start_reading, "check.more_gas_at_start"));
    CHECK(!says(record_a().with({{Field::start_reading, "48.00"}}), "check.more_gas_at_start"));
    CHECK(says(record_a().with({{Field::starting_bubble, "44"}}), Field::starting_bubble, "check.bubble_larger"));
    CHECK(!says(record_a().with({{Field::starting_bubble, "4.4"}}), "check.bubble_larger"));
}

TEST_CASE("a start reading beyond the scale, or below zero, is asked about") {
    CHECK(says(record_a().with({{Field::start_reading, "52.0"}}), Field::start_reading, "check.start_beyond_scale"));
    CHECK(!says(record_a().with({{Field::start_reading, "50.0"}}), "check.start_beyond_scale"));
    CHECK(says(record_a().with({{Field::starting_bubble, "-1.0"}}), Field::starting_bubble, "check.below_zero"));
    CHECK(!says(record_a().with({{Field::starting_bubble, "0.0"}}), "check.below_zero"));
}

TEST_CASE("a start level left blank says how much that may cost, where it costs enough") {
    const Sheet large = record_a().with({{Field::starting_bubble, "2.0"}});
    const auto check = found(large, Field::start_level_difference, "note.start_level_blank");
    REQUIRE(check);
    // 550 mm of scale, all of it liquid, against the 1096.05 Pa of the end (method.md, record A).
    const double lower = 997.907 * 9.80665 * 0.550 - 1096.05;
    CHECK(number_in(check, "share") == doctest::Approx(2.0 * lower / (95974.0 * 41.2)).epsilon(1e-4));
    CHECK(!says(record_a().with({{Field::starting_bubble, "0.2"}}), "note.start_level_blank"));
    CHECK(!says(large.with({{Field::start_level_difference, "500"}}), "note.start_level_blank"));
}

TEST_CASE("a start level without a side is not used, and it is said so") {
    const Sheet start = record_a().with({{Field::starting_bubble, "2.0"}, {Field::start_level_difference, "300"}});
    CHECK(says(start.with({{Field::liquid_stands, "level"}}), Field::start_level_difference,
               "note.start_level_not_used"));
    CHECK(!says(start, "note.start_level_not_used"));
}
