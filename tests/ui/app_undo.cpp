// One undo over the record (rule 13 of the mirror): typing in one field without leaving it and without a pause of a
// second is one step.

#include "doctest/doctest.h"
#include "tests/ui/desk.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

struct Fresh {
    Fresh() {
        new_world();
        desk = std::make_unique<Desk>();
        desk->own_run();
    }
    Desk* operator->() const { return desk.get(); }
    const std::string& text(const char* key) const { return desk->node(key).value; }
    /// What the document's control shows, which is what the person sees while it has the focus.
    const std::string& in_document(const char* key) const { return desk->document().pieces[key].value; }
    void undo() const {
        desk->send(Event::Kind::undo);
        desk->settle();
    }
    void redo() const {
        desk->send(Event::Kind::redo);
        desk->settle();
    }
    std::unique_ptr<Desk> desk;
};

}  // namespace

TEST_CASE("Typing in one field without a pause is one step of undo") {
    Fresh desk;
    desk->type("bench.mass_of_metal", "0.0412");
    CHECK(desk.text("bench.mass_of_metal") == "0.0412");
    desk.undo();
    CHECK(desk.text("bench.mass_of_metal").empty());
    CHECK(desk.in_document("bench.mass_of_metal").empty());
    desk.redo();
    CHECK(desk.text("bench.mass_of_metal") == "0.0412");
    CHECK(desk.in_document("bench.mass_of_metal") == "0.0412");
}

TEST_CASE("A pause of one second begins another step; less does not") {
    Fresh desk;
    desk->focus("bench.mass_of_metal");
    desk->send(Event::Kind::input, "bench.mass_of_metal", "0.04");
    desk->wait(999);
    desk->send(Event::Kind::input, "bench.mass_of_metal", "0.041");
    desk->wait(1000);
    desk->send(Event::Kind::input, "bench.mass_of_metal", "0.0412");
    desk.undo();
    CHECK(desk.text("bench.mass_of_metal") == "0.041");
    desk.undo();
    CHECK(desk.text("bench.mass_of_metal").empty());
    desk.redo();
    desk.redo();
    CHECK(desk.text("bench.mass_of_metal") == "0.0412");
}

TEST_CASE("Leaving the field begins another step") {
    Fresh desk;
    desk->type("bench.mass_of_metal", "0.04");
    desk->blur();
    desk->focus("bench.mass_of_metal");
    desk->send(Event::Kind::input, "bench.mass_of_metal", "0.0412");
    desk->type("bench.temperature", "21.4");
    desk.undo();
    CHECK(desk.text("bench.temperature").empty());
    CHECK(desk.text("bench.mass_of_metal") == "0.0412");
    desk.undo();
    CHECK(desk.text("bench.mass_of_metal") == "0.04");
    desk.undo();
    CHECK(desk.text("bench.mass_of_metal").empty());
}

TEST_CASE("Undo takes the focus and the caret to the place changed") {
    Fresh desk;
    desk->type("bench.mass_of_metal", "0.0412");
    desk->type("bench.temperature", "21.4");
    desk->blur();
    native_world().focused.clear();
    desk->send(Event::Kind::undo);
    CHECK(native_world().focused == "bench.temperature");
    CHECK(native_world().caret == -1);
    desk->settle();
    CHECK(desk->document().focused == "bench.temperature");
    desk->send(Event::Kind::undo);
    CHECK(native_world().focused == "bench.mass_of_metal");
    desk->settle();
    desk->press("header.conventions");
    desk->send(Event::Kind::redo);
    desk->settle();
    // The place is on another page: that page is shown.
    CHECK(desk->find("bench.mass_of_metal") != nullptr);
    CHECK(desk->document().focused == "bench.mass_of_metal");
}

TEST_CASE("Choices, units and conventions are undone too") {
    Fresh desk;
    desk->choose("bench.metal", "zinc");
    desk->choose("bench.acid.sulfuric", "sulfuric");
    desk->choose("bench.barometer.unit", "inHg");
    desk->press("header.conventions");
    desk->choose("conventions.decimal_sign.comma", "comma");
    desk.undo();
    CHECK(desk->app().record().conventions.decimal_sign == DecimalSign::point);
    desk.undo();
    CHECK(desk.text("bench.barometer.unit") == "kPa");
    desk.undo();
    CHECK(desk->node("bench.acid.hydrochloric").checked);
    CHECK(desk->document().pieces["bench.acid.hydrochloric"].on);
    desk.undo();
    CHECK(desk.text("bench.metal") == "magnesium");
    CHECK(desk.in_document("bench.metal") == "magnesium");
    for (int i = 0; i < 4; ++i) desk.redo();
    CHECK(desk.text("bench.metal") == "zinc");
    CHECK(desk->node("bench.acid.sulfuric").checked);
    CHECK(desk.text("bench.barometer.unit") == "inHg");
    CHECK(desk->app().record().conventions.decimal_sign == DecimalSign::comma);
}

TEST_CASE("The buttons undo and redo like the keys; a new change forgets what was undone") {
    Fresh desk;
    desk->type("bench.mass_of_metal", "0.0412");
    desk->press("header.undo");
    CHECK(desk.text("bench.mass_of_metal").empty());
    desk->press("header.redo");
    CHECK(desk.text("bench.mass_of_metal") == "0.0412");
    desk->press("header.undo");
    desk->type("bench.temperature", "21.4");
    desk->press("header.redo");
    CHECK(desk.text("bench.mass_of_metal").empty());
    CHECK(desk.text("bench.temperature") == "21.4");
    desk->press("header.undo");
    desk->press("header.undo");
    desk->press("header.undo");  // once more than there is
    CHECK(desk.text("bench.temperature").empty());
}

TEST_CASE("What undo brings back is kept like anything typed") {
    Fresh desk;
    desk->type("bench.mass_of_metal", "0.0412");
    desk->send(Event::Kind::undo);
    CHECK(stored_record(desk->app().record().id).find("0.0412\",\"unit") == std::string::npos);
    App reopened;
    reopened.handle({Event::Kind::visibility, "", "", 1});
    CHECK(reopened.entry(Field::mass_of_metal).text.empty());
    desk->send(Event::Kind::redo);
    App again;
    again.handle({Event::Kind::visibility, "", "", 1});
    CHECK(again.entry(Field::mass_of_metal).text == "0.0412");
}

TEST_CASE("Undo ends at the record: another one's changes stay") {
    Fresh desk;
    desk->type("bench.mass_of_metal", "0.0412");
    const std::string first = desk->app().record().id;
    desk->press("header.record");
    desk->press("records.new");
    desk.undo();
    CHECK(desk->app().record().id != first);
    desk->press("header.record");
    desk->press("records.open." + first);
    CHECK(desk.text("bench.mass_of_metal") == "0.0412");
}
