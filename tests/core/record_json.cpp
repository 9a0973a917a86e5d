#include <doctest/doctest.h>

#include <random>
#include <string>

#include "core/matter/reaction.hpp"
#include "core/record/json.hpp"
#include "core/record/stored.hpp"
#include "tests/core/record_samples.hpp"

using namespace overwater;

namespace {

Record loaded(std::string_view text) {
    LoadResult result = record_from_json(text);
    INFO(text);
    INFO(result.problem.key);
    REQUIRE(result.record.has_value());
    return *std::move(result.record);
}

bool holds(const std::string& text, std::string_view part) { return text.find(part) != std::string::npos; }

/// What the record in `text` is when written again.
std::string again(std::string_view text) { return record_to_json(loaded(text), JsonLayout::compact); }

}  // namespace

TEST_CASE("a record comes back from its JSON as it was") {
    std::mt19937_64 generator(20260131);
    for (int i = 0; i < 100; ++i) {
        const Record record = random_record(generator);
        for (const JsonLayout layout : {JsonLayout::compact, JsonLayout::indented}) {
            const std::string text = record_to_json(record, layout);
            const Record back = loaded(text);
            CHECK(back == record);
            CHECK(record_to_json(back, layout) == text);
        }
        const auto stored = stored_to(stored_from(record, 7 + i, "2026-01-31T09:30:00Z", "0.1.0"));
        REQUIRE(stored.has_value());
        CHECK(stored->record == record);
        CHECK(stored->revision == 7 + i);
        CHECK(stored->saved == "2026-01-31T09:30:00Z");
        CHECK(stored->app == "0.1.0");
        CHECK_FALSE(stored->newer);
    }
}

TEST_CASE("what is missing has the value that record.md names") {
    CHECK(loaded(R"({"overwater":"record","version":1})") == Record{});
    CHECK(loaded(R"({"overwater":"record","version":1,"runs":[]})") == Record{});
    CHECK(loaded("\xEF\xBB\xBF" R"({"overwater":"record","version":1})") == Record{});
    CHECK(loaded(R"({"overwater":"record","version":1.0,"shared":{"barometer":{}}})") == Record{});
    const Change shared = loaded(R"({"overwater":"record","version":1,"history":[{}]})").history.at(0);
    CHECK(shared.run == -1);
}

TEST_CASE("unknown members survive at every level") {
    const std::string text = again(R"({"overwater":"record","version":1,"later":{"deep":[1,{"a":null}]},
        "conventions":{"later":[true]},"shared":{"later_field":{"text":"1","unit":"furlong"}},
        "runs":[{"later":0.5,"entries":{"barometer":{"text":"1","later":"x"},"other_field":{"y":[]}},
                 "answers":{"gas_volume":{"text":"2","later":-3}}}],
        "answers":{"mean":{"later":{}}},"history":[{"later":"z"}]})");
    for (const std::string_view part :
         {R"("later":{"deep":[1,{"a":null}]})", R"("later":[true])", R"("later_field":{"text":"1","unit":"furlong"})",
          R"("later":0.5)", R"("barometer":{"text":"1","later":"x"})", R"("other_field":{"y":[]})",
          R"("gas_volume":{"text":"2","later":-3})", R"("mean":{"text":"","later":{}})", R"("later":"z")"}) {
        INFO(part);
        CHECK(holds(text, part));
    }
}

TEST_CASE("an unknown choice of the conventions falls back, survives, and gives way to a choice made here") {
    const char* text = R"({"overwater":"record","version":1,"conventions":
        {"standard":"15C_1atm","vapour":"from_space","pressure_unit":"furlong","rounding":"half_to_even"}})";
    Record record = loaded(text);
    CHECK(record.conventions.standard == StandardConditions::zero_celsius_100_kilopascal);
    CHECK(record.conventions.vapour == Conventions::Vapour::formula);
    CHECK(record.conventions.pressure_unit == UnitId::none);
    CHECK(record.conventions.rounding == Rounding::half_to_even);
    const std::string kept = record_to_json(record, JsonLayout::compact);
    CHECK(holds(kept, R"("standard":"15C_1atm")"));
    CHECK(holds(kept, R"("vapour":"from_space")"));
    CHECK(holds(kept, R"("pressure_unit":"furlong")"));
    record.conventions.vapour = Conventions::Vapour::table;
    CHECK(holds(record_to_json(record, JsonLayout::compact), R"("vapour":"table")"));
}

TEST_CASE("a choice that is not known counts as not chosen, and its text survives") {
    const Record record =
        loaded(R"({"overwater":"record","version":1,"shared":{"metal":{"text":"unobtainium"}}})");
    CHECK(record.shared.at(Field::metal).text == "unobtainium");
    CHECK_FALSE(substance_by_key(record.shared.at(Field::metal).text).has_value());
}

TEST_CASE("a newer record is opened to be read") {
    const LoadResult result = record_from_json(
        R"({"overwater":"record","version":2,"name":{"de":"neu"},"notes":"n","shared":{"barometer":{"text":"3",
            "unit":"furlong"},"temperature":{"text":"21.4","unit":"degC"},"end_space":7},"runs":[5]})");
    CHECK(result.newer);
    CHECK(result.problem.key == "import.newer");
    REQUIRE(result.record.has_value());
    CHECK(result.record->notes == "n");
    CHECK(result.record->name.empty());
    // A number in a unit that is not known must not pass for one in the usual unit.
    CHECK(result.record->shared.at(Field::barometer).blank());
    CHECK(result.record->shared.at(Field::temperature).text == "21.4");
    CHECK(holds(result.record->shared.kept(), R"("unit":"furlong")"));
    CHECK(holds(result.record->kept, R"("name":{"de":"neu"})"));
    CHECK(result.record->runs.size() == 1);
    CHECK(stored_to(R"({"schema":2,"revision":1,"data":{"overwater":"record","version":2}})")->newer);
}

TEST_CASE("of a member given twice the last counts") {
    CHECK(loaded(R"({"overwater":"record","version":1,"name":"a","name":"b"})").name == "b");
    CHECK(again(R"({"overwater":"record","version":1,"x":1,"x":2})").find(R"("x":2)") != std::string::npos);
}

TEST_CASE("texts of all kinds survive, and bytes that are no UTF-8 do not spoil a record") {
    Record record;
    record.name = std::string("\0\x01\t\n\"\\/\x7F", 8) + "\xE2\x88\x92\xF0\x9F\xA7\xAA";
    CHECK(loaded(record_to_json(record)) == record);
    record.name = "a\xFF" "b";
    CHECK(loaded(record_to_json(record)).name == "a\xEF\xBF\xBD" "b");
}

#ifndef __EMSCRIPTEN__  // there is no file system under Node
TEST_CASE("the record of version 1 that never changes is written as it was read") {
    const std::string fixture = file_text("tests/core/fixtures/record_v1.json");
    const Record record = loaded(fixture);
    CHECK(record_to_json(record) == fixture);
    CHECK(record.runs.size() == 2);
    CHECK(record.shared.at(Field::temperature).repeats.size() == 2);
    CHECK(record.shared.at(Field::barometer).unit == UnitId::inch_of_mercury);
    CHECK(record.shared.at(Field::end_space).shape == "triangular");
    CHECK(record.conventions.vapour == Conventions::Vapour::older_table);
    CHECK(record.conventions.own_celsius == 18.5);
    CHECK(record.history.at(0).run == 1);
    CHECK(record.history.at(1).run == -1);
    CHECK(record.runs[0].answers.at(1).unit == UnitId::mole);
}

TEST_CASE("the demo record is written as it was read, and is marked as invented") {
    const std::string demo = file_text("assets/demo/record_a.json");
    CHECK(record_to_json(loaded(demo)) == demo);
    CHECK(loaded(demo).invented);
}
#endif
