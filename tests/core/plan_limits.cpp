#include <doctest/doctest.h>

#include <cmath>
#include <string>
#include <vector>

#include "core/lesson/plan_expected.hpp"
#include "tests/core/plan_support.hpp"

using namespace overwater;
using namespace overwater::test;

// Where what a plan says or writes changes: just inside, at and just outside.

namespace {

/// Text of a reading on the expected sheet.
std::string expected(const Plan& plan, Field field) { return plan.expected_sheet.at(field).text; }

PlanSheet with_acid(const char* volume, const char* strength, const char* acid = "hydrochloric") {
    return with(usual_plan(), {{Field::mass_of_metal, "0.0412"},
                               {Field::acid, acid},
                               {Field::acid_volume, volume},
                               {Field::acid_concentration, strength}});
}

}  // namespace

TEST_CASE("plan: a small volume of acid is written to the hundredth, any other as the cylinder shows it") {
    // A cylinder of 10 mL is read to 0.2 mL (ISO 4788, from memory), so to one decimal; below 2 mL a tenth is 5 % and more:
    // common practice, no source.
    CHECK(expected(plan_run(with_acid("1.96", "3.0")), Field::acid_volume) == "1.96");
    CHECK(expected(plan_run(with_acid("1.99", "3.0")), Field::acid_volume) == "1.99");
    CHECK(expected(plan_run(with_acid("2.00", "3.0")), Field::acid_volume) == "2.0");
    CHECK(expected(plan_run(with_acid("2.04", "3.0")), Field::acid_volume) == "2.0");
    CHECK(expected(plan_run(with_acid("2.96", "3.0")), Field::acid_volume) == "3.0");
    CHECK(expected(plan_run(with_acid("0.96", "3.0")), Field::acid_volume) == "0.96");
}

TEST_CASE("plan: a strength that was worked out is written with three figures, one that was typed as it was") {
    // method.md: 1.69512 mmol of magnesium; four times 3.39024 mmol in 8.0 mL: 1.69512 mol/L.
    const PlanSheet sheet = asking(with_acid("8.0", ""), {{PlanField::excess, "4"}});
    const Plan plan = plan_run(sheet);
    REQUIRE(plan.has(PlanOutput::acid));
    CHECK(expected(plan, Field::acid_concentration) == "1.70");
    CHECK(plan.expected_sheet.at(Field::acid_concentration).unit == UnitId::mole_per_litre);
    CHECK(expected(plan_run(with_acid("8.0", "2.125")), Field::acid_concentration) == "2.125");
}

TEST_CASE("plan: slow acid has less than 1 mol of protons in a litre, brisk acid more than 3") {
    // Common practice, no source. Sulfuric acid has two a molecule; above 2 mol/L it is refused, hydrochloric acid above 3
    // asks for consent (method.md, section 10).
    const auto pace = [](const char* strength, const char* acid) {
        const Plan plan = plan_run(asking(with_acid("10", strength, acid), {{PlanField::consent, "yes"}}));
        CHECK(plan.has(PlanOutput::acid));
        return std::string(says(plan, "plan.acid.slow") ? "slow" : says(plan, "plan.acid.brisk") ? "brisk" : "usual");
    };
    CHECK(pace("0.99", "hydrochloric") == "slow");
    CHECK(pace("1", "hydrochloric") == "usual");
    CHECK(pace("3", "hydrochloric") == "usual");
    CHECK(pace("3.01", "hydrochloric") == "brisk");
    CHECK(pace("0.499", "sulfuric") == "slow");
    CHECK(pace("0.5", "sulfuric") == "usual");
    CHECK(pace("1.5", "sulfuric") == "usual");
    CHECK(pace("1.51", "sulfuric") == "brisk");
    const auto asks = [](const char* strength) {
        return waits_for(plan_run(with_acid("10", strength)), PlanOutput::acid, PlanField::consent);
    };
    CHECK_FALSE(asks("3"));
    CHECK(asks("3.01"));
}

TEST_CASE("plan: air is called thin where the dry gas has less than 87 kPa") {
    // 950 m of the standard atmosphere are 90.4 kPa (ICAO Doc 7488), less the vapour of a warm room. At 25 °C the vapour has
    // 3169.9 Pa (IAPWS-IF97), so 90.17 kPa of air are the limit.
    const auto thin = [](const char* barometer) {
        return says(plan_run(with(usual_plan(), {{Field::barometer, barometer}})), "plan.thin_air");
    };
    CHECK_FALSE(thin("90.20"));
    CHECK_FALSE(thin("90.18"));
    CHECK(thin("90.16"));
    CHECK(thin("89.5"));
}

TEST_CASE("plan: little and much gas begin beyond the range that is read well") {
    // The share that a plan names itself; 60 and 90 % unless it says otherwise.
    bool little = false;
    bool much = false;
    bool between = false;
    for (int tenths = 200; tenths < 500; tenths += 4) {
        const std::string mass = "0.0" + std::to_string(tenths);
        const PlanSheet sheet =
            asking(with(usual_plan(), {{Field::mass_of_metal, mass.c_str()}}),
                   {{PlanField::temperature_within, "0.1"}, {PlanField::pressure_within, "0.1 hPa"}});
        const Plan plan = plan_run(sheet);
        if (!plan.has(PlanOutput::scale_reading)) continue;
        CHECK(says(plan, "plan.little") == (plan.chosen.share < 0.60));
        const bool fits = plan.overflow.level == Overflow::Level::fits;
        CHECK(says(plan, "plan.much") == (fits && plan.chosen.share > 0.90));
        little = little || says(plan, "plan.little");
        much = much || says(plan, "plan.much");
        between = between || !(says(plan, "plan.little") || says(plan, "plan.much"));
    }
    CHECK(little);
    CHECK(much);
    CHECK(between);
}

TEST_CASE("plan: a chance below one in a thousand is told in words") {
    int hardly = 0;
    int a_little = 0;
    for (int tenths = 3800; tenths < 4800; tenths += 4) {
        const std::string mass = "0.0" + std::to_string(tenths) + " ± 0.0004";
        const PlanSheet sheet = asking(with(usual_plan(), {{Field::number_at_closed_end, "largest"},
                                                           {Field::end_space, "2.35 ± 0.4"},
                                                           {Field::barometer, "101.3 ± 1"},
                                                           {Field::mass_of_metal, mass.c_str()}}),
                                       {{PlanField::temperature_within, "3"}, {PlanField::mouth_space, "20"}});
        const Plan plan = plan_run(sheet);
        if (plan.overflow.level != Overflow::Level::may_pass_scale) continue;
        const double chance = plan.overflow.chance;
        CHECK(says(plan, "plan.overflow.hardly") == (chance < 0.001));
        CHECK(says(plan, "plan.overflow.may_pass") == (chance >= 0.001));
        hardly += chance < 0.001 ? 1 : 0;
        a_little += chance >= 0.001 && chance < 0.002 ? 1 : 0;
    }
    CHECK(hardly > 0);
    CHECK(a_little > 0);
}

TEST_CASE("plan: gas that is still warm is 10 K warmer than the room") {
    // mistakes.md, number 41: the largest that is reported. Vapour at 25 and 35 °C: 3169.9 and 5628.6 Pa (IAPWS-IF97).
    const Plan plan = plan_run(usual_plan());
    REQUIRE(plan.has(PlanOutput::overflow));
    const double grows = 308.15 / 298.15 * (101325 - 3169.9) / (101325 - 5628.6);
    CHECK(plan.overflow.warm / plan.overflow.planned == doctest::Approx(grows).epsilon(1e-5));
    CHECK(plan.overflow.holds == doctest::Approx(50e-6));
    CHECK(plan.overflow.mouth == doctest::Approx(50e-6));
    const Plan room = plan_run(asking(usual_plan(), {{PlanField::mouth_space, "7.5"}}));
    CHECK(room.overflow.mouth == doctest::Approx(57.5e-6));
}

TEST_CASE("plan: a scale that is less sure lets the gas stand higher") {
    // ISO 385:2005, Table 1: burettes of 50 mL are off by up to 0.05 mL in class A, by 0.10 mL in class B.
    const auto with_tube = [](const char* key) {
        const Plan plan = plan_run(with_instrument(usual_plan(), Field::scale_reading, key));
        REQUIRE(plan.has(PlanOutput::overflow));
        return plan.overflow;
    };
    const Overflow a = with_tube("burette_50_a");
    const Overflow b = with_tube("burette_50_b");
    CHECK(a.planned == b.planned);
    CHECK((b.upper - a.upper) * 1e6 == doctest::Approx(0.05).epsilon(1e-6));
    CHECK(b.u > a.u);
}

TEST_CASE("plan: pieces for a class are rounded up, and not by the last bit of a number") {
    const auto pieces = [](const char* groups, const char* runs, const char* spare) {
        return plan_run(asking(with(usual_plan(), {{Field::mass_of_metal, "0.0400"}}),
                               {{PlanField::groups, groups}, {PlanField::runs, runs}, {PlanField::spare, spare}}))
            .amounts.pieces;
    };
    CHECK(pieces("10", "1", "10 %") == 11);  // in binary 10 x 1.1 is above 11
    CHECK(pieces("10", "1", "20 %") == 12);
    CHECK(pieces("10", "1", "10.1 %") == 12);
    CHECK(pieces("1", "1", "0") == 1);
    CHECK(pieces("1", "1", "1 %") == 2);
    CHECK(pieces("7", "3", "200 %") == 63);
    CHECK(pieces("1000", "6", "200 %") == 18000);
}

TEST_CASE("plan: of the ways to improve the cheapest is named, from care to an instrument") {
    // Nothing but care, some metal, some work, a ribbon to be weighed and cut, money.
    using Way = Improvement::Way;
    const std::vector<Way> dearer{Way::read_again, Way::more_metal, Way::measure_it, Way::ribbon_by_length,
                                  Way::finer_instrument};
    const auto of = [](Way way) {
        Improvement one;
        one.way = way;
        return one;
    };
    CHECK_FALSE(cheapest_of({}).has_value());
    for (std::size_t cheap = 0; cheap < dearer.size(); ++cheap) {
        for (std::size_t dear = cheap + 1; dear < dearer.size(); ++dear) {
            CHECK(cheapest_of({of(dearer[dear]), of(dearer[cheap])}) == 1);
            CHECK(cheapest_of({of(dearer[cheap]), of(dearer[dear])}) == 0);
        }
        // The more helpful of two alike stands first.
        CHECK(cheapest_of({of(dearer[cheap]), of(dearer[cheap])}) == 0);
    }
}

TEST_CASE("plan: a guess is written as the instrument will show it, digits that are there stay") {
    const auto shown = [](Field field, const char* typed, const char* instrument) {
        return expected(plan_run(with_instrument(with(usual_plan(), {{field, typed}}), field, instrument)), field);
    };
    CHECK(shown(Field::temperature, "22", "thermometer_01") == "22.0");
    CHECK(shown(Field::temperature, "22.345", "thermometer_01") == "22.345");
    CHECK(shown(Field::barometer, "101", "mercury_barometer").size() > 3);
    // A height in place of a barometer: one digit more than it will show. ICAO Doc 7488: 89.875 kPa at 1000 m.
    const Plan high = plan_run(with(usual_plan(), {{Field::barometer, ""}, {Field::height_above_sea_level, "1000 m"}}));
    REQUIRE(high.has(PlanOutput::doubt));
    CHECK(std::fabs(std::stod(expected(high, Field::barometer)) - 89.875) < 0.006);
    CHECK(high.expected_sheet.at(Field::barometer).unit == UnitId::kilopascal);
    CHECK(high.expected_sheet.at(Field::pressure_kind).text == "at_the_bench");
}

TEST_CASE("plan: a doubt typed behind a reading goes into the box for it") {
    const auto box = [](const char* typed) {
        return plan_run(with(usual_plan(), {{Field::temperature, typed}}))
            .expected_sheet.at(Field::temperature)
            .plus_minus;
    };
    CHECK(box("22 ± 0.75") == "0.75");
    CHECK(std::stod(box("22 ± 0.123456")) == 0.123456);
    CHECK(box("22").empty());
}
