#include <doctest/doctest.h>

#include "tests/core/check_support.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

Sheet by_difference(const char* before, const char* after) {
    return record_a()
        .without(Field::mass_of_metal)
        .with({{Field::mass_from, "by_difference"}, {Field::mass_before, before}, {Field::mass_after, after}});
}
Sheet ribbon(const char* length, const char* per_metre) {
    return record_a()
        .without(Field::mass_of_metal)
        .with({{Field::mass_from, "ribbon"}, {Field::ribbon_length, length}, {Field::mass_per_metre, per_metre}});
}
Sheet weighs(const char* mass) { return record_a().with({{Field::mass_of_metal, mass}}); }

}  // namespace

TEST_CASE("a purity of 1 or less without a percent sign is asked about") {
    const auto check = found(record_a().with({{Field::purity, "0.98"}}), Field::purity, "check.purity_fraction");
    CHECK(number_in(check, "reading") == doctest::Approx(0.0098));
    CHECK(number_in(check, "other") == doctest::Approx(0.98));
    CHECK(says(record_a().with({{Field::purity, "1"}}), Field::purity, "check.purity_fraction"));
    for (const char* innocent : {"98", "99.8 %", "0.98 %", "100"}) {
        CHECK(!says(record_a().with({{Field::purity, innocent}}), "check.purity_fraction"));
    }
}

TEST_CASE("ribbon outside 0.5 to 2 g/m is asked about") {
    CHECK(says(ribbon("4.1", "10.5"), Field::mass_per_metre, "check.ribbon"));
    CHECK(text_in(found(ribbon("4.1", "0.0105"), Field::mass_per_metre, "check.ribbon_unit"), "units") == "g/cm");
    // 3.0 mm x 0.15 mm and 3.2 mm x 0.25 mm of 1.738 g/cm³ are 0.78 and 1.39 g/m.
    CHECK(ribbon("5.30", "0.782").assessed().checks.empty());
    CHECK(ribbon("3.00", "1.391").assessed().checks.empty());
    CHECK(ribbon("4.10", "0.01005 g/cm").assessed().checks.empty());
    CHECK(!says(ribbon("3.0", "5.2").with({{Field::metal, "zinc"}}), "check.ribbon"));
    CHECK(says(ribbon("-4.1", "1.005"), Field::ribbon_length, "check.below_zero"));
}

TEST_CASE("a mass after that is larger than before is asked about") {
    CHECK(says(by_difference("1.2003", "1.2415"), Field::mass_after, "check.after_larger"));
    CHECK(by_difference("1.2415", "1.2003").assessed().checks.empty());
}

TEST_CASE("a mass of one figure says what it costs") {
    // 0.005/0.03 = 16.7 %; 0.0005/0.012 = 4.2 %.
    const auto one = found(weighs("0.03"), Field::mass_of_metal, "check.few_digits");
    CHECK(number_in(one, "share") == doctest::Approx(1.0 / 6));
    CHECK(one->weight == Check::Weight::doubt);
    const auto two = found(weighs("0.012"), Field::mass_of_metal, "check.few_digits");
    CHECK(number_in(two, "share") == doctest::Approx(1.0 / 24));
    CHECK(two->weight == Check::Weight::note);
    CHECK(says(weighs("40 mg"), "check.few_digits") == false);
    for (const char* innocent : {"0.030", "0.041", "0.0412", "41.2 mg"}) {
        CHECK(weighs(innocent).assessed().checks.empty());
    }
}

TEST_CASE("a difference of one figure says what it costs, however many figures both masses have") {
    const auto check = found(by_difference("1.24", "1.20"), Field::mass_after, "check.few_digits_between");
    CHECK(number_in(check, "share") == doctest::Approx(1.0 / 8));
    CHECK(number_in(check, "reading") == doctest::Approx(4e-5));
    CHECK(!says(by_difference("1.241", "1.200"), "check.few_digits_between"));
}

TEST_CASE("a length of one figure says what it costs") {
    CHECK(number_in(found(ribbon("4", "1.005"), Field::ribbon_length, "check.few_digits"), "share") ==
          doctest::Approx(1.0 / 8));
    CHECK(!says(ribbon("4.0", "1.005"), "check.few_digits"));
}

TEST_CASE("grams taken for milligrams do not fit the tube, and the other unit is named") {
    const auto grams = found(weighs("41.2"), Field::mass_of_metal, "check.mass_unit");
    REQUIRE(grams);
    // n R T/p with the dry gas pressure of record A.
    CHECK(number_in(grams, "volume") == doctest::Approx(41.2 / 24.305 * 8.314462618 * 294.55 / 95974.0));
    CHECK(number_in(grams, "other") == doctest::Approx(4.12e-5));
    CHECK(place(*grams, "other")->unit == UnitId::milligram);
    CHECK(place(*found(weighs("0.0412 mg"), Field::mass_of_metal, "check.mass_unit"), "other")->unit == UnitId::gram);
    CHECK(weighs("41.2 mg").assessed().checks.empty());
    // Nothing is known of the room: 25 °C and 100 kPa.
    const Sheet bare = weighs("41.2").without(Field::temperature).without(Field::barometer);
    CHECK(number_in(found(bare, Field::mass_of_metal, "check.mass_unit"), "volume") ==
          doctest::Approx(41.2 / 24.305 * 8.314462618 * 298.15 / 1e5));
}

TEST_CASE("more metal than the tube can hold the gas of, and hardly any, are asked about") {
    // 1 mg of magnesium gives 1.05 mL here: 52.35 mL are the gas of 49.9 mg.
    CHECK(says(weighs("0.0501"), Field::mass_of_metal, "check.too_much_metal"));
    CHECK(!says(weighs("0.0495"), "check.too_much_metal"));
    CHECK(says(weighs("0.00205"), Field::mass_of_metal, "check.too_little_metal"));
    CHECK(!says(weighs("0.00255"), "check.too_little_metal"));
    CHECK(says(ribbon("41.0", "1.005"), Field::ribbon_length, "check.too_much_metal"));
    // The acid sets the gas: 3 mL of 0.5 mol/L give 18 mL whatever the metal.
    CHECK(!says(weighs("0.0601").with({{Field::acid_volume, "3.0"}, {Field::acid_concentration, "0.50"}}),
                "check.too_much_metal"));
}

TEST_CASE("a slip of the barometer or the thermometer is not laid on the metal") {
    for (const char* slip : {"5", "748", "9.962", "1,013 hPa"}) {
        const Sheet sheet = record_a().with({{Field::barometer, slip}});
        CHECK(!says(sheet, "check.mass_unit"));
        CHECK(!says(sheet, "check.too_much_metal"));
    }
    CHECK(!says(record_a().with({{Field::temperature, "72"}}), "check.too_much_metal"));
}

TEST_CASE("calcium and lithium are a teacher's, and never with sulfuric acid") {
    const auto with = [](const char* metal, const char* acid) {
        return record_a().with({{Field::metal, metal}, {Field::acid, acid}});
    };
    for (const char* metal : {"calcium", "lithium"}) {
        CHECK(says(with(metal, "hydrochloric"), Field::metal, "note.demonstration_metal"));
    }
    CHECK(says(with("calcium", "sulfuric"), Field::acid, "check.calcium_sulfuric"));
    CHECK(says(with("lithium", "sulfuric"), Field::acid, "check.lithium_sulfuric"));
    CHECK(!says(with("calcium", "hydrochloric"), "check.calcium_sulfuric"));
    CHECK(!says(with("lithium", "hydrochloric"), "check.lithium_sulfuric"));
    CHECK(!says(with("magnesium", "sulfuric"), "note.demonstration_metal"));
    // Marble is no demonstration, but has the same coat; of sodium the sulfate dissolves.
    CHECK(says(with("calcium_carbonate", "sulfuric"), Field::acid, "check.carbonate_sulfuric"));
    CHECK(!says(with("calcium_carbonate", "sulfuric"), "check.calcium_sulfuric"));
    CHECK(!says(with("calcium_carbonate", "hydrochloric"), "check.carbonate_sulfuric"));
    CHECK(!says(with("sodium_hydrogencarbonate", "sulfuric"), "check.carbonate_sulfuric"));
}

TEST_CASE("aluminium and iron are slow, magnesium and zinc are not") {
    for (const char* metal : {"aluminium", "iron"}) {
        CHECK(says(record_a().with({{Field::metal, metal}}), Field::metal, "note.slow_metal"));
    }
    for (const char* metal : {"magnesium", "zinc"}) {
        CHECK(!says(record_a().with({{Field::metal, metal}}), "note.slow_metal"));
    }
}
