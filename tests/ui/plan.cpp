// The plan page, by its own nodes: what is typed, what it comes to, the bench card, the link, and what is kept.

#include <doctest/doctest.h>

#include "core/record/plan_json.hpp"
#include "tests/core/plan_support.hpp"
#include "tests/ui/desk.hpp"
#include "web/app/fragment.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

bool has(const std::string& text, std::string_view what) { return text.find(what) != std::string::npos; }

void to_plan(Desk& desk) {
    desk.press("header.class");
    desk.press("class.plan");
}

/// Magnesium in a measuring tube of 50 mL with equal levels, 25 °C, 1 atm, 2 mol/L acid (as tests/core/plan_support.hpp).
void type_usual(Desk& desk) {
    to_plan(desk);
    desk.choose("plan.bench.number_at_closed_end", "zero");
    desk.choose("plan.bench.liquid_stands", "level");
    desk.type("plan.bench.end_space", "");
    desk.type("plan.bench.temperature", "25");
    desk.type("plan.bench.barometer", "101.325");
    desk.type("plan.bench.acid_concentration", "2.0");
    desk.settle();
}

/// Everything the plan says, without the names of its fields.
std::string plan_words(const Desk& desk) {
    std::string all;
    for (const Node& node : desk.nodes()) {
        if (node.key.starts_with("plan.says.") || node.key.starts_with("plan.amount.") ||
            node.key.starts_with("plan.withheld.") || node.key == "plan.caution") {
            all += node.name + '\n' + node.value + '\n';
        }
    }
    return plain(all);
}

std::string card(Desk& desk) {
    const std::size_t before = native_world().printed.size();
    desk.press("plan.print");
    REQUIRE(native_world().printed.size() == before + 1);
    return plain(native_world().printed.back());
}

std::size_t count_of(const std::string& text, std::string_view what) {
    std::size_t n = 0;
    for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + what.size())) ++n;
    return n;
}

void open_link(Desk& desk, const std::string& fragment) {
    native_world().fragment = fragment;
    desk.send(Event::Kind::fragment, {}, fragment);
    desk.settle();
}

const std::string& typed(const Desk& desk, const std::string& key) { return desk.node(key).value; }

}  // namespace

TEST_CASE("a plan begins with the setup of the open record, and each key typed changes it") {
    new_world();
    Desk desk;  // record A of method.md
    to_plan(desk);
    CHECK(typed(desk, "plan.bench.tube_capacity") == "50");
    CHECK(typed(desk, "plan.bench.end_space") == "2.35");
    CHECK(typed(desk, "plan.bench.temperature") == "21.4");
    CHECK(typed(desk, "plan.bench.acid_concentration") == "3.0");
    // A run's own readings say nothing about tomorrow.
    CHECK(typed(desk, "plan.bench.mass_of_metal").empty());
    CHECK(desk.find("plan.bench.scale_reading") == nullptr);

    type_usual(desk);
    // standards.md, section 10: 43 mg, printed in whole milligrams, give 45 mL at 25 °C and 101.3 kPa; computed there
    // without any code of the product.
    CHECK(has(plan_words(desk), "to 0.043"));
    CHECK(has(plan_words(desk), "give gas for 60 % to 90 % of the scale"));
    // mistakes.md, number 49: 0.040 g gives about 41 mL.
    desk.type("plan.bench.mass_of_metal", "0.040");
    CHECK(shown(desk.node("plan.amount.gas").value).value == doctest::Approx(41.6).epsilon(0.002));
    desk.type("plan.bench.mass_of_metal", "0.020");
    CHECK(shown(desk.node("plan.amount.gas").value).value == doctest::Approx(20.8).epsilon(0.003));
    CHECK(has(plan_words(desk), "Goggles on."));
    // The record is as it was.
    CHECK(desk.app().entry(Field::mass_of_metal).text == "0.0412");
}

TEST_CASE("the plan is worked out when the sheet changes, and not for each frame") {
    new_world();
    Desk desk;
    type_usual(desk);
    const Plan* plan = &desk.app().plan_desk().plan;
    const Entry* first = &plan->expected_sheet.at(Field::temperature);
    desk.send(Event::Kind::pointer_move);
    desk.settle();
    // The same memory: nothing was made anew.
    CHECK(&desk.app().plan_desk().plan.expected_sheet.at(Field::temperature) == first);
}

TEST_CASE("a check stands below its field, and its field is marked") {
    new_world();
    Desk desk;
    type_usual(desk);
    desk.type("plan.least_share", "95");
    desk.settle();
    const Node& field = desk.node("plan.least_share");
    CHECK(field.invalid);
    const Node& remark = desk.node("plan.least_share.remark0");
    CHECK(remark.name == "The least of the scale must be below the most of it.");
    CHECK(remark.rect.y >= field.rect.bottom() - 3);
    CHECK(remark.rect.y < field.rect.bottom() + 12);
    CHECK(field.described_by == "plan.least_share.remark0");
    desk.type("plan.least_share", "");
    desk.type("plan.bench.temperature", "abc");
    desk.settle();
    CHECK(desk.node("plan.bench.temperature").invalid);
    CHECK(desk.find("plan.bench.temperature.remark0") != nullptr);
    CHECK(has(plan_words(desk), "waiting for Temperature"));
    CHECK(desk.find("plan.amount.mass") == nullptr);
}

TEST_CASE("a blank field says what holds, and a unit is chosen beside it") {
    new_world();
    Desk desk;
    type_usual(desk);
    CHECK(plain(desk.name_of_control(desk.node("plan.least_share"))) == "Least of the scale, blank: 60");
    CHECK(plain(desk.name_of_control(desk.node("plan.bench.purity"))) == "Purity, blank: 100");
    // 25 °C is 77 °F: the same room, and the half-width of 3 °C is 5.4 °F.
    desk.choose("plan.bench.temperature.unit", "degF");
    desk.type("plan.bench.temperature", "77");
    desk.settle();
    CHECK(plain(desk.name_of_control(desk.node("plan.temperature_within"))) == "Temperature within, blank: 5.4");
    CHECK(has(plan_words(desk), "to 0.043"));
}

TEST_CASE("acid above 3 mol/L waits for the teacher's consent, on page and card") {
    new_world();
    Desk desk;
    type_usual(desk);
    CHECK(desk.find("plan.consent") == nullptr);
    CHECK(desk.find("plan.amount.acid") != nullptr);
    CHECK(has(card(desk), "<li>HCl: "));
    desk.type("plan.bench.acid_concentration", "6.0");
    desk.settle();
    CHECK(desk.find("plan.amount.acid") == nullptr);
    CHECK(has(plan_words(desk), "needs the responsible teacher's consent"));
    CHECK_FALSE(has(plan_words(desk), "times the acid needed"));
    CHECK_FALSE(has(card(desk), "<li>HCl: "));
    desk.choose("plan.consent", "true");
    CHECK(desk.find("plan.amount.acid") != nullptr);
    CHECK(has(card(desk), "6.0 mol/L</li>"));
    desk.choose("plan.consent", "false");
    CHECK(desk.find("plan.amount.acid") == nullptr);
}

TEST_CASE("a powder gets no amount anywhere") {
    new_world();
    Desk desk;
    type_usual(desk);
    desk.type("plan.groups", "8");
    desk.choose("plan.form", "powder");
    const std::string words = plan_words(desk);
    CHECK(has(words, "Powdered metals are refused"));
    CHECK(words.find_first_of("0123456789") == std::string::npos);
    CHECK(desk.find("plan.table") == nullptr);
    CHECK(desk.find("plan.amount.mass") == nullptr);
    const std::string html = card(desk);
    CHECK(has(html, "Acid injures eyes and skin"));
    CHECK_FALSE(has(html, "<h2>Take</h2>"));
    CHECK_FALSE(has(html, "magnesium"));
    CHECK(has(html, "<h1>Bench card</h1>"));
}

TEST_CASE("a demonstration metal gets no amounts for a class") {
    new_world();
    Desk desk;
    type_usual(desk);
    desk.type("plan.groups", "8");
    desk.choose("plan.bench.metal", "calcium");
    const std::string words = plan_words(desk);
    CHECK(has(words, "No amounts for a class"));
    CHECK(has(words, "demonstration with water only"));
    CHECK_FALSE(has(words, "pieces of"));
    CHECK(count_of(card(desk), "<article>") == 1);
}

TEST_CASE("a bench card for each group: cautions first, readings in order with blanks, nothing typed is markup") {
    new_world();
    Desk desk;
    type_usual(desk);
    desk.type("plan.groups", "3");
    desk.type("plan.runs", "2");
    desk.type("plan.bench.barometer", "<b>101.3");
    desk.type("plan.bench.barometer", "101.325");
    desk.settle();
    const std::string html = card(desk);
    CHECK(count_of(html, "<article>") == 3);
    CHECK(has(html, "<h1>Bench card of group 3</h1>"));
    CHECK(html.find("The school&#39;s own rules come first") < html.find("<h2>Take</h2>"));
    CHECK(html.find("1. Mass of metal") < html.find("Scale reading"));
    CHECK(html.find("Scale reading") < html.find("Barometer"));
    CHECK(has(html, "<li>Tube capacity: 50 mL</li>"));
    CHECK(has(html, "<th>Run 2</th>"));
    // ISO 385: a burette of 50 mL has divisions of 0.1 mL, read to half of one.
    CHECK(has(html, "Scale reading</th><td></td><td></td><td>mL</td><td>0.05 mL</td>"));
    // The reading to expect only where it is wanted.
    CHECK_FALSE(has(html, "The scale will show"));
    desk.choose("plan.show_reading", "true");
    CHECK(has(card(desk), "The scale will show about"));
    for (const char* none : {"<script", "<style", "style=", "src=", "href=", "<b>101"}) CHECK_FALSE(has(html, none));
}

TEST_CASE("a plan goes through a link, is shown, and overwrites nothing that was kept") {
    new_world();
    Desk desk;
    type_usual(desk);
    desk.type("plan.groups", "12");
    desk.press("plan.copy_link");
    REQUIRE_FALSE(native_world().clipboard.empty());
    const std::string link = native_world().clipboard.back().substr(1);
    REQUIRE(link.starts_with("plan="));
    desk.type("plan.groups", "7");
    const std::size_t records = desk.app().shelf().cards().size();

    desk.press("header.bench");
    open_link(desk, link);
    CHECK(typed(desk, "plan.groups") == "12");
    CHECK(typed(desk, "plan.bench.acid_concentration") == "2.0");
    CHECK(desk.app().shelf().cards().size() == records);
    CHECK(has(desk.app().shelf().setting("plan"), "\"groups\":\"7\""));
    // Back to what was kept, or on with the one of the link: then the other one is still there.
    desk.press("plan.before");
    CHECK(typed(desk, "plan.groups") == "7");
    open_link(desk, link);
    desk.type("plan.runs", "2");
    desk.settle();
    CHECK(has(desk.app().shelf().setting("plan"), "\"groups\":\"12\""));
    desk.press("plan.before");
    CHECK(typed(desk, "plan.groups") == "7");
    desk.press("plan.before");
    CHECK(typed(desk, "plan.groups") == "12");
    CHECK(typed(desk, "plan.runs") == "2");
}

TEST_CASE("a faulty link to a plan is refused with its reason, and the plan shown stays") {
    new_world();
    Desk desk;
    type_usual(desk);
    desk.type("plan.groups", "7");
    for (const std::string& fragment :
         {std::string("plan="), std::string("plan=!!"), std::string("plan=Zm9v"), fragment_of("plan=", "{}"),
          fragment_of("plan=", R"({"overwater":"plan","version":9})")}) {
        CAPTURE(fragment);
        open_link(desk, fragment);
        REQUIRE_FALSE(desk.app().notices().empty());
        CHECK(desk.app().notices().back().warning);
        CHECK(has(desk.app().notices().back().words, "The plan in the link cannot be shown."));
        CHECK(native_world().fragment.empty());
        CHECK(typed(desk, "plan.groups") == "7");
    }
}

TEST_CASE("a plan is still there after a reload") {
    new_world();
    {
        Desk desk;
        type_usual(desk);
        desk.type("plan.groups", "9");
        desk.choose("plan.bench.scale_reading.instrument", "gas_tube_50");
    }
    Desk again;
    CHECK(typed(again, "plan.groups") == "9");
    CHECK(typed(again, "plan.bench.scale_reading.instrument") == "gas_tube_50");
    // Nobody's plan is that of another record.
    again.press("header.bench");
    again.own_run();
    to_plan(again);
    CHECK(typed(again, "plan.groups") == "9");
    again.press("plan.from_record");
    CHECK(typed(again, "plan.bench.tube_capacity").empty());
    again.press("plan.before");
    CHECK(typed(again, "plan.bench.tube_capacity") == "50");
}

// Found by random events: making room for the second entry let go of the first.
TEST_CASE("the balance of a plan weighs before and after too, however much else is planned") {
    for (const std::size_t others : {0U, 1U, 2U, 3U, 4U, 5U, 6U, 7U, 8U}) {
        new_world();
        Desk desk;
        to_plan(desk);
        desk.press("plan.from_record");
        static constexpr std::string_view texts[] = {"plan.bench.tube_capacity", "plan.bench.acid_volume", "plan.bench.acid_concentration",
                                                     "plan.bench.temperature", "plan.bench.barometer", "plan.bench.purity",
                                                     "plan.bench.end_space", "plan.bench.length_of_scale"};
        for (std::size_t i = 0; i < others && i < std::size(texts); ++i) {
            if (desk.find(texts[i]) != nullptr) desk.type(std::string(texts[i]), "5");
        }
        desk.choose("plan.bench.mass_of_metal.instrument", "balance_1mg");
        const Entries& bench = desk.app().plan_desk().sheet.bench;
        for (const Field field : {Field::mass_of_metal, Field::mass_before, Field::mass_after}) {
            CHECK(bench.at(field).instrument == "balance_1mg");
        }
    }
}

TEST_CASE("a planned run begins at the bench in a record of its own, without the readings to take") {
    new_world();
    Desk desk;
    desk.own_run();
    desk.type_record_a();
    const std::string old = desk.app().record().id;
    const std::size_t records = desk.app().shelf().cards().size();
    type_usual(desk);
    desk.type("plan.runs", "3");
    desk.choose("plan.bench.scale_reading.instrument", "gas_tube_50");
    desk.press("plan.begin");
    CHECK(desk.app().page() == PageName::bench);
    CHECK(desk.app().record().id != old);
    CHECK(desk.app().shelf().cards().size() == records + 1);
    CHECK(desk.app().record().runs.size() == 3);
    CHECK(desk.app().entry(Field::tube_capacity).text == "50");
    CHECK(desk.app().entry(Field::number_at_closed_end).text == "zero");
    CHECK(desk.app().entry(Field::acid_concentration).text == "2.0");
    CHECK(desk.app().entry(Field::scale_reading).instrument == "gas_tube_50");
    for (const Field field : {Field::mass_of_metal, Field::scale_reading, Field::level_difference, Field::temperature,
                              Field::barometer, Field::acid_volume, Field::liquid_stands}) {
        CAPTURE(name_of(field));
        CHECK(desk.app().entry(field).text.empty());
    }
    const auto kept = desk.app().shelf().load(old);
    REQUIRE(kept.has_value());
    CHECK(entry_for(kept->record, 0, Field::scale_reading).text == "9.15");
}
