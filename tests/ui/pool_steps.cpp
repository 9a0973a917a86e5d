// Steps on the class set taken back, one by one: nothing that a person did there is lost by the next press.

#include <doctest/doctest.h>

#include "tests/ui/desk.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

void read(Desk& desk, const std::string& text) {
    desk.focus("pool.text");
    desk.document().type("pool.text", text);
    desk.send(Event::Kind::input, "pool.text", text);
    desk.settle();
    desk.press("pool.read");
}

const std::vector<PoolGroup>& groups(Desk& desk) { return desk.app().pool_desk().groups; }

std::string all_words(const Desk& desk) {
    std::string all;
    for (const Node& node : desk.nodes()) all += node.name + '\n' + node.value + '\n';
    return plain(all);
}

bool has(const std::string& text, std::string_view what) { return text.find(what) != std::string::npos; }

constexpr const char* three =
    "Group,Mass of metal (g),Scale reading (mL)\n1,0.0412,9.15\n2,0.0400,9.15\n3,0.0424,9.15\n";

void begin(Desk& desk) {
    desk.own_run();
    desk.type_record_a();
    desk.press("header.class");
    read(desk, three);
}

std::string scale_reading(Desk& desk, std::size_t group) {
    return entry_for(groups(desk)[group].record, 0, Field::scale_reading).text;
}

}  // namespace

TEST_CASE("A table read again takes corrections away, and one press brings them back") {
    new_world();
    Desk desk;
    begin(desk);
    desk.press("pool.group.1.open");
    desk.type("pool.group.1.0.scale_reading", "9.25");
    desk.press("pool.group.2.open");
    desk.press("pool.group.2.out");
    desk.type("pool.group.2.reason", "gas lost");
    desk.press("pool.read");
    CHECK(scale_reading(desk, 1) == "9.15");
    CHECK_FALSE(groups(desk)[2].left_out);
    desk.press("pool.undo");
    CHECK(scale_reading(desk, 1) == "9.25");
    CHECK(groups(desk)[2].left_out);
    CHECK(groups(desk)[2].reason == "gas lost");
}

TEST_CASE("A table of which nothing can be used takes nothing away") {
    new_world();
    Desk desk;
    begin(desk);
    read(desk, "Group;Weight (stone);Thing\n1;3;4\n");
    CHECK(groups(desk).size() == 3);
    CHECK_FALSE(desk.app().pool_desk().problems.empty());
}

TEST_CASE("Undo and redo of the header go through the steps of the class set") {
    new_world();
    Desk desk;
    begin(desk);
    desk.press("pool.group.1.open");
    desk.type("pool.group.1.0.scale_reading", "9.2");
    desk.type("pool.group.1.0.scale_reading", "9.25");
    desk.press("pool.group.2.open");
    desk.press("pool.group.2.remove");
    REQUIRE(groups(desk).size() == 2);
    desk.press("header.undo");
    CHECK(groups(desk).size() == 3);
    CHECK(groups(desk)[2].name == "3");
    // Letters typed one after the other are one step.
    desk.press("header.undo");
    CHECK(scale_reading(desk, 1) == "9.15");
    desk.press("header.redo");
    CHECK(scale_reading(desk, 1) == "9.25");
    desk.press("header.redo");
    CHECK(groups(desk).size() == 2);
    // The record at the bench has steps of its own.
    desk.press("header.undo");
    desk.press("header.bench");
    CHECK(plain(desk.output("Molar volume at standard conditions")).starts_with("22.68"));
}

TEST_CASE("The same sheets opened a second time are the same groups") {
    new_world();
    Desk desk;
    begin(desk);
    const std::string again = "Group,Mass of metal (g),Scale reading (mL)\n3,0.0430,9.15\n4,0.0418,9.15\n";
    desk.send(Event::Kind::file, "class.csv", again);
    desk.settle();
    // Group 3 with another mass is another sheet: both stay, and whoever looks decides.
    CHECK(groups(desk).size() == 5);
    CHECK_FALSE(has(all_words(desk), "came a second time"));
    const std::string twice = "Group,Mass of metal (g),Scale reading (mL)\n2,0.0400,9.15\n";
    desk.send(Event::Kind::file, "class.csv", twice);
    desk.settle();
    CHECK(has(all_words(desk), "Group 2 came a second time"));
    CHECK(groups(desk).size() == 5);
}

TEST_CASE("Two groups alike in every reading are two groups after loading the page again too") {
    new_world();
    {
        Desk desk;
        begin(desk);
        desk.press("pool.add");
        desk.press("pool.add");
        REQUIRE(groups(desk).size() == 5);
        for (std::size_t i = 3; i < 5; ++i) {
            desk.press("pool.group." + std::to_string(i) + ".open");
            desk.type("pool.group." + std::to_string(i) + ".0.mass_of_metal", "0.0412");
            desk.type("pool.group." + std::to_string(i) + ".0.scale_reading", "9.15");
            desk.type("pool.group." + std::to_string(i) + ".name", "7");
        }
        desk.settle();
    }
    Desk again;
    CHECK(groups(again).size() == 5);
    CHECK_FALSE(has(all_words(again), "came a second time"));
}

TEST_CASE("A word where a number belongs is named in the group's row") {
    new_world();
    Desk desk;
    begin(desk);
    read(desk, "Group,Mass of metal (g),Scale reading (mL)\n1,0.0412,twelve\n2,0.0400,9.15\n");
    CHECK(has(plain(desk.node("pool.group.0.open").name), "Scale reading: "));
    CHECK(has(plain(desk.node("pool.group.0.open").name), "number"));
}

TEST_CASE("Rows exchanged explain what else would be seen, so that alone is said") {
    new_world();
    Desk desk;
    begin(desk);
    // Invented: the volumes of groups 4 and 5 are exchanged.
    read(desk,
         "Group,Mass of metal (g),Scale reading (mL)\n1,0.0378,12.7\n2,0.0391,11.4\n3,0.0402,10.2\n4,0.0330,8.6\n"
         "5,0.0418,17.8\n6,0.0384,12.1\n7,0.0365,14.1\n");
    const auto& patterns = desk.app().pool_desk().patterns;
    REQUIRE(patterns.size() == 1);
    CHECK(patterns[0].message.key == "pattern.swapped");
}
