// Readings typed into the page, and what it makes of them. Expected values: record A of method.md, computed with IF97 and
// the CIPM density, independently of this program.

#include <cmath>

#include "doctest/doctest.h"
#include "tests/ui/desk.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

constexpr const char* molar_volume = "Molar volume at standard conditions";
constexpr const char* dry_gas = "Dry-gas pressure";
constexpr const char* gas_volume = "Gas volume";

/// The words of every row of the table of all values, as `name|value|also`.
std::vector<std::string> rows_of_full_table(const Desk& desk) {
    std::vector<std::string> rows;
    const auto words = [](const Element& cell) {
        return cell.children.empty() ? std::string() : cell.children[0].text;
    };
    for (const Element& part : desk.node("full.table").content) {
        for (const Element& row : part.children) {
            if (row.name != "tr" || row.children.size() != 3) continue;
            rows.push_back(plain(words(row.children[0]) + '|' + words(row.children[1]) + '|' + words(row.children[2])));
        }
    }
    return rows;
}

bool says(const std::vector<std::string>& rows, std::string_view name, std::string_view value) {
    for (const std::string& row : rows) {
        if (row.find(name) != std::string::npos && row.find(value) != std::string::npos) return true;
    }
    return false;
}

struct OwnRun {
    OwnRun() {
        new_world();
        desk = std::make_unique<Desk>();
        desk->own_run();
    }
    Desk* operator->() const { return desk.get(); }
    std::unique_ptr<Desk> desk;
};

}  // namespace

TEST_CASE("Record A typed key by key gives the values of method.md") {
    OwnRun desk;
    desk->type_record_a();
    // Each shown digit has to be the printed value rounded there.
    CHECK(desk->output(molar_volume) == "22.68 L/mol");  // 22.6818
    const Shown dry = shown(desk->output(dry_gas));
    CHECK(dry.unit == "kPa");
    CHECK(dry.last_digit <= 0.011);
    CHECK(rounds_to(dry, 95.9740, 0.0001));
    const Shown gas = shown(desk->output(gas_volume));
    CHECK(gas.unit == "mL");
    CHECK(rounds_to(gas, 43.20, 0.01));
    const Shown metal = shown(desk->output("Amount of metal"));
    CHECK(metal.unit == "mmol");
    CHECK(metal.last_digit <= 0.0011);
    CHECK(rounds_to(metal, 1.69512, 0.00001));
    CHECK(rounds_to(shown(desk->output("Amount of gas")), 1.69512, 0.00001));
    CHECK(plain(desk->node("result.percent_error").name).find("-0.13 %") != std::string::npos);  // -0.128 %

    desk->press("header.working");
    const auto rows = rows_of_full_table(*desk.desk);
    CHECK(says(rows, "Gas volume", "43.20 mL"));
    CHECK(says(rows, "Water vapour pressure", "2549.94 Pa"));
    CHECK(says(rows, "Water vapour pressure", "19.126 Torr"));
    CHECK(says(rows, "Density of water", "997.907 kg/m"));
    CHECK(says(rows, "Column pressure", "1096.05 Pa"));
    CHECK(says(rows, "Dry-gas pressure", "95974.0 Pa"));
    CHECK(says(rows, "Amount of metal", "1.69512 mmol"));
    CHECK(says(rows, "Amount of gas", "1.69512 mmol"));
    CHECK(says(rows, "Molar volume at bench conditions", "25.4849 L/mol"));
    CHECK(says(rows, "dry gas at barometer pressure", "24.5521 L/mol"));
    CHECK(says(rows, "Gas constant", "8.30380 J/(mol"));
    CHECK(says(rows, "0 °C, 100 kPa", "22.6818 L/mol"));
    CHECK(says(rows, "0 °C, 100 kPa", "22.7110 L/mol"));
    CHECK(says(rows, "0 °C, 1 atm", "22.3852 L/mol"));
    CHECK(says(rows, "Percent error", "-0.128 %"));
    CHECK(says(rows, "wrong way", "6.038 L/mol"));
}

TEST_CASE("The result follows each keystroke in the same frame") {
    OwnRun desk;
    desk->type_record_a();
    desk->focus("bench.mass_of_metal");
    desk->send(Event::Kind::input, "bench.mass_of_metal", "0.0824");
    desk->frame();
    // Twice the metal, half the molar volume: 22.6818 / 2.
    CHECK(rounds_to(shown(desk->output(molar_volume)), 11.3409, 0.0001));
    const Node* result = desk->find(Role::output, molar_volume);
    REQUIRE(result != nullptr);
    CHECK(desk->document().pieces[result->key].text == result->value);
}

TEST_CASE("An output waits for the readings missing, and names them") {
    OwnRun desk;
    const std::string waiting = desk->output(molar_volume);
    CHECK(waiting.starts_with("waiting for "));
    for (const char* name : {"Mass of metal", "Number at the closed end", "Tube capacity", "Scale reading",
                             "Liquid stands", "Level difference", "Temperature", "Barometer"}) {
        CHECK_MESSAGE(waiting.find(name) != std::string::npos, name);
    }
    // Blank acid is in excess, a blank end space not measured (method.md, sections 1 and 3): nothing waits for them.
    for (const char* name : {"Acid", "End space", "Purity"})
        CHECK_MESSAGE(waiting.find(name) == std::string::npos, name);
    desk->type("bench.mass_of_metal", "0.0412");
    CHECK(desk->output(molar_volume).find("Mass of metal") == std::string::npos);
    CHECK(rounds_to(shown(desk->output("Amount of gas")), 1.69512, 0.00001));
    CHECK(desk->output(dry_gas).find("Mass of metal") == std::string::npos);
    CHECK(desk->output(dry_gas).starts_with("waiting for "));
}

TEST_CASE("An output is not possible where a reading makes it so, and what does not depend on it keeps its value") {
    OwnRun desk;
    desk->type_record_a();
    desk->type("bench.scale_reading", "60.0");
    const std::string refused = desk->output(molar_volume);
    CHECK(refused.starts_with("not possible: "));
    CHECK(refused.find("50 mL") != std::string::npos);
    CHECK(refused.find("60.0 mL") != std::string::npos);
    CHECK(refused.find('{') == std::string::npos);
    CHECK(rounds_to(shown(desk->output(dry_gas)), 95.9740, 0.0001));
    CHECK(desk->node("bench.scale_reading").value == "60.0");
    CHECK(desk->node("bench.scale_reading").invalid);
    CHECK_FALSE(desk->node("bench.tube_capacity").invalid);
    desk->type("bench.scale_reading", "9.15");
    CHECK(desk->output(molar_volume) == "22.68 L/mol");
    CHECK_FALSE(desk->node("bench.scale_reading").invalid);
}

TEST_CASE("A text that is no number is kept and marked with a reason, and its dependants wait for it") {
    OwnRun desk;
    desk->type_record_a();
    for (const char* text : {"0.04l2", "-", "0.04.12", "0.0412 kPa", "abc", "nan", "1e999", "0.0412 ±"}) {
        CAPTURE(text);
        desk->type("bench.mass_of_metal", text);
        const Node& field = desk->node("bench.mass_of_metal");
        CHECK(field.value == text);
        CHECK(field.invalid);
        REQUIRE_FALSE(field.described_by.empty());
        const std::string first = field.described_by.substr(0, field.described_by.find(' '));
        bool explained = false;
        for (const Node& node : desk->nodes()) {
            explained = explained || (field.described_by.find(node.key) != std::string::npos && node.name.size() > 10 &&
                                      node.key.find("remark") != std::string::npos);
        }
        CHECK(explained);
        CHECK(desk->output(molar_volume) == "waiting for Mass of metal");
        CHECK(rounds_to(shown(desk->output(dry_gas)), 95.9740, 0.0001));
    }
}

TEST_CASE("Another unit re-reads the same text and never converts it") {
    OwnRun desk;
    desk->type_record_a();
    desk->type("bench.barometer", "29.42");
    CHECK(desk->node("bench.barometer.unit").value == "kPa");
    // 29.42 kPa less column and vapour of record A: 29420 - 1096.05 - 2549.94 Pa.
    const Shown kilopascals = shown(desk->output(dry_gas));
    CHECK(kilopascals.unit == "kPa");
    CHECK(rounds_to(kilopascals, 25.77401, 0.00001));
    desk->choose("bench.barometer.unit", "inHg");
    CHECK(desk->node("bench.barometer").value == "29.42");
    CHECK(desk->node("bench.barometer.unit").value == "inHg");
    // 1 inHg = 3386.389 Pa (NIST SP 811, appendix B.8): 29.42 inHg - 3645.99 Pa = 95981.57 Pa = 28.3433 inHg.
    const Shown inches = shown(desk->output(dry_gas));
    CHECK(inches.unit == "inHg");
    CHECK(rounds_to(inches, 28.3433, 0.0001));
    // 22.6818 L/mol of record A by the pressures: 22.6818 * 95981.57 / 95974.0.
    CHECK(rounds_to(shown(desk->output(molar_volume)), 22.6836, 0.0002));
}

TEST_CASE("A unit typed into the field counts, and the text stays as typed") {
    OwnRun desk;
    desk->type_record_a();
    desk->type("bench.barometer", "29.42 inHg");
    CHECK(desk->node("bench.barometer").value == "29.42 inHg");
    CHECK(desk->node("bench.barometer.unit").value == "inHg");
    CHECK(rounds_to(shown(desk->output(molar_volume)), 22.6836, 0.0002));
    desk->type("bench.mass_of_metal", "41.2 mg");
    CHECK(desk->node("bench.mass_of_metal.unit").value == "mg");
    CHECK(rounds_to(shown(desk->output("Amount of metal")), 1.69512, 0.00001));
    // A comma and a thin space are as good as a point and none; 70.52 °F is 21.4 °C.
    desk->type("bench.temperature", "70,52\u2009°F");
    CHECK(desk->node("bench.temperature").value == "70,52\u2009°F");
    CHECK(rounds_to(shown(desk->output(molar_volume)), 22.6836, 0.0002));
}

TEST_CASE("Both ways a scale can run") {
    OwnRun desk;
    desk->type_record_a();
    CHECK(rounds_to(shown(desk->output(gas_volume)), 43.20, 0.01));  // 50 - 9.15 + 2.35
    CHECK(desk->find("bench.end_space") != nullptr);
    desk->choose("bench.number_at_closed_end.zero", "zero");
    // 0 at the closed end: the volume is the reading, and the scale has counted the end (method.md, section 1).
    CHECK(rounds_to(shown(desk->output(gas_volume)), 9.15, 0));
    CHECK(desk->find("bench.end_space") == nullptr);
    CHECK(desk->find("bench.end_space.counted") != nullptr);
    desk->choose("bench.number_at_closed_end.largest", "largest");
    CHECK(desk->node("bench.end_space").value == "2.35");
    CHECK(desk->output(molar_volume) == "22.68 L/mol");
}

TEST_CASE("Which end is asked by two drawings, with no default") {
    OwnRun desk;
    CHECK_FALSE(desk->node("bench.number_at_closed_end.zero").checked);
    CHECK_FALSE(desk->node("bench.number_at_closed_end.largest").checked);
    CHECK(desk->find("tube.picture") == nullptr);
    desk->type("bench.tube_capacity", "50");
    CHECK(desk->node("closed_end.largest").name.find("50") != std::string::npos);
    desk->press("closed_end.largest");
    CHECK(desk->node("bench.number_at_closed_end.largest").checked);
    CHECK(desk->find("closed_end.largest") == nullptr);
    CHECK(desk->find("tube.picture") != nullptr);
}

TEST_CASE("Liquid stands is asked for and never taken as level; level needs no height") {
    OwnRun desk;
    desk->type_record_a();
    desk->press("header.record");
    desk->press("records.new");
    desk->type("bench.mass_of_metal", "0.0412");
    desk->choose("bench.number_at_closed_end.largest", "largest");
    desk->type("bench.tube_capacity", "50");
    desk->type("bench.end_space", "2.35");
    desk->type("bench.scale_reading", "9.15");
    desk->type("bench.level_difference", "112");
    desk->type("bench.temperature", "21.4");
    desk->type("bench.barometer", "99.62");
    CHECK(desk->output(molar_volume) == "waiting for Liquid stands");
    desk->choose("bench.liquid_stands.level", "level");
    CHECK(desk->find("bench.level_difference") == nullptr);
    CHECK(rounds_to(shown(desk->output(dry_gas)), 97.07006, 0.00001));  // 99620 - 2549.94 Pa
    desk->choose("bench.liquid_stands.higher_outside", "higher_outside");
    CHECK(desk->node("bench.level_difference").value == "112");
    CHECK(rounds_to(shown(desk->output(dry_gas)), 98.16611, 0.00001));  // 99620 + 1096.05 - 2549.94 Pa
    desk->choose("bench.liquid_stands.higher_inside", "higher_inside");
    CHECK(desk->output(molar_volume) == "22.68 L/mol");
}

TEST_CASE("Standard conditions and the decimal sign are chosen for the record") {
    OwnRun desk;
    desk->type_record_a();
    desk->press("header.conventions");
    desk->choose("conventions.standard.0C_1atm", "0C_1atm");
    desk->choose("conventions.decimal_sign.comma", "comma");
    CHECK(desk->node("conventions.standard.0C_1atm").checked);
    desk->press("header.bench");
    CHECK(desk->output(molar_volume) == "22,39 L/mol");          // 22.3852
    CHECK(desk->node("bench.mass_of_metal").value == "0.0412");  // typed texts stay
    CHECK(desk->node("results.conditions").name.find("1 atm") != std::string::npos);
}

TEST_CASE("The result is spoken once typing has stopped, and only when it changed") {
    OwnRun desk;
    desk->type_record_a();
    CHECK(desk->node("status").name.empty());
    desk->wait(400);
    CHECK(desk->node("status").name.empty());
    desk->wait(400);  // 500 to 800 ms after the last keystroke
    CHECK(plain(desk->node("status").name) == "Molar volume at standard conditions: 22.68 L/mol");
    desk->type("bench.mass_of_metal", "0.0412");
    const std::string before = desk->document().pieces["status"].raw;
    desk->wait(1000);
    CHECK(desk->document().pieces["status"].raw == before);
}

TEST_CASE("Of an unknown metal the molar mass is sought and not asked; what was typed stays in sight") {
    OwnRun desk;
    desk->type_record_a();
    desk->press("bench.details.metal");
    desk->choose("bench.target", "molar_mass");
    desk->choose("bench.metal", "own");
    desk->choose("bench.gas", "hydrogen");
    CHECK(desk->find("bench.molar_mass") == nullptr);
    CHECK(desk->find("bench.acid_volume") != nullptr);
    desk->type("bench.gas_per_mole", "1");
    // 0.0412 g of record A's metal, 0.0016929 mol of hydrogen by 22.711 L/mol: m/n = 24.34 (0.0412/0.0016929 by hand).
    CHECK(desk->output("Molar mass found") == "24.34 g/mol");
    desk->choose("bench.target", "molar_volume");
    CHECK(desk->find("bench.molar_mass") != nullptr);
    desk->type("bench.molar_mass", "24.3");
    desk->choose("bench.target", "molar_mass");
    CHECK(desk->find("bench.molar_mass") != nullptr);
}

TEST_CASE("An idle page draws no frame and sends no patch") {
    OwnRun desk;
    desk->type_record_a();
    desk->wait(5000);
    for (int i = 0; i < 4; ++i) desk->frame();
    CHECK(native_world().frames_wanted == 0);
    CHECK(native_world().timers.empty());
    CHECK_FALSE(desk->frame());
}
