#include <doctest/doctest.h>

#include <cmath>
#include <string>

#include "tests/core/plan_support.hpp"

using namespace overwater;
using namespace overwater::test;

// Limits of what can be typed in a plan's own fields, what a blank one counts as, and with which digits limits are told.

namespace {

/// The key of the first remark below the field; "" where there is none.
std::string said(PlanField field, const char* text) {
    for (const PlanCheck& check : read_asked(asking(usual_plan(), {{field, text}})).checks) {
        if (check.field == field) return std::string(check.message.key);
    }
    return "";
}

const Argument* place(const Message& message, std::string_view name) {
    for (const Argument& argument : message.arguments) {
        if (argument.name == name) return &argument;
    }
    return nullptr;
}

}  // namespace

TEST_CASE("plan: what a blank field counts as") {
    // Common practice, no source: 60 to 90 % of the scale, three quarters aimed at; 3 K and 20 hPa from one day to the next;
    // five times the acid needed; one run a group and a fifth to spare.
    const PlanAsked blank = read_asked(PlanSheet{});
    CHECK(blank.least_share == 0.60);
    CHECK(blank.most_share == 0.90);
    CHECK(blank.share == 0.75);
    CHECK(blank.temperature_within == 3);
    CHECK(blank.pressure_within == 2000);
    CHECK(blank.mouth_space == 0);
    CHECK(blank.excess == 5);
    CHECK_FALSE(blank.consent);
    CHECK_FALSE(blank.powder);
    CHECK_FALSE(blank.groups.has_value());
    CHECK(blank.runs == 1);
    CHECK(blank.spare == 0.20);
}

TEST_CASE("plan: each limit is met exactly, and not passed") {
    // Above 0 % and at most 100 %; a number up to 1 without a sign is asked about.
    CHECK(said(PlanField::share, "100").ends_with("share_outside"));
    CHECK(said(PlanField::share, "100.1") == "plan.refusal.share");
    CHECK(said(PlanField::share, "0 %") == "plan.refusal.share");
    CHECK(said(PlanField::share, "1") == "check.purity_fraction");
    CHECK(said(PlanField::share, "1.01").ends_with("share_outside"));
    CHECK(said(PlanField::share, "1 %").ends_with("share_outside"));
    // Within the range is 60 to 90 %, its ends too.
    CHECK(said(PlanField::share, "60") == "");
    CHECK(said(PlanField::share, "59.9") == "plan.note.share_outside");
    CHECK(said(PlanField::share, "90") == "");
    CHECK(said(PlanField::share, "90.1") == "plan.note.share_outside");
    CHECK(said(PlanField::least_share, "89.9") == "");
    CHECK(said(PlanField::least_share, "90") == "plan.refusal.range");
    CHECK(said(PlanField::most_share, "60") == "plan.refusal.range");
    CHECK(said(PlanField::most_share, "60.1") == "");
    // At least the acid needed; more than 1000 times is no plan.
    CHECK(said(PlanField::excess, "1") == "");
    CHECK(said(PlanField::excess, "0.999") == "plan.refusal.excess");
    CHECK(said(PlanField::excess, "1000") == "");
    CHECK(said(PlanField::excess, "1000.1") == "plan.refusal.excess");
    // Whole numbers: 1 to 1000 groups, 1 to 6 runs as a record has them.
    CHECK(said(PlanField::groups, "1") == "");
    CHECK(said(PlanField::groups, "0") == "plan.refusal.count");
    CHECK(said(PlanField::groups, "1000") == "");
    CHECK(said(PlanField::groups, "1001") == "plan.refusal.count");
    CHECK(said(PlanField::runs, "6") == "");
    CHECK(said(PlanField::runs, "7") == "plan.refusal.count");
    // None to spare, or twice as much as is needed.
    CHECK(said(PlanField::spare, "0") == "");
    CHECK(said(PlanField::spare, "-1") == "plan.refusal.spare");
    CHECK(said(PlanField::spare, "200") == "");
    CHECK(said(PlanField::spare, "201") == "plan.refusal.spare");
    CHECK(said(PlanField::mouth_space, "0") == "");
    CHECK(said(PlanField::mouth_space, "-0.1") == "refusal.below_zero");
    CHECK(said(PlanField::form, "powder") == "plan.refusal.powder");
    CHECK(said(PlanField::form, "granules") == "");
}

TEST_CASE("plan: a limit is told in the digits it has") {
    const auto remark = [](PlanField field, const char* text) {
        return read_asked(asking(usual_plan(), {{field, text}})).checks.at(0).message;
    };
    // 0.755 for 75.5 %: two places less.
    const Message fraction = remark(PlanField::share, "0.755");
    REQUIRE(place(fraction, "other") != nullptr);
    CHECK(place(fraction, "other")->base == doctest::Approx(0.755));
    CHECK(place(fraction, "other")->digits == 1);
    CHECK(place(remark(PlanField::share, "0.75"), "other")->digits == 0);
    CHECK(place(remark(PlanField::share, "0.7"), "other")->digits == 0);
    const Message outside = remark(PlanField::share, "95");
    for (const char* end : {"least", "most"}) {
        REQUIRE(place(outside, end) != nullptr);
        CHECK(place(outside, end)->digits == 0);
        CHECK(place(outside, end)->unit == UnitId::percent);
    }
    CHECK(place(outside, "least")->base == doctest::Approx(0.60));
    CHECK(place(outside, "most")->base == doctest::Approx(0.90));
    CHECK(place(remark(PlanField::groups, "0"), "most")->count == 1000);
    CHECK(place(remark(PlanField::runs, "0"), "most")->count == 6);
    // A mass below what the balance shows: two figures tell how far below.
    const Plan coarse = plan_run(with_instrument(usual_plan(), Field::mass_of_metal, "balance_100mg"));
    const Message& too_coarse = coarse.state(PlanOutput::gas).reason;
    REQUIRE(too_coarse.key == "plan.refusal.too_coarse");
    CHECK(place(too_coarse, "mass")->unit == UnitId::gram);
    CHECK(place(too_coarse, "mass")->digits == 2);
    CHECK(place(too_coarse, "mass")->significant);
    // 5 x 2 x 1.69512 mmol (method.md, record A) of 0.1 mol/L are 170 mL: no tube of 50 mL takes that.
    const Plan weak =
        plan_run(with(usual_plan(), {{Field::mass_of_metal, "0.0412"}, {Field::acid_concentration, "0.1"}}));
    const Message& no_room = weak.state(PlanOutput::acid).reason;
    REQUIRE(no_room.key == "plan.refusal.acid_no_room");
    CHECK(place(no_room, "volume")->base == doctest::Approx(169.512e-6).epsilon(1e-5));
    CHECK(place(no_room, "capacity")->base == doctest::Approx(50e-6));
    for (const char* name : {"volume", "capacity"}) {
        CHECK(place(no_room, name)->unit == UnitId::millilitre);
        CHECK(place(no_room, name)->digits == 3);
        CHECK(place(no_room, name)->significant);
    }
}

TEST_CASE("plan: acid may fill the tube, and not more") {
    // 1.69512 mmol of magnesium take 3.39024 mmol of acid: times 5 and over 50 mL that is 0.339024 mol/L.
    const auto state = [](const char* strength) {
        return reason(
            plan_run(with(usual_plan(), {{Field::mass_of_metal, "0.0412"}, {Field::acid_concentration, strength}})),
            PlanOutput::acid);
    };
    CHECK(state("0.340") == "");
    CHECK(state("0.338") == "plan.refusal.acid_no_room");
    const auto typed = [](const char* volume) {
        return reason(plan_run(with(usual_plan(), {{Field::mass_of_metal, "0.0412"},
                                                   {Field::acid_volume, volume},
                                                   {Field::acid_concentration, "1.0"}})),
                      PlanOutput::acid);
    };
    CHECK(typed("50") == "");
    CHECK(typed("50.1") == "plan.refusal.acid_no_room");
}

TEST_CASE("plan: a strength that was worked out is told to the hundredth") {
    // 5 x 3.39024 mmol in 1.2 mL are 14.126 mol/L: no hydrochloric acid is sold so strong.
    const Plan plan = plan_run(with(usual_plan(), {{Field::mass_of_metal, "0.0412"}, {Field::acid_volume, "1.2"}}));
    const Message& why = plan.state(PlanOutput::acid).reason;
    REQUIRE(why.key == "check.no_such_acid");
    REQUIRE(place(why, "reading") != nullptr);
    CHECK(place(why, "reading")->base == doctest::Approx(14126).epsilon(1e-4));
    CHECK(place(why, "reading")->unit == UnitId::mole_per_litre);
    CHECK(place(why, "reading")->digits == 2);
}
