// The page of a class set, by its own nodes: groups typed, pasted, opened, left out with a reason, given out and taken in.

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "core/lesson/text_table.hpp"
#include "core/record/json.hpp"
#include "tests/ui/desk.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

void paste(Desk& desk, const std::string& key, const std::string& text) {
    desk.focus(key);
    desk.document().type(key, text);
    desk.send(Event::Kind::input, key, text);
    desk.settle();
}

void open_file(Desk& desk, const std::string& name, const std::string& text) {
    desk.send(Event::Kind::file, name, text);
    desk.settle();
}

std::string all_words(const Desk& desk) {
    std::string all;
    for (const Node& node : desk.nodes()) all += node.name + '\n' + node.value + '\n';
    return plain(all);
}

bool has(const std::string& text, std::string_view what) { return text.find(what) != std::string::npos; }

/// Record A of method.md is at the bench, and the page of the class set is shown.
void begin(Desk& desk) {
    desk.own_run();
    desk.type_record_a();
    desk.press("header.class");
}

void read(Desk& desk, const std::string& text) {
    paste(desk, "pool.text", text);
    desk.press("pool.read");
}

const ClassSet& set(Desk& desk) { return desk.app().pool_desk().set; }

// Record A's scale reading with three masses. By hand from its 22.6818 L/mol: 22.6818, 23.3623, 22.0399; mean 22.6946,
// s 0.6613, standard error 0.3818, t(2) 4.3027, half-width 1.643.
constexpr const char* three =
    "Group,Mass of metal (g),Scale reading (mL)\n1,0.0412,9.15\n2,0.0400,9.15\n3,0.0424,9.15\n";

}  // namespace

TEST_CASE("A pasted class is pooled, with room and tube of the open record, and says so") {
    new_world();
    Desk desk;
    begin(desk);
    CHECK(desk.app().page() == PageName::pool);
    read(desk, three);
    CHECK(set(desk).ratios.mean == doctest::Approx(22.6946e-3).epsilon(5e-6));
    CHECK(set(desk).ratios.half_width == doctest::Approx(1.643e-3).epsilon(5e-4));
    CHECK(plain(desk.node("pool.sentence").name) ==
          "3 runs: 22.7 ± 1.6 L/mol (95 % interval of the mean). The accepted 22.71 L/mol lies inside.");
    CHECK(plain(desk.node("pool.group.0.open").name).starts_with("Group 1, 22.68 ± "));
    CHECK(has(all_words(desk), "Not in the table, so every row has these from the record that is open"));
    CHECK(has(all_words(desk), "Barometer"));
    // Read again: the same groups, not more of them.
    desk.press("pool.read");
    CHECK(desk.app().pool_desk().groups.size() == 3);
}

TEST_CASE("Tables of German, French and US spreadsheets say the same") {
    const char* german =
        "\xEF\xBB\xBFGroup;Mass of metal (g);Scale reading (mL)\r\n1;0,0412;9,15\r\n2;0,0400;9,15\r\n3;0,0424;9,15\r\n";
    const char* french =
        "Group\tMass of metal (g)\tScale reading (mL)\r1\t0,0412\t9,15\r2\t0,0400\t9,15\r3\t0,0424\t9,15\r";
    const char* american =
        "Group,\"Mass\nof metal (g)\",\"Scale reading (mL)\"\n1,\"0.0412\",9.15\n2,0.0400,9.15\n3,0.0424,\"9.15\"\n";
    for (const char* text : {german, french, american}) {
        CAPTURE(text);
        new_world();
        Desk desk;
        begin(desk);
        read(desk, text);
        CHECK(desk.app().pool_desk().problems.empty());
        CHECK(set(desk).ratios.mean == doctest::Approx(22.6946e-3).epsilon(5e-6));
    }
}

TEST_CASE("An empty cell stays empty, and a broken row is named and loses nothing else") {
    new_world();
    Desk desk;
    begin(desk);
    read(desk, "Group,Mass of metal (g),Scale reading (mL)\n1,,9.15\n2,0.0400,9.15\n3,0,0424,9,15\nfour,0.0412,9.15\n");
    const PoolDesk& pool = desk.app().pool_desk();
    // Not the open record's mass.
    REQUIRE(pool.groups.size() == 3);
    CHECK_FALSE(pool.groups[0].runs[0].point);
    CHECK(has(plain(desk.node("pool.group.0.open").name), "Mass of metal"));
    CHECK(set(desk).points.size() == 2);
    const std::string words = all_words(desk);
    CHECK(has(words, "Line 4 has more cells than there are columns"));
    CHECK(has(words, "Line 5: the group is no number"));
    read(desk, "Group,Colour\n1,red\n");
    CHECK(has(all_words(desk), "No column has a reading"));
    // Of which nothing can be used: the groups stay.
    CHECK(desk.app().pool_desk().groups.size() == 3);
}

TEST_CASE("A group is left out by hand alone, with a reason that stays wherever the class goes") {
    new_world();
    std::string table;
    std::string json;
    {
        Desk desk;
        begin(desk);
        read(desk, three);
        desk.press("pool.group.2.open");
        desk.press("pool.group.2.out");
        CHECK(set(desk).points.size() == 2);
        CHECK(set(desk).left_out.size() == 1);
        CHECK(has(all_words(desk), "Say why"));
        desk.type("pool.group.2.reason", "gas lost; <b>tube</b> tipped");
        CHECK_FALSE(has(all_words(desk), "Say why"));
        CHECK(has(plain(desk.node("pool.group.2.open").name), "left out: gas lost; <b>tube</b> tipped"));
        desk.press("pool.save_table");
        desk.press("pool.save_json");
        REQUIRE(native_world().files.size() == 2);
        CHECK(native_world().files[0].name == "overwater-class-2026-01-31.csv");
        table = native_world().files[0].text;
        json = native_world().files[1].text;
        const TextTable rows = read_table(table);
        REQUIRE(rows.rows.size() == 4);
        CHECK(rows.rows[0][2] == "Mass of metal (g)");
        CHECK(rows.rows[3][4] == "gas lost; <b>tube</b> tipped");
        CHECK(rows.rows[1][7] == "22.68");
        desk.press("pool.print");
        REQUIRE(native_world().printed.size() == 1);
        const std::string& html = native_world().printed[0];
        CHECK(has(html, "gas lost; &lt;b&gt;tube&lt;/b&gt; tipped"));
        CHECK_FALSE(has(html, "<b>tube"));
        CHECK(has(html, "<svg"));
        CHECK(has(html, "Standard error of the mean"));
        // What all runs share stands in the report, what differs in its table.
        CHECK(has(plain(html), "Tube capacity: 50"));
        CHECK(has(plain(html), "End space: 2.35"));
        CHECK_FALSE(has(plain(html), "Mass of metal: "));
    }
    const auto same = [](Desk& desk) {
        const PoolDesk& pool = desk.app().pool_desk();
        REQUIRE(pool.groups.size() == 3);
        CHECK(pool.groups[2].left_out);
        CHECK(pool.groups[2].reason == "gas lost; <b>tube</b> tipped");
        CHECK(pool.groups[2].name == "3");
        CHECK(pool.groups[2].record.runs[0].left_out.empty());
        CHECK(pool.set.points.size() == 2);
        // By hand: (22.6818 + 23.3623)/2.
        CHECK(pool.set.ratios.mean == doctest::Approx(23.0220e-3).epsilon(5e-6));
    };
    Desk again;  // after loading the page again
    again.press("header.class");
    same(again);
    for (const std::string& text : {table, json}) {
        again.press("pool.clear");
        CHECK(again.app().pool_desk().groups.empty());
        open_file(again, "class", text);
        CHECK(again.app().pool_desk().problems.empty());
        same(again);
    }
    again.press("pool.group.2.open");
    again.press("pool.group.2.out");
    CHECK(set(again).points.size() == 3);
}

TEST_CASE("Readings are typed in the page, a group more or a run more, and nothing removed is lost") {
    new_world();
    Desk desk;
    begin(desk);
    desk.press("pool.add");
    CHECK(desk.app().interaction().focused == "pool.group.0.0.mass_of_metal");
    desk.type("pool.group.0.0.mass_of_metal", "0.0400");
    CHECK(set(desk).points.empty());
    desk.type("pool.group.0.0.scale_reading", "9.15");
    REQUIRE(set(desk).points.size() == 1);
    CHECK(set(desk).points[0].ratio == doctest::Approx(23.3623e-3).epsilon(5e-6));
    const Record& record = desk.app().pool_desk().groups[0].record;
    REQUIRE(record.history.size() == 2);
    CHECK(record.history[1].field == "scale_reading");
    CHECK(record.history[1].text == "9.15");
    CHECK(record.history[1].time == "2026-01-31T09:30:00Z");
    desk.press("pool.group.0.run");
    desk.type("pool.group.0.1.mass_of_metal", "0.0424");
    desk.type("pool.group.0.1.scale_reading", "9.15");
    CHECK(set(desk).points.size() == 2);
    desk.press("pool.add");
    CHECK(desk.app().pool_desk().groups[1].name == "2");
    desk.type("pool.group.1.name", "7");
    desk.press("pool.add");
    CHECK(desk.app().pool_desk().groups[2].name == "8");
    desk.press("pool.group.2.remove");
    CHECK(desk.app().pool_desk().groups.size() == 2);
    desk.press("pool.undo");
    CHECK(desk.app().pool_desk().groups.size() == 3);
    desk.press("pool.group.0.open");
    desk.press("pool.group.0.bench");
    CHECK(desk.app().page() == PageName::bench);
    CHECK(desk.app().record().name == "Group 1");
    CHECK(plain(desk.output("Molar volume at standard conditions")).starts_with("23.36"));
    CHECK(stored_ids().size() >= 2);
}

TEST_CASE("Thirty students' files come at once, the same one once, and go on to marking") {
    new_world();
    Desk desk;
    begin(desk);
    Record record = desk.app().record();
    for (int i = 1; i <= 30; ++i) {
        record.id = "student" + std::to_string(i);
        record.name = std::to_string(i);
        record.runs[0].entries.edit(Field::mass_of_metal).text = i % 2 == 0 ? "0.0412" : "0.0410";
        open_file(desk, "file" + std::to_string(i) + ".json", record_to_json(record));
    }
    CHECK(desk.app().pool_desk().groups.size() == 30);
    CHECK(set(desk).points.size() == 30);
    open_file(desk, "file30.json", record_to_json(record));
    CHECK(desk.app().pool_desk().groups.size() == 30);
    CHECK(has(all_words(desk), "Group 30 came a second time"));
    open_file(desk, "picture.png", "\x89PNG");
    CHECK(desk.app().pool_desk().groups.size() == 30);
    CHECK_FALSE(desk.app().pool_desk().problems.empty());
    open_file(desk, "broken.json", "{\"overwater\":\"record\"");
    CHECK(has(all_words(desk), "broken.json"));
    CHECK(desk.app().pool_desk().groups.size() == 30);
    desk.press("pool.mark");
    CHECK(desk.app().page() == PageName::marking);
    CHECK(desk.app().marking_desk().rows.size() == 30);
    CHECK(desk.app().pool_desk().groups.size() == 30);
}

TEST_CASE("Groups with other standard conditions are not compared until they are worked out alike") {
    new_world();
    Desk desk;
    begin(desk);
    read(desk, three);
    Record record = desk.app().record();
    record.id = "other";
    record.name = "9";
    record.conventions.standard = StandardConditions::twenty_five_celsius_100_kilopascal;
    open_file(desk, "nine.json", record_to_json(record));
    CHECK(has(all_words(desk), "Not all groups use the same standard conditions"));
    desk.press("pool.own_conventions");
    CHECK_FALSE(has(all_words(desk), "Not all groups use the same standard conditions"));
    CHECK(set(desk).points.size() == 4);
}

TEST_CASE("What the class pattern says stands on the page with its groups") {
    new_world();
    Desk desk;
    begin(desk);
    // Volumes in the tube for 22.7 L/mol at standard conditions less 2 mL each; record A has 43.20 mL in the tube for
    // 38.45 mL at standard conditions, so 1 mmol of gas is 25.48 mL there.
    std::string text = "Group,Mass of metal (g),Scale reading (mL)\n";
    const double masses[] = {0.020, 0.025, 0.030, 0.035, 0.040, 0.042};
    for (int i = 0; i < 6; ++i) {
        const double gas = masses[i] / 24.305 * 22.71 * 1000 * 43.20 / 38.45 - 2 + (i % 2 == 0 ? 0.02 : -0.02);
        // The capacity and end space of record A: gas 43.20 at a reading of 9.15.
        char row[64];
        std::snprintf(row, sizeof row, "%d,%.4f,%.2f\n", i + 1, masses[i], 43.20 + 9.15 - gas);
        text += row;
    }
    read(desk, text);
    const std::string words = all_words(desk);
    CHECK(has(words, "About the same volume is missing in every run: 2.0 mL in the tube"));
    CHECK(set(desk).intercept_in_tube == doctest::Approx(-2e-6).epsilon(0.05));
}

TEST_CASE("A row that gets the focus tells its numbers above and stays where it is") {
    // Else the button of the mouse would come up over another row, and the press would be lost.
    for (const float width : {1366.0f, 1000.0f, 390.0f}) {
        CAPTURE(width);
        new_world();
        Desk desk;
        desk.resize({width, 768});
        begin(desk);
        read(desk, "Group,Mass of metal (g),Scale reading (mL)\n1,0.0412,9.15\nThe long table by the window,0.0400,9.15\n3,0.0424,9.15\n");
        for (const char* key : {"pool.group.0.open", "pool.group.1.open", "pool.group.2.open"}) {
            const Rect before = desk.node(key).rect;
            desk.focus(key);
            desk.settle();
            CHECK(desk.node("pool.pointed").name.find("L/mol") != std::string::npos);
            CHECK(desk.node(key).rect == before);
        }
    }
}

TEST_CASE("A class of 1,000 groups has few nodes, and one changed reading changes the class") {
    new_world();
    {
        Desk desk;
        begin(desk);
        std::string text = "Group,Mass of metal (g),Scale reading (mL)\n";
        for (int i = 1; i <= 1000; ++i) text += std::to_string(i) + ",0.0412,9.1" + std::to_string(i % 10) + "\n";
        read(desk, text);
        REQUIRE(set(desk).points.size() == 1000);
        CHECK(desk.nodes().size() <= 1000);
        desk.send(Event::Kind::scroll, {}, {}, static_cast<double>(desk.node("pool.list").rect.y));
        desk.settle();
        desk.press("pool.group.4.open");
        const double before = set(desk).ratios.mean;
        desk.type("pool.group.4.0.scale_reading", "12.15");
        CHECK(desk.nodes().size() <= 1000);
        // 3 mL less in the tube than at 9.15 in one of a thousand: 3 * 0.89 mL / 1.695 mmol / 1000.
        CHECK(before - set(desk).ratios.mean == doctest::Approx(3.0 * 0.89 / 1.695 / 1000 * 1e-3).epsilon(0.02));
        // So large a class is kept a little later.
        CHECK(desk.app().pool_desk().not_kept);
        desk.wait(2000);
        CHECK_FALSE(desk.app().pool_desk().not_kept);
    }
    Desk again;
    CHECK(again.app().pool_desk().groups.size() == 1000);
}

TEST_CASE("A class is not kept where nothing is to be kept, and that is said") {
    new_world();
    Desk desk;
    begin(desk);
    native_world().put_result = platform::StoreResult::full;
    read(desk, three);
    CHECK(has(all_words(desk), "not kept by the browser"));
    native_world().put_result = platform::StoreResult::ok;
    desk.press("pool.add");
    CHECK_FALSE(has(all_words(desk), "not kept by the browser"));
}
