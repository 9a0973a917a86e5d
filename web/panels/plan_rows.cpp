#include "web/panels/plan_rows.hpp"

#include <algorithm>
#include <cmath>

#include "core/quantity/number_format.hpp"
#include "web/app/app.hpp"
#include "web/panels/doubt_row.hpp"
#include "web/panels/plan_words.hpp"
#include "web/panels/remark.hpp"

namespace overwater {

namespace {

constexpr float field_width = 84;
constexpr float unit_width = 66;

}  // namespace

PlanRows::PlanRows(App& app, Ui& ui, const Rect& area)
    : app_(app),
      ui_(ui),
      sheet_(app.plan_desk().sheet),
      plan_(app.plan_desk().plan),
      area_(area),
      x_(area.x),
      y_(area.y),
      row_(ui.touch() ? 46.0f : 32.0f),
      box_(ui.touch() ? 38.0f : 28.0f) {
    const bool two = area.w >= least_of_two;
    width_ = two ? (area.w - column_gap) / 2 : area.w;
    label_ = std::min(168.0f, width_ - field_width - unit_width - 8);
    for (const Check& check : plan_.checks) note(key_of(check.field), check.message, check.weight);
    for (const PlanCheck& check : plan_.asked.checks) note(key_of(check.field), check.message, check.weight);
}

std::string PlanRows::key_of(Field field, ControlPart part) { return "plan." + key_of_control(field, part); }
std::string PlanRows::key_of(PlanField field) { return "plan." + std::string(name_of(field)); }

void PlanRows::leftover() {
    for (const Said& said : said_) {
        if (!said.shown) remarks(said.key);
    }
}

void PlanRows::group(const char* words) {
    y_ += y_ > area_.y ? 12.0f : 0.0f;
    y_ += ui_.heading(std::string(words) + ".heading", 3, {x_, y_, width_, 0}, app_.say(words),
                      {Face::semibold, 17, Ink::text}) +
          4;
}

std::string PlanRows::field_name(Field field) const { return app_.say("field." + std::string(name_of(field))); }

std::string PlanRows::number_in(double base, UnitId unit) const {
    std::string number = format_significant(difference_from_base(base, unit), 2, app_.language().decimal_sign());
    // 5 and not 5.0.
    if (number.size() == 3 && number[1] < '0' && number[2] == '0') number.resize(1);
    return number;
}

Rect PlanRows::label(const std::string& key, const std::string& words, float wide) {
    const float room = label_ - 8;
    const auto lines = static_cast<float>(ui_.lines(words, Type{}, room).size());
    const float tall = std::max(row_, lines * Ui::line_height(Type{}) + 6);
    ui_.label(key + ".label", key, {x_, y_, room, tall}, words);
    const Rect box{x_ + label_, y_ + (tall - box_) / 2, wide, box_};
    y_ += tall;
    return box;
}

void PlanRows::remarks(const std::string& key) {
    int number = 0;
    for (Said& said : said_) {
        if (said.key != key) continue;
        y_ += draw_remark(ui_, {x_, y_, width_, 0}, key + ".remark" + std::to_string(number++), app_.say(*said.message),
                          said.loud);
        said.shown = true;
    }
}

void PlanRows::describe(Ui::Field& about, const std::string& key) const {
    int number = 0;
    for (const Said& said : said_) {
        if (said.key != key) continue;
        if (number > 0) about.described_by += ' ';
        about.described_by += key + ".remark" + std::to_string(number++);
        about.invalid = about.invalid || said.loud;
    }
}

void PlanRows::field(const std::string& key, const std::string& words, const Rect& box, Ui::Field& about,
                     const std::string& blank) {
    const bool shows_blank = about.value.empty() && !blank.empty();
    if (shows_blank) about.name = app_.say(Message{"plan.blank"}.text("name", words).text("value", blank));
    ui_.field(key, box, about);
    if (shows_blank && !ui_.focused(key)) {
        ui_.draw_text({box.right() - 8, box.y + (box.h - 16) / 2}, blank, {Face::regular, 16, Ink::soft}, Anchor::end);
    }
}

void PlanRows::typed(Field of, std::string blank) {
    const std::string key = key_of(of);
    const Entry& entry = sheet_.bench.at(of);
    const Reading reading = read_entry(of, entry);
    const Entry& expected = plan_.expected_sheet.at(of);
    if (blank.empty() && read_entry(of, expected).unit == reading.unit) {
        blank = reading_words(app_, plan_.expected_sheet, of, false);
    }
    const Rect box = label(key, field_name(of), field_width);
    Ui::Field about;
    about.value = entry.text;
    describe(about, key);
    field(key, field_name(of), box, about, blank);
    Ui::Choice units;
    for (const UnitId unit : units_of(info(of).measure)) units.options.emplace_back(info(unit).key, info(unit).symbol);
    units.chosen = info(app_.unit_of(entry, reading.unit, reading.number.unit != UnitId::none)).key;
    units.framed = false;
    units.ink = Ink::soft;
    units.name = app_.say(Message{"bench.unit_of"}.field("reading", name_of(of)));
    ui_.select(key_of(of, ControlPart::unit), {box.right() + 8, box.y, unit_width - 8, box_}, units);
    remarks(key);
}

void PlanRows::select(const std::string& key, const std::string& words, const Ui::Choice& about) {
    float wide = width_ - label_;
    for (const auto& [value, option] : about.options) {
        wide = std::max(wide, std::ceil(ui_.text_width(option, Type{})) + 28);
    }
    Rect box = label(key, words, std::min(wide, width_));
    if (label_ + wide > width_ + 0.5f) {
        box.x = x_;
        box.y = y_;
        y_ += row_ + 2;
    }
    ui_.select(key, box, about);
}

void PlanRows::choice(Field of) {
    Ui::Choice about;
    // A run is planned for metals.
    const auto& values = choices_of(of == Field::metal ? Field::second_metal : of);
    about.chosen = sheet_.bench.at(of).text;
    // How the mass is found and which pressure it is, nobody has to say.
    const bool usual = of == Field::mass_from || of == Field::pressure_kind;
    if (!usual) about.options.emplace_back(std::string(), app_.say("choice.none"));
    if (usual && about.chosen.empty()) about.chosen = values.front();
    for (const std::string_view value : values) {
        about.options.emplace_back(value, app_.say("choice." + std::string(name_of(of)) + '.' + std::string(value)));
    }
    select(key_of(of), field_name(of), about);
    remarks(key_of(of));
}

void PlanRows::form() {
    Ui::Choice about;
    for (const std::string_view name : metal_form_names) {
        about.options.emplace_back(name, app_.say("plan.form." + std::string(name)));
    }
    about.chosen = sheet_.at(PlanField::form);
    if (about.chosen.empty()) about.chosen = metal_form_names.front();
    const std::string key = key_of(PlanField::form);
    select(key, app_.say(label_of(PlanField::form)), about);
    remarks(key);
}

void PlanRows::asked(PlanField of, std::string_view unit, const std::string& blank) {
    const std::string key = key_of(of);
    const std::string words = app_.say(label_of(of));
    const Rect box = label(key, words, field_width);
    Ui::Field about;
    about.value = sheet_.at(of);
    describe(about, key);
    field(key, words, box, about, blank);
    if (!unit.empty()) {
        ui_.text(key + ".unit", {box.right() + 12, box.y + (box.h - 22) / 2, unit_width - 12, 0}, unit,
                 {Face::regular, 16, Ink::soft});
    }
    remarks(key);
}

void PlanRows::within(PlanField of, Field guess, double usual) {
    const UnitId unit = read_entry(guess, sheet_.bench.at(guess)).unit;
    asked(of, info(unit).symbol, number_in(usual, unit));
}

Ui::Choice PlanRows::instruments_of(Field field) const {
    const Reading capacity = read_entry(Field::tube_capacity, sheet_.bench.at(Field::tube_capacity));
    const Instrument* usual = assumed_instrument(field, capacity.there ? capacity.base : 0.0);
    if (usual == nullptr) usual = &instruments_for(field).front();
    Ui::Choice about;
    about.options.emplace_back(
        std::string(), app_.say(Message{"reading_doubt.assumed"}.text("instrument", instrument_words(app_, *usual))));
    for (const Instrument& one : instruments_for(field)) {
        about.options.emplace_back(one.key, instrument_words(app_, one));
    }
    about.chosen = sheet_.bench.at(field).instrument;
    return about;
}

float PlanRows::room_for(const Ui::Choice& about, float size) const {
    float wide = 0;
    for (const auto& [value, words] : about.options) {
        wide = std::max(wide, ui_.text_width(words, {Face::regular, size, Ink::text}) + 26);
    }
    return wide;
}

void PlanRows::instrument(Field field, const Rect& place) {
    const std::string key = key_of(field, ControlPart::instrument);
    ui_.label(key + ".label", key, {place.x, place.y, place.w, 20}, field_name(field), {Face::regular, 14, Ink::soft});
    Ui::Choice about = instruments_of(field);
    // A long name is set smaller rather than cut.
    if (room_for(about, 16) > place.w) about.size = smallest;
    ui_.select(key, {place.x, place.y + 20, place.w, box_}, about);
}

void PlanRows::note(const std::string& key, const Message& message, Check::Weight weight) {
    said_.push_back({key, &message, weight != Check::Weight::note});
}

}  // namespace overwater
