#include <doctest/doctest.h>

#include <cmath>
#include <initializer_list>
#include <string>
#include <utility>

#include "tests/core/plan_support.hpp"

using namespace overwater;
using namespace overwater::test;

// What a plan says: each quantity in the unit that is read at the bench, with as many digits as it is read with.

namespace {

struct Spoken {
    const char* key;
    const char* name;
    UnitId unit;
    bool significant;
    int digits;
};

// Grams to three figures, the tube to 0.1 mL, levels to a millimetre, shares to a percent: common practice, no source.
constexpr Spoken spoken[] = {
    {"plan.window", "least", UnitId::gram, true, 3},
    {"plan.window", "most", UnitId::gram, true, 3},
    {"plan.window", "from", UnitId::percent, false, 0},
    {"plan.window", "to", UnitId::percent, false, 0},
    {"plan.window", "middle", UnitId::gram, true, 3},
    {"plan.ribbon", "least", UnitId::centimetre, false, 1},
    {"plan.ribbon", "most", UnitId::centimetre, false, 1},
    {"plan.ribbon", "middle", UnitId::centimetre, false, 1},
    {"plan.standard_atmosphere", "pressure", UnitId::kilopascal, false, 1},
    {"plan.gas", "mass", UnitId::gram, true, 3},
    {"plan.gas", "volume", UnitId::millilitre, false, 1},
    {"plan.gas", "pressure", UnitId::kilopascal, false, 1},
    {"plan.reading", "reading", UnitId::millilitre, false, 1},
    {"plan.reading", "share", UnitId::percent, false, 0},
    {"plan.hangs", "level", UnitId::millimetre, false, 0},
    {"plan.overflow.hardly", "upper", UnitId::millilitre, false, 1},
    {"plan.overflow.fits", "upper", UnitId::millilitre, false, 1},
    {"plan.overflow.fits", "holds", UnitId::millilitre, false, 0},
    {"plan.overflow.warm", "warm", UnitId::millilitre, false, 1},
    {"plan.overflow.may_pass", "upper", UnitId::millilitre, false, 1},
    {"plan.overflow.may_pass", "chance", UnitId::percent, true, 1},
    {"plan.overflow.may_leave", "upper", UnitId::millilitre, false, 1},
    {"plan.overflow.may_leave", "chance", UnitId::percent, true, 1},
    {"plan.acid.amount", "volume", UnitId::millilitre, true, 3},
    {"plan.acid.amount", "strength", UnitId::mole_per_litre, true, 2},
    {"plan.acid.amount", "times", UnitId::none, true, 2},
    {"plan.doubt", "share", UnitId::percent, true, 2},
    {"plan.class.metal", "each", UnitId::gram, true, 3},
    {"plan.class.metal", "mass", UnitId::gram, true, 3},
    {"plan.class.ribbon", "length", UnitId::centimetre, true, 3},
    {"plan.class.acid", "volume", UnitId::millilitre, true, 3},
};
constexpr std::size_t count = std::size(spoken);

const Spoken* found(const Message& message, const Argument& argument) {
    for (const Spoken& one : spoken) {
        if (message.key == one.key && argument.name == one.name) return &one;
    }
    return nullptr;
}

/// The base value of a quantity in a plan's words; NaN where it is not said.
double said(const Plan& plan, std::string_view key, std::string_view name) {
    for (const Message& message : plan.says) {
        if (message.key != key) continue;
        for (const Argument& argument : message.arguments) {
            if (argument.name == name) return argument.base;
        }
    }
    return std::nan("");
}

PlanSheet whole_plan() {
    return asking(with(usual_plan(), {{Field::number_at_closed_end, "largest"},
                                      {Field::end_space, "2.35"},
                                      {Field::mass_of_metal, "0.0400"},
                                      {Field::mass_per_metre, "1.0"},
                                      {Field::liquid_stands, "higher_inside"},
                                      {Field::acid_volume, "10"},
                                      {Field::acid_concentration, "2.0"}}),
                  {{PlanField::groups, "10"}, {PlanField::runs, "2"}, {PlanField::spare, "20 %"}});
}

} // namespace

TEST_CASE("plan: what it says stands in the units of the bench") {
    bool was_said[count] = {};
    const auto look = [&was_said](const PlanSheet& sheet) {
        for (const Message& message : plan_run(sheet).says) {
            for (const Argument& argument : message.arguments) {
                if (argument.kind != Argument::Kind::quantity) continue;
                const Spoken* one = found(message, argument);
                CAPTURE(std::string(message.key));
                CAPTURE(std::string(argument.name));
                // The result's own unit is the one of the conventions.
                if (message.key == "plan.doubt" && argument.name != "share") continue;
                REQUIRE(one != nullptr);
                was_said[one - spoken] = true;
                CHECK(argument.unit == one->unit);
                CHECK(argument.significant == one->significant);
                CHECK(argument.digits == one->digits);
            }
        }
    };
    const PlanSheet whole = whole_plan();
    look(whole);
    look(with(whole, {{Field::barometer, ""}, {Field::height_above_sea_level, "3000 m"}}));
    // From a tube that is hardly used to one that runs over, in rooms of which more and more is left open.
    for (const char* within : {"1", "4", "8", "15"}) {
        for (const char* mouth : {"0", "5", "20"}) {
            const PlanSheet room =
                asking(whole, {{PlanField::temperature_within, within}, {PlanField::mouth_space, mouth}});
            for (int tenths = 200; tenths < 600; tenths += 5) {
                const std::string mass = "0.0" + std::to_string(tenths);
                look(with(room, {{Field::mass_of_metal, mass.c_str()}}));
            }
        }
    }
    // Four doubts of about 1 % each, whose limits hardly ever come together.
    for (int tenths = 380; tenths < 480; tenths += 2) {
        const std::string mass = "0.0" + std::to_string(tenths) + " ± 0.0004";
        look(asking(with(whole, {{Field::mass_of_metal, mass.c_str()},
                                 {Field::barometer, "101.3 ± 1"},
                                 {Field::end_space, "2.35 ± 0.4"}}),
                    {{PlanField::temperature_within, "3"}}));
    }
    for (std::size_t i = 0; i < count; ++i) {
        CAPTURE(std::string(spoken[i].key));
        CAPTURE(std::string(spoken[i].name));
        CHECK(was_said[i]);
    }
}

TEST_CASE("plan: it names what it was asked for") {
    const Plan plan = plan_run(whole_plan());
    // 0.0400 g as given; 24 pieces of it (10 groups of 2 runs, a fifth to spare), at 1.0 g/m; 10 mL of acid each.
    CHECK(said(plan, "plan.gas", "mass") == doctest::Approx(4.00e-5));
    CHECK(said(plan, "plan.class.metal", "each") == doctest::Approx(4.00e-5));
    CHECK(said(plan, "plan.class.metal", "mass") == doctest::Approx(9.60e-4));
    CHECK(said(plan, "plan.class.ribbon", "length") == doctest::Approx(0.960));
    CHECK(said(plan, "plan.class.acid", "volume") == doctest::Approx(2.40e-4));
    CHECK(said(plan, "plan.acid.amount", "volume") == doctest::Approx(1.00e-5));
    // 0.0400 g of magnesium (24.305 g/mol, abridged, IUPAC 2021) is 1.6458 mmol; as many of hydrogen at 22.7 L/mol or so.
    const double volume = said(plan, "plan.gas", "volume");
    CHECK(volume > 37e-6);
    CHECK(volume < 43e-6);
    // 20 mmol of acid, of which each of magnesium takes two.
    CHECK(said(plan, "plan.acid.amount", "times") == doctest::Approx(0.0200 / (2 * 0.0400 / 24.305)));
}
