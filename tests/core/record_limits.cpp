// Records and courses at the limits that record.md names, and the outcome as it describes it.

#include <doctest/doctest.h>

#include <string>

#include "core/record/course_json.hpp"
#include "core/record/json.hpp"
#include "core/record/outcome_json.hpp"
#include "tests/core/record_samples.hpp"

using namespace overwater;

namespace {

std::string record_with(const std::string& members) { return R"({"overwater":"record","version":1,)" + members + "}"; }

/// The number that a refusal names.
long long count_in(const LoadResult& result) {
    return result.problem.arguments.empty() ? -1 : result.problem.arguments.front().count;
}

Record loaded(const std::string& members) {
    LoadResult result = record_from_json(record_with(members));
    INFO(members);
    REQUIRE(result.record.has_value());
    return *std::move(result.record);
}

std::string outcome(const Record& record, JsonLayout layout = JsonLayout::compact) {
    return outcome_to_json(record, assess_runs(record), layout);
}

bool holds(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

/// The number behind `name` after `from`, in compact JSON.
double number_after(const std::string& text, const std::string& from, const std::string& name) {
    const std::size_t at = text.find("\"" + name + "\":", text.find(from));
    REQUIRE(at != std::string::npos);
    return std::stod(text.substr(at + name.size() + 3));
}

/// Record A of method.md.
constexpr const char* members_of_record_a =
    R"("name":"A","shared":{"metal":{"text":"magnesium"},"acid":{"text":"hydrochloric"},
    "number_at_closed_end":{"text":"largest"},"tube_capacity":{"text":"50"},"end_space":{"text":"2.35"},
    "temperature":{"text":"21.4"},"barometer":{"text":"99.62"},"liquid_stands":{"text":"higher_inside"}},
    "runs":[{"name":"one","entries":{"mass_of_metal":{"text":"0.0412"},"scale_reading":{"text":"9.15"},
    "level_difference":{"text":"112"}}}])";

}  // namespace

TEST_CASE("192 unknown members of an object are kept, and no more") {
    // record.md: 256 members in one object, 192 unknown ones, since known ones are written beside them.
    const auto members = [](int count) {
        std::string text = "\"x0\":0";
        for (int i = 1; i < count; ++i) text += ",\"x" + std::to_string(i) + "\":0";
        return text;
    };
    CHECK(record_from_json(record_with(members(192))).record.has_value());
    const LoadResult refused = record_from_json(record_with(members(193)));
    CHECK(refused.problem.key == "import.too_many_members");
    CHECK(count_in(refused) == 192);
}

TEST_CASE("a refusal names the limit that was passed") {
    CHECK(most_record_bytes == 1'000'000);
    const LoadResult deep = record_from_json(record_with("\"later\":" + std::string(32, '[') + std::string(32, ']')));
    CHECK(deep.problem.key == "import.too_deep");
    CHECK(count_in(deep) == 32);
    CHECK(record_from_json(record_with("\"later\":" + std::string(31, '[') + std::string(31, ']'))).record.has_value());
    std::string members = "\"m\":0";
    for (int i = 1; i <= 256; ++i) members += ",\"m" + std::to_string(i) + "\":0";
    const LoadResult many = record_from_json(record_with("\"later\":{" + members + "}"));
    CHECK(many.problem.key == "import.too_many_members");
    CHECK(count_in(many) == 256);
    const LoadResult runs = record_from_json(record_with("\"runs\":[{},{},{},{},{},{},{}]"));
    CHECK(runs.problem.key == "import.too_many_runs");
    CHECK(count_in(runs) == 7);
}

TEST_CASE("a change belongs to one of six runs or to what they share") {
    const auto run_of = [](const char* number) {
        return record_from_json(record_with(R"("history":[{"run":)" + std::string(number) + "}]"));
    };
    CHECK(run_of("0").record->history.at(0).run == 0);
    CHECK(run_of("5").record->history.at(0).run == 5);
    CHECK(run_of("-1").record->history.at(0).run == -1);
    for (const char* number : {"6", "-2", "-0.5", "1.5"}) CHECK(run_of(number).problem.key == "import.out_of_range");
    CHECK(holds(record_to_json(*run_of("0").record, JsonLayout::compact), R"("history":[{"run":0}])"));
    CHECK(holds(record_to_json(*run_of("-1").record, JsonLayout::compact), R"("history":[{}])"));
}

TEST_CASE("standard conditions of one's own lie above absolute zero and above no pressure") {
    CHECK(loaded(R"("conventions":{"own_celsius":-273.14,"own_pascal":0.001})").conventions.own_celsius == -273.14);
    CHECK(loaded(R"("conventions":{"own_celsius":-273.14,"own_pascal":0.001})").conventions.own_pressure == 0.001);
    CHECK(record_from_json(record_with(R"("conventions":{"own_celsius":-273.16})")).problem.key ==
          "import.out_of_range");
    CHECK(record_from_json(record_with(R"("conventions":{"own_pascal":-1})")).problem.key == "import.out_of_range");
    CHECK(loaded(R"("conventions":{"pressure_unit":"mL"})").conventions.pressure_unit == UnitId::none);
    CHECK(loaded(R"("conventions":{"pressure_unit":"hPa"})").conventions.pressure_unit == UnitId::hectopascal);
    CHECK(loaded(R"("conventions":{"pressure_unit":"as_typed"})").conventions_kept.empty());
}

TEST_CASE("a course's name has no signs of control, at either end of them") {
    // Unicode: U+0000 to U+001F and U+007F to U+009F.
    for (const char* name : {"a\x1F", "\x7F", "a\u0080", "a\u009F", "\t", " ", "\u00A0"})
        CHECK_FALSE(is_course_name(name));
    for (const char* name : {"a b", "~", "\u00A1", "a\u00A0b", "!", " a"}) CHECK(is_course_name(name));
}

TEST_CASE("the outcome of record A is what record.md shows") {
    const std::string text = outcome(loaded(members_of_record_a));
    CHECK(text.starts_with(R"({"overwater":"outcome","version":1,"record":"A","conventions":{"standard":"0C_100kPa")"));
    CHECK(text.ends_with("}\n"));
    CHECK(holds(text, R"("runs":[{"name":"one","outputs":{)"));
    // method.md, record A: 43.20 mL, 294.55 K (the outcome holds kelvin), 22.68 L/mol.
    CHECK(number_after(text, "\"gas_volume\":{\"state\":\"value\"", "si") == doctest::Approx(43.20e-6));
    CHECK(number_after(text, "\"gas_volume\":{\"state\":\"value\"", "value") == doctest::Approx(43.20));
    CHECK(number_after(text, "\"absolute_temperature\":{\"state\":\"value\"", "si") == doctest::Approx(294.55));
    CHECK(number_after(text, "\"absolute_temperature\":{\"state\":\"value\"", "value") == doctest::Approx(294.55));
    CHECK(number_after(text, "\"molar_volume_standard\":{\"state\":\"value\"", "value") ==
          doctest::Approx(22.68).epsilon(1e-3));
    CHECK(holds(text, R"("state":"not_asked")"));
    // The scale taken the wrong way round: 9.15 mL and the end space less.
    const std::size_t ways = text.find("\"other_ways\":{\"wrong_way\":{");
    REQUIRE(ways != std::string::npos);
    CHECK(holds(text.substr(ways), "\"molar_volume_standard\":{\"si\":"));
    CHECK_FALSE(holds(text.substr(ways), "\"amount_of_metal\""));  // not changed by it
    const std::string lines = outcome(loaded(members_of_record_a), JsonLayout::indented);
    CHECK(lines.starts_with("{\n  \"overwater\": \"outcome\",\n  \"version\": 1,\n"));
}

TEST_CASE("the outcome says what an output waits for, and why one is not possible") {
    Record record = loaded(members_of_record_a);
    record.shared.edit(Field::barometer).text = "";
    CHECK(holds(outcome(record), R"("dry_gas_pressure":{"state":"waiting","for":["barometer"]})"));
    record = loaded(members_of_record_a);
    record.runs[0].entries.edit(Field::scale_reading).text = "59.15";
    const std::string text = outcome(record);
    CHECK(holds(text, R"({"field":"scale_reading","weight":"refusal","key":"refusal.beyond_scale","arguments":{)"));
    CHECK(holds(text, R"("state":"not_possible","reason":{"key":")"));
}

TEST_CASE("a problem's JSON has each argument in its own form") {
    Message message{"some.key"};
    message.quantity("volume", 43.2e-6, UnitId::millilitre, 2).figures("pressure", 99620, UnitId::kilopascal, 3);
    message.count("runs", 7).field("where", "barometer").text("typed", "x");
    const std::string text = problem_to_json(message, "file.json", JsonLayout::compact);
    CHECK(
        text.starts_with(R"({"overwater":"problem","version":1,"source":"file.json","key":"some.key","arguments":{)"));
    CHECK(holds(text, R"("unit":"mL","decimals":2})"));
    CHECK(holds(text, R"("unit":"kPa","figures":3})"));
    CHECK(number_after(text, "\"volume\"", "value") == doctest::Approx(43.2));
    CHECK(number_after(text, "\"pressure\"", "value") == doctest::Approx(99.62));
    CHECK(holds(text, R"("runs":{"count":7},"where":{"field":"barometer"},"typed":{"text":"x"})"));
}
