// The working enlarged for a class: one step at a time, each number hidden until it is asked for.

#include <algorithm>
#include <cmath>

#include "web/app/app.hpp"
#include "web/app/control_key.hpp"
#include "web/draw/typeset.hpp"
#include "web/panels/panels.hpp"
#include "web/panels/remark.hpp"
#include "web/panels/wording.hpp"

namespace overwater {

namespace {

class Projector {
public:
    Projector(App& app, Ui& ui)
        : app_(app),
          ui_(ui),
          scale_(std::clamp(std::min(ui.width() / 1280, ui.height() / 720), 0.76f, 3.0f)),
          margin_(std::round(48 * scale_)),
          steps_(projector_steps(app)) {}

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
        ui_.text("projector.conditions", {margin_ + inner() * 0.5f, y_, inner() * 0.5f, 0}, conditions_words(app_),
                 small, Anchor::end);
        y_ += px(46);
        y_ += ui_.heading("projector.heading", 1, {margin_, y_, inner(), 0}, app_.say("working.heading"),
                          type(40, Ink::text, Face::semibold)) +
              px(18);
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
            Formula numbers = step->numbers;
            if (const WorkingStep* before = step_before(output)) mark_changes(numbers, before->numbers);
            whole =
                Formula::of(Formula::Kind::row, {step->symbol, Formula::leaf(Formula::Kind::operation, "="), numbers});
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
            ui_.text(
                key + ".state",
                {left + name_width + px(20), middle - Ui::line_height(words) / 2, inner() - name_width - px(90), 0},
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
        const std::string words = app_.shown(output);
        const std::string was = words_before(output);
        const bool changed = !was.empty() && was != words;
        const Type bold = type(29, changed ? Ink::copper : Ink::text, Face::semibold);
        const float wide = ui_.text_width(words, bold) + 4;
        const float up = changed ? px(13) : 0;
        ui_.output(key + ".value", {right - wide, middle - px(22) - up, wide, px(44)}, words, step_name(app_, output),
                   bold, Anchor::end);
        if (!changed) return;
        const Type small = type(22, Ink::soft);
        const std::string before = app_.say(Message{"projector.was"}.text("value", was));
        const float before_width = ui_.text_width(before, small) + 4;
        ui_.text(key + ".was", {right - before_width, middle + px(6), before_width, 0}, before, small, Anchor::end);
    }

    /// The step as it was before a reading was changed here; nothing where none was.
    const WorkingStep* step_before(Output output) const {
        return app_.projector_before() == nullptr ? nullptr : app_.projector_before()->step(output);
    }
    std::string words_before(Output output) const {
        const WorkingStep* step = step_before(output);
        if (step == nullptr) return {};
        return app_.language().with_unit(format_fixed(in_unit(output, step->value, step->unit), step->shown_decimals,
                                                      app_.language().decimal_sign()),
                                         step->unit);
    }

    /// One reading at a time, chosen from those that were put down; the one at hand stays when it is cleared.
    float changes(float top) {
        const float tall = std::max(px(48), 44.0f);
        const Type words = type(22);
        // In the same region as on the bench: whoever goes there from a reading takes its field along, and a field that has
        // the focus must not change its place in the document.
        ui_.open("bench.readings", Role::region, {margin_, top, inner(), 0}, app_.say("bench.readings"));
        Flow flow(margin_, top, inner(), tall + px(8), px(12));
        const std::string label = app_.say("projector.reading");
        const float label_width = ui_.text_width(label, words) + 4;
        const Rect label_rect = flow.next(label_width);
        ui_.label("projector.field.label", "projector.field", {label_rect.x, label_rect.y, label_width, tall}, label,
                  words);
        const Field field = app_.projector_field();
        Ui::Choice choice;
        float widest = 0;
        for (std::size_t i = 0; i < static_cast<std::size_t>(first_choice); ++i) {
            const auto one = static_cast<Field>(i);
            if (app_.entry(one).text.empty() && one != field) continue;
            const std::string name = app_.say("field." + std::string(name_of(one)));
            widest = std::max(widest, ui_.text_width(name, type(24)));
            choice.options.emplace_back(std::string(name_of(one)), name);
        }
        choice.chosen = name_of(field);
        choice.size = px(24);
        const Rect list = flow.next(std::min(widest + px(60), inner() * 0.6f));
        ui_.select("projector.field", {list.x, list.y, list.w, tall}, choice);
        Ui::Field about;
        about.value = app_.entry(field).text;
        about.name = app_.say("field." + std::string(name_of(field)));
        about.size = px(24);
        const Rect box = flow.next(px(170));
        about.invalid = !wrong_.empty();
        for (const auto& said : wrong_) {
            if (!about.described_by.empty()) about.described_by += ' ';
            about.described_by += said.first;
        }
        ui_.field(key_of_control(field), {box.x, box.y, box.w, tall}, about);
        const Reading& reading = app_.assessment().readings[field];
        const UnitId unit = app_.unit_of(app_.entry(field), reading.unit, reading.number.unit != UnitId::none);
        const std::string symbol(info(unit).symbol);
        const float symbol_width = ui_.text_width(symbol, words) + 4;
        const Rect sign = flow.next(symbol_width);
        if (!symbol.empty())
            ui_.text("projector.unit", {sign.x, sign.y + (tall - Ui::line_height(words)) / 2, symbol_width, 0}, symbol,
                     words);
        if (app_.projector_before() != nullptr) {
            const std::string forget = app_.say("projector.forget");
            const Rect rect = flow.next(ui_.text_width(forget, words) + px(24));
            if (ui_.button("projector.forget", {rect.x, rect.y, rect.w, tall}, forget, Ui::ButtonLook::framed, false,
                           {}, px(22))) {
                app_.projector_forget_marks();
            }
        }
        float bottom = flow.bottom();
        for (const auto& [key, said] : wrong_)
            bottom += draw_remark(ui_, {margin_, bottom, inner(), 0}, key, said, true, px(22));
        ui_.close();
        return bottom - top;
    }

    /// What is wrong with the reading that is changed here; notes are for the bench. Returns the height it will take.
    float find_wrong() {
        int number = 0;
        float tall = 0;
        for (const Check& check : app_.assessment().checks) {
            if (check.field != app_.projector_field()) continue;
            std::string key = key_of_remark(check.field, number++);
            if (check.weight == Check::Weight::note) continue;
            const std::string words = app_.say(check.message);
            const auto lines = static_cast<float>(ui_.lines(words, type(22), inner() - 16).size());
            tall += Ui::line_height(type(22)) * lines + 10;
            wrong_.emplace_back(std::move(key), words);
        }
        return tall;
    }

    void foot(std::size_t step) {
        const float tall = std::max(px(44), 44.0f);
        if (app_.projector_changes()) {
            y_ += px(14);
            const float said = find_wrong();
            const float beginning = std::max(y_, ui_.height() - 2 * tall - px(34) - said);
            y_ = beginning + changes(beginning);
        }
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
        if (press(app_.projector_changes() ? "projector.done" : "projector.changes", true))
            app_.projector_toggle_changes();
        if (press("projector.leave", true)) app_.leave_projector();
        const std::string count = app_.say(Message{"projector.count"}
                                               .text("step", std::to_string(step + 1))
                                               .text("steps", std::to_string(steps_.size())));
        ui_.text("projector.count",
                 {margin_ + inner() * 0.6f, flow.bottom() - tall + (tall - Ui::line_height(type(22))) / 2,
                  inner() * 0.4f, 0},
                 count, type(22, Ink::soft), Anchor::end);
        ui_.reach(flow.bottom() + px(8));
    }

    App& app_;
    Ui& ui_;
    float scale_;
    float margin_;
    std::vector<Output> steps_;
    std::vector<std::pair<std::string, std::string>> wrong_;  ///< key and words of what is said below the reading
    float y_ = 0;
};

}  // namespace

std::vector<Output> main_steps(const App& app) {
    const Output result = app.sought();
    std::vector<Output> steps{Output::gas_volume};
    // Without a conversion the pressure is no step of the result; a mass that was not weighed is one.
    if (result != Output::molar_volume_bench) steps.push_back(Output::dry_gas_pressure);
    if (app.assessment().measured.setup.mass_from != MassFrom::weighed) steps.push_back(Output::mass);
    // By the volume alone where something is found out about what was weighed, else from what was weighed.
    const bool by_volume = is_by_volume(result);
    steps.insert(steps.end(), {by_volume ? Output::volume_at_standard : Output::amount_of_metal,
                               by_volume ? Output::amount_by_volume : Output::amount_of_gas, result});
    return steps;
}

std::vector<Output> projector_steps(const App& app) {
    std::vector<Output> steps = main_steps(app);
    if (app.assessment().state(Output::percent_error).kind != OutputState::Kind::not_asked)
        steps.push_back(Output::percent_error);
    return steps;
}

void draw_projector_page(App& app, Ui& ui) { Projector(app, ui).draw(); }

}  // namespace overwater
