// How far a cause goes in one run, and where it begins to be possible: limits met exactly, and on either side of them.

#include <doctest/doctest.h>

#include <string>

#include "tests/core/gap_support.hpp"
#include "tests/core/vessel_support.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

constexpr double mL = 1e-6;

doctest::Approx about(double value) { return doctest::Approx(value).epsilon(1e-9); }

std::optional<Reach> reach(const Sheet& sheet, Cause cause) { return reach_of(sheet.assessed(), cause); }

Reach sure_reach(const Sheet& sheet, Cause cause) {
    const auto found = reach(sheet, cause);
    CAPTURE(std::string(name_of(cause)));
    REQUIRE(found.has_value());
    return *found;
}

Sheet at_pressure(const char* barometer) { return invented_run().with({{Field::barometer, barometer}}); }

Sheet at_height(const char* height) { return at_pressure("1013 hPa").with({{Field::height_above_sea_level, height}}); }

}  // namespace

TEST_CASE("a barometer reading is a weather report's from 970 to 1050 hPa, and most days' from 1000 to 1030 hPa") {
    // From memory, as the source says; a report's number most days: as far up as people live, 300 m; else a low place's.
    const auto usual = [](const char* barometer) {
        const auto found = reach(at_pressure(barometer), Cause::sea_level_pressure);
        return found ? found->usual : 0.0;
    };
    for (const char* no_report : {"969 hPa", "1051 hPa"}) {
        CAPTURE(no_report);
        CHECK(usual(no_report) == 0);
    }
    for (const char* a_deep_low_or_a_high : {"970 hPa", "999 hPa", "1031 hPa", "1050 hPa"}) {
        CAPTURE(a_deep_low_or_a_high);
        CHECK(usual(a_deep_low_or_a_high) == about(100));
    }
    for (const char* most_days : {"1000 hPa", "1013 hPa", "1030 hPa"}) {
        CAPTURE(most_days);
        CHECK(usual(most_days) == about(300));
    }
    CHECK(sure_reach(at_pressure("999 hPa"), Cause::sea_level_pressure).largest == about(2600));
}

TEST_CASE("no bench stands higher than it was put down, nor higher than any bench") {
    // method.md, section 2: benches up to 5500 m.
    CHECK(sure_reach(at_pressure("1013 hPa"), Cause::sea_level_pressure).most_raising == about(5500));
    CHECK(sure_reach(at_height("1000"), Cause::sea_level_pressure).largest == about(1000));
    CHECK(sure_reach(at_height("1000"), Cause::sea_level_pressure).usual == about(300));
    CHECK(sure_reach(at_height("50"), Cause::sea_level_pressure).largest == about(50));
    CHECK(sure_reach(at_height("50"), Cause::sea_level_pressure).usual == about(50));
    CHECK(sure_reach(at_height("5400"), Cause::sea_level_pressure).largest == about(5400));
    CHECK(sure_reach(at_height("6000"), Cause::sea_level_pressure).largest == about(5500));
    // A report is of sea level: there it is right, and below it the other way round.
    CHECK(reach(at_height("1"), Cause::sea_level_pressure).has_value());
    CHECK_FALSE(reach(at_height("0"), Cause::sea_level_pressure));
    CHECK_FALSE(reach(at_height("-10"), Cause::sea_level_pressure));
}

TEST_CASE("the room behind a hot liquid was not colder than 12 °C") {
    // From memory: nobody teaches in a colder room.
    const auto warm = [](const char* celsius) { return invented_run().with({{Field::temperature, celsius}}); };
    CHECK_FALSE(reach(warm("11.0"), Cause::hot_liquid));
    CHECK_FALSE(reach(warm("12.0"), Cause::hot_liquid));
    CHECK(sure_reach(warm("12.5"), Cause::hot_liquid).largest == about(0.5));
    CHECK(sure_reach(warm("12.5"), Cause::hot_liquid).usual == about(0.5));
    CHECK(sure_reach(warm("22.0"), Cause::hot_liquid).largest == about(10));
    CHECK(sure_reach(warm("22.0"), Cause::hot_liquid).usual == about(5));
    // 28 °C is the most that was seen.
    CHECK(sure_reach(warm("45.0"), Cause::hot_liquid).largest == about(28));
    CHECK(sure_reach(warm("45.0"), Cause::hot_liquid).most_lowering == about(45));
    CHECK(sure_reach(warm("45.0"), Cause::hot_liquid).most_raising == 0);
}

TEST_CASE("water is liquid from 0 to 100 °C, whatever the thermometer or the table's row was") {
    Conventions table = one_atmosphere();
    table.vapour = Conventions::Vapour::table;
    const Sheet run = invented_run().by(table);  // 22.0 °C
    CHECK(sure_reach(run, Cause::gas_warm).most_raising == about(78));
    CHECK(sure_reach(run, Cause::thermometer_off).most_raising == about(78));
    CHECK(sure_reach(run, Cause::thermometer_off).most_lowering == about(22));
    CHECK(sure_reach(run, Cause::vapour_wrong_row).most_raising == about(22));
    CHECK(sure_reach(run, Cause::vapour_wrong_row).most_lowering == about(78));
    const Sheet cold = invented_run().with({{Field::temperature, "1.0"}});
    CHECK(result_with(cold.assessed(), Cause::thermometer_off, 1.0).has_value());
    CHECK_FALSE(result_with(cold.assessed(), Cause::thermometer_off, 1.01));
}

TEST_CASE("an end space that nobody measured has up to 4 mL, and 6 mL at the most") {
    // Common practice, no source: 1 to 4 mL beyond the last mark.
    const Reach open = sure_reach(invented_run().without(Field::end_space), Cause::end_space_off);
    CHECK(open.usual == about(4 * mL));
    CHECK(open.largest == about(6 * mL));
    const Reach measured = sure_reach(invented_run(), Cause::end_space_off);
    CHECK(measured.usual == about(0.2 * mL));
    CHECK(measured.largest == about(4 * mL));
    // None of it is there at the most: 1.50 mL too many.
    CHECK(measured.most_raising == about(1.50 * mL));
}

TEST_CASE("no cause takes away more than is there: gas, metal, scale, pressure, a metre of tube") {
    const Sheet run = invented_run();  // 37.44 mL of gas from 36.0 mg; 50 - 14.06 mL of scale above the meniscus
    CHECK(sure_reach(run, Cause::air_bubble).most_raising == about(37.44 * mL));
    CHECK(sure_reach(run, Cause::drops_on_wall).most_raising == about(37.44 * mL));
    CHECK(sure_reach(run, Cause::scale_misread).most_raising == about(35.94 * mL));
    CHECK(sure_reach(run, Cause::scale_misread).most_lowering == about(14.06 * mL));
    CHECK(sure_reach(run, Cause::wet_metal).most_lowering == about(36.0e-6));
    CHECK(sure_reach(run, Cause::balance_off).most_lowering == about(36.0e-6));
    CHECK(sure_reach(run, Cause::barometer_off).most_raising == about(748.0 * 101325 / 760).epsilon(1e-6));
    CHECK(sure_reach(run, Cause::barometer_off).most_lowering == about(748.0 * 101325 / 760).epsilon(1e-6));
    CHECK(sure_reach(run, Cause::mercury_not_corrected).most_raising == about(748.0 * 101325 / 760).epsilon(1e-6));
    // Own choice, generous: no tube is longer than a metre.
    CHECK(sure_reach(run, Cause::levels_not_equal).most_raising == about(1));
    CHECK(sure_reach(run, Cause::levels_not_equal).most_lowering == about(1));
    const Sheet apart = run.with({{Field::liquid_stands, "higher_inside"}, {Field::level_difference, "50"}});
    CHECK(sure_reach(apart, Cause::level_misread).most_raising == about(1));
    CHECK(sure_reach(apart, Cause::level_misread).most_lowering == about(1));
    // All of it, where it is a share.
    for (const Cause cause :
         {Cause::metal_left, Cause::oxide_coat, Cause::dissolved_gas, Cause::acid_short, Cause::acid_lowers_vapour}) {
        CHECK(sure_reach(run, cause).most_lowering == about(1));
    }
    // The scale on which 0 is at the closed end: 43.20 mL above, and of 50 mL 6.80 mL below.
    const Sheet upright = good_run(Apparatus::tube_over_water).with({{Field::tube_capacity, "50"}});
    CHECK(sure_reach(upright, Cause::scale_misread).most_raising == about(43.20 * mL));
    CHECK(sure_reach(upright, Cause::scale_misread).most_lowering == about(6.80 * mL));
    // By difference what counts is the difference.
    const Sheet difference =
        run.without(Field::mass_of_metal)
            .with({{Field::mass_from, "by_difference"}, {Field::mass_before, "1.2360"}, {Field::mass_after, "1.2000"}});
    CHECK(sure_reach(difference, Cause::wet_metal).most_lowering == about(36.0e-6));
    const Sheet ribbon =
        run.without(Field::mass_of_metal)
            .with({{Field::mass_from, "ribbon"}, {Field::ribbon_length, "36 mm"}, {Field::mass_per_metre, "1.0"}});
    CHECK(sure_reach(ribbon, Cause::ribbon_mass).most_lowering == about(1));
}

TEST_CASE("acid is short only where there is less than twice what the metal needs") {
    // 50.0 mg of magnesium need 2 x 2.0572 mmol = 4.1144 mmol: twice that is 8.2288 mmol.
    const auto with_acid = [](const char* volume) {
        return invented_run().with(
            {{Field::mass_of_metal, "0.0500"}, {Field::acid_volume, volume}, {Field::acid_concentration, "1.000"}});
    };
    CHECK(reach(with_acid("8.22"), Cause::acid_short).has_value());
    CHECK_FALSE(reach(with_acid("8.24"), Cause::acid_short));
    // Exactly twice: a whole mole of an invented metal needs one of acid, and two are there.
    const Sheet own = invented_run().with({{Field::metal, "own"},
                                           {Field::gas, "hydrogen"},
                                           {Field::molar_mass, "1000"},
                                           {Field::gas_per_mole, "1"},
                                           {Field::acid_per_mole, "1"},
                                           {Field::mass_of_metal, "1 kg"},
                                           {Field::acid_concentration, "1"}});
    const Sheet twice = own.with({{Field::acid_volume, "2 L"}});
    REQUIRE(twice.assessed().value(Output::acid_excess) == 2.0);
    CHECK_FALSE(reach(twice, Cause::acid_short));
    CHECK(reach(own.with({{Field::acid_volume, "1.99 L"}}), Cause::acid_short).has_value());
}

TEST_CASE("a column of mercury is read in mmHg, torr and inches of mercury") {
    for (const char* mercury : {"748 mmHg", "748 torr", "29.45 inHg"}) {
        CAPTURE(mercury);
        CHECK(reach(at_pressure(mercury), Cause::mercury_not_corrected).has_value());
    }
    for (const char* other : {"99.72 kPa", "997.2 hPa", "0.984 atm"}) {
        CAPTURE(other);
        CHECK_FALSE(reach(at_pressure(other), Cause::mercury_not_corrected));
    }
}

TEST_CASE("what hydrogen loses to the water is 1 percent, and of a gas that dissolves well nearly all") {
    const Reach hydrogen = sure_reach(invented_run(), Cause::dissolved_gas);
    CHECK(hydrogen.usual == about(0.01));
    CHECK(hydrogen.largest == about(0.025));
    // Carbon dioxide dissolves 46.5 times as well (standards.md, 7.3): 0.025 of that is all of it, and 0.95 is what is taken.
    const Sheet carbonate = good_run(Apparatus::generator_flask)
                                .with({{Field::metal, "calcium_carbonate"}, {Field::mass_of_metal, "0.1697"}});
    const Reach carbon_dioxide = sure_reach(carbonate, Cause::dissolved_gas);
    CHECK(carbon_dioxide.usual == doctest::Approx(0.465).epsilon(0.03));
    CHECK(carbon_dioxide.largest == about(0.95));
}

TEST_CASE("a mistake that no reading could have come from has no result") {
    // 14.06 mL on a burette of 50 mL, 0 at the mouth: gas lost moves the meniscus towards 50, a bubble towards 0.
    const Assessment run = invented_run().assessed();
    CHECK(result_with(run, Cause::gas_lost, 35.94 * mL).has_value());
    CHECK_FALSE(result_with(run, Cause::gas_lost, 35.95 * mL));
    CHECK(result_with(run, Cause::air_bubble, 14.06 * mL).has_value());
    CHECK_FALSE(result_with(run, Cause::air_bubble, 14.07 * mL));
    // Upside down: 0 at the closed end, no capacity known: nothing ends the scale but 0.
    const Assessment upright = good_run(Apparatus::tube_over_water).assessed();
    CHECK(result_with(upright, Cause::air_bubble, 60 * mL).has_value());
    CHECK_FALSE(result_with(upright, Cause::gas_lost, 43.21 * mL));
    // All of the metal was nothing: no mass was put down.
    CHECK(result_with(run, Cause::balance_off, 35.9e-6).has_value());
    CHECK_FALSE(result_with(run, Cause::balance_off, 36.0e-6));
    // No air bubble of less than nothing, and no number that is none.
    CHECK_FALSE(result_with(run, Cause::air_bubble, -0.1 * mL));
    CHECK_FALSE(result_with(run, Cause::air_bubble, __builtin_nan("")));
    CHECK_FALSE(result_with(run, Cause::air_bubble, __builtin_inf()));
}
