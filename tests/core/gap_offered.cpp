#include <doctest/doctest.h>

#include <set>

#include "tests/core/gap_support.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

/// Which way each goes: chemistry and the gas law, worked out apart from this program.
const std::set<Cause> only_too_high{Cause::air_bubble,    Cause::meniscus,           Cause::gas_warm,
                                    Cause::drops_on_wall, Cause::sea_level_pressure, Cause::mercury_not_corrected};
const std::set<Cause> only_too_low{Cause::oxide_coat, Cause::metal_left,         Cause::gas_lost,  Cause::dissolved_gas,
                                   Cause::wet_metal,  Cause::hot_liquid,         Cause::acid_short,
                                   Cause::acid_lowers_vapour};

std::set<Cause> offered(const Sheet& sheet) {
    std::set<Cause> causes;
    const auto gap = gap_of(sheet.assessed(), Verdict{});
    if (gap) {
        for (const Explanation& explanation : gap->explanations) causes.insert(explanation.cause);
    }
    return causes;
}

bool may_have(const Sheet& sheet, Cause cause) { return applies(cause, sheet.assessed()); }

Conventions not_converted() {
    Conventions conventions = one_atmosphere();
    conventions.conversion = Conventions::Conversion::none;
    return conventions;
}

}  // namespace

TEST_CASE("every cause goes the way it must") {
    for (std::size_t i = 0; i < cause_count; ++i) {
        const auto cause = static_cast<Cause>(i);
        CAPTURE(name_of(cause));
        CHECK(info(cause).raises == !only_too_low.contains(cause));
        CHECK(info(cause).lowers == !only_too_high.contains(cause));
        CHECK(info(cause).usual > 0);
        CHECK(info(cause).largest > info(cause).usual);
    }
}

TEST_CASE("no cause of the wrong sign is offered") {
    const Sheet low = compared_with(invented_run(), 23.0e-3);
    const Sheet high = compared_with(invented_run(), 22.0e-3);
    for (const Cause cause : only_too_high) {
        CAPTURE(name_of(cause));
        CHECK_FALSE(offered(low).contains(cause));
    }
    for (const Cause cause : only_too_low) {
        CAPTURE(name_of(cause));
        CHECK_FALSE(offered(high).contains(cause));
        CHECK(offered(low).contains(cause));
    }
    CHECK(offered(high).contains(Cause::air_bubble));
    CHECK(offered(low).contains(Cause::scale_misread));
    CHECK(offered(high).contains(Cause::scale_misread));
}

TEST_CASE("inside the interval nothing needs explaining, and the sizes are there all the same") {
    Verdict verdict;
    verdict.kind = Verdict::Kind::inside;
    const Assessment run = compared_with(invented_run(), 22.5e-3).assessed();
    const auto inside = gap_of(run, verdict);
    REQUIRE(inside);
    CHECK(inside->nothing_to_explain);
    CHECK_FALSE(inside->explanations.empty());
    verdict.kind = Verdict::Kind::found_too_low;
    CHECK_FALSE(gap_of(run, verdict)->nothing_to_explain);
    verdict.kind = Verdict::Kind::no_interval;
    const auto open = gap_of(run, verdict);
    CHECK_FALSE(open->nothing_to_explain);
    CHECK_FALSE(open->explanations.empty());
}

TEST_CASE("without a result or an accepted value there is no gap") {
    CHECK_FALSE(gap_of(invented_run().without(Field::mass_of_metal).assessed(), Verdict{}));
    CHECK_FALSE(gap_of(invented_run().by(not_converted()).assessed(), Verdict{}));
    CHECK_FALSE(applies(Cause::air_bubble, invented_run().without(Field::mass_of_metal).assessed()));
}

TEST_CASE("the size is what would have to be subtracted or added by hand") {
    // 1 % too high by 37.44 mL: 37.44/101 mL of air. 1 % too low: 37.44/99 mL lost, and 1 % of the metal.
    const double found = found_by(invented_run().assessed());
    const auto high = gap_of(compared_with(invented_run(), found / 1.01).assessed(), Verdict{});
    REQUIRE(high);
    CHECK(of(*high, Cause::air_bubble)->size == doctest::Approx(37.44e-6 / 101).epsilon(1e-4));
    CHECK(of(*high, Cause::air_bubble)->plausibility == Plausibility::usual);
    const auto low = gap_of(compared_with(invented_run(), found / 0.99).assessed(), Verdict{});
    REQUIRE(low);
    CHECK(of(*low, Cause::gas_lost)->size == doctest::Approx(37.44e-6 / 99).epsilon(1e-4));
    CHECK(of(*low, Cause::metal_left)->size == doctest::Approx(0.01).epsilon(1e-4));
    CHECK(of(*low, Cause::metal_left)->share == 1.0);
    CHECK(of(*low, Cause::wet_metal)->size == doctest::Approx(0.36e-6).epsilon(1e-4));
}

TEST_CASE("the most plausible stands first") {
    const auto gap = gap_of(compared_with(invented_run(), 26.0e-3).assessed(), Verdict{});
    REQUIRE(gap);
    REQUIRE(gap->explanations.size() > 5);
    for (std::size_t i = 1; i < gap->explanations.size(); ++i) {
        CHECK(gap->explanations[i - 1].plausibility <= gap->explanations[i].plausibility);
    }
    // 13.8 % too low: metal that floated off was seen to do that; without any vapour at all it is 2.7 %.
    CHECK(gap->explanations.front().plausibility == Plausibility::possible);
    CHECK(of(*gap, Cause::metal_left)->plausibility == Plausibility::possible);
    CHECK(of(*gap, Cause::oxide_coat)->plausibility == Plausibility::implausible);
    const Explanation* vapour = of(*gap, Cause::acid_lowers_vapour);
    REQUIRE(vapour);
    CHECK(vapour->plausibility == Plausibility::impossible);
    CHECK(vapour->size == 1.0);
}

TEST_CASE("a coarse balance makes a large error of the mass usual") {
    // 0.03 g: a digit of the balance is a third of it.
    const Sheet coarse = compared_with(invented_run().with({{Field::mass_of_metal, "0.03"}}), 22.4e-3);
    const auto gap = gap_of(coarse.assessed(), Verdict{});
    REQUIRE(gap);
    CHECK(of(*gap, Cause::balance_off)->plausibility == Plausibility::usual);
    const Sheet fine = compared_with(invented_run().with({{Field::mass_of_metal, "0.0300"}}), 22.4e-3);
    CHECK(of(*gap_of(fine.assessed(), Verdict{}), Cause::balance_off)->plausibility == Plausibility::possible);
}

TEST_CASE("a run is offered what it can have") {
    const Sheet run = invented_run();
    CHECK(may_have(run, Cause::air_bubble));
    CHECK_FALSE(may_have(run.with({{Field::start_reading, "49.0"}}), Cause::air_bubble));

    CHECK(may_have(run, Cause::meniscus));
    CHECK_FALSE(may_have(run.with({{Field::tube_bore, "13"}}), Cause::meniscus));
    CHECK_FALSE(may_have(run.with({{Field::start_reading, "49.0"}}), Cause::meniscus));
    CHECK_FALSE(may_have(run.with({{Field::number_at_closed_end, "zero"}}), Cause::meniscus));
    CHECK(reach_of(run.assessed(), Cause::meniscus)->largest == doctest::Approx(0.25e-6));
    CHECK(reach_of(run.with({{Field::tube_capacity, "100"}}).assessed(), Cause::meniscus)->largest ==
          doctest::Approx(0.45e-6));

    CHECK(may_have(run, Cause::end_space_off));
    CHECK_FALSE(may_have(run.with({{Field::number_at_closed_end, "zero"}}), Cause::end_space_off));
    // Nobody measured it: there is at least none, and the result only too low.
    const auto open = reach_of(run.without(Field::end_space).assessed(), Cause::end_space_off);
    CHECK_FALSE(open->raises);
    CHECK(open->lowers);
    // Taken as none: it cannot be less than that.
    const auto none = reach_of(run.with({{Field::end_space, "0"}}).assessed(), Cause::end_space_off);
    CHECK_FALSE(none->raises);
    CHECK(none->lowers);
    const auto measured = reach_of(run.with({{Field::end_space, "2.0"}}).assessed(), Cause::end_space_off);
    CHECK(measured->raises);
    CHECK(measured->lowers);

    CHECK(may_have(run, Cause::levels_not_equal));
    CHECK_FALSE(may_have(run, Cause::level_misread));
    const Sheet apart = run.with({{Field::liquid_stands, "higher_inside"}, {Field::level_difference, "50"}});
    CHECK_FALSE(may_have(apart, Cause::levels_not_equal));
    CHECK(may_have(apart, Cause::level_misread));

    CHECK_FALSE(may_have(run, Cause::ribbon_mass));
    const Sheet ribbon = run.with(
        {{Field::mass_from, "ribbon"}, {Field::ribbon_length, "36 mm"}, {Field::mass_per_metre, "1.0"}});
    CHECK(may_have(ribbon, Cause::ribbon_mass));
    CHECK_FALSE(may_have(ribbon, Cause::balance_off));
    CHECK_FALSE(may_have(ribbon, Cause::wet_metal));

    CHECK(may_have(run, Cause::mercury_not_corrected));
    CHECK_FALSE(may_have(run.with({{Field::barometer, "997.3 hPa"}}), Cause::mercury_not_corrected));

    CHECK(may_have(run, Cause::sea_level_pressure));
    CHECK_FALSE(may_have(run.with({{Field::barometer, "900 hPa"}}), Cause::sea_level_pressure));
    CHECK_FALSE(may_have(
        run.with({{Field::pressure_kind, "altimeter_setting"}, {Field::height_above_sea_level, "300"}}),
        Cause::sea_level_pressure));
    const auto at = [&](const char* pressure) {
        return reach_of(run.with({{Field::barometer, pressure}}).assessed(), Cause::sea_level_pressure)->usual;
    };
    CHECK(at("1013 hPa") > at("985 hPa"));
}

TEST_CASE("conventions decide what can be wrong with vapour and molar mass") {
    const Sheet run = invented_run();
    CHECK_FALSE(may_have(run, Cause::vapour_wrong_row));
    Conventions conventions = one_atmosphere();
    conventions.vapour = Conventions::Vapour::table;
    CHECK(may_have(run.by(conventions), Cause::vapour_wrong_row));
    conventions.vapour = Conventions::Vapour::not_subtracted;
    CHECK_FALSE(may_have(run.by(conventions), Cause::vapour_wrong_row));
    CHECK_FALSE(may_have(run.by(conventions), Cause::acid_lowers_vapour));
    // Moist or not in the books, the gas itself expands the same.
    CHECK(effect(run.by(conventions), Cause::gas_warm, 10) == doctest::Approx(effect(run, Cause::gas_warm, 10)));

    CHECK_FALSE(may_have(run, Cause::molar_mass_rounded));
    const auto way = [&](Conventions::MolarMassDigits digits) {
        Conventions rounded = one_atmosphere();
        rounded.molar_mass_digits = digits;
        return *reach_of(run.by(rounded).assessed(), Cause::molar_mass_rounded);
    };
    // 24.305: 24.31 is more, 24.3 and 24 less.
    CHECK(way(Conventions::MolarMassDigits::two_decimals).raises);
    CHECK_FALSE(way(Conventions::MolarMassDigits::two_decimals).lowers);
    CHECK(way(Conventions::MolarMassDigits::one_decimal).lowers);
    CHECK(way(Conventions::MolarMassDigits::whole).lowers);
    CHECK_FALSE(way(Conventions::MolarMassDigits::whole).raises);
}

TEST_CASE("acid is too little only where it may be") {
    const Sheet run = invented_run();  // 2.96 mmol of acid needed
    CHECK(may_have(run, Cause::acid_short));
    const Sheet barely = run.with({{Field::acid_volume, "10"}, {Field::acid_concentration, "0.5"}});
    CHECK(may_have(barely, Cause::acid_short));
    const Sheet plenty = run.with({{Field::acid_volume, "10"}, {Field::acid_concentration, "3.0"}});
    CHECK_FALSE(may_have(plenty, Cause::acid_short));
    // Here the acid set the gas: what the metal weighed does not count.
    const Sheet short_of = run.with({{Field::acid_volume, "10"}, {Field::acid_concentration, "0.2"}});
    CHECK(may_have(short_of, Cause::acid_short));
    CHECK_FALSE(may_have(short_of, Cause::metal_left));
    CHECK_FALSE(may_have(short_of, Cause::balance_off));
    CHECK_FALSE(may_have(run.with({{Field::metal, "calcium"}}), Cause::acid_short));
}

TEST_CASE("where nothing is converted, temperature and pressure put down cannot be wrong") {
    const Sheet run = invented_run().with({{Field::accepted_value, "24.0"}}).by(not_converted());
    REQUIRE(gap_of(run.assessed(), Verdict{}));
    for (const Cause cause : {Cause::hot_liquid, Cause::thermometer_off, Cause::barometer_off,
                              Cause::sea_level_pressure, Cause::mercury_not_corrected, Cause::acid_lowers_vapour}) {
        CAPTURE(name_of(cause));
        CHECK_FALSE(may_have(run, cause));
    }
    // The gas itself was larger all the same.
    CHECK(effect(run, Cause::gas_warm, 10) == doctest::Approx(effect(invented_run(), Cause::gas_warm, 10)));
    CHECK(may_have(run, Cause::air_bubble));
}
