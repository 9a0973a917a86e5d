// Records as files: what is exported can be imported, and a file that is no record changes nothing.

#include <algorithm>

#include "core/record/json.hpp"
#include "doctest/doctest.h"
#include "tests/ui/desk.hpp"
#include "web/app/files_scan.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

void drop(Desk& desk, const std::string& name, const std::string& text) {
    desk.wait(5000);
    desk.send(Event::Kind::file, name, text);
    desk.settle();
}

std::string said(Desk& desk) {
    std::string all;
    for (const App::Notice& notice : desk.app().notices()) all += notice.words + "\n";
    return all;
}

std::string exported(Desk& desk, const std::string& id) {
    desk.app().export_record(id);
    return native_world().files.back().text;
}

constexpr std::string_view newer_record =
    R"({"overwater":"record","version":2,"id":"new1","name":"From tomorrow","weight":1.50,)"
    R"("shared":{"barometer":{"text":"99.62","unit":"kPa"}},"runs":[{"entries":{"mass_of_metal":{"text":"0.0412"}}}]})";

}  // namespace

TEST_CASE("A record goes out as a file and comes back on another computer") {
    new_world();
    std::string file;
    Record before;
    {
        Desk desk;
        desk.own_run();
        desk.type_record_a();
        desk.press("header.record");
        desk.type("records.name", "../Blue: bench \u00fc*");
        before = desk.app().record();
        desk.press("records.export." + before.id);
        REQUIRE(native_world().files.size() == 1);
        CHECK(native_world().files[0].name == "Blue-bench-\u00fc-2026-01-31.json");
        CHECK(native_world().files[0].media_type == "application/json");
        file = native_world().files[0].text;
    }
    new_world();
    Desk desk;
    drop(desk, "a.json", file);
    CHECK(desk.app().record() == before);
    CHECK(stored_ids() == std::vector<std::string>{before.id});
    CHECK(desk.output("Molar volume at standard conditions") == "22.68 L/mol");
    CHECK(said(desk).find("a.json") != std::string::npos);
    // The same again is nothing new.
    const auto store = native_world().store;
    drop(desk, "a.json", file);
    CHECK(stored_ids().size() == 1);
    CHECK(said(desk).find("here already") != std::string::npos);
    CHECK(native_world().store == store);
}

TEST_CASE("An import never writes over a record") {
    new_world();
    Desk desk;
    desk.own_run();
    desk.type("bench.mass_of_metal", "0.0412");
    const std::string id = desk.app().record().id;
    const std::string file = exported(desk, id);
    desk.type("bench.mass_of_metal", "0.0500");
    const std::string mine = stored_record(id);
    drop(desk, "old.json", file);
    CHECK(stored_record(id) == mine);
    CHECK(stored_ids().size() == 2);
    CHECK(desk.app().record().id != id);
    CHECK(desk.node("bench.mass_of_metal").value == "0.0412");
    // Nor over a damaged text, nor under a key that is none.
    native_world().store["overwater.record.torn"] = "{";
    drop(desk, "torn.json", R"({"overwater":"record","version":1,"id":"torn","name":"x"})");
    CHECK(stored_record("torn") == "{");
    for (const char* odd : {"", "example", "../..", "a b", "x\\n"}) {
        drop(desk, "odd.json", std::string(R"({"overwater":"record","version":1,"name":"Odd","id":")") + odd + "\"}");
        CHECK(desk.app().record().name == "Odd");
        CHECK(desk.app().record().id.size() == 12);
    }
    CHECK(stored_record(id) == mine);
}

TEST_CASE("All records go into one file and come back") {
    new_world();
    std::string file;
    std::vector<std::string> ids;
    {
        Desk desk;
        for (const char* mass : {"0.0412", "0.0390", "0.0333"}) {
            desk.app().new_record();
            desk.settle();
            desk.type("bench.mass_of_metal", mass);
        }
        ids = stored_ids();
        desk.press("header.record");
        desk.press("records.export_all");
        file = native_world().files.back().text;
        CHECK(native_world().files.back().name == "overwater-records-2026-01-31.json");
    }
    new_world();
    {
        Desk desk;
        drop(desk, "all.json", "\xEF\xBB\xBF" + file);
        CHECK(stored_ids() == ids);
        CHECK(said(desk).find("3 new records") != std::string::npos);
        drop(desk, "all.json", file);
        CHECK(stored_ids() == ids);
        CHECK(said(desk).find("3 records were here already") != std::string::npos);
    }
    // One bad record among them: none is taken.
    new_world();
    Desk other;
    const std::size_t at = file.rfind("\"version\": 1");
    REQUIRE(at != std::string::npos);
    std::string bad = file;
    bad.replace(at, 12, "\"version\": x");
    drop(other, "all.json", bad);
    CHECK(stored_ids().empty());
    CHECK(said(other).find("all.json was not opened") != std::string::npos);
}

TEST_CASE("Several files come in one after the other, and each is answered") {
    new_world();
    Desk desk;
    desk.send(Event::Kind::file, "one.json", R"({"overwater":"record","version":1,"name":"One"})");
    desk.send(Event::Kind::file, "two.json", "no record");
    desk.send(Event::Kind::file, "three.json", R"({"overwater":"record","version":1,"name":"Three"})");
    desk.settle();
    CHECK(stored_ids().size() == 2);
    for (const char* name : {"one.json", "two.json", "three.json"}) CHECK(said(desk).find(name) != std::string::npos);
    CHECK(desk.node("notice.1").name.find("two.json was not opened") != std::string::npos);
    desk.press("header.record");
    CHECK(desk.find("notice.0") == nullptr);
}

TEST_CASE("A file that is no record is named with the reason, and nothing changes") {
    const auto record = [](const std::string& members) {
        return R"({"overwater":"record","version":1,)" + members + "}";
    };
    std::string members = "\"m0\":0";
    for (int i = 1; i < 300; ++i) members += ",\"m" + std::to_string(i) + "\":0";
    const std::pair<std::string, const char*> faulty[] = {
        {"", "empty"},
        {"\x89PNG\r\n\x1a\n", "UTF-8"},
        {"Dear diary", "not a complete record"},
        {R"({"overwater":"record","version":1,"na)", "not a complete record"},
        {R"({"name":"someone else's file"})", "no Overwater record"},
        {"[1,2,3]", "no Overwater record"},
        {R"({"overwater":"outcome","version":1})", "no Overwater record"},
        {record(R"("name":")" + std::string(1'000'000, 'x') + "\""), "1 MB"},
        {record(R"("x":)" + std::string(200'000, '[') + std::string(200'000, ']')), "nested"},
        {std::string(100'000, '['), "nested"},
        {record(members), "256 members"},
        {record(R"("name":7)"), "name"},
        {record(R"("shared":{"barometer":{"text":99.62}})"), "shared.barometer.text"},
        {record(R"("shared":{"barometer":{"text":"99","unit":"mL"}})"), "mL"},
        {record(R"("runs":[{},{},{},{},{},{},{}])"), "7 runs"},
        {record(R"("conventions":{"own_celsius":1e999})"), "not a complete record"},
        {R"({"overwater":"records","version":1,"records":[)", "not a complete record"},
        {R"({"overwater":"records","version":1,"records":[]})", "no records"},
        {R"({"overwater":"records","version":1,"records":{}})", "not a complete record"},
        {R"({"overwater":"records","version":2,"records":[]})", "newer version"},
        {R"({"overwater":"records","version":1,"records":[{"overwater":"record","version":1},7]})",
         "no Overwater record"},
        {std::string(17'000'000, ' '), "16 MB"},
    };
    new_world();
    Desk desk;
    desk.own_run();
    desk.type("bench.mass_of_metal", "0.0412");
    const auto store = native_world().store;
    const Record before = desk.app().record();
    for (const auto& row : faulty) {
        const auto& text = row.first;
        const auto& reason = row.second;
        drop(desk, "odd file.json", text);
        CHECK_MESSAGE(said(desk).find("odd file.json was not opened. ") == 0, text.substr(0, 60));
        CHECK_MESSAGE(said(desk).find(reason) != std::string::npos, said(desk));
        CHECK(desk.node("status").name + "\n" == said(desk));
        CHECK(native_world().store == store);
        CHECK(desk.app().record() == before);
    }
    // The comparison sees a change: a good file makes one.
    drop(desk, "good.json", record(R"("name":"Good")"));
    CHECK(native_world().store != store);
    CHECK(desk.app().record() != before);
}

TEST_CASE("A newer program's record can be read and goes out as it came, but is not changed") {
    new_world();
    {
        Desk desk;
        drop(desk, "new.json", std::string(newer_record));
        CHECK(desk.app().record().name == "From tomorrow");
        CHECK(desk.app().entry(Field::barometer).text == "99.62");
        CHECK(desk.find("notice.read_only") != nullptr);
        const auto store = native_world().store;
        const Record before = desk.app().record();
        // Typing, choosing, adding a run, the name, conventions: each is refused with a sentence.
        desk.type("bench.mass_of_metal", "0.05");
        CHECK(desk.app().record() == before);
        CHECK(said(desk).find("not changed") != std::string::npos);
        CHECK(desk.document().pieces["bench.mass_of_metal"].value == "0.0412");
        desk.send(Event::Kind::change, "bench.metal", "zinc");
        desk.send(Event::Kind::change, "bench.barometer.unit", "inHg");
        desk.send(Event::Kind::change, "conventions.decimal_sign.comma", "comma");
        desk.send(Event::Kind::input, "records.name", "Mine");
        desk.app().add_run();
        desk.send(Event::Kind::undo);
        desk.settle();
        CHECK(desk.app().record() == before);
        desk.press("header.record");
        auto now = native_world().store;
        now.erase("overwater.settings");
        auto then = store;
        then.erase("overwater.settings");
        CHECK(now == then);
        CHECK(desk.find("records.duplicate.new1") == nullptr);
        desk.press("records.export.new1");
        CHECK(native_world().files.back().text == newer_record);
    }
    // After a reload too, and within a file of all.
    Desk again;
    CHECK(again.app().read_only());
    CHECK(exported(again, "new1") == newer_record);
    again.app().export_all();
    CHECK(native_world().files.back().text.find(newer_record) != std::string::npos);
    // Another record can be changed as ever.
    again.app().new_record();
    again.settle();
    CHECK(again.find("notice.read_only") == nullptr);
    again.type("bench.mass_of_metal", "0.05");
    CHECK(again.app().entry(Field::mass_of_metal).text == "0.05");
}

TEST_CASE("Parts of a JSON text are found as they stand") {
    CHECK(member_text(R"( { "a" : [1, {"b":"}"}] , "c": "x\"y" } )", "a") == R"([1, {"b":"}"}])");
    CHECK(member_text(R"({"a":1,"c":"x\"y"})", "c") == R"("x\"y")");
    CHECK(member_text(R"({"a":1,"a":2})", "a") == "2");  // as core/record reads it
    for (const char* text :
         {"", "{", "{}", "[]", "{\"a\"", "{\"a\":", "{\"a\":1", "{\"a\":1} x", "{a:1}", "{\"a\":[1}", "{\"a\":\"}"}) {
        CHECK_MESSAGE(!member_text(text, "a"), text);
    }
    CHECK(element_texts("[]")->empty());
    CHECK(*element_texts(R"([1 , "a,]", {"b":[2,3]}])") ==
          std::vector<std::string_view>{"1", R"("a,]")", R"({"b":[2,3]})"});
    for (const char* text : {"", "[", "[1", "[1,", "[1,]", "[,1]", "[1] 2", "[1 2]", "{}"}) {
        CHECK_MESSAGE(!element_texts(text), text);
    }
}
