// A record in a link: it comes out as it went in, overwrites nothing, and a broken one is refused.

#include <doctest/doctest.h>

#include "core/record/json.hpp"
#include "tests/ui/desk.hpp"
#include "web/app/record_link.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

std::string copied_link(Desk& desk) {
    desk.press("header.record");
    desk.press("records.copy_link");
    REQUIRE_FALSE(native_world().clipboard.empty());
    const std::string link = native_world().clipboard.back();
    REQUIRE(link.starts_with("#record="));
    return link.substr(1);
}

void open_link(Desk& desk, const std::string& fragment) {
    native_world().fragment = fragment;
    desk.send(Event::Kind::fragment, {}, fragment);
    desk.settle();
}

}  // namespace

TEST_CASE("a record goes through a link unchanged, in any script") {
    Record record;
    record.id = "a";
    record.name = "José, Zoë, 李";
    record.notes = "quotes \" and \\ and\nlines";
    const std::string fragment = record_fragment(record);
    CHECK(fragment.find_first_not_of("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_=") == std::string::npos);
    const auto text = record_text_in(fragment);
    REQUIRE(text);
    CHECK(*text == record_to_json(record, JsonLayout::compact));
    CHECK_FALSE(record_text_in("practice=ABC"));
    CHECK(record_text_in("record=%%%") == "");
    // RFC 4648, 10: "foobar" and its beginnings, here without padding.
    CHECK(record_text_in("record=Zg") == "f");
    CHECK(record_text_in("record=Zm8") == "fo");
    CHECK(record_text_in("record=Zm9v") == "foo");
    CHECK(record_text_in("record=Zm9vYmFy") == "foobar");
}

TEST_CASE("opening a link overwrites nothing, and is done once") {
    new_world();
    Desk desk;
    desk.own_run();
    desk.type_record_a();
    const std::string fragment = copied_link(desk);
    const std::size_t before = desk.app().shelf().cards().size();

    open_link(desk, fragment);
    CHECK(desk.app().shelf().cards().size() == before);  // the same record is here already
    CHECK(native_world().fragment.empty());

    desk.type("bench.scale_reading", "9.25");
    open_link(desk, fragment);
    CHECK(desk.app().shelf().cards().size() == before + 1);
    CHECK(desk.app().entry(Field::scale_reading).text == "9.15");
    bool kept = false;
    for (const auto& card : desk.app().shelf().cards()) {
        const auto loaded = desk.app().shelf().load(card.id);
        kept = kept || (loaded && entry_for(loaded->record, 0, Field::scale_reading).text == "9.25");
    }
    CHECK(kept);
}

TEST_CASE("a broken link is refused with its reason, and what was shown stays") {
    new_world();
    Desk desk;
    desk.own_run();
    desk.type("bench.scale_reading", "9.15");
    for (const char* fragment : {"record=", "record=!!", "record=Zm9v", "record=e30"}) {
        CAPTURE(fragment);
        open_link(desk, fragment);
        REQUIRE_FALSE(desk.app().notices().empty());
        CHECK(desk.app().notices().back().warning);
        CHECK(desk.app().entry(Field::scale_reading).text == "9.15");
    }
}
