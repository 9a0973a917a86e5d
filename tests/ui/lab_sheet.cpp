// The sheet that is printed, by its text: what it holds, what it withholds, and that nothing typed becomes markup.

#include <doctest/doctest.h>

#include "tests/ui/desk.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

std::string printed(Desk& desk, std::string_view button) {
    desk.press("header.record");
    const std::size_t before = native_world().printed.size();
    desk.press(std::string(button));
    REQUIRE(native_world().printed.size() == before + 1);
    return native_world().printed.back();
}

bool has(const std::string& text, std::string_view what) { return text.find(what) != std::string::npos; }

}  // namespace

TEST_CASE("the lab sheet holds cautions, readings with their doubt, tube, working, result and verdict") {
    new_world();
    Desk desk;  // record A, whose values stand in method.md
    const std::string html = printed(desk, "records.print_sheet");
    CHECK(has(html, "Acid injures eyes and skin"));
    CHECK(has(html, "<th>Mass of metal</th><td>0.0412\u00a0g</td><td>±\u00a00.0001\u00a0g</td>"));
    CHECK(has(html, "<th>Number at the closed end</th><td>50</td>"));
    CHECK(has(html, "<svg"));
    CHECK(has(html, "<math"));
    CHECK(has(html, "Dry-gas pressure: 95.974"));
    INFO(html.substr(html.find("<h3>"), 200));
    CHECK(has(html, "<h3>22.68\u00a0L/mol</h3>"));
    CHECK(has(html, "lies inside the interval"));
    CHECK(has(html, "Percent error: −0.13\u00a0%"));
    CHECK(has(html, "class=\"portrait\""));
}

TEST_CASE("a blank sheet has the same rows and no reading") {
    new_world();
    Desk desk;
    const std::string html = printed(desk, "records.print_blank");
    CHECK(has(html, "<th>Mass of metal</th><td></td><td></td>"));
    CHECK(has(html, "<th>Level difference</th><td></td><td></td>"));
    CHECK_FALSE(has(html, "0.0412"));
    CHECK_FALSE(has(html, "22.68"));
    CHECK_FALSE(has(html, "Invented example"));
}

TEST_CASE("what a person typed is text on the sheet, never markup") {
    new_world();
    Desk desk;
    desk.press("header.record");
    desk.type("records.name", "<img src=x onerror=alert(1)> & \"Zoë\"");
    desk.press("header.bench");
    desk.type("bench.temperature", "21<b>4");
    const std::string html = printed(desk, "records.print_sheet");
    CHECK(has(html, "&lt;img src=x onerror=alert(1)&gt; &amp; &quot;Zoë&quot;"));
    CHECK(has(html, "<td>21&lt;b&gt;4</td>"));
    CHECK_FALSE(has(html, "<img"));
    CHECK_FALSE(has(html, "4</b>"));
    CHECK_FALSE(has(html, "22.68"));
}

TEST_CASE("what is withheld on the page is withheld on the sheet") {
    new_world();
    Desk desk;
    desk.press("header.conventions");
    desk.choose("conventions.answers.hidden", "hidden");
    const std::string html = printed(desk, "records.print_sheet");
    CHECK(has(html, "0.0412"));
    CHECK(has(html, "Results are withheld for now."));
    CHECK_FALSE(has(html, "22.6"));
    CHECK_FALSE(has(html, "43.20"));
    CHECK_FALSE(has(html, "<math"));
}
