// The teacher's side of practice: choices that a code holds, the codes of a class, and their key.

#include <algorithm>
#include <cmath>

#include "web/app/app.hpp"
#include "web/panels/page_column.hpp"
#include "web/panels/types.hpp"

namespace overwater {

namespace {

class CodesPage : private PageColumn {
public:
    CodesPage(App& app, Ui& ui, float top)
        : PageColumn(app, ui, top, 760, 760),
          made_(app.practice_desk().made) {
        for (const char* key : {"codes.difficulty", "codes.release", "codes.standard", "codes.vapour", "codes.seed",
                                "codes.students"}) {
            label_ = std::max(label_, std::ceil(ui.text_width(app.say(key), Type{})) + 16);
        }
        label_ = std::min(label_, width_ - 150);
    }

    void draw() {
        begin("codes", app_.say("page.codes"));
        paragraph("codes.about", app_.say("codes.about"), Type{}, 12);
        choices();
        result();
        paragraph("codes.no_secret", app_.say("practice.no_secret"), soft, 4);
        end();
    }

private:
    /// The name of a row; returns how tall the row is.
    float label(const std::string& key) {
        const auto rows = static_cast<float>(ui_.lines(app_.say(key), Type{}, label_ - 10).size());
        const float tall = std::max(row_, rows * Ui::line_height(Type{}));
        ui_.label(key + ".label", key, {margin_, y_, label_ - 10, tall}, app_.say(key));
        return tall;
    }

    template <class Names>
    void choice(const std::string& key, const std::string& words, const Names& names, std::string_view chosen) {
        Ui::Choice about;
        float wide = 120;
        for (const std::string_view name : names) {
            // Conditions of one's own are in no code.
            if (name == "own") continue;
            about.options.emplace_back(name, app_.say(words + std::string(name)));
            wide = std::max(wide, ui_.text_width(about.options.back().second, Type{}) + 36);
        }
        about.chosen = chosen;
        const bool beside = label_ + wide <= width_;
        const float tall = label(key);
        if (!beside) y_ += tall;
        ui_.select(key, {beside ? margin_ + label_ : margin_, y_ + (beside ? (tall - row_) / 2 : 0), std::min(wide, width_), row_},
                   about);
        y_ += (beside ? tall : row_) + 6;
    }

    void number(const std::string& key, const std::string& value, bool invalid) {
        const float tall = label(key);
        Ui::Field field;
        field.value = value;
        field.input_mode = "numeric";
        field.invalid = invalid;
        if (invalid) field.described_by = key + ".problem";
        ui_.field(key, {margin_ + label_, y_ + (tall - row_) / 2, 84, row_}, field);
        y_ += tall + 6;
    }

    void problem(const std::string& key, bool there, int most) {
        if (!there) return;
        paragraph(key + ".problem", app_.say(Message{"codes.whole_number"}.count("low", key == "codes.seed" ? 0 : 1).count("high", most)),
                  {Face::regular, 15, Ink::warning}, 6);
    }

    void choices() {
        choice("codes.difficulty", "practice.difficulty.", difficulty_names, name_of(made_.difficulty));
        paragraph("codes.bench", app_.say("codes.bench." + std::string(name_of(made_.difficulty))), soft, 8);
        choice("codes.release", "practice.release.", release_names, name_of(made_.release));
        choice("codes.standard", "conventions.standard.", standard_conditions_names,
               standard_conditions_names[static_cast<std::size_t>(made_.standard)]);
        choice("codes.vapour", "practice.vapour.", practice_vapour_names, name_of(made_.vapour));
        const std::string mishap = app_.say("codes.mishap");
        // Answered by App::chosen.
        ui_.check_box("codes.mishap", {margin_, y_, std::min(width_, std::ceil(ui_.text_width(mishap, Type{})) + 30), row_},
                      mishap, made_.mishap);
        y_ += row_ + 6;
        const PracticeDesk& desk = app_.practice_desk();
        const bool odd_seed = !whole_number(desk.seed, 0, practice_seeds - 1);
        const float above = y_;
        number("codes.seed", desk.seed, odd_seed);
        const float wide = press_width("codes.other_seed");
        const float x = margin_ + label_ + 84 + 12;
        const bool beside = x + wide <= margin_ + width_;
        if (ui_.button("codes.other_seed", {beside ? x : margin_, beside ? above : y_, wide, row_}, app_.say("codes.other_seed"),
                       Ui::ButtonLook::framed)) {
            app_.other_seed();
        }
        if (!beside) y_ += row_ + 6;
        problem("codes.seed", odd_seed, practice_seeds - 1);
        const bool odd_count = app_.practice_students() == 0;
        number("codes.students", desk.students, odd_count);
        problem("codes.students", odd_count, most_practice_students);
    }

    void result() {
        y_ += 8;
        ui_.rule({margin_, y_}, {margin_ + width_, y_});
        y_ += 12;
        paragraph("codes.class", app_.say(Message{"codes.class"}.text("code", code_of(made_))), {Face::semibold, 18, Ink::text},
                  4);
        if (made_.release == Release::by_word) {
            paragraph("codes.word", app_.say(Message{"codes.word"}.text("word", release_word(made_))), Type{}, 4);
        }
        const int count = app_.practice_students();
        y_ += 6;
        Flow presses(margin_, y_, width_, row_, 10);
        if (ui_.button("codes.print", presses.next(press_width("codes.print")), app_.say("codes.print"),
                       Ui::ButtonLook::framed)) {
            app_.print_key();
        }
        const Rect copy = presses.next(press_width("codes.copy"));
        if (ui_.button("codes.copy", {copy.x, copy.y + (copy.y > y_ ? 8.0f : 0.0f), copy.w, copy.h}, app_.say("codes.copy"),
                       Ui::ButtonLook::framed)) {
            app_.copy_codes();
        }
        y_ = presses.bottom() + 18;
        const std::vector<std::string> codes = codes_for(made_, 1, count);
        float wide = 0;
        for (const std::string& code : codes) wide = std::max(wide, ui_.text_width(code, Type{}));
        const float number = 38;
        Flow flow(margin_, y_, width_, 26, 24);
        ui_.open("codes.list", Role::list, {margin_, y_, width_, 26}, app_.say("codes.list"));
        for (std::size_t i = 0; i < codes.size(); ++i) {
            const Rect rect = flow.next(number + std::ceil(wide) + 4);
            const std::string key = "codes.list." + std::to_string(i + 1);
            ui_.open(key, Role::list_item, rect, {});
            const std::string words = std::to_string(i + 1);
            ui_.text(key + ".number", {rect.x, rect.y, number - 10, 0}, words, soft, Anchor::end);
            ui_.text(key + ".code", {rect.x + number, rect.y, rect.w - number, 0}, codes[i], Type{});
            ui_.close();
        }
        ui_.close();
        y_ = flow.bottom() + 12;
    }

    PracticeSettings made_;
    float label_ = 0;
};

}  // namespace

void draw_codes_page(App& app, Ui& ui, float top) { CodesPage(app, ui, top).draw(); }

}  // namespace overwater
