// Other last lines of the same readings: the accepted molar volume taken as known.

#include <doctest/doctest.h>

#include "tests/core/check_support.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

double in(const Assessment& run, Output output, UnitId unit) {
    return from_base(run.value(output).value_or(__builtin_nan("")), unit);
}

constexpr Output by_volume[] = {Output::volume_at_standard, Output::amount_by_volume, Output::molar_mass_found,
                                Output::purity_found};

/// An ideal gas at 0 °C and 100 kPa: 8.314462618 x 273.15 / 100 (CODATA 2018), L/mol.
constexpr double ideal = 22.710954;

}  // namespace

TEST_CASE("record A gives the volume, the amount, the molar mass and the purity of method.md's table") {
    const Assessment run = record_a().assessed();
    // Made by hand from the table of record A: 22.6818 L/mol x 1.69512 mmol = 38.4484 mL, each printed to half a digit.
    CHECK(in(run, Output::volume_at_standard, UnitId::millilitre) == doctest::Approx(38.4484).epsilon(0.0002 / 38.4));
    // 38.4484 / 22.7110 = 1.69294 mmol; 41.2 mg / 1.69294 mmol = 24.3363 g/mol; 22.6818 / 22.7110 = 99.8714 %.
    CHECK(in(run, Output::amount_by_volume, UnitId::millimole) == doctest::Approx(1.69294).epsilon(0.00002 / 1.69));
    CHECK(in(run, Output::molar_mass_found, UnitId::gram_per_mole) == doctest::Approx(24.3363).epsilon(0.0002 / 24.3));
    CHECK(in(run, Output::purity_found, UnitId::percent) == doctest::Approx(99.8714).epsilon(0.0004 / 99.9));
}

TEST_CASE("they do not go in a circle: each is the molar volume found against the one taken as known") {
    for (const auto accepted :
         {Conventions::Accepted::ideal, Conventions::Accepted::real, Conventions::Accepted::typed}) {
        Conventions conventions;
        conventions.accepted = accepted;
        const Assessment run = record_a()
                                   .with({{Field::accepted_value, "24.0"}, {Field::purity, "98"}})
                                   .by(conventions)
                                   .assessed();
        const double known = accepted == Conventions::Accepted::ideal   ? ideal
                             : accepted == Conventions::Accepted::typed ? 24.0
                                                                        : 22.7249;  // real hydrogen, method.md
        const double share = in(run, Output::molar_volume_standard, UnitId::litre_per_mole) / known;
        // n(gas, by its weight) = V/Vm: the amounts differ by the same share as the molar volumes.
        CHECK(in(run, Output::amount_by_volume, UnitId::mole) / in(run, Output::amount_of_gas, UnitId::mole) ==
              doctest::Approx(share).epsilon(3e-6));
        CHECK(in(run, Output::molar_mass_found, UnitId::gram_per_mole) ==
              doctest::Approx(24.305 / share).epsilon(3e-6));
        // The purity typed says how much was metal; the purity found does not know it.
        CHECK(in(run, Output::purity_found, UnitId::percent) == doctest::Approx(98 * share).epsilon(3e-6));
    }
    Setup setup = record_a().assessed().measured.setup;
    const OutputSet of_result = needs_of(Output::molar_volume_standard, setup).outputs;
    for (const Output output : by_volume) CHECK(!of_result.has(output));
}

TEST_CASE("the mole ratio, a purity and a mass by difference take part") {
    // Aluminium, 27.0 mg of 26.982 g/mol: 1.5 mol of gas a mole. 1.50100 mmol of gas have 34.0889 mL at 22.710954 L/mol.
    const Sheet sheet = record_a().with({{Field::metal, "aluminium"},
                                         {Field::mass_from, "by_difference"},
                                         {Field::mass_before, "1.2520"},
                                         {Field::mass_after, "1.2250"}});
    const Assessment run = sheet.assessed();
    const double gas = in(run, Output::volume_at_standard, UnitId::millilitre) / ideal;
    CHECK(in(run, Output::molar_mass_found, UnitId::gram_per_mole) == doctest::Approx(27.0 * 1.5 / gas).epsilon(1e-6));
    CHECK(in(run, Output::purity_found, UnitId::percent) ==
          doctest::Approx(100 * gas / 1.5 * 26.982 / 27.0).epsilon(1e-6));
    const Assessment impure = sheet.with({{Field::purity, "90"}}).assessed();
    CHECK(in(impure, Output::molar_mass_found, UnitId::gram_per_mole) ==
          doctest::Approx(0.9 * 27.0 * 1.5 / gas).epsilon(1e-6));
    CHECK(in(impure, Output::purity_found, UnitId::percent) == in(run, Output::purity_found, UnitId::percent));
}

TEST_CASE("the gas by its volume waits for no balance, the metal for its mass") {
    const Assessment run = record_a().without(Field::mass_of_metal).assessed();
    CHECK(run.has(Output::volume_at_standard));
    CHECK(run.has(Output::amount_by_volume));
    for (const Output output : {Output::molar_mass_found, Output::purity_found}) {
        CHECK(run.state(output).kind == OutputState::Kind::waiting);
        CHECK(run.state(output).waiting_for == FieldSet::of(Field::mass_of_metal));
    }
}

TEST_CASE("volumes as collected know no standard conditions, so nothing of it is asked") {
    Conventions none;
    none.conversion = Conventions::Conversion::none;
    const Assessment run = record_a().with({{Field::accepted_value, "24.5"}}).by(none).assessed();
    for (const Output output : by_volume) CHECK(run.state(output).kind == OutputState::Kind::not_asked);
    CHECK(run.has(Output::gas_constant));
}

TEST_CASE("with too little acid the gas does not tell of all the metal") {
    // 1.69512 mmol of magnesium need 3.39024 mmol of HCl; 10.0 mL hold 3.39 and 3.40 mmol.
    const Assessment scarce = record_a().with({{Field::acid_concentration, "0.339"}}).assessed();
    CHECK(scarce.has(Output::amount_by_volume));
    for (const Output output : {Output::molar_mass_found, Output::purity_found}) {
        CHECK(scarce.state(output).kind == OutputState::Kind::not_possible);
        CHECK(scarce.state(output).reason.key == "refusal.acid_gave_out");
    }
    CHECK(record_a().with({{Field::acid_concentration, "0.340"}}).assessed().has(Output::purity_found));
    CHECK(record_a().without(Field::acid_volume).assessed().has(Output::purity_found));
    // Calcium takes the water.
    const Sheet calcium = record_a().with({{Field::metal, "calcium"}, {Field::acid_concentration, "0.1"}});
    CHECK(calcium.assessed().has(Output::purity_found));
}

TEST_CASE("a purity above 100 % is a value like any other") {
    const Assessment run = record_a().with({{Field::mass_of_metal, "0.0400"}}).assessed();
    CHECK(in(run, Output::purity_found, UnitId::percent) > 100);
    for (const Check& check : run.checks) CHECK(check.weight == Check::Weight::note);
}
