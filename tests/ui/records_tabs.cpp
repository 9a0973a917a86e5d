// Two windows on one storage: neither loses a word.

#include "doctest/doctest.h"
#include "tests/ui/desk.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

std::string key_of(const std::string& id) { return "overwater.record." + id; }

/// A window without a screen.
struct Window {
    App app;
    Window() { app.handle({Event::Kind::visibility, "", "", 1}); }
    void type(const std::string& key, const std::string& text) { app.handle({Event::Kind::input, key, text}); }
    void told(const std::string& id, const std::string& text) { app.handle({Event::Kind::storage, key_of(id), text}); }
    const std::string& mass() const { return app.entry(Field::mass_of_metal).text; }
    const std::string& barometer() const { return app.entry(Field::barometer).text; }
    std::string said() const { return app.notices().empty() ? std::string() : app.notices().back().words; }
};

constexpr const char* mass = "bench.mass_of_metal";
constexpr const char* barometer = "bench.barometer";

/// Whether some record in storage holds both texts.
bool stored_together(const std::string& one, const std::string& other) {
    for (const std::string& id : stored_ids()) {
        const std::string text = stored_record(id);
        if (text.find(one) != std::string::npos && text.find(other) != std::string::npos) return true;
    }
    return false;
}

/// A record in storage that both windows will open.
std::string common_record() {
    new_world();
    Window first;
    first.app.new_record();
    first.type(mass, "0.0412");
    return first.app.record().id;
}

}  // namespace

TEST_CASE("A window that looks on takes over what the other wrote, and says so") {
    const std::string id = common_record();
    Window one;
    Desk two;
    two.press("header.bench");
    two.focus(mass);
    one.type(barometer, "99.62");
    CHECK(two.app().entry(Field::barometer).text.empty());
    two.send(Event::Kind::storage, key_of(id), stored_record(id));
    two.settle();
    CHECK(two.app().record().id == id);
    CHECK(two.node(barometer).value == "99.62");
    CHECK(two.document().pieces[barometer].value == "99.62");
    CHECK(two.document().focused == mass);
    CHECK(two.app().interaction().focused == mass);
    CHECK(two.node("status").name.find("another window") != std::string::npos);
    CHECK(stored_ids().size() == 1);
    // And types on from there: the first takes over in its turn.
    two.type(mass, "0.0500");
    one.told(id, stored_record(id));
    CHECK(one.mass() == "0.0500");
    CHECK(one.barometer() == "99.62");
    CHECK(stored_ids().size() == 1);
}

TEST_CASE("A window that has not heard yet does not write over what the other wrote") {
    const std::string id = common_record();
    Window one;
    Window two;
    one.app.handle({Event::Kind::input, "records.name", "Blue bench"});
    two.told(id, stored_record(id));
    one.type(barometer, "99.62");
    const std::string first = stored_record(id);
    two.type(mass, "0.0777");
    CHECK(stored_record(id) == first);
    CHECK(stored_ids().size() == 2);
    CHECK(two.app.record().id != id);
    CHECK(two.app.record().name == "Blue bench (other window)");
    CHECK(two.mass() == "0.0777");
    CHECK(stored_record(two.app.record().id).find("0.0777") != std::string::npos);
    CHECK(two.said().find("Both are kept") != std::string::npos);
    // From here on each has a record of its own.
    two.told(id, first);
    one.type(barometer, "99.63");
    two.type(mass, "0.0778");
    two.told(id, stored_record(id));
    CHECK(stored_ids().size() == 2);
    CHECK(one.barometer() == "99.63");
    CHECK(two.mass() == "0.0778");
}

TEST_CASE("Both wrote before either heard: the one whose text was lost from storage keeps it under another id") {
    // Browsers with a process for each window write at once and tell each other later; the last one wins.
    const std::string id = common_record();
    const std::string common = stored_record(id);
    Window one;
    Window two;
    one.type(barometer, "99.62");
    const std::string by_one = stored_record(id);
    native_world().store[key_of(id)] = common;  // what the other process still sees
    two.type(mass, "0.0777");
    const std::string by_two = stored_record(id);
    one.told(id, by_two);
    two.told(id, by_one);
    CHECK(stored_record(id) == by_two);
    CHECK(two.app.record().id == id);
    CHECK(one.app.record().id != id);
    CHECK(one.barometer() == "99.62");
    CHECK(stored_ids().size() == 2);
    CHECK(stored_together("99.62", "0.0412"));
    CHECK(stored_together("0.0777", "\"revision\":"));
}

TEST_CASE("A record deleted in another window stays here and is kept again at the next input") {
    const std::string id = common_record();
    Window one;
    Window two;
    one.app.delete_record(id);
    CHECK(stored_ids().empty());
    two.told(id, "");
    CHECK(two.mass() == "0.0412");
    CHECK(two.app.say(two.app.keeping()).find("deleted in another window") != std::string::npos);
    CHECK(two.said().find("deleted in another window") != std::string::npos);
    CHECK(stored_ids().empty());
    SUBCASE("typed") {
        two.type(barometer, "99.62");
        CHECK(stored_ids() == std::vector<std::string>{id});
        CHECK(stored_together("0.0412", "99.62"));
        CHECK(two.app.keeping() == "keep.kept");
        // The first window's undo does not write over it.
        one.app.undo_delete();
        CHECK(stored_ids().size() == 2);
        CHECK(stored_together("0.0412", "99.62"));
    }
    SUBCASE("undone there") {
        one.app.undo_delete();
        two.told(id, stored_record(id));
        CHECK(stored_ids() == std::vector<std::string>{id});
        CHECK(two.app.record().id == id);
        CHECK(two.app.keeping() == "keep.kept");
    }
}

TEST_CASE("A window that slept takes over what it did not hear of") {
    const std::string id = common_record();
    Window one;
    Window two;
    one.type(barometer, "99.62");
    CHECK(two.barometer().empty());
    two.app.handle({Event::Kind::visibility, "", "", 1});
    CHECK(two.barometer() == "99.62");
    CHECK(two.app.record().id == id);
}

TEST_CASE("A record that is not shown is listed anew when another window changes it") {
    const std::string id = common_record();
    Desk two;
    two.app().new_record();
    two.press("header.record");
    Window one;
    one.app.open_record(id);
    one.type("records.name", "Blue bench");
    two.send(Event::Kind::storage, key_of(id), stored_record(id));
    two.settle();
    CHECK(two.node("records.open." + id).name.find("Blue bench") != std::string::npos);
    native_world().store.erase(key_of(id));
    two.send(Event::Kind::storage, key_of(id), "");
    two.settle();
    CHECK(two.find("records.open." + id) == nullptr);
}

TEST_CASE("Finished in another window: looking around here writes nothing") {
    const std::string id = common_record();
    Window one;
    Window two;
    one.app.finish();
    two.told(id, "");
    two.app.handle({Event::Kind::storage, "overwater.settings", ""});
    two.app.go(PageName::cautions);
    CHECK(native_world().store.empty());
    CHECK(two.mass() == "0.0412");
}
