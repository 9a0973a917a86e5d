// The marking page, by its own nodes: a class pasted, marked, looked into, saved and printed.

#include <doctest/doctest.h>

#include <algorithm>

#include "core/lesson/text_table.hpp"
#include "core/record/json.hpp"
#include "tests/ui/desk.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

/// All at once, as pasted.
void paste(Desk& desk, const std::string& key, const std::string& text) {
    desk.focus(key);
    desk.document().type(key, text);
    desk.send(Event::Kind::input, key, text);
    desk.settle();
}

std::string all_words(const Desk& desk) {
    std::string all;
    for (const Node& node : desk.nodes()) all += node.name + '\n' + node.value + '\n';
    return plain(all);
}

void begin(Desk& desk) {
    desk.own_run();
    desk.type_record_a();
    desk.press("header.practice");
    desk.press("practice.to_marking");
}

// Record A of method.md: 43.20 mL, 95.974 kPa, 1.69512 mmol, 38.45 mL, 22.6818 L/mol, -0.128 %. The vapour forgotten, by
// hand: 98.524 kPa, 39.47 mL, 23.28 L/mol, +2.53 %.
constexpr const char* four =
    "Group\tScale reading (mL)\tGas volume (mL)\tDry-gas pressure (kPa)\tAmount of gas (mmol)\t"
    "Volume at standard conditions (mL)\tMolar volume\tPercent error\n"
    "1\t9.15\t43.20\t95.97\t1.695\t38.45\t22.68 L/mol\t-0.13\n"
    "2\t9.15\t43.20\t98.52\t1.695\t39.47\t23.28 L/mol\t2.5\n"
    "3\t9.15\t43.20\t95.97\t1.695\t38.45\t22.68\t-0.13\n"
    "=4\t9.15\t11.50\t\tabout 2\t\t\t\n";

}  // namespace

TEST_CASE("A pasted class is marked: points, signs, remarks, and the steps of a sheet") {
    new_world();
    Desk desk;
    begin(desk);
    CHECK(desk.app().page() == PageName::marking);
    CHECK(desk.document().pieces.at("marking.text").tag == "textarea");
    paste(desk, "marking.text", four);
    desk.press("marking.read");
    // Vapour pressure and amount of metal have no column: they were not asked for.
    CHECK(plain(desk.node("marking.sheet.1.open").name) == "Group 1: 6 of 6 points. All right.");
    CHECK(plain(desk.node("marking.sheet.2.open").name) ==
          "Group 2: 5 of 6 points. Dry-gas pressure: " + plain(desk.app().say("slip.vapour_ignored")));
    CHECK(plain(desk.node("marking.sheet.3.open").name) == "Group 3: 5 of 6 points. A unit is missing or wrong.");
    CHECK(plain(desk.node("marking.sheet.4.open").name).starts_with("Group 4: 0 of 6 points. Gas volume: "));
    CHECK(all_words(desk).find("Line 5: the group is no number") != std::string::npos);
    const std::vector<MarkedRow>& rows = desk.app().marking_desk().rows;
    REQUIRE(rows.size() == 4);
    CHECK(rows[1].sheet.steps[1].judgement == Judgement::not_right);
    CHECK(rows[1].sheet.steps[3].judgement == Judgement::carried_forward);
    desk.press("marking.sheet.2.open");
    const std::string words = all_words(desk);
    CHECK(words.find("Dry-gas pressure: 98.52 kPa. Not right. Expected 95.97 kPa.") != std::string::npos);
    CHECK(words.find("Volume at standard conditions: 39.47 mL. Right from the step before.") != std::string::npos);
    CHECK(words.find("Likely: " + plain(desk.app().say("slip.vapour_ignored"))) != std::string::npos);
    desk.press("marking.sheet.2.open");
    CHECK(desk.find("marking.sheet.2.line1") == nullptr);
    // Marked again: the same sheets, not more of them.
    desk.press("marking.read");
    CHECK(desk.app().marking_desk().rows.size() == 4);
    desk.press("marking.clear");
    CHECK(desk.app().marking_desk().rows.empty());
    CHECK(desk.node("marking.text").value.empty());
}

TEST_CASE("The teacher's rules count, are kept on this computer, and hold where they are numbers") {
    new_world();
    {
        Desk desk;
        begin(desk);
        paste(desk, "marking.text", four);
        desk.press("marking.read");
        desk.type("marking.carried", "0,5");
        desk.type("marking.unit", "0");
        desk.settle();
        CHECK(plain(desk.node("marking.sheet.2.open").name).starts_with("Group 2: 3.5 of 6 points."));
        CHECK(plain(desk.node("marking.sheet.3.open").name).starts_with("Group 3: 6 of 6 points."));
        desk.type("marking.step", "much");
        desk.settle();
        CHECK(desk.node("marking.step").invalid);
        CHECK(desk.find("marking.rule_problem") != nullptr);
        CHECK(plain(desk.node("marking.sheet.3.open").name).starts_with("Group 3: 6 of 6 points."));
        desk.type("marking.step", "2");
    }
    Desk desk;
    CHECK(desk.app().page() == PageName::marking);
    CHECK(desk.node("marking.carried").value == "0,5");
    CHECK(desk.node("marking.step").value == "2");
    CHECK(desk.node("marking.figures").value == "0");
}

TEST_CASE("The table goes out as CSV with the decimal sign of the conventions, and on paper") {
    new_world();
    Desk desk;
    begin(desk);
    desk.press("header.conventions");
    desk.choose("conventions.decimal_sign.comma", "comma");
    desk.press("header.practice");
    desk.press("practice.to_marking");
    paste(desk, "marking.text", four);
    desk.type("marking.carried", "0.5");
    desk.press("marking.read");
    desk.press("marking.save");
    REQUIRE(native_world().files.size() == 1);
    const SavedFile& file = native_world().files.back();
    CHECK(file.name == "overwater-marks-2026-01-31.csv");
    CHECK(file.media_type == "text/csv");
    const TextTable table = read_table(file.text);
    CHECK(table.separator == ';');
    REQUIRE(table.rows.size() == 5);
    CHECK(table.rows[0][0] == "Group");
    CHECK(table.rows[0][3] == "Gas volume");
    CHECK(table.rows[0].back() == "Remark");
    CHECK(table.rows[2][1] == "3,5");
    CHECK(table.rows[2][3] == "✓");
    CHECK(table.rows[2][4] == "✗");
    CHECK(table.rows[2][6] == "→");
    CHECK(table.rows[4].at(7) == "–");
    CHECK(table.rows[2].back().find("not subtracted") != std::string::npos);
    desk.press("marking.print");
    REQUIRE(native_world().printed.size() == 1);
    CHECK(native_world().printed[0].find("<td>3,5</td>") != std::string::npos);
    CHECK(native_world().printed[0].find("not subtracted") != std::string::npos);
}

TEST_CASE("Files of records are marked here, not opened, and no name becomes a formula") {
    new_world();
    Desk desk;
    begin(desk);
    Record record = desk.app().record();
    record.id = "other";
    record.name = "=HYPERLINK(\"x\")";
    Answer answer;
    answer.step = "gas_volume";
    answer.text = "43.20 mL";
    record.runs[0].answers.push_back(answer);
    const std::string open = desk.app().record().id;
    const std::size_t kept = stored_ids().size();
    desk.send(Event::Kind::file, "one.json", record_to_json(record));
    desk.send(Event::Kind::file, "class.csv", "Group,Gas volume\n7,43.2 mL\n");
    desk.settle();
    CHECK(desk.app().record().id == open);
    CHECK(stored_ids().size() == kept);
    REQUIRE(desk.app().marking_desk().rows.size() == 2);
    CHECK(desk.app().marking_desk().rows[0].sheet.points == 1);
    CHECK(desk.app().marking_desk().rows[1].group == "7");
    desk.press("marking.save");
    CHECK(native_world().files.back().text.find("\"'=HYPERLINK(\"\"x\"\")\"") != std::string::npos);
    desk.send(Event::Kind::file, "bad.json", "{\"overwater\":");
    desk.settle();
    CHECK(all_words(desk).find("bad.json was not opened.") != std::string::npos);
    CHECK(desk.app().marking_desk().rows.size() == 2);
}

TEST_CASE("Of two hundred sheets only those in view are mirrored") {
    new_world();
    Desk desk;
    begin(desk);
    std::string text = "Group,Gas volume\n";
    for (int i = 1; i <= 200; ++i) text += std::to_string(i) + ",43.2 mL\n";
    paste(desk, "marking.text", text);
    desk.press("marking.read");
    CHECK(desk.app().marking_desk().rows.size() == 200);
    CHECK(desk.find("marking.sheet.1.open") != nullptr);
    CHECK(desk.find("marking.sheet.200.open") == nullptr);
    CHECK(desk.nodes().size() < 250);
    desk.send(Event::Kind::scroll, {}, {}, static_cast<double>(desk.document().height) - 600);
    desk.settle();
    CHECK(desk.find("marking.sheet.1.open") == nullptr);
    CHECK(desk.find("marking.sheet.200.open") != nullptr);
}

TEST_CASE("What a table lacks is taken from the open record, and that is said by name") {
    new_world();
    Desk desk;
    desk.own_run();
    desk.type_record_a();
    desk.press("header.practice");
    desk.press("practice.to_marking");
    CHECK(desk.find("marking.open_record") != nullptr);
    desk.press("marking.copy_columns");
    REQUIRE_FALSE(native_world().clipboard.empty());
    const TextTable names = read_table(native_world().clipboard.back());
    REQUIRE(names.rows.size() == 1);
    CHECK(names.rows[0][0] == "Group");
    CHECK(std::count(names.rows[0].begin(), names.rows[0].end(), "Scale reading") == 1);
    CHECK(std::count(names.rows[0].begin(), names.rows[0].end(), "Gas volume") == 1);
    paste(desk, "marking.text", "Group\tScale reading\tGas volume\n1\t9.15\t43.20 mL\n");
    desk.press("marking.read");
    desk.settle();
    const Node* taken = desk.find("marking.from_open");
    REQUIRE(taken != nullptr);
    for (const char* reading : {"Tube capacity", "End space", "Number at the closed end", "Barometer"}) {
        CHECK(taken->name.find(reading) != std::string::npos);
    }
    CHECK(taken->name.find("Scale reading") == std::string::npos);
    // The names that were copied are a first line that is understood: one column of each.
    std::string rows = native_world().clipboard.back();
    rows += "1" + std::string(static_cast<std::size_t>(std::count(rows.begin(), rows.end(), '\t')), '\t') + "\n";
    paste(desk, "marking.text", rows);
    desk.press("marking.read");
    desk.settle();
    CHECK(desk.find("marking.problem1") == nullptr);
}
