#include <doctest/doctest.h>

#include <random>
#include <string>

#include "core/record/json.hpp"
#include "core/record/outcome_json.hpp"
#include "core/record/stored.hpp"
#include "tests/core/record_samples.hpp"

using namespace overwater;

namespace {

std::string record_with(const std::string& members) {
    return R"({"overwater":"record","version":1,)" + members + "}";
}

/// The key of the complaint about `text`, which must give no record.
std::string_view key_of(std::string_view text) {
    const LoadResult result = record_from_json(text);
    CHECK_FALSE(result.record.has_value());
    return result.problem.key;
}

std::string argument(const LoadResult& result, std::string_view name) {
    for (const Argument& one : result.problem.arguments) {
        if (one.name == name) return one.text;
    }
    return {};
}

/// Whatever it is, it must be loaded or refused, and what was loaded must be usable.
void survive(std::string_view text) {
    const LoadResult result = record_from_json(text);
    CHECK(result.record.has_value() == (result.problem.key.empty() || result.newer));
    stored_to(text);
    if (!result.record) return;
    CHECK(result.record->runs.size() >= 1);
    CHECK(result.record->runs.size() <= most_runs);
    outcome_to_json(*result.record, assess_runs(*result.record), JsonLayout::compact);
    if (result.newer) return;
    const std::string again = record_to_json(*result.record, JsonLayout::compact);
    INFO(text);
    INFO(again);
    CHECK(record_from_json(again).record == result.record);
}

std::string repeated(std::string_view piece, std::size_t times) {
    std::string out;
    for (std::size_t i = 0; i < times; ++i) out += piece;
    return out;
}

}  // namespace

TEST_CASE("what is no record is refused with its reason") {
    CHECK(key_of("") == "import.not_json");
    CHECK(key_of("\xEF\xBB\xBF") == "import.not_json");
    CHECK(key_of("mass,volume\n1,2\n") == "import.not_json");
    CHECK(key_of("{}") == "import.not_a_record");
    CHECK(key_of("[]") == "import.not_a_record");
    CHECK(key_of("null") == "import.not_a_record");
    CHECK(key_of(R"({"overwater":"record"})") == "import.not_a_record");
    CHECK(key_of(R"({"overwater":"outcome","version":1})") == "import.not_a_record");
    CHECK(key_of(R"({"overwater":"record","version":0})") == "import.not_a_record");
    CHECK(key_of(R"({"overwater":"record","version":1.5})") == "import.not_a_record");
    CHECK(key_of(R"({"overwater":"record","version":"1"})") == "import.not_a_record");
    CHECK(key_of(R"({"overwater":"record","version":1} x)") == "import.not_json");
    CHECK(key_of(R"({"overwater":"record","version":1,})") == "import.not_json");
    CHECK(key_of(record_with("\"name\":\"\\ud800\"")) == "import.not_json");
    CHECK(key_of(record_with("\"name\":\"a\nb\"")) == "import.not_json");
    CHECK(key_of(record_with("\"name\":\"\xFF\"")) == "import.not_utf8");
    CHECK(key_of(record_with("\"name\":\"\xC0\x80\"")) == "import.not_utf8");
    CHECK(key_of("\xFF\xFE{\0}\0") == "import.not_utf8");
}

TEST_CASE("numbers that are none are refused") {
    for (const char* number : {"NaN", "Infinity", "-Infinity", "1e999", "-1e999", "0x10", "01", ".5", "1.", "+1"}) {
        INFO(number);
        CHECK(key_of(record_with("\"conventions\":{\"own_celsius\":" + std::string{number} + "}")) == "import.not_json");
        CHECK(key_of(record_with("\"later\":" + std::string{number})) == "import.not_json");
    }
    CHECK(key_of(record_with(R"("conventions":{"own_pascal":0})")) == "import.out_of_range");
    CHECK(key_of(record_with(R"("conventions":{"own_celsius":-273.15})")) == "import.out_of_range");
    CHECK(key_of(record_with(R"("history":[{"run":6}])")) == "import.out_of_range");
    CHECK(key_of(record_with(R"("history":[{"run":0.5}])")) == "import.out_of_range");
    CHECK(key_of(record_with(R"("history":[{"run":1e300}])")) == "import.out_of_range");
    CHECK(record_from_json(R"({"overwater":"record","version":1e300})").newer);
    survive(record_with(R"("conventions":{"standard":"own","own_celsius":1e308,"own_pascal":1e-308})"));
}

TEST_CASE("a member of the wrong type is refused by its path") {
    struct Row {
        const char* before;
        const char* after;
        const char* path;
    };
    const Row rows[]{
        {R"("id":)", "", "id"},
        {R"("name":)", "", "name"},
        {R"("invented":)", "", "invented"},
        {R"("conventions":)", "", "conventions"},
        {R"("conventions":{"standard":)", "}", "conventions.standard"},
        {R"("conventions":{"own_pascal":)", "}", "conventions.own_pascal"},
        {R"("conventions":{"pressure_unit":)", "}", "conventions.pressure_unit"},
        {R"("shared":)", "", "shared"},
        {R"("shared":{"barometer":)", "}", "shared.barometer"},
        {R"("runs":)", "", "runs"},
        {R"("runs":[{},)", "]", "runs[1]"},
        {R"("runs":[{"entries":{"barometer":{"text":)", "}}}]", "runs[0].entries.barometer.text"},
        {R"("runs":[{"entries":{"barometer":{"unit":)", "}}}]", "runs[0].entries.barometer.unit"},
        {R"("runs":[{"entries":{"metal":{"text":)", "}}}]", "runs[0].entries.metal.text"},
        {R"("runs":[{"entries":{"barometer":{"repeats":)", "}}}]", "runs[0].entries.barometer.repeats"},
        {R"("runs":[{"entries":{"barometer":{"repeats":["1",)", "]}}}]", "runs[0].entries.barometer.repeats"},
        {R"("runs":[{"answers":)", "}]", "runs[0].answers"},
        {R"("runs":[{"answers":{"gas_volume":)", "}}]", "runs[0].answers.gas_volume"},
        {R"("answers":{"mean":{"text":)", "}}", "answers.mean.text"},
        {R"("history":)", "", "history"},
        {R"("history":[)", "]", "history[0]"},
        {R"("history":[{"run":)", "}]", "history[0].run"},
        {R"("practice_code":)", "", "practice_code"},
    };
    for (const Row& row : rows) {
        // One value of each type of JSON; those that are right are loaded.
        int refused = 0;
        for (const char* value : {"null", "true", "7", "0.5", "\"\"", "[]", "{}"}) {
            const std::string text = record_with(row.before + std::string{value} + row.after);
            INFO(text);
            survive(text);
            const LoadResult result = record_from_json(text);
            if (result.problem.key != "import.wrong_type") continue;
            ++refused;
            CHECK(argument(result, "member") == row.path);
        }
        INFO(row.path);
        CHECK(refused >= 5);
    }
}

TEST_CASE("a unit that does not belong to its field is refused") {
    const LoadResult result = record_from_json(record_with(R"("shared":{"temperature":{"text":"21","unit":"mL"}})"));
    CHECK(result.problem.key == "import.unknown_unit");
    CHECK(argument(result, "member") == "shared.temperature.unit");
    CHECK(argument(result, "unit") == "mL");
    CHECK(key_of(record_with(R"("shared":{"temperature":{"unit":"°C"}})")) == "import.unknown_unit");
    CHECK(key_of(record_with(R"("shared":{"metal":{"unit":"g"}})")) == "import.unknown_unit");
    CHECK(key_of(record_with(R"("answers":{"mean":{"unit":"furlong"}})")) == "import.unknown_unit");
}

TEST_CASE("size, nesting, members and runs have their limits") {
    const std::string shell = record_with("\"notes\":\"\"");
    const std::string padding(most_record_bytes - shell.size(), 'x');
    CHECK(record_from_json(record_with("\"notes\":\"" + padding + "\"")).record.has_value());
    CHECK(key_of(record_with("\"notes\":\"" + padding + "x\"")) == "import.too_large");

    const auto nested = [](std::size_t levels) {
        return record_with("\"later\":" + repeated("[", levels) + repeated("]", levels));
    };
    CHECK(record_from_json(nested(most_record_levels - 1)).record.has_value());
    CHECK(key_of(nested(most_record_levels)) == "import.too_deep");
    CHECK(key_of(repeated("[", 999'999)) == "import.too_deep");
    CHECK(key_of(repeated("{\"a\":", 190'000)) == "import.too_deep");
    // Brackets in a text are no nesting.
    CHECK(record_from_json(record_with("\"notes\":\"\\\"" + repeated("[{", 100) + "\"")).record.has_value());

    const auto members = [](std::size_t count) {
        std::string text;
        for (std::size_t i = 0; i < count; ++i) text += (i ? ",\"m" : "\"m") + std::to_string(i) + "\":0";
        return record_with("\"later\":{" + text + "}");
    };
    CHECK(record_from_json(members(most_record_members)).record.has_value());
    CHECK(key_of(members(most_record_members + 1)) == "import.too_many_members");

    CHECK(record_from_json(record_with("\"runs\":[{},{},{},{},{},{}]")).record->runs.size() == 6);
    CHECK(key_of(record_with("\"runs\":[{},{},{},{},{},{},{}]")) == "import.too_many_runs");
    CHECK(key_of(R"({"overwater":"record","version":2,"runs":[1,2,3,4,5,6,7]})") == "import.too_many_runs");
}

TEST_CASE("the worst text within the limits is read to its end") {
    // As many objects with as many members as fit; the slowest case for a search member by member.
    std::string object = "{";
    for (std::size_t i = 0; i < most_record_members; ++i) object += (i ? ",\"" : "\"") + std::to_string(10000 + i) + "\":0";
    object += "}";
    std::string all = object;
    while (all.size() + object.size() < most_record_bytes - 1000) all += "," + object;
    survive(record_with("\"later\":[" + all + "]"));
    survive(record_with("\"history\":[" + all + "]"));
}

TEST_CASE("a record cut off or changed anywhere is loaded or refused, never worse") {
    std::mt19937_64 generator(7);
    std::string text = record_to_json(random_record(generator), JsonLayout::compact);
#ifndef __EMSCRIPTEN__
    text = file_text("tests/core/fixtures/record_v1.json");
    while (!text.empty() && text.back() == '\n') text.pop_back();
#endif
    for (std::size_t size = 0; size < text.size(); ++size) {
        const std::string cut = text.substr(0, size);
        REQUIRE_FALSE(record_from_json(cut).record.has_value());
    }
    for (int i = 0; i < 1500; ++i) {
        std::string changed = text;
        for (int k = 0; k < 1 + i % 3; ++k) {
            static constexpr std::string_view signs = "{}[]\",:0-1e.\\tfn\x80 ";
            const std::size_t at = generator() % changed.size();
            switch (generator() % 3) {
                case 0: changed[at] = signs[generator() % signs.size()]; break;
                case 1: changed.erase(at, 1 + generator() % 4); break;
                default: changed.insert(at, 1, signs[generator() % signs.size()]); break;
            }
        }
        survive(changed);
    }
}

TEST_CASE("a stored text that is damaged gives nothing") {
    CHECK_FALSE(stored_to("").has_value());
    CHECK_FALSE(stored_to("null").has_value());
    CHECK_FALSE(stored_to("{}").has_value());
    CHECK_FALSE(stored_to(R"({"data":7})").has_value());
    CHECK_FALSE(stored_to(R"({"data":{"overwater":"record","version":1,"name":7}})").has_value());
    const auto odd = stored_to(R"({"revision":"x","saved":3,"data":{"overwater":"record","version":1}})");
    REQUIRE(odd.has_value());
    CHECK(odd->revision == 0);
    CHECK(odd->saved.empty());
}
