// What is put down about the doubt of a reading: half-widths, instruments, further readings.

#include <doctest/doctest.h>

#include "core/bench/readings.hpp"
#include "core/result/doubt.hpp"
#include "tests/core/check_support.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

Entry typed(const char* text, const char* plus_minus = "", std::vector<std::string> repeats = {}) {
    Entry entry;
    entry.text = text;
    entry.plus_minus = plus_minus;
    entry.repeats = std::move(repeats);
    return entry;
}

double half_width(Field field, const Entry& entry) { return read_entry(field, entry).doubt.half_width.value_or(-1); }

}  // namespace

TEST_CASE("a half-width is read from its own box before one typed behind the reading") {
    CHECK(half_width(Field::scale_reading, typed("9.15")) == -1);
    CHECK(half_width(Field::scale_reading, typed("9.15 ± 0.2")) == doctest::Approx(0.2e-6));
    CHECK(half_width(Field::scale_reading, typed("9.15 ± 0.2", "0.05")) == doctest::Approx(0.05e-6));
    for (const char* text : {"0.05", "± 0.05", "+/- 0.05", "+-0,05", " 0.05 mL", "50 µL"}) {
        CAPTURE(text);
        CHECK(half_width(Field::scale_reading, typed("9.15", text)) == doctest::Approx(0.05e-6));
    }
}

TEST_CASE("a half-width of a temperature is a difference: 0.9 °F is 0.5 °C (NIST SP 811, appendix B.8: 1 °F is 5/9 °C)") {
    CHECK(half_width(Field::temperature, typed("21.4", "0.9 °F")) == doctest::Approx(0.5));
    CHECK(half_width(Field::temperature, typed("70.5 °F", "0.9")) == doctest::Approx(0.5));
    CHECK(half_width(Field::temperature, typed("70.5 °F ± 0.9")) == doctest::Approx(0.5));
    CHECK(half_width(Field::temperature, typed("294.6 K", "0.5")) == doctest::Approx(0.5));
}

TEST_CASE("percent is of the reading, but for a purity, which is percent itself") {
    // 5 % of 3.0 mol/L is 0.15 mol/L: 150 mol/m³.
    CHECK(half_width(Field::acid_concentration, typed("3.0", "5 %")) == doctest::Approx(150.0));
    CHECK(half_width(Field::acid_concentration, typed("3.0 ± 5 %")) == doctest::Approx(150.0));
    CHECK(half_width(Field::purity, typed("98", "0.5")) == doctest::Approx(0.005));
    CHECK(half_width(Field::purity, typed("98", "0.5 %")) == doctest::Approx(0.005));
}

TEST_CASE("what is no half-width is none, and says why") {
    struct Row {
        const char* text;
        Problem problem;
    };
    for (const Row& row : {Row{"abc", Problem::no_digits}, Row{"0.05 kPa", Problem::wrong_kind_of_unit},
                           Row{"0.05 blobs", Problem::unknown_unit}, Row{"0.0.5", Problem::two_decimal_signs}}) {
        CAPTURE(row.text);
        const Reading reading = read_entry(Field::scale_reading, typed("9.15", row.text));
        CHECK(!reading.doubt.half_width);
        CHECK(reading.doubt.problem == row.problem);
        CHECK(reading.there);
    }
    for (const char* text : {"0", "0.00", "-0.05"}) {
        const Reading reading = read_entry(Field::scale_reading, typed("9.15", text));
        CHECK(!reading.doubt.half_width);
        CHECK(reading.doubt.problem != Problem::none);
    }
}

TEST_CASE("of readings taken several times the mean counts, with s over the root of n") {
    // GUM 4.4.3 and figure 2 have twenty temperatures; by hand here: 9.10, 9.15, 9.20 have the mean 9.15, s = 0.05 and
    // s/sqrt 3 = 0.0288675.
    const Reading reading = read_entry(Field::scale_reading, typed("9.10", "", {"9.15", "9.20"}));
    CHECK(reading.base == doctest::Approx(9.15e-6));
    CHECK(reading.doubt.count == 3);
    CHECK(reading.doubt.of_mean == doctest::Approx(0.0288675e-6));
    CHECK(reading.doubt.misread == 0);
    // 9.10 is 0.075 from the mean of the other two; so is 9.20, and the later is the one asked about.
    CHECK(reading.doubt.odd == doctest::Approx(9.20e-6));
    CHECK(reading.doubt.odd_by == doctest::Approx(0.075e-6));
}

TEST_CASE("further readings have units of their own, blanks between them, and texts that are no numbers") {
    const Reading reading = read_entry(Field::temperature, typed("21.4", "", {"", "70.52 °F", "x", "294.55 K"}));
    CHECK(reading.doubt.count == 3);
    CHECK(reading.doubt.misread == 1);
    CHECK(reading.base == doctest::Approx(21.4));
}

TEST_CASE("GUM 4.4.3: twenty temperatures have the mean 100.145 °C and s = 1.489 °C, u = 0.333 °C") {
    // JCGM 100:2008, table 1, as thermometer readings of one thing.
    const Reading reading = read_entry(
        Field::outdoor_temperature,
        typed("96.90", "", {"98.18", "98.25", "98.61", "99.03", "99.49", "99.56", "99.74", "99.89", "100.07",
                            "100.33", "100.42", "100.68", "100.95", "101.11", "101.20", "101.57", "101.84", "102.36",
                            "102.72"}));
    CHECK(reading.doubt.count == 20);
    CHECK(reading.base == doctest::Approx(100.145).epsilon(1e-6));
    CHECK(reading.doubt.of_mean == doctest::Approx(0.333).epsilon(1e-3));
}

TEST_CASE("the instrument chosen for the scale holds for the start reading too") {
    const Entry start = typed("0.50");
    Entry scale = typed("9.15");
    scale.instrument = "burette_50_a";
    const Entry blank;
    const Readings readings = read_all([&](Field field) -> const Entry& {
        return field == Field::start_reading ? start : field == Field::scale_reading ? scale : blank;
    });
    REQUIRE(readings[Field::start_reading].doubt.instrument != nullptr);
    CHECK(readings[Field::start_reading].doubt.instrument->key == "burette_50_a");
}

TEST_CASE("water weighed for the end space keeps its doubt in volume") {
    // 0.02 g of water at 21.4 °C and 997.9 kg/m³ (CIPM density, record A of method.md) are 0.02004 mL.
    const auto doubt_in_ml = [](const char* text) {
        const Doubts doubts = doubts_of(record_a().with({{Field::end_space, text}}).assessed());
        const Doubt* doubt = doubt_of_reading(doubts, Field::end_space);
        return doubt == nullptr ? 0.0 : doubt->high * 1e6;
    };
    CHECK(doubt_in_ml("2.34 g ± 0.02 g") == doctest::Approx(0.02 / 0.9979).epsilon(1e-4));
    CHECK(doubt_in_ml("2.34 g") == doctest::Approx(0.10));
    CHECK(doubt_in_ml("2.35") == doctest::Approx(0.10));
    // One unit of the last digit is more than any instrument: 1 g.
    CHECK(doubt_in_ml("2 g") == doctest::Approx(1 / 0.9979).epsilon(1e-4));
}

TEST_CASE("a half-width is shown with one digit, or two where one would change it") {
    struct Row {
        double half_width;
        int decimals;
    };
    for (const Row& row : {Row{0.05, 2}, Row{0.15, 2}, Row{0.0001, 4}, Row{1, 0}, Row{0.5, 1}, Row{100, 0},
                           Row{0.2667, 2}, Row{0.75, 2}, Row{0.9, 1}}) {
        CAPTURE(row.half_width);
        CHECK(decimals_of_half_width(row.half_width) == row.decimals);
    }
}
