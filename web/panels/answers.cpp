// The student's page of answers: each step typed, checked and helped.

#include <algorithm>
#include <cmath>

#include "web/app/app.hpp"
#include "web/panels/answer_words.hpp"
#include "web/panels/page_column.hpp"
#include "web/panels/types.hpp"
#include "web/panels/wording.hpp"

namespace overwater {

namespace {

constexpr float formula_size = 16;
constexpr float smallest_formula = 10;

class AnswersPage : private PageColumn {
public:
    AnswersPage(App& app, Ui& ui, float top)
        : PageColumn(app, ui, top, 760, 760) {
        for (const char* key : {"sheet.check", "sheet.more", "sheet.show_step"}) {
            press_ = std::max(press_, std::ceil(ui.text_width(app.say(key), Type{})) + 24);
        }
    }

    void draw() {
        begin("sheet", app_.say("sheet.heading"));
        const bool hidden = app_.answers_pace() == Conventions::Answers::hidden;
        paragraph("sheet.about", app_.say(hidden ? "sheet.about_hidden" : "sheet.about"), Type{}, 12);
        run_switch("sheet.runs", 8);
        bool of_run = true;
        for (const SheetStep& step : app_.steps_at_hand()) {
            if (of_run && step.run < 0 && app_.record().runs.size() > 1) {
                y_ += 12;
                y_ += ui_.heading("sheet.whole", 3, {margin_, y_, width_, 0}, app_.say("sheet.whole"),
                                  {Face::semibold, 17, Ink::text}) + 4;
                of_run = false;
            }
            draw_step(step);
        }
        y_ += 10;
        if (ui_.button("sheet.check_all", {margin_, y_, press_width("sheet.check_all"), row_}, app_.say("sheet.check_all"),
                       Ui::ButtonLook::framed)) {
            app_.check_all();
        }
        y_ += row_;
        end();
    }

private:
    void draw_step(const SheetStep& step) {
        const std::string key = "sheet." + std::string(step_name(step));
        const CheckedStep* checked = app_.checked(step);
        const Answer* answer = app_.answer_to(step);
        const std::string name = sheet_step_name(app_.language(), step);
        constexpr float field = 120;
        constexpr float unit = 92;
        ui_.rule({margin_, y_}, {margin_ + width_, y_});
        y_ += 6;
        const float label = width_ - field - unit - press_ - 16;
        const bool beside = label >= 150;
        const float room = beside ? label : width_;
        const auto lines = static_cast<float>(ui_.lines(name, Type{}, room).size());
        const float words = lines * Ui::line_height(Type{}) + (beside ? 0.0f : 4.0f);
        const float tall = beside ? std::max(row_, words) : row_;
        ui_.label(key + ".label", key, {margin_, y_, room, beside ? tall : words}, name);
        float x = margin_ + label;
        if (!beside) {
            y_ += words;
            x = margin_;
        }
        Ui::Field about;
        if (answer != nullptr) about.value = answer->text;
        const bool judged = checked != nullptr && !checked->changed && app_.answers_pace() != Conventions::Answers::hidden;
        about.invalid = judged && ink_of(checked->marked.judgement) == Ink::warning;
        if (checked != nullptr) about.described_by = key + ".said";
        ui_.field(key, {x, y_ + (tall - row_) / 2, field, row_}, about);
        draw_unit(key, step, answer, {x + field + 8, y_ + (tall - row_) / 2, unit - 8, row_});
        const bool fits = beside || field + unit + 8 + press_ <= width_;
        const float press_x = beside ? margin_ + width_ - press_ : fits ? x + field + unit + 8 : margin_;
        if (!fits) y_ += row_ + 6;
        const Help next = checked == nullptr ? Help::none : app_.next_help(*checked);
        const std::string press = app_.say(next == Help::none   ? "sheet.check"
                                           : next == Help::slip ? "sheet.more"
                                                                : "sheet.show_step");
        if (ui_.button(key + ".check", {press_x, y_ + (tall - row_) / 2, press_, row_}, press, Ui::ButtonLook::framed, false,
                       app_.say(Message{"sheet.press_for"}.text("press", press).text("step", name)))) {
            app_.help_with(step);
        }
        y_ += tall + 6;
        if (const CheckedStep* now = app_.checked(step)) said(key, *now);
    }

    void draw_unit(const std::string& key, const SheetStep& step, const Answer* answer, Rect rect) {
        const UnitId usual = unit_of(step.output);
        const Measure measure = info(usual).measure;
        if (measure == Measure::fraction) {
            ui_.text(key + ".percent", {rect.x, rect.y + (row_ - 22) / 2, rect.w, 0}, info(usual).symbol, Type{});
            return;
        }
        const StatedAnswer read = answer == nullptr ? StatedAnswer{} : read_answer(step.output, answer->text, answer->unit);
        Ui::Choice units;
        units.options.emplace_back(std::string(), app_.say("sheet.unit"));
        for (const UnitId unit : units_of(measure)) units.options.emplace_back(info(unit).key, info(unit).symbol);
        // A unit typed with the number counts before the one chosen.
        if (read.unit_given) units.chosen = info(read.unit).key;
        units.framed = false;
        units.ink = Ink::soft;
        units.name = app_.say(Message{"bench.unit_of"}.text("reading", sheet_step_name(app_.language(), step)));
        ui_.select(key + ".unit", rect, units);
    }

    void line(const std::string& key, const std::string& words, Type type) {
        y_ += ui_.text(key, {margin_ + 16, y_, width_ - 16, 0}, words, type) + 4;
    }

    void said(const std::string& key, const CheckedStep& checked) {
        const Language& language = app_.language();
        const MarkedStep& step = checked.marked;
        const bool hidden = app_.answers_pace() == Conventions::Answers::hidden;
        const Ink ink = hidden || checked.changed ? Ink::soft : ink_of(step.judgement);
        line(key + ".said", answer_words(app_, checked), {ink == Ink::warning ? Face::semibold : Face::regular, 16, ink});
        const bool open = step.judgement != Judgement::right && step.judgement != Judgement::carried_forward &&
                          step.judgement != Judgement::not_known;
        if (!hidden && open) {
            line(key + ".nudge", nudge_words(language, step), Type{});
            if (checked.help >= Help::slip && step.judgement == Judgement::not_right) {
                int number = 0;
                for (const std::string& words : slip_words(language, step)) {
                    line(key + ".slip" + std::to_string(++number), words, Type{});
                }
            }
            if (checked.help == Help::step) corrected(key + ".step", checked);
        }
        y_ += 4;
    }

    /// The step as it should be, from what the student had before it.
    void corrected(const std::string& key, const CheckedStep& checked) {
        const SheetStep& step = checked.marked.step;
        const Conventions& conventions = app_.record().conventions;
        const auto number = [&](double value, UnitId unit, int decimals) {
            return format_fixed(in_unit(step.output, value, unit), decimals, conventions.decimal_sign, conventions.rounding);
        };
        line(key, app_.say("sheet.from_own"), soft);
        if (step.mean) {
            Formula sum = Formula::of(Formula::Kind::row, {});
            for (const StatedStep& one : checked.had) {
                if (!sum.children.empty()) sum.children.push_back(Formula::leaf(Formula::Kind::operation, "+"));
                const double digit = difference_from_base(one.last_digit, checked.marked.unit);
                const int decimals = std::clamp(static_cast<int>(std::lround(-std::log10(digit))), 0, 6);
                sum.children.push_back(
                    Formula::leaf(Formula::Kind::number, number(one.value, checked.marked.unit, decimals)));
            }
            formula(key + ".formula",
                    Formula::of(Formula::Kind::fraction,
                                {sum, Formula::leaf(Formula::Kind::number, std::to_string(checked.had.size()))}));
            result(key, number(checked.marked.expected, checked.marked.unit, checked.marked.decimals), checked.marked.unit);
            return;
        }
        const auto run = static_cast<std::size_t>(std::max(step.run, 0));
        const Working working(app_.assessments()[run], conventions, checked.had);
        const WorkingStep* made = working.step(step.output);
        if (made == nullptr) return;
        const auto equation = [&](const Formula& side) {
            return Formula::of(Formula::Kind::row, {made->symbol, Formula::leaf(Formula::Kind::operation, "="), side});
        };
        formula(key + ".letters", equation(made->letters));
        formula(key + ".formula", equation(made->numbers));
        int more = 0;
        for (const Formula& conversion : made->conversions) {
            formula(key + ".conversion" + std::to_string(++more), conversion);
        }
        result(key, number(made->value, made->unit, made->shown_decimals), made->unit);
    }

    void result(const std::string& key, const std::string& number, UnitId unit) {
        line(key + ".result", app_.say(Message{"sheet.comes_to"}.text("value", app_.language().with_unit(number, unit))),
             {Face::semibold, 16, Ink::text});
    }

    /// Smaller where the room is too narrow for it.
    void formula(const std::string& key, const Formula& whole) {
        const Ui::SetFormula& shown = ui_.set_within(whole, formula_size, Ink::text, width_ - 16, smallest_formula);
        ui_.formula(key, {margin_ + 16, y_ + shown.baseline}, whole, spoken_formula(app_, whole), shown.size, Ink::text);
        y_ += shown.picture.height + 8;
    }

    float press_ = 0;
};

}  // namespace

void draw_answers_page(App& app, Ui& ui, float top) { AnswersPage(app, ui, top).draw(); }

}  // namespace overwater
