// A weather report's pressure taken down to the bench: standards.md, section 6.4, column "exact ISA, height taken as H".

#include <doctest/doctest.h>

#include <cmath>

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
    // (a) US Standard Atmosphere 1976; the table is truncated, not rounded. By geopotential height as it stands, by geometric
    // height Z through H = r Z/(r + Z), r = 6 356 766 m.
    const auto by_geometric = [](double height) { return 6356766 * height / (6356766 + height); };
    const Row rows[] = {{101325, 1000, 898.74},
                        {101325, 3000, 701.08},
                        {101325, by_geometric(1000), 898.76},
                        {101325, by_geometric(1600), 835.27},
                        {101325, by_geometric(1584.96), 836.82},
                        {101325, by_geometric(2000), 795.01},
                        {101325, by_geometric(3000), 701.21},
                        {101325, by_geometric(4500), 577.52}};
    for (const Row& row : rows) {
        const double found = pressure_at_bench(PressureKind::altimeter_setting, row.reported_pascal, row.height_metre, 15) / 100;
        CHECK(found >= row.expected_hectopascal);
        CHECK(found < row.expected_hectopascal + 0.01);
    }
}

TEST_CASE("the standard atmosphere between the rows of its table") {
    // (b) own computation with the constants of US Standard Atmosphere 1976, hPa by geopotential height.
    const Row rows[] = {{101325, 500, 954.608}, {101325, 1000, 898.746}, {101325, 1500, 845.560},
                        {101325, 2000, 794.952}, {101325, 3000, 701.085}, {101325, -500, 1074.775}};
    for (const Row& row : rows) {
        CAPTURE(row.height_metre);
        const double found = pressure_at_bench(PressureKind::altimeter_setting, row.reported_pascal, row.height_metre, 15) / 100;
        CHECK(std::fabs(found - row.expected_hectopascal) <= 0.0015);
    }
    // (a) below sea level, table truncated to a tenth: 1074.7 at Z = -500 m.
    const double below = pressure_at_bench(PressureKind::altimeter_setting, 101325, 6356766 * -500.0 / (6356766 - 500), 15) / 100;
    CHECK(below >= 1074.7);
    CHECK(below < 1074.8);
}

TEST_CASE("other forms of the altimeter setting differ by the offset of an aneroid") {
    // standards.md, section 6.4: (b) the form of the National Weather Service holds 0.3 hPa of offset, ASOS rounds its
    // constants, and both are quoted in (a) the note beside US Standard Atmosphere tables; hPa. Height taken as H.
    struct Other {
        double reported_pascal;
        double height_metre;
        double weather_service;
        double asos;  ///< 0: not printed
    };
    const Other rows[] = {
        {Pressure::from(30.11, inch_of_mercury).si(), 5577 * foot, 830.67, 830.51},
        {Pressure::from(30.13, inch_of_mercury).si(), 5431 * foot, 835.81, 835.65},
        {101325, 5280 * foot, 834.51, 834.35},
        {101325, 500, 954.88, 0},
        {101325, 1000, 899.00, 0},
        {102500, 300, 989.43, 0},
    };
    for (const Other& row : rows) {
        CAPTURE(row.height_metre);
        const double found = pressure_at_bench(PressureKind::altimeter_setting, row.reported_pascal, row.height_metre, 15) / 100;
        CHECK(row.weather_service > found);
        CHECK(row.weather_service - found < 0.3);
        if (row.asos > 0) CHECK(std::fabs(row.asos - found) < 0.08);
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
