// Other languages: their texts learnt or refused, chosen by the browser or by hand, and nothing typed is touched by it.

#include "web/app/language.hpp"

#include <doctest/doctest.h>

#include <algorithm>

#include "core/quantity/catalogue.hpp"
#include "core/record/json.hpp"
#include "generated/text_en.hpp"
#include "tests/ui/desk.hpp"
#include "web/app/marking_desk.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

/// Every key of the English catalogue.
std::vector<std::string> all_keys() {
    std::vector<std::string> keys;
    for (std::string_view rest : {text_keys, second_part_keys}) {
        for (; !rest.empty(); rest.remove_prefix(rest.find('\n') + 1)) keys.emplace_back(rest.substr(0, rest.find('\n')));
    }
    return keys;
}

std::vector<std::string> other_tags() {
    std::vector<std::string> tags;
    for (const LanguageName& language : language_names) {
        if (std::string_view(language.tag) != "en") tags.emplace_back(language.tag);
    }
    return tags;
}

/// What stands in the fields of the bench, by key.
std::vector<std::pair<std::string, std::string>> typed_texts(const Desk& desk) {
    std::vector<std::pair<std::string, std::string>> texts;
    for (const Node& node : desk.nodes()) {
        if (node.role == Role::textbox) texts.emplace_back(node.key, node.value);
    }
    return texts;
}

void paste(Desk& desk, const std::string& key, const std::string& text) {
    desk.focus(key);
    desk.document().type(key, text);
    desk.send(Event::Kind::input, key, text);
    desk.settle();
}

}  // namespace

TEST_CASE("The tag that serves a wish") {
    CHECK(std::string(language_for("de")) == "de");
    CHECK(std::string(language_for("de-AT")) == "de");
    CHECK(std::string(language_for("fr-CA")) == "fr");
    CHECK(std::string(language_for("es-419")) == "es");
    CHECK(std::string(language_for("en-GB")) == "en");
    CHECK(std::string(language_for("en-x-pseudo")) == "en-x-pseudo");
    for (const char* other : {"", "pl", "deu", "d", "-de"}) CHECK(std::string(language_for(other)) == "en");
}

TEST_CASE("The text of each language is learnt, and has a sentence for every key") {
    const auto keys = all_keys();
    CHECK(keys.size() > 1000);
    std::vector<std::string> tags = other_tags();
    tags.emplace_back("en-x-pseudo");
    for (const std::string& tag : tags) {
        Language language;
        const Language english;
        CHECK_FALSE(language.speak(tag));
        // Keys of the program's second part come before a language or behind it.
        const bool before = tag.size() > 2;
        if (before) language.learn_more(second_part_keys, second_part_en);
        REQUIRE(language.learn(tag, text_file(tag)));
        language.learn_more(second_part_keys, second_part_en);
        CHECK(language.tag() == "en");
        REQUIRE(language.speak(tag));
        CHECK(language.tag() == tag);
        std::size_t otherwise = 0;
        for (const std::string& key : keys) {
            const std::string words = language.say(key);
            CHECK(!words.empty());
            CHECK(words.find('\n') == std::string::npos);
            if (words != english.say(key)) ++otherwise;
        }
        CHECK(otherwise > keys.size() * 3 / 4);
        CHECK(language.say("no.such.key") == "no.such.key");
        CHECK(language.speak("en"));
        CHECK(language.say("page.bench") == english.say("page.bench"));
    }
}

TEST_CASE("A text for other keys, or a damaged one, is refused, and nothing changes") {
    const std::string text = text_file("de");
    REQUIRE(text.size() > 10'000);
    Language language;
    const auto refuses = [&](std::string damaged) { return !language.learn("de", std::move(damaged)) && !language.speak("de"); };
    CHECK(refuses({}));
    CHECK(refuses("\n"));
    CHECK(refuses(text.substr(0, 9)));
    CHECK(refuses(text.substr(0, text.size() - 1)));
    CHECK(refuses(text.substr(0, text.size() / 2)));
    CHECK(refuses(text + "\n"));
    CHECK(refuses("<!doctype html>\n" + text));
    std::string other_keys = text;
    other_keys[0] = other_keys[0] == '0' ? '1' : '0';
    CHECK(refuses(other_keys));
    std::string changed = text;
    changed[text.size() / 2] = static_cast<char>(changed[text.size() / 2] ^ 1);
    CHECK(refuses(changed));
    CHECK(language.say("page.bench") == Language().say("page.bench"));
    CHECK(language.learn("de", text));
    CHECK(language.speak("de"));
    // A damaged one that comes later does not take the place of a whole one.
    CHECK_FALSE(language.learn("de", changed));
    CHECK(language.tag() == "de");
}

TEST_CASE("French counts nought as it counts one") {
    const auto say = [](const std::string& tag, long long number) {
        Language language;
        language.learn_more(second_part_keys, second_part_en);
        if (tag != "en") language.learn(tag, text_file(tag));
        language.speak(tag);
        return language.say(Message{"pool.groups"}.count("number", number));
    };
    const auto form = [&](const std::string& tag, long long number) {
        std::string words = say(tag, number);
        return words.erase(words.find(std::to_string(number)), std::to_string(number).size());
    };
    for (const std::string tag : {"en", "de", "es", "fr"}) {
        CHECK(form(tag, 1) != form(tag, 2));
        CHECK(form(tag, 2) == form(tag, 5));
        CHECK(form(tag, 0) == form(tag, tag == "fr" ? 1 : 2));
    }
}

TEST_CASE("The page begins in the browser's language, or in the one of its address") {
    new_world();
    native_world().language = "de-AT";
    {
        Desk desk;
        CHECK(desk.document().language == "de");
        CHECK(desk.node("header.bench").name == desk.app().say("page.bench"));
        CHECK(desk.app().say("page.bench") != Language().say("page.bench"));
        CHECK(desk.node("header.language").value == "de");
        // Nothing was said in English before.
        CHECK(desk.app().record().name == desk.app().say("example.name"));
        CHECK(desk.app().record().conventions.decimal_sign == DecimalSign::comma);
        CHECK(desk.output(desk.app().say("output.gas_volume")).find(',') != std::string::npos);
    }
    native_world().fragment = "lang=fr";
    {
        Desk desk;
        CHECK(desk.document().language == "fr");
    }
    // The address is for this visit alone.
    native_world().fragment.clear();
    {
        Desk desk;
        CHECK(desk.document().language == "de");
    }
    native_world().language = "pl";
    Desk desk;
    CHECK(desk.document().language == "en");
    CHECK(desk.app().notices().empty());
}

TEST_CASE("Chosen by hand, a language is kept; what is typed, its sign, and undo stay as they are") {
    new_world();
    {
        Desk desk;
        desk.own_run();
        desk.type_record_a();
        const auto before = typed_texts(desk);
        const std::string result = desk.output("Molar volume at standard conditions");
        const std::string stored = stored_record(stored_ids()[0]);
        for (const std::string& tag : other_tags()) {
            desk.choose("header.language", tag);
            CHECK(desk.document().language == tag);
            CHECK(desk.document().pieces.at("header.language").value == tag);
            CHECK(typed_texts(desk) == before);
            for (const auto& [key, text] : before) CHECK(desk.document().pieces.at(key).value == text);
            CHECK(stored_record(stored_ids()[0]) == stored);
            CHECK(desk.output(desk.app().say("output.molar_volume_standard")) == result);
            CHECK(desk.document().faults.empty());
            CHECK(desk.app().can_undo());
        }
        desk.press("header.record");
        desk.choose("records.language", "fr");
        CHECK(desk.document().language == "fr");
    }
    Desk desk;
    CHECK(desk.document().language == "fr");
    CHECK(desk.app().entry(Field::scale_reading).text == "9.15");
    CHECK(desk.app().record().conventions.decimal_sign == DecimalSign::point);
    desk.choose("header.language", "en");
    CHECK(desk.node("header.bench").name == "Bench");
}

TEST_CASE("A text that cannot be had leaves the language as it is, and says so in one sentence") {
    new_world();
    native_world().language = "es";
    Desk::online = false;
    Desk desk;
    CHECK(desk.document().language == "en");
    REQUIRE(desk.app().notices().size() == 1);
    CHECK(desk.app().notices()[0].words.starts_with("Espa\u00f1ol could not be loaded"));
    desk.press("header.bench");
    desk.choose("header.language", "fr");
    CHECK(desk.document().language == "en");
    CHECK(desk.document().pieces.at("header.language").value == "en");
    REQUIRE(desk.app().notices().size() >= 1);
    CHECK(desk.app().notices().back().words.starts_with("Fran\u00e7ais could not be loaded"));
    Desk::online = true;
    desk.choose("header.language", "fr");
    CHECK(desk.document().language == "fr");
    // What was learnt is not asked for again.
    Desk::online = false;
    desk.choose("header.language", "en");
    desk.choose("header.language", "fr");
    CHECK(desk.document().language == "fr");
    CHECK(desk.app().notices().empty());
}

TEST_CASE("A new record has the decimal sign of the language, unless one was chosen by hand") {
    new_world();
    Desk desk;
    const auto sign_of_new = [&] {
        desk.press("header.record");
        desk.press("records.new");
        return desk.app().record().conventions.decimal_sign;
    };
    CHECK(sign_of_new() == DecimalSign::point);
    desk.choose("header.language", "de");
    CHECK(desk.app().record().conventions.decimal_sign == DecimalSign::point);
    CHECK(sign_of_new() == DecimalSign::comma);
    desk.press("header.conventions");
    desk.choose("conventions.decimal_sign.point", "point");
    CHECK(sign_of_new() == DecimalSign::point);
    desk.choose("header.language", "fr");
    CHECK(sign_of_new() == DecimalSign::comma);
    desk.choose("header.language", "en");
    CHECK(sign_of_new() == DecimalSign::point);
}

TEST_CASE("Columns are named so that each is read back, in every language") {
    for (const LanguageName& language : language_names) {
        new_world();
        native_world().fragment = "lang=" + std::string(language.tag);
        Desk desk;
        desk.press("header.class");
        desk.press("class.marking");
        desk.press("marking.copy_columns");
        std::string line = native_world().clipboard.back();
        CHECK(line.find("field.") == std::string::npos);
        line.pop_back();
        const auto columns = static_cast<std::size_t>(std::count(line.begin(), line.end(), '\t')) + 1;
        const ClassTable table = read_sheets(line + "\n1\t1\n", sheet_columns(desk.app()), sheet_choices(desk.app()),
                                             desk.app().record());
        for (const Message& problem : table.problems) CHECK_MESSAGE(problem.key.empty(), desk.app().say(problem));
        // Group, run, code.
        CHECK(table.asked.size() + table.readings.size() == columns - 3);
    }
}

TEST_CASE("A table of another language is read: English in German, French in English") {
    const std::string english =
        "Group\tScale reading (mL)\tLiquid stands\tMolar volume at standard conditions (L/mol)\n1\t9.15\thigher inside\t22.68\n";
    new_world();
    Desk desk;
    desk.own_run();
    desk.type_record_a();
    const auto read = [&](const std::string& text) {
        desk.press("header.class");
        desk.press("class.marking");
        paste(desk, "marking.text", text);
        desk.press("marking.read");
        const MarkingDesk& marking = desk.app().marking_desk();
        return marking.rows.size() == 1 && marking.problems.empty() && marking.rows[0].asked.size() == 1 &&
               marking.records[0].runs[0].entries.at(Field::scale_reading).text == "9.15" &&
               marking.records[0].runs[0].entries.at(Field::liquid_stands).text == "higher_inside";
    };
    CHECK(read(english));
    desk.choose("header.language", "de");
    CHECK(read(english));
    desk.choose("header.language", "fr");
    const auto said = [&](const char* key) { return desk.app().say(key); };
    std::string french = said("marking.group") + '\t' + said("field.scale_reading") + " (mL)\t" + said("field.liquid_stands") +
                         '\t' + said("output.molar_volume_standard") + " (L/mol)\n1\t9.15\t" +
                         said("choice.liquid_stands.higher_inside") + "\t22.68\n";
    CHECK(french.find("Scale reading") == std::string::npos);
    CHECK(read(french));
    desk.choose("header.language", "en");
    CHECK(read(french));
    // As people type it: capitals with their accents or without, a typewriter's apostrophe.
    const auto change = [&](std::string_view from, std::string_view to) {
        for (std::size_t at = french.find(from); at != std::string::npos; at = french.find(from, at + to.size())) {
            french.replace(at, from.size(), to);
        }
    };
    change("\u00e9", "\u00c9");
    change("\u2019", "'");
    CHECK(read(french));
    change("\u00c9", "E");
    CHECK(read(french));
}
