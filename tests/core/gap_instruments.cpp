// A run's own instruments: a coarse one makes larger mistakes usual, and twice of them possible.

#include <doctest/doctest.h>

#include <algorithm>
#include <string>

#include "tests/core/gap_support.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

doctest::Approx about(double value) { return doctest::Approx(value).epsilon(1e-9); }

Explanation explained(const Sheet& sheet, Cause cause) {
    CAPTURE(std::string(name_of(cause)));
    // 5 % too high, or too low: whichever the cause is offered for.
    const double found = found_by(sheet.assessed());
    for (const double times : {1 / 1.05, 1.05}) {
        const auto gap = gap_of(compared_with(sheet, times * found).assessed(), Verdict{});
        REQUIRE(gap);
        if (const Explanation* one = of(*gap, cause)) return *one;
    }
    FAIL("not offered");
    return {};
}

void check(const Sheet& sheet, Cause cause, double usual, double largest) {
    const Explanation one = explained(sheet, cause);
    CAPTURE(std::string(name_of(cause)));
    CHECK(one.usual == about(usual));
    CHECK(one.largest == about(largest));
}

}  // namespace

TEST_CASE("what is known of an instrument is usual where it is more than the usual mistake, and twice of it possible") {
    const Sheet run = invented_run();
    // A balance of 10 mg may be off by 10 mg (GUM F.2.2.1, load and tare); one of 0.1 mg by less than the usual 1 mg.
    check(run.with({{Field::mass_of_metal, "0.04"}}), Cause::balance_off, 10e-6, 20e-6);
    check(run, Cause::balance_off, 1e-6, 10e-6);
    // Two readings, each with its own.
    check(run.without(Field::mass_of_metal)
              .with({{Field::mass_from, "by_difference"},
                     {Field::mass_before, "1.24 ± 0.02"},
                     {Field::mass_after, "1.20 ± 0.01"}}),
          Cause::balance_off, 30e-6, 60e-6);
    check(run.with({{Field::temperature, "22.0 ± 1.5"}}), Cause::thermometer_off, 1.5, 3);
    check(run.with({{Field::temperature, "22.0 ± 0.8"}}), Cause::thermometer_off, 0.8, 2);
    check(run.with({{Field::temperature, "22.0 ± 0.1"}}), Cause::thermometer_off, 0.5, 2);
    check(run.with({{Field::end_space, "1.50 ± 3"}}), Cause::end_space_off, 3e-6, 6e-6);
    check(run.with({{Field::scale_reading, "14.06 ± 0.7"}}), Cause::scale_misread, 0.7e-6, 1.4e-6);
    check(run.with({{Field::barometer, "997.3 ± 30 hPa"}}), Cause::barometer_off, 3000, 6000);
    const Sheet apart = run.with({{Field::liquid_stands, "higher_inside"}, {Field::level_difference, "50 ± 8"}});
    check(apart, Cause::level_misread, 8e-3, 16e-3);
    // A ribbon's mass is off by a share: 0.05 of 1.0 g/m are 5 %, less than the 30 % that were seen.
    const Sheet ribbon =
        run.without(Field::mass_of_metal)
            .with(
                {{Field::mass_from, "ribbon"}, {Field::ribbon_length, "36.0"}, {Field::mass_per_metre, "1.00 ± 0.05"}});
    check(ribbon, Cause::ribbon_mass, 0.05, 0.30);
    // Class B of a 50 mL burette is 0.10 mL, of a 100 mL burette 0.20 mL (ISO 385:2005, table 1).
    check(run, Cause::tube_off, 0.1e-6, 1e-6);
    const Sheet hundred = run.with({{Field::tube_capacity, "100"}, {Field::scale_reading, "64.06"}});
    check(hundred, Cause::tube_off, 0.2e-6, 1e-6);
    // What no instrument measures stays as it is.
    check(run, Cause::gas_lost, 0.5e-6, 5e-6);
}

TEST_CASE(
    "up to its usual size a cause is usual, up to the largest that was seen possible, and beyond it implausible") {
    const auto needs = [](double size) {
        // What `size` of gas lost would have left of the 37.44 mL.
        const double found = found_by(invented_run().assessed());
        const double volume = 37.44e-6;
        const auto gap = gap_of(compared_with(invented_run(), found * (volume + size) / volume).assessed(), Verdict{});
        REQUIRE(gap);
        const Explanation* lost = of(*gap, Cause::gas_lost);
        REQUIRE(lost);
        return lost->plausibility;
    };
    // The accepted value is typed in six decimals of a litre, so that a size is met to 0.0001 mL.
    CHECK(needs(0.4990e-6) == Plausibility::usual);
    CHECK(needs(0.5010e-6) == Plausibility::possible);
    CHECK(needs(4.9990e-6) == Plausibility::possible);
    CHECK(needs(5.0010e-6) == Plausibility::implausible);
}

TEST_CASE("of equals the one that is nearest to its usual size stands first, of the impossible what comes nearest") {
    for (const double accepted : {20.0e-3, 22.0e-3, 23.0e-3, 26.0e-3, 60.0e-3}) {
        CAPTURE(accepted);
        const auto gap = gap_of(compared_with(invented_run(), accepted).assessed(), Verdict{});
        REQUIRE(gap);
        const auto wrong = std::adjacent_find(gap->explanations.begin(), gap->explanations.end(),
                                              [](const Explanation& one, const Explanation& next) {
                                                  if (one.plausibility != next.plausibility)
                                                      return one.plausibility > next.plausibility;
                                                  if (one.plausibility == Plausibility::impossible)
                                                      return one.share < next.share;
                                                  return one.size / one.usual > next.size / next.usual;
                                              });
        CHECK(wrong == gap->explanations.end());
    }
}

TEST_CASE("the share of a difference that a usual mistake explains is what it changes of it") {
    // 10 % too low of 37.44 mL: 4.16 mL are missing, and half a millilitre of lost gas is 12 % of them.
    const double found = found_by(invented_run().assessed());
    const auto gap = gap_of(compared_with(invented_run(), found / 0.9).assessed(), Verdict{});
    REQUIRE(gap);
    CHECK(of(*gap, Cause::gas_lost)->share == doctest::Approx(0.5 / 4.16).epsilon(1e-4));
    CHECK(of(*gap, Cause::gas_lost)->size == doctest::Approx(4.16e-6).epsilon(1e-4));
    // Drops on the wall make it too high, and so are not offered; 2 % of the metal left are a fifth of the 10 %.
    CHECK(of(*gap, Cause::drops_on_wall) == nullptr);
    CHECK(of(*gap, Cause::metal_left)->share == doctest::Approx((1 / 0.98 - 1) / (1 / 0.9 - 1)).epsilon(1e-4));
}

TEST_CASE("where the accepted value is what was found, there is nothing to explain and no cause") {
    const Assessment run = invented_run().assessed();
    Assessment same = compared_with(invented_run(), 22.41e-3).assessed();
    same.outcome.put(Output::accepted_value, found_by(run));
    const auto gap = gap_of(same, Verdict{});
    REQUIRE(gap);
    CHECK(gap->nothing_to_explain);
    CHECK(gap->explanations.empty());
}
