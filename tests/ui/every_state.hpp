#pragma once

#include <string>
#include <utility>

#include "core/lesson/practice_code.hpp"
#include "tests/ui/desk.hpp"

/// Every page in every state that shows something else: one state after the other is reached at one desk.

namespace overwater::test {

/// All at once: what stands there letter by letter is looked at elsewhere.
inline void enter(Desk& desk, const std::string& key, const std::string& text) {
    desk.focus(key);
    desk.document().type(key, text);
    desk.send(Event::Kind::input, key, text);
    desk.settle();
}

inline void type_refusals(Desk& desk) {
    // Each text is refused or doubted in its own way, so that the longest sentences stand below the fields.
    desk.choose("bench.number_at_closed_end.largest", "largest");
    desk.choose("bench.liquid_stands.higher_inside", "higher_inside");
    static constexpr std::pair<const char*, const char*> texts[] = {
        {"bench.mass_of_metal", "0.0412 grain"}, {"bench.acid_volume", "-1"},  {"bench.acid_concentration", "3.0.0"},
        {"bench.tube_capacity", "50"},           {"bench.end_space", "-2"},    {"bench.scale_reading", "60.00"},
        {"bench.level_difference", "-112"},      {"bench.temperature", "212"}, {"bench.barometer", "abc"}};
    for (const auto& [key, text] : texts) enter(desk, key, text);
}

inline void start_practice(Desk& desk, Release release, Difficulty difficulty) {
    PracticeSettings settings;
    settings.seed = 2718;
    settings.student = 12;
    settings.release = release;
    settings.difficulty = difficulty;
    settings.mishap = release == Release::after_attempt;
    desk.press("header.practice");
    enter(desk, "practice.code", code_of(settings));
    desk.press("practice.start");
}

struct State {
    const char* name;
    void (*reach)(Desk&);
};

inline constexpr State states[] = {
    {"bench with the example", [](Desk&) {}},
    {"working", [](Desk& desk) { desk.press("header.working"); }},
    {"records", [](Desk& desk) { desk.press("header.record"); }},
    {"cautions", [](Desk& desk) { desk.press("header.cautions"); }},
    {"conventions", [](Desk& desk) { desk.press("header.conventions"); }},
    {"bench with the field at hand",
     [](Desk& desk) {
         desk.press("header.bench");
         desk.focus("bench.end_space");
         desk.settle();
     }},
    {"bench with a doubt open",
     [](Desk& desk) {
         desk.press("bench.scale_reading.doubt");
         desk.choose("bench.scale_reading.instrument", "burette_25_005_b");
         for (const char* number : {"0", "1", "2", "3", "4"}) {
             enter(desk, std::string("bench.scale_reading.repeat.") + number, "9.1");
         }
     }},
    {"bench with a doubt that cannot be",
     [](Desk& desk) {
         enter(desk, "bench.scale_reading.plus_minus", "half");
         enter(desk, "bench.scale_reading.repeat.0", "9,1.5");
         desk.choose("bench.scale_reading.instrument", "");
     }},
    {"bench with the doubt of the tube", [](Desk& desk) { desk.press("bench.tube_capacity.doubt"); }},
    {"bench with the acid too little", [](Desk& desk) { enter(desk, "bench.acid_volume", "0.5"); }},
    {"bench of an own run", [](Desk& desk) { desk.own_run(); }},
    {"working of an own run", [](Desk& desk) { desk.press("header.working"); }},
    {"bench with refusals",
     [](Desk& desk) {
         desk.press("header.bench");
         type_refusals(desk);
     }},
    {"working with refusals", [](Desk& desk) { desk.press("header.working"); }},
    {"bench with everything open, second run",
     [](Desk& desk) {
         desk.press("header.bench");
         for (const char* group : {"metal", "tube", "after", "room"}) {
             if (desk.find(std::string("bench.details.") + group) != nullptr) {
                 desk.press(std::string("bench.details.") + group);
             }
         }
         desk.press("runs.add");
     }},
    {"bench with ribbon and weather report",
     [](Desk& desk) {
         desk.choose("bench.mass_from.ribbon", "ribbon");
         desk.choose("bench.pressure_kind.reduced_to_sea_level", "reduced_to_sea_level");
         desk.choose("bench.acid.sulfuric", "sulfuric");
     }},
    {"conventions with conditions and a course of one's own",
     [](Desk& desk) {
         desk.press("header.conventions");
         desk.choose("conventions.standard.own", "own");
         desk.choose("conventions.vapour.older_table", "older_table");
         enter(desk, "conventions.course_name", "Class 3 b, spring");
         desk.press("conventions.course_keep");
         desk.press("conventions.own.0");
         enter(desk, "conventions.own_name", "");
         const std::string shared =
             R"({"overwater":"course","version":1,"name":"Autumn, upper classes, both groups, with the older table",)"
             R"("conventions":{"standard":"0C_1atm","pressure_unit":"mmHg"}})";
         desk.send(Event::Kind::file, "course.json", shared);
         desk.settle();
     }},
    {"working with every unit to be converted",
     [](Desk& desk) {
         desk.press("header.bench");
         desk.choose("bench.mass_from.weighed", "weighed");
         desk.choose("bench.pressure_kind.at_the_bench", "at_the_bench");
         static constexpr std::pair<const char*, const char*> texts[] = {
             {"bench.mass_of_metal", "41.2 mg"}, {"bench.tube_capacity", "0.0500 L"},
             {"bench.end_space", "2.34 g"},      {"bench.scale_reading", "9.15 cm3"},
             {"bench.temperature", "70.5 degF"}, {"bench.level_difference", "4.41 in"},
             {"bench.barometer", "29.42 inHg"}};
         for (const auto& [key, text] : texts) enter(desk, key, text);
         desk.press("header.working");
     }},
    {"practice with what is no code",
     [](Desk& desk) {
         desk.press("header.practice");
         enter(desk, "practice.code", "0K3FQ-07H");
         desk.press("practice.start");
     }},
    {"a page of the second part, awaited",
     [](Desk& desk) {
         native_world().second_part_there = false;
         desk.press("practice.to_codes");
     }},
    {"a page of the second part, not to be had",
     [](Desk& desk) {
         desk.send(Event::Kind::part, {}, {}, 0);
         desk.settle();
     }},
    {"codes for a class",
     [](Desk& desk) {
         native_world().second_part_there = true;
         desk.press("part.again");
         desk.choose("codes.release", "by_word");
         enter(desk, "codes.seed", "none");
     }},
    {"codes without a number of students", [](Desk& desk) { enter(desk, "codes.students", "1000"); }},
    {"bench of a practice run by word",
     [](Desk& desk) { start_practice(desk, Release::by_word, Difficulty::hard); }},
    {"practice run by word",
     [](Desk& desk) {
         desk.press("practice.to_check");
         enter(desk, "answers.word.away", "lalala");
         desk.press("answers.show");
     }},
    {"bench of a practice run, the meniscus enlarged",
     [](Desk& desk) {
         start_practice(desk, Release::at_once, Difficulty::usual);
         desk.focus("bench.scale_reading");
         desk.settle();
         desk.press("practice.larger");
     }},
    {"practice run with readings missing", [](Desk& desk) { desk.press("practice.to_check"); }},
    {"practice run after an attempt",
     [](Desk& desk) {
         start_practice(desk, Release::after_attempt, Difficulty::hard);
         enter(desk, "bench.temperature", "21.3");
         desk.press("practice.to_check");
         for (int run = 0; desk.find("practice.run." + std::to_string(run)) != nullptr || run == 0; ++run) {
             if (run > 0) desk.press("practice.run." + std::to_string(run));
             enter(desk, "answers.molar_volume.away", "22.4");
             desk.press("answers.show");
         }
     }},
    {"practice run with the mishap said", [](Desk& desk) { desk.choose("practice.mishap", "gas_warm"); }},
    {"answers of a record, checked and helped",
     [](Desk& desk) {
         // A record of one's own: the runs of a practice run are given.
         desk.press("header.record");
         desk.press("records.new");
         desk.press("header.bench");
         desk.press("runs.add");
         desk.type_record_a();
         desk.press("header.conventions");
         desk.choose("conventions.answers.live", "live");
         desk.press("header.answers");
         static constexpr std::pair<const char*, const char*> texts[] = {
             {"sheet.gas_volume", "43.20 mL"},         {"sheet.water_vapour_pressure", "2.5"},
             {"sheet.dry_gas_pressure", "98.52 kPa"},  {"sheet.amount_of_metal", "a few"},
             {"sheet.amount_of_gas", "0.001695 mmol"}, {"sheet.volume_at_standard", "39.4712345 mL"},
             {"sheet.molar_volume_standard", "77 L/mol"}, {"sheet.mean", "1"}, {"sheet.percent_error", "12"}};
         for (const auto& [key, text] : texts) enter(desk, key, text);
         desk.press("sheet.check_all");
         for (const char* step : {"dry_gas_pressure", "amount_of_metal", "molar_volume_standard", "percent_error", "mean"}) {
             for (int i = 0; i < 2; ++i) desk.press("sheet." + std::string(step) + ".check");
         }
     }},
    {"marking without sheets",
     [](Desk& desk) {
         desk.press("header.practice");
         desk.press("practice.to_marking");
         enter(desk, "marking.tolerance", "a lot");
         desk.press("marking.read");
     }},
    {"marking a class, one sheet open",
     [](Desk& desk) {
         enter(desk, "marking.text",
               "Group\tRun\tColour\tScale reading (mL)\tGas volume (mL)\tDry-gas pressure (kPa)\tMolar volume (L/mol)\n"
               "1\t1\t\t9.15\t43.20\t98.52\t23.28\n1\t2\t\t10.15\t42.20\t98.52\t22.75\n"
               "12345\t1\tgreen\t9.15\t11.5\t\t77\nAda\t\t\t9.15\t43.2\t95.97\t22.68\n");
         desk.press("marking.read");
         desk.press("marking.sheet.1.open");
     }},
    {"a plan with everything said",
     [](Desk& desk) {
         desk.press("header.class");
         desk.press("class.plan");
         const std::pair<std::string, std::string> texts[] = {
             {"plan.bench.mass_per_metre", "1.02"}, {"plan.bench.acid_concentration", "6.0"}, {"plan.groups", "12"},
             {"plan.runs", "2"}, {"plan.share", "0.5"}, {"plan.mouth_space", "-1"},
             {"plan.bench.height_above_sea_level", "4000"}};
         for (const auto& [key, text] : texts) enter(desk, key, text);
         desk.choose("plan.consent", "true");
         desk.choose("plan.bench.mass_from", "ribbon");
         enter(desk, "plan.bench.ribbon_length", "4.2");
     }},
    {"a plan that waits and refuses",
     [](Desk& desk) {
         desk.press("header.class");
         desk.press("class.plan");
         for (const char* key : {"plan.bench.temperature", "plan.spare", "plan.excess", "plan.least_share"}) {
             enter(desk, key, "a lot");
         }
         desk.choose("plan.bench.metal", "lithium");
         desk.choose("plan.bench.acid", "sulfuric");
     }},
    {"equations with nothing typed", [](Desk& desk) { desk.press("header.equations"); }},
    {"an equation with amounts",
     [](Desk& desk) {
         desk.press("equations.example.citric");
         enter(desk, "equations.amount.0", "2.50");
         enter(desk, "equations.amount.1", "1.00");
     }},
    {"a long equation, an amount that is none",
     [](Desk& desk) {
         enter(desk, "equations.text", "2KMnO4+10FeSO4+8H2SO4->K2SO4+2MnSO4+5Fe2(SO4)3+8H2O");
         enter(desk, "equations.amount.2", "a lot");
     }},
    {"an equation of several reactions",
     [](Desk& desk) { enter(desk, "equations.text", "KMnO4 + H2SO4 + H2O2 -> K2SO4 + MnSO4 + H2O + O2"); }},
    {"a formula that is none",
     [](Desk& desk) {
         enter(desk, "equations.text", "CaCO3 + HCL -> CaCl2 + H2O + CO2");
         desk.blur();
         desk.settle();
     }},
    {"a formula", [](Desk& desk) { enter(desk, "equations.text", "K4[Fe(CN)6]·3H2O"); }},
    {"records with a long name",
     [](Desk& desk) {
         desk.press("header.record");
         enter(desk, "records.name", "Blue bench, group 7, the second run after the break of the first tube");
         desk.settle();
     }},
};

}  // namespace overwater::test
