#include "core/record/convention_choices.hpp"

#include <doctest/doctest.h>

#include <algorithm>

using namespace overwater;

TEST_CASE("every convention that is a choice can be chosen by each of its names, and no other") {
    Conventions conventions;
    const auto all = convention_choices(conventions);
    REQUIRE(all.size() == 13);
    CHECK(all.front().name == "standard");
    for (const ConventionChoice& one : all) {
        INFO(one.name);
        CHECK(one.chosen == 0);  // what record.md calls the default stands first
        CHECK(one.values.size() >= 2);
        for (std::size_t i = one.values.size(); i-- > 0;) {
            INFO(one.values[i]);
            CHECK(choose(conventions, one.name, one.values[i]));
            const auto now = convention_choices(conventions);
            const auto same = [&](const ConventionChoice& other) { return other.name == one.name; };
            CHECK(std::find_if(now.begin(), now.end(), same)->chosen == i);
        }
        CHECK(conventions == Conventions{});
        CHECK_FALSE(choose(conventions, one.name, "later"));
    }
    CHECK_FALSE(choose(conventions, "later", "formula"));
    CHECK(conventions == Conventions{});
}
