// What stands on the bench and what is sought, as a member of the record and as an entry. (That values survive the way through
// a file is in tests/cases: each assessment there goes by way of the text of its record.)

#include <doctest/doctest.h>

#include <string>

#include "core/bench/apparatus.hpp"
#include "core/record/json.hpp"
#include "core/record/record.hpp"

using namespace overwater;

namespace {

Record loaded(const std::string& text) {
    LoadResult result = record_from_json(text);
    INFO(text);
    REQUIRE(result.record.has_value());
    return *std::move(result.record);
}

std::string written(const Record& record) { return record_to_json(record, JsonLayout::compact); }
bool holds(const std::string& text, std::string_view part) { return text.find(part) != std::string::npos; }

const std::string& chosen(const Record& record, Field field) { return record.shared.at(field).text; }

}  // namespace

TEST_CASE("a record that has the member alone is given the entry") {
    for (const std::string_view name : apparatus_names) {
        const std::string text = R"({"overwater":"record","version":1,"apparatus":")" + std::string(name) + "\"}";
        const Record record = loaded(text);
        CHECK(apparatus_by_key(chosen(record, Field::apparatus)) == apparatus_by_key(name));
        CHECK(holds(written(record), "\"apparatus\":\"" + std::string(name) + "\""));
        CHECK(loaded(written(record)) == record);
    }
    for (const std::string_view name : target_names) {
        const std::string text = R"({"overwater":"record","version":1,"target":")" + std::string(name) + "\"}";
        const Record record = loaded(text);
        CHECK(target_by_key(chosen(record, Field::target)) == target_by_key(name));
        CHECK(holds(written(record), "\"target\":\"" + std::string(name) + "\""));
        CHECK(loaded(written(record)) == record);
    }
    // The first of each is what is taken without a choice: nothing is written down for it.
    CHECK(loaded(R"({"overwater":"record","version":1,"apparatus":"tube_over_water","target":"molar_volume"})") == Record{});
}

TEST_CASE("the entry counts before the member") {
    const Record record = loaded(
        R"({"overwater":"record","version":1,"apparatus":"gas_syringe","target":"purity",
            "shared":{"apparatus":{"text":"pressure_sensor"},"target":{"text":"molar_volume"}}})");
    CHECK(chosen(record, Field::apparatus) == "pressure_sensor");
    CHECK(chosen(record, Field::target) == "molar_volume");
    CHECK(holds(written(record), R"("apparatus":"pressure_sensor","reaction")"));
    CHECK(holds(written(record), R"("target":"molar_volume")"));
}

TEST_CASE("a choice that was taken back does not come again") {
    Record record = loaded(R"({"overwater":"record","version":1,"apparatus":"gas_syringe","target":"alloy"})");
    for (const Field field : {Field::apparatus, Field::target}) {
        record.shared.edit(field).text.clear();
        record.shared.tidy(field);
    }
    const Record again = loaded(written(record));
    CHECK(chosen(again, Field::apparatus).empty());
    CHECK(chosen(again, Field::target).empty());
    CHECK(again == record);
}

TEST_CASE("a vessel or a last line of a newer program is kept") {
    const char* text = R"({"overwater":"record","version":1,"apparatus":"gas_burette_by_hempel","target":"density_of_gas"})";
    const Record record = loaded(text);
    CHECK(chosen(record, Field::apparatus).empty());
    CHECK(holds(written(record), R"("apparatus":"gas_burette_by_hempel")"));
    CHECK(holds(written(record), R"("target":"density_of_gas")"));
    CHECK(loaded(written(record)) == record);
    const char* entries = R"({"overwater":"record","version":1,"shared":{"apparatus":{"text":"gas_burette_by_hempel"}}})";
    CHECK(holds(written(loaded(entries)), R"("apparatus":{"text":"gas_burette_by_hempel")"));
}

TEST_CASE("each run may have a vessel of its own, and every new reading comes back as it was typed") {
    Record record;
    record.runs.resize(2);
    record.shared.edit(Field::apparatus).text = "gas_syringe";
    record.runs[1].entries.edit(Field::apparatus).text = "displaced_water";
    for (const Field field : {Field::molar_mass, Field::gas_per_mole, Field::acid_per_mole, Field::tube_factor,
                              Field::injected_volume, Field::flask_volume, Field::displaced_mass, Field::pressure_after,
                              Field::barometer_temperature, Field::latitude, Field::water_activity}) {
        Entry& entry = record.runs[0].entries.edit(field);
        entry.text = "0.500";
        entry.unit = info(field).usual_unit;
        entry.plus_minus = "0.01";
        entry.repeats = {"0.501", "0.50"};
    }
    for (const Field field : {Field::gas, Field::gas_is, Field::second_metal}) {
        for (const std::string_view choice : choices_of(field)) {
            record.runs[1].entries.edit(field).text = choice;
            const Record back = loaded(written(record));
            CHECK(back == record);
            CHECK(written(back) == written(record));
        }
    }
    const auto of_run = [&](std::size_t run, Field field) { return entry_for(record, run, field).text; };
    CHECK(of_run(0, Field::apparatus) == "gas_syringe");
    CHECK(of_run(1, Field::apparatus) == "displaced_water");
}
