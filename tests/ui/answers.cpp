// The page of answers, by its own nodes: a sheet typed, checked, helped, and what the pace holds back.

#include <doctest/doctest.h>

#include "core/lesson/practice.hpp"
#include "core/record/stored.hpp"
#include "tests/ui/desk.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

std::string words(const Desk& desk, const std::string& key) {
    const Node* node = desk.find(key);
    return node == nullptr ? std::string() : plain(node->name);
}

std::string all_words(const Desk& desk) {
    std::string all;
    for (const Node& node : desk.nodes()) {
        if (node.role != Role::textbox && node.key.find(".record") == std::string::npos) {
            all += node.name + '\n' + node.value + '\n' + node.spoken + '\n';
        }
    }
    return plain(all);
}

std::size_t formulas(const Desk& desk) {
    std::size_t count = 0;
    for (const Node& node : desk.nodes()) count += node.role == Role::math ? 1 : 0;
    return count;
}

/// Record A, and the page of answers.
void begin(Desk& desk, const char* pace = "live") {
    desk.own_run();
    desk.type_record_a();
    desk.press("header.conventions");
    desk.choose(std::string("conventions.answers.") + pace, pace);
    desk.press("header.answers");
}

}  // namespace

TEST_CASE("A sheet is typed and checked: right, from the step before, and not right with help step by step") {
    new_world();
    Desk desk;
    begin(desk);
    // method.md, record A; the vapour pressure forgotten, by hand: 99.62 - 1.096 = 98.524 kPa; 39.47 mL; 23.28 L/mol.
    desk.type("sheet.gas_volume", "43.20");
    desk.choose("sheet.gas_volume.unit", "mL");
    desk.type("sheet.dry_gas_pressure", "98.52 kPa");
    desk.type("sheet.amount_of_gas", "1.695");
    desk.type("sheet.volume_at_standard", "39.47 mL");
    desk.type("sheet.molar_volume_standard", "23.28 L/mol");
    desk.settle();
    CHECK(desk.node("sheet.dry_gas_pressure.unit").value == "kPa");
    desk.press("sheet.gas_volume.check");
    CHECK(words(desk, "sheet.gas_volume.said") == "Right.");
    CHECK(desk.find("sheet.gas_volume.nudge") == nullptr);
    desk.press("sheet.amount_of_gas.check");
    CHECK(words(desk, "sheet.amount_of_gas.said") == "Right. Say its unit too.");
    desk.press("sheet.volume_at_standard.check");
    CHECK(words(desk, "sheet.volume_at_standard.said") == "Right from the step before.");
    CHECK(desk.find("sheet.dry_gas_pressure.said") == nullptr);

    desk.press("sheet.dry_gas_pressure.check");
    CHECK(words(desk, "sheet.dry_gas_pressure.said") == "Not right yet.");
    CHECK(desk.node("sheet.dry_gas_pressure").invalid);
    CHECK(words(desk, "sheet.dry_gas_pressure.nudge") == plain(desk.app().say("nudge.dry_gas_pressure")));
    CHECK(desk.find("sheet.dry_gas_pressure.slip1") == nullptr);
    CHECK(formulas(desk) == 0);
    desk.press("sheet.dry_gas_pressure.check");
    CHECK(words(desk, "sheet.dry_gas_pressure.slip1").find(plain(desk.app().say("slip.vapour_ignored"))) !=
          std::string::npos);
    CHECK(formulas(desk) == 0);
    desk.press("sheet.dry_gas_pressure.check");
    CHECK(formulas(desk) >= 2);
    // 95.974 kPa, with the guard digit that the working shows.
    CHECK(words(desk, "sheet.dry_gas_pressure.step.result").find("95.97") != std::string::npos);

    // Corrected: what was judged no longer stands, neither there nor in what follows; the help stays to be read.
    desk.type("sheet.dry_gas_pressure", "95.97 kPa");
    CHECK(words(desk, "sheet.dry_gas_pressure.said") == "Changed since it was checked.");
    CHECK_FALSE(desk.node("sheet.dry_gas_pressure").invalid);
    CHECK(words(desk, "sheet.volume_at_standard.said") == "Changed since it was checked.");
    CHECK(words(desk, "sheet.gas_volume.said") == "Right.");
    desk.press("sheet.dry_gas_pressure.check");
    CHECK(words(desk, "sheet.dry_gas_pressure.said") == "Right.");
    desk.press("sheet.volume_at_standard.check");
    CHECK(words(desk, "sheet.volume_at_standard.said") == "Not right yet.");
}

TEST_CASE("The corrected step goes on from the student's own numbers") {
    new_world();
    Desk desk;
    begin(desk);
    desk.type("sheet.gas_volume", "40.85 mL");
    desk.type("sheet.dry_gas_pressure", "95.97 kPa");
    desk.type("sheet.volume_at_standard", "50 mL");
    for (int press = 0; press < 3; ++press) desk.press("sheet.volume_at_standard.check");
    // By hand: 40.85 x (95.97/100) x (273.15/294.55) = 36.3555 mL; one digit more than is significant is shown.
    CHECK(words(desk, "sheet.volume_at_standard.step.result").find("36.355") != std::string::npos);
    const Node& formula = desk.node("sheet.volume_at_standard.step.formula");
    CHECK(plain(formula.name).find("40.85") != std::string::npos);
}

TEST_CASE("Check all says how many are right; answers and attempts are kept, and undone") {
    new_world();
    Desk desk;
    begin(desk);
    desk.type("sheet.gas_volume", "43.20 mL");
    desk.type("sheet.percent_error", "-0.13");
    desk.settle();
    desk.press("sheet.check_all");
    CHECK(words(desk, "status") == "2 of 8 steps right.");
    CHECK(words(desk, "sheet.water_vapour_pressure.said") == "Nothing typed yet.");
    const std::string id = desk.app().record().id;
    const auto stored = stored_to(stored_record(id));
    REQUIRE(stored);
    REQUIRE(stored->record.runs[0].answers.size() == 1);
    CHECK(stored->record.runs[0].answers[0].text == "43.20 mL");
    REQUIRE(stored->record.answers.size() == 1);
    CHECK(stored->record.answers[0].step == "percent_error");
    CHECK(stored->record.history.back().field == "answers.percent_error");
    CHECK(stored->record.history.back().text == "-0.13");
    CHECK(stored->record.history.back().run == -1);
    desk.press("header.bench");
    desk.press("header.undo");
    CHECK(desk.app().page() == PageName::answers);
    CHECK(desk.node("sheet.percent_error").value.empty());
    CHECK(desk.find("sheet.gas_volume.said") == nullptr);
    desk.press("header.redo");
    CHECK(desk.node("sheet.percent_error").value == "-0.13");
}

TEST_CASE("Several runs have their own answers, and a mean with its slip") {
    new_world();
    Desk desk;
    begin(desk);
    desk.type("sheet.molar_volume_standard", "22.68 L/mol");
    desk.press("header.bench");
    desk.press("runs.add");
    for (const auto& [key, text] : {std::pair{"bench.mass_of_metal", "0.0412"}, std::pair{"bench.scale_reading", "10.15"}}) {
        desk.type(key, text);
    }
    desk.choose("bench.liquid_stands.higher_inside", "higher_inside");
    desk.type("bench.level_difference", "112");
    desk.press("header.answers");
    CHECK(desk.node("sheet.molar_volume_standard").value.empty());
    // By hand, V proportional: 42.20/43.20 x 22.6818 = 22.157 L/mol; the mean 22.419; their sum 44.84.
    desk.type("sheet.molar_volume_standard", "22.16 L/mol");
    desk.type("sheet.mean", "44.84 L/mol");
    desk.press("sheet.mean.check");
    desk.press("sheet.mean.check");
    CHECK(words(desk, "sheet.mean.slip1").find(plain(desk.app().say("slip.mean.not_divided"))) != std::string::npos);
    desk.press("sheet.mean.check");
    CHECK(words(desk, "sheet.mean.step.result").find("22.4") != std::string::npos);
    desk.press("sheet.run.0");
    CHECK(desk.node("sheet.molar_volume_standard").value == "22.68 L/mol");
    CHECK(desk.find("sheet.mean.said") != nullptr);
}

TEST_CASE("After an attempt: the step is shown only where it and those before it were tried") {
    new_world();
    Desk desk;
    begin(desk, "after_attempt");
    desk.press("sheet.gas_volume.check");
    CHECK(words(desk, "sheet.gas_volume.said") == "Nothing typed yet.");
    // Pressed again and again it gives no more.
    for (int i = 0; i < 4; ++i) desk.press("sheet.gas_volume.check");
    CHECK(desk.find("sheet.gas_volume.step") == nullptr);
    desk.type("sheet.dry_gas_pressure", "1 kPa");
    for (int i = 0; i < 5; ++i) desk.press("sheet.dry_gas_pressure.check");
    CHECK(desk.find("sheet.dry_gas_pressure.slip1") != nullptr);
    CHECK(desk.find("sheet.dry_gas_pressure.step") == nullptr);
    CHECK(all_words(desk).find("95.97") == std::string::npos);
    desk.type("sheet.gas_volume", "1 mL");
    desk.type("sheet.water_vapour_pressure", "1 kPa");
    for (int i = 0; i < 3; ++i) desk.press("sheet.dry_gas_pressure.check");
    CHECK(desk.find("sheet.dry_gas_pressure.step") != nullptr);
    // An attempt stays one when it is wiped out.
    desk.type("sheet.gas_volume", "");
    for (int i = 0; i < 3; ++i) desk.press("sheet.gas_volume.check");
    CHECK(words(desk, "sheet.gas_volume.step.result").find("43.20") != std::string::npos);
}

TEST_CASE("After an attempt: the result, checked, is the answer that opens the results") {
    new_world();
    Desk desk;
    begin(desk, "after_attempt");
    CHECK_FALSE(desk.app().reveals());
    desk.type("sheet.molar_volume_standard", "22.4 L/mol");
    CHECK_FALSE(desk.app().reveals());
    desk.press("sheet.molar_volume_standard.check");
    CHECK(desk.app().reveals());
    CHECK(words(desk, "sheet.molar_volume_standard.said") != "");
}

TEST_CASE("Hidden: answers are acknowledged, and nothing is judged") {
    new_world();
    Desk desk;
    begin(desk, "hidden");
    desk.type("sheet.gas_volume", "43.20 mL");
    desk.type("sheet.dry_gas_pressure", "98.52 kPa");
    desk.settle();
    desk.press("sheet.check_all");
    for (int i = 0; i < 4; ++i) {
        desk.press("sheet.gas_volume.check");
        desk.press("sheet.dry_gas_pressure.check");
        desk.press("sheet.percent_error.check");
    }
    CHECK(words(desk, "sheet.gas_volume.said") == words(desk, "sheet.dry_gas_pressure.said"));
    CHECK(words(desk, "sheet.gas_volume.said") == "Typed. It is not judged yet.");
    CHECK_FALSE(desk.node("sheet.dry_gas_pressure").invalid);
    CHECK(desk.find("sheet.dry_gas_pressure.nudge") == nullptr);
    CHECK(formulas(desk) == 0);
    const std::string said = all_words(desk);
    for (const char* word : {"95.97", "22.68", "Right", "Not right", "subtracted"}) CHECK(said.find(word) == std::string::npos);
}

TEST_CASE("A practice run by the teacher's word is judged after it") {
    new_world();
    Desk desk;
    PracticeSettings settings;
    settings.seed = 417;
    settings.student = 3;
    settings.release = Release::by_word;
    desk.press("header.practice");
    desk.type("practice.code", code_of(settings));
    desk.press("practice.start");
    const PracticeRun practice = practice_run(settings);
    for (const Dial& dial : practice.dials) {
        if (dial.run > 0) continue;
        desk.type("bench." + std::string(name_of(dial.field)), perfect_reading(dial) + ' ' + std::string(info(dial.unit).symbol));
    }
    desk.press("header.answers");
    desk.type("sheet.gas_volume", "1 mL");
    desk.press("sheet.gas_volume.check");
    CHECK(words(desk, "sheet.gas_volume.said") == "Typed. It is not judged yet.");
    desk.press("header.practice");
    desk.type("answers.word.away", release_word(settings));
    desk.press("answers.show");
    desk.press("header.answers");
    desk.press("sheet.gas_volume.check");
    CHECK(words(desk, "sheet.gas_volume.said").starts_with("Not right yet."));
}

TEST_CASE("An answer that does not follow from the one that was changed keeps what was said of it") {
    new_world();
    Desk desk;
    begin(desk);
    // As above: the vapour pressure was forgotten first, then taken off; 95.974 kPa is record A's own.
    desk.type("sheet.dry_gas_pressure", "98.52 kPa");
    desk.type("sheet.amount_of_gas", "1.695 mmol");
    desk.type("sheet.volume_at_standard", "39.47 mL");
    desk.settle();
    desk.press("sheet.check_all");
    CHECK(words(desk, "sheet.amount_of_gas.said") == "Right.");
    CHECK(words(desk, "sheet.volume_at_standard.said") == "Right from the step before.");
    desk.type("sheet.dry_gas_pressure", "95.97 kPa");
    desk.settle();
    CHECK(words(desk, "sheet.amount_of_gas.said") == "Right.");
    CHECK(words(desk, "sheet.volume_at_standard.said") == "Changed since it was checked.");
    CHECK(words(desk, "sheet.dry_gas_pressure.said") == "Changed since it was checked.");
}

TEST_CASE("A sheet for another last line asks what leads there, and its slip is named; the gap is its own") {
    new_world();
    Desk desk;
    desk.own_run();
    desk.type_record_a();
    desk.app().handle({Event::Kind::change, "bench.target", "equivalent_mass"});
    desk.settle();
    CHECK(desk.app().sought() == Output::equivalent_mass);
    desk.press("header.answers");
    CHECK(desk.find("sheet.amount_by_volume") != nullptr);
    CHECK(desk.find("sheet.amount_of_metal") == nullptr);
    CHECK(desk.find("sheet.molar_volume_standard") == nullptr);
    // Record A by hand: 1.693 mmol of hydrogen and 41.2 mg of magnesium; half of 24.336 g/mol.
    desk.type("sheet.equivalent_mass", "24.34 g/mol");
    desk.press("sheet.equivalent_mass.check");
    CHECK(words(desk, "sheet.equivalent_mass.said") == "Not right yet.");
    CHECK(words(desk, "sheet.equivalent_mass.nudge") == plain(desk.app().say("nudge.equivalent_mass")));
    desk.press("sheet.equivalent_mass.check");
    CHECK(words(desk, "sheet.equivalent_mass.slip1").find(plain(desk.app().say("slip.equivalent_not_halved"))) != std::string::npos);
    desk.type("sheet.equivalent_mass", "12.17 g/mol");
    desk.press("sheet.equivalent_mass.check");
    CHECK(words(desk, "sheet.equivalent_mass.said") == "Right.");

    desk.press("header.gap");
    CHECK(words(desk, "gap.statement").find("12.168 g/mol") != std::string::npos);
    CHECK(words(desk, "gap.statement").find("12.153 g/mol") != std::string::npos);
    CHECK(desk.find("gap.other_line") == nullptr);

    // The working leads to it, and the molar volume is one of the other results.
    desk.press("header.working");
    for (const Node& node : desk.nodes()) {
        if (node.key == "working.row.equivalent_mass" || node.key == "working.row.percent_error") CHECK(node.parent == "working.steps");
        if (node.key == "working.row.molar_volume_standard") CHECK(node.parent == "working.others");
    }
}

TEST_CASE("An answer of one's own is read in the unit of what is sought") {
    new_world();
    Desk desk;
    begin(desk, "after_attempt");
    desk.app().handle({Event::Kind::change, "bench.target", "molar_mass"});
    desk.settle();
    desk.press("header.bench");
    CHECK(all_words(desk).find("24.34 g/mol") == std::string::npos);
    CHECK(words(desk, "answers.molar_volume.label").find("g/mol") != std::string::npos);
    desk.type("answers.molar_volume", "24.3");
    desk.press("answers.show");
    CHECK(all_words(desk).find("24.34 g/mol") != std::string::npos);
}
