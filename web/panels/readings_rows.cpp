#include "web/panels/readings_rows.hpp"

#include <algorithm>
#include <cmath>

#include "web/app/app.hpp"
#include "web/app/control_key.hpp"
#include "web/panels/doubt_row.hpp"
#include "web/panels/panels.hpp"
#include "web/panels/remark.hpp"
#include "web/panels/types.hpp"
#include "web/panels/wording.hpp"

namespace overwater {

namespace {

constexpr float below_label = 24;  ///< height of a doubt that stands below its reading's name

/// Where every hint stands below its row, only those are shown that a first run cannot do without.
bool says_more(Field field) {
    return field == Field::mass_of_metal || field == Field::end_space || field == Field::number_at_closed_end ||
           field == Field::scale_reading || field == Field::liquid_stands || field == Field::level_difference ||
           field == Field::temperature || field == Field::barometer;
}

/// What is taken where nothing was chosen; empty where it has to be asked.
std::string_view usual(Field field) {
    const bool has_usual = field == Field::mass_from || field == Field::pressure_kind || field >= Field::apparatus;
    return has_usual && field != Field::second_metal && field != Field::gas ? choices_of(field).front()
                                                                            : std::string_view();
}

}  // namespace

ReadingsRows::ReadingsRows(App& app, Ui& ui, Rect area, bool hints)
    : app_(app), ui_(ui), area_(area), hints_(hints), y_(area.y), row_(ui.touch() ? 46.0f : 32.0f),
      field_height_(ui.touch() ? 38.0f : 28.0f) {
    for (const Field field : {Field::mass_of_metal, Field::acid_concentration, Field::scale_reading,
                              Field::level_difference, Field::barometer, Field::end_space}) {
        label_width_ = std::max(label_width_, ui.text_width(name(field), Type{}) + 12);
    }
    unit_width_ = area.w > 340 ? 76.0f : 66.0f;
    field_width_ = std::min(112.0f, area.w - unit_width_ - 10 - 110);
    label_width_ = std::min(label_width_, area.w - field_width_ - unit_width_ - 10);
}

std::string ReadingsRows::name(Field field) const { return field_name(app_, field); }

/// The label of a row; returns the row's height, which grows with a label of several lines and with what stands below it.
float ReadingsRows::label(Field field, float below) {
    const std::string key = key_of_control(field);
    const auto rows = static_cast<float>(ui_.lines(name(field), Type{}, label_width_).size());
    const float words = rows * Ui::line_height(Type{});
    const float tall = std::max(row_, below > 0 ? words + below : words + 6);
    ui_.label(key + ".label", key, {area_.x, y_, label_width_, tall - below}, name(field));
    return tall;
}

bool ReadingsRows::beside(std::string_view words) const {
    const float left = label_width_ + field_width_ + 8 + unit_width_ - 6;
    return left + std::ceil(ui_.text_width(words, small)) + 6 <= area_.w;
}

void ReadingsRows::typed(Field field) {
    const std::string key = key_of_control(field);
    // On a narrow page the instrument stands above the reading that is taken from it.
    constexpr float dial_height = 300;
    if (hints_ && dial_of(field)) {
        app_.dial_is_at(y_);
        y_ += draw_dial_at_hand(app_, ui_, {area_.x, y_ + 4, area_.w, 0}, dial_height) + 10;
    }
    const ReadingDoubt words = reading_doubt(app_, field);
    const float tall = label(field, words.number.empty() || beside(words.number) ? 0 : below_label);
    const Rect box{area_.x + label_width_, y_ + (tall - field_height_) / 2, field_width_, field_height_};
    Ui::Field about;
    about.value = app_.entry(field).text;
    about.invalid = refused(field);
    about.described_by = remark_keys(field);
    ui_.field(key, box, about);
    unit(field, box);
    if (!words.number.empty()) doubt(field, words, box, tall);
    y_ += tall;
    if (app_.open_doubt() == field) {
        y_ += draw_doubt_panel(app_, ui_, {area_.x, y_, area_.w, 0}, field, row_, field_height_);
    }
    remarks(field);
}

void ReadingsRows::unit(Field field, Rect box) {
    const Reading& reading = app_.assessment().readings[field];
    if (info(field).measure == Measure::number) return;
    Ui::Choice units;
    for (const UnitId unit : units_of(info(field).measure)) {
        units.options.emplace_back(info(unit).key, info(unit).symbol);
    }
    if (field == Field::end_space) units.options.emplace_back(info(UnitId::gram).key, info(UnitId::gram).symbol);
    const UnitId read = app_.unit_of(app_.entry(field), reading.unit, reading.number.unit != UnitId::none);
    units.chosen = info(read).key;
    units.framed = false;
    units.ink = Ink::soft;
    units.name = app_.say(Message{"bench.unit_of"}.text("reading", field_name(app_, field)));
    // The mark stands right behind the unit; the unit itself stands still.
    const float wide = std::min(unit_width_ - 8, ui_.text_width(info(read).symbol, Type{}) + 24);
    const float least = ui_.touch() ? 44.0f : 36.0f;
    ui_.select(key_of_control(field, ControlPart::unit), {box.right() + 8, box.y, std::max(wide, least), field_height_},
               units);
}

/// Behind the unit, or below the name where there is no room; calm until its row is at hand.
void ReadingsRows::doubt(Field field, const ReadingDoubt& words, Rect box, float tall) {
    const bool behind = beside(words.number);
    const std::string& shown = behind ? words.number : words.with_unit;
    const float wide = std::max(std::ceil(ui_.text_width(shown, small)) + 4, behind ? 24.0f : 44.0f);
    const float x = behind ? box.right() + 8 + unit_width_ - 6 : area_.x - 2;
    const Rect place =
        behind ? Rect{x, box.y, wide, field_height_} : Rect{x, y_ + tall - below_label - 1, wide, below_label};
    const std::string focused = app_.interaction().focused;
    const bool at_hand = app_.open_doubt() == field || field_of_control(focused).field == field;
    if (ui_.button(key_of_control(field, ControlPart::doubt), place, shown,
                   at_hand ? Ui::ButtonLook::link : Ui::ButtonLook::plain, false, words.spoken, 14)) {
        app_.toggle_doubt(field);
    }
}

void ReadingsRows::listed(Field field) {
    const float tall = label(field, 0);
    Ui::Choice choice;
    if (usual(field).empty()) choice.options.emplace_back(std::string(), app_.say("choice.none"));
    for (const std::string_view value : choices_of(field)) {
        choice.options.emplace_back(value, choice_words(app_, field, value));
    }
    choice.chosen = app_.entry(field).text;
    if (choice.chosen.empty()) choice.chosen = usual(field);
    ui_.select(key_of_control(field),
               {area_.x + label_width_, y_ + (tall - field_height_) / 2, field_width_ + unit_width_ + 8, field_height_},
               choice);
    y_ += tall;
    remarks(field);
}

void ReadingsRows::radios(Field field) {
    const std::string key = key_of_control(field);
    const float label = ui_.text_width(name(field), Type{}) + 12;
    const float gap = 8;
    float total = 0;
    for (const std::string_view value : choices_of(field)) total += width_of_radio(field, value) + gap;
    const bool one_row = label + total - gap <= area_.w;
    const float start = one_row ? std::max(label, std::min(label_width_, area_.w - total + gap)) : 8;
    ui_.open(key, Role::radio_group, {area_.x, y_, area_.w, row_}, name(field));
    ui_.text(key + ".label", {area_.x, y_ + (row_ - 22) / 2, area_.w, row_}, name(field));
    if (!one_row) y_ += row_ - 4;
    Flow flow(area_.x + start, y_, area_.w - start, row_, gap);
    const std::string& chosen = app_.entry(field).text;
    for (const std::string_view value : choices_of(field)) {
        const Rect rect = flow.next(width_of_radio(field, value));
        ui_.radio(key + '.' + std::string(value), rect, choice_words(app_, field, value), std::string(value),
                  chosen == value || (chosen.empty() && value == usual(field)));
    }
    ui_.close();
    y_ = flow.bottom();
    remarks(field);
}

float ReadingsRows::width_of_radio(Field field, std::string_view value) const {
    return std::ceil(ui_.text_width(choice_words(app_, field, value), Type{})) + 24;
}

void ReadingsRows::line(std::string_view key, std::string_view words) {
    ui_.text(key, {area_.x, y_ + (row_ - 19) / 2, area_.w, row_}, words, small);
    y_ += row_;
}

/// Whether the reading itself is refused or doubted, and not what is put down about its doubt.
bool ReadingsRows::refused(Field field) const {
    constexpr std::string_view about_doubt = "check.doubt.";
    const Entry& entry = app_.entry(field);
    const bool own_text = entry.plus_minus.empty() && entry.repeats.empty();
    for (const Check& check : app_.assessment().checks) {
        if (check.field != field || check.weight == Check::Weight::note) continue;
        if (own_text || !check.message.key.starts_with(about_doubt)) return true;
    }
    return false;
}

bool ReadingsRows::dial_of(Field field) const {
    const Dial* dial = app_.dial_at_hand();
    return dial != nullptr && dial->field == field;
}

std::string ReadingsRows::remark_keys(Field field) const {
    std::string keys;
    const auto add = [&keys](std::string key) {
        if (!keys.empty()) keys += ' ';
        keys += key;
    };
    if (dial_of(field)) add("practice.dial");
    if (hints_ && says_more(field)) add(key_of_control(field) + ".hint");
    if (!hints_ && app_.attended() == field) add("bench.hint");
    int number = 0;
    for (const Check& check : app_.assessment().checks) {
        if (check.field == field) add(key_of_remark(field, number++));
    }
    return keys;
}

void ReadingsRows::remarks(Field field) {
    int number = 0;
    for (const Check& check : app_.assessment().checks) {
        if (check.field != field) continue;
        y_ += draw_remark(ui_, {area_.x, y_, area_.w, 0}, key_of_remark(field, number++), app_.say(check.message),
                          check.weight != Check::Weight::note);
    }
    const std::string hint = key_for_run(app_, "hint." + std::string(name_of(field)));
    if (hints_ && says_more(field) && Language::knows(hint)) {
        y_ += ui_.text(key_of_control(field) + ".hint", {area_.x, y_ - 2, area_.w, 0}, app_.say(hint), small) + 6;
    }
}

}  // namespace overwater
