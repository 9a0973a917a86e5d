#include <doctest/doctest.h>

#include <cmath>
#include <iterator>
#include <random>

#include "tests/core/check_support.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

Sheet weighs(const char* mass) { return record_a().with({{Field::mass_of_metal, mass}}); }

const char* const causes[] = {"check.other_end",         "check.other_metal",      "check.metal_half",
                              "check.metal_double",      "check.acid_half",        "check.acid_double",
                              "check.slip_of_ten_above", "check.slip_of_ten_below"};

bool names_a_cause(const Sheet& sheet) {
    for (const char* key : causes) {
        if (says(sheet, key)) return true;
    }
    return false;
}

}  // namespace

TEST_CASE("a tube read from the wrong end is found by its result") {
    // The measuring tube shows 43.2 mL of gas; as an upside-down burette it would hold 9.15 mL: 4.8 L/mol.
    CHECK(says(record_a().with({{Field::scale_reading, "43.20"}}), Field::number_at_closed_end, "check.other_end"));
    // The burette of record A taken for a measuring tube: 9.15 mL.
    CHECK(
        says(record_a().with({{Field::number_at_closed_end, "zero"}}), Field::number_at_closed_end, "check.other_end"));
    // Half the gas: 21.6 mL on either scale.
    CHECK(
        !says(record_a().with({{Field::scale_reading, "43.20"}, {Field::mass_of_metal, "0.0087"}}), "check.other_end"));
    // As collected and without a room the tube is found just so.
    Conventions none;
    none.conversion = Conventions::Conversion::none;
    const Sheet bare = record_a().by(none).without(Field::temperature).without(Field::barometer);
    CHECK(!names_a_cause(bare));
    CHECK(says(bare.with({{Field::scale_reading, "43.20"}}), Field::number_at_closed_end, "check.other_end"));
}

TEST_CASE("another metal that would fit is named") {
    // 0.1108 g of zinc (65.38 g/mol) give the gas of record A; as magnesium they would be 2.69 times too much.
    const Sheet zinc = weighs("0.1108").with({{Field::tube_capacity, "100"}, {Field::scale_reading, "59.15"}});
    CHECK(text_in(found(zinc, Field::metal, "check.other_metal"), "other") == "Zn");
    CHECK(!names_a_cause(zinc.with({{Field::metal, "zinc"}})));
}

TEST_CASE("half and double point to the metal, or to the acid where it sets the gas") {
    CHECK(says(weighs("0.0206"), Field::metal, "check.metal_double"));
    const Sheet wide = record_a().with({{Field::tube_capacity, "100"}, {Field::scale_reading, "59.15"}});
    CHECK(says(wide.with({{Field::mass_of_metal, "0.0824"}}), Field::metal, "check.metal_half"));
    // 35 L/mol at the standard conditions is the first that is far: 1.54 times.
    CHECK(!names_a_cause(weighs("0.0280")));
    const Sheet acid = record_a().with({{Field::acid_concentration, "0.17"}});
    CHECK(says(acid, Field::acid, "check.acid_double"));
    CHECK(!names_a_cause(acid.with({{Field::acid, "sulfuric"}})));
}

TEST_CASE("a slip of ten points to the mass") {
    const auto ten = found(weighs("0.00412"), Field::mass_of_metal, "check.slip_of_ten_above");
    REQUIRE(ten);
    CHECK(place(*ten, "times")->count == 10);
    // A factor that no slip explains stays without a sentence.
    CHECK(!names_a_cause(weighs("0.0140")));
    const Sheet wide = record_a().with({{Field::tube_capacity, "500"}, {Field::scale_reading, "459.15"}});
    CHECK(says(wide.with({{Field::mass_of_metal, "0.412"}}), Field::mass_of_metal, "check.slip_of_ten_below"));
}

TEST_CASE("where a reading's unit is doubted already no second cause is named") {
    CHECK(says(weighs("41.2"), "check.mass_unit"));
    CHECK(!names_a_cause(weighs("41.2")));
    CHECK(!names_a_cause(record_a().with({{Field::purity, "1"}})));
    // Vapour of 84.6 kPa at 95 °C leaves a tenth of the gas.
    CHECK(!names_a_cause(record_a().with({{Field::temperature, "95"}})));
}

TEST_CASE("no text whatever makes a sense check refuse, or puts a number into its sentence that is none") {
    std::mt19937_64 generator(4412);
    const char* const texts[] = {"0",   "-3",    "1",       "0.03",   "9.15",   "1e9",   "1e-9", "50",   "1,013",
                                 "294", "760",   "1013.25", "99.62",  "2.64",   "1e300", "5 g",  "12 K", "748 hPa",
                                 "0.5", "30 in", "70 °F",   "40 g/m", "100000", "-40",   "x",    "",     "18.4"};
    const auto one_of = [&generator](std::size_t n) { return static_cast<std::size_t>(generator() % n); };
    for (int round = 0; round < 4000; ++round) {
        Sheet sheet = record_a();
        for (int change = 0; change < 6; ++change) {
            const auto field = static_cast<Field>(one_of(field_count));
            const auto& choices = choices_of(field);
            const std::string choice(choices.empty() ? std::string_view() : choices[one_of(choices.size())]);
            sheet = sheet.with({{field, is_choice(field) ? choice.c_str() : texts[one_of(std::size(texts))]}});
        }
        Conventions conventions;
        conventions.vapour = static_cast<Conventions::Vapour>(one_of(5));
        conventions.conversion = static_cast<Conventions::Conversion>(one_of(2));
        for (const Check& check : sheet.by(conventions).assessed().checks) {
            CAPTURE(check.message.key);
            const bool sense = check.message.key.substr(0, 6) == "check." || check.message.key.substr(0, 5) == "note.";
            if (sense) REQUIRE(check.weight != Check::Weight::refusal);
            for (const Argument& argument : check.message.arguments) REQUIRE(std::isfinite(argument.base));
        }
    }
}
