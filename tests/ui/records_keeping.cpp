// Records on the records page: new, duplicate, delete with undo, the list, a computer that is to keep nothing.

#include "doctest/doctest.h"
#include "tests/ui/desk.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

std::string header(const Desk& desk) { return desk.node("header.record").name; }

/// A desk with one record that holds a mass, named, on the records page; its id.
std::string named_record(Desk& desk, const std::string& name, std::string_view mass) {
    desk.app().new_record();
    desk.settle();
    desk.type("bench.mass_of_metal", mass);
    desk.press("header.record");
    desk.type("records.name", name);
    return desk.app().record().id;
}

std::string shown_name(const Desk& desk, const std::string& id) { return desk.node("records.open." + id).name; }

}  // namespace

TEST_CASE("A duplicate says the same under another id, and changes by itself") {
    new_world();
    Desk desk;
    const std::string first = named_record(desk, "Blue bench", "0.0412");
    const std::string before = stored_record(first);
    desk.press("records.duplicate." + first);
    const std::string second = desk.app().record().id;
    CHECK(second != first);
    CHECK(stored_ids().size() == 2);
    CHECK(desk.app().record().name == "Blue bench (copy)");
    CHECK(desk.app().entry(Field::mass_of_metal).text == "0.0412");
    desk.press("header.bench");
    desk.type("bench.mass_of_metal", "0.0500");
    CHECK(stored_record(first) == before);
    CHECK(stored_record(second).find("0.0500") != std::string::npos);
}

TEST_CASE("A deleted record comes back by undo under the same key with the same text") {
    for (const bool by_keyboard : {false, true}) {
        new_world();
        Desk desk;
        const std::string first = named_record(desk, "Blue bench", "0.0412");
        const std::string second = named_record(desk, "Red bench", "0.0390");
        const auto before = native_world().store;
        desk.press("records.delete." + first);
        CHECK(stored_ids() == std::vector<std::string>{second});
        CHECK(desk.find("records.open." + first) == nullptr);
        CHECK(desk.node("notice.deleted").name == "Deleted Blue bench.");
        CHECK(desk.document().focused == "notice.undo");
        if (by_keyboard) {
            desk.send(Event::Kind::undo);
            desk.settle();
        } else {
            desk.press("notice.undo");
        }
        CHECK(native_world().store == before);
        CHECK(shown_name(desk, first).find("Blue bench") != std::string::npos);
        CHECK(desk.find("notice.deleted") == nullptr);
        CHECK(desk.app().record().id == second);
    }
}

TEST_CASE("Deleting what is shown shows another record; undo shows it again") {
    new_world();
    Desk desk;
    const std::string first = named_record(desk, "Blue bench", "0.0412");
    const std::string second = named_record(desk, "Red bench", "0.0390");
    desk.press("records.delete." + second);
    CHECK(desk.app().record().id == first);
    desk.press("notice.undo");
    CHECK(desk.app().record().id == second);
    CHECK(desk.app().entry(Field::mass_of_metal).text == "0.0390");
    desk.press("records.delete." + second);
    desk.press("records.delete." + first);
    CHECK(desk.app().record().invented);  // nothing of one's own is left: the example
    CHECK(stored_ids().empty());
    // The offer ends with the next action; the one before it has ended already.
    CHECK(desk.node("notice.deleted").name == "Deleted Blue bench.");
    desk.press("header.bench");
    CHECK(desk.find("notice.deleted") == nullptr);
    desk.send(Event::Kind::undo);
    CHECK(stored_ids().empty());
}

TEST_CASE("The list has date and result, and marks the record at hand") {
    new_world();
    Desk desk;
    const std::string first = named_record(desk, "Blue bench", "0.0412");
    const std::string second = named_record(desk, "Red bench", "");
    desk.press("records.open." + first);
    desk.type_record_a();
    desk.press("header.record");
    CHECK(desk.node("records.open." + first).current);
    CHECK_FALSE(desk.node("records.open." + second).current);
    // Record A of method.md: 22.68 L/mol.
    CHECK(plain(shown_name(desk, first)) == "Open Blue bench, 22.68 L/mol, 2026-01-31");
    CHECK(plain(shown_name(desk, second)).find("waiting for") != std::string::npos);
    desk.press("records.open." + second);
    desk.press("header.record");
    CHECK(plain(shown_name(desk, first)).find("22.68 L/mol") != std::string::npos);
    // Not parsed again by frames: what lies in storage may change behind the list's back.
    const std::string kept = stored_record(first);
    native_world().store["overwater.record." + first] = "gone";
    for (int i = 0; i < 5; ++i) desk.frame();
    CHECK(plain(shown_name(desk, first)).find("22.68 L/mol") != std::string::npos);
    desk.send(Event::Kind::storage, "overwater.record." + first, "gone");
    desk.settle();
    CHECK(desk.find("records.open." + first) == nullptr);
    CHECK(desk.find("records.damaged.overwater.record." + first) != nullptr);
}

TEST_CASE("The mean of several runs stands in the list") {
    new_world();
    Desk desk;
    const std::string id = named_record(desk, "Blue bench", "0.0412");
    desk.press("header.bench");
    desk.type_record_a();
    desk.app().add_run();
    desk.settle();
    desk.type("bench.mass_of_metal", "0.0412");
    desk.type("bench.scale_reading", "9.15");
    desk.choose("bench.liquid_stands.higher_inside", "higher_inside");
    desk.type("bench.level_difference", "112");
    desk.settle();
    desk.press("header.record");
    // Twice the same run: the mean is that of record A.
    CHECK(plain(shown_name(desk, id)) == "Open Blue bench, 22.68 L/mol, mean of 2 runs, 2026-01-31");
}

TEST_CASE("Not kept: nothing is written, the header says so, and nothing on the screen is lost") {
    new_world();
    Desk desk;
    const std::string id = named_record(desk, "Blue bench", "0.0412");
    const auto before = native_world().store;
    desk.choose("records.not_kept", "true");
    CHECK(header(desk).find("not kept") != std::string::npos);
    CHECK(native_world().store == before);  // until the person says otherwise
    desk.press("header.bench");
    desk.type("bench.mass_of_metal", "0.0500");
    CHECK(native_world().store == before);
    desk.press("header.record");
    desk.press("records.new");
    desk.type("bench.mass_of_metal", "0.0333");
    const std::string second = desk.app().record().id;
    CHECK(native_world().store == before);
    desk.press("header.record");
    desk.press("records.open." + id);
    CHECK(desk.node("bench.mass_of_metal").value == "0.0500");
    desk.press("header.record");
    CHECK(desk.find("records.still_stored") != nullptr);
    desk.press("records.remove_stored");
    CHECK(stored_ids().empty());
    CHECK(desk.app().entry(Field::mass_of_metal).text == "0.0500");
    CHECK(desk.find("records.still_stored") == nullptr);
    // Ticked off again, all of it is kept.
    desk.choose("records.not_kept", "false");
    CHECK(header(desk).find("not kept") == std::string::npos);
    CHECK(stored_record(id).find("0.0500") != std::string::npos);
    CHECK(stored_record(second).find("0.0333") != std::string::npos);
}

TEST_CASE("Where storage refuses, a file is offered and other records can be opened without a loss") {
    for (const auto result : {platform::StoreResult::full, platform::StoreResult::denied}) {
        new_world();
        Desk desk;
        desk.own_run();
        const std::string id = desk.app().record().id;
        CHECK(desk.find("header.export") == nullptr);
        native_world().put_result = result;
        desk.type("bench.mass_of_metal", "0.0412");
        CHECK(header(desk).find("not saved") != std::string::npos);
        desk.press("header.export");
        REQUIRE(native_world().files.size() == 1);
        CHECK(native_world().files[0].text.find("0.0412") != std::string::npos);
        desk.press("header.record");
        CHECK(shown_name(desk, id).find("in memory only") != std::string::npos);
        desk.press("records.open.example");
        CHECK(desk.app().record().invented);
        desk.press("header.record");
        desk.press("records.open." + id);
        CHECK(desk.node("bench.mass_of_metal").value == "0.0412");
        CHECK(header(desk).find("not saved") != std::string::npos);
    }
}

TEST_CASE("Finished: asked once, then nothing of ours is left, and nothing comes back by looking around") {
    new_world();
    native_world().store["somebody.else"] = "theirs";
    native_world().store["overwater.conventions.x"] = "{}";
    Desk desk;
    named_record(desk, "Blue bench", "0.0412");
    named_record(desk, "Red bench", "0.0390");
    const auto before = native_world().store;
    desk.press("records.finish");
    CHECK(native_world().store == before);
    desk.press("records.finish_export");
    REQUIRE(native_world().files.size() == 1);
    CHECK(native_world().files[0].text.find("Blue bench") != std::string::npos);
    CHECK(native_world().files[0].text.find("Red bench") != std::string::npos);
    desk.press("records.finish_no");
    CHECK(native_world().store == before);
    CHECK(desk.find("records.finish_yes") == nullptr);
    desk.press("records.finish");
    desk.press("records.finish_yes");
    CHECK(native_world().store.size() == 1);
    CHECK(native_world().store["somebody.else"] == "theirs");
    CHECK(native_world().offline_forgotten == 1);
    CHECK(desk.app().record().invented);
    CHECK(desk.node("notice.0").name.find("nothing of yours is left") != std::string::npos);
    for (const char* key : {"header.bench", "header.cautions", "header.record", "records.open.example"})
        desk.press(key);
    CHECK(native_world().store.size() == 1);
    desk.type("bench.mass_of_metal", "0.05");
    CHECK(stored_ids() == std::vector<std::string>{"example"});
}

TEST_CASE("A damaged text is left under its key, can be saved as it is, and deleted by hand") {
    new_world();
    const std::map<std::string, std::string, std::less<>> damaged{
        {"overwater.record.torn", "{\"schema\":1,\"data\":{\"over"},
        {"overwater.settings", "\x01 no setting"},
        {"overwater.conventions.torn", "{\"schema\""}};
    native_world().store = damaged;
    Desk desk;
    desk.own_run();
    desk.type("bench.mass_of_metal", "0.0412");
    for (const char* key : {"header.cautions", "header.record"}) desk.press(key);
    CHECK(native_world().store.size() == 4);
    int saved = 0;
    for (const auto& [key, text] : damaged) {
        CHECK(native_world().store[key] == text);
        desk.press("records.damaged_export." + key);
        REQUIRE(native_world().files.size() == static_cast<std::size_t>(++saved));
        CHECK(native_world().files.back().text == text);
    }
    for (const auto& [key, text] : damaged) {
        desk.press("records.damaged_delete." + key);
        CHECK(native_world().store.count(key) == 0);
        desk.press("notice.undo");
        CHECK(native_world().store[key] == text);
        desk.press("records.damaged_delete." + key);
        CHECK(native_world().store.count(key) == 0);
    }
    CHECK(desk.find("records.unreadable") == nullptr);
    desk.press("header.cautions");
    CHECK(native_world().store["overwater.settings"].find("page=cautions") != std::string::npos);
}
