// The student's practice page: a code to begin with, and after the release what was read beside what is true.

#include <algorithm>
#include <cmath>

#include "core/quantity/number_format.hpp"
#include "web/app/app.hpp"
#include "web/panels/page_column.hpp"
#include "web/panels/practice_words.hpp"
#include "web/panels/table.hpp"
#include "web/panels/types.hpp"
#include "web/panels/wording.hpp"

namespace overwater {

namespace {

constexpr Type heading{Face::semibold, 18, Ink::text};

class PracticePage : private PageColumn {
public:
    PracticePage(App& app, Ui& ui, float top)
        : PageColumn(app, ui, top, 760, 760) {}

    void draw() {
        begin("practice", app_.say("page.practice"));
        paragraph("practice.about", app_.say("practice.about"), Type{}, 14);
        code();
        if (app_.practice() != nullptr) at_hand();
        teachers();
        end();
    }

private:
    void rule() {
        y_ += 10;
        ui_.rule({margin_, y_}, {margin_ + width_, y_});
        y_ += 14;
    }

    bool press_at(const char* key, float x, std::string_view words) {
        return ui_.button(key, {x, y_, press_width(words), row_}, app_.say(words), Ui::ButtonLook::framed);
    }

    void code() {
        const std::string words = app_.say("practice.code");
        const float label = std::ceil(ui_.text_width(words, Type{})) + 14;
        const float wide = 150;
        ui_.label("practice.code.label", "practice.code", {margin_, y_, label, row_}, words);
        Ui::Field field;
        field.value = app_.practice_desk().code;
        field.number = false;
        field.input_mode = "text";
        const Message& problem = app_.practice_desk().problem;
        field.invalid = !problem.key.empty();
        if (field.invalid) field.described_by = "practice.problem";
        const float start = press_width("practice.start");
        float x = margin_ + label;
        if (label + wide > width_) {
            y_ += row_;
            x = margin_;
        }
        ui_.field("practice.code", {x, y_, wide, row_}, field);
        if (x + wide + 12 + start > margin_ + width_) {
            y_ += row_ + 8;
            x = margin_ - wide - 12;
        }
        if (press_at("practice.start", x + wide + 12, "practice.start")) app_.start_practice();
        y_ += row_ + 8;
        if (field.invalid) paragraph("practice.problem", app_.say(problem), {Face::regular, 15, Ink::warning}, 6);
    }

    /// The record at hand is a practice run.
    void at_hand() {
        const PracticeRun& practice = *app_.practice();
        rule();
        y_ += ui_.heading("practice.at_hand", 2, {margin_, y_, width_, 0},
                          app_.say(Message{"practice.at_hand"}.text("code", app_.record().practice_code)), heading);
        paragraph("practice.kind", practice_kind_words(app_.language(), practice.settings), soft, 8);
        if (press_at("practice.to_bench", margin_, "practice.to_bench")) app_.go(PageName::bench);
        y_ += row_ + 12;
        run_switch("practice.runs", 10);
        if (!app_.reveals()) {
            y_ += draw_withheld(app_, ui_, {margin_, y_, std::min(width_, 620.0f), 0});
        } else if (!app_.truth_open(app_.run())) {
            compare();
        }
        if (app_.truth_open(app_.run())) truth();
        if (practice.settings.mishap) mishap();
        paragraph("practice.no_secret", app_.say("practice.no_secret"), soft, 4);
    }

    void compare() {
        const std::vector<Field> unread = app_.unread_dials();
        if (unread.empty()) {
            if (press_at("practice.compare", margin_, "practice.compare")) app_.compare_with_truth();
            y_ += row_ + 10;
            return;
        }
        std::vector<std::string> names;
        for (const Field field : unread) names.push_back(app_.say("field." + std::string(name_of(field))));
        paragraph("practice.unread", app_.say(Message{"practice.unread"}.text("readings", app_.language().list(names))),
                  Type{}, 10);
    }

    /// Reading by reading: typed, true, and whether it is right.
    void truth() {
        const PracticeRun& practice = *app_.practice();
        std::vector<std::string> columns;
        for (const char* key : {"practice.column.reading", "practice.column.typed", "practice.column.true",
                                "practice.column.verdict"}) {
            columns.push_back(app_.say(key));
        }
        Element table = table_of(app_.say("practice.truth"), columns);
        Element body = Element::named("tbody");
        const float verdict = std::max(ui_.text_width(app_.say("practice.right"), Type{}),
                                       ui_.text_width(app_.say("practice.not_right"), Type{})) + 6;
        const float number = std::min(120.0f, (width_ - verdict) * 0.32f);
        const float right = margin_ + width_;
        const float true_at = right - verdict - 14;
        const float typed_at = true_at - number - 6;
        const float room = typed_at - number - margin_;
        paragraph("practice.truth_about", app_.say("practice.truth_about"), soft, 8);
        const float top = y_;
        ui_.draw_text({margin_, y_}, columns[0], soft);
        ui_.draw_text({typed_at, y_}, columns[1], soft, Anchor::end);
        ui_.draw_text({true_at, y_}, columns[2], soft, Anchor::end);
        y_ += 22;
        ui_.rule({margin_, y_}, {right, y_}, Ink::field_edge);
        for (const Dial& dial : practice.dials) {
            if (dial.run >= 0 && dial.run != static_cast<int>(app_.run())) continue;
            const std::string name = app_.say("field." + std::string(name_of(dial.field)));
            const Entry& entry = app_.entry(dial.field);
            const bool is_right = is_read_right(dial, entry);
            const std::string typed = entry.text.empty() ? app_.say("practice.nothing") : typed_words(app_, dial.field);
            const std::string true_words = app_.language().with_unit(
                format_fixed(dial.position, dial.decimals, app_.language().decimal_sign()), dial.unit);
            const std::string said = app_.say(is_right ? "practice.right" : "practice.not_right");
            float line = y_ + 7;
            const auto cell = [&](float end, const std::string& words, Type type, float wide) {
                float at = y_ + 7;
                for (const std::string& part : ui_.lines(words, type, wide)) {
                    ui_.draw_text({end, at}, part, type, Anchor::end);
                    at += 21;
                }
                line = std::max(line, at);
            };
            cell(typed_at, typed, Type{}, number);
            cell(true_at, true_words, {Face::semibold, 16, Ink::text}, number);
            cell(right, said, {is_right ? Face::regular : Face::semibold, 16, is_right ? Ink::good : Ink::warning},
                 verdict);
            float at = y_ + 7;
            for (const std::string& part : ui_.lines(name, Type{}, room)) {
                ui_.draw_text({margin_, at}, part, Type{});
                at += 21;
            }
            y_ = std::max(line, at) + 6;
            ui_.rule({margin_, y_}, {right, y_});
            body.add(table_row(name, {typed, true_words, said}));
        }
        table.add(std::move(body));
        ui_.table("practice.truth", {margin_, top, width_, y_ - top}, std::move(table));
        y_ += 10;
        const auto value = practice.expected[app_.run()].value(headline_output(practice.record.conventions));
        if (value) {
            const std::string shown = app_.language().with_unit(
                format_fixed(from_base(*value, UnitId::litre_per_mole), 2, app_.language().decimal_sign()),
                UnitId::litre_per_mole);
            paragraph("practice.perfect", app_.say(Message{"practice.perfect"}.text("value", shown)), Type{}, 12);
        }
    }

    /// What went wrong unseen: first guessed, then said.
    void mishap() {
        if (!app_.all_truth_open()) {
            paragraph("practice.mishap_there", app_.say("practice.mishap_there"), Type{}, 10);
            return;
        }
        y_ += ui_.heading("practice.mishap.heading", 3, {margin_, y_, width_, 0}, app_.say("practice.mishap_heading"),
                          {Face::semibold, 17, Ink::text}) + 4;
        const std::string guess = app_.guessed_mishap();
        const std::optional<Mishap>& mishap = app_.practice()->mishap;
        if (guess.empty()) {
            Ui::Choice choice;
            choice.options.emplace_back("", app_.say("practice.guess_none"));
            for (const Cause cause : practice_causes) {
                choice.options.emplace_back(name_of(cause), app_.say("cause." + std::string(name_of(cause))));
            }
            const std::string words = app_.say("practice.guess");
            const float tall = Ui::line_height(Type{}) * static_cast<float>(ui_.lines(words, Type{}, width_).size());
            ui_.label("practice.mishap.label", "practice.mishap", {margin_, y_, width_, tall}, words);
            y_ += tall + 6;
            float wide = 0;
            for (const auto& [value, name] : choice.options) wide = std::max(wide, ui_.text_width(name, Type{}) + 34);
            ui_.select("practice.mishap", {margin_, y_, std::min(wide, width_), row_}, choice);
            y_ += row_ + 10;
            if (press_at("practice.mishap_show", margin_, "practice.mishap_show")) app_.show_mishap();
            y_ += row_ + 14;
            return;
        }
        if (guess != "shown" && mishap) {
            const bool right = guess == name_of(mishap->cause);
            paragraph("practice.guessed",
                      app_.say(Message{right ? "practice.guess_right" : "practice.guess_wrong"}.text(
                          "cause", app_.say("cause." + guess))),
                      {Face::semibold, 16, right ? Ink::good : Ink::warning}, 4);
        }
        paragraph("practice.mishap.words", mishap ? mishap_words(app_.language(), *mishap) : app_.say("practice.no_mishap"), Type{},
                  2);
        if (mishap) {
            paragraph("practice.mishap.about", app_.say("cause." + std::string(name_of(mishap->cause)) + ".about"), soft,
                      14);
        }
    }

    void teachers() {
        rule();
        y_ += ui_.heading("practice.teachers", 2, {margin_, y_, width_, 0}, app_.say("practice.teachers"), heading);
        paragraph("practice.teachers_about", app_.say("practice.teachers_about"), soft, 10);
        if (press_at("practice.to_codes", margin_, "practice.to_codes")) app_.go(PageName::codes);
        if (press_at("practice.to_marking", margin_ + press_width("practice.to_codes") + 12, "practice.to_marking")) app_.go(PageName::marking);
        y_ += row_;
    }

};

}  // namespace

void draw_practice_page(App& app, Ui& ui, float top) { PracticePage(app, ui, top).draw(); }

}  // namespace overwater
