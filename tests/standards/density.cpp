#include <doctest/doctest.h>

#include <cmath>

#include "core/matter/constants.hpp"
#include "core/matter/mercury.hpp"
#include "core/matter/water.hpp"
#include "core/quantity/units.hpp"

using namespace overwater;

namespace {

double water(double celsius) { return water_density(Temperature<>::celsius(celsius)).si(); }
double mercury(double celsius) { return mercury_density(Temperature<>::celsius(celsius)).si(); }

/// Kell 1975, with the denominator as first published (Jones and Harris, J. Res. NIST 97 (1992) 335
/// print 16.897850E-3).
double kell(double t, double denominator = 16.879850e-3) {
    return (999.83952 +
            t * (16.945176 + t * (-7.9870401e-3 + t * (-46.170461e-6 + t * (105.56302e-9 - t * 280.54253e-12))))) /
           (1.0 + denominator * t);
}

struct Row {
    const char* source;
    double celsius;
    double density;
    double tolerance;
};

// kg/m³.
const Row water_rows[] = {
    {"Tanaka 2001, table, from memory", 4, 999.9749, 0.00005},
    {"Tanaka 2001, table, from memory", 15, 999.1026, 0.00005},
    {"Tanaka 2001, table, from memory", 20, 998.2067, 0.00005},
    {"Tanaka 2001, table, from memory", 25, 997.0470, 0.00005},
    {"Tanaka 2001, table, from memory", 30, 995.6488, 0.00005},
    {"Tanaka 2001, coefficients in Python", 0, 999.8428, 0.00005},
    {"Tanaka 2001, coefficients in Python", 10, 999.7027, 0.00005},
    {"Tanaka 2001, coefficients in Python", 40, 992.2152, 0.00005},
    // Another equation: within 0.001 kg/m³ below 30 °C.
    {"IAPWS-95, python3-iapws 1.5.3", 4, 999.9749, 0.00015},
    {"IAPWS-95, python3-iapws 1.5.3", 15, 999.1026, 0.0001},
    {"IAPWS-95, python3-iapws 1.5.3", 20, 998.2072, 0.0006},
    {"IAPWS-95, python3-iapws 1.5.3", 25, 997.0476, 0.0007},
    {"IAPWS-95, python3-iapws 1.5.3", 30, 995.6495, 0.0008},
    // The IAPWS-84 set of older handbooks: 3 ppm.
    {"IAPWS-84", 4, 999.9720, 0.003},
    {"IAPWS-84", 15, 999.1026, 0.003},
    {"IAPWS-84", 20, 998.2071, 0.003},
    {"IAPWS-84", 25, 997.0479, 0.003},
    {"IAPWS-84", 30, 995.6502, 0.003},
};

const Row kell_rows[] = {
    {"Kell 1975 in Python", 4, 999.9720, 0.00005},  {"Kell 1975 in Python", 15, 999.0996, 0.00005},
    {"Kell 1975 in Python", 20, 998.2041, 0.00005}, {"Kell 1975 in Python", 25, 997.0449, 0.00005},
    {"Kell 1975 in Python", 30, 995.6473, 0.00005},
};

const Row mercury_rows[] = {
    {"density of mercury at 0 degrees, measured (CRC)", 0, 13595.08, 0.005},
    {"Beattie polynomial in Python", 20, 13545.854, 0.0005},
    {"Beattie polynomial in Python", 25, 13533.59, 0.005},
    {"Bettin and Fehlauer 2004", 20, 13545.859, 0.4e-6 * 13545.859},
    {"value recognised in 1985", 20, 13545.866, 1.0e-6 * 13545.866},
};

} // namespace

TEST_CASE("density of water") {
    for (const Row& row : water_rows) {
        INFO(row.source, " at ", row.celsius);
        CHECK(std::fabs(water(row.celsius) - row.density) <= row.tolerance);
    }
}

TEST_CASE("density of water against Kell's equation, which is its own check") {
    for (const Row& row : kell_rows) {
        INFO(row.source, " at ", row.celsius);
        CHECK(std::fabs(kell(row.celsius) - row.density) <= row.tolerance);
        CHECK(std::fabs(water(row.celsius) - kell(row.celsius)) <= 0.0035);
    }
    CHECK(std::fabs(std::fabs(kell(25, 16.897850e-3) - kell(25)) - 0.3) <= 0.05); // the misprint is seen
}

TEST_CASE("density of water is greatest at 4 degrees") {
    // CIPM 2001: 999.974 950 kg/m³ at 3.983 035 °C.
    CHECK(water(3.983035) == doctest::Approx(999.974950).epsilon(1e-15));
    CHECK(water(3.9) < 999.974950);
    CHECK(water(4.1) < 999.974950);
    CHECK(water_density_range.contains(0.0));
    CHECK(water_density_range.contains(40.0));
    CHECK_FALSE(water_density_range.contains(40.1));
}

TEST_CASE("density of mercury") {
    for (const Row& row : mercury_rows) {
        INFO(row.source, " at ", row.celsius);
        CHECK(std::fabs(mercury(row.celsius) - row.density) <= row.tolerance);
    }
    // The simple form of many handbooks, 13 595.1/(1 + 1.818E-4 t), is within 1.3 ppm from 0 to 30 °C
    // (1.27 ppm at 0 °C, where the two differ in their first number only).
    for (int t = 0; t <= 30; ++t) CHECK(std::fabs(13595.1 / (1.0 + 1.818e-4 * t) / mercury(t) - 1.0) <= 1.3e-6);
}

TEST_CASE("a water column in millimetres of mercury and in pascal") {
    // CIPM 2001 density, 13 595.1 kg/m³ and g_n; digits computed in Python from the coefficients.
    struct Column {
        double celsius;
        double ratio;
        double mmhg_per_mm;
        double pascal_per_mm;
    };
    const Column rows[] = {
        {15, 13.6073, 0.073490, 9.7978}, {20, 13.6195, 0.073424, 9.7891}, {25, 13.6354, 0.073339, 9.7777}};
    for (const Column& row : rows) {
        const Density density = water_density(Temperature<>::celsius(row.celsius));
        const Pressure column = density * standard_gravity * Length::from(1.0, millimetre);
        CHECK(std::fabs(conventional_mercury_density.si() / density.si() - row.ratio) <= 0.00005);
        CHECK(std::fabs(column.in(millimetre_of_mercury)-row.mmhg_per_mm) <= 0.0000005);
        CHECK(std::fabs(column.si() - row.pascal_per_mm) <= 0.00005);
    }
    // NIST SP 811: the conventional centimetre of water is 98.0665 Pa.
    const Pressure conventional = Density::si(1000.0) * standard_gravity * Length::from(1.0, centimetre);
    CHECK(conventional.si() == doctest::Approx(98.0665).epsilon(1e-15));
}
