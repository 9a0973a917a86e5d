#include <algorithm>
#include <cmath>

#include "web/app/app.hpp"
#include "web/app/control_key.hpp"
#include "web/panels/panels.hpp"
#include "web/panels/wording.hpp"

namespace overwater {

namespace {

constexpr Type small{Face::regular, 14, Ink::soft};

class ReadingsColumn {
public:
    ReadingsColumn(App& app, Ui& ui, Rect area, bool hints)
        : app_(app), ui_(ui), area_(area), hints_(hints), y_(area.y), row_(ui.touch() ? 46.0f : 32.0f),
          field_height_(ui.touch() ? 38.0f : 28.0f) {
        for (const Field field : {Field::mass_of_metal, Field::acid_concentration, Field::scale_reading,
                                  Field::level_difference, Field::barometer, Field::end_space}) {
            label_width_ = std::max(label_width_, ui.text_width(name(field), Type{}) + 12);
        }
        unit_width_ = area.w > 340 ? 76.0f : 66.0f;
        field_width_ = std::min(120.0f, area.w - unit_width_ - 10 - 110);
        label_width_ = std::min(label_width_, area.w - field_width_ - unit_width_ - 10);
    }

    float draw() {
        ui_.open("bench.readings", Role::region, {area_.x, area_.y, area_.w, 0}, app_.say("bench.readings"));
        runs();
        metal();
        acid();
        tube();
        after();
        room();
        ui_.close();
        return y_ - area_.y;
    }

private:
    std::string name(Field field) const { return app_.say("field." + std::string(name_of(field))); }

    /// Which run is at hand, where there are several, and whether room and tube are its own.
    void runs() {
        const std::size_t count = app_.record().runs.size();
        if (count < 2) return;
        const float tall = ui_.touch() ? 44.0f : 30.0f;
        y_ += 4;
        Flow flow(area_.x, y_, area_.w, tall, 4);
        ui_.open("runs", Role::group, {area_.x, y_, area_.w, tall}, app_.say("runs.name"));
        for (std::size_t run = 0; run < count; ++run) {
            const std::string words =
                app_.say(Message{"runs.run"}.count("number", static_cast<long long>(run) + 1));
            const float wide = std::ceil(ui_.text_width(words, {Face::semibold, 16, Ink::text})) + 18;
            if (ui_.button("runs." + std::to_string(run), flow.next(wide), words, Ui::ButtonLook::page,
                           run == app_.run())) {
                app_.go_to_run(run);
            }
        }
        const std::string remove = app_.say("runs.remove");
        if (ui_.button("runs.remove", flow.next(std::ceil(ui_.text_width(remove, Type{})) + 10), remove)) {
            app_.remove_run();
        }
        ui_.close();
        y_ = flow.bottom() + 2;
        const std::string own = app_.say("runs.own_room");
        if (ui_.check_box("runs.own_room", {area_.x, y_, area_.w, tall}, own, app_.own_room())) {
            app_.set_own_room(!app_.own_room());
        }
        y_ += tall + 2;
    }

    void metal() {
        const bool open = group("metal", {}, "choice.mass_from." + mass_from());
        if (open) radios(Field::mass_from);
        switch (app_.assessment().readings.mass_from) {
            case MassFrom::by_difference:
                typed(Field::mass_before);
                typed(Field::mass_after);
                break;
            case MassFrom::ribbon:
                typed(Field::ribbon_length);
                typed(Field::mass_per_metre);
                break;
            case MassFrom::weighed: typed(Field::mass_of_metal); break;
        }
        listed(Field::metal);
        if (open || there(Field::purity)) typed(Field::purity);
    }

    void acid() {
        group("acid", acid_remark(), {});
        radios(Field::acid);
        typed(Field::acid_volume);
        typed(Field::acid_concentration);
    }

    void tube() {
        const bool open = group("tube", {}, "bench.more_tube");
        radios(Field::number_at_closed_end);
        typed(Field::tube_capacity);
        if (app_.assessment().readings.closed_end == ClosedEnd::zero) {
            counted_end_space();
        } else {
            typed(Field::end_space);
        }
        for (const Field field : {Field::length_of_scale, Field::tube_bore}) {
            if (open || there(field)) typed(field);
        }
    }

    void after() {
        const bool start = there(Field::start_reading) || there(Field::starting_bubble);
        const bool open = group("after", {}, "bench.gas_at_start") || start;
        if (open) {
            typed(Field::start_reading);
            typed(Field::starting_bubble);
            if (app_.assessment().readings.liquid_stands != LiquidStands::level) {
                typed(Field::start_level_difference);
            }
        }
        typed(Field::scale_reading);
        radios(Field::liquid_stands);
        if (app_.assessment().readings.liquid_stands != LiquidStands::level) typed(Field::level_difference);
    }

    void room() {
        const PressureKind kind = app_.assessment().readings.pressure_kind;
        const std::string& chosen = app_.entry(Field::pressure_kind).text;
        const bool open =
            group("room", {}, "choice.pressure_kind." + (chosen.empty() ? std::string("at_the_bench") : chosen));
        typed(Field::temperature);
        if (open) radios(Field::pressure_kind);
        typed(Field::barometer);
        if (open || kind != PressureKind::at_the_bench || there(Field::height_above_sea_level)) {
            typed(Field::height_above_sea_level);
        }
        if (kind == PressureKind::reduced_to_sea_level) typed(Field::outdoor_temperature);
        const Conventions& conventions = app_.record().conventions;
        if (conventions.vapour == Conventions::Vapour::own_value) typed(Field::own_vapour_pressure);
        if (app_.assessment().measured.setup.accepted_typed) typed(Field::accepted_value);
        if (app_.record().runs.size() < most_runs) {
            const std::string words = app_.say("runs.add");
            const float wide = std::ceil(ui_.text_width(words, {Face::regular, 14, Ink::copper})) + 10;
            const float tall = ui_.touch() ? 44.0f : 24.0f;
            const float left = area_.x + area_.w - wide;
            // Behind the last unit where it has room there, else in a row of its own.
            const bool beside = !ui_.touch() && last_unit_.right() + 4 <= left;
            const float top = beside ? last_unit_.y + (last_unit_.h - tall) / 2 : y_;
            if (ui_.button("runs.add", {left, top, wide, tall}, words, Ui::ButtonLook::link, false, {}, 14)) {
                app_.add_run();
            }
            if (!beside) y_ += tall;
        }
    }

    std::string mass_from() const {
        const std::string& chosen = app_.entry(Field::mass_from).text;
        return chosen.empty() ? "weighed" : chosen;
    }

    /// Whether anything was put down for a reading that is not asked of everybody.
    bool there(Field field) const { return !app_.entry(field).text.empty(); }

    /// A heading; at its right a remark, or what of the group is chosen, to be pressed for more. Returns whether the
    /// further readings of the group are shown.
    bool group(const std::string& name, const std::string& remark, const std::string& more) {
        y_ += ui_.touch() ? 12.0f : 3.0f;
        const std::string key = "bench.group." + name;
        const Type type{Face::semibold, 13, Ink::soft};
        const std::string words = app_.say(key);
        const float left = ui_.text_width(words, type) + 20;
        ui_.heading(key, 2, {area_.x, y_ + 3, left, 18}, words, type);
        if (!remark.empty()) {
            ui_.text(key + ".remark", {area_.x + left, y_ + 2, area_.w - left, 18}, remark, small, Anchor::end);
        }
        bool open = app_.details_open(name);
        if (!more.empty()) {
            const std::string what = app_.say(more);
            const Type press_type{Face::regular, 14, Ink::copper};
            // On a narrow page the underline alone says that it can be pressed.
            const bool says_change = more.starts_with("choice.") && area_.w > 380;
            const std::string press = says_change ? app_.say(Message{"bench.change"}.text("what", what)) : what;
            const float wide = std::ceil(ui_.text_width(press, press_type)) + 4;
            const float tall = ui_.touch() ? 36.0f : 24.0f;
            const std::string spoken = app_.say(Message{open ? "bench.less" : "bench.more"}.text("what", press));
            if (ui_.button("bench.details." + name, {area_.x + area_.w - wide, y_ - (tall - 24) / 2 - 1, wide, tall}, press,
                           Ui::ButtonLook::link, false, spoken, 14)) {
                app_.toggle_details(name);
                open = !open;
            }
        }
        y_ += ui_.touch() && !more.empty() ? 31.0f : 23.0f;
        return open;
    }

    std::string acid_remark() const {
        const auto excess = app_.assessment().value(Output::acid_excess);
        if (!excess) return {};
        return app_.say(Message{"bench.acid_excess"}.figures("times", *excess, UnitId::none, 2));
    }

    /// The label of a row; returns the row's height, which grows with a label of several lines.
    float label(Field field) {
        const std::string key = key_of_control(field);
        const auto rows = static_cast<float>(ui_.lines(name(field), Type{}, label_width_).size());
        const float tall = std::max(row_, rows * Ui::line_height(Type{}) + 6);
        ui_.label(key + ".label", key, {area_.x, y_, label_width_, tall}, name(field));
        return tall;
    }

    void typed(Field field) {
        const std::string key = key_of_control(field);
        const Entry& entry = app_.entry(field);
        const Reading& reading = app_.assessment().readings[field];
        const float tall = label(field);
        const Rect box{area_.x + label_width_, y_ + (tall - field_height_) / 2, field_width_, field_height_};
        Ui::Field about;
        about.value = entry.text;
        about.invalid = refused(field);
        about.described_by = remark_keys(field);
        ui_.field(key, box, about);
        const Measure measure = info(field).measure;
        Ui::Choice units;
        for (const UnitId unit : units_of(measure)) {
            units.options.emplace_back(info(unit).key, info(unit).symbol);
        }
        if (field == Field::end_space) units.options.emplace_back(info(UnitId::gram).key, info(UnitId::gram).symbol);
        units.chosen = info(reading.unit).key;
        units.framed = false;
        units.ink = Ink::soft;
        units.name = app_.say(Message{"bench.unit_of"}.field("reading", name_of(field)));
        // The mark stands right behind the unit; the unit itself stands still.
        const float wide = std::min(unit_width_, ui_.text_width(info(reading.unit).symbol, Type{}) + 24);
        last_unit_ = {box.right() + 8, box.y, std::max(wide, ui_.touch() ? 44.0f : 36.0f), field_height_};
        ui_.select(key + ".unit", last_unit_, units);
        y_ += tall;
        remarks(field);
    }

    void listed(Field field) {
        const std::string key = key_of_control(field);
        const float tall = label(field);
        const float inset = (tall - field_height_) / 2;
        Ui::Choice choice;
        choice.options.emplace_back(std::string(), app_.say("choice.none"));
        for (const std::string_view value : choices_of(field)) choice.options.emplace_back(value, words(field, value));
        choice.chosen = app_.entry(field).text;
        ui_.select(key, {area_.x + label_width_, y_ + inset, field_width_ + unit_width_ + 8, field_height_}, choice);
        y_ += tall;
        remarks(field);
    }

    std::string words(Field field, std::string_view value) const {
        return choice_words(app_, field, value);
    }

    /// Name and radio buttons in one row where they fit, else the buttons in rows of their own.
    void radios(Field field) {
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
        for (const std::string_view value : choices_of(field)) {
            const Rect rect = flow.next(width_of_radio(field, value));
            ui_.radio(key + '.' + std::string(value), rect, words(field, value), std::string(value),
                      app_.entry(field).text == value || (app_.entry(field).text.empty() && value == usual(field)));
        }
        ui_.close();
        y_ = flow.bottom();
        remarks(field);
    }

    /// What is taken where nothing was chosen; empty where it has to be asked.
    static std::string_view usual(Field field) {
        if (field == Field::mass_from) return choices_of(field).front();
        return field == Field::pressure_kind ? choices_of(field).front() : std::string_view();
    }

    float width_of_radio(Field field, std::string_view value) const {
        return std::ceil(ui_.text_width(words(field, value), Type{})) + 24;
    }

    /// A scale with 0 at the closed end has counted the end already: there is nothing to type.
    void counted_end_space() {
        ui_.text("bench.end_space.counted", {area_.x, y_ + (row_ - 19) / 2, area_.w, row_},
                 app_.say("bench.end_space_counted"), small);
        y_ += row_;
    }

    /// Where every hint stands below its row, only those are shown that a first run cannot do without.
    static bool says_more(Field field) {
        return field == Field::mass_of_metal || field == Field::end_space || field == Field::number_at_closed_end ||
               field == Field::scale_reading || field == Field::liquid_stands || field == Field::level_difference ||
               field == Field::temperature || field == Field::barometer;
    }

    bool refused(Field field) const {
        for (const Check& check : app_.assessment().checks) {
            if (check.field == field && check.weight != Check::Weight::note) return true;
        }
        return false;
    }

    std::string remark_keys(Field field) const {
        std::string keys;
        const auto add = [&keys](std::string key) {
            if (!keys.empty()) keys += ' ';
            keys += key;
        };
        if (hints_ && says_more(field)) add(key_of_control(field) + ".hint");
        if (!hints_ && app_.attended() == field) add("bench.hint");
        int number = 0;
        for (const Check& check : app_.assessment().checks) {
            if (check.field == field) add(remark_key(field, number++));
        }
        return keys;
    }

    static std::string remark_key(Field field, int number) {
        return key_of_control(field) + ".remark" + std::to_string(number);
    }

    void remarks(Field field) {
        int number = 0;
        for (const Check& check : app_.assessment().checks) {
            if (check.field != field) continue;
            const std::string words = app_.say(check.message);
            const std::string key = remark_key(field, number++);
            const bool loud = check.weight != Check::Weight::note;
            const Type type{Face::regular, 14, loud ? Ink::warning : Ink::soft};
            if (loud) {
                const float tall =
                    Ui::line_height(type) * static_cast<float>(ui_.lines(words, type, area_.w - 16).size());
                ui_.fill({area_.x, y_, area_.w, tall + 6}, Ink::warning_paper, 3);
                ui_.text(key, {area_.x + 8, y_ + 3, area_.w - 16, 0}, words, type);
                y_ += tall + 10;
            } else {
                y_ += ui_.text(key, {area_.x, y_, area_.w, 0}, words, type) + 4;
            }
        }
        const std::string hint = "hint." + std::string(name_of(field));
        if (hints_ && says_more(field) && Language::knows(hint)) {
            y_ += ui_.text(key_of_control(field) + ".hint", {area_.x, y_ - 2, area_.w, 0}, app_.say(hint), small) + 6;
        }
    }

    App& app_;
    Ui& ui_;
    Rect area_;
    bool hints_;
    float y_;
    float row_;
    float field_height_;
    float label_width_ = 100;
    float field_width_ = 104;
    float unit_width_ = 76;
    Rect last_unit_;  ///< of the last typed reading
};

}  // namespace

float draw_readings(App& app, Ui& ui, Rect area, bool with_hints) {
    return ReadingsColumn(app, ui, area, with_hints).draw();
}

}  // namespace overwater
