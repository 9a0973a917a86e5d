// The doubt of a reading on the bench page: seen behind its unit, opened, put down, taken back, kept.

#include "doctest/doctest.h"
#include "tests/ui/desk.hpp"

using namespace overwater;
using namespace overwater::test;

namespace {

struct RecordA {
    explicit RecordA(Screen screen = {}) {
        new_world();
        desk = std::make_unique<Desk>(screen);
        desk->own_run();
        desk->type_record_a();
    }
    Desk* operator->() const { return desk.get(); }
    /// What stands on the button behind (or below) a reading; its name is longer.
    std::string spoken(const std::string& field) const {
        const Node* button = desk->find("bench." + field + ".doubt");
        return button == nullptr ? std::string("nothing") : plain(button->name);
    }
    std::string says(const std::string& key) const { return plain(desk->node(key).name); }
    const Entry& entry(Field field) const { return desk->app().entry(field); }
    void open(const std::string& field) const { desk->press("bench." + field + ".doubt"); }
    std::unique_ptr<Desk> desk;
};

bool begins(const std::string& words, std::string_view with) { return words.starts_with(with); }

}  // namespace

TEST_CASE("Each reading shows the half-width that counts, those of method.md section 6") {
    RecordA desk;
    CHECK(desk.spoken("mass_of_metal") == "Doubt of Mass of metal: ± 0.0001 g, last digit typed. Change");
    CHECK(desk.spoken("scale_reading") == "Doubt of Scale reading: ± 0.05 mL, assumed. Change");
    CHECK(begins(desk.spoken("end_space"), "Doubt of End space: ± 0.1 mL"));
    CHECK(begins(desk.spoken("level_difference"), "Doubt of Level difference: ± 1 mm"));
    CHECK(begins(desk.spoken("temperature"), "Doubt of Temperature: ± 0.5 °C"));
    CHECK(begins(desk.spoken("barometer"), "Doubt of Barometer: ± 0.1 kPa"));
    CHECK(begins(desk.spoken("tube_capacity"), "Doubt of Tube capacity: class B ± 0.1 mL"));
    // In the row's own unit: 1 hPa is 0.750 Torr; 0.5 °C are 0.9 °F (NIST SP 811, appendix B.8).
    desk->type("bench.barometer", "747.2 Torr");
    CHECK(begins(desk.spoken("barometer"), "Doubt of Barometer: ± 0.75 Torr"));
    desk->type("bench.temperature", "70.5 °F");
    CHECK(begins(desk.spoken("temperature"), "Doubt of Temperature: ± 0.9 °F"));
    // Typed behind the reading, it is shown as typed.
    desk->type("bench.temperature", "21.4 ± 0.20");
    CHECK(desk.spoken("temperature") == "Doubt of Temperature: ± 0.20 °C, typed. Change");
    desk->type("bench.scale_reading", "");
    CHECK(desk.spoken("scale_reading") == "nothing");
    CHECK(desk.spoken("tube_capacity") == "nothing");
}

TEST_CASE("One panel is open at a time; pressing again or Escape closes it") {
    RecordA desk;
    CHECK(desk->find("bench.scale_reading.plus_minus") == nullptr);
    desk.open("scale_reading");
    CHECK(desk->find("bench.scale_reading.plus_minus") != nullptr);
    CHECK(desk.spoken("scale_reading").ends_with("Close"));
    // Directly below its row, before the next.
    CHECK(desk->node("bench.scale_reading.doubt_panel").rect.y >= desk->node("bench.scale_reading").rect.bottom());
    desk.open("temperature");
    CHECK(desk->find("bench.scale_reading.plus_minus") == nullptr);
    CHECK(desk->find("bench.temperature.plus_minus") != nullptr);
    desk.open("temperature");
    CHECK(desk->find("bench.temperature.plus_minus") == nullptr);
    desk.open("temperature");
    desk->focus("bench.temperature.plus_minus");
    CHECK(desk->send(Event::Kind::key, "bench.temperature.plus_minus", "Escape"));
    desk->settle();
    CHECK(desk->find("bench.temperature.plus_minus") == nullptr);
    CHECK(desk->document().focused == "bench.temperature.doubt");
}

TEST_CASE("Enter goes on through the panel's fields, and presses the button instead of leaving it") {
    RecordA desk;
    desk.open("temperature");
    desk->focus("bench.temperature");
    desk->send(Event::Kind::key, "bench.temperature", "Enter");
    desk->settle();
    CHECK(desk->document().focused == "bench.temperature.plus_minus");
    CHECK(!desk->send(Event::Kind::key, "bench.temperature.doubt", "Enter"));
}

TEST_CASE("An instrument chosen counts, and for the tube its class limit too") {
    RecordA desk;
    desk.open("scale_reading");
    const auto& options = desk->node("bench.scale_reading.instrument").options;
    REQUIRE(options.size() > 3);
    CHECK(options[0].first.empty());
    CHECK(plain(options[0].second) == "assumed: burette 50 mL, class B");
    CHECK(desk.says("bench.scale_reading.doubt_says").find("± 0.05 mL for reading to half a division") !=
          std::string::npos);
    CHECK(desk.says("bench.scale_reading.doubt_says").find("class B") != std::string::npos);
    desk->choose("bench.scale_reading.instrument", "cylinder_50_a");
    CHECK(desk.entry(Field::scale_reading).instrument == "cylinder_50_a");
    // Divisions of 1 mL, class A to 0.5 mL (ISO 4788).
    CHECK(begins(desk.spoken("scale_reading"), "Doubt of Scale reading: ± 0.5 mL, measuring cylinder 50 mL, class A"));
    CHECK(begins(desk.spoken("tube_capacity"), "Doubt of Tube capacity: class A ± 0.5 mL"));
    desk->choose("bench.scale_reading.instrument", "gas_tube_50");
    CHECK(begins(desk.spoken("tube_capacity"), "Doubt of Tube capacity: ± 0.1 mL"));
    // The same choice stands at the tube itself.
    desk.open("tube_capacity");
    CHECK(desk->node("bench.tube_capacity.instrument").value == "gas_tube_50");
    CHECK(desk->find("bench.tube_capacity.plus_minus") == nullptr);
    desk->choose("bench.tube_capacity.instrument", "");
    CHECK(desk.entry(Field::tube_capacity).instrument.empty());
    CHECK(desk.entry(Field::scale_reading).instrument.empty());
    CHECK(begins(desk.spoken("tube_capacity"), "Doubt of Tube capacity: class B"));
}

TEST_CASE("A half-width typed in the panel counts, is one step of undo, and leaves the history alone") {
    RecordA desk;
    const std::size_t history = desk->app().record().history.size();
    desk.open("temperature");
    desk->type("bench.temperature.plus_minus", "0.2");
    CHECK(desk.entry(Field::temperature).plus_minus == "0.2");
    CHECK(desk->app().record().shared.at(Field::temperature).plus_minus == "0.2");
    CHECK(desk.spoken("temperature") == "Doubt of Temperature: ± 0.2 °C, typed. Close");
    CHECK(desk->app().record().history.size() == history);
    CHECK(stored_record(desk->app().record().id).find("\"plus_minus\"") != std::string::npos);
    desk.open("temperature");
    CHECK(desk->find("bench.temperature.plus_minus") == nullptr);
    desk->send(Event::Kind::undo);
    desk->settle();
    CHECK(desk.entry(Field::temperature).plus_minus.empty());
    // What was taken back is shown.
    CHECK(desk->document().focused == "bench.temperature.plus_minus");
    CHECK(desk->node("bench.temperature.plus_minus").value.empty());
    desk->send(Event::Kind::redo);
    desk->settle();
    CHECK(desk.entry(Field::temperature).plus_minus == "0.2");
    desk->choose("bench.temperature.shape", "normal");
    CHECK(desk.entry(Field::temperature).shape == "normal");
}

TEST_CASE("A thing read again: a blank field follows the last one filled, and the mean counts") {
    RecordA desk;
    desk.open("scale_reading");
    CHECK(desk->find("bench.scale_reading.repeat.0") != nullptr);
    CHECK(desk->find("bench.scale_reading.repeat.1") == nullptr);
    desk->type("bench.scale_reading.repeat.0", "9.10");
    desk->type("bench.scale_reading.repeat.1", "9.20");
    CHECK(desk->find("bench.scale_reading.repeat.2") != nullptr);
    // 9.15, 9.10, 9.20: mean 9.15, s/sqrt 3 = 0.029 mL; the value stays that of record A.
    const std::string mean = desk.says("bench.scale_reading.doubt_mean");
    CHECK(mean.find("Mean of 3 readings: 9.150 mL") != std::string::npos);
    CHECK(mean.find("0.029 mL") != std::string::npos);
    CHECK(desk->output("Molar volume at standard conditions") == "22.68 L/mol");
    for (const char* number : {"2", "3", "4"}) desk->type("bench.scale_reading.repeat." + std::string(number), "9.15");
    CHECK(desk->find("bench.scale_reading.repeat.5") == nullptr);
    CHECK(desk.entry(Field::scale_reading).repeats.size() == 5);
    // A blank between stays; blanks at the end go.
    desk->type("bench.scale_reading.repeat.1", "");
    CHECK(desk.entry(Field::scale_reading).repeats.size() == 5);
    for (const char* number : {"4", "3", "2"}) desk->type("bench.scale_reading.repeat." + std::string(number), "");
    CHECK(desk.entry(Field::scale_reading).repeats == std::vector<std::string>{"9.10"});
}

TEST_CASE("What is no number is kept as typed, marked in its own field and explained below the row") {
    RecordA desk;
    desk.open("scale_reading");
    desk->type("bench.scale_reading.plus_minus", "half");
    CHECK(desk->node("bench.scale_reading.plus_minus").invalid);
    CHECK(!desk->node("bench.scale_reading").invalid);
    CHECK(desk.entry(Field::scale_reading).plus_minus == "half");
    CHECK(desk.says("bench.scale_reading.remark0").find("no number above zero") != std::string::npos);
    // The assumed one counts on.
    CHECK(desk.spoken("scale_reading").find("± 0.05 mL") != std::string::npos);
    desk->type("bench.scale_reading.plus_minus", "");
    desk->type("bench.scale_reading.repeat.0", "9.1x");
    CHECK(desk->node("bench.scale_reading.repeat.0").invalid);
    CHECK(!desk->node("bench.scale_reading").invalid);
    CHECK(desk->output("Molar volume at standard conditions") == "22.68 L/mol");
    // While the reading is typed anew, its panel stays.
    desk->type("bench.scale_reading", "");
    CHECK(desk->find("bench.scale_reading.plus_minus") != nullptr);
    CHECK(desk->node("bench.scale_reading.repeat.0").value == "9.1x");
}

TEST_CASE("What was put down goes out with the record and comes back") {
    std::string file;
    {
        RecordA desk;
        desk.open("scale_reading");
        desk->type("bench.scale_reading.plus_minus", "0.08");
        desk->choose("bench.scale_reading.instrument", "burette_50_a");
        desk->choose("bench.scale_reading.shape", "triangular");
        desk->type("bench.scale_reading.repeat.0", "9.20");
        desk->app().export_record(desk->app().record().id);
        file = native_world().files.back().text;
    }
    new_world();
    Desk desk;
    desk.wait(5000);
    desk.send(Event::Kind::file, "a.json", file);
    desk.settle();
    const Entry& entry = desk.app().entry(Field::scale_reading);
    CHECK(entry.text == "9.15");
    CHECK(entry.plus_minus == "0.08");
    CHECK(entry.instrument == "burette_50_a");
    CHECK(entry.shape == "triangular");
    CHECK(entry.repeats == std::vector<std::string>{"9.20"});
    CHECK(desk.app().open_doubt() == Field::count);
}

TEST_CASE("The next run is read with the same instruments; another room begins with those of the first") {
    RecordA desk;
    desk.open("scale_reading");
    desk->choose("bench.scale_reading.instrument", "burette_50_a");
    desk->type("bench.scale_reading.repeat.0", "9.20");
    desk.open("temperature");
    desk->choose("bench.temperature.instrument", "thermometer_01");
    desk->press("runs.add");
    CHECK(desk.entry(Field::scale_reading).instrument == "burette_50_a");
    CHECK(desk.entry(Field::scale_reading).repeats.empty());
    CHECK(desk.entry(Field::scale_reading).text.empty());
    desk->press("runs.own_room");
    desk->type("bench.temperature", "23.0");
    CHECK(desk.entry(Field::temperature).instrument == "thermometer_01");
    CHECK(desk->app().record().shared.at(Field::temperature).text == "21.4");
    // A doubt of the run's own keeps the number that holds for all.
    if (desk->app().open_doubt() != Field::barometer) desk.open("barometer");
    desk->type("bench.barometer.plus_minus", "0.2");
    CHECK(desk.entry(Field::barometer).text == "99.62");
    CHECK(desk.entry(Field::barometer).plus_minus == "0.2");
    CHECK(desk->app().record().shared.at(Field::barometer).plus_minus.empty());
    // What is cleared again hides the first room no longer.
    desk->type("bench.temperature", "");
    CHECK(desk.entry(Field::temperature).text == "21.4");
}

TEST_CASE("On a narrow page the doubt stands below the reading's name, with its unit") {
    {
        RecordA narrow({390, 844, true});
        const Node& button = narrow->node("bench.scale_reading.doubt");
        CHECK(button.rect.y >= narrow->node("bench.scale_reading.label").rect.bottom() - 2);
        CHECK(button.rect.right() <= narrow->node("bench.scale_reading").rect.x);
    }
    RecordA wide;
    CHECK(wide->node("bench.scale_reading.doubt").rect.x >= wide->node("bench.scale_reading.unit").rect.right());
    CHECK(wide->document().height <= 620);
}
