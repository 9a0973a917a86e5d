#include <doctest/doctest.h>

#include <cmath>

#include "tests/core/plan_support.hpp"

using namespace overwater;
using namespace overwater::test;

// How sure the result would be, whether the gas stays in the tube, and amounts for a class.

namespace {

PlanSheet upside_down() {
    return with(usual_plan(), {{Field::number_at_closed_end, "largest"}, {Field::end_space, "2.35"}});
}

}  // namespace

TEST_CASE("plan: the expected sheet is a run that the page evaluates") {
    const PlanSheet sheet =
        with(upside_down(), {{Field::liquid_stands, "higher_inside"}, {Field::acid_concentration, "2.0"}});
    const Plan plan = plan_run(sheet);
    REQUIRE(plan.has(PlanOutput::doubt));
    const auto entry_of = [&plan](Field field) -> const Entry& { return plan.expected_sheet.at(field); };
    const Assessment run = assess(read_all(entry_of), sheet.conventions);
    REQUIRE(run.has(Output::percent_error));
    // Rounded readings only.
    CHECK(std::fabs(run.outcome[Output::percent_error]) < 5e-4);
    const Doubts doubts = doubts_of(run);
    const Budget budget = budget_of(doubts, Sensitivities(doubts), Output::molar_volume_standard);
    CHECK(plan.budget.expanded == budget.expanded);
    CHECK(plan.expected_sheet.at(Field::temperature).text == "25.0");
    CHECK(plan.expected_sheet.at(Field::acid_volume).text != "");
}

TEST_CASE("plan: instruments decide the doubt") {
    const Plan usual = plan_run(upside_down());
    const Plan coarse = plan_run(with_instrument(upside_down(), Field::mass_of_metal, "balance_10mg"));
    const Plan fine = plan_run(with_instrument(upside_down(), Field::mass_of_metal, "balance_100ug"));
    const Plan cold = plan_run(with_instrument(upside_down(), Field::temperature, "thermometer_01"));
    REQUIRE(usual.has(PlanOutput::doubt));
    CHECK(coarse.budget.expanded > 3 * usual.budget.expanded);
    CHECK(fine.budget.expanded < usual.budget.expanded);
    CHECK(cold.budget.expanded < usual.budget.expanded);
    // 0.01 g of 40 mg is 12 % standard uncertainty where both readings are rectangular (standards.md, section 9: 10 % as a
    // triangle of 0.01 g).
    CHECK(coarse.budget.u / coarse.budget.value == doctest::Approx(0.01 / std::sqrt(6.0) / 0.04).epsilon(0.01));

    // What it brings is less than what is there, and a ribbon by length costs less than a balance.
    REQUIRE(coarse.cheapest.has_value());
    for (const Improvement& way : coarse.improvements) CHECK(way.expanded < coarse.budget.expanded);
    CHECK(coarse.improvements.size() > 1);
    CHECK(coarse.improvements[*coarse.cheapest].way == Improvement::Way::ribbon_by_length);
    const Plan blank = plan_run(with(upside_down(), {{Field::end_space, ""}}));
    REQUIRE(blank.cheapest.has_value());
    CHECK(blank.improvements[0].way == Improvement::Way::measure_it);
    CHECK(remarks(blank, Field::end_space, "note.end_space_blank"));
    const Plan half = plan_run(asking(upside_down(), {{PlanField::share, "40 %"}}));
    REQUIRE(half.cheapest.has_value());
    bool more = false;
    for (const Improvement& way : half.improvements) more = more || way.way == Improvement::Way::more_metal;
    CHECK(more);
    CHECK(remarks(half, PlanField::share, "plan.note.share_outside"));
    CHECK(says(half, "plan.little"));
}

TEST_CASE("plan: doubt by the class's own conventions") {
    PlanSheet sheet = with(upside_down(), {{Field::accepted_value, "24.0"}});
    sheet.conventions.conversion = Conventions::Conversion::none;
    sheet.conventions.accepted = Conventions::Accepted::typed;
    const Plan collected = plan_run(sheet);
    REQUIRE(collected.has(PlanOutput::doubt));
    CHECK(collected.budget.output == Output::molar_volume_bench);
    sheet.conventions = Conventions{};
    sheet.conventions.vapour = Conventions::Vapour::own_value;
    const Plan own = plan_run(sheet);
    REQUIRE(own.has(PlanOutput::doubt));
    // Handbooks, 25 °C: 23.8 mmHg (standards.md, section 1.3).
    CHECK(own.expected_sheet.at(Field::own_vapour_pressure).text == "23.8");
    // What a class agrees on does not change the gas.
    sheet.conventions.molar_mass_digits = Conventions::MolarMassDigits::whole;
    CHECK(plan_run(sheet).at(Fill::most).mass == plan_run(upside_down()).at(Fill::most).mass);
}

TEST_CASE("plan: risk of overflow") {
    using Level = Overflow::Level;
    const auto at = [](const char* share, const char* mouth = "") {
        PlanSheet sheet = with_instrument(usual_plan(), Field::mass_of_metal, "balance_100ug");
        return plan_run(asking(sheet, {{PlanField::share, share}, {PlanField::mouth_space, mouth}}));
    };
    const Plan fits = at("80");
    REQUIRE(fits.has(PlanOutput::overflow));
    CHECK(fits.overflow.level == Level::fits);
    CHECK(fits.overflow.chance < 1e-6);
    CHECK(says(fits, "plan.overflow.fits"));
    CHECK(fits.overflow.upper > fits.overflow.planned);
    // 10 K warmer the gas takes 5.7 % more (mistakes.md, number 41, at 22 °C).
    CHECK(fits.overflow.warm / fits.overflow.planned == doctest::Approx(1.057).epsilon(0.006));
    const Plan near_end = at("99");
    CHECK(near_end.overflow.level == Level::may_leave);
    CHECK(near_end.overflow.chance > 0.05);
    CHECK(near_end.overflow.chance < 0.5);
    CHECK(says(near_end, "plan.overflow.may_leave"));
    const Plan room = at("99", "10 mL");
    CHECK(room.overflow.level == Level::may_pass_scale);
    CHECK(room.overflow.chance_leaves < room.overflow.chance);
    // A room that is well known leaves the gas's own warmth as the only risk.
    const PlanSheet known = asking(
        with_instrument(usual_plan(), Field::mass_of_metal, "balance_100ug"),
        {{PlanField::share, "96"}, {PlanField::temperature_within, "0.5"}, {PlanField::pressure_within, "1 hPa"}});
    CHECK(plan_run(known).overflow.level == Level::warm);

    const PlanSheet heavy = with(usual_plan(), {{Field::mass_of_metal, "0.060"}});
    CHECK(plan_run(heavy).overflow.level == Level::leaves);
    CHECK(plan_run(heavy).overflow.chance > 0.999);
    CHECK(plan_run(asking(heavy, {{PlanField::mouth_space, "20"}})).overflow.level == Level::passes_scale);
    // A less known room is more of a risk.
    const Plan guess = plan_run(asking(usual_plan(), {{PlanField::share, "94"}, {PlanField::temperature_within, "8"}}));
    const Plan sure = plan_run(asking(usual_plan(), {{PlanField::share, "94"}, {PlanField::temperature_within, "1"}}));
    CHECK(guess.overflow.chance > sure.overflow.chance);
    CHECK(guess.overflow.upper > sure.overflow.upper);
}

TEST_CASE("plan: amounts for a class") {
    const PlanSheet sheet = asking(with(usual_plan(), {{Field::mass_of_metal, "0.0400"},
                                                       {Field::mass_per_metre, "1.0"},
                                                       {Field::acid_volume, "10"},
                                                       {Field::acid_concentration, "2.0"}}),
                                   {{PlanField::groups, "10"}, {PlanField::runs, "2"}, {PlanField::spare, "20 %"}});
    const Plan plan = plan_run(sheet);
    REQUIRE(plan.has(PlanOutput::class_metal));
    CHECK(plan.amounts.pieces == 24);
    CHECK(plan.amounts.mass * 1e3 == doctest::Approx(0.96));
    CHECK(plan.amounts.ribbon == doctest::Approx(0.96));
    CHECK(plan.amounts.acid_volume * 1e6 == doctest::Approx(240));
    CHECK(says(plan, "plan.class.metal"));
    CHECK(plan_run(asking(sheet, {{PlanField::spare, "1"}})).amounts.pieces == 21);
    CHECK(plan_run(asking(sheet, {{PlanField::spare, "0"}})).amounts.pieces == 20);
    CHECK(waits_for(plan_run(asking(sheet, {{PlanField::groups, ""}})), PlanOutput::class_metal, PlanField::groups));
    const Plan strong = plan_run(with(sheet, {{Field::acid_concentration, "6.0"}}));
    CHECK(strong.has(PlanOutput::class_metal));
    CHECK(waits_for(strong, PlanOutput::class_acid, PlanField::consent));
}
