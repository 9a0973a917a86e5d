#include <doctest/doctest.h>

#include "tests/core/monte_carlo_support.hpp"

using namespace overwater;

TEST_CASE("a step makes as many trials as it is asked for, in whole blocks of 256") {
    MonteCarlo trials(record_a_doubts(), Output::molar_volume_standard, 100000);
    CHECK(trials.made() == 0);
    CHECK_FALSE(trials.step(2560));
    CHECK(trials.made() == 2560);
    CHECK_FALSE(trials.step(1));
    CHECK(trials.made() == 2816);
    CHECK_FALSE(trials.step(300));
    CHECK(trials.made() == 3328);
    CHECK_FALSE(trials.done());
    run_all(trials);
    CHECK(trials.done());
    CHECK(trials.made() == 100000);
}
