#include "web/panels/plan_fields.hpp"

#include <algorithm>
#include <cmath>

#include "core/quantity/number_format.hpp"
#include "web/app/app.hpp"
#include "web/app/control_key.hpp"
#include "web/panels/doubt_row.hpp"
#include "web/panels/panels.hpp"
#include "web/panels/plan_words.hpp"
#include "web/panels/remark.hpp"

namespace overwater {

namespace {

constexpr float column_gap = 30;
constexpr float least_of_two = 620;

std::string key_of(const std::string& name) { return "plan." + name; }
std::string key_of(Field field, ControlPart part = ControlPart::text) { return key_of(key_of_control(field, part)); }
std::string key_of(PlanField field) { return key_of(std::string(name_of(field))); }

class PlanFields {
public:
    PlanFields(App& app, Ui& ui, const Rect& area)
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
    }

    float draw() {
        const bool two = width_ < area_.w;
        metal();
        if (two) {
            lesson();
            bottom_ = y_;
            x_ += width_ + column_gap;
            y_ = area_.y;
        }
        tube();
        room();
        x_ = area_.x;
        y_ = std::max(y_, bottom_);
        instruments();
        if (!two) lesson();
        leftover();
        return y_ - area_.y;
    }

private:
    static constexpr float field_width = 84;
    static constexpr float unit_width = 66;

    void metal() {
        group("plan.metal");
        choice(Field::metal);
        form();
        choice(Field::mass_from);
        const std::string& from = sheet_.bench.at(Field::mass_from).text;
        if (from == "ribbon") {
            typed(Field::ribbon_length);
        } else if (from == "by_difference") {
            typed(Field::mass_before);
            typed(Field::mass_after);
        } else {
            typed(Field::mass_of_metal);
        }
        asked(PlanField::share, "%", number_in(PlanAsked{}.share, UnitId::percent));
        typed(Field::mass_per_metre);
        typed(Field::purity, number_in(1, UnitId::percent));
        choice(Field::acid);
        typed(Field::acid_concentration);
        typed(Field::acid_volume);
        asked(PlanField::excess, {}, number_in(PlanAsked{}.excess, UnitId::none));
        if (plan_.acid.needs_consent || plan_.asked.consent) {
            const std::string words = app_.say("plan.consent");
            const float room = width_ - 30;
            const auto lines = static_cast<float>(ui_.lines(words, Type{}, room).size());
            const float tall = std::max(row_, lines * Ui::line_height(Type{}) + 8);
            // Answered by App::plan_changed.
            ui_.check_box(key_of(PlanField::consent), {x_, y_, width_, tall}, words, plan_.asked.consent);
            y_ += tall + 4;
        }
    }

    void lesson() {
        group("plan.lesson");
        asked(PlanField::groups);
        asked(PlanField::runs, {}, number_in(PlanAsked{}.runs, UnitId::none));
        asked(PlanField::spare, "%", number_in(PlanAsked{}.spare, UnitId::percent));
    }

    void tube() {
        group("plan.tube");
        choice(Field::number_at_closed_end);
        typed(Field::tube_capacity);
        typed(Field::end_space);
        asked(PlanField::least_share, "%", number_in(PlanAsked{}.least_share, UnitId::percent));
        asked(PlanField::most_share, "%", number_in(PlanAsked{}.most_share, UnitId::percent));
        asked(PlanField::mouth_space, info(UnitId::millilitre).symbol, number_in(0, UnitId::none));
        choice(Field::liquid_stands);
        const std::string& stands = sheet_.bench.at(Field::liquid_stands).text;
        if (stands != "level") typed(Field::level_difference);
        if (stands == "higher_inside") typed(Field::length_of_scale);
    }

    void room() {
        group("plan.room");
        typed(Field::temperature);
        within(PlanField::temperature_within, Field::temperature, PlanAsked{}.temperature_within);
        choice(Field::pressure_kind);
        typed(Field::barometer);
        within(PlanField::pressure_within, Field::barometer, PlanAsked{}.pressure_within);
        typed(Field::height_above_sea_level);
        if (sheet_.bench.at(Field::pressure_kind).text == "reduced_to_sea_level") typed(Field::outdoor_temperature);
        const Conventions& by = sheet_.conventions;
        if (by.vapour == Conventions::Vapour::own_value) typed(Field::own_vapour_pressure);
        if (by.accepted == Conventions::Accepted::typed) typed(Field::accepted_value);
    }

    void instruments() {
        width_ = area_.w;
        group("plan.instruments");
        const bool two = area_.w >= least_of_two;
        Flow flow(x_, y_, area_.w, row_ + 22, column_gap);
        const float wide = two ? (area_.w - column_gap) / 2 : area_.w;
        const bool ribbon = sheet_.bench.at(Field::mass_from).text == "ribbon";
        const bool level = sheet_.bench.at(Field::liquid_stands).text != "level";
        for (const Field field : {ribbon ? Field::mass_per_metre : Field::mass_of_metal, Field::scale_reading,
                                  Field::end_space, Field::temperature, Field::barometer, Field::level_difference}) {
            if (field != Field::level_difference || level) instrument(field, flow.next(wide));
        }
        y_ = flow.bottom() + 6;
    }

    void instrument(Field field, const Rect& place) {
        const std::string key = key_of(field, ControlPart::instrument);
        const std::string name = field_name(field);
        ui_.label(key + ".label", key, {place.x, place.y, place.w, 20}, name, {Face::regular, 14, Ink::soft});
        const Reading capacity = read_entry(Field::tube_capacity, sheet_.bench.at(Field::tube_capacity));
        const Instrument* usual = assumed_instrument(field, capacity.there ? capacity.base : 0.0);
        if (usual == nullptr) usual = &instruments_for(field).front();
        Ui::Choice about;
        about.options.emplace_back(std::string(), app_.say(Message{"reading_doubt.assumed"}.text(
                                                      "instrument", instrument_words(app_, *usual))));
        for (const Instrument& one : instruments_for(field)) {
            about.options.emplace_back(one.key, instrument_words(app_, one));
        }
        about.chosen = sheet_.bench.at(field).instrument;
        // A long name is set smaller rather than cut.
        for (const auto& [value, words] : about.options) {
            if (ui_.text_width(words, Type{}) + 26 > place.w) about.size = 13;
        }
        ui_.select(key, {place.x, place.y + 20, place.w, box_}, about);
    }

    /// What is said about fields that have no row.
    void leftover() {
        for (const Check& check : plan_.checks) {
            if (!drawn_.has(check.field)) remark(key_of(check.field), 0, check.weight, check.message);
            drawn_.add(check.field);
        }
    }

    void group(const char* words) {
        y_ += y_ > area_.y ? 12.0f : 0.0f;
        y_ += ui_.heading(std::string(words) + ".heading", 3, {x_, y_, width_, 0}, app_.say(words),
                          {Face::semibold, 17, Ink::text}) +
              4;
    }

    std::string field_name(Field field) const { return app_.say("field." + std::string(name_of(field))); }

    std::string number_in(double base, UnitId unit) const {
        return format_significant(difference_from_base(base, unit), 2, app_.language().decimal_sign());
    }

    /// The name of a row; returns where its control goes and moves on below the row.
    Rect label(const std::string& key, const std::string& words, float wide) {
        const float room = label_ - 8;
        const auto lines = static_cast<float>(ui_.lines(words, Type{}, room).size());
        const float tall = std::max(row_, lines * Ui::line_height(Type{}) + 6);
        ui_.label(key + ".label", key, {x_, y_, room, tall}, words);
        const Rect box{x_ + label_, y_ + (tall - box_) / 2, wide, box_};
        y_ += tall;
        return box;
    }

    void remark(const std::string& key, int number, Check::Weight weight, const Message& message) {
        y_ += draw_remark(ui_, {x_, y_, width_, 0}, key + ".remark" + std::to_string(number), app_.say(message),
                          weight != Check::Weight::note);
    }
    /// `of` gives the field of a check, `wanted` is the one to say.
    template <class Checks, class Which>
    void remarks(const std::string& key, const Checks& checks, Which wanted) {
        int number = 0;
        for (const auto& check : checks) {
            if (check.field == wanted) remark(key, number++, check.weight, check.message);
        }
    }
    template <class Checks, class Which>
    static void describe(Ui::Field& about, const std::string& key, const Checks& checks, Which wanted) {
        int number = 0;
        for (const auto& check : checks) {
            if (check.field != wanted) continue;
            if (number > 0) about.described_by += ' ';
            about.described_by += key + ".remark" + std::to_string(number++);
            about.invalid = about.invalid || check.weight != Check::Weight::note;
        }
    }

    /// A field; `blank` is what holds while nothing is typed.
    void field(const std::string& key, const std::string& words, const Rect& box, Ui::Field& about,
               const std::string& blank) {
        const bool shows_blank = about.value.empty() && !blank.empty();
        if (shows_blank) about.name = app_.say(Message{"plan.blank"}.text("name", words).text("value", blank));
        ui_.field(key, box, about);
        if (shows_blank && !ui_.focused(key)) {
            ui_.draw_text({box.right() - 8, box.y + (box.h - 16) / 2}, blank, {Face::regular, 16, Ink::soft},
                          Anchor::end);
        }
    }

    /// A reading; while it is blank, what the plan expects it to be, where it plans it at all.
    void typed(Field of, std::string blank = {}) {
        drawn_.add(of);
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
        describe(about, key, plan_.checks, of);
        field(key, field_name(of), box, about, blank);
        Ui::Choice units;
        for (const UnitId unit : units_of(info(of).measure))
            units.options.emplace_back(info(unit).key, info(unit).symbol);
        units.chosen = info(reading.unit).key;
        units.framed = false;
        units.ink = Ink::soft;
        units.name = app_.say(Message{"bench.unit_of"}.field("reading", name_of(of)));
        ui_.select(key_of(of, ControlPart::unit), {box.right() + 8, box.y, unit_width - 8, box_}, units);
        remarks(key, plan_.checks, of);
    }

    void select(const std::string& key, const std::string& words, const Ui::Choice& about) {
        ui_.select(key, label(key, words, width_ - label_), about);
    }

    void choice(Field of) {
        drawn_.add(of);
        Ui::Choice about;
        const auto& values = choices_of(of);
        about.chosen = sheet_.bench.at(of).text;
        // How the mass is found and which pressure it is, nobody has to say.
        const bool usual = of == Field::mass_from || of == Field::pressure_kind;
        if (!usual) about.options.emplace_back(std::string(), app_.say("choice.none"));
        if (usual && about.chosen.empty()) about.chosen = values.front();
        for (const std::string_view value : values) {
            about.options.emplace_back(value,
                                       app_.say("choice." + std::string(name_of(of)) + '.' + std::string(value)));
        }
        select(key_of(of), field_name(of), about);
        remarks(key_of(of), plan_.checks, of);
    }

    void form() {
        Ui::Choice about;
        for (const std::string_view name : metal_form_names) {
            about.options.emplace_back(name, app_.say("plan.form." + std::string(name)));
        }
        about.chosen = sheet_.at(PlanField::form);
        if (about.chosen.empty()) about.chosen = metal_form_names.front();
        const std::string key = key_of(PlanField::form);
        select(key, app_.say(label_of(PlanField::form)), about);
        remarks(key, plan_.asked.checks, PlanField::form);
    }

    void asked(PlanField of, std::string_view unit = {}, const std::string& blank = {}) {
        const std::string key = key_of(of);
        const std::string words = app_.say(label_of(of));
        const Rect box = label(key, words, field_width);
        Ui::Field about;
        about.value = sheet_.at(of);
        describe(about, key, plan_.asked.checks, of);
        field(key, words, box, about, blank);
        if (!unit.empty()) {
            ui_.text(key + ".unit", {box.right() + 12, box.y + (box.h - 22) / 2, unit_width - 12, 0}, unit,
                     {Face::regular, 16, Ink::soft});
        }
        remarks(key, plan_.asked.checks, of);
    }

    /// How far a guess may be off, in the unit of the guess.
    void within(PlanField of, Field guess, double usual) {
        const UnitId unit = read_entry(guess, sheet_.bench.at(guess)).unit;
        asked(of, info(unit).symbol, number_in(usual, unit));
    }

    App& app_;
    Ui& ui_;
    const PlanSheet& sheet_;
    const Plan& plan_;
    Rect area_;
    float x_;
    float y_;
    float row_;
    float box_;
    float width_ = 0;
    float label_ = 0;
    float bottom_ = 0;
    FieldSet drawn_;
};

}  // namespace

float draw_plan_fields(App& app, Ui& ui, const Rect& area) { return PlanFields(app, ui, area).draw(); }

}  // namespace overwater
