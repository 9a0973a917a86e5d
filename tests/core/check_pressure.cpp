#include <doctest/doctest.h>

#include <cmath>

#include "tests/core/check_support.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

std::string units(const char* barometer) {
    return text_in(found(reads(barometer), Field::barometer, "check.pressure_unit"), "units");
}

}  // namespace

TEST_CASE("a pressure that no air has names every unit in which the number would be possible") {
    // 1 inHg = 3.386389 kPa, 1 mmHg = 133.322 Pa, 1 psi = 6.894757 kPa (NIST SP 811, Appendix B.8).
    CHECK(units("29.92 mmHg") == "inHg");
    CHECK(units("748 kPa") == "hPa, mbar, mmHg, Torr");
    CHECK(units("99.62 hPa") == "kPa");
    CHECK(units("996.2") == "hPa, mbar");
    CHECK(units("14.7 kPa") == "inHg, psi");
    CHECK(units("0.98 kPa") == "atm, bar");
    const auto nowhere = found(reads("5 kPa"), Field::barometer, "check.pressure_impossible");
    CHECK(number_in(nowhere, "lowest") == doctest::Approx(45000.0));
    CHECK(number_in(nowhere, "highest") == doctest::Approx(108500.0));
    for (const char* innocent : {"45", "108.5", "996.2 hPa", "748 mmHg", "29.42 inHg", "14.45 psi", "0.98 atm"}) {
        CAPTURE(innocent);
        CHECK(!says(reads(innocent), "check.pressure_unit"));
        CHECK(!says(reads(innocent), "check.pressure_impossible"));
    }
}

TEST_CASE("no unit of a pressure is doubted away: the values stay") {
    const Assessment all = reads("99.62 hPa").with({{Field::level_difference, "10"}}).assessed();
    CHECK(all.has(Output::dry_gas_pressure));
    CHECK(all.has(Output::molar_volume_standard));
}

TEST_CASE("a comma that can only mean thousands is asked about") {
    const auto check = found(reads("1,013 hPa"), Field::barometer, "check.comma_thousands");
    REQUIRE(check);
    CHECK(number_in(check, "other") == doctest::Approx(101300.0));
    CHECK(!says(reads("1,013 hPa"), "check.pressure_unit"));
    CHECK(!says(reads("1,013 bar"), "check.comma_thousands"));
    CHECK(!says(reads("99,625 kPa"), "check.comma_thousands"));
    CHECK(says(reads("83.0", "1,609 m"), Field::height_above_sea_level, "check.comma_thousands"));
    CHECK(!says(reads("83.0", "1609 m"), "check.comma_thousands"));
}

TEST_CASE("700 to 790 hPa may be mmHg") {
    CHECK(says(reads("748 hPa"), Field::barometer, "check.pressure_mmhg"));
    CHECK(says(reads("748 mbar"), Field::barometer, "check.pressure_mmhg"));
    CHECK(!says(reads("798 hPa"), "check.pressure_mmhg"));
    CHECK(!says(reads("748 mmHg"), "check.pressure_mmhg"));
    // 2400 m up the standard atmosphere has 756 hPa.
    CHECK(!says(reads("748 hPa", "2400"), "check.pressure_mmhg"));
    CHECK(says(reads("748 hPa", "100"), Field::barometer, "check.pressure_mmhg"));
}

TEST_CASE("numbers that stand in books: read, or assumed?") {
    for (const char* book : {"1013 hPa", "1013.25 hPa", "760 mmHg", "760 Torr", "101.3", "101.325", "29.92 inHg",
                             "1 atm", "1.00 atm", "1013 mbar", "101325 Pa", "1.013 bar"}) {
        CAPTURE(book);
        CHECK(says(reads(book), Field::barometer, "check.pressure_assumed"));
    }
    for (const char* innocent : {"1014 hPa", "1013.1 hPa", "759 mmHg", "101.4", "29.91 inHg", "0.99 atm"}) {
        CAPTURE(innocent);
        CHECK(!says(reads(innocent), "check.pressure_assumed"));
    }
}

TEST_CASE("sea-level pressure in a high place") {
    const auto check = found(reads("102.1", "2000"), Field::barometer, "check.sea_level_in_high_place");
    // 795.01 hPa at 2000 m (US Standard Atmosphere 1976).
    CHECK(number_in(check, "usual") == doctest::Approx(79501.0).epsilon(1e-4));
    CHECK(!says(reads("81.5", "2000"), "check.sea_level_in_high_place"));
    // 898.76 hPa at 1000 m: 4 kPa more is as far as weather goes.
    CHECK(!says(reads("93.8", "1000"), "check.sea_level_in_high_place"));
    CHECK(says(reads("93.9", "1000"), "check.sea_level_in_high_place"));
    CHECK(!says(reads("102.1", "2000").with({{Field::pressure_kind, "reduced_to_sea_level"}}),
                "check.sea_level_in_high_place"));
}

TEST_CASE("a height in feet taken for metres") {
    const auto check = found(reads("83.4", "5280"), Field::height_above_sea_level, "check.height_in_feet");
    CHECK(number_in(check, "other") == doctest::Approx(1609.344));
    CHECK(!says(reads("83.4", "5280"), "check.sea_level_in_high_place"));
    CHECK(!says(reads("83.4", "5280 ft"), "check.height_in_feet"));
    CHECK(!says(reads("83.4", "1609"), "check.height_in_feet"));
}

TEST_CASE("heights where nobody has a bench are asked about") {
    CHECK(says(reads("99.62", "12000"), Field::height_above_sea_level, "check.height"));
    CHECK(says(reads("99.62", "-500"), Field::height_above_sea_level, "check.height"));
    for (const char* innocent : {"-420", "0", "150", "1000 ft"}) {
        CAPTURE(innocent);
        CHECK(reads("99.62", innocent).assessed().checks.empty());
    }
}

TEST_CASE("a weather report's pressure below every sea-level pressure ever measured") {
    const Sheet report = reads("83.4", "1609").with({{Field::pressure_kind, "altimeter_setting"}});
    CHECK(says(report, Field::barometer, "check.report_too_low"));
    CHECK(!says(report.with({{Field::barometer, "99.1"}}), "check.report_too_low"));
}

TEST_CASE("a vapour pressure of another temperature says of which") {
    Conventions own;
    own.vapour = Conventions::Vapour::own_value;
    const auto looked_up = [&own](const char* text) {
        return record_a().by(own).with({{Field::own_vapour_pressure, text}});
    };
    // 3169.75 Pa at 25 °C, 2339.2 Pa at 20 °C, 2488.1 Pa at 21 °C, 2645.2 Pa at 22 °C (IAPWS-IF97).
    const auto check = found(looked_up("3.170 kPa"), Field::own_vapour_pressure, "check.vapour_of_other_temperature");
    CHECK(number_in(check, "other") == doctest::Approx(25.0).epsilon(1e-4));
    CHECK(says(looked_up("17.5 mmHg"), "check.vapour_of_other_temperature"));
    for (const char* innocent : {"2.55 kPa", "18.7 mmHg", "19.8 mmHg", "2.488 kPa", "25.5 hPa", "3 kPa"}) {
        CAPTURE(innocent);
        CHECK(looked_up(innocent).assessed().checks.empty());
    }
    // Two figures stand for whatever rounds to them: 2.5 kPa for up to 2.550, which is the row of 21.4 °C (record A), and a
    // row is a degree.
    const auto at = [&](const char* celsius, const char* text) {
        return says(looked_up(text).with({{Field::temperature, celsius}}), "check.vapour_of_other_temperature");
    };
    CHECK_FALSE(at("22.39", "2.5 kPa"));
    CHECK(at("22.42", "2.5 kPa"));
    CHECK(at("22.39", "2.50 kPa"));
    // Only where it is used.
    CHECK(!says(record_a().with({{Field::own_vapour_pressure, "3.170"}}), "check.vapour_of_other_temperature"));
}

TEST_CASE("a vapour pressure in the wrong unit names the right one") {
    Conventions own;
    own.vapour = Conventions::Vapour::own_value;
    const auto unit = [&own](const char* text) {
        const Sheet sheet = record_a().by(own).with({{Field::own_vapour_pressure, text}, {Field::temperature, "22.0"}});
        return text_in(found(sheet, Field::own_vapour_pressure, "check.vapour_unit"), "units");
    };
    CHECK(unit("2.64 mmHg") == "kPa");
    CHECK(unit("19.8 kPa") == "mmHg, Torr");
    CHECK(unit("26.4 kPa") == "hPa, mbar");
    CHECK(unit("2.64 kPa") == "nothing");
    const Sheet nowhere = record_a().by(own).with({{Field::own_vapour_pressure, "0.05 kPa"}});
    const auto check = found(nowhere, Field::own_vapour_pressure, "check.vapour_impossible");
    CHECK(number_in(check, "usual") == doctest::Approx(2549.94).epsilon(1e-5));
}

TEST_CASE("vapour that is not subtracted is said") {
    Conventions moist;
    moist.vapour = Conventions::Vapour::not_subtracted;
    CHECK(says(record_a().by(moist), Field::barometer, "note.vapour_not_subtracted"));
    CHECK(!says(record_a(), "note.vapour_not_subtracted"));
}
