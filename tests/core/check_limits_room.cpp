// Limits of the remarks about the room and about a result far from every gas: just inside, exactly at and just outside.

#include <doctest/doctest.h>

#include <cmath>
#include <string>

#include "tests/core/check_support.hpp"
#include "tests/core/vessel_support.hpp"
#include "tests/standards/wagner_pruss.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

Sheet weighs(const char* mass) { return record_a().with({{Field::mass_of_metal, mass}}); }
double vapour(double celsius) { return reference::wagner_pruss_vapour_pressure(celsius + 273.15); }

bool is_air(const char* barometer) {
    return !says(reads(barometer), "check.pressure_unit") && !says(reads(barometer), "check.pressure_impossible");
}

}  // namespace

TEST_CASE("air from 45 to 108.5 kPa, a report from 87 kPa, a bench from -430 to 5500 m") {
    // method.md, section 2; 870 hPa is the lowest ever measured at sea level (Tip, 1979); the Dead Sea.
    for (const char* air : {"45", "108.5"}) CHECK(is_air(air));
    for (const char* none : {"44.99", "108.51"}) CHECK_FALSE(is_air(none));
    const auto too_low = [](const char* report) {
        return says(reads(report, "0").with({{Field::pressure_kind, "altimeter_setting"}}), "check.report_too_low");
    };
    CHECK(too_low("86.99"));
    CHECK_FALSE(too_low("87"));
    for (const char* bench : {"-430", "5500"}) CHECK_FALSE(says(reads("99.62", bench), "check.height"));
    for (const char* none : {"-431", "5501"}) CHECK(says(reads("99.62", none), "check.height"));
}

TEST_CASE("from 700 to 790 hPa a number may be mmHg, unless the height has such air to within 4 kPa") {
    for (const char* both : {"700 hPa", "790 hPa"}) CHECK(says(reads(both), "check.pressure_mmhg"));
    for (const char* neither : {"699 hPa", "791 hPa"}) CHECK_FALSE(says(reads(neither), "check.pressure_mmhg"));
    // Standard atmosphere: 1013.25 (1 - 2.25577e-5 h)^5.25588 hPa. 787.0 at 2080 m and 789.1 at 2059 m; 709.0 at 2911 m and
    // 706.9 at 2934 m: 748 hPa are 3.9 and 4.1 kPa from them.
    for (const char* near : {"2080", "2911"}) CHECK_FALSE(says(reads("748 hPa", near), "check.pressure_mmhg"));
    for (const char* far : {"2058", "2935"}) CHECK(says(reads("748 hPa", far), "check.pressure_mmhg"));
}

TEST_CASE("a height may be in feet where the air is that of so many feet to within 2 kPa, and not that of the sea") {
    const auto feet = [](const char* barometer, const char* height) {
        return says(reads(barometer, height), "check.height_in_feet");
    };
    // 5280 ft are 1609.3 m: 83.43 kPa by the standard atmosphere.
    for (const char* near : {"81.50", "85.38"}) CHECK(feet(near, "5280"));
    for (const char* far : {"81.38", "85.50"}) CHECK_FALSE(feet(far, "5280"));
    // 1000 ft are 304.8 m: 97.72 kPa. From 97.325 kPa on it may be the sea's air on a bad day.
    CHECK(feet("97.30", "1000"));
    CHECK_FALSE(feet("97.35", "1000"));
    const auto check = found(reads("83.4", "5280"), Field::height_above_sea_level, "check.height_in_feet");
    REQUIRE(check);
    CHECK(place(*check, "other")->unit == UnitId::foot);
    CHECK(number_in(check, "pressure") == doctest::Approx(83400));
    // The standard atmosphere at 5280 m: 51.9 kPa.
    CHECK(number_in(check, "usual") ==
          doctest::Approx(101325 * std::pow(1 - 2.25577e-5 * 5280, 5.25588)).epsilon(1e-4));
}

TEST_CASE("thousands that a comma made decimals of are shown whole") {
    const auto check = found(reads("1,013 hPa"), Field::barometer, "check.comma_thousands");
    REQUIRE(check);
    CHECK(place(*check, "other")->digits == 0);
}

TEST_CASE("a vapour pressure of a row one degree off is in order, beyond it another temperature's") {
    // Wagner and Pruss (1993), record A at 21.4 °C; a number in whole pascals has half of one to give.
    Conventions own;
    own.vapour = Conventions::Vapour::own_value;
    const auto looked_up = [&own](long pascals) {
        return record_a().by(own).with({{Field::own_vapour_pressure, (std::to_string(pascals) + " Pa").c_str()}});
    };
    const auto other = [&](long pascals) { return says(looked_up(pascals), "check.vapour_of_other_temperature"); };
    const long above = std::lround(vapour(22.4));
    const long below = std::lround(vapour(20.4));
    CHECK_FALSE(other(above - 2));
    CHECK(other(above + 3));
    CHECK_FALSE(other(below + 2));
    CHECK(other(below - 3));
    const auto check = found(looked_up(above + 300), Field::own_vapour_pressure, "check.vapour_of_other_temperature");
    REQUIRE(check);
    CHECK(place(*check, "other")->digits == 1);
    CHECK(vapour(number_in(check, "other")) == doctest::Approx(static_cast<double>(above + 300)).epsilon(1e-4));
    // Liquid water has 611 Pa to 101.4 kPa.
    CHECK(says(looked_up(605), "check.vapour_impossible"));
    CHECK(other(620));
    CHECK(other(101000));
    CHECK(says(looked_up(102500), "check.vapour_impossible"));
}

// What record A finds is 22.6826 L/mol of 43.20 mL (method.md): each molar volume below is in proportion to volume over mass.
TEST_CASE("results from 15 to 35 L/mol are left in peace") {
    // 30 mL in a tube of 50 mL, 0 at the closed end: the other end fits, two thirds of it. 35 L/mol are 18.542 mg.
    const auto doubted = [](const char* reading, const char* mass) {
        return says(weighs(mass).with({{Field::number_at_closed_end, "zero"}, {Field::scale_reading, reading}}),
                    "check.other_end");
    };
    CHECK(doubted("30.00", "0.018535"));        // 35.01 L/mol
    CHECK_FALSE(doubted("30.00", "0.018548"));  // 34.99
    // 20 mL: the other end would be half as much again. 15 L/mol are 28.844 mg.
    CHECK(doubted("20.00", "0.028855"));        // 14.99
    CHECK_FALSE(doubted("20.00", "0.028832"));  // 15.01
}

TEST_CASE("a gas as collected has 24.5 L/mol, give or take what the result has") {
    // RT/p at 25 °C and 101.3 kPa. 30 mL of 24.5 x 35/22.711 = 37.757 L/mol come from 0.79455 mmol, 19.312 mg.
    Conventions none;
    none.conversion = Conventions::Conversion::none;
    const auto doubted = [&none](const char* mass) {
        const Sheet sheet = weighs(mass).with({{Field::number_at_closed_end, "zero"}, {Field::scale_reading, "30.00"}});
        return says(sheet.by(none).without(Field::temperature).without(Field::barometer), "check.other_end");
    };
    CHECK(doubted("0.01930"));
    CHECK_FALSE(doubted("0.01932"));
}

TEST_CASE("the other end fits to 15 percent, another metal to 3 percent") {
    // 10 mL seen, 40 from the other end: four times the result is that of a gas to 15 %.
    const auto end = [](const char* mass) {
        return says(weighs(mass).with({{Field::number_at_closed_end, "zero"}, {Field::scale_reading, "10.00"}}),
                    "check.other_end");
    };
    CHECK(end("0.03317"));        // 1.1487
    CHECK_FALSE(end("0.03309"));  // 1.1514
    CHECK(end("0.04478"));        // 0.8508
    CHECK_FALSE(end("0.04487"));  // 0.8491
    // Zinc for magnesium: 65.38/24.305 times as heavy.
    const auto zinc = [](const char* mass) {
        return says(weighs(mass).with({{Field::tube_capacity, "100"}, {Field::scale_reading, "59.15"}}),
                    "check.other_metal");
    };
    CHECK(zinc("0.10760"));        // 1.0287
    CHECK_FALSE(zinc("0.10733"));  // 1.0313
    CHECK(zinc("0.11395"));        // 0.9714
    CHECK_FALSE(zinc("0.11428"));  // 0.9686
}

TEST_CASE("half and double fit to 10 percent, a slip of ten to 15 percent") {
    const auto half = [](const char* mass) {
        return says(weighs(mass).with({{Field::tube_capacity, "100"}, {Field::scale_reading, "59.15"}}),
                    "check.metal_half");
    };
    CHECK(half("0.07497"));        // 0.5489
    CHECK_FALSE(half("0.07479"));  // 0.5502
    CHECK(half("0.09133"));        // 0.4505
    CHECK_FALSE(half("0.09155"));  // 0.4495
    const auto twice = [](const char* mass) { return says(weighs(mass), "check.metal_double"); };
    CHECK(twice("0.01873"));        // 2.1969
    CHECK_FALSE(twice("0.01868"));  // 2.2028
    // Of zinc: at 1.8 times of magnesium lithium would fit.
    const auto of_zinc = [](const char* mass) {
        return says(weighs(mass).with({{Field::metal, "zinc"}}), "check.metal_double");
    };
    CHECK(of_zinc("0.06141"));        // 1.8024
    CHECK_FALSE(of_zinc("0.06152"));  // 1.7992
    const auto ten = [](const char* mass) { return says(weighs(mass), "check.slip_of_ten_above"); };
    CHECK(ten("0.003582"));        // 11.488
    CHECK_FALSE(ten("0.003573"));  // 11.517
    CHECK(ten("0.004836"));        // 8.509
    CHECK_FALSE(ten("0.004846"));  // 8.491
    // In a syringe, which has no other end: 42.71 mL are 38.447 mL at 0 °C and 100 kPa.
    const auto tenth = [](const char* mass) {
        return says(good_run(Apparatus::gas_syringe).with({{Field::mass_of_metal, mass}}), "check.slip_of_ten_below");
    };
    CHECK(tenth("0.3582"));        // 0.11487
    CHECK_FALSE(tenth("0.3574"));  // 0.11512
    CHECK(tenth("0.4836"));        // 0.08508
    CHECK_FALSE(tenth("0.4846"));  // 0.08491
}

TEST_CASE("a slip of a hundred and of a thousand is named with its size") {
    // In a closed flask nothing limits the gas: the mass alone is wrong.
    const Sheet flask = good_run(Apparatus::pressure_sensor);
    const std::pair<const char*, long long> slips[] = {{"0.412", 10}, {"4.12", 100}, {"41.2", 1000}};
    for (const auto& slip : slips) {
        CAPTURE(slip.first);
        const auto check =
            found(flask.with({{Field::mass_of_metal, slip.first}}), Field::mass_of_metal, "check.slip_of_ten_below");
        REQUIRE(check);
        CHECK(place(*check, "times")->count == slip.second);
    }
    const std::pair<const char*, long long> lighter[] = {{"0.00412", 10}, {"0.000412", 100}, {"0.0000412", 1000}};
    for (const auto& slip : lighter) {
        CAPTURE(slip.first);
        const auto check =
            found(flask.with({{Field::mass_of_metal, slip.first}}), Field::mass_of_metal, "check.slip_of_ten_above");
        REQUIRE(check);
        CHECK(place(*check, "times")->count == slip.second);
    }
}

TEST_CASE(
    "a further reading exactly five half-widths off is not asked about, nor a ± of exactly a tenth of the usual") {
    // The thermometer assumed has ± 0.5 °C (method.md, section 6).
    const auto read = [](const char* text, const char* again, const char* plus_minus) {
        Entries entries;
        entries.edit(Field::temperature).text = text;
        entries.edit(Field::temperature).plus_minus = plus_minus;
        if (*again != 0) entries.edit(Field::temperature).repeats = {again};
        const Assessment run =
            assess(read_all([&](Field field) -> const Entry& { return entries.at(field); }), Conventions{});
        std::string keys;
        for (const Check& check : run.checks) keys += std::string(check.message.key) + ' ';
        return keys;
    };
    CHECK(read("20.0", "22.5", "").find("check.doubt.odd") == std::string::npos);
    CHECK(read("20.0", "22.6", "").find("check.doubt.odd") != std::string::npos);
    CHECK(read("20.0", "", "0.05").find("check.doubt.small") == std::string::npos);
    CHECK(read("20.0", "", "0.049").find("check.doubt.small") != std::string::npos);
}
