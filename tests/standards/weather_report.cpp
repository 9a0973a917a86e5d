// A weather report's pressure taken down to the bench: standards.md, section 6.4, column "exact ISA, height taken as H".

#include <doctest/doctest.h>

#include "core/matter/constants.hpp"
#include "core/quantity/units.hpp"
#include "core/result/evaluate.hpp"

using namespace overwater;

namespace {

double pressure_at_bench(PressureKind kind, double reported, double height, double outdoor_celsius) {
    Measured<double> run;
    run.setup.pressure_kind = kind;
    run[Input::barometer] = reported;
    run[Input::height_above_sea_level] = height;
    run[Input::outdoor_temperature] = outdoor_celsius;
    run[Input::gravity] = standard_gravity.si();
    OutputSet wanted;
    wanted.add(Output::pressure_at_bench);
    return evaluate(run, Method{}, wanted)[Output::pressure_at_bench];
}

struct Row {
    double reported_pascal;
    double height_metre;
    double expected_hectopascal;
};

constexpr double foot = 0.3048;  // exact (NIST SP 811, Appendix B.8)

}  // namespace

TEST_CASE("an altimeter setting is inverted by the standard atmosphere") {
    // (b) computed from the US Standard Atmosphere 1976 (= ICAO Doc 7488), to the hundredths printed in standards.md.
    const Row rows[] = {
        {Pressure::from(30.11, inch_of_mercury).si(), 5577 * foot, 830.44},
        {Pressure::from(30.13, inch_of_mercury).si(), 5431 * foot, 835.58},
        {101325, 5280 * foot, 834.28},
        {101325, 500, 954.61},
        {101325, 1000, 898.75},
        {102500, 300, 989.14},
    };
    for (const Row& row : rows) {
        CAPTURE(row.height_metre);
        const double found = pressure_at_bench(PressureKind::altimeter_setting, row.reported_pascal, row.height_metre, 15);
        CHECK(found / 100 == doctest::Approx(row.expected_hectopascal).epsilon(0.006 / row.expected_hectopascal));
    }
}

TEST_CASE("a standard sea-level pressure gives the standard atmosphere's own pressures") {
    // (a) US Standard Atmosphere 1976, by geopotential height; the table is truncated, not rounded.
    const Row rows[] = {{101325, 1000, 898.74}, {101325, 3000, 701.08}};
    for (const Row& row : rows) {
        const double found = pressure_at_bench(PressureKind::altimeter_setting, row.reported_pascal, row.height_metre, 15) / 100;
        CHECK(found >= row.expected_hectopascal);
        CHECK(found < row.expected_hectopascal + 0.01);
    }
}

TEST_CASE("a pressure reduced with the standard temperatures comes near the standard atmosphere") {
    // With the air outside at 15 °C - 6.5 K/km the barometric formula with the layer's mean temperature differs from the
    // exact atmosphere by the second order of the lapse only: exp(-x) against a power, below 0.02 % up to 1000 m
    // (own computation: 898.746 hPa at 1000 m, US Standard Atmosphere 1976).
    CHECK(pressure_at_bench(PressureKind::reduced_to_sea_level, 101325, 1000, 15 - 6.5) / 100 ==
          doctest::Approx(898.746).epsilon(2e-4));
    CHECK(pressure_at_bench(PressureKind::reduced_to_sea_level, 101325, 0, 15) == doctest::Approx(101325));
}
