#include "web/panels/marking_rows.hpp"

#include <algorithm>
#include <cmath>

#include "core/explain/working.hpp"
#include "web/app/app.hpp"
#include "web/panels/answer_words.hpp"
#include "web/panels/marking_words.hpp"
#include "web/panels/page_column.hpp"
#include "web/panels/types.hpp"

namespace overwater {

namespace {

constexpr float mark_width = 18;
constexpr float mark_height = 20;
constexpr std::size_t all_drawn = 60;  ///< so many are all there, in view or not
constexpr float rows_around = 10;

class MarkedRows {
public:
    MarkedRows(App& app, Ui& ui, Rect area) : app_(app), ui_(ui), area_(area), desk_(app.marking_desk()) {
        wide_ = area.w >= 700;
        for (const MarkedRow& row : desk_.rows) {
            most_steps_ = std::max(most_steps_, row.sheet.steps.size());
            group_ = std::max(group_, std::ceil(ui.text_width(row.group, Type{})) + 16);
        }
        group_ = std::min(group_, wide_ ? 160.0f : area.w * 0.45f);
        points_ = std::ceil(ui.text_width(points({}, 88, 88), Type{})) + 20;
        const auto marks = static_cast<float>(most_steps_) * mark_width;
        // Its heading is one line, also where a sheet has one step.
        const float least = std::ceil(ui.text_width(app.say("marking.steps"), soft)) + 2;
        marks_ = wide_ ? std::max(std::min(marks, area.w * 0.4f), least) : area.w - 16;
        per_line_ = std::max<std::size_t>(1, static_cast<std::size_t>(marks_ / mark_width));
        const float lines = static_cast<float>((most_steps_ + per_line_ - 1) / per_line_) * mark_height;
        height_ = wide_ ? std::max(32.0f, lines + 10) : 26 + lines + 30;
        if (ui.touch()) height_ = std::max(44.0f, height_);
    }

    float draw() {
        float y = area_.y;
        if (wide_) {
            // What the list says of each row by itself.
            ui_.text("marking.head.group", {area_.x + 8, y, group_, 0}, app_.say("marking.group"), soft);
            ui_.text("marking.head.points", {area_.x + group_, y, points_, 0}, app_.say("marking.points"), soft);
            ui_.text("marking.head.steps", {area_.x + group_ + points_, y, marks_ + 60, 0}, app_.say("marking.steps"), soft);
            y += 24;
        }
        ui_.open("marking.list", Role::list, {area_.x, y, area_.w, 0}, app_.say("marking.heading"));
        for (std::size_t i = 0; i < desk_.rows.size(); ++i) {
            const Rect rect{area_.x, y, area_.w, height_};
            const bool open = desk_.open == i;
            const bool drawn = desk_.rows.size() <= all_drawn || open || ui_.near_view(rect, rows_around * height_);
            if (drawn) ui_.rule({rect.x, y}, {rect.right(), y});
            y += height_;
            if (!drawn) continue;
            const std::string key = "marking.sheet." + std::to_string(i + 1);
            ui_.open(key, Role::list_item, rect, {});
            row(key, rect, i, open);
            if (open) y += steps(key, {area_.x + 16, y, area_.w - 16, 0}, i);
            ui_.close();
        }
        ui_.close();
        ui_.rule({area_.x, y}, {area_.x + area_.w, y});
        ui_.reach(y);
        return y + 6 - area_.y;
    }

private:
    std::string points(const std::string& group, double points, double most) const {
        const DecimalSign sign = app_.language().decimal_sign();
        Message message{group.empty() ? "marking.points_of" : "marking.row"};
        message.text("points", points_text(points, sign)).text("most", points_text(most, sign));
        if (!group.empty()) message.text("group", group);
        return app_.say(message);
    }

    void row(const std::string& key, Rect rect, std::size_t index, bool open) {
        const MarkedRow& row = desk_.rows[index];
        const std::vector<Remark> remarks = remarks_of(row);
        const std::string remark =
            remarks.empty() ? app_.say("marking.all_right") : remark_words(app_.language(), row, remarks.front());
        if (open) ui_.fill(rect, Ink::copper_soft, 4);
        const std::string name = points(row.group, row.sheet.points, row.sheet.most_points) + ' ' + remark;
        if (ui_.button(key + ".open", rect, {}, Ui::ButtonLook::plain, false, name)) app_.open_sheet(index);
        const float text = rect.y + (wide_ ? (height_ - 16) / 2 : 6);
        ui_.draw_text({rect.x + 8, text}, fitted(ui_, row.group, Type{}, group_ - 16), {Face::regular, 16, Ink::copper});
        ui_.draw_text({rect.x + group_, text}, points({}, row.sheet.points, row.sheet.most_points), {Face::semibold, 16, Ink::text});
        const float x = wide_ ? rect.x + group_ + points_ : rect.x + 8;
        float y = wide_ ? rect.y + (height_ - mark_height * lines(row)) / 2 + 2 : rect.y + 28;
        for (std::size_t i = 0; i < row.sheet.steps.size(); ++i) {
            if (i > 0 && i % per_line_ == 0) y += mark_height;
            const Judgement judgement = row.sheet.steps[i].judgement;
            ui_.draw_text({x + static_cast<float>(i % per_line_) * mark_width + mark_width / 2, y}, sign_of(judgement),
                          {Face::regular, 16, ink_of(judgement)}, Anchor::middle);
        }
        const float left = wide_ ? x + marks_ + 16 : rect.x + 8;
        const float below = wide_ ? text : rect.bottom() - 25;
        ui_.draw_text({left, below}, fitted(ui_, remark, soft, rect.right() - left - 4), soft);
    }

    float lines(const MarkedRow& row) const {
        return static_cast<float>((row.sheet.steps.size() + per_line_ - 1) / per_line_);
    }

    /// Each step of a sheet: what was answered, what it should be, what is to be said.
    float steps(const std::string& key, Rect area, std::size_t index) {
        const Language& language = app_.language();
        const MarkedRow& row = desk_.rows[index];
        const Record& record = desk_.records[index];
        float y = area.y + 6;
        int number = 0;
        const auto line = [&](const std::string& words, Type type, float indent) {
            y += ui_.text(key + ".line" + std::to_string(++number), {area.x + indent, y, area.w - indent, 0}, words, type) + 2;
        };
        for (std::size_t i = 0; i < row.sheet.steps.size(); ++i) {
            const MarkedStep& step = row.sheet.steps[i];
            const bool several = record.runs.size() > 1;
            std::string words = app_.say(Message{"marking.of_step"}
                                             .text("step", sheet_step_name(language, step.step, several))
                                             .text("words", answered(record, step)));
            const bool wrong = step.judgement == Judgement::not_right;
            words += ' ' + (wrong ? app_.say("marking.not_right") : judgement_words(language, step));
            if (wrong || step.judgement == Judgement::no_number) words += ' ' + expected(step);
            for (const std::string& more : form_words(language, step)) words += ' ' + more;
            line(words, {Face::regular, 16, wrong ? Ink::warning : Ink::text}, 0);
            if (!wrong) continue;
            for (const std::string& slip : slip_words(language, step)) line(slip, soft, 16);
        }
        for (const Remark& remark : remarks_of(row)) {
            const bool said = remark.kind == Remark::Kind::misread || remark.kind == Remark::Kind::unit ||
                              remark.kind == Remark::Kind::figures;
            if (said) line(remark_words(language, row, remark), Type{}, 0);
        }
        return y + 10 - area.y;
    }

    std::string answered(const Record& record, const MarkedStep& step) const {
        const Answer* answer = answer_to(answers_of(record, step.step), step_name(step.step));
        if (answer == nullptr || answer->text.empty()) return {};
        const std::string text = fitted(ui_, answer->text.substr(0, 200), Type{}, area_.w / 2);
        const bool typed = step.answer.number.unit != UnitId::none || answer->unit == UnitId::none;
        return (typed ? text : Language::as_typed(text, answer->unit)) + '.';
    }

    std::string expected(const MarkedStep& step) const {
        const std::string number = format_fixed(in_unit(step.step.output, step.expected, step.unit), step.decimals,
                                                app_.language().decimal_sign());
        return app_.say(Message{"marking.expected"}.text("value", app_.language().with_unit(number, step.unit)));
    }

    App& app_;
    Ui& ui_;
    Rect area_;
    const MarkingDesk& desk_;
    bool wide_ = true;
    std::size_t most_steps_ = 0;
    std::size_t per_line_ = 1;
    float group_ = 70;
    float points_ = 0;
    float marks_ = 0;
    float height_ = 0;
};

}  // namespace

float draw_marked_rows(App& app, Ui& ui, Rect area) { return MarkedRows(app, ui, area).draw(); }

}  // namespace overwater
