// The working enlarged for a class: one step at a time, each number hidden until it is asked for.

#include <algorithm>
#include <cmath>

#include "web/app/app.hpp"
#include "web/draw/typeset.hpp"
#include "web/panels/panels.hpp"
#include "web/panels/wording.hpp"

namespace overwater {

namespace {

class Projector {
public:
    Projector(App& app, Ui& ui)
        : app_(app), ui_(ui), scale_(std::clamp(std::min(ui.width() / 1280, ui.height() / 720), 0.76f, 3.0f)),
          margin_(std::round(48 * scale_)), steps_(projector_steps(app)) {}

    void draw() {
        head();
        const std::size_t step = std::min(app_.projector_step(), steps_.size() - 1);
        for (std::size_t i = 0; i <= step; ++i) row(i, i == step);
        foot(step);
    }

private:
    float px(float size) const { return std::round(size * scale_); }
    Type type(float size, Ink ink = Ink::text, Face face = Face::regular) const { return {face, px(size), ink}; }
    float inner() const { return ui_.width() - 2 * margin_; }

    void head() {
        y_ = px(26);
        const Type small = type(23, Ink::soft);
        ui_.text("projector.record", {margin_, y_, inner() * 0.5f, 0}, record_words(), small);
        ui_.text("projector.conditions", {margin_ + inner() * 0.5f, y_, inner() * 0.5f, 0}, conditions_words(app_), small, Anchor::end);
        y_ += px(46);
        y_ += ui_.heading("projector.heading", 1, {margin_, y_, inner(), 0}, app_.say("working.heading"),
                          type(40, Ink::text, Face::semibold)) + px(18);
    }

    std::string record_words() const {
        if (app_.record().runs.size() < 2) return app_.record().name;
        return app_.say(Message{"projector.run"}
                            .text("record", app_.record().name)
                            .count("run", static_cast<long long>(app_.run()) + 1)
                            .count("runs", static_cast<long long>(app_.record().runs.size())));
    }

    void row(std::size_t index, bool current) {
        const Output output = steps_[index];
        const std::string key = "projector.row." + std::string(name_of(output));
        const std::string name = step_name(app_, output);
        const WorkingStep* step = app_.working().step(output);
        const Type words = type(29);
        const float left = margin_ + px(60);
        const float name_width = ui_.text_width(name, words);
        Formula whole;
        Picture picture;
        float baseline = 0;
        if (step != nullptr) {
            whole = Formula::of(Formula::Kind::row,
                                {step->symbol, Formula::leaf(Formula::Kind::operation, "="), step->numbers});
            picture = typeset(whole, px(28), Ink::text, ui_.measure(), &baseline);
        }
        const float result_room = px(240);
        const bool below = left + name_width + px(20) + picture.width + result_room > margin_ + inner();
        const float tall = below ? px(56) + picture.height + px(10) : std::max(px(60), picture.height + px(22));
        if (current) ui_.fill({margin_ - px(20), y_, inner() + px(40), tall}, Ink::copper_soft, px(12));
        const float middle = y_ + (below ? px(28) : tall / 2);
        ui_.draw_text({margin_, middle - px(14.5f)}, std::to_string(index + 1), words);
        ui_.text(key + ".name", {left, middle - Ui::line_height(words) / 2, name_width + 2, 0}, name, words);
        if (step == nullptr) {
            ui_.text(key + ".state", {left + name_width + px(20), middle - Ui::line_height(words) / 2, inner() - name_width - px(90), 0},
                     app_.shown_briefly(output), type(25, Ink::soft));
        } else {
            // On one baseline with the name.
            const float top = below ? y_ + px(52) : std::max(y_, middle + px(9) - baseline);
            const float x = below ? left : left + name_width + px(20);
            ui_.formula(key + ".formula", {x, top + baseline}, whole, spoken_formula(app_, whole), px(28), Ink::text);
            value(key, output, current, middle);
        }
        y_ += tall;
        if (!current) ui_.rule({margin_, y_}, {margin_ + inner(), y_});
    }

    void value(const std::string& key, Output output, bool current, float middle) {
        const float right = margin_ + inner();
        if (current && !app_.projector_shows()) {
            const std::string words = app_.say("projector.show");
            const float wide = ui_.text_width(words, type(28)) + px(46);
            const Rect rect{right - wide, middle - px(27), wide, px(54)};
            ui_.frame(rect, Ink::soft, 1.5f, px(7));
            if (ui_.button("projector.show", rect, words, Ui::ButtonLook::plain, false, {}, px(28))) {
                app_.projector_show();
            }
            return;
        }
        const Type bold = type(29, Ink::text, Face::semibold);
        const std::string words = app_.shown(output);
        const float wide = ui_.text_width(words, bold) + 4;
        ui_.output(key + ".value", {right - wide, middle - px(22), wide, px(44)}, words, step_name(app_, output), bold, Anchor::end);
    }

    void foot(std::size_t step) {
        const float tall = std::max(px(44), 44.0f);
        const float top = std::max(y_ + px(16), ui_.height() - tall - px(12));
        Flow flow(margin_ - px(8), top, inner(), tall, px(10));
        const auto press = [&](std::string_view key, bool possible) {
            const std::string words = app_.say(key);
            const bool pressed = ui_.button(key, flow.next(ui_.text_width(words, type(22)) + px(20)), words,
                                            possible ? Ui::ButtonLook::plain : Ui::ButtonLook::off, false, {}, px(22));
            if (!possible) ui_.disable_last();
            return pressed && possible;
        };
        if (press("projector.back", step > 0 || app_.projector_shows())) app_.projector_go(-1);
        if (press("projector.next", step + 1 < steps_.size() || !app_.projector_shows())) app_.projector_go(1);
        if (press("projector.leave", true)) app_.leave_projector();
        const std::string count = app_.say(Message{"projector.count"}
                                               .text("step", std::to_string(step + 1))
                                               .text("steps", std::to_string(steps_.size())));
        ui_.text("projector.count", {margin_ + inner() * 0.6f, flow.bottom() - tall + (tall - Ui::line_height(type(22))) / 2, inner() * 0.4f, 0}, count,
                 type(22, Ink::soft), Anchor::end);
        ui_.reach(flow.bottom() + px(8));
    }

    App& app_;
    Ui& ui_;
    float scale_;
    float margin_;
    std::vector<Output> steps_;
    float y_ = 0;
};

}  // namespace

std::vector<Output> main_steps(const App& app) {
    const Output result = headline_output(app.record().conventions);
    std::vector<Output> steps{Output::gas_volume};
    // Without a conversion the pressure is no step of the result; a mass that was not weighed is one.
    if (result == Output::molar_volume_standard) steps.push_back(Output::dry_gas_pressure);
    if (app.assessment().measured.setup.mass_from != MassFrom::weighed) steps.push_back(Output::mass);
    steps.insert(steps.end(), {Output::amount_of_metal, Output::amount_of_gas, result});
    return steps;
}

std::vector<Output> projector_steps(const App& app) {
    std::vector<Output> steps = main_steps(app);
    steps.push_back(Output::percent_error);
    return steps;
}

void draw_projector_page(App& app, Ui& ui) { Projector(app, ui).draw(); }

}  // namespace overwater
