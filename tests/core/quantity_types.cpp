#include <doctest/doctest.h>

#include <type_traits>

#include "core/quantity/temperature.hpp"
#include "core/quantity/units.hpp"

// What must not compile stands in tests/must_not_compile.

using namespace overwater;

static_assert(std::is_same_v<decltype(Mass{} / MolarMass{}), Amount>);
static_assert(std::is_same_v<decltype(Density{} * Acceleration{} * Length{}), Pressure>);
static_assert(std::is_same_v<decltype(Pressure{} * Volume{} / (Amount{} * TemperatureDifference{})), GasConstant>);
static_assert(std::is_same_v<decltype(Temperature<>{} - Temperature<>{}), TemperatureDifference>);

TEST_CASE("a unit is named where a number goes in and where it comes out") {
    CHECK(Pressure::from(99.62, kilopascal).si() == doctest::Approx(99620.0).epsilon(1e-15));
    CHECK(Pressure::from(1.0, atmosphere).in(torr) == doctest::Approx(760.0).epsilon(1e-15));
    CHECK(Volume::from(43.2, millilitre).in(litre) == doctest::Approx(0.0432).epsilon(1e-15));
    CHECK(Length::from(1.0, inch).in(millimetre) == doctest::Approx(25.4).epsilon(1e-15));
}

TEST_CASE("temperatures are points whose difference is a quantity") {
    // Fixed points of the scales: 0 °C = 273.15 K = 32 °F (SI Brochure; NIST SP 811, B.8), -40 °C = -40 °F.
    CHECK(Temperature<>::celsius(0.0).in_kelvin() == 273.15);
    CHECK(Temperature<>::fahrenheit(32.0).in_celsius() == 0.0);
    CHECK(Temperature<>::fahrenheit(-40.0).in_celsius() == -40.0);
    CHECK(Temperature<>::celsius(100.0).in_fahrenheit() == 212.0);
    CHECK((Temperature<>::celsius(25.0) - Temperature<>::kelvin(273.15)).si() == doctest::Approx(25.0).epsilon(1e-15));
}

TEST_CASE("a typed Celsius temperature comes back exactly") {
    CHECK(Temperature<>::celsius(21.4).in_celsius() == 21.4);
}
