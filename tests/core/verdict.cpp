#include "core/result/verdict.hpp"

#include <doctest/doctest.h>

using namespace overwater;

namespace {

/// Of one input, with the numbers that the verdict looks at.
Budget budget(double value, double u, double expanded) {
    Budget made;
    made.value = value;
    made.u = u;
    made.expanded = expanded;
    made.rows.resize(1);
    return made;
}

CoverageInterval interval(double low, double high) { return {low, high, false}; }

}  // namespace

TEST_CASE("JCGM 101:2008, 7.9.2, example 1: u = 0.000 35 g with two digits is compared to 0.000 005 g") {
    const Budget mass = budget(100, 0.00035, 0.0007);
    const double off = 0.000004;
    const Agreement near = compared(mass, interval(100 - 0.0007 - off, 100 + 0.0007 + off / 2));
    CHECK(near.tolerance == doctest::Approx(0.000005));
    CHECK(near.low == doctest::Approx(off));
    CHECK(near.high == doctest::Approx(off / 2));
    CHECK(near.validated);
    CHECK_FALSE(compared(mass, interval(100 - 0.0007, 100 + 0.0007 + 0.000006)).validated);
    CHECK_FALSE(compared(mass, interval(100 - 0.0007 - 0.000006, 100 + 0.0007)).validated);
    CoverageInterval open = interval(100 - 0.0007, 100 + 0.0007);
    open.open_above = true;
    CHECK_FALSE(compared(mass, open).validated);
}

TEST_CASE("the accepted value lies inside the interval, below or above it, and by how much") {
    const Budget found = budget(22.6, 0.2, 0.4);  // 22.2 to 23.0
    CHECK(verdict_of(found, Caution::none, nullptr, 22.7).kind == Verdict::Kind::inside);
    CHECK(verdict_of(found, Caution::none, nullptr, 22.7).outside_by == 0);
    const Verdict high = verdict_of(found, Caution::none, nullptr, 22.1);
    CHECK(high.kind == Verdict::Kind::found_too_high);
    CHECK(high.outside_by == doctest::Approx(0.1));
    const Verdict low = verdict_of(found, Caution::none, nullptr, 23.5);
    CHECK(low.kind == Verdict::Kind::found_too_low);
    CHECK(low.outside_by == doctest::Approx(0.5));
    CHECK(verdict_of(found, Caution::none, nullptr, std::nullopt).kind == Verdict::Kind::no_interval);
    CHECK(verdict_of(Budget{}, Caution::none, nullptr, 22.7).kind == Verdict::Kind::no_interval);
}

TEST_CASE("one-sided doubts move the interval, not the value") {
    Budget found = budget(22.6, 0.2, 0.4);
    found.offset = -0.3;  // 21.9 to 22.7
    CHECK(linear_interval(found).low == doctest::Approx(21.9));
    CHECK(linear_interval(found).high == doctest::Approx(22.7));
    CHECK(verdict_of(found, Caution::none, nullptr, 22.8).kind == Verdict::Kind::found_too_low);
}

TEST_CASE("with a caution the trials decide, and until they are done the verdict is preliminary") {
    const Budget found = budget(22.6, 0.2, 0.4);
    const Verdict waiting = verdict_of(found, Caution::one_input, nullptr, 22.7);
    CHECK(waiting.preliminary);
    CHECK_FALSE(waiting.by_monte_carlo);
    MonteCarloResult trials;
    trials.symmetric = interval(22.4, 22.5);
    const Verdict done = verdict_of(found, Caution::one_input, &trials, 22.7);
    CHECK(done.by_monte_carlo);
    CHECK_FALSE(done.preliminary);
    CHECK(done.shows_plus_minus);
    CHECK(done.kind == Verdict::Kind::found_too_low);
    CHECK(done.outside_by == doctest::Approx(0.2));
    CHECK_FALSE(verdict_of(found, Caution::no_denominator, &trials, 22.7).shows_plus_minus);
    // U = 0.40 is shown to the hundredth: an end off by more than half of one shows.
    CHECK(verdict_of(found, Caution::none, &trials, 22.7).caution == Caution::disagrees);
    trials.symmetric = interval(22.204, 22.996);
    CHECK(verdict_of(found, Caution::none, &trials, 22.7).caution == Caution::none);
}
