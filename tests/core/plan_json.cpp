// The text of a plan: out and in again, and texts that are none.

#include <doctest/doctest.h>

#include "core/record/plan_json.hpp"
#include "tests/core/plan_support.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

PlanSheet full_sheet() {
    PlanSheet sheet = usual_plan();
    sheet.bench.edit(Field::temperature).unit = UnitId::fahrenheit;
    sheet.bench.edit(Field::scale_reading).instrument = "gas_tube_50";
    sheet.bench.edit(Field::metal).text = "zinc \"a\\b\"\n";
    for (std::size_t i = 0; i < plan_field_count; ++i) sheet.asked[i] = "text " + std::to_string(i);
    sheet.conventions.standard = StandardConditions::twenty_five_celsius_100_kilopascal;
    sheet.conventions.vapour = Conventions::Vapour::own_value;
    sheet.conventions.decimal_sign = DecimalSign::comma;
    return sheet;
}

std::string_view problem_of(std::string_view text) {
    const PlanLoad load = plan_from_json(text);
    CHECK_FALSE(load.sheet.has_value());
    return load.problem.key;
}

}  // namespace

TEST_CASE("plan text: comes out as it went in") {
    const PlanSheet sheets[] = {PlanSheet{}, full_sheet()};
    for (const PlanSheet& sheet : sheets) {
        const std::string text = plan_to_json(sheet);
        // One line, as settings are kept.
        CHECK(text.find('\n') == std::string::npos);
        const PlanLoad load = plan_from_json(text);
        REQUIRE(load.sheet.has_value());
        CHECK(load.sheet->bench == sheet.bench);
        CHECK(load.sheet->asked == sheet.asked);
        CHECK(load.sheet->conventions == sheet.conventions);
        CHECK(plan_to_json(*load.sheet) == text);
    }
}

TEST_CASE("plan text: a faulty one gives nothing, and says why") {
    CHECK(problem_of("") == "plan.link.not_a_plan");
    CHECK(problem_of("[1]") == "plan.link.not_a_plan");
    CHECK(problem_of("\xff") == "import.not_utf8");
    CHECK(problem_of(R"({"overwater":"record","version":1})") == "plan.link.not_a_plan");
    CHECK(problem_of(R"({"overwater":"plan","version":0})") == "plan.link.not_a_plan");
    CHECK(problem_of(R"({"overwater":"plan","version":2})") == "plan.link.newer");
    CHECK(problem_of(R"({"overwater":"plan","version":1,"bench":[]})") == "import.wrong_type");
    CHECK(problem_of(R"({"overwater":"plan","version":1,"asked":{"groups":8}})") == "import.wrong_type");
    CHECK(problem_of(R"({"overwater":"plan","version":1,"bench":{"barometer":{"text":"1","unit":"g"}}})") ==
          "import.unknown_unit");
    CHECK(plan_from_json(R"({"overwater":"plan","version":1,"more":1})").sheet.has_value());
    // Every beginning of a plan, as a link that was cut off holds.
    const std::string text = plan_to_json(full_sheet());
    for (std::size_t length = 0; length < text.size(); ++length) {
        CHECK_FALSE(plan_from_json(std::string_view(text).substr(0, length)).sheet.has_value());
    }
}
