// What each vessel asks for, what it does not ask for, what it refuses, and what it makes of its readings. Values are by
// hand from the tables of method.md and standards.md; tests/oracle/compare_vessels.py does whole runs apart from this program.

#include <doctest/doctest.h>

#include <string>

#include "core/bench/instrument.hpp"
#include "tests/core/vessel_support.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

FieldSet waits_for(const Sheet& sheet, Output output = Output::molar_volume_standard) {
    return sheet.assessed().state(output).waiting_for;
}

Sheet empty(Apparatus vessel) { return Sheet().with({{Field::apparatus, name_of(vessel).data()}}); }

std::string reason(const Sheet& sheet, Output output = Output::molar_volume_standard) {
    const Assessment run = sheet.assessed();
    const OutputState& state = run.state(output);
    return state.kind == OutputState::Kind::not_possible ? std::string(state.reason.key) : "possible";
}

double value_in(const Sheet& sheet, Output output, UnitId unit) {
    return from_base(sheet.assessed().value(output).value_or(__builtin_nan("")), unit);
}

constexpr FieldSet of_metal_and_room = FieldSet::of(Field::metal, Field::mass_of_metal, Field::temperature, Field::barometer);

}  // namespace

TEST_CASE("each vessel waits for its own readings") {
    const FieldSet tube = of_metal_and_room | FieldSet::of(Field::number_at_closed_end, Field::scale_reading, Field::tube_capacity,
                                                           Field::liquid_stands, Field::level_difference);
    CHECK(waits_for(empty(Apparatus::tube_over_water)) == tube);
    CHECK(waits_for(empty(Apparatus::generator_flask)) == tube);
    CHECK(waits_for(empty(Apparatus::gas_syringe)) == (of_metal_and_room | FieldSet::of(Field::scale_reading)));
    CHECK(waits_for(empty(Apparatus::displaced_water)) == (of_metal_and_room | FieldSet::of(Field::displaced_mass)));
    CHECK(waits_for(empty(Apparatus::pressure_sensor)) ==
          (of_metal_and_room | FieldSet::of(Field::flask_volume, Field::pressure_after)));
    // A name that is not known is taken as the first.
    CHECK(waits_for(Sheet().with({{Field::apparatus, "bucket"}})) == tube);
}

TEST_CASE("each good run has its value, and every reading of it is needed or known to be optional") {
    for (const Apparatus vessel : vessels) {
        CAPTURE(std::string(name_of(vessel)));
        const Sheet sheet = good_run(vessel);
        CHECK(litres_a_mole(sheet.assessed()) == doctest::Approx(22.7).epsilon(0.003));
        for (const Field field : {Field::mass_of_metal, Field::temperature, Field::barometer, Field::metal}) {
            CHECK(waits_for(sheet.without(field)).has(field));
        }
    }
    CHECK(waits_for(good_run(Apparatus::gas_syringe).without(Field::scale_reading)) == FieldSet::of(Field::scale_reading));
    CHECK(waits_for(good_run(Apparatus::displaced_water).without(Field::displaced_mass)) == FieldSet::of(Field::displaced_mass));
    CHECK(waits_for(good_run(Apparatus::pressure_sensor).without(Field::flask_volume)) == FieldSet::of(Field::flask_volume));
    CHECK(waits_for(good_run(Apparatus::pressure_sensor).without(Field::pressure_after)) == FieldSet::of(Field::pressure_after));
    // Acid let in and acid in the flask are taken off where they are known.
    CHECK(good_run(Apparatus::generator_flask).without(Field::injected_volume).assessed().has(Output::molar_volume_standard));
    CHECK(good_run(Apparatus::pressure_sensor).without(Field::acid_volume).assessed().has(Output::molar_volume_standard));
}

TEST_CASE("a vessel has no step that it does not need") {
    const auto asked = [](Apparatus vessel, Output output) {
        return good_run(vessel).assessed().state(output).kind != OutputState::Kind::not_asked;
    };
    for (const Apparatus vessel : vessels) {
        CAPTURE(std::string(name_of(vessel)));
        const bool column = vessel == Apparatus::tube_over_water || vessel == Apparatus::generator_flask;
        CHECK(asked(vessel, Output::column_pressure) == column);
        CHECK(has_column(good_run(vessel).assessed().measured.setup) == column);
        CHECK(asked(vessel, Output::water_vapour_pressure) == (vessel != Apparatus::pressure_sensor));
    }
    const Sheet dry = good_run(Apparatus::gas_syringe).with({{Field::gas_is, "dry"}});
    CHECK(dry.assessed().state(Output::water_vapour_pressure).kind == OutputState::Kind::not_asked);
}

TEST_CASE("the volume of the gas in each vessel") {
    const auto millilitres = [](const Sheet& sheet) { return value_in(sheet, Output::gas_volume, UnitId::millilitre); };
    CHECK(millilitres(good_run(Apparatus::tube_over_water)) == doctest::Approx(43.20).epsilon(1e-12));
    CHECK(millilitres(good_run(Apparatus::generator_flask)) == doctest::Approx(48.20 - 5.00).epsilon(1e-12));
    CHECK(millilitres(good_run(Apparatus::gas_syringe)) == doctest::Approx(42.71).epsilon(1e-12));
    CHECK(millilitres(good_run(Apparatus::gas_syringe).with({{Field::start_reading, "0.50"}})) ==
          doctest::Approx(42.71 - 0.50).epsilon(1e-12));
    // Where acid is let into a flask, it drives as much gas over into the syringe.
    CHECK(millilitres(good_run(Apparatus::gas_syringe).with({{Field::injected_volume, "5.00"}})) ==
          doctest::Approx(42.71 - 5.00).epsilon(1e-12));
    // 42.62 g over 997.907 kg/m³ at 21.4 °C (method.md, record A).
    CHECK(millilitres(good_run(Apparatus::displaced_water)) == doctest::Approx(42.62 / 0.997907).epsilon(1e-6));
    CHECK(millilitres(good_run(Apparatus::pressure_sensor)) == doctest::Approx(150.0 - 10.0).epsilon(1e-12));
    CHECK(millilitres(good_run(Apparatus::pressure_sensor).without(Field::acid_volume)) == doctest::Approx(150.0).epsilon(1e-12));
    // A calibrated scale: 40.50 mL are 40.00 mL.
    CHECK(millilitres(good_run(Apparatus::tube_over_water).with({{Field::scale_reading, "40.50"}, {Field::tube_factor, "0.98765"}})) ==
          doctest::Approx(40.50 * 0.98765).epsilon(1e-12));
}

TEST_CASE("the pressure of the dry gas in each vessel") {
    // method.md, record A: vapour 2549.94 Pa at 21.4 °C, column 1096.05 Pa.
    const auto pascals = [](const Sheet& sheet) { return value_in(sheet, Output::dry_gas_pressure, UnitId::pascal); };
    CHECK(pascals(good_run(Apparatus::tube_over_water)) == doctest::Approx(95974.0).epsilon(1e-6));
    CHECK(pascals(good_run(Apparatus::generator_flask)) == doctest::Approx(95974.0).epsilon(1e-6));
    CHECK(pascals(good_run(Apparatus::gas_syringe)) == doctest::Approx(99620 - 2549.94).epsilon(1e-6));
    CHECK(pascals(good_run(Apparatus::gas_syringe).with({{Field::gas_is, "dry"}})) == doctest::Approx(99620).epsilon(1e-12));
    CHECK(pascals(good_run(Apparatus::displaced_water)) == doctest::Approx(99620 - 2549.94).epsilon(1e-6));
    CHECK(pascals(good_run(Apparatus::pressure_sensor)) == doctest::Approx(129250 - 99620).epsilon(1e-12));
    // Over the acid there is less vapour: 0.6 mol/kg of hydrochloric acid has a water activity of 0.9789 (standards.md, 7.1).
    const Sheet acid = good_run(Apparatus::displaced_water).with({{Field::water_activity, "0.9789"}});
    CHECK(pascals(acid) == doctest::Approx(99620 - 0.9789 * 2549.94).epsilon(1e-6));
}

TEST_CASE("a closed flask: 30 kPa more in 140 mL") {
    // By hand: 29630 Pa x 140.0 mL / (8.314463 J/(mol K) x 294.55 K) = 1.693817 mmol by the gas; 41.2 mg / 24.305 g/mol =
    // 1.695124 mmol by the metal; so 22.71095 L/mol x 1.693817 / 1.695124 = 22.69344 L/mol.
    CHECK(litres_a_mole(good_run(Apparatus::pressure_sensor).assessed()) == doctest::Approx(22.69344).epsilon(1e-6));
    // What was put down for a room of another height counts for nothing: the sensor is in the flask.
    const Sheet report = good_run(Apparatus::pressure_sensor)
                             .with({{Field::pressure_kind, "altimeter_setting"}, {Field::height_above_sea_level, "1600"}});
    CHECK(litres_a_mole(report.assessed()) == litres_a_mole(good_run(Apparatus::pressure_sensor).assessed()));
    CHECK(report.assessed().state(Output::pressure_at_bench).kind == OutputState::Kind::not_asked);
}

TEST_CASE("what a vessel refuses") {
    const Sheet sensor = good_run(Apparatus::pressure_sensor);
    CHECK(reason(sensor.with({{Field::pressure_after, "99.62"}})) == "refusal.no_rise");
    CHECK(reason(sensor.with({{Field::pressure_after, "95"}})) == "refusal.no_rise");
    CHECK(reason(sensor.with({{Field::pressure_after, "-5"}})) == "refusal.not_above_zero");
    CHECK(reason(sensor.with({{Field::acid_volume, "160"}})) == "refusal.no_gas");
    CHECK(reason(sensor.with({{Field::flask_volume, "0"}})) == "refusal.not_above_zero");
    CHECK(says(sensor.with({{Field::flask_volume, "0"}}), Field::flask_volume, "refusal.not_above_zero"));
    const Sheet flask = good_run(Apparatus::generator_flask);
    CHECK(reason(flask.with({{Field::injected_volume, "48.20"}})) == "refusal.no_gas");
    CHECK(reason(flask.with({{Field::injected_volume, "-1"}})) == "refusal.below_zero");
    CHECK(reason(sensor.with({{Field::acid_volume, "-1"}})) == "refusal.not_above_zero");
    CHECK(reason(good_run(Apparatus::displaced_water).with({{Field::displaced_mass, "-3"}})) == "refusal.not_above_zero");
    CHECK(reason(good_run(Apparatus::gas_syringe).with({{Field::start_reading, "50"}})) == "refusal.no_gas");
    const Sheet tube = good_run(Apparatus::tube_over_water);
    CHECK(reason(tube.with({{Field::water_activity, "1.2"}})) == "refusal.activity_above_one");
    CHECK(says(tube.with({{Field::water_activity, "1.2"}}), Field::water_activity, "refusal.activity_above_one"));
    CHECK(says(tube.with({{Field::latitude, "91"}}), Field::latitude, "refusal.latitude"));
    CHECK(reason(tube.with({{Field::tube_factor, "0"}})) == "refusal.not_above_zero");
    // A vessel that has no such reading does not mind it.
    CHECK(reason(tube.with({{Field::pressure_after, "-5"}})) == "possible");
    CHECK(reason(tube.with({{Field::injected_volume, "-1"}})) == "possible");
    CHECK(reason(sensor.with({{Field::scale_reading, "60"}, {Field::tube_capacity, "50"}})) == "possible");
}

TEST_CASE("a mercury barometer of its own temperature, and of the room's") {
    // standards.md, 6.1: 760 mm at 20 °C are 2.475 mm too many; 6.2: at 50° and sea level 760 mm stand for 760.31 mm.
    const Sheet sheet = good_run(Apparatus::gas_syringe)
                            .with({{Field::pressure_kind, "mercury_column"}, {Field::barometer, "760.0 mmHg"}});
    const auto bench = [](const Sheet& one) {
        return value_in(one, Output::pressure_at_bench, UnitId::millimetre_of_mercury);
    };
    CHECK(bench(sheet.with({{Field::barometer_temperature, "20.0"}})) == doctest::Approx(760 - 2.475).epsilon(0.0006 / 760));
    CHECK(bench(sheet.with({{Field::temperature, "20.0"}})) == doctest::Approx(760 - 2.475).epsilon(0.0006 / 760));
    CHECK(bench(sheet.with({{Field::barometer_temperature, "0"}, {Field::latitude, "50"}})) ==
          doctest::Approx(760.31).epsilon(0.006 / 760));
    CHECK(bench(sheet.with({{Field::barometer_temperature, "0"}, {Field::latitude, "0"}, {Field::height_above_sea_level, "2240"}})) ==
          doctest::Approx(757.42).epsilon(0.006 / 760));
    // It waits for one temperature, not for two.
    CHECK(waits_for(sheet.without(Field::temperature), Output::pressure_at_bench) == FieldSet::of(Field::temperature));
    CHECK(sheet.without(Field::temperature).with({{Field::barometer_temperature, "20"}}).assessed().has(Output::pressure_at_bench));
    // The column of water stands under the same acceleration: 1096.05 Pa by the standard one, 9.7803 of 9.80665 at the equator.
    const Sheet tube = good_run(Apparatus::tube_over_water);
    CHECK(value_in(tube.with({{Field::latitude, "0"}}), Output::column_pressure, UnitId::pascal) ==
          doctest::Approx(1096.05 * 9.780327 / 9.80665).epsilon(1e-5));
}

TEST_CASE("readings of other vessels, substances and last lines are kept and count for nothing") {
    for (const Apparatus vessel : vessels) {
        CAPTURE(std::string(name_of(vessel)));
        const Assessment alone = good_run(vessel).assessed();
        const Assessment among_others = all_typed(vessel).assessed();
        for (std::size_t i = 0; i < output_count; ++i) {
            const auto output = static_cast<Output>(i);
            CAPTURE(std::string(name_of(output)));
            if (output == Output::gas_at_end || output == Output::gas_at_start) continue;
            CHECK(among_others.has(output) == alone.has(output));
            if (alone.has(output) && among_others.has(output)) CHECK(among_others.outcome[output] == alone.outcome[output]);
        }
    }
}

TEST_CASE("nothing is said of a reading that the vessel does not have") {
    for (const Apparatus vessel : vessels) {
        const Sheet alone = good_run(vessel);
        for (const Check& check : all_typed(vessel).assessed().checks) {
            CAPTURE(std::string(name_of(vessel)));
            CAPTURE(std::string(name_of(check.field)));
            CAPTURE(std::string(check.message.key));
            CHECK(says(alone, check.field, check.message.key));
        }
    }
}

TEST_CASE("what is looked over differs with the vessel") {
    // An end space that was left blank for the tube is none of the water's that was weighed.
    for (const Apparatus vessel : {Apparatus::gas_syringe, Apparatus::displaced_water, Apparatus::pressure_sensor}) {
        const Sheet burette = good_run(vessel).with(
            {{Field::number_at_closed_end, "largest"}, {Field::tube_capacity, "900"}, {Field::tube_bore, "40"}});
        CAPTURE(std::string(name_of(vessel)));
        CHECK_FALSE(says(burette, Field::end_space, "note.end_space_blank"));
        CHECK_FALSE(says(burette, Field::tube_bore, "note.bore_unknown"));
    }
    // A flask and a mass alone say nothing of a slip: V/n is that of a gas spread over the flask.
    const Sheet flask = good_run(Apparatus::pressure_sensor);
    for (const Check& check : flask.without(Field::pressure_after).assessed().checks) CHECK(check.weight == Check::Weight::note);
    CHECK(says(flask.with({{Field::mass_of_metal, "0.412"}}), Field::mass_of_metal, "check.slip_of_ten_below"));
    // 1 mL of 150.0 mL are 0.67 %; nothing is said where it was measured, or nothing can be said yet.
    CHECK(number_in(found(flask.without(Field::acid_volume), Field::acid_volume, "note.liquid_blank"), "share") ==
          doctest::Approx(1 / 150.0).epsilon(1e-9));
    CHECK_FALSE(says(flask, "note.liquid_blank"));
    CHECK_FALSE(says(flask.without(Field::acid_volume).without(Field::flask_volume), "note.liquid_blank"));
    CHECK_FALSE(says(good_run(Apparatus::generator_flask).without(Field::acid_volume), "note.liquid_blank"));
    // A mercury barometer stands on the bench: 560 mm are the air of Bogota, and no report's mistake.
    const Sheet high = good_run(Apparatus::gas_syringe).with({{Field::pressure_kind, "mercury_column"}, {Field::barometer, "560.0 mmHg"}});
    CHECK_FALSE(says(high, Field::barometer, "check.report_too_low"));
    CHECK(says(high.with({{Field::pressure_kind, "reduced_to_sea_level"}}), Field::barometer, "check.report_too_low"));
    // No metal explains too little gas of a carbonate: 65.38/100.086 of it would be zinc's.
    const Sheet carbonate = good_run(Apparatus::gas_syringe).with({{Field::metal, "calcium_carbonate"}, {Field::mass_of_metal, "0.2598"}});
    CHECK_FALSE(says(carbonate, Field::metal, "check.other_metal"));
    // A dried gas has no vapour to speak of.
    Conventions own;
    own.vapour = Conventions::Vapour::own_value;
    const Sheet dry = good_run(Apparatus::gas_syringe).with({{Field::own_vapour_pressure, "35 mmHg"}}).by(own);
    CHECK(says(dry, Field::own_vapour_pressure, "check.vapour_of_other_temperature"));
    CHECK_FALSE(says(dry.with({{Field::gas_is, "dry"}}), "check.vapour_of_other_temperature"));
}

TEST_CASE("what is chosen and chosen back gives the same values, and leaves every reading as it was typed") {
    const auto same = [](const Sheet& one, const Sheet& other) {
        const Assessment a = one.assessed();
        const Assessment b = other.assessed();
        for (std::size_t i = 0; i < output_count; ++i) {
            const auto output = static_cast<Output>(i);
            CAPTURE(std::string(name_of(output)));
            CHECK(a.has(output) == b.has(output));
            if (a.has(output)) CHECK(a.outcome[output] == b.outcome[output]);
        }
    };
    for (const Apparatus vessel : vessels) {
        const Sheet before = all_typed(vessel);
        for (const Apparatus other : vessels) {
            same(before, before.with({{Field::apparatus, name_of(other).data()}})
                             .with({{Field::apparatus, name_of(vessel).data()}}));
        }
        for (const char* sample : {"zinc", "calcium_carbonate", "potassium_chlorate", "own"}) {
            same(before, before.with({{Field::metal, sample}}).with({{Field::metal, "magnesium"}}));
        }
        for (const std::string_view target : target_names) {
            same(before, before.with({{Field::target, target.data()}}).with({{Field::target, "molar_volume"}}));
            // Another last line changes no other.
            if (target == "gas_molar_mass") continue;
            const Assessment sought = before.with({{Field::target, target.data()}}).assessed();
            CHECK(litres_a_mole(sought) == litres_a_mole(before.assessed()));
        }
        const auto text_of = [](const Sheet& sheet, Field field) { return sheet.assessed().readings[field].number.value; };
        const Sheet elsewhere = before.with({{Field::apparatus, "displaced_water"}, {Field::metal, "own"}});
        for (const Field field : {Field::mass_of_metal, Field::scale_reading, Field::flask_volume, Field::displaced_mass}) {
            CHECK(text_of(elsewhere, field) == text_of(before, field));
        }
    }
}

TEST_CASE("an own reaction asks for its molar mass and its ratio, and takes the acid only where it says so") {
    const Sheet own = good_run(Apparatus::tube_over_water).with({{Field::metal, "own"}, {Field::gas, "hydrogen"}});
    CHECK(waits_for(own) == FieldSet::of(Field::molar_mass, Field::gas_per_mole));
    const Sheet tin = own.with({{Field::molar_mass, "118.71"}, {Field::gas_per_mole, "1"}, {Field::mass_of_metal, "0.2012"}});
    // 201.2 mg / 118.71 g/mol = 1.694887 mmol.
    CHECK(value_in(tin, Output::amount_of_gas, UnitId::millimole) == doctest::Approx(1.694887).epsilon(1e-6));
    CHECK(tin.assessed().state(Output::acid_needed).kind == OutputState::Kind::not_asked);
    const Sheet acid = tin.with({{Field::acid_per_mole, "2"}, {Field::acid_volume, "10.0"}, {Field::acid_concentration, "0.2"}});
    CHECK(value_in(acid, Output::acid_needed, UnitId::millimole) == doctest::Approx(2 * 1.694887).epsilon(1e-6));
    // 2.0 mmol of acid for 3.39: the acid sets the gas, 1.0 mmol.
    CHECK(value_in(acid, Output::amount_of_gas, UnitId::millimole) == doctest::Approx(1.0).epsilon(1e-12));
    CHECK(says(own.with({{Field::molar_mass, "0"}}), Field::molar_mass, "refusal.not_above_zero"));
    CHECK(reason(tin.with({{Field::gas_per_mole, "0"}})) == "refusal.not_above_zero");
    CHECK(reason(tin.with({{Field::molar_mass, "-3"}})) == "refusal.not_above_zero");
}

TEST_CASE("instruments for the readings of the vessels") {
    for (const Field field : {Field::injected_volume, Field::flask_volume, Field::pressure_after}) {
        CAPTURE(std::string(name_of(field)));
        CHECK(assumed_instrument(field, 0) != nullptr);
    }
    CHECK(assumed_instrument(Field::displaced_mass, 0) == nullptr);
    CHECK_FALSE(instruments_for(Field::displaced_mass).empty());
}
