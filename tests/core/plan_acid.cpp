#include <doctest/doctest.h>

#include "tests/core/plan_support.hpp"

using namespace overwater;
using namespace overwater::test;

// Acid, and what a plan refuses (method.md, sections 3 and 10).

namespace {

PlanSheet record_a_metal() { return with(usual_plan(), {{Field::mass_of_metal, "0.0412"}}); }

}  // namespace

TEST_CASE("plan: acid of record A") {
    // method.md, record A: 1.69512 mmol of magnesium; section 3: 2 mol of HCl or 1 mol of H2SO4 a mole; its demo: 10.0 mL of
    // 3.0 mol/L.
    const Plan demo =
        plan_run(with(record_a_metal(), {{Field::acid_volume, "10.0"}, {Field::acid_concentration, "3.0"}}));
    REQUIRE(demo.has(PlanOutput::acid));
    CHECK(demo.acid.needed == doctest::Approx(2 * 1.69512e-3).epsilon(1e-5));
    CHECK(demo.acid.excess == doctest::Approx(30 / (2 * 1.69512)).epsilon(1e-5));

    const PlanSheet four = asking(record_a_metal(), {{PlanField::excess, "4"}});
    const Plan volume = plan_run(with(four, {{Field::acid_concentration, "2.0"}}));
    REQUIRE(volume.has(PlanOutput::acid));
    CHECK(volume.acid.volume * 1e6 == doctest::Approx(4 * 2 * 1.69512 / 2.0).epsilon(1e-5));
    CHECK(volume.acid.excess == doctest::Approx(4));
    const Plan strength = plan_run(with(four, {{Field::acid_volume, "8.0"}}));
    REQUIRE(strength.has(PlanOutput::acid));
    CHECK(strength.acid.concentration == doctest::Approx(4 * 2 * 1.69512e-3 / 8.0e-6).epsilon(1e-5));
    const Plan sulfuric = plan_run(with(four, {{Field::acid, "sulfuric"}, {Field::acid_concentration, "1.0"}}));
    REQUIRE(sulfuric.has(PlanOutput::acid));
    CHECK(sulfuric.acid.volume * 1e6 == doctest::Approx(4 * 1.69512).epsilon(1e-5));
    CHECK(says(sulfuric, "plan.acid.amount"));

    CHECK(waits_for(plan_run(four), PlanOutput::acid, Field::acid_concentration));
    CHECK(waits_for(plan_run(with(four, {{Field::acid, ""}})), PlanOutput::acid, Field::acid));
    CHECK(waits_for(plan_run(with(four, {{Field::acid_concentration, "strong"}})), PlanOutput::acid,
                    Field::acid_concentration));
}

TEST_CASE("plan: strong acid asks for consent, or is refused") {
    const auto of = [](const char* strength, const char* acid = "hydrochloric") {
        return with(record_a_metal(), {{Field::acid, acid}, {Field::acid_concentration, strength}});
    };
    const Plan asked = plan_run(of("6.0"));
    CHECK(waits_for(asked, PlanOutput::acid, PlanField::consent));
    CHECK(says(asked, "plan.acid.consent"));
    CHECK_FALSE(says(asked, "plan.acid.amount"));
    CHECK(remarks(asked, Field::acid_concentration, "note.strong_hydrochloric"));
    CHECK(asked.has(PlanOutput::gas));
    CHECK(asked.has(PlanOutput::doubt));
    const Plan given = plan_run(asking(of("6.0"), {{PlanField::consent, "yes"}}));
    REQUIRE(given.has(PlanOutput::acid));
    CHECK(says(given, "plan.acid.brisk"));
    CHECK_FALSE(says(plan_run(of("3.0")), "plan.acid.brisk"));
    CHECK(plan_run(of("3.0")).has(PlanOutput::acid));
    CHECK(says(plan_run(asking(of("0.8"), {{PlanField::excess, "2"}})), "plan.acid.slow"));
    // Both protons count: 0.8 mol/L of sulfuric acid is no slow acid.
    CHECK_FALSE(says(plan_run(asking(of("0.8", "sulfuric"), {{PlanField::excess, "2"}})), "plan.acid.slow"));

    const PlanSheet consent = asking(of("2.5", "sulfuric"), {{PlanField::consent, "yes"}});
    CHECK(reason(plan_run(consent), PlanOutput::acid) == "check.strong_sulfuric");
    CHECK(reason(plan_run(of("40")), PlanOutput::acid) == "check.no_such_acid");
    CHECK(reason(plan_run(of("0.1")), PlanOutput::acid) == "plan.refusal.acid_no_room");
    // A strength that was worked out has the same rules.
    const Plan worked_out = plan_run(with(record_a_metal(), {{Field::acid_volume, "4.0"}}));
    CHECK(waits_for(worked_out, PlanOutput::acid, PlanField::consent));
    CHECK(worked_out.acid.concentration > 3000);
}

TEST_CASE("plan: acid that is short") {
    const Plan short_of =
        plan_run(asking(with(record_a_metal(), {{Field::acid_concentration, "2.0"}}), {{PlanField::excess, "1.5"}}));
    CHECK(remarks(short_of, Field::acid_volume, "check.acid_short"));
    // Half of what the metal needs gives half of the gas.
    const Plan all = plan_run(record_a_metal());
    const Plan half =
        plan_run(with(record_a_metal(), {{Field::acid_volume, "1.69512"}, {Field::acid_concentration, "1.0"}}));
    REQUIRE(half.has(PlanOutput::gas));
    CHECK(half.chosen.gas_volume / all.chosen.gas_volume == doctest::Approx(0.5).epsilon(1e-5));
    CHECK(remarks(half, Field::acid_volume, "check.acid_limits"));
}

TEST_CASE("plan: demonstrations and refusals") {
    for (const char* metal : {"calcium", "lithium"}) {
        CAPTURE(metal);
        const PlanSheet sheet = asking(with(usual_plan(), {{Field::metal, metal}, {Field::acid_concentration, "1.0"}}),
                                       {{PlanField::groups, "8"}});
        const Plan plan = plan_run(sheet);
        CHECK(plan.has(PlanOutput::mass_window));
        CHECK(remarks(plan, Field::metal, "note.demonstration_metal"));
        CHECK(reason(plan, PlanOutput::acid) == "plan.refusal.water_only");
        CHECK(reason(plan, PlanOutput::class_metal) == "plan.refusal.no_class");
        CHECK(reason(plan, PlanOutput::class_acid) == "plan.refusal.no_class");
        const Plan never = plan_run(with(sheet, {{Field::acid, "sulfuric"}}));
        const bool calcium = std::string_view(metal) == "calcium";
        for (std::size_t i = 0; i < plan_output_count; ++i) {
            CHECK(reason(never, static_cast<PlanOutput>(i)) ==
                  (calcium ? "check.calcium_sulfuric" : "check.lithium_sulfuric"));
        }
        CHECK(never.says.empty());
    }
    const Plan powder = plan_run(asking(usual_plan(), {{PlanField::form, "powder"}}));
    for (std::size_t i = 0; i < plan_output_count; ++i) {
        CHECK(reason(powder, static_cast<PlanOutput>(i)) == "plan.refusal.powder");
    }
    CHECK(plan_run(asking(usual_plan(), {{PlanField::form, "granules"}})).has(PlanOutput::gas));
    CHECK(remarks(plan_run(with(usual_plan(), {{Field::metal, "iron"}})), Field::metal, "note.slow_metal"));
}
