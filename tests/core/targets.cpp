// Other last lines: what is sought, what it is compared with, and values by hand.

#include <doctest/doctest.h>

#include <string>

#include "core/lesson/route_band.hpp"
#include "core/result/known_value.hpp"
#include "tests/core/vessel_support.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

double value_in(const Assessment& run, Output output, UnitId unit) {
    return from_base(run.value(output).value_or(__builtin_nan("")), unit);
}
double grams_a_mole(const Assessment& run, Output output) { return value_in(run, output, UnitId::gram_per_mole); }

double known(const Sheet& sheet, Output output, UnitId unit) {
    return from_base(known_value(sheet.assessed(), output).value_or(__builtin_nan("")), unit);
}

/// A dry gas of 25 °C and 100 kPa in a syringe: RT/p is 24.78957 L/mol for an ideal gas (CODATA 2018).
Sheet syringe(const char* millilitres) {
    return Sheet().with({{Field::apparatus, "gas_syringe"},
                         {Field::gas_is, "dry"},
                         {Field::temperature, "25.00"},
                         {Field::barometer, "100"},
                         {Field::scale_reading, millilitres}});
}

Conventions real() {
    Conventions conventions;
    conventions.accepted = Conventions::Accepted::real;
    return conventions;
}
Conventions as_collected() {
    Conventions conventions;
    conventions.conversion = Conventions::Conversion::none;
    return conventions;
}

constexpr Output of_the_sample[] = {Output::molar_mass_found, Output::purity_found, Output::equivalent_mass};

}  // namespace

TEST_CASE("what is sought, with and without a conversion") {
    const Conventions converted;
    const std::pair<Target, Output> rows[] = {{Target::molar_volume, Output::molar_volume_standard},
                                              {Target::gas_constant, Output::gas_constant},
                                              {Target::molar_mass, Output::molar_mass_found},
                                              {Target::equivalent_mass, Output::equivalent_mass},
                                              {Target::purity, Output::purity_found},
                                              {Target::alloy, Output::alloy_share},
                                              {Target::gas_molar_mass, Output::gas_molar_mass}};
    for (const auto& row : rows) {
        const Target target = row.first;
        const Output output = row.second;
        CAPTURE(std::string(name_of(target)));
        CHECK(sought_output(converted, target) == output);
        // Without standard conditions the accepted molar volume says nothing of this gas; the gas constant needs none.
        CHECK(sought_output(as_collected(), target) ==
              (target == Target::gas_constant ? Output::gas_constant : Output::molar_volume_bench));
        CHECK(target_by_key(name_of(target)) == target);
    }
    CHECK(target_by_key("") == Target::molar_volume);
    CHECK(target_by_key("density") == Target::molar_volume);
}

TEST_CASE("the equivalent mass sets half a mole of hydrogen free") {
    // 1 mmol of hydrogen, 24.78957 mL, by 24.305 mg of magnesium, by 17.988 mg of aluminium (26.982/1.5): the equivalents
    // are half of that a millimole.
    const Sheet hydrogen = syringe("24.78957").with({{Field::acid, "hydrochloric"}});
    const Assessment magnesium =
        hydrogen.with({{Field::metal, "magnesium"}, {Field::mass_of_metal, "0.024305"}}).assessed();
    CHECK(grams_a_mole(magnesium, Output::equivalent_mass) == doctest::Approx(12.1525).epsilon(1e-6));
    const Assessment aluminium =
        hydrogen.with({{Field::metal, "aluminium"}, {Field::mass_of_metal, "0.017988"}}).assessed();
    CHECK(grams_a_mole(aluminium, Output::equivalent_mass) == doctest::Approx(8.994).epsilon(1e-6));
    // Of a piece that is 90 % metal, 90 % are counted.
    const Assessment impure =
        hydrogen.with({{Field::metal, "magnesium"}, {Field::mass_of_metal, "0.024305"}, {Field::purity, "90"}})
            .assessed();
    CHECK(grams_a_mole(impure, Output::equivalent_mass) == doctest::Approx(0.9 * 12.1525).epsilon(1e-6));
    // It knows nothing of the molar mass: a class's rounding of it makes no difference.
    Conventions whole;
    whole.molar_mass_digits = Conventions::MolarMassDigits::whole;
    const Sheet same = hydrogen.with({{Field::metal, "magnesium"}, {Field::mass_of_metal, "0.024305"}});
    CHECK(same.by(whole).assessed().outcome[Output::equivalent_mass] ==
          same.assessed().outcome[Output::equivalent_mass]);
}

TEST_CASE("of an unknown metal nothing is asked but what its atom gives") {
    // 1 mmol of hydrogen, 24.78957 mL (1 bar, 25 °C), by 24.305 mg of a metal of which a mole gives a mole.
    const Sheet unknown = syringe("24.78957")
                              .with({{Field::target, "molar_mass"},
                                     {Field::metal, "own"},
                                     {Field::gas, "hydrogen"},
                                     {Field::gas_per_mole, "1"},
                                     {Field::mass_of_metal, "0.024305"},
                                     {Field::acid, "hydrochloric"},
                                     {Field::acid_volume, "10"},
                                     {Field::acid_concentration, "3"},
                                     {Field::acid_per_mole, "2"}});
    const Assessment run = unknown.assessed();
    CHECK(grams_a_mole(run, Output::molar_mass_found) == doctest::Approx(24.305).epsilon(1e-6));
    CHECK(grams_a_mole(run, Output::equivalent_mass) == doctest::Approx(12.1525).epsilon(1e-6));
    CHECK(is_unknown(run.measured.setup));
    CHECK_FALSE(readings_asked_for(run.measured.setup).has(Field::molar_mass));
    for (const Output output :
         {Output::amount_of_metal, Output::amount_of_gas, Output::molar_volume_bench, Output::molar_volume_standard,
          Output::gas_constant, Output::acid_excess, Output::purity_found}) {
        CHECK(run.state(output).kind == OutputState::Kind::not_asked);
    }
    // Whoever types a molar mass is shown what follows from it; what is sought does not move.
    const Assessment typed = unknown.with({{Field::molar_mass, "24.3"}}).assessed();
    CHECK_FALSE(is_unknown(typed.measured.setup));
    CHECK(typed.has(Output::molar_volume_standard));
    CHECK(typed.has(Output::acid_excess));
    CHECK(typed.outcome[Output::molar_mass_found] == run.outcome[Output::molar_mass_found]);
    // For the molar volume it is needed.
    const Assessment volume = unknown.with({{Field::target, "molar_volume"}}).assessed();
    CHECK(volume.state(Output::molar_volume_standard).waiting_for.has(Field::molar_mass));
    // An atom of aluminium gives one and a half: 26.982/1.5 mg of it.
    const Assessment three =
        unknown.with({{Field::gas_per_mole, "1.5"}, {Field::mass_of_metal, "0.017988"}}).assessed();
    CHECK(grams_a_mole(three, Output::molar_mass_found) == doctest::Approx(26.982).epsilon(1e-6));
    CHECK(unknown.with({{Field::gas_per_mole, ""}}).assessed().state(Output::molar_mass_found).waiting_for ==
          FieldSet::of(Field::gas_per_mole));
}

TEST_CASE("only hydrogen has an equivalent mass, and a gas without a reaction has none") {
    const Sheet carbonate = syringe("100").with({{Field::metal, "calcium_carbonate"}, {Field::mass_of_metal, "0.4"}});
    CHECK(carbonate.assessed().state(Output::equivalent_mass).kind == OutputState::Kind::not_asked);
    CHECK(carbonate.assessed().has(Output::purity_found));
    const Sheet weighed = syringe("100").with({{Field::target, "gas_molar_mass"}, {Field::gas, "hydrogen"}});
    CHECK(weighed.assessed().state(Output::equivalent_mass).kind == OutputState::Kind::not_asked);
    // A purity that cannot be is refused for it as for the others.
    const Sheet metal =
        syringe("24.8").with({{Field::metal, "magnesium"}, {Field::mass_of_metal, "0.0243"}, {Field::purity, "150"}});
    CHECK(metal.assessed().state(Output::equivalent_mass).kind == OutputState::Kind::not_possible);
    CHECK(metal.assessed().state(Output::molar_mass_found).kind == OutputState::Kind::not_possible);
}

TEST_CASE("the share of a metal in an alloy with a second one") {
    // 0.1 g with the share w of aluminium gives w x 0.1/26.982 x 1.5 + (1 - w) x 0.1/65.38 mol of hydrogen:
    // 60 %: 3.947365 mmol, 97.85348 mL at 24.78957 L/mol; of nothing but zinc 37.91614 mL, of nothing but aluminium 137.8117 mL.
    const Sheet alloy = syringe("97.85348")
                            .with({{Field::target, "alloy"},
                                   {Field::metal, "aluminium"},
                                   {Field::second_metal, "zinc"},
                                   {Field::acid, "hydrochloric"},
                                   {Field::mass_of_metal, "0.1000"}});
    CHECK(value_in(alloy.assessed(), Output::alloy_share, UnitId::percent) == doctest::Approx(60).epsilon(2e-6));
    const auto refused = [&](const char* millilitres) {
        const Assessment run = alloy.with({{Field::scale_reading, millilitres}}).assessed();
        return run.state(Output::alloy_share).kind == OutputState::Kind::not_possible &&
               run.state(Output::alloy_share).reason.key == "refusal.no_alloy";
    };
    CHECK(refused("37.9"));
    CHECK_FALSE(refused("38.0"));
    CHECK_FALSE(refused("137.8"));
    CHECK(refused("137.9"));
    // The metals the other way round: the other share.
    const Assessment turned = alloy.with({{Field::metal, "zinc"}, {Field::second_metal, "aluminium"}}).assessed();
    CHECK(value_in(turned, Output::alloy_share, UnitId::percent) == doctest::Approx(40).epsilon(2e-6));
    // It waits for the second metal; the same one twice is none.
    CHECK(alloy.without(Field::second_metal).assessed().state(Output::alloy_share).waiting_for ==
          FieldSet::of(Field::second_metal));
    CHECK(alloy.with({{Field::second_metal, "aluminium"}}).assessed().state(Output::alloy_share).waiting_for ==
          FieldSet::of(Field::second_metal));
    CHECK(alloy.with({{Field::target, "purity"}}).assessed().state(Output::alloy_share).kind ==
          OutputState::Kind::not_asked);
    // Metal left over by too little acid: the gas does not tell of all of it.
    const Sheet scarce = alloy.with({{Field::acid_volume, "10"}, {Field::acid_concentration, "0.5"}});
    CHECK(scarce.assessed().state(Output::alloy_share).reason.key == "refusal.acid_gave_out");
}

TEST_CASE("an alloy's share is right with the molar masses of any class for both metals") {
    const Assessment run = syringe("97.85348")
                               .with({{Field::target, "alloy"},
                                      {Field::metal, "aluminium"},
                                      {Field::second_metal, "zinc"},
                                      {Field::acid, "hydrochloric"},
                                      {Field::mass_of_metal, "0.1000"}})
                               .assessed();
    REQUIRE(run.has(Output::alloy_share));
    const Band band = route_bands(run)[Output::alloy_share];
    constexpr double gas = 3.947365e-3 / 0.1e-3;  // mol a kilogram, by hand as above
    // 2 Al give 3 H2, Zn gives one. Classes take 27, 27.0, 26.98 or 26.982 g/mol and 65, 65.4, 65.38 or 65.380.
    for (const double aluminium : {27e-3, 26.98e-3, 26.982e-3}) {
        for (const double zinc : {65e-3, 65.4e-3, 65.38e-3}) {
            CAPTURE(aluminium);
            CAPTURE(zinc);
            CHECK(band.holds((gas - 1 / zinc) / (1.5 / aluminium - 1 / zinc)));
        }
    }
    // Copper for zinc, magnesium for aluminium.
    CHECK_FALSE(band.holds((gas - 1 / 63.5e-3) / (1.5 / 24e-3 - 1 / 63.5e-3)));
    CHECK(band.high - band.low < 0.02);
}

TEST_CASE("little gas is no slip where a purity or an alloy is sought") {
    // Half the gas of pure aluminium.
    const Sheet half = syringe("17.0").with({{Field::metal, "aluminium"}, {Field::mass_of_metal, "0.02468"}});
    const auto doubts = [](const Sheet& sheet) {
        int count = 0;
        for (const Check& check : sheet.assessed().checks) count += check.weight == Check::Weight::doubt ? 1 : 0;
        return count;
    };
    CHECK(doubts(half) == 1);
    CHECK(doubts(half.with({{Field::target, "purity"}})) == 0);
    CHECK(doubts(half.with({{Field::target, "alloy"}, {Field::second_metal, "zinc"}})) == 0);
}

TEST_CASE("the molar mass of a gas that was weighed, ideal and real") {
    // 4 mmol of carbon dioxide have 176.036 mg; as a real gas 24.6666 L/mol at 25 °C and 100 kPa (standards.md, section 5:
    // Span and Wagner 1996), 98.6664 mL. Taken as ideal, its amount is 24.6666/24.78957 of that.
    const Sheet gas = syringe("98.6664").with({{Field::target, "gas_molar_mass"},
                                               {Field::gas, "carbon_dioxide"},
                                               {Field::mass_from, "by_difference"},
                                               {Field::mass_before, "85.312"},
                                               {Field::mass_after, "85.135964"}});
    CHECK(grams_a_mole(gas.by(real()).assessed(), Output::gas_molar_mass) == doctest::Approx(44.009).epsilon(3e-6));
    CHECK(grams_a_mole(gas.assessed(), Output::gas_molar_mass) ==
          doctest::Approx(44.009 * 24.78957 / 24.6666).epsilon(3e-6));
    // A gas without a name is taken as ideal.
    const Assessment nameless = gas.by(real()).with({{Field::gas, "other_gas"}}).assessed();
    CHECK(grams_a_mole(nameless, Output::gas_molar_mass) == doctest::Approx(44.009 * 24.78957 / 24.6666).epsilon(3e-6));
    CHECK_FALSE(known_value(nameless, Output::gas_molar_mass).has_value());
    // What was chosen for a reaction before counts for nothing.
    const Assessment with_metal = gas.with({{Field::metal, "zinc"},
                                            {Field::acid, "hydrochloric"},
                                            {Field::acid_volume, "1"},
                                            {Field::acid_concentration, "0.1"},
                                            {Field::purity, "50"}})
                                      .assessed();
    CHECK(with_metal.outcome[Output::gas_molar_mass] == gas.assessed().outcome[Output::gas_molar_mass]);
    for (const Output output :
         {Output::amount_of_metal, Output::amount_of_gas, Output::molar_volume_standard, Output::gas_constant,
          Output::acid_needed, Output::purity_found, Output::equivalent_mass}) {
        CAPTURE(std::string(name_of(output)));
        CHECK(with_metal.state(output).kind == OutputState::Kind::not_asked);
    }
    CHECK(gas.without(Field::mass_after).assessed().state(Output::gas_molar_mass).waiting_for ==
          FieldSet::of(Field::mass_after));
}

TEST_CASE("what each last line is compared with") {
    const Sheet magnesium = good_run(Apparatus::tube_over_water);
    // IUPAC/CIAAW 2021, abridged; CODATA 2018.
    CHECK(known(magnesium, Output::gas_constant, UnitId::joule_per_mole_kelvin) ==
          doctest::Approx(8.314462618).epsilon(1e-9));
    CHECK(known(magnesium, Output::molar_mass_found, UnitId::gram_per_mole) == doctest::Approx(24.305).epsilon(1e-12));
    CHECK(known(magnesium, Output::equivalent_mass, UnitId::gram_per_mole) ==
          doctest::Approx(24.305 / 2).epsilon(1e-12));
    CHECK(known(magnesium.with({{Field::metal, "aluminium"}}), Output::equivalent_mass, UnitId::gram_per_mole) ==
          doctest::Approx(26.982 / 3).epsilon(1e-12));
    CHECK(known(magnesium.with({{Field::metal, "lithium"}}), Output::equivalent_mass, UnitId::gram_per_mole) ==
          doctest::Approx(6.94).epsilon(1e-12));
    CHECK(known(magnesium, Output::molar_volume_standard, UnitId::litre_per_mole) ==
          doctest::Approx(22.710955).epsilon(1e-7));
    for (const Output output : {Output::purity_found, Output::alloy_share, Output::gas_volume}) {
        CHECK_FALSE(known_value(magnesium.assessed(), output).has_value());
    }
    // A class's rounded molar mass is a way of working, not what is known.
    Conventions whole;
    whole.molar_mass_digits = Conventions::MolarMassDigits::whole;
    CHECK(known(magnesium.by(whole), Output::molar_mass_found, UnitId::gram_per_mole) ==
          doctest::Approx(24.305).epsilon(1e-12));
    const Sheet own = magnesium.with(
        {{Field::metal, "own"}, {Field::gas, "hydrogen"}, {Field::molar_mass, "24"}, {Field::gas_per_mole, "1"}});
    CHECK_FALSE(known_value(own.assessed(), Output::molar_mass_found).has_value());
    CHECK_FALSE(known_value(own.assessed(), Output::equivalent_mass).has_value());
    const std::pair<const char*, double> gases[] = {
        {"hydrogen", 2.016}, {"oxygen", 31.998}, {"nitrogen", 28.014}, {"carbon_dioxide", 44.009}, {"methane", 16.043}};
    for (const auto& row : gases) {
        const Sheet weighed = syringe("100").with(
            {{Field::target, "gas_molar_mass"}, {Field::gas, row.first}, {Field::mass_of_metal, "0.1"}});
        CHECK(known(weighed, Output::gas_molar_mass, UnitId::gram_per_mole) ==
              doctest::Approx(row.second).epsilon(1e-9));
    }
}

TEST_CASE("the real gas of a reaction is its own") {
    // standards.md, section 5: carbon dioxide has 22.5607 L/mol at 0 °C and 100 kPa and 24.6666 at 25 °C, oxygen 22.6892 and
    // 24.7737. One millimole of each, as such a gas, comes out at its accepted value.
    const Assessment carbonate = syringe("24.6666")
                                     .with({{Field::metal, "calcium_carbonate"}, {Field::mass_of_metal, "0.100086"}})
                                     .by(real())
                                     .assessed();
    CHECK(litres_a_mole(carbonate) == doctest::Approx(22.5607).epsilon(4e-6));
    CHECK(value_in(carbonate, Output::accepted_value, UnitId::litre_per_mole) ==
          doctest::Approx(22.5607).epsilon(4e-6));
    const Assessment peroxide = syringe("24.7737")
                                    .with({{Field::metal, "hydrogen_peroxide"}, {Field::mass_of_metal, "0.068028"}})
                                    .by(real())
                                    .assessed();
    CHECK(litres_a_mole(peroxide) == doctest::Approx(22.6892).epsilon(4e-6));
    CHECK(value_in(peroxide, Output::purity_found, UnitId::percent) == doctest::Approx(100).epsilon(4e-6));
    for (const Output output : of_the_sample) {
        CAPTURE(std::string(name_of(output)));
        CHECK(carbonate.has(output) == (output != Output::equivalent_mass));
    }
}
