// Hydrogen as a real gas: standards.md, section 5.

#include <doctest/doctest.h>

#include "core/matter/gas.hpp"
#include "core/result/evaluate.hpp"

using namespace overwater;

TEST_CASE("second virial coefficient of hydrogen") {
    // (b) reference equation of state (Leachman et al. 2009), zero-density limit; cm³/mol, as printed.
    const double rows[][2] = {{273.15, 13.98}, {288.15, 14.33}, {293.15, 14.44}, {298.15, 14.54}, {303.15, 14.64}, {310.0, 14.76}};
    for (const auto& row : rows) {
        CAPTURE(row[0]);
        CHECK(second_virial(Gas::hydrogen, row[0]).si() * 1e6 == doctest::Approx(row[1]).epsilon(0.0055 / row[1]));
    }
}

TEST_CASE("molar volume of hydrogen at the standard conditions that classes use") {
    struct Row {
        double celsius;
        double pascal;
        double litres;
    };
    // (b) with the virial coefficients above; L/mol, as printed. The first agrees with 22.428 of an independent table (a).
    const Row rows[] = {{0, 101325, 22.4279}, {0, 100000, 22.7249}, {20, 101325, 24.0696}, {25, 101325, 24.4799}, {25, 100000, 24.8041}};
    for (const Row& row : rows) {
        Measured<double> run;
        run.setup.real_gas = true;
        run.setup.standard_celsius = row.celsius;
        run.setup.standard_pressure = row.pascal;
        OutputSet wanted;
        wanted.add(Output::standard_compression_factor);
        wanted.add(Output::accepted_value);
        const auto outcome = evaluate(run, Method{}, wanted);
        CAPTURE(row.celsius);
        CHECK(outcome[Output::accepted_value] * 1e3 == doctest::Approx(row.litres).epsilon(0.00006 / row.litres));
    }
}

TEST_CASE("compression factor at 0 °C and 1 atm") {
    CHECK(compression_factor(Gas::hydrogen, 273.15, 101325.0) == doctest::Approx(1.000624).epsilon(1e-6));  // (b)
}
