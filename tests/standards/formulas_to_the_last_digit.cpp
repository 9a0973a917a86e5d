// The formulas of gases, water, mercury and air, with every digit that their sources print, beyond what their tables of values
// can tell apart. What they come to is in gases.cpp, density.cpp and weather_report.cpp.

#include <doctest/doctest.h>

#include <cmath>
#include <iterator>
#include <string>

#include "core/matter/air.hpp"
#include "core/matter/gas.hpp"
#include "core/matter/mercury.hpp"
#include "core/matter/water.hpp"

using namespace overwater;

namespace {

constexpr Gas gases[] = {Gas::hydrogen, Gas::oxygen, Gas::carbon_dioxide, Gas::nitrogen, Gas::methane, Gas::helium};

}  // namespace

TEST_CASE("the fit of the second virial coefficients has the digits that are printed") {
    // standards.md, section 5: B = b0 + b1 x + b2 x² in cm³/mol, x = 298.15 K/T - 1. The three numbers are had back from three
    // temperatures: x = 0, 1 and -1/2 are 298.15 K, half of it and twice it, far outside the range, where each counts.
    constexpr double printed[][3] = {{14.541, -5.918, -2.390},       {-15.857, -63.170, -11.714},
                                     {-123.008, -282.978, -165.414}, {-4.910, -57.881, -10.471},
                                     {-42.910, -113.593, -23.945},   {11.844, 1.239, -1.414}};
    for (std::size_t i = 0; i < std::size(gases); ++i) {
        CAPTURE(std::string(formula_of(gases[i])));
        const auto b = [&](double kelvin) { return second_virial(gases[i], kelvin).si() * 1e6; };
        const double at_0 = b(298.15);
        const double at_1 = b(298.15 / 2) - at_0;     // b1 + b2
        const double at_half = b(298.15 * 2) - at_0;  // -b1/2 + b2/4
        const double b2 = (at_1 + 2 * at_half) / 1.5;
        CHECK(std::fabs(at_0 - printed[i][0]) < 1e-9);
        CHECK(std::fabs(at_1 - b2 - printed[i][1]) < 1e-9);
        CHECK(std::fabs(b2 - printed[i][2]) < 1e-9);
    }
}

TEST_CASE("Henry's law has the constants that are printed") {
    // standards.md, section 7.3: Sander (2023), mol/(m³ Pa) at 298.15 K and -d ln H/d(1/T) in K; of two numbers the mean.
    // Methane: 1.55e-3 and 1.42e-3 mol/(L atm) at 20 and 25 °C (IAPWS G7-04), to three digits.
    struct Row {
        Gas gas;
        double henry;
        double slope;
    };
    const double of_methane = std::log(1.55 / 1.42) / (1 / 293.15 - 1 / 298.15);
    CHECK(std::fabs(of_methane - 1530) < 5);
    const Row rows[] = {{Gas::hydrogen, 7.8e-6, 530},
                        {Gas::oxygen, 1.3e-5, 1500},
                        {Gas::carbon_dioxide, 3.3e-4, 2350},
                        {Gas::nitrogen, 6.45e-6, 1300},
                        {Gas::methane, 1.40e-5, 1530}};
    CHECK(std::fabs(1.42e-3 * 1e3 / 101325 - 1.40e-5) < 0.005e-5);
    for (const Row& row : rows) {
        CAPTURE(std::string(formula_of(row.gas)));
        // Volumes a volume over R T; R by CODATA 2018.
        const auto henry = [&](double kelvin) { return volumes_dissolved(row.gas, kelvin) / (8.314462618 * kelvin); };
        CHECK(henry(298.15) == doctest::Approx(row.henry).epsilon(1e-9));
        const double slope = std::log(henry(278.15) / henry(298.15)) / (1 / 278.15 - 1 / 298.15);
        CHECK(slope == doctest::Approx(row.slope).epsilon(1e-9));
    }
}

TEST_CASE("density of water to a thousandth of what the table prints") {
    // CIPM 2001 as Tanaka et al., Metrologia 38 (2001) 301, Table 1, have it: a5 (1 - (t + a1)² (t + a2)/(a3 (t + a4))), the
    // brackets multiplied out.
    constexpr double a1 = -3.983035;
    constexpr double a2 = 301.797;
    constexpr double a3 = 522528.9;
    constexpr double a4 = 69.34881;
    constexpr double a5 = 999.974950;
    for (int t = 0; t <= 40; t += 5) {
        CAPTURE(t);
        const double above = a1 * a1 * a2 + t * (a1 * a1 + 2 * a1 * a2 + t * (a2 + 2 * a1 + t));
        const double density = a5 - a5 * above / (a3 * a4 + a3 * t);
        CHECK(std::fabs(water_density(Temperature<>::celsius(t)).si() - density) < 1e-7);
    }
}

TEST_CASE("where the formulas of water are used") {
    // method.md, section 2, and standards.md, section 1: vapour pressure from 0 to 100 °C, density from 0 to 40 °C.
    CHECK(water_vapour_pressure_range.contains(0.0));
    CHECK(water_vapour_pressure_range.contains(100.0));
    CHECK_FALSE(water_vapour_pressure_range.contains(-0.01));
    CHECK_FALSE(water_vapour_pressure_range.contains(100.01));
    CHECK(water_density_range.contains(0.0));
    CHECK(water_density_range.contains(40.0));
    CHECK_FALSE(water_density_range.contains(-0.01));
    CHECK_FALSE(water_density_range.contains(40.01));
}

TEST_CASE("density of mercury to a thousandth of what the table prints") {
    // Beattie et al. (1941), as standards.md has it: 13595.0828/(1 + 1e-8 (18158.68 t + 0.54583 t² + 0.0034980 t³ + ...)).
    for (int t = 0; t <= 100; t += 20) {
        CAPTURE(t);
        const double expansion =
            1e-8 * (18158.68 * t + 0.54583 * t * t + 0.0034980 * std::pow(t, 3) + 1.5558e-6 * std::pow(t, 4));
        CHECK(std::fabs(mercury_density(Temperature<>::celsius(t)).si() - 13595.0828 / (1 + expansion)) < 1e-7);
    }
}

TEST_CASE("the standard atmosphere has the exponent and the pressure of its tables") {
    // ISO 2533:1975 and US Standard Atmosphere 1976: 288.15 K at sea level, 6.5 K a kilometre, R = 287.05287 J/(kg K), g0/(R L)
    // = 5.25588; 22 632 Pa at 11 km and 89 875 Pa at 1 km (from memory).
    CHECK(atmosphere_sea_level_kelvin == 288.15);
    CHECK(atmosphere_lapse_rate == 0.0065);
    CHECK(atmosphere_air_gas_constant == 287.05287);
    CHECK(std::fabs(atmosphere_exponent - 9.80665 / 0.0065 / 287.05287) < 1e-12);
    CHECK(std::fabs(atmosphere_exponent - 5.255880) < 5e-7);
    const auto pressure = [](double height) {
        return 101325 * std::pow(1 - atmosphere_lapse_rate * height / atmosphere_sea_level_kelvin, atmosphere_exponent);
    };
    CHECK(std::fabs(pressure(11000) - 22632) < 0.5);
    CHECK(std::fabs(pressure(1000) - 89875) < 0.5);
}
