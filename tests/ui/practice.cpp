// A practice run from its code to the checked result, by the page's own nodes.

#include <doctest/doctest.h>

#include <algorithm>

#include "core/lesson/practice.hpp"
#include "core/record/stored.hpp"
#include "tests/ui/desk.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

PracticeSettings settings_with(Release release, bool mishap = false, Difficulty difficulty = Difficulty::usual) {
    PracticeSettings settings;
    settings.seed = 417;
    settings.student = 3;
    settings.release = release;
    settings.mishap = mishap;
    settings.difficulty = difficulty;
    return settings;
}

void start(Desk& desk, const PracticeSettings& settings) {
    desk.press("header.practice");
    desk.type("practice.code", code_of(settings));
    desk.press("practice.start");
}

/// Types what a perfect eye reads, for the run at hand; `off` shifts the first reading by so many divisions.
void read_all_dials(Desk& desk, const PracticeRun& practice, std::size_t run, double off = 0) {
    for (const Dial& dial : practice.dials) {
        if (dial.run >= 0 && dial.run != static_cast<int>(run)) continue;
        Dial read = dial;
        read.position += off * dial.division;
        off = 0;
        const std::string unit(info(dial.unit).symbol);
        desk.type("bench." + std::string(name_of(dial.field)), perfect_reading(read) + ' ' + unit);
    }
    desk.settle();
}

std::string all_words(const Desk& desk) {
    std::string words;
    for (const Node& node : desk.nodes()) words += node.name + '\n' + node.value + '\n' + node.spoken + '\n';
    return plain(words);
}

}  // namespace

TEST_CASE("A code makes a record of its own, and leaves the one that was open as it was") {
    new_world();
    Desk desk;
    desk.own_run();
    desk.type_record_a();
    const std::string before = stored_record(desk.app().record().id);
    const std::string id = desk.app().record().id;
    const PracticeSettings settings = settings_with(Release::at_once);
    start(desk, settings);
    CHECK(desk.app().record().id != id);
    CHECK(desk.app().record().practice_code == code_of(settings));
    CHECK(desk.app().page() == PageName::bench);
    CHECK(stored_record(id) == before);
    CHECK(stored_ids().size() == 2);
    // Again: what was begun is gone on with, as far as it came.
    desk.type("bench.temperature", "20.5");
    const std::string begun = desk.app().record().id;
    desk.app().open_record(id);
    start(desk, settings);
    CHECK(stored_ids().size() == 2);
    CHECK(desk.app().record().id == begun);
    CHECK(desk.app().entry(Field::temperature).text == "20.5");
}

TEST_CASE("What is no code is answered by a sentence, and starts nothing") {
    new_world();
    Desk desk;
    desk.press("header.practice");
    const std::string id = desk.app().record().id;
    for (const char* text : {"", "0K3", "0K3FQ-07HU-222", "0K3FQ?"}) {
        desk.type("practice.code", text);
        desk.press("practice.start");
        REQUIRE(desk.find("practice.problem") != nullptr);
        CHECK(desk.node("practice.problem").name.size() > 20);
        CHECK(desk.node("practice.code").invalid);
        CHECK(desk.node("practice.code").described_by == "practice.problem");
        CHECK(desk.app().record().id == id);
    }
    desk.type("practice.code", "0");
    desk.settle();
    CHECK(desk.find("practice.problem") == nullptr);
}

TEST_CASE("A link fills the code in and changes nothing else") {
    new_world();
    const std::string code = code_of(settings_with(Release::at_once));
    native_world().fragment = "practice=" + code;
    Desk desk;
    CHECK(desk.app().page() == PageName::practice);
    CHECK(desk.node("practice.code").value == code);
    CHECK(desk.app().record().id == "example");
    desk.press("practice.start");
    CHECK(desk.app().record().practice_code == code);
    // A second link while the page is open.
    desk.send(Event::Kind::fragment, {}, "practice=ABC");
    desk.settle();
    CHECK(desk.app().page() == PageName::practice);
    CHECK(desk.node("practice.code").value == "ABC");
    CHECK(desk.app().record().practice_code == code);
}

TEST_CASE("The instrument shown is that of the reading at hand; its description says what an eye sees") {
    for (const Screen screen : {Screen{1366, 620, false}, Screen{390, 844, true}}) {
        new_world();
        Desk desk(screen);
        const PracticeRun practice = practice_run(settings_with(Release::at_once));
        start(desk, practice.settings);
        for (const Dial& dial : practice.dials) {
            if (dial.run > 0) continue;
            const std::string key = "bench." + std::string(name_of(dial.field));
            desk.focus(key);
            desk.settle();
            INFO(key);
            const Node& picture = desk.node("practice.dial");
            CHECK(picture.name == desk.app().say(eye_words(dial)));
            CHECK(desk.node(key).described_by.find("practice.dial") != std::string::npos);
            if (screen.width < 720) {
                // On a telephone right above its field.
                const float gap = desk.node(key).rect.y - picture.rect.bottom();
                CHECK(gap > 0);
                CHECK(gap < 90);
            }
            if (shows_digits(dial.kind)) continue;
            CHECK(picture.name.find(perfect_reading(dial)) == std::string::npos);
            if (screen.touch) CHECK(desk.node("practice.larger").rect.h >= 44);
        }
    }
}

TEST_CASE("Every instrument of a run has its field on the bench") {
    new_world();
    Desk desk;
    for (int seed = 1; seed <= 12; ++seed) {
        PracticeSettings settings = settings_with(Release::at_once, false, seed % 3 == 0 ? Difficulty::usual : Difficulty::hard);
        settings.seed = seed;
        const PracticeRun practice = practice_run(settings);
        start(desk, settings);
        for (std::size_t run = 0; run < practice.record.runs.size(); ++run) {
            if (run > 0) desk.press("runs." + std::to_string(run));
            read_all_dials(desk, practice, run);
            CHECK(desk.app().unread_dials().empty());
            CHECK(desk.app().assessment().has(Output::molar_volume_standard));
        }
    }
}

TEST_CASE("Larger and Smaller stop at their ends") {
    new_world();
    Desk desk;
    start(desk, settings_with(Release::at_once));
    desk.focus("bench.scale_reading");
    desk.settle();
    desk.press("practice.larger");
    CHECK(desk.node("practice.larger").disabled);
    desk.press("practice.smaller");
    desk.press("practice.smaller");
    CHECK(desk.node("practice.smaller").disabled);
    CHECK_FALSE(desk.node("practice.larger").disabled);
}

TEST_CASE("At once: results are live, and a perfect reader is compared with when everything is read") {
    new_world();
    const PracticeRun practice = practice_run(settings_with(Release::at_once));
    {
        Desk desk;
        start(desk, practice.settings);
        CHECK(desk.app().reveals());
        desk.press("header.practice");
        CHECK(desk.find("practice.compare") == nullptr);
        CHECK(desk.find("practice.truth") == nullptr);
        desk.press("practice.to_bench");
        read_all_dials(desk, practice, 0, 0.7);
        CHECK(desk.find("result.headline") != nullptr);
        desk.press("header.practice");
        CHECK(desk.find("practice.truth") == nullptr);
        desk.press("practice.compare");
        REQUIRE(desk.find("practice.truth") != nullptr);
    }
    // The release is in the record: another window shows the same.
    Desk desk;
    REQUIRE(desk.find("practice.truth") != nullptr);
    int right = 0;
    int wrong = 0;
    for (const Element& row : desk.node("practice.truth").content.back().children) {
        const std::string& verdict = row.children.back().children.front().text;
        (verdict == desk.app().say("practice.right") ? right : wrong)++;
    }
    CHECK(wrong == 1);
    CHECK(right > 2);
}

TEST_CASE("After an attempt: results and truth come with an own answer, and not before") {
    new_world();
    Desk desk;
    const PracticeRun practice = practice_run(settings_with(Release::after_attempt));
    start(desk, practice.settings);
    read_all_dials(desk, practice, 0);
    CHECK(desk.find("result.headline") == nullptr);
    desk.press("header.practice");
    CHECK(desk.find("practice.truth") == nullptr);
    desk.type("answers.molar_volume.away", "22.1");
    desk.press("answers.show");
    CHECK(desk.find("practice.truth") != nullptr);
    desk.press("header.bench");
    CHECK(desk.find("result.headline") != nullptr);
}

TEST_CASE("By word: only the right word opens, also the class's, and conventions do not") {
    new_world();
    Desk desk;
    const PracticeRun practice = practice_run(settings_with(Release::by_word));
    start(desk, practice.settings);
    read_all_dials(desk, practice, 0);
    desk.press("header.conventions");
    CHECK(desk.find("conventions.answers.live") == nullptr);
    desk.press("header.practice");
    desk.type("answers.word.away", "lalala");
    desk.press("answers.show");
    CHECK(desk.find("answers.word_wrong") != nullptr);
    CHECK(desk.find("practice.truth") == nullptr);
    PracticeSettings of_class = practice.settings;
    of_class.student = 0;
    desk.type("answers.word.away", release_word(of_class));
    desk.press("answers.show");
    CHECK(desk.find("practice.truth") != nullptr);
}

TEST_CASE("A hidden mishap is guessed first, and then said") {
    new_world();
    Desk desk;
    const PracticeRun practice = practice_run(settings_with(Release::at_once, true));
    REQUIRE(practice.mishap.has_value());
    start(desk, practice.settings);
    const std::string cause = desk.app().say("cause." + std::string(name_of(practice.mishap->cause)));
    for (std::size_t run = 0; run < practice.record.runs.size(); ++run) {
        if (run > 0) desk.press("runs." + std::to_string(run));
        read_all_dials(desk, practice, run);
    }
    desk.press("header.practice");
    CHECK(desk.find("practice.mishap") == nullptr);
    desk.press("practice.compare");
    REQUIRE(desk.find("practice.mishap") != nullptr);
    CHECK(desk.find("practice.mishap.words") == nullptr);
    const std::string other = practice.mishap->cause == Cause::gas_warm ? "air_bubble" : "gas_warm";
    desk.choose("practice.mishap", other);
    CHECK(desk.node("practice.guessed").name == desk.app().say(Message{"practice.guess_wrong"}.text("cause", desk.app().say("cause." + other))));
    CHECK(desk.node("practice.mishap.words").name.find(cause) == 0);
    desk.app().undo();
    desk.settle();
    desk.press("header.practice");
    desk.choose("practice.mishap", std::string(name_of(practice.mishap->cause)));
    CHECK(desk.node("practice.guessed").name == desk.app().say(Message{"practice.guess_right"}.text("cause", cause)));
}

TEST_CASE("A record of one's own that is begun from a practice run withholds nothing") {
    new_world();
    Desk desk;
    start(desk, settings_with(Release::by_word));
    CHECK_FALSE(desk.app().reveals());
    desk.press("header.record");
    desk.press("records.new");
    CHECK(desk.app().practice() == nullptr);
    CHECK(desk.app().reveals());
}

TEST_CASE("No page of an unreleased practice run says a result, in words or in the drawing") {
    for (const Release release : {Release::after_attempt, Release::by_word}) {
        for (const Difficulty difficulty : {Difficulty::easy, Difficulty::usual, Difficulty::hard}) {
            new_world();
            Desk desk({1366, 900, false});
            const PracticeRun practice = practice_run(settings_with(release, true, difficulty));
            start(desk, practice.settings);
            for (std::size_t run = 0; run < practice.record.runs.size(); ++run) {
                if (run > 0) desk.press("runs." + std::to_string(run));
                read_all_dials(desk, practice, run);
            }
            // With every reading typed as it is, the page knows them all.
            std::vector<std::string> secrets;
            for (const Assessment& assessment : practice.expected) {
                const Working working(assessment, practice.truth.conventions);
                for (const Output output : {Output::gas_volume, Output::dry_gas_pressure, Output::amount_of_metal,
                                            Output::amount_of_gas, Output::molar_volume_standard, Output::molar_volume_bench,
                                            Output::percent_error, Output::water_vapour_pressure, Output::column_pressure}) {
                    const WorkingStep* step = working.step(output);
                    if (step == nullptr || step->value == 0) continue;
                    const std::string number = plain(format_fixed(in_unit(output, step->value, step->unit),
                                                                  step->shown_decimals, DecimalSign::point));
                    // Where 0 is at the closed end the reading is the volume: what was typed is no secret.
                    const bool typed = std::any_of(practice.dials.begin(), practice.dials.end(),
                                                   [&](const Dial& dial) { return perfect_reading(dial) == number; });
                    // Shorter ones stand by chance in any page.
                    if (number.size() >= 4 && !typed) secrets.push_back(number + ' ' + plain(info(step->unit).symbol));
                }
            }
            REQUIRE(secrets.size() > 3);
            const auto look = [&](const char* where) {
                const std::string words = all_words(desk);
                for (const std::string& secret : secrets) {
                    INFO(where, ": ", secret);
                    CHECK(words.find(secret) == std::string::npos);
                }
                CHECK(desk.find("practice.truth") == nullptr);
                CHECK(desk.find("practice.mishap.words") == nullptr);
                CHECK(desk.find("tube.picture") == nullptr);
                for (const Node& node : desk.nodes()) CHECK(node.role != Role::math);
            };
            look("bench");
            desk.wait(1000);
            look("after the announcement");
            for (const char* page : {"header.working", "header.how_sure", "header.gap", "header.practice", "header.record",
                                     "header.cautions", "header.conventions", "header.projector"}) {
                desk.press(page);
                look(page);
            }
            // Where results are shown, the same search finds them.
            if (release != Release::after_attempt) continue;
            desk.press("header.bench");
            desk.type("answers.molar_volume", "20");
            desk.press("answers.show");
            desk.press("header.working");
            const std::string words = all_words(desk);
            CHECK(std::any_of(secrets.begin(), secrets.end(),
                              [&](const std::string& secret) { return words.find(secret) != std::string::npos; }));
        }
    }
}
