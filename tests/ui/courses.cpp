// Courses: chosen at once and taken back at once, kept by name, shared and offered; readings are never touched.

#include "core/record/course_json.hpp"
#include "core/record/stored.hpp"
#include "core/result/course.hpp"
#include "doctest/doctest.h"
#include "tests/ui/desk.hpp"
#include "web/app/fragment.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

/// A desk with record A, at the conventions.
struct Begun {
    Begun() {
        new_world();
        desk = std::make_unique<Desk>();
        desk->own_run();
        desk->type_record_a();
        desk->press("header.conventions");
    }
    Desk* operator->() const { return desk.get(); }
    const Record& record() const { return desk->app().record(); }
    void enter(const std::string& key, const std::string& text) const {
        desk->focus(key);
        desk->document().type(key, text);
        desk->send(Event::Kind::input, key, text);
        desk->settle();
    }
    void keep(const std::string& name) const {
        enter("conventions.course_name", name);
        desk->press("conventions.course_keep");
    }
    std::string said() const {
        std::string all;
        for (const App::Notice& notice : desk->app().notices()) all += notice.words + "\n";
        return all;
    }
    void drop(const std::string& text) const {
        desk->wait(5000);
        desk->send(Event::Kind::file, "course.json", text);
        desk->settle();
    }
    std::unique_ptr<Desk> desk;
};

bool has(const std::string& text, std::string_view what) { return text.find(what) != std::string::npos; }

OwnCourse autumn() {
    OwnCourse course{"Autumn \u8bfe", {}};
    course.conventions.standard = StandardConditions::zero_celsius_1_atmosphere;
    course.conventions.pressure_unit = UnitId::torr;
    course.conventions.answers = Conventions::Answers::hidden;
    return course;
}

}  // namespace

TEST_CASE("A course is chosen in one step, which is taken back in one, and no reading changes") {
    const Begun desk;
    const Record before = desk.record();
    CHECK(desk->node("conventions.course").value.empty());  // as the barometer was typed: nobody's course
    CHECK(has(desk->node("courses.differs").name, "Unit of pressure"));
    for (const Course& course : courses()) {
        INFO(course.key);
        desk->choose("conventions.course", std::string(course.key));
        CHECK(desk.record().conventions == course.conventions);
        CHECK(desk.record().shared == before.shared);
        CHECK(desk.record().runs == before.runs);
        CHECK(desk.record().history == before.history);
        CHECK(desk->node("conventions.course").value == course.key);
        CHECK(desk->find("courses.differs") == nullptr);
    }
    for (std::size_t i = courses().size(); i-- > 0;) {
        desk->send(Event::Kind::undo);
        desk->settle();
        CHECK(desk.record().conventions == (i > 0 ? courses()[i - 1].conventions : before.conventions));
    }
    CHECK(desk.record().runs == before.runs);
}

TEST_CASE("A course leaves open when results are shown, and what was changed since is named") {
    const Begun desk;
    desk->choose("conventions.answers.hidden", "hidden");
    desk->choose("conventions.course", "0C_1atm_mmHg");
    CHECK(desk.record().conventions.answers == Conventions::Answers::hidden);
    CHECK(desk->node("conventions.course").value == "0C_1atm_mmHg");
    desk->choose("conventions.decimal_sign.comma", "comma");
    CHECK(desk->node("conventions.course").value.empty());
    CHECK(plain(desk->node("courses.differs").name) ==
          "What differs from \u201c0 \u00b0C, 1 atm, vapour subtracted, mmHg, mL, Mg 24.305\u201d: Decimal sign.");
}

TEST_CASE("The value that a course compares with is put down by a press of one's own, and only where there is none") {
    const Begun desk;
    CHECK(desk->find("conventions.compare") == nullptr);
    desk->choose("conventions.course", "room_hPa");
    CHECK(desk.record().shared.at(Field::accepted_value).blank());
    CHECK(plain(desk->node("conventions.compare").name) == "Compare with 24,0 L/mol");
    desk->press("conventions.compare");
    CHECK(desk.record().shared.at(Field::accepted_value).text == "24,0");
    CHECK(desk->find("conventions.compare") == nullptr);
    desk->send(Event::Kind::undo);
    desk->settle();
    CHECK(desk.record().shared.at(Field::accepted_value).blank());
    CHECK(desk.record().conventions == courses()[10].conventions);
}

TEST_CASE("Own courses are kept by name, renamed, shared and forgotten, and are there on the next visit") {
    Begun desk;
    desk->choose("conventions.course", "0C_1atm_torr");
    desk->choose("conventions.percent_error.magnitude", "magnitude");
    desk.keep("\u041a\u0443\u0440\u0441 3 \u0431");
    REQUIRE(desk->app().own_courses().size() == 1);
    CHECK(desk->app().own_courses()[0].conventions == desk.record().conventions);
    CHECK(desk->node("conventions.course").value == "own.0");
    CHECK(desk->node("conventions.course_name").value.empty());
    // The same name again is the same course, changed.
    desk->choose("conventions.percent_error.with_sign", "with_sign");
    desk.keep("\u041a\u0443\u0440\u0441 3 \u0431");
    REQUIRE(desk->app().own_courses().size() == 1);
    CHECK(desk->app().own_courses()[0].conventions == desk.record().conventions);
    desk->press("conventions.own.0");
    desk.enter("conventions.own_name", "Spring");
    CHECK(desk->app().own_courses()[0].name == "Spring");
    desk.enter("conventions.own_name", "");
    CHECK(desk->node("conventions.own_name").invalid);
    CHECK(desk->app().own_courses()[0].name == "Spring");
    desk->press("conventions.own_link");
    REQUIRE(native_world().clipboard.size() == 1);
    const auto link = text_in_fragment("#course=", native_world().clipboard[0]);
    REQUIRE(link.has_value());
    CHECK(course_from_json(*link).course == desk->app().own_courses()[0]);
    desk->press("conventions.own_file");
    REQUIRE(native_world().files.size() == 1);
    CHECK(native_world().files[0].name == "Spring-2026-01-31.json");
    CHECK(course_from_json(native_world().files[0].text).course == desk->app().own_courses()[0]);
    const OwnCourse kept = desk->app().own_courses()[0];
    desk.desk.reset();
    desk.desk = std::make_unique<Desk>();
    desk->settle();
    CHECK(desk->app().own_courses() == std::vector<OwnCourse>{kept});
    const std::string settings = native_world().store["overwater.settings"];
    desk->press("conventions.own.0");
    desk->press("conventions.own_forget");
    CHECK(desk->app().own_courses().empty());
    CHECK(desk->find("conventions.own.0") == nullptr);
    // Another window has it still, and writes.
    native_world().store["overwater.settings"] = settings;
    desk->send(Event::Kind::storage, "overwater.settings", settings);
    desk->settle();
    CHECK(desk->app().own_courses() == std::vector<OwnCourse>{kept});
    CHECK(desk->find("conventions.own.0") != nullptr);
}

TEST_CASE("There is room for twenty courses with names of one to sixty letters") {
    const Begun desk;
    for (const std::string& name : {std::string(), std::string("  "), std::string(61, 'x')}) {
        desk.keep(name);
        CHECK(desk->app().own_courses().empty());
        CHECK(has(desk.said(), "1 to 60 characters"));
    }
    for (int i = 0; i < 20; ++i) desk.keep("Course " + std::to_string(i));
    CHECK(desk->app().own_courses().size() == 20);
    const auto full = desk->app().own_courses();
    desk.keep("One more");
    CHECK(has(desk.said(), "room for 20 courses"));
    CHECK(desk->app().own_courses() == full);
    desk.keep("Course 7");
    CHECK(desk->app().own_courses().size() == 20);
}

TEST_CASE("A shared course is offered and never applied by being opened") {
    for (const bool by_link : {true, false}) {
        const Begun desk;
        const Record before = desk.record();
        const std::string text = course_to_json(autumn());
        const auto open = [&] {
            if (!by_link) return desk.drop(text);
            native_world().fragment = fragment_of("course=", text);
            desk->send(Event::Kind::fragment, {}, native_world().fragment);
            desk->settle();
        };
        desk->press("header.bench");
        open();
        CHECK(desk->app().page() == PageName::conventions);
        CHECK(has(desk->node("conventions.offer").name, autumn().name));
        CHECK(has(desk->node("courses.offer_differs").name, "Standard conditions"));
        CHECK(desk.record() == before);
        CHECK(desk->app().own_courses().empty());
        desk->press("conventions.offer_leave");
        CHECK(desk->find("conventions.offer") == nullptr);
        CHECK(desk.record() == before);
        open();
        desk->press("conventions.offer_keep");
        CHECK(desk->app().own_courses() == std::vector<OwnCourse>{autumn()});
        CHECK(desk.record() == before);
        open();
        desk->press("conventions.offer_use");
        CHECK(desk.record().conventions == autumn().conventions);
        CHECK(desk.record().shared == before.shared);
        CHECK(desk.record().runs == before.runs);
        CHECK(desk->find("conventions.offer") == nullptr);
        desk->send(Event::Kind::undo);
        desk->settle();
        CHECK(desk.record().conventions == before.conventions);
    }
}

TEST_CASE("A link or file that holds no course says why, and nothing changes") {
    const Begun desk;
    const Record before = desk.record();
    desk.drop(R"({"overwater":"course","version":1,"name":"x"})");
    CHECK(has(desk.said(), "course.json was not opened. It is no complete course."));
    desk.drop(R"({"overwater":"course","version":2,"name":"x","conventions":{}})");
    CHECK(has(desk.said(), "newer version"));
    desk.drop(R"({"overwater":"course","version":1,"name":"x","conventions":{"vapour":1}})");
    CHECK(has(desk.said(), "\u201cconventions.vapour\u201d"));
    for (const char* link : {"course=", "course=!", "course=eyJv"}) {
        desk->wait(5000);
        desk->send(Event::Kind::fragment, {}, link);
        desk->settle();
        CHECK(has(desk.said(), "the link was not opened. It is no complete course."));
    }
    CHECK(desk->find("conventions.offer") == nullptr);
    CHECK(desk.record() == before);
}

TEST_CASE("A link is offered by the page that it opens") {
    new_world();
    native_world().fragment = fragment_of("course=", course_to_json(autumn()));
    Desk desk;
    desk.settle();
    CHECK(has(desk.node("conventions.offer").name, autumn().name));
    CHECK(desk.app().record().conventions.standard == StandardConditions::zero_celsius_100_kilopascal);
    // Nothing that this computer keeps tells of it before somebody takes it.
    CHECK(desk.app().own_courses().empty());
}

TEST_CASE("What was kept as a set of conventions is a course now") {
    new_world();
    Record set;
    set.name = "Class 3 b";
    set.conventions = autumn().conventions;
    native_world().store["overwater.conventions.abc"] = stored_from(set, 1, "2026-01-31T09:30:00Z");
    Desk desk;
    desk.frame();
    REQUIRE(desk.app().own_courses().size() == 1);
    CHECK(desk.app().own_courses()[0] == OwnCourse{"Class 3 b", autumn().conventions});
    CHECK(native_world().store.count("overwater.conventions.abc") == 0);
}

TEST_CASE("By a course in cm³ every page names results in cm³ and dm³, and readings as they were typed") {
    const Begun desk;
    desk->press("header.bench");
    desk->type("bench.end_space", "2.35 mL");
    CHECK(desk->node("bench.scale_reading.unit").value == "mL");
    desk->press("header.conventions");
    desk->choose("conventions.course", "0C_100kPa_kPa_cm3");
    desk->press("header.bench");
    CHECK(desk->output("Gas volume") == "43.20 cm\u00b3");
    CHECK(desk->node("bench.scale_reading.unit").value == "cm3");
    CHECK(desk->node("bench.end_space.unit").value == "mL");
    CHECK(desk.record().runs[0].entries.at(Field::scale_reading).unit == UnitId::none);
    const auto litres_named = [&] {
        std::string found;
        for (const Node& node : desk->nodes()) {
            const bool chosen = node.role == Role::select || node.role == Role::textbox;
            for (const std::string* words : {&node.name, &node.value, &node.spoken}) {
                if (words == &node.value && (chosen || node.role == Role::radio)) continue;
                if (has(*words, "2.35")) continue;  // typed with its unit, and said to be so many cm³
                if (has(*words, "mL") || has(*words, "L/mol") || has(*words, "mol/L")) found += node.key + ": " + *words + '\n';
            }
        }
        return found;
    };
    for (const char* page : {"header.bench", "header.working", "header.how_sure", "header.gap", "header.cautions",
                             "header.answers", "header.class", "header.record"}) {
        desk->press(page);
        CHECK(litres_named() == "");
    }
    desk->press("records.print_sheet");
    const std::string html = native_world().printed.back();
    CHECK(has(html, "dm\u00b3/mol</h3>"));
    CHECK(has(html, "<td>2.35 mL</td>"));
    CHECK(has(html, "<td>9.15\u00a0cm\u00b3</td>"));
    CHECK_FALSE(has(html, "L/mol"));
    for (const char* page : {"class.plan", "class.pool"}) {
        desk->press("header.class");
        desk->press(page);
        CHECK(litres_named() == "");
    }
}
