#include <doctest/doctest.h>

#include "core/result/run_checks.hpp"
#include "tests/core/check_support.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

/// A run of record A's kind: mass and scale reading its own.
Sheet run(const char* mass, const char* reading) {
    return record_a().with({{Field::mass_of_metal, mass}, {Field::scale_reading, reading}});
}

const RunCheck* find(const std::vector<RunCheck>& checks, std::string_view key) {
    for (const RunCheck& check : checks) {
        if (check.message.key == key) return &check;
    }
    return nullptr;
}

std::vector<RunCheck> between(std::initializer_list<Sheet> sheets) {
    std::vector<Assessment> runs;
    for (const Sheet& sheet : sheets) runs.push_back(sheet.assessed());
    return run_checks(runs);
}

// 1 mg of magnesium gives 1.0485 mL in record A's room: 43.20, 36.7 and 31.5 mL for 41.2, 35.0 and 30.0 mg.
const Sheet a = run("0.0412", "9.15");
const Sheet b = run("0.0350", "15.65");
const Sheet c = run("0.0300", "20.85");

}  // namespace

TEST_CASE("runs that go together draw no question, and one run none") {
    CHECK(between({a, b, c}).empty());
    CHECK(between({a}).empty());
    CHECK(between({}).empty());
}

TEST_CASE("more metal with less gas is a contradiction") {
    const auto checks = between({a, b, run("0.0450", "20.0")});
    const RunCheck* check = find(checks, "check.more_metal_less_gas");
    REQUIRE(check);
    CHECK(check->runs == std::vector<std::size_t>{0, 2});
    CHECK(check->message.arguments.at(1).count == 3);
    // Within the scatter of a class: 1 % more metal, 1 % less gas.
    CHECK(between({a, run("0.0416", "9.55")}).empty());
}

TEST_CASE("where the acid sets the gas, more metal need not give more") {
    const auto little_acid = [](const Sheet& sheet) { return sheet.with({{Field::acid_concentration, "0.20"}}); };
    CHECK(between({little_acid(run("0.0300", "29.0")), little_acid(run("0.0412", "31.0"))}).empty());
}

TEST_CASE("rows that were exchanged are found") {
    // 43.2 mL for 35.0 mg and 36.7 mL for 30.0 mg would agree too, but not with the third run.
    const auto checks = between({run("0.0300", "9.15"), b, run("0.0412", "20.85")});
    const RunCheck* check = find(checks, "check.runs_exchanged");
    REQUIRE(check);
    CHECK(check->runs == std::vector<std::size_t>{0, 2});
    CHECK(checks.size() == 1);
    // Only 4 % between the masses: within what runs may differ.
    CHECK(!find(between({run("0.0405", "9.15"), run("0.0412", "9.85")}), "check.runs_exchanged"));
}

TEST_CASE("runs equal to the last digit in every reading may be one") {
    CHECK(find(between({a, b, a}), "check.runs_equal")->runs == std::vector<std::size_t>{0, 2});
    CHECK(between({a, run("0.0412", "9.2")}).empty());
    // The same number read to one more place is another reading.
    CHECK(between({run("0.0412", "9.1"), run("0.0412", "9.10")}).empty());
    CHECK(between({a, a.with({{Field::level_difference, "110"}})}).empty());
    CHECK(between({a.without(Field::scale_reading), a.without(Field::scale_reading)}).empty());
}

TEST_CASE("rooms that cannot be those of one lesson are asked about") {
    const auto warm = between({a, b.with({{Field::temperature, "30.0"}})});
    const RunCheck* check = find(warm, "check.rooms_differ");
    REQUIRE(check);
    CHECK(check->runs == std::vector<std::size_t>{0, 1});
    CHECK(!find(between({a, b.with({{Field::temperature, "23.0"}})}), "check.rooms_differ"));
    // Each as it was typed, to a millionth at the most.
    for (const auto& [text, places] : {std::pair{"30", 0}, {"30.12", 2}, {"30.123456", 6}, {"30.12345678", 6}}) {
        const char* const typed = text;
        const int decimals = places;
        CAPTURE(typed);
        const auto checks = between({a, b.with({{Field::temperature, typed}})});
        REQUIRE(find(checks, "check.rooms_differ"));
        for (const Argument& argument : find(checks, "check.rooms_differ")->message.arguments) {
            if (argument.name == "one") CHECK(argument.digits == 1);
            if (argument.name == "other") CHECK(argument.digits == decimals);
        }
    }
    CHECK(find(between({a, b.with({{Field::barometer, "748 mmHg"}}), c.with({{Field::barometer, "101.0"}})}),
               "check.rooms_differ")
              ->runs == std::vector<std::size_t>{0, 2});
    CHECK(!find(between({a, b.with({{Field::barometer, "748 mmHg"}})}), "check.rooms_differ"));
}
