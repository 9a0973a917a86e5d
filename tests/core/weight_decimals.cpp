#include <doctest/doctest.h>

#include <cmath>

#include "core/matter/weight_table.hpp"

using namespace overwater;

// The table is "Standard atomic weights abridged to five significant digits" (CIAAW): no value has more, and the bound is
// given in units of the last digit printed.
TEST_CASE("abridged atomic weights have at most five digits, and a bound in units of the last one") {
    for (const AtomicWeight& one : weight_table::rows) {
        INFO(one.symbol);
        const double step = std::pow(10.0, one.decimals);
        const double units = one.value * step;
        const double bound = one.plus_minus * step;
        CHECK(units == doctest::Approx(std::round(units)).epsilon(1e-12));
        CHECK(bound == doctest::Approx(std::round(bound)).epsilon(1e-9));
        CHECK(std::round(units) < 100000);
        CHECK(std::round(bound) >= 1);
    }
}
