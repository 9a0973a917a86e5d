// What the fuzz targets found (tests/fuzz), each said once by name.

#include <doctest/doctest.h>

#include "core/bench/readings.hpp"
#include "core/lesson/text_table.hpp"
#include "core/record/json.hpp"
#include "tests/core/check_support.hpp"

using namespace overwater;

namespace {

Entry typed(const char* text, const char* plus_minus = "", std::vector<std::string> repeats = {}) {
    Entry entry;
    entry.text = text;
    entry.plus_minus = plus_minus;
    entry.repeats = std::move(repeats);
    return entry;
}

using Rows = std::vector<std::vector<std::string>>;

}  // namespace

TEST_CASE("a number that its unit carries beyond every reading is too large, not infinite") {
    const Reading reading = read_entry(Field::barometer, typed("1e308 atm"));
    CHECK_FALSE(reading.there);
    CHECK(reading.number.problem == Problem::too_large);
    CHECK(reading.base == 0);
    // Nor does it take part in a mean.
    const Reading several = read_entry(Field::scale_reading, typed("42.6", "", {"1e308", "42.8"}));
    CHECK(several.base == doctest::Approx(42.7e-6));
    CHECK(several.doubt.count == 2);
    CHECK(several.doubt.misread == 1);
    CHECK(read_entry(Field::barometer, typed("1 atm", "1e308 atm")).doubt.problem == Problem::too_large);
}

TEST_CASE("a share of a reading of zero is no half-width") {
    const Reading reading = read_entry(Field::start_reading, typed("0", "5 %"));
    CHECK_FALSE(reading.doubt.half_width.has_value());
    CHECK(reading.doubt.problem == Problem::too_small);
}

TEST_CASE("an inch sign within a name hides no separator") {
    const TextTable table = read_table("length (2\" tube);volume\n4;43,2\n");
    CHECK(table.separator == ';');
    CHECK(table.rows == Rows{{"length (2\" tube)", "volume"}, {"4", "43,2"}});
}

TEST_CASE("a separator within a cell splits no table of ours") {
    for (const Rows& rows : {Rows{{"a;b", "c\td"}, {"1", "2"}}, Rows{{"a"}, {"1,2;3"}}, Rows{{"a;b,c"}}}) {
        for (const char separator : {',', ';', '\t'}) CHECK(read_table(delimited(rows, separator)).rows == rows);
    }
}

TEST_CASE("a record that was taken can be written and read again, whatever it holds besides") {
    std::string members;
    for (int i = 0; i < 250; ++i) members += ",\"later_" + std::to_string(i) + "\":0";
    const LoadResult load = record_from_json("{\"overwater\":\"record\",\"version\":1" + members + "}");
    CHECK(load.record.has_value() != (load.problem.key == "import.too_many_members"));
    if (load.record) CHECK(record_from_json(record_to_json(*load.record)).record == load.record);
}
