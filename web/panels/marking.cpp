// The teacher's page: rules of marking, a class's sheets, and what they come to.

#include <algorithm>
#include <cmath>

#include "web/app/app.hpp"
#include "web/app/record_title.hpp"
#include "web/panels/marking_rows.hpp"
#include "web/panels/page_column.hpp"
#include "web/panels/types.hpp"

namespace overwater {

namespace {

constexpr int text_lines = 6;
constexpr int fewer_lines = 3;  ///< once there are sheets, which are what is looked at then

class MarkingPage : private PageColumn {
public:
    MarkingPage(App& app, Ui& ui, float top)
        : PageColumn(app, ui, top, 1100, 760),
          desk_(app.marking_desk()) {}

    void draw() {
        begin("marking", app_.say("marking.heading"));
        paragraph("marking.about", app_.say("marking.about"), Type{}, 10);
        sheets();
        rules();
        if (!desk_.rows.empty()) result();
        end();
    }

private:
    void sheets() {
        const std::string words = app_.say("marking.text");
        const float tall = Ui::line_height(Type{}) * static_cast<float>(ui_.lines(words, Type{}, width_).size());
        ui_.label("marking.text.label", "marking.text", {margin_, y_, width_, tall}, words);
        y_ += tall + 4;
        Ui::Field field;
        field.value = desk_.text;
        field.number = false;
        field.input_mode = "text";
        // How to name columns is told until it was done well.
        const bool told = desk_.rows.empty() || !desk_.problems.empty();
        field.lines = desk_.rows.empty() ? text_lines : fewer_lines;
        if (told) field.described_by = "marking.columns";
        const float height = static_cast<float>(field.lines) * Ui::line_height(Type{}) + 14;
        ui_.field("marking.text", {margin_, y_, width_, height}, field);
        y_ += height + 8;
        Flow flow(margin_, y_, width_, row_ + 8, 10);
        if (press_in(flow, "marking.read", "marking.read")) app_.read_class();
        press_in(flow, "marking.open", "marking.open");
        ui_.opens_file();
        if (press_in(flow, "marking.copy_columns", "marking.copy_columns")) app_.copy_columns();
        if (!desk_.rows.empty() && press_in(flow, "marking.clear", "marking.clear")) app_.clear_class();
        y_ = flow.bottom() + 2;
        if (told) paragraph("marking.columns", app_.say("marking.columns"), soft, 4);
        const bool taken = !desk_.rows.empty() && !desk_.from_open.empty();
        if (taken) {
            paragraph("marking.from_open", desk_.from_open, {Face::regular, 15, Ink::warning}, 8);
        } else {
            paragraph("marking.open_record",
                      app_.say(Message{"marking.open_record"}.text("name", record_title(app_.language(), app_.record().name))),
                      soft, 8);
        }
        int number = 0;
        for (const std::string& problem : desk_.problems) {
            paragraph("marking.problem" + std::to_string(++number), problem, {Face::regular, 15, Ink::warning}, 3);
        }
    }

    void rules() {
        y_ += 8;
        y_ += ui_.heading("marking.rules", 3, {margin_, y_, width_, 0}, app_.say("marking.rules"), {Face::semibold, 17, Ink::text}) + 6;
        constexpr float field_width = 64;
        float label = 0;
        for (const std::string_view rule : marking_rule_names) {
            label = std::max(label, std::ceil(ui_.text_width(app_.say("marking.rule." + std::string(rule)), Type{})) + 12);
        }
        label = std::min(label, width_ - field_width);
        Flow flow(margin_, y_, width_, row_ + 6, 36);
        for (std::size_t i = 0; i < marking_rule_names.size(); ++i) {
            const std::string name(marking_rule_names[i]);
            const std::string key = "marking." + name;
            const Rect place = flow.next(label + field_width);
            ui_.label(key + ".label", key, {place.x, place.y, label - 8, row_}, app_.say("marking.rule." + name));
            Ui::Field field;
            field.value = desk_.rules[i];
            field.invalid = !marking_rule(desk_.rules[i], i);
            if (field.invalid) field.described_by = "marking.rule_problem";
            ui_.field(key, {place.x + label, place.y, field_width, row_}, field);
            odd_ = odd_ || field.invalid;
        }
        y_ = flow.bottom() + 4;
        if (odd_) paragraph("marking.rule_problem", app_.say("marking.rule_problem"), {Face::regular, 15, Ink::warning}, 4);
    }

    void result() {
        y_ += 6;
        ui_.rule({margin_, y_}, {margin_ + width_, y_});
        y_ += 12;
        const auto all = static_cast<long long>(desk_.rows.size());
        const bool done = desk_.marked >= desk_.rows.size();
        y_ += ui_.heading("marking.sheets", 3, {margin_, y_, width_, 0}, app_.say(Message{"marking.sheets"}.count("number", all)),
                          {Face::semibold, 18, Ink::text}) + 6;
        if (!done) {
            paragraph("marking.busy", app_.say(Message{"marking.busy"}.count("number", static_cast<long long>(desk_.marked))), soft, 6);
            return;
        }
        Flow flow(margin_, y_, width_, row_ + 8, 10);
        if (press_in(flow, "marking.save", "marking.save")) app_.save_marks();
        if (press_in(flow, "marking.print", "marking.print")) app_.print_marks();
        y_ = flow.bottom() + 4;
        y_ += draw_marked_rows(app_, ui_, {margin_, y_, width_, 0});
        paragraph("marking.signs", app_.say("marking.signs"), soft, 4);
    }

    const MarkingDesk& desk_;
    bool odd_ = false;
};

}  // namespace

void draw_marking_page(App& app, Ui& ui, float top) { MarkingPage(app, ui, top).draw(); }

}  // namespace overwater
