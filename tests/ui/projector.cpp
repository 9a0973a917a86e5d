// Readings changed on the projector, in front of a class.

#include <doctest/doctest.h>

#include <string>

#include "tests/ui/desk.hpp"

using namespace overwater;
using namespace overwater::test;

TEST_CASE("The projector offers the reading at hand, though nothing was put down yet") {
    new_world();
    Desk desk;
    desk.own_run();
    desk.press("header.projector");
    desk.press("projector.changes");
    const Node& list = desk.node("projector.field");
    REQUIRE(list.options.size() == 1);
    CHECK(list.options[0].first == list.value);
    desk.type("bench.scale_reading", "9.15");
    desk.type("bench.scale_reading", "");
    CHECK(desk.node("projector.field").options.size() == 1);
}

TEST_CASE("The projector says what is wrong with a reading that is changed there") {
    for (const Screen screen : {Screen{}, Screen{1920, 1080, false}, Screen{390, 844, true}}) {
        new_world();
        Desk desk(screen);
        desk.own_run();
        desk.type_record_a();
        desk.focus("bench.scale_reading");
        desk.press("header.projector");
        desk.press("projector.changes");
        CHECK_FALSE(desk.node("bench.scale_reading").invalid);
        desk.type("bench.scale_reading", "9.l5");
        CHECK(desk.node("bench.scale_reading").invalid);
        const std::string key = desk.node("bench.scale_reading").described_by;
        REQUIRE(desk.find(key) != nullptr);
        CHECK(desk.node(key).name.size() > 10);
        CHECK(desk.node(key).rect.bottom() <= desk.node("projector.next").rect.y);
        desk.type("bench.scale_reading", "60");
        CHECK(plain(desk.node(desk.node("bench.scale_reading").described_by).name).find("50 mL") != std::string::npos);
        desk.document().compare(desk.nodes());
        CHECK(desk.document().faults.empty());
        desk.type("bench.scale_reading", "9.15");
        CHECK_FALSE(desk.node("bench.scale_reading").invalid);
        CHECK(desk.node("bench.scale_reading").described_by.empty());
    }
}
