#include <doctest/doctest.h>

#include "core/quantity/message.hpp"

using namespace overwater;

TEST_CASE("a message carries its key and its arguments in order") {
    const Message message = Message{"check.beyond_scale"}
                                .quantity("reading", 5.2e-5, UnitId::millilitre, 2)
                                .figures("share", 0.023, UnitId::percent, 3)
                                .count("runs", 3)
                                .field("where", "scale_reading")
                                .text("typed", "abc");
    CHECK(message.key == "check.beyond_scale");
    REQUIRE(message.arguments.size() == 5);
    CHECK(message.arguments[0].kind == Argument::Kind::quantity);
    CHECK(message.arguments[0].name == "reading");
    CHECK(message.arguments[0].base == 5.2e-5);
    CHECK(message.arguments[0].unit == UnitId::millilitre);
    CHECK(message.arguments[0].digits == 2);
    CHECK_FALSE(message.arguments[0].significant);
    CHECK(message.arguments[1].significant);
    CHECK(message.arguments[1].digits == 3);
    CHECK(message.arguments[2].kind == Argument::Kind::count);
    CHECK(message.arguments[2].count == 3);
    CHECK(message.arguments[3].kind == Argument::Kind::field);
    CHECK(message.arguments[3].field == "scale_reading");
    CHECK(message.arguments[4].kind == Argument::Kind::text);
    CHECK(message.arguments[4].text == "abc");
}
