#include <algorithm>
#include <cmath>

#include "core/record/convention_choices.hpp"
#include "web/app/app.hpp"
#include "web/panels/panels.hpp"
#include "web/panels/types.hpp"
#include "web/panels/wording.hpp"

namespace overwater {

namespace {

/// Every choice of the conventions with what it makes of this record's result.
class ConventionsPage {
public:
    ConventionsPage(App& app, Ui& ui, float top)
        : app_(app), ui_(ui), margin_(page_margin(ui)),
          width_(std::min(ui.width() - 2 * margin_, 860.0f)), y_(top + 18), row_(ui.touch() ? 46.0f : 32.0f) {}

    void draw() {
        ui_.open("conventions", Role::region, {margin_, y_, width_, 0}, app_.say("page.conventions"));
        y_ += ui_.heading("conventions.heading", 2, {margin_, y_, width_, 0}, app_.say("page.conventions"),
                          {Face::semibold, 22, Ink::text});
        y_ += ui_.text("conventions.about", {margin_, y_ + 2, width_, 0}, app_.say("conventions.about"), small) + 14;
        y_ = draw_courses(app_, ui_, y_);
        for (const ConventionChoice& choice : convention_choices(app_.record().conventions)) section(choice);
        pressure_unit();
        theme();
        ui_.close();
        ui_.reach(y_ + 28);
    }

private:
    void begin(const std::string& name) {
        const std::string key = "conventions." + name;
        ui_.open(key, Role::radio_group, {margin_, y_, width_, row_}, app_.say(key));
        y_ += ui_.text(key + ".label", {margin_, y_, width_, 0}, app_.say(key), {Face::semibold, 16, Ink::text}) + 1;
        const std::string about = key + ".about";
        if (Language::knows(about)) {
            y_ += ui_.text(about, {margin_, y_, width_, 0}, app_.say(about), small) + 3;
        }
    }

    void end() {
        ui_.close();
        y_ += 8;
        ui_.rule({margin_, y_}, {margin_ + width_, y_});
        y_ += 10;
    }

    /// One option in a row of its own, its effect at the right where there is room, else below.
    void option(const std::string& group, std::string_view value, const std::string& words, bool on,
                const std::string& effect) {
        const std::string key = "conventions." + group + '.' + std::string(value);
        const float wide = std::min(std::ceil(ui_.text_width(words, Type{})) + 26, width_);
        const auto rows = static_cast<float>(ui_.lines(words, Type{}, wide - 23).size());
        const float tall = row_ + (rows - 1) * Ui::line_height(Type{});
        ui_.radio(key, {margin_, y_, wide, tall}, words, std::string(value), on);
        const float effect_width = ui_.text_width(effect, small);
        const bool beside = wide + 24 + effect_width <= width_;
        if (!effect.empty()) {
            const float top = beside ? y_ + (row_ - 19) / 2 : y_ + tall - 4;
            const float left = beside ? margin_ + std::max(wide + 24, std::min(330.0f, width_ - effect_width)) : margin_ + 26;
            const float height = ui_.text(key + ".effect", {left, top, margin_ + width_ - left, 0}, effect, small);
            if (!beside) y_ += height - 1;
        }
        y_ += tall;
    }

    /// What the record comes to under other conventions.
    std::string effect(const Conventions& other) const {
        const Assessment assessment = assess(app_.assessment().readings, other);
        const Working working(assessment, other);
        return effect_words(app_, assessment, working, other);
    }

    void section(const ConventionChoice& choice) {
        const Conventions& now = app_.record().conventions;
        const bool table = now.vapour == Conventions::Vapour::table || now.vapour == Conventions::Vapour::older_table;
        if (choice.name == "vapour_rows" && !table) return;
        // The code of a practice run says when its answers are shown.
        if (choice.name == "answers" && app_.practice() != nullptr) return;
        const std::string name(choice.name);
        const bool shows_effect = name != "answers" && name != "decimal_sign" && name != "volume_unit" && app_.reveals();
        begin(name);
        for (std::size_t i = 0; i < choice.values.size(); ++i) {
            const std::string_view value = choice.values[i];
            Conventions other = now;
            choose(other, choice.name, value);
            option(name, value, app_.say("conventions." + name + '.' + std::string(value)), i == choice.chosen,
                   shows_effect ? effect(other) : std::string());
        }
        end();
        if (name == "standard" && now.standard == StandardConditions::own) own_conditions();
    }

    void own_conditions() {
        const float tall = ui_.touch() ? 40.0f : 30.0f;
        for (const std::string_view name : {"own_celsius", "own_pressure"}) {
            const std::string key = "conventions." + std::string(name);
            const float label = std::min(260.0f, width_ - 130);
            ui_.label(key + ".label", key, {margin_, y_, label, tall}, app_.say(key));
            Ui::Field field;
            field.value = app_.typed_convention(name);
            ui_.field(key, {margin_ + label, y_, 120, tall}, field);
            y_ += tall + 6;
        }
        y_ += 8;
    }

    void pressure_unit() {
        const std::string key = "conventions.pressure_unit";
        const float tall = ui_.touch() ? 40.0f : 30.0f;
        Ui::Choice choice;
        choice.options.emplace_back("as_typed", app_.say("conventions.pressure_unit.as_typed"));
        for (const UnitId unit : units_of(Measure::pressure)) {
            choice.options.emplace_back(info(unit).key, info(unit).symbol);
        }
        const UnitId chosen = app_.record().conventions.pressure_unit;
        choice.chosen = chosen == UnitId::none ? std::string_view("as_typed") : info(chosen).key;
        float wide = 120;
        for (const auto& [value, words] : choice.options) wide = std::max(wide, ui_.text_width(words, Type{}) + 34);
        const Type type{Face::semibold, 16, Ink::text};
        const float label = std::clamp(width_ - wide - 10, 120.0f, 260.0f);
        const auto rows = static_cast<float>(ui_.lines(app_.say(key), type, label).size());
        const float row = std::max(tall, rows * Ui::line_height(type) + 4);
        ui_.label(key + ".label", key, {margin_, y_, label, row}, app_.say(key), type);
        ui_.select(key, {margin_ + label, y_ + (row - tall) / 2, std::min(wide, width_ - label), tall}, choice);
        y_ += row + 10;
        ui_.rule({margin_, y_}, {margin_ + width_, y_});
        y_ += 10;
    }

    void theme() {
        begin("theme");
        for (const std::string_view value : {"system", "light", "dark", "contrast"}) {
            option("theme", value, app_.say("conventions.theme." + std::string(value)), value == app_.theme_choice(), {});
        }
        end();
    }

    App& app_;
    Ui& ui_;
    float margin_;
    float width_;
    float y_;
    float row_;
};

}  // namespace

void draw_conventions_page(App& app, Ui& ui, float top) { ConventionsPage(app, ui, top).draw(); }

}  // namespace overwater
