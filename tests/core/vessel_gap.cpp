// What may have gone wrong in each vessel: no cause that it cannot have is offered, and what a cause does there.

#include <doctest/doctest.h>

#include <set>
#include <string>

#include "core/matter/water.hpp"
#include "tests/core/gap_support.hpp"
#include "tests/core/vessel_support.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

bool may_have(const Sheet& sheet, Cause cause) { return applies(cause, sheet.assessed()); }

double usual(const Sheet& sheet, Cause cause) {
    const auto reach = reach_of(sheet.assessed(), cause);
    return reach ? reach->usual : 0;
}

double vapour(double celsius) { return water_vapour_pressure(Temperature<>::celsius(celsius)).si(); }

}  // namespace

TEST_CASE("causes that a vessel cannot have are not offered") {
    struct Row {
        Cause cause;
        bool tube, flask, syringe, displaced, sensor;
    };
    // By what stands on the bench: a scale, a column, a pressure of the room.
    constexpr Row rows[] = {
        {Cause::air_bubble, true, true, false, false, false},    {Cause::drops_on_wall, true, true, false, false, false},
        {Cause::level_misread, true, true, false, false, false}, {Cause::scale_misread, true, true, true, false, false},
        {Cause::tube_off, true, true, true, false, false},       {Cause::gas_lost, true, true, true, true, true},
        {Cause::metal_left, true, true, true, true, true},       {Cause::barometer_off, true, true, true, true, false},
        {Cause::acid_lowers_vapour, true, true, true, true, false},
        {Cause::gas_warm, true, true, true, true, true},         {Cause::thermometer_off, true, true, true, true, true},
        {Cause::end_space_off, false, false, false, false, false},
        {Cause::meniscus, false, false, false, false, false},    {Cause::balance_off, true, true, true, true, true},
    };
    for (const Row& row : rows) {
        const bool expected[] = {row.tube, row.flask, row.syringe, row.displaced, row.sensor};
        for (std::size_t i = 0; i < vessels.size(); ++i) {
            CAPTURE(std::string(name_of(row.cause)));
            CAPTURE(std::string(name_of(vessels[i])));
            CHECK(may_have(good_run(vessels[i]), row.cause) == expected[i]);
            CHECK(may_have(all_typed(vessels[i]), row.cause) == expected[i]);
        }
    }
    for (const Apparatus vessel : vessels) {
        CAPTURE(std::string(name_of(vessel)));
        const bool in_room = vessel != Apparatus::pressure_sensor;
        const Sheet mercury = good_run(vessel).with({{Field::barometer, "760.0 mmHg"}, {Field::pressure_after, "990 mmHg"}});
        CHECK(may_have(mercury, Cause::mercury_not_corrected) == in_room);
        CHECK(may_have(mercury, Cause::sea_level_pressure) == in_room);
        // A column that was brought to 0 °C is corrected.
        CHECK_FALSE(may_have(mercury.with({{Field::pressure_kind, "mercury_column"}}), Cause::mercury_not_corrected));
        const Sheet burette = all_typed(vessel).with({{Field::tube_bore, ""}});
        if (vessel >= Apparatus::gas_syringe) CHECK_FALSE(may_have(burette, Cause::meniscus));
    }
    // Levels taken as equal are no cause where there are none.
    CHECK(may_have(good_run(Apparatus::generator_flask).with({{Field::liquid_stands, "level"}}), Cause::levels_not_equal));
    CHECK_FALSE(may_have(good_run(Apparatus::gas_syringe), Cause::levels_not_equal));
    CHECK_FALSE(may_have(good_run(Apparatus::gas_syringe).with({{Field::gas_is, "dry"}}), Cause::acid_lowers_vapour));
}

TEST_CASE("causes that a substance cannot have are not offered") {
    const Sheet tube = good_run(Apparatus::generator_flask);
    const Sheet chlorate = tube.with({{Field::metal, "potassium_chlorate"}, {Field::mass_of_metal, "0.1385"}});
    const Sheet peroxide = tube.with({{Field::metal, "hydrogen_peroxide"}, {Field::mass_of_metal, "0.1153"}});
    const Sheet carbonate = tube.with({{Field::metal, "calcium_carbonate"}, {Field::mass_of_metal, "0.1697"}});
    CHECK(may_have(tube, Cause::oxide_coat));
    CHECK(may_have(tube, Cause::acid_short));
    CHECK(may_have(carbonate, Cause::acid_short));
    for (const Sheet& sheet : {chlorate, peroxide}) CHECK_FALSE(may_have(sheet, Cause::acid_short));
    for (const Sheet& sheet : {chlorate, peroxide, carbonate}) {
        CHECK_FALSE(may_have(sheet, Cause::oxide_coat));
        CHECK(may_have(sheet, Cause::metal_left));
    }
    const Sheet own = tube.with({{Field::metal, "own"}, {Field::gas, "hydrogen"}, {Field::molar_mass, "24.305"}, {Field::gas_per_mole, "1"}});
    CHECK(may_have(own, Cause::oxide_coat));
    CHECK_FALSE(may_have(own, Cause::acid_short));
    CHECK(may_have(own.with({{Field::acid_per_mole, "2"}}), Cause::acid_short));
}

TEST_CASE("carbon dioxide dissolves fifty times as well as hydrogen, an unknown gas not at all") {
    // standards.md, 7.3 (IAPWS G7-04): 8.1e-4 and 3.7e-2 mol/(L atm) at some 21 °C.
    const Sheet hydrogen = good_run(Apparatus::generator_flask);
    const Sheet carbonate = hydrogen.with({{Field::metal, "calcium_carbonate"}, {Field::mass_of_metal, "0.1697"}});
    const double times = usual(carbonate, Cause::dissolved_gas) / usual(hydrogen, Cause::dissolved_gas);
    CHECK(times == doctest::Approx(46.5).epsilon(0.03));
    const auto all = reach_of(carbonate.assessed(), Cause::dissolved_gas);
    REQUIRE(all.has_value());
    CHECK(all->largest <= 0.95);
    CHECK(all->usual <= all->largest);
    const Sheet own = hydrogen.with({{Field::metal, "own"}, {Field::molar_mass, "24.305"}, {Field::gas_per_mole, "1"}});
    CHECK_FALSE(may_have(own.with({{Field::gas, "other_gas"}}), Cause::dissolved_gas));
    CHECK_FALSE(may_have(own.with({{Field::gas, "helium"}}), Cause::dissolved_gas));
    CHECK(may_have(own.with({{Field::gas, "methane"}}), Cause::dissolved_gas));
}

TEST_CASE("warm gas in a closed flask carries all of the pressure with it") {
    // By hand: air, gas and vapour stood 2 K warmer. (p - w(T)) (T + 2)/T + w(T + 2), less what was there before.
    const Sheet flask = good_run(Apparatus::pressure_sensor);
    const double kelvin = 21.4 + 273.15;
    const double warm = (129250 - vapour(21.4)) * (kelvin + 2) / kelvin + vapour(23.4);
    const double percent = 100 * ((warm - 99620) / (129250.0 - 99620) - 1);
    CHECK(percent > 3.5);  // 2 K of 130 kPa are 0.9 kPa, and 0.3 kPa of vapour: of a rise of 29.6 kPa 4 %
    CHECK(effect(flask, Cause::gas_warm, 2) == doctest::Approx(percent).epsilon(1e-9));
    // In a syringe only the gas itself expands, and takes up more vapour.
    const Sheet syringe = good_run(Apparatus::gas_syringe);
    const double wider = (kelvin + 2) / kelvin * (99620 - vapour(21.4)) / (99620 - vapour(23.4));
    CHECK(effect(syringe, Cause::gas_warm, 2) == doctest::Approx(100 * (wider - 1)).epsilon(1e-9));
}

TEST_CASE("every cause that a vessel can have is undone exactly") {
    for (const Apparatus vessel : vessels) {
        const Assessment run = good_run(vessel).assessed();
        const Bench bench = bench_of(run);
        const double found = result_of(bench).value();
        for (std::size_t i = 0; i < cause_count; ++i) {
            const auto cause = static_cast<Cause>(i);
            const auto reach = reach_of(run, cause);
            if (!reach) continue;
            CAPTURE(std::string(name_of(vessel)));
            CAPTURE(std::string(name_of(cause)));
            const double size = reach->usual;
            const Bench wrong = falsified(bench, cause, size);
            const auto with = result_of(wrong);
            REQUIRE(with.has_value());
            CHECK(*with != found);
            CHECK((*with > found) == info(cause).raises);
            CHECK(result_of(corrected(wrong, cause, size)).value() == doctest::Approx(found).epsilon(1e-9));
        }
    }
}

TEST_CASE("a millilitre more is a millilitre more in every vessel") {
    // Gas lost, by hand, in per cent of the volume. In the closed flask a millilitre at the pressure before: 99.62 kPa x 1/140 of
    // a rise of 29.63 kPa.
    const std::pair<Apparatus, double> volumes[] = {{Apparatus::tube_over_water, 43.20}, {Apparatus::generator_flask, 43.20},
                                                    {Apparatus::gas_syringe, 42.71}, {Apparatus::displaced_water, 42.62 / 0.997907},
                                                    {Apparatus::pressure_sensor, 140.0 * 29.63 / 99.62}};
    for (const auto& row : volumes) {
        const Apparatus vessel = row.first;
        const double volume = row.second;
        CAPTURE(std::string(name_of(vessel)));
        CHECK(effect(good_run(vessel), Cause::gas_lost, 1e-6) == doctest::Approx(-100 / volume).epsilon(1e-6));
    }
}
