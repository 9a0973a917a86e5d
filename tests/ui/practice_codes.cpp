// The teacher's page and the key.

#include <doctest/doctest.h>

#include "core/lesson/practice.hpp"
#include "core/quantity/number_format.hpp"
#include "tests/ui/desk.hpp"
#include "web/app/html_page.hpp"
#include "web/app/practice_key.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

std::size_t count_of(const std::string& text, std::string_view what) {
    std::size_t n = 0;
    for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + what.size())) ++n;
    return n;
}

/// Everything that can be chosen; `made`: what the page then says of the class.
void choose_for_a_class(std::string& made) {
    Desk desk;
    desk.press("header.practice");
    desk.press("practice.to_codes");
    desk.choose("codes.difficulty", "hard");
    desk.choose("codes.release", "by_word");
    desk.choose("codes.standard", "25C_100kPa");
    desk.choose("codes.vapour", "table_nearest");
    desk.choose("codes.mishap", "true");
    desk.type("codes.seed", "1234");
    desk.type("codes.students", "30");
    desk.settle();
    PracticeSettings wanted;
    wanted.difficulty = Difficulty::hard;
    wanted.release = Release::by_word;
    wanted.standard = StandardConditions::twenty_five_celsius_100_kilopascal;
    wanted.vapour = PracticeVapour::table_nearest;
    wanted.mishap = true;
    wanted.seed = 1234;
    CHECK(desk.node("codes.class").name.find(code_of(wanted)) != std::string::npos);
    CHECK(desk.node("codes.word").name.find(release_word(wanted)) != std::string::npos);
    wanted.student = 30;
    CHECK(desk.node("codes.list.30.code").name == code_of(wanted));
    CHECK(desk.find("codes.list.31.code") == nullptr);
    desk.press("codes.copy");
    REQUIRE(native_world().clipboard.size() == 1);
    CHECK(native_world().clipboard[0].find("30\t" + code_of(wanted) + "\n") != std::string::npos);
    desk.type("codes.students", "0");
    desk.settle();
    CHECK(desk.find("codes.students.problem") != nullptr);
    CHECK(desk.find("codes.list.1.code") == nullptr);
    desk.type("codes.seed", "12a");
    desk.settle();
    CHECK(desk.find("codes.seed.problem") != nullptr);
    desk.press("codes.other_seed");
    CHECK(desk.find("codes.seed.problem") == nullptr);
    made = desk.node("codes.class").name;
}

}  // namespace

TEST_CASE("The choices make the class's code, and every number in the roster has its own") {
    new_world();
    std::string made;
    choose_for_a_class(made);
    // The choices stay on this computer.
    Desk again;
    CHECK(again.node("codes.class").name == made);
}

TEST_CASE("The key has a row for every run of every number, with what the readings come to") {
    new_world();
    Desk desk;
    desk.press("header.practice");
    desk.press("practice.to_codes");
    desk.type("codes.seed", "0");
    desk.choose("codes.release", "at_once");
    desk.type("codes.students", "5");
    desk.choose("codes.mishap", "true");
    desk.press("codes.print");
    REQUIRE(native_world().printed.size() == 1);
    const std::string& html = native_world().printed[0];
    std::size_t rows = 1;
    for (int student = 1; student <= 5; ++student) {
        PracticeSettings own;
        own.mishap = true;
        own.student = student;
        const PracticeRun practice = practice_run(own);
        rows += practice.record.runs.size();
        CHECK(count_of(html, "<td><code>" + code_of(own) + "</code></td>") == practice.record.runs.size());
        for (const Dial& dial : practice.dials) {
            const std::string number = format_fixed(dial.position, dial.decimals, DecimalSign::point);
            CHECK(html.find(number) != std::string::npos);
        }
        // What the student is told stands there as well as what the instruments show.
        const std::string& capacity = entry_for(practice.record, 0, Field::tube_capacity).text;
        REQUIRE_FALSE(capacity.empty());
        CHECK(plain(html).find("Tube capacity " + capacity + " mL") != std::string::npos);
        // What it comes to, to four figures.
        for (const Assessment& expected : practice.expected) {
            const double litres = from_base(*expected.value(Output::molar_volume_standard), UnitId::litre_per_mole);
            CHECK(html.find(format_fixed(litres, 1, DecimalSign::point).substr(0, 2)) != std::string::npos);
        }
    }
    CHECK(count_of(html, "<tr>") == rows);
    CHECK(count_of(html, "</tr>") == rows);
    // A document of its own, to which the policy of the page applies: nothing in it runs, loads or styles.
    for (const char* none : {"<script", "<style", "style=", "src=", "href=", "onload"}) CHECK(html.find(none) == std::string::npos);
    CHECK(html.find("<!DOCTYPE html>") == 0);
}

TEST_CASE("Texts in HTML are escaped") {
    // HTML, section 13.1.4 (character references) and 13.1.2.4: & and < in texts, quotes in attribute values.
    CHECK(html_text("a & b <i>\"c\" 'd'</i>") == "a &amp; b &lt;i&gt;&quot;c&quot; &#39;d&#39;&lt;/i&gt;");
    CHECK(html_text("0.041 g/m³") == "0.041 g/m³");
}
