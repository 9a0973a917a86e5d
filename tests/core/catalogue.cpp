#include "core/quantity/catalogue.hpp"

#include <doctest/doctest.h>

using namespace overwater;

TEST_CASE("a sentence is found by its key, in the form for one thing or for several") {
    const Catalogue some("a\nb.c\nd\n", "First.\n{n} run\t{n} runs\nLast.\n");
    REQUIRE(some.whole());
    CHECK(some.sentence("a", false) == "First.");
    CHECK(some.sentence("a", true) == "First.");
    CHECK(some.sentence("b.c", true) == "{n} run");
    CHECK(some.sentence("b.c", false) == "{n} runs");
    CHECK(some.sentence("d", false) == "Last.");
    for (const char* key : {"", "b", "b.d", "e"}) {
        CHECK_FALSE(some.knows(key));
        CHECK(some.sentence(key, false).data() == nullptr);
    }
}

TEST_CASE("keys that are added find the sentences behind the others, once") {
    Catalogue some("b\nd\n", "Second.\nFourth.\nFirst.\n");
    REQUIRE(some.whole());
    CHECK_FALSE(some.knows("a"));
    some.add("", "");
    some.add("a\nc\n", "Third.\tThirds.\n");
    REQUIRE(some.whole());
    some.add("e\n", "Fifth.\n");
    CHECK(some.sentence("a", false) == "First.");
    CHECK(some.sentence("b", false) == "Second.");
    CHECK(some.sentence("c", true) == "Third.");
    CHECK(some.sentence("d", false) == "Fourth.");
    for (const char* key : {"", "aa", "bb", "cc", "e"}) CHECK_FALSE(some.knows(key));
}

TEST_CASE("a catalogue that lacks a sentence is not whole") {
    CHECK_FALSE(Catalogue("a\nb\n", "First.\n").whole());
    CHECK(Catalogue().whole());
}
