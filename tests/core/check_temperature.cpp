#include <doctest/doctest.h>

#include "tests/core/check_support.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

Sheet at(const char* temperature) { return record_a().with({{Field::temperature, temperature}}); }

}  // namespace

TEST_CASE("a temperature outside 0 to 50 °C is doubted, one outside 10 to 35 °C is worth a note") {
    CHECK(says(at("51"), Field::temperature, "check.temperature_far"));
    CHECK(!says(at("49"), "check.temperature_far"));
    CHECK(says(at("49"), Field::temperature, "note.temperature_not_room"));
    CHECK(says(at("36"), Field::temperature, "note.temperature_not_room"));
    CHECK(says(at("9"), Field::temperature, "note.temperature_not_room"));
    for (const char* innocent : {"10", "21.4", "35", "294.6 K", "72 °F"}) CHECK(at(innocent).assessed().checks.empty());
}

TEST_CASE("a number that is a room's temperature in another unit names that unit") {
    const auto kelvin = found(at("294.6"), Field::temperature, "check.temperature_unit");
    REQUIRE(kelvin);
    CHECK(place(*kelvin, "other")->unit == UnitId::kelvin);
    CHECK(number_in(kelvin, "other") == doctest::Approx(21.45));
    const auto fahrenheit = found(at("72"), Field::temperature, "check.temperature_unit");
    REQUIRE(fahrenheit);
    CHECK(place(*fahrenheit, "other")->unit == UnitId::fahrenheit);
    CHECK(number_in(fahrenheit, "other") == doctest::Approx((72 - 32) / 1.8));
    CHECK(place(*found(at("21 °F"), Field::temperature, "check.temperature_unit"), "other")->unit == UnitId::celsius);
    // 90 °F would be 32 °C: more likely a hot liquid.
    CHECK(!says(at("90"), "check.temperature_unit"));
    CHECK(says(at("90"), "check.temperature_far"));
}

TEST_CASE("an outdoor temperature beyond −50 to 50 °C is asked about") {
    CHECK(says(record_a().with({{Field::outdoor_temperature, "59"}}), Field::outdoor_temperature,
               "check.outdoor_temperature"));
    CHECK(!says(record_a().with({{Field::outdoor_temperature, "-49"}}), "check.outdoor_temperature"));
    CHECK(!says(record_a().with({{Field::outdoor_temperature, "59 °F"}}), "check.outdoor_temperature"));
}

TEST_CASE("with a class's table a missing temperature is all that the vapour pressure waits for") {
    Conventions conventions;
    conventions.vapour = Conventions::Vapour::table;
    const Assessment run = record_a().without(Field::temperature).by(conventions).assessed();
    const OutputState& vapour = run.state(Output::water_vapour_pressure);
    CHECK(vapour.kind == OutputState::Kind::waiting);
    CHECK(vapour.waiting_for == FieldSet::of(Field::temperature));
}
