// Every page at every size and in both languages: nothing is cut off, nothing overlaps, every control has its name.

#include <algorithm>
#include <cmath>
#include <string>

#include "doctest/doctest.h"
#include "tests/ui/desk.hpp"
#include "tests/ui/every_state.hpp"
#include "tests/ui/ink.hpp"
#include "tests/ui/inspection.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

constexpr Screen screens[] = {{1366, 620, false}, {1280, 720, false}, {768, 1024, false}, {390, 844, false},
                              {683, 310, false},  {360, 640, false},  {390, 844, true},   {768, 1024, true}};

}  // namespace

TEST_CASE("An inspection finds what is cut off, overlaps, or has no name") {
    new_world();
    Desk desk;
    CHECK(Inspection(desk).faults().empty());
    auto& nodes = const_cast<std::vector<Node>&>(desk.nodes());
    const auto planted = [&](std::string_view key, auto change) {
        const std::vector<Node> before = desk.nodes();
        for (Node& node : nodes) {
            if (node.key == key) change(node);
        }
        const auto found = Inspection(desk).faults();
        nodes = before;
        return found.size();
    };
    CHECK(planted("bench.mass_of_metal.label", [](Node& n) { n.for_key = "bench.other"; }) > 0);
    CHECK(planted("bench.mass_of_metal", [](Node& n) { n.described_by = "not.there"; }) > 0);
    CHECK(planted("bench.mass_of_metal", [](Node& n) { n.rect.h += 20; }) > 0);
    CHECK(planted("results.scale", [](Node& n) { n.rect.w += 2000; }) > 0);
    CHECK(planted("results.scale", [](Node& n) { n.name.clear(); }) > 0);
    CHECK(planted("header.undo", [](Node& n) { n.rect.w = 10; }) > 0);
    // Ink: two texts at one place, one outside of every node, one cut.
    const auto letters = painted_letters(1366, 620);
    CHECK(letters.size() > 500);
    CHECK(std::any_of(letters.begin(), letters.end(), [](const Letter& l) { return l.framed; }));
    CHECK(std::none_of(letters.begin(), letters.end(), [](const Letter& l) { return l.cut; }));
}

namespace {

/// The faults of every state of the page at one size in one language.
void inspect_all(const std::string& language, const Screen& screen) {
    new_world();
    native_world().fragment = "lang=" + language;
    Desk desk(screen);
    REQUIRE(desk.document().language == language);
    for (const State& state : states) {
        state.reach(desk);
        const std::string place = language + ' ' + std::to_string(std::lround(screen.width)) + 'x' +
                                  std::to_string(std::lround(screen.height)) + (screen.touch ? " touch, " : ", ") +
                                  state.name;
        for (const std::string& fault : Inspection(desk).faults()) FAIL_CHECK((place + ": " + fault));
        for (const std::string& fault : desk.document().faults) FAIL_CHECK((place + ": " + fault));
        desk.document().faults.clear();
    }
}

}  // namespace

// tools/test runs this suite beside all others: it takes most of the time.
TEST_SUITE("layout") {
TEST_CASE("Nothing is cut off or overlaps, and everything has its name, on every page, at every size, also 40 % longer") {
    for (const char* language : {"en", "en-x-pseudo"}) {
        for (const Screen& screen : screens) {
            // Fingers need more room: where the longer words find it, the shorter ones do.
            if (screen.touch && std::string_view(language) == "en") continue;
            inspect_all(language, screen);
        }
    }
}

TEST_CASE("The same in every language, on a wide page and on the narrowest") {
    for (const LanguageName& language : language_names) {
        if (std::string_view(language.tag) == "en") continue;
        for (const Screen& screen : screens) {
            if (screen.width == 1366 || screen.width == 360) inspect_all(std::string(language.tag), screen);
        }
    }
}

}  // TEST_SUITE

TEST_CASE("The header with its list of languages is one row on a wide page") {
    for (const float width : {1366.0F, 1280.0F}) {
        new_world();
        Desk desk({width, 620, false});
        CHECK(desk.node("header").rect.h < 60);
        desk.own_run();
        CHECK(desk.node("header").rect.h < 60);
        CHECK(desk.node("header.language").rect.right() <= width);
    }
}

TEST_CASE("The bench needs no scrolling at 1366x620") {
    new_world();
    Desk desk({1366, 620, false});
    CHECK(desk.document().height <= 620);
    desk.own_run();
    CHECK(desk.document().height <= 620);
    desk.type_record_a();
    CHECK(desk.document().height <= 620);
    for (const Node& node : desk.nodes()) {
        if (node.role == Role::textbox) {
            desk.focus(node.key);
            break;
        }
    }
    desk.settle();
    CHECK(desk.document().height <= 620);
}
