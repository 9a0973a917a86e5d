// Keeping: each input is in storage before its handler returns; storage that refuses loses nothing in memory.

#include <algorithm>
#include <map>

#include "doctest/doctest.h"
#include "tests/ui/desk.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

/// What a tab opened on a storage finds there; it needs no screen for that.
std::unique_ptr<App> opened() {
    auto app = std::make_unique<App>();
    app->handle({Event::Kind::visibility, "", "", 1});
    return app;
}

/// What the page says about keeping.
std::string said(const Desk& desk) { return desk.node("header.record").name; }

}  // namespace

TEST_CASE("A tab killed after any keystroke comes back with it") {
    new_world();
    Desk desk;
    desk.own_run();
    const std::string id = desk.app().record().id;
    desk.focus("bench.mass_of_metal");
    std::string typed;
    for (const char c : std::string_view("0,0412 g")) {
        typed += c;
        desk.send(Event::Kind::input, "bench.mass_of_metal", typed);
        // No frame, no timer: the tab is gone here.
        const auto reopened = opened();
        CHECK(reopened->record().id == id);
        CHECK(reopened->entry(Field::mass_of_metal).text == typed);
    }
    desk.send(Event::Kind::change, "bench.liquid_stands.level", "level");
    CHECK(opened()->entry(Field::liquid_stands).text == "level");
    desk.send(Event::Kind::change, "bench.barometer.unit", "inHg");
    CHECK(opened()->entry(Field::barometer).unit == UnitId::inch_of_mercury);
    desk.send(Event::Kind::change, "conventions.decimal_sign.comma", "comma");
    CHECK(opened()->record().conventions.decimal_sign == DecimalSign::comma);
    desk.send(Event::Kind::input, "records.name", "Blue bench");
    CHECK(opened()->record().name == "Blue bench");
}

TEST_CASE("A whole record comes back the same after a reload, by the page too") {
    new_world();
    std::map<std::string, std::string> before;
    {
        Desk desk;
        desk.own_run();
        desk.type_record_a();
        for (const Node& node : desk.nodes()) before[node.key] = node.value;
    }
    Desk desk;
    CHECK(desk.output("Molar volume at standard conditions") == "22.68 L/mol");
    for (const Node& node : desk.nodes()) CHECK_MESSAGE(before[node.key] == node.value, node.key);
}

TEST_CASE("Storage that is full or denied says so and loses nothing in memory") {
    for (const auto result : {platform::StoreResult::full, platform::StoreResult::denied}) {
        new_world();
        Desk desk;
        desk.own_run();
        desk.type("bench.mass_of_metal", "0.04");
        CHECK(said(desk).find("not saved") == std::string::npos);
        CHECK(said(desk).find("saved") != std::string::npos);
        native_world().put_result = result;
        desk.type_record_a();
        CHECK(said(desk).find("not saved") != std::string::npos);
        CHECK((said(desk).find("full") != std::string::npos) == (result == platform::StoreResult::full));
        CHECK(desk.output("Molar volume at standard conditions") == "22.68 L/mol");
        CHECK(opened()->entry(Field::mass_of_metal).text == "0.04");  // the last good copy is whole
        native_world().put_result = platform::StoreResult::ok;
        desk.focus("bench.barometer");
        desk.send(Event::Kind::input, "bench.barometer", "99.620");
        desk.frame();
        CHECK(said(desk).find("not saved") == std::string::npos);
        const auto reopened = opened();
        CHECK(reopened->entry(Field::barometer).text == "99.620");
        CHECK(reopened->entry(Field::temperature).text == "21.4");
    }
}

TEST_CASE("A page that may not read storage opens and works in memory") {
    new_world();
    native_world().reading_denied = true;
    native_world().put_result = platform::StoreResult::denied;
    Desk desk;
    CHECK(desk.app().record().invented);
    desk.own_run();
    CHECK(said(desk).find("not saved") != std::string::npos);
    desk.type_record_a();
    CHECK(said(desk).find("not saved") != std::string::npos);
    CHECK(desk.output("Molar volume at standard conditions") == "22.68 L/mol");
}

TEST_CASE("Texts that are no records are left alone, counted and told") {
    new_world();
    native_world().store["overwater.record.broken"] = "{\"schema\":1,\"data\":";
    native_world().store["somebody.else"] = "theirs";
    Desk desk;
    desk.own_run();
    desk.type("bench.mass_of_metal", "0.0412");
    desk.press("header.record");
    CHECK(desk.node("records.unreadable").name.find("1 kept text could") != std::string::npos);
    CHECK(stored_record("broken") == "{\"schema\":1,\"data\":");
    CHECK(native_world().store["somebody.else"] == "theirs");
}

TEST_CASE("The invented example is never stored under a person's record") {
    new_world();
    Desk desk;
    CHECK(desk.app().record().invented);
    CHECK(desk.find("example.banner") != nullptr);
    CHECK(stored_ids().empty());  // a look is no record
    CHECK(desk.output("Molar volume at standard conditions") == "22.68 L/mol");
    desk.type("bench.mass_of_metal", "0.0500");
    CHECK(stored_ids() == std::vector<std::string>{"example"});
    CHECK(stored_record("example").find("\"invented\":true") != std::string::npos);
    const std::string example = stored_record("example");

    desk.own_run();
    const std::string id = desk.app().record().id;
    CHECK(id != "example");
    CHECK_FALSE(desk.app().record().invented);
    CHECK(desk.find("example.banner") == nullptr);
    CHECK(desk.node("bench.mass_of_metal").value.empty());
    CHECK(desk.node("bench.barometer").value.empty());
    CHECK(desk.document().focused == "bench.mass_of_metal");
    desk.type("bench.mass_of_metal", "0.0333");
    CHECK(stored_record("example") == example);
    CHECK(stored_record(id).find("0.0333") != std::string::npos);
    CHECK(stored_record(id).find("\"invented\":true") == std::string::npos);
    for (const char* reading : {"9.15", "2.35", "99.62", "0.0500"}) {
        CHECK_MESSAGE(stored_record(id).find(reading) == std::string::npos, reading);
    }

    // Undo cannot cross over either.
    desk.send(Event::Kind::undo);
    desk.send(Event::Kind::undo);
    CHECK_FALSE(desk.app().record().invented);
    CHECK(opened()->record().id == id);
}

TEST_CASE("Records are separate, listed, and opened by name") {
    new_world();
    Desk desk;
    desk.own_run();
    const std::string first = desk.app().record().id;
    desk.type("bench.mass_of_metal", "0.0412");
    desk.press("header.record");
    desk.type("records.name", "Blue bench");
    desk.press("records.new");
    const std::string second = desk.app().record().id;
    CHECK(first != second);
    CHECK(desk.node("bench.mass_of_metal").value.empty());
    desk.type("bench.mass_of_metal", "0.0390");
    CHECK(stored_ids().size() == 2);
    desk.press("header.record");
    CHECK(desk.node("records.open." + second).current);
    CHECK(desk.node("records.open." + first).name.find("Blue bench") != std::string::npos);
    desk.press("records.open." + first);
    CHECK(desk.node("bench.mass_of_metal").value == "0.0412");
    CHECK(desk.document().pieces["bench.mass_of_metal"].value == "0.0412");
    desk.press("header.record");
    desk.press("records.open.example");
    CHECK(desk.app().record().invented);
    CHECK(desk.output("Molar volume at standard conditions") == "22.68 L/mol");
    CHECK(stored_ids().size() == 2);
}
