#include <doctest/doctest.h>

#include "core/explain/formula.hpp"

using namespace overwater;

namespace {

using Kind = Formula::Kind;

Formula number(const char* text) { return Formula::leaf(Kind::number, text); }
Formula over(Formula above, Formula below) { return Formula::of(Kind::fraction, {std::move(above), std::move(below)}); }

}  // namespace

TEST_CASE("of two formulas of one form the leaves that differ are marked") {
    Formula now = over(number("2"), Formula::of(Kind::root, {number("3")}));
    mark_changes(now, over(number("2"), Formula::of(Kind::root, {number("4")})));
    CHECK_FALSE(now.changed);
    CHECK_FALSE(now.children[0].changed);
    CHECK(now.children[1].children[0].changed);
    mark_changes(now, now);
    CHECK_FALSE(now.children[1].children[0].changed);
}

TEST_CASE("where the forms differ, all below is marked") {
    Formula now = over(number("2"), over(number("3"), number("4")));
    mark_changes(now, over(number("2"), number("3")));
    CHECK_FALSE(now.children[0].changed);
    CHECK(now.children[1].children[0].changed);
    CHECK(now.children[1].children[1].changed);
}
