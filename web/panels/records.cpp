// The records page: the record at hand, all records, files, and what stays on this computer.

#include <algorithm>
#include <cmath>

#include "web/app/app.hpp"
#include "web/browser/platform.hpp"
#include "web/panels/lab_sheet.hpp"
#include "web/panels/language_choice.hpp"
#include "web/panels/page_column.hpp"
#include "web/panels/types.hpp"

namespace overwater {

namespace {

class RecordsPage : private PageColumn {
public:
    RecordsPage(App& app, Ui& ui, float top)
        : PageColumn(app, ui, top, 960, 720) {}

    void draw() {
        begin("records", app_.say("page.records"));
        paragraph("records.about", app_.say(app_.shelf().keeping() ? "records.about" : "records.about_not_kept"), soft,
                  16);
        name();
        files();
        y_ += draw_records_list(app_, ui_, {margin_, y_, width_, 0});
        damaged();
        y_ += 26;
        computer();
        end();
    }

private:
    void name() {
        const float label = ui_.text_width(app_.say("records.name"), Type{}) + 14;
        const bool beside = label + 180 <= width_;
        ui_.label("records.name.label", "records.name", {margin_, y_, label, row_}, app_.say("records.name"));
        if (!beside) y_ += row_ - 6;
        Ui::Field field;
        field.value = app_.record().name;
        field.number = false;
        field.input_mode = "text";
        const float left = beside ? margin_ + label : margin_;
        ui_.field("records.name", {left, y_, std::min(320.0f, margin_ + width_ - left), row_}, field);
        y_ += row_ + 14;
    }

    void files() {
        Flow flow(margin_, y_, width_, row_ + 8, 10);
        if (press_in(flow, "records.new", "records.new")) app_.new_record();
        press_in(flow, "records.import", "records.import");
        ui_.opens_file();
        if (press_in(flow, "records.export_all", "records.export_all")) app_.export_all();
        if (press_in(flow, "records.copy_link", "records.copy_link")) app_.copy_record_link();
        if (press_in(flow, "records.print_sheet", "records.print_sheet")) print(LabSheet::filled);
        if (press_in(flow, "records.print_blank", "records.print_blank")) print(LabSheet::blank);
        y_ = flow.bottom();
        paragraph("records.drop", app_.say("records.drop"), {Face::regular, 14, Ink::soft}, 14);
    }

    void print(LabSheet kind) { platform::print_html(lab_sheet_html(app_, ui_.measure(), kind)); }

    /// Texts under our keys that could not be read.
    void damaged() {
        const std::vector<std::string> keys = app_.shelf().damaged();
        if (keys.empty()) return;
        y_ += 12;
        paragraph("records.unreadable",
                  app_.say(Message{"records.unreadable"}.count("number", app_.shelf().unreadable())),
                  {Face::regular, 15, Ink::warning}, 2);
        for (const std::string& key : keys) {
            const Type type{Face::regular, 15, Ink::text};
            const float height = Ui::line_height(type);
            y_ += ui_.text("records.damaged." + key, {margin_, y_ + (row_ - height) / 2, width_, 0}, key, type) +
                  (row_ - height) / 2;
            const std::string keep = app_.say("records.damaged_export");
            const std::string drop = app_.say("records.delete");
            const auto link = [&](const std::string& words) {
                return std::ceil(ui_.text_width(words, {Face::regular, 15, Ink::copper})) + 14;
            };
            Flow flow(margin_ - 7, y_, width_, row_, 10);
            if (ui_.button("records.damaged_export." + key, flow.next(link(keep)), keep, Ui::ButtonLook::link, false,
                           app_.say(Message{"records.damaged_export_name"}.text("name", key)), 15)) {
                app_.export_damaged(key);
            }
            if (ui_.button("records.damaged_delete." + key, flow.next(link(drop)), drop, Ui::ButtonLook::link, false,
                           app_.say(Message{"records.delete_name"}.text("name", key)), 15)) {
                app_.delete_damaged(key);
            }
            y_ = flow.bottom() + 4;
        }
    }

    void language() {
        const float label = ui_.text_width(app_.say("language.name"), Type{}) + 14;
        ui_.label("records.language.label", "records.language", {margin_, y_, label, row_}, app_.say("language.name"));
        draw_language_choice(app_, ui_, "records.language",
                             {margin_ + label, y_, 120, row_}, true);
        y_ += row_;
        paragraph("records.language_about", app_.say("language.about"), soft, 8);
    }

    /// A shared computer: keep nothing, or leave it clean.
    void computer() {
        y_ += ui_.heading("records.computer", 3, {margin_, y_, width_, 0}, app_.say("records.computer"),
                          {Face::semibold, 18, Ink::text}) +
              4;
        language();
        const std::string words = app_.say("records.not_kept");
        const bool off = !app_.shelf().keeping();
        const float wide = std::min(width_, std::ceil(ui_.text_width(words, Type{})) + 30);
        if (ui_.check_box("records.not_kept", {margin_, y_, wide, row_}, words, off)) app_.set_keeping(off);
        y_ += row_;
        paragraph("records.not_kept_about", app_.say("records.not_kept_about"), soft, 8);
        if (off && app_.shelf().has_stored(app_.record().id)) {
            paragraph("records.still_stored", app_.say("records.still_stored"), {Face::regular, 15, Ink::text}, 8);
            Flow flow(margin_, y_, width_, row_ + 8, 10);
            if (press_in(flow, "records.remove_stored", "records.remove_stored")) app_.remove_stored();
            y_ = flow.bottom();
        }
        y_ += 12;
        Flow flow(margin_, y_, width_, row_ + 8, 10);
        if (!app_.finish_asked()) {
            if (press_in(flow, "records.finish", "records.finish")) app_.ask_finish(true);
            y_ = flow.bottom();
            paragraph("records.finish_about", app_.say("records.finish_about"), soft, 0);
            return;
        }
        paragraph("records.finish_ask", app_.say("records.finish_ask"), {Face::regular, 16, Ink::text}, 10);
        Flow answers(margin_, y_, width_, row_ + 8, 10);
        if (press_in(answers, "records.finish_export", "records.export_all")) app_.export_all();
        if (press_in(answers, "records.finish_yes", "records.finish_yes")) app_.finish();
        if (press_in(answers, "records.finish_no", "records.finish_no")) app_.ask_finish(false);
        y_ = answers.bottom();
    }

};

}  // namespace

void draw_records_page(App& app, Ui& ui, float top) { RecordsPage(app, ui, top).draw(); }

}  // namespace overwater
