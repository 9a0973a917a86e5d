#include <algorithm>
#include <cmath>

#include "web/app/app.hpp"
#include "web/panels/panels.hpp"

namespace overwater {

namespace {

class ConventionsPage {
public:
    ConventionsPage(App& app, Ui& ui, float top)
        : app_(app), ui_(ui), margin_(ui.width() < 600 ? 14.0f : 24.0f),
          width_(std::min(ui.width() - 2 * margin_, 760.0f)), y_(top + 18), row_(ui.touch() ? 46.0f : 34.0f) {}

    void draw() {
        ui_.open("conventions", Role::region, {margin_, y_, width_, 0}, app_.say("page.conventions"));
        y_ += ui_.heading("conventions.heading", 2, {margin_, y_, width_, 0}, app_.say("page.conventions"),
                          {Face::semibold, 22, Ink::text});
        y_ += ui_.text("conventions.about", {margin_, y_ + 2, width_, 0}, app_.say("conventions.about"),
                       {Face::regular, 14, Ink::soft}) + 16;
        standard();
        simple("decimal_sign", {"point", "comma"},
               app_.record().conventions.decimal_sign == DecimalSign::comma ? "comma" : "point");
        simple("theme", {"system", "light", "dark", "contrast"}, app_.theme_choice());
        ui_.close();
        ui_.reach(y_ + 28);
    }

private:
    void begin(const std::string& name) {
        const std::string key = "conventions." + name;
        ui_.open(key, Role::radio_group, {margin_, y_, width_, row_}, app_.say(key));
        y_ += ui_.text(key + ".label", {margin_, y_, width_, 0}, app_.say(key), {Face::semibold, 16, Ink::text}) + 2;
        const std::string about = key + ".about";
        if (Language::knows(about)) {
            y_ += ui_.text(about, {margin_, y_, width_, 0}, app_.say(about), {Face::regular, 14, Ink::soft}) + 4;
        }
    }

    void end(float bottom) {
        ui_.close();
        y_ = bottom + 16;
        ui_.rule({margin_, y_ - 6}, {margin_ + width_, y_ - 6});
        y_ += 8;
    }

    void option(Flow& flow, const std::string& group, std::string_view value, const std::string& words, bool on) {
        const float wide = std::min(std::ceil(ui_.text_width(words, Type{})) + 26, width_);
        ui_.radio("conventions." + group + '.' + std::string(value), flow.next(wide), words, std::string(value), on);
    }

    /// Each choice shows what it makes of this record's result.
    void standard() {
        begin("standard");
        float bottom = y_;
        for (std::size_t i = 0; i < static_cast<std::size_t>(StandardConditions::own); ++i) {
            const std::string name(standard_conditions_names[i]);
            const bool on = static_cast<std::size_t>(app_.record().conventions.standard) == i;
            Flow flow(margin_, bottom, width_, row_, 12);
            option(flow, "standard", name, app_.say("conditions." + name), on);
            Conventions other = app_.record().conventions;
            other.standard = static_cast<StandardConditions>(i);
            const auto result = assess(app_.assessment().readings, other).value(Output::molar_volume_standard);
            if (result) {
                const std::string number = format_fixed(from_base(*result, UnitId::litre_per_mole), 2, app_.language().decimal_sign());
                ui_.text("conventions.standard." + name + ".effect", {margin_ + 190, bottom + (row_ - 19) / 2, width_ - 190, 0},
                         app_.say(Message{"conventions.effect"}.text(
                             "value", app_.language().with_unit(number, UnitId::litre_per_mole))),
                         {Face::regular, 14, Ink::soft});
            }
            bottom = flow.bottom();
        }
        end(bottom);
    }

    void simple(const std::string& name, std::initializer_list<std::string_view> values, std::string_view chosen) {
        begin(name);
        Flow flow(margin_, y_, width_, row_, 18);
        for (const std::string_view value : values) {
            option(flow, name, value, app_.say("conventions." + name + '.' + std::string(value)), value == chosen);
        }
        end(flow.bottom());
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
