#include <doctest/doctest.h>

#include <cmath>
#include <random>
#include <string>

#include "tests/core/plan_support.hpp"

using namespace overwater;
using namespace overwater::test;

// What is typed in a plan's own fields, and texts that nobody should type.

TEST_CASE("plan: fields understood") {
    const PlanAsked blank = read_asked(PlanSheet{});
    CHECK(blank.least_share == doctest::Approx(0.60));
    CHECK(blank.most_share == doctest::Approx(0.90));
    CHECK(blank.checks.empty());
    PlanSheet sheet = asking(usual_plan(), {{PlanField::least_share, "50 %"},
                                            {PlanField::most_share, "95"},
                                            {PlanField::share, "72,5"},
                                            {PlanField::temperature_within, "9 °F"},
                                            {PlanField::pressure_within, "10 mbar"},
                                            {PlanField::mouth_space, "0.005 L"},
                                            {PlanField::excess, "3"},
                                            {PlanField::groups, "12"},
                                            {PlanField::runs, "3"},
                                            {PlanField::spare, "0 %"}});
    const PlanAsked asked = read_asked(sheet);
    CHECK(asked.checks.empty());
    CHECK(asked.share == doctest::Approx(0.725));
    CHECK(asked.temperature_within == doctest::Approx(5));
    CHECK(asked.pressure_within == doctest::Approx(1000));
    CHECK(asked.mouth_space == doctest::Approx(5e-6));
    CHECK(asked.groups == 12);
    CHECK(asked.spare == 0);
    for (std::size_t i = 0; i < plan_field_count; ++i)
        CHECK(label_of(static_cast<PlanField>(i)).starts_with("plan.field."));
}

TEST_CASE("plan: fields that cannot be") {
    const auto said = [](PlanField field, const char* text) {
        const PlanAsked asked = read_asked(asking(usual_plan(), {{field, text}}));
        return asked.checks.empty() ? std::string() : std::string(asked.checks.front().message.key);
    };
    CHECK(said(PlanField::share, "120 %") == "plan.refusal.share");
    CHECK(said(PlanField::share, "0") == "plan.refusal.share");
    CHECK(said(PlanField::share, "0.75") == "check.purity_fraction");
    CHECK(said(PlanField::share, "half") == "text.no_digits");
    CHECK(said(PlanField::share, "75 mL") == "text.wrong_kind_of_unit");
    CHECK(said(PlanField::least_share, "95") == "plan.refusal.range");
    CHECK(said(PlanField::most_share, "50") == "plan.refusal.range");
    CHECK(said(PlanField::excess, "0.5") == "plan.refusal.excess");
    CHECK(said(PlanField::groups, "2.5") == "plan.refusal.count");
    CHECK(said(PlanField::groups, "1001") == "plan.refusal.count");
    CHECK(said(PlanField::runs, "7") == "plan.refusal.count");
    CHECK(said(PlanField::spare, "300 %") == "plan.refusal.spare");
    CHECK(said(PlanField::mouth_space, "-1") == "refusal.below_zero");
    CHECK(said(PlanField::temperature_within, "abc") == "check.doubt.number");
    CHECK(said(PlanField::temperature_within, "-2") == "check.doubt.number");
    CHECK(said(PlanField::pressure_within, "3 mL") == "check.doubt.unit");

    // Each holds up what needs it, and nothing else.
    const Plan share = plan_run(asking(usual_plan(), {{PlanField::share, "half"}}));
    CHECK(waits_for(share, PlanOutput::gas, PlanField::share));
    CHECK(share.has(PlanOutput::mass_window));
    const Plan range = plan_run(asking(usual_plan(), {{PlanField::least_share, "95"}}));
    CHECK(reason(range, PlanOutput::mass_window) == "plan.refusal.range");
    CHECK(range.has(PlanOutput::gas));
    const Plan within = plan_run(asking(usual_plan(), {{PlanField::temperature_within, "x"}}));
    CHECK(waits_for(within, PlanOutput::overflow, PlanField::temperature_within));
    CHECK(within.has(PlanOutput::doubt));
    const Plan excess =
        plan_run(asking(with(usual_plan(), {{Field::acid_concentration, "2"}}), {{PlanField::excess, "0.5"}}));
    CHECK(reason(excess, PlanOutput::acid) == "plan.refusal.excess");
}

TEST_CASE("plan: any text in any field leaves every number finite") {
    constexpr const char* texts[]{"",    "0",      "1",     "-1",      "1e-300", "1e300",  "99.9",  "0.5",
                                  "abc", "1000",   "1e9",   "1e-9",    "40 °C",  "3000 m", "1 atm", "5 g",
                                  "5 %", "±",      "5 ± 2", "largest", "zero",   "ribbon", "level", "calcium",
                                  "yes", "powder", "45",    "101",     "1e5",    "0.001"};
    std::mt19937 words(6);
    const auto draw = [&words](std::size_t count) { return static_cast<std::size_t>(words() % count); };
    int with_values = 0;
    for (int i = 0; i < 4000; ++i) {
        PlanSheet sheet = usual_plan();
        if (draw(2) == 0) sheet.bench.edit(Field::number_at_closed_end).text = "largest";
        if (draw(2) == 0) sheet.bench.edit(Field::liquid_stands).text = "higher_inside";
        for (std::size_t changes = 1 + draw(4); changes > 0; --changes) {
            const char* text = texts[draw(std::size(texts))];
            if (draw(2) == 0) {
                sheet.bench.edit(static_cast<Field>(draw(field_count))).text = text;
            } else {
                sheet.edit(static_cast<PlanField>(draw(plan_field_count))) = text;
            }
        }
        const Plan plan = plan_run(sheet);
        for (std::size_t o = 0; o < plan_output_count; ++o) {
            const PlanState& state = plan.states[o];
            if (state.kind == OutputState::Kind::not_possible) CHECK_FALSE(state.reason.key.empty());
            if (state.kind == OutputState::Kind::waiting) {
                CHECK((!state.waiting_for.empty() || !state.waiting_for_asked.empty()));
            }
        }
        const auto finite = [&with_values](double value) {
            ++with_values;
            CHECK(std::isfinite(value));
        };
        if (plan.has(PlanOutput::mass_window)) finite(plan.at(Fill::most).mass);
        if (plan.has(PlanOutput::gas)) {
            finite(plan.chosen.gas_volume);
            finite(plan.chosen.dry_gas_pressure);
        }
        if (plan.has(PlanOutput::overflow)) {
            finite(plan.overflow.upper);
            finite(plan.overflow.warm);
            finite(plan.overflow.chance);
        }
        if (plan.has(PlanOutput::acid)) finite(plan.acid.volume * plan.acid.concentration);
        if (plan.has(PlanOutput::doubt)) finite(plan.budget.expanded);
        for (const Message& message : plan.says) {
            for (const Argument& argument : message.arguments) finite(argument.base);
        }
    }
    CHECK(with_values > 10000);
}
