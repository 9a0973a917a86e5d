// How many figures a sentence shows. A share that something costs is an estimate: two figures, "2.4 %", for a third would say
// what nobody knows. A pressure of the standard atmosphere has three, as weather moves it by a few per cent.

#include <doctest/doctest.h>

#include <string>

#include "core/pool/class_set.hpp"
#include "core/pool/pattern.hpp"
#include "tests/core/check_support.hpp"
#include "tests/core/vessel_support.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

void shows(const std::optional<Check>& check, const char* name, int figures, UnitId unit) {
    REQUIRE(check.has_value());
    CAPTURE(std::string(check->message.key));
    const Argument* argument = place(*check, name);
    REQUIRE(argument != nullptr);
    CHECK(argument->significant);
    CHECK(argument->digits == figures);
    CHECK(argument->unit == unit);
}

Conventions own_vapour() {
    Conventions own;
    own.vapour = Conventions::Vapour::own_value;
    return own;
}

}  // namespace

TEST_CASE("what something costs is said in two figures of a per cent") {
    const Sheet run = record_a();
    shows(found(run.with({{Field::mass_of_metal, "0.03"}}), Field::mass_of_metal, "check.few_digits"), "share", 2,
          UnitId::percent);
    shows(found(run.without(Field::end_space), Field::end_space, "note.end_space_blank"), "share", 2, UnitId::percent);
    shows(found(run.with({{Field::starting_bubble, "2.0"}}), Field::start_level_difference, "note.start_level_blank"),
          "share", 2, UnitId::percent);
    shows(found(good_run(Apparatus::pressure_sensor).without(Field::acid_volume), Field::acid_volume,
                "note.liquid_blank"),
          "share", 2, UnitId::percent);
    shows(found(run.with({{Field::pressure_kind, "altimeter_setting"}, {Field::height_above_sea_level, "300"}}),
                Field::barometer, "note.pressure_uncorrected_high"),
          "share", 2, UnitId::percent);
    shows(found(run.with({{Field::water_activity, "0.98"}}), Field::water_activity, "note.water_activity"), "share", 2,
          UnitId::percent);
}

TEST_CASE("rooms and volumes are said in two figures of the unit that they are read in") {
    const Sheet run = record_a();
    const auto level = [&](const char* text) { return run.with({{Field::level_difference, text}}); };
    shows(found(level("112 cm"), Field::level_difference, "check.mouth_out_of_water_unit"), "room", 2,
          UnitId::millimetre);
    shows(found(level("1120"), Field::level_difference, "check.mouth_out_of_water"), "room", 2, UnitId::millimetre);
    shows(found(run.with({{Field::mass_of_metal, "41.2"}}), Field::mass_of_metal, "check.mass_unit"), "volume", 2,
          UnitId::millilitre);
    shows(found(run.with({{Field::mass_of_metal, "0.0501"}}), Field::mass_of_metal, "check.too_much_metal"), "volume",
          2, UnitId::millilitre);
    shows(found(run.with({{Field::length_of_scale, "55 mm"}}), Field::length_of_scale, "check.length_of_scale"),
          "usual", 2, UnitId::millimetre);
    const Sheet carbonate = run.with({{Field::metal, "calcium_carbonate"}, {Field::mass_of_metal, "0.1697"}});
    shows(found(carbonate, Field::metal, "note.soluble_gas"), "volume", 2, UnitId::millilitre);
}

TEST_CASE("pressures are said in the unit they were read in: limits in four figures, usual ones in three") {
    const Sheet run = record_a();
    const auto impossible =
        found(run.with({{Field::barometer, "5 kPa"}}), Field::barometer, "check.pressure_impossible");
    shows(impossible, "lowest", 4, UnitId::kilopascal);
    shows(impossible, "highest", 4, UnitId::kilopascal);
    const auto at = [&](const char* barometer, const char* height) {
        return run.with({{Field::barometer, barometer}, {Field::height_above_sea_level, height}});
    };
    shows(found(at("102.1", "2000"), Field::barometer, "check.sea_level_in_high_place"), "usual", 3,
          UnitId::kilopascal);
    shows(found(at("83.4", "5280"), Field::height_above_sea_level, "check.height_in_feet"), "usual", 3,
          UnitId::kilopascal);
    shows(found(run.by(own_vapour()).with({{Field::own_vapour_pressure, "0.05 kPa"}}), Field::own_vapour_pressure,
                "check.vapour_impossible"),
          "usual", 3, UnitId::kilopascal);
}

TEST_CASE("a class's estimates have two figures, a factor that is to be recognised three") {
    const auto shown = [](const std::vector<double>& ratios, std::string_view key, std::string_view name) {
        std::vector<ClassPoint> points;
        for (std::size_t i = 0; i < ratios.size(); ++i) {
            ClassPoint point;
            point.amount = 1e-3 * static_cast<double>(i + 1);
            point.accepted = 22.711e-3;
            point.ratio = ratios[i] * point.accepted;
            point.volume = point.in_tube = point.ratio * point.amount;
            points.push_back(point);
        }
        for (const Pattern& pattern : patterns_of(pooled(points))) {
            if (pattern.message.key != key) continue;
            for (const Argument& argument : pattern.message.arguments) {
                if (argument.name == name) return argument;
            }
        }
        FAIL("not said");
        return Argument{};
    };
    const auto is = [](const Argument& argument, int figures, UnitId unit) {
        CHECK(argument.significant);
        CHECK(argument.digits == figures);
        CHECK(argument.unit == unit);
    };
    is(shown({2, 2.02, 1.99}, "pattern.factor", "times"), 3, UnitId::none);
    is(shown({1.05, 1.06, 1.05, 1.06, 1.05}, "pattern.all_high", "percent"), 2, UnitId::percent);
    // A volume of 1.135 mL that nobody counted: 5 % of the first run's 22.7 mL, 2.5 % of the second's ...
    const std::vector<double> offset{1.0501, 1.0249, 1.0168, 1.0124, 1.0101};
    is(shown(offset, "pattern.too_much_by", "volume"), 2, UnitId::millilitre);
    is(shown(offset, "pattern.too_much_by", "half_width"), 2, UnitId::millilitre);
    is(shown({1.02, 0.98, 1.02, 0.98, 1.002, 0.998, 1.002, 0.998}, "pattern.small_scatter", "times"), 2, UnitId::none);
}

TEST_CASE("what the water takes up, what a report would do and what an acid holds back, by hand") {
    // Bunsen's coefficient of carbon dioxide at 20 °C is 0.878 (from memory): as it stands at 20 °C, 0.942 mL a mL.
    const Sheet carbonate = record_a().with({{Field::metal, "calcium_carbonate"}, {Field::mass_of_metal, "0.1697"}});
    const auto taken_up = [&](const Sheet& sheet) {
        return number_in(found(sheet, Field::metal, "note.soluble_gas"), "volume");
    };
    const double at_20 = taken_up(carbonate.with({{Field::temperature, "20.0"}}));
    CHECK(at_20 == doctest::Approx(0.942e-6).epsilon(0.02));
    // Without a temperature the 20 °C of handbooks.
    CHECK(taken_up(carbonate.without(Field::temperature)) == at_20);
    CHECK(taken_up(carbonate.with({{Field::temperature, "25.0"}})) < at_20);
    // No more than hydrogen, oxygen or methane, which lose next to nothing.
    for (const char* sample : {"magnesium", "hydrogen_peroxide"}) {
        CHECK_FALSE(says(record_a().with({{Field::metal, sample}}), "note.soluble_gas"));
    }
    const Sheet report =
        record_a().with({{Field::pressure_kind, "altimeter_setting"}, {Field::height_above_sea_level, "300"}});
    const Assessment run = report.assessed();
    const double above = 99620 - run.value(Output::pressure_at_bench).value();
    CHECK(above > 3400);  // 12 Pa a metre near the ground, less higher up
    CHECK(above < 3600);
    CHECK(number_in(found(report, Field::barometer, "note.pressure_uncorrected_high"), "share") ==
          doctest::Approx(above / run.value(Output::dry_gas_pressure).value()));
    const Sheet below = report.with({{Field::height_above_sea_level, "-300"}});
    CHECK(number_in(found(below, Field::barometer, "note.pressure_uncorrected_low"), "share") > 0.03);
    CHECK_FALSE(says(below, "note.pressure_uncorrected_high"));
    // 2549.94 Pa of water at 21.4 °C, of which 2 % are held back.
    const Sheet acid = record_a().with({{Field::water_activity, "0.98"}});
    CHECK(number_in(found(acid, Field::water_activity, "note.water_activity"), "share") ==
          doctest::Approx(0.02 * 2549.94 / (95974.0 + 0.02 * 2549.94)).epsilon(1e-4));
}
