#include <doctest/doctest.h>

#include "tests/core/gap_support.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

constexpr double mL = 1e-6;
constexpr double mm = 1e-3;
constexpr double mg = 1e-6;
constexpr double mmHg = 133.322;  // NIST SP 811
constexpr double g_per_mol = 1e-3;

struct Row {
    Cause cause;
    double size;     ///< base unit
    double percent;  ///< of the result
    double tolerance;
};

void check(const Sheet& sheet, std::initializer_list<Row> rows) {
    for (const Row& row : rows) {
        CAPTURE(name_of(row.cause));
        CAPTURE(row.size);
        const double change = effect(sheet, row.cause, row.size);
        CHECK(change == change);
        CHECK(change <= row.percent + row.tolerance);
        CHECK(change >= row.percent - row.tolerance);
    }
}

}  // namespace

TEST_CASE("the invented run gives 22.41 L/mol") {
    // 37.44 mL, 748.0 - 19.84 torr, 295.15 K, 1.4812 mmol by hand.
    CHECK(found_by(invented_run().assessed()) == doctest::Approx(22.41e-3).epsilon(0.005 / 22.41));
}

// Effects worked out by hand calculation on the invented run, to the digits given; half a unit of the last is allowed.
TEST_CASE("causes change the result by what was worked out for the invented run") {
    check(invented_run(), {
                              {Cause::air_bubble, 0.2 * mL, 0.5, 0.05},
                              {Cause::air_bubble, 0.5 * mL, 1.3, 0.05},
                              {Cause::air_bubble, 1.0 * mL, 2.7, 0.05},
                              {Cause::gas_lost, 1.0 * mL, -2.7, 0.05},
                              {Cause::metal_left, 0.01, -1.0, 0.05},
                              {Cause::metal_left, 0.38, -38.0, 0.5},
                              {Cause::oxide_coat, 0.05, -5.0, 0.05},
                              {Cause::gas_warm, 2, 1.0, 0.05},
                              {Cause::gas_warm, 5, 2.7, 0.05},
                              {Cause::gas_warm, 10, 5.7, 0.05},
                              {Cause::levels_not_equal, 50 * mm, 0.5, 0.05},
                              {Cause::levels_not_equal, 100 * mm, 1.0, 0.05},
                              {Cause::levels_not_equal, 150 * mm, 1.5, 0.05},
                              {Cause::levels_not_equal, 200 * mm, 2.1, 0.05},
                              {Cause::levels_not_equal, 280 * mm, 2.9, 0.05},
                              {Cause::end_space_off, -1 * mL, -2.7, 0.05},
                              {Cause::scale_misread, 1 * mL, 2.7, 0.05},
                              {Cause::scale_misread, -1 * mL, -2.7, 0.05},
                              {Cause::meniscus, 0.1 * mL, 0.27, 0.005},
                              {Cause::drops_on_wall, 0.1 * mL, 0.27, 0.005},
                              {Cause::tube_off, 0.1 * mL, 0.27, 0.005},
                              {Cause::dissolved_gas, 0.025, -2.5, 0.05},
                              {Cause::acid_short, 0.49, -49, 0.5},
                              {Cause::sea_level_pressure, 100, 1.2, 0.05},
                              {Cause::sea_level_pressure, 200, 2.5, 0.05},
                              {Cause::sea_level_pressure, 300, 3.7, 0.05},
                              {Cause::sea_level_pressure, 500, 6.3, 0.05},
                              // 760 mmHg taken for granted where it was 748.
                              {Cause::barometer_off, 12 * mmHg, 1.65, 0.005},
                              // 36.0 mg recorded as 35.0 and 37.0 mg.
                              {Cause::balance_off, 1 * mg, 100.0 / 35, 0.005},
                              {Cause::wet_metal, 1 * mg, -100.0 / 37, 0.005},
                          });
}

TEST_CASE("30 degrees of the hot liquid put down for 22 lower the result by 4.2 percent") {
    // IAPWS R7-97: 2.645 kPa at 22 °C, 4.247 kPa at 30 °C; 748.0 mmHg are 99.725 kPa. By hand:
    // 295.15/303.15 x (99.725 - 4.247)/(99.725 - 2.645) = 0.95755.
    CHECK(effect(invented_run(), Cause::hot_liquid, 8) == doctest::Approx(-4.245).epsilon(0.001));
}

TEST_CASE("a mercury column of 20 °C that is not corrected raises the result by a third of a percent") {
    // 2.44 mm at 750 mm and 20 °C: table of barometer corrections of the CRC handbook, a second-hand copy.
    CHECK(effect(invented_run(), Cause::mercury_not_corrected, 2.44 * 748 / 750 * mmHg) ==
          doctest::Approx(0.33).epsilon(0.015));
}

TEST_CASE("a sea-level pressure at a bench high up raises the result as the standard atmosphere says") {
    // US Standard Atmosphere 1976: 898.74 hPa at 1000 m, 835.27 hPa at 1600 m; the report says 1013.25. From the dry
    // pressures, by hand: (1013.25 - 26.4)/(898.74 - 26.4) and (1013.25 - 26.4)/(835.27 - 26.4).
    const auto bench_at = [](const char* pressure) { return invented_run().with({{Field::barometer, pressure}}); };
    // A bench pressure so low is not taken for a report's; the change itself is what is looked at.
    const auto with = [](const Sheet& sheet, double height) {
        const Bench bench = bench_of(sheet.assessed());
        return 100 * (*result_of(falsified(bench, Cause::sea_level_pressure, height)) / *result_of(bench) - 1);
    };
    CHECK(with(bench_at("898.74 hPa"), 1000) == doctest::Approx(13.13).epsilon(0.002));
    CHECK(with(bench_at("835.27 hPa"), 1600) == doctest::Approx(22.0).epsilon(0.002));
}

TEST_CASE("a ribbon of 1.1 g/m taken as 1.0 g/m raises the result by 10 percent") {
    const Sheet ribbon = invented_run().with(
        {{Field::mass_from, "ribbon"}, {Field::ribbon_length, "32.7 mm"}, {Field::mass_per_metre, "1.1"}});
    CHECK(effect(ribbon, Cause::ribbon_mass, 0.10) == doctest::Approx(10.0));
}

TEST_CASE("a level difference of 100 mm that is read as nothing raises the result by 1 percent") {
    const Sheet apart =
        invented_run().with({{Field::liquid_stands, "higher_inside"}, {Field::level_difference, "100"}});
    CHECK(effect(apart, Cause::level_misread, 100 * mm) == doctest::Approx(1.0).epsilon(0.05));
    // Higher outside the pressure was greater than taken: too low.
    const Sheet outside = apart.with({{Field::liquid_stands, "higher_outside"}});
    CHECK(effect(outside, Cause::level_misread, -100 * mm) == doctest::Approx(-1.0).epsilon(0.05));
}

TEST_CASE("a row of the vapour table that is off changes the result by the difference of the rows") {
    Conventions table = one_atmosphere();
    table.vapour = Conventions::Vapour::table;
    // Rows of handbooks: 19.8 torr at 22 °C, 21.1 at 23 °C, 26.7 at 27 °C; 728.2 torr of dry gas.
    const Sheet sheet = invented_run().by(table);
    CHECK(effect(sheet, Cause::vapour_wrong_row, -1) == doctest::Approx(-100 * 1.3 / 728.2).epsilon(0.1));
    CHECK(effect(sheet, Cause::vapour_wrong_row, -5) == doctest::Approx(-100 * 6.9 / 728.2).epsilon(0.02));
}

TEST_CASE("acid of 0.6 mol/kg lowers the vapour pressure by 56 Pa") {
    // Activity of water 0.979 (Pitzer's equation, computed apart): 0.021 x 2.645 kPa = 56 Pa; 97.08 kPa of dry gas.
    CHECK(effect(invented_run(), Cause::acid_lowers_vapour, 0.021) ==
          doctest::Approx(-100 * 0.056 / 97.08).epsilon(0.02));
}

TEST_CASE("a thermometer off by a tenth of a degree changes record A by 0.050 percent") {
    // -0.502 % a kelvin: -0.340 from 1/T and -0.163 from the vapour, computed apart with IAPWS-IF97.
    CHECK(effect(record_a(), Cause::thermometer_off, 0.1) == doctest::Approx(0.0502).epsilon(0.005));
}

TEST_CASE("magnesium as 24 g/mol lowers the result by 1.25 percent, and this much is found") {
    Conventions whole = one_atmosphere();
    whole.molar_mass_digits = Conventions::MolarMassDigits::whole;
    const double found = found_by(invented_run().by(whole).assessed());
    const auto gap = gap_of(compared_with(invented_run(), found * 24.305 / 24, whole).assessed(), Verdict{});
    REQUIRE(gap);
    CHECK(100 * (gap->found / gap->accepted - 1) == doctest::Approx(-1.25).epsilon(0.005));
    const Explanation* rounded = of(*gap, Cause::molar_mass_rounded);
    REQUIRE(rounded);
    CHECK(rounded->size == doctest::Approx(0.305 * g_per_mol).epsilon(1e-4));
    CHECK(rounded->share == doctest::Approx(1.0).epsilon(1e-4));
}
