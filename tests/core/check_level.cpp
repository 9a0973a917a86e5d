#include <doctest/doctest.h>

#include "tests/core/check_support.hpp"

using namespace overwater;
using namespace overwater::test;

TEST_CASE("a level difference longer than the tube below the meniscus would lift its mouth out of the water") {
    // 9.15 mL above the 0 mark at 11 mm a mL: about 101 mm of scale.
    const Sheet centimetres = record_a().with({{Field::level_difference, "112 cm"}});
    const auto check = found(centimetres, Field::level_difference, "check.mouth_out_of_water_unit");
    REQUIRE(check);
    CHECK(number_in(check, "room") == doctest::Approx(0.10065));
    CHECK(number_in(check, "other") == doctest::Approx(0.112));
    CHECK(place(*check, "other")->unit == UnitId::millimetre);
    CHECK(says(record_a().with({{Field::level_difference, "1120"}}), Field::level_difference,
               "check.mouth_out_of_water"));
    // Beyond the scale a tube goes on to its mouth.
    CHECK(record_a().with({{Field::level_difference, "112"}}).assessed().checks.empty());
    CHECK(record_a().with({{Field::level_difference, "11.2 cm"}}).assessed().checks.empty());
    CHECK(record_a().with({{Field::level_difference, "190"}}).assessed().checks.empty());
}

TEST_CASE("a measured length of scale decides whether the mouth is out of the water") {
    const Sheet little_gas = record_a().with({{Field::scale_reading, "30.0"}, {Field::level_difference, "480"}});
    // 30 mL at 11 mm are 330 mm, at 13 mm 390 mm; without a scale a tube has up to 100 mm more.
    CHECK(!says(little_gas, "check.mouth_out_of_water"));
    CHECK(says(little_gas.with({{Field::length_of_scale, "550"}}), "check.mouth_out_of_water"));
    CHECK(!says(little_gas.with({{Field::length_of_scale, "650"}}), "check.mouth_out_of_water"));
}

TEST_CASE("on a scale with 0 at the closed end the tube below the meniscus is what the scale has left") {
    const Sheet upright = record_a().with({{Field::number_at_closed_end, "zero"}, {Field::scale_reading, "43.2"}});
    CHECK(says(upright.with({{Field::level_difference, "400"}}), "check.mouth_out_of_water"));
    CHECK(!says(upright.with({{Field::level_difference, "112"}}), "check.mouth_out_of_water"));
    CHECK(!says(upright.with({{Field::scale_reading, "10.0"}, {Field::level_difference, "400"}}),
                "check.mouth_out_of_water"));
}

TEST_CASE("outside higher than the gas is long would put the closed end under water") {
    const Sheet outside = record_a().with({{Field::liquid_stands, "higher_outside"}});
    CHECK(says(outside.with({{Field::level_difference, "112 cm"}}), Field::level_difference,
               "check.closed_end_under_water_unit"));
    CHECK(!says(outside.with({{Field::level_difference, "112"}}), "check.closed_end_under_water_unit"));
    CHECK(says(outside.with({{Field::level_difference, "990"}}), Field::level_difference,
               "check.closed_end_under_water"));
    CHECK(!says(outside.with({{Field::level_difference, "440"}}), "check.closed_end_under_water"));
}

TEST_CASE("tenths of a millimetre look like centimetres, whole and half millimetres do not") {
    const Sheet tenths = record_a().with({{Field::level_difference, "11.2"}});
    const auto check = found(tenths, Field::level_difference, "check.level_in_centimetres");
    REQUIRE(check);
    CHECK(number_in(check, "other") == doctest::Approx(0.112));
    for (const char* innocent : {"11", "11.0", "11.5", "11.2 cm", "42.3", "112"}) {
        CHECK(!says(record_a().with({{Field::level_difference, innocent}}), "check.level_in_centimetres"));
    }
}

TEST_CASE("the level at the start has the whole tube below a bubble") {
    const Sheet bubble = record_a().with({{Field::starting_bubble, "2.0"}});
    CHECK(!says(bubble.with({{Field::start_level_difference, "480"}}), "check.mouth_out_of_water"));
    CHECK(says(bubble.with({{Field::start_level_difference, "480 cm"}}), Field::start_level_difference,
               "check.mouth_out_of_water_unit"));
    const Sheet start = record_a().with({{Field::start_reading, "48.0"}});
    CHECK(!says(start.with({{Field::start_level_difference, "480"}}), "check.mouth_out_of_water"));
    CHECK(says(start.with({{Field::start_level_difference, "800"}}), Field::start_level_difference,
               "check.mouth_out_of_water"));
}
