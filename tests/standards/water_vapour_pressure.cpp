#include <doctest/doctest.h>

#include <cmath>
#include <string>

#include "core/matter/water.hpp"
#include "core/quantity/number_format.hpp"
#include "core/quantity/units.hpp"
#include "tests/standards/wagner_pruss.hpp"

using namespace overwater;

namespace {

double pressure_at(double celsius) { return water_vapour_pressure(Temperature<>::celsius(celsius)).si(); }

struct Row {
    const char* source;
    double kelvin;
    double pascal;
    double tolerance; ///< in pascal, half a unit of the last digit printed unless the row says otherwise
};

// IAPWS R7-97(2012), Table 35 (T to p) and Table 36 (p to T; tolerance: half of its last digit times dp/dT).
const Row published[] = {
    {"IAPWS R7-97(2012) Table 35", 300.0, 0.353658941e-2 * 1e6, 0.5e-11 * 1e6},
    {"IAPWS R7-97(2012) Table 35", 500.0, 0.263889776e1 * 1e6, 0.5e-8 * 1e6},
    {"IAPWS R7-97(2012) Table 35", 600.0, 0.123443146e2 * 1e6, 0.5e-7 * 1e6},
    {"IAPWS R7-97(2012) Table 36", 372.755919, 0.1e6, 0.5e-6 * 3.6e3},
    {"IAPWS R7-97(2012) Table 36", 453.035632, 1.0e6, 0.5e-6 * 2.4e4},
    {"IAPWS R7-97(2012) Table 36", 584.149488, 10.0e6, 0.5e-6 * 1.4e5},
};

/// 15 to 30 °C, whole degrees. NaN-free: a 0 means that the table has no such row.
struct Degree {
    double celsius;
    double if97_pascal;        ///< python3-iapws 1.5.3, IAPWS97 region 4
    double if97_torr;          ///< the same
    double iapws95_kilopascal; ///< python3-iapws 1.5.3, IAPWS-95
    double crc94_kilopascal;   ///< CRC Handbook, 94th edition, 6-10, from a second-hand copy
    double crc73_kilopascal;   ///< CRC Handbook, 73rd edition, from a second-hand copy
    double old_mmhg;           ///< older handbooks; three decimals from memory
    const char* tenth_torr;
};

const Degree degrees[] = {
    {15, 1705.745, 12.794, 1.70579, 0, 1.7056, 12.788, "12.8"},
    {16, 1818.759, 13.642, 1.81882, 1.8188, 1.8185, 13.634, "13.6"},
    {17, 1938.291, 14.538, 1.93836, 0, 1.9380, 14.530, "14.5"},
    {18, 2064.657, 15.486, 2.06473, 2.0647, 2.0644, 15.477, "15.5"},
    {19, 2198.184, 16.488, 2.19827, 0, 2.1978, 16.477, "16.5"},
    {20, 2339.215, 17.546, 2.33932, 2.3393, 2.3388, 17.535, "17.5"},
    {21, 2488.102, 18.662, 2.48822, 0, 2.4877, 18.650, "18.7"},
    {22, 2645.211, 19.841, 2.64534, 2.6453, 2.6447, 19.827, "19.8"},
    {23, 2810.924, 21.084, 2.81107, 0, 2.8104, 21.068, "21.1"},
    {24, 2985.633, 22.394, 2.98580, 2.9858, 2.9850, 22.377, "22.4"},
    {25, 3169.747, 23.775, 3.16993, 3.1699, 3.1690, 23.756, "23.8"},
    {26, 3363.687, 25.230, 3.36389, 3.3639, 3.3629, 25.209, "25.2"},
    {27, 3567.892, 26.761, 3.56811, 0, 3.5670, 26.739, "26.8"},
    {28, 3782.813, 28.373, 3.78305, 3.7831, 3.7818, 28.349, "28.4"},
    {29, 4008.917, 30.069, 4.00918, 0, 4.0078, 30.043, "30.1"},
    {30, 4246.688, 31.853, 4.24697, 4.2470, 4.2455, 31.824, "31.9"},
};

} // namespace

TEST_CASE("vapour pressure of water: the standard's own check values") {
    for (const Row& row : published) {
        INFO(row.source, " at ", row.kelvin, " K");
        const double found = water_vapour_pressure(Temperature<>::kelvin(row.kelvin)).si();
        CHECK(std::fabs(found - row.pascal) <= row.tolerance);
    }
}

TEST_CASE("vapour pressure of water: 15 to 30 degrees against python3-iapws and handbooks") {
    for (const Degree& row : degrees) {
        INFO(row.celsius, " degrees");
        const double found = pressure_at(row.celsius);
        CHECK(std::fabs(found - row.if97_pascal) <= 0.0005);
        CHECK(std::fabs(found / torr.factor - row.if97_torr) <= 0.0005);
        // IAPWS-95 is another equation, within 1e-4 of ours (the same bound as for Wagner-Pruss below).
        CHECK(std::fabs(found / 1e3 / row.iapws95_kilopascal - 1.0) <= 1e-4);
        if (row.crc94_kilopascal > 0.0)
            CHECK(std::fabs(found / 1e3 - row.crc94_kilopascal) <= 0.00005 + 1e-4 * found / 1e3);
        // The 73rd edition rests on an older equation, 0.01 to 0.03 % low.
        CHECK(std::fabs(found / 1e3 - row.crc73_kilopascal) <= 0.00005 + 3e-4 * found / 1e3);
        // Older handbooks are 0.05 to 0.1 % low.
        CHECK(found / millimetre_of_mercury.factor > row.old_mmhg);
        CHECK(found / millimetre_of_mercury.factor < row.old_mmhg * 1.001);
        CHECK(format_fixed(found / torr.factor, 1, DecimalSign::point) == row.tenth_torr);
    }
}

TEST_CASE("vapour pressure of water: the rest of the range against python3-iapws") {
    const Row rows[] = {
        {"python3-iapws 1.5.3", 0, 611.213, 0.0005},   {"python3-iapws 1.5.3", 5, 872.575, 0.0005},
        {"python3-iapws 1.5.3", 10, 1228.184, 0.0005}, {"python3-iapws 1.5.3", 35, 5628.62, 0.005},
        {"python3-iapws 1.5.3", 40, 7384.43, 0.005},   {"python3-iapws 1.5.3", 100, 101417.98, 0.005},
    };
    for (const Row& row : rows) {
        INFO(row.source, " at ", row.kelvin, " degrees");
        CHECK(std::fabs(pressure_at(row.kelvin) - row.pascal) <= row.tolerance);
    }
    // Water boils at 99.974 °C under one atmosphere, not at 100 °C.
    CHECK(std::fabs(pressure_at(99.974) - 101325.0) <= 0.0005 * 3.6e3);
}

TEST_CASE("Wagner-Pruss equation in the tests: its check values") {
    // IAPWS SR1-86(1992), Table 1, from memory.
    CHECK(std::fabs(reference::wagner_pruss_vapour_pressure(273.16) - 611.657) <= 0.0005);
    CHECK(std::fabs(reference::wagner_pruss_vapour_pressure(373.1243) - 101325.0) <= 0.5);
    CHECK(std::fabs(reference::wagner_pruss_vapour_pressure(647.096) - 22.064e6) <= 0.5);
}

TEST_CASE("vapour pressure of water: within 0.01 % of Wagner-Pruss from 0 to 100 degrees") {
    double greatest = 0.0;
    double greatest_at = 0.0;
    double greatest_in_class = 0.0; // 15 to 30 °C
    for (int tenth = 1; tenth <= 1000; ++tenth) {
        const double celsius = tenth / 10.0;
        const double other = reference::wagner_pruss_vapour_pressure(celsius + 273.15);
        const double difference = std::fabs(pressure_at(celsius) / other - 1.0);
        if (difference > greatest) greatest = difference, greatest_at = celsius;
        if (celsius >= 15.0 && celsius <= 30.0) greatest_in_class = std::fmax(greatest_in_class, difference);
    }
    // 9.9E-5 at 46.7 °C and 5.4530E-5 (at 30 °C) from 15 to 30 °C: python3-iapws 1.5.3 and its Wagner-Pruss function.
    CHECK(std::fabs(greatest - 9.9e-5) <= 0.05e-5);
    CHECK(std::fabs(greatest_at - 46.7) <= 0.5);
    CHECK(std::fabs(greatest_in_class - 5.4530e-5) <= 0.0001e-5);
}

TEST_CASE("vapour pressure of water: other published formulas differ as they are known to") {
    struct Formula {
        const char* source;
        double (*pascal)(double celsius);
        double low; ///< relative difference from IF97 in percent, ends of the span from 15 to 30 °C
        double high;
    };
    // Differences computed with python3-iapws 1.5.3 from the cited coefficients.
    const Formula formulas[] = {
        {"CIPM-2007, air density (Picard et al., Metrologia 45 (2008) 149)",
         [](double t) {
             const double k = t + 273.15;
             return std::exp(1.2378847e-5 * k * k - 1.9121316e-2 * k + 33.93711047 - 6.3431645e3 / k);
         },
         -0.0045, 0.0045},
        {"Antoine 8.07131/1730.63/233.426",
         [](double t) { return std::pow(10.0, 8.07131 - 1730.63 / (t + 233.426)) * torr.factor; }, -0.485, -0.345},
        {"Magnus, WMO 17.62/243.12", [](double t) { return 611.2 * std::exp(17.62 * t / (243.12 + t)); }, -0.315,
         -0.235},
        {"Buck 1996", [](double t) { return 611.21 * std::exp((18.678 - t / 234.5) * (t / (257.14 + t))); }, -0.05,
         -0.03},
    };
    for (const Formula& formula : formulas) {
        for (int celsius = 15; celsius <= 30; ++celsius) {
            INFO(formula.source, " at ", celsius);
            const double percent = 100.0 * (formula.pascal(celsius) / pressure_at(celsius) - 1.0);
            CHECK(percent >= formula.low);
            CHECK(percent <= formula.high);
        }
    }
}

TEST_CASE("vapour pressure of water: slope and linear interpolation") {
    // Slopes in Pa/K, printed to the unit: python3-iapws 1.5.3.
    struct Slope {
        double celsius;
        double pascal_per_kelvin;
    };
    for (const Slope& row : {Slope{15, 110}, Slope{20, 145}, Slope{25, 189}, Slope{30, 244}}) {
        const double slope = (pressure_at(row.celsius + 0.01) - pressure_at(row.celsius - 0.01)) / 0.02;
        CHECK(std::fabs(slope - row.pascal_per_kelvin) <= 0.5);
    }
    const double interpolated = (pressure_at(22) + pressure_at(23)) / 2;
    CHECK(std::fabs(interpolated - pressure_at(22.5) - 1.1) <= 0.05);
}

TEST_CASE("vapour pressure of water: the range is told") {
    CHECK(water_vapour_pressure_range.contains(0.0));
    CHECK(water_vapour_pressure_range.contains(100.0));
    CHECK_FALSE(water_vapour_pressure_range.contains(-0.1));
    CHECK_FALSE(water_vapour_pressure_range.contains(100.1));
}
