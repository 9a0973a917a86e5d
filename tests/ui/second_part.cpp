// Pages whose code comes later: what stands in their place, and that nothing else waits.

#include <doctest/doctest.h>

#include "tests/ui/desk.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

/// On the way to a page of the second part, which is not there.
void go_to_codes(Desk& desk) {
    desk.press("header.practice");
    desk.press("practice.to_codes");
}

void answer(Desk& desk, bool there) {
    desk.send(Event::Kind::part, {}, {}, there ? 1 : 0);
    desk.settle();
}

}  // namespace

TEST_CASE("A page of the second part waits for it, and is there when it comes") {
    new_world();
    native_world().second_part_there = false;
    Desk desk;
    go_to_codes(desk);
    CHECK(desk.node("part").name == desk.app().say("page.codes"));
    CHECK(desk.node("part.state").name == desk.app().say("part.awaited"));
    CHECK(desk.find("part.again") == nullptr);
    CHECK(desk.find("codes.class") == nullptr);
    // Other pages go on meanwhile.
    desk.press("header.bench");
    desk.type("bench.scale_reading", "9.16");
    go_to_codes(desk);
    CHECK(desk.find("part.state") != nullptr);
    answer(desk, true);
    CHECK(desk.find("part.state") == nullptr);
    CHECK(desk.find("codes.class") != nullptr);
    // Once there, it stays.
    desk.press("header.bench");
    go_to_codes(desk);
    CHECK(desk.find("codes.class") != nullptr);
    CHECK(desk.app().entry(Field::scale_reading).text == "9.16");
}

TEST_CASE("A second part that cannot be had says so, can be asked for again, and loses nothing") {
    new_world();
    native_world().second_part_there = false;
    Desk desk;
    desk.own_run();
    desk.type("bench.scale_reading", "9.16");
    go_to_codes(desk);
    answer(desk, false);
    CHECK(desk.node("part.state").name == desk.app().say("part.missing"));
    CHECK(desk.node("status").name == desk.app().say("part.missing"));
    CHECK(desk.find("codes.class") == nullptr);
    desk.press("part.again");
    CHECK(desk.node("part.state").name == desk.app().say("part.awaited"));
    answer(desk, false);
    CHECK(desk.node("part.state").name == desk.app().say("part.missing"));
    CHECK(desk.node("status").name == desk.app().say("part.missing"));
    CHECK(desk.app().entry(Field::scale_reading).text == "9.16");
    desk.press("part.again");
    answer(desk, true);
    CHECK(desk.find("codes.class") != nullptr);
    CHECK(desk.app().entry(Field::scale_reading).text == "9.16");
}

TEST_CASE("A visit that begins on a page of the second part asks for it at once") {
    new_world();
    {
        Desk desk;
        go_to_codes(desk);
        CHECK(desk.find("codes.class") != nullptr);
    }
    native_world().second_part_there = false;
    Desk desk;
    CHECK(desk.node("part.state").name == desk.app().say("part.awaited"));
    answer(desk, true);
    CHECK(desk.find("codes.class") != nullptr);
}
