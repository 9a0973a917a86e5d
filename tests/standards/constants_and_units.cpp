#include <doctest/doctest.h>

#include <cmath>
#include <string>

#include "core/matter/constants.hpp"
#include "core/quantity/temperature.hpp"
#include "core/quantity/unit_table.hpp"
#include "core/quantity/units.hpp"

using namespace overwater;

namespace {

struct Row {
    const char* source;
    UnitId unit;
    double base;
    double tolerance;
};

// One of the unit in the base of its measure; half a unit of the last digit printed.
const Row rows[] = {
    {"NIST SP 811 B.8, exact", UnitId::atmosphere, 101325.0, 0.0},
    {"NIST SP 811 B.8, exact", UnitId::bar, 100000.0, 0.0},
    {"NIST SP 811 B.8, exact", UnitId::millibar, 100.0, 0.0},
    {"NIST SP 811 B.8, 1.333 224E+02", UnitId::torr, 133.3224, 0.00005},
    {"101 325/760, by definition", UnitId::torr, 133.322368421, 0.0000000005},
    {"NIST SP 811 B.8, 1.333 224E+02", UnitId::millimetre_of_mercury, 133.3224, 0.00005},
    {"GNU units 2.22", UnitId::millimetre_of_mercury, 133.322387415, 0.0000000005},
    {"NIST SP 811 B.8, 3.386 389E+03", UnitId::inch_of_mercury, 3386.389, 0.0005},
    {"GNU units 2.22", UnitId::inch_of_mercury, 3386.388640341, 0.0000000005},
    {"NIST SP 811 B.8, 6.894 757E+03", UnitId::pound_per_square_inch, 6894.757, 0.0005},
    {"GNU units 2.22 and scipy 1.10.1", UnitId::pound_per_square_inch, 6894.757293168, 0.0000000005},
    {"NIST SP 811 B.8, exact", UnitId::inch, 0.0254, 0.0},
    {"NIST SP 811 B.8, exact", UnitId::foot, 0.3048, 0.0},
    {"12th CGPM 1964, exact", UnitId::litre, 0.001, 0.0},
    {"12th CGPM 1964, exact", UnitId::millilitre, 0.000001, 0.0},
    {"12th CGPM 1964, exact", UnitId::cubic_centimetre, 0.000001, 0.0},
    {"12th CGPM 1964, exact", UnitId::cubic_decimetre, 0.001, 0.0},
    {"SI prefix", UnitId::microlitre, 1e-9, 1e-24},
    {"SI prefix", UnitId::kilopascal, 1000.0, 0.0},
    {"SI prefix", UnitId::hectopascal, 100.0, 0.0},
    {"SI prefix", UnitId::pascal, 1.0, 0.0},
    {"SI prefix", UnitId::gram, 0.001, 0.0},
    {"SI prefix", UnitId::milligram, 0.000001, 0.0},
    {"SI prefix", UnitId::kilogram, 1.0, 0.0},
    {"SI prefix", UnitId::metre, 1.0, 0.0},
    {"SI prefix", UnitId::centimetre, 0.01, 0.0},
    {"SI prefix", UnitId::millimetre, 0.001, 0.0},
    {"SI prefix", UnitId::mole, 1.0, 0.0},
    {"SI prefix", UnitId::millimole, 0.001, 0.0},
    {"SI prefix", UnitId::kilogram_per_cubic_metre, 1.0, 0.0},
    {"SI prefix", UnitId::gram_per_millilitre, 1000.0, 0.0},
    {"SI prefix", UnitId::gram_per_mole, 0.001, 0.0},
    {"SI prefix", UnitId::litre_per_mole, 0.001, 0.0},
    {"SI prefix", UnitId::cubic_decimetre_per_mole, 0.001, 0.0},
    {"SI prefix", UnitId::mole_per_litre, 1000.0, 0.0},
    {"SI prefix", UnitId::mole_per_cubic_decimetre, 1000.0, 0.0},
    {"SI prefix", UnitId::gram_per_metre, 0.001, 0.0},
    {"SI prefix", UnitId::gram_per_centimetre, 0.1, 0.0},
    {"SI prefix", UnitId::joule_per_mole_kelvin, 1.0, 0.0},
    {"a hundredth", UnitId::percent, 0.01, 0.0},
    {"SI Brochure 2.3.1", UnitId::kelvin, 1.0 - 273.15, 0.0},
    {"SI Brochure 2.3.1", UnitId::celsius, 1.0, 0.0},
    {"NIST SP 811 B.8, (F - 32)/1.8", UnitId::fahrenheit, -31.0 / 1.8, 1e-14},
};

/// Molar volume of an ideal gas in L/mol.
double ideal_molar_volume(double celsius, Pressure pressure) {
    return gas_constant.si() * Temperature<>::celsius(celsius).in_kelvin() / pressure.si() / litre_per_mole.factor;
}

} // namespace

TEST_CASE("units against their standards") {
    bool has_row[unit_count] = {};
    for (const Row& row : rows) {
        INFO(row.source, ", ", std::string(info(row.unit).key));
        CHECK(std::fabs(to_base(1.0, row.unit) - row.base) <= row.tolerance);
        has_row[static_cast<std::size_t>(row.unit)] = true;
    }
    for (std::size_t i = 1; i < unit_count; ++i) CHECK(has_row[i]);
}

TEST_CASE("the conventional millimetre of mercury is not the torr") {
    // 1.4E-7: GNU units 2.22.
    CHECK(std::fabs(millimetre_of_mercury.factor / torr.factor - 1.0 - 1.4e-7) <= 0.05e-7);
}

TEST_CASE("constants against CODATA") {
    // CODATA 2018 and 2022: 8.314 462 618... exact; all digits: scipy 1.10.1 and GNU units 2.22.
    CHECK(gas_constant.si() == doctest::Approx(8.31446261815324).epsilon(1e-15));
    CHECK(gas_constant.si() == doctest::Approx(avogadro_constant * boltzmann_constant).epsilon(1e-15));
    CHECK(standard_gravity.si() == 9.80665);
    CHECK(standard_atmosphere.si() == 101325.0);
    CHECK(standard_state_pressure.si() == 100000.0);
    CHECK(conventional_mercury_density.si() == 13595.1);
}

TEST_CASE("molar volume of an ideal gas against CODATA") {
    struct MolarVolumeRow {
        const char* source;
        double celsius;
        Pressure pressure;
        double litre_per_mole;
        double tolerance;
    };
    const MolarVolumeRow table[] = {
        {"CODATA 22.413 969 54...", 0.0, standard_atmosphere, 22.413969545014, 1e-12},
        {"CODATA 22.710 954 64...", 0.0, standard_state_pressure, 22.710954641486, 1e-12},
        {"scipy 1.10.1", 20.0, standard_atmosphere, 24.055117, 0.0000005},
        {"scipy 1.10.1", 25.0, standard_atmosphere, 24.465404, 0.0000005},
        {"scipy 1.10.1", 25.0, standard_state_pressure, 24.789570, 0.0000005},
    };
    for (const MolarVolumeRow& row : table) {
        INFO(row.source);
        CHECK(std::fabs(ideal_molar_volume(row.celsius, row.pressure) - row.litre_per_mole) <= row.tolerance);
    }
}
