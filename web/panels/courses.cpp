// The course on top of the conventions: which one these are, another chosen at once, own ones kept and shared.

#include <algorithm>
#include <cmath>

#include "core/record/convention_choices.hpp"
#include "core/result/course.hpp"
#include "web/app/app.hpp"
#include "web/panels/page_column.hpp"
#include "web/panels/types.hpp"

namespace overwater {

namespace {

/// A course by what it is: "0 °C, 1 atm, vapour subtracted, mmHg, mL, Mg 24.305", the number with its own decimal sign.
std::string course_words(const App& app, const Conventions& by) {
    constexpr std::array<const char*, 4> magnesium{"24.305", "24.31", "24.3", "24"};
    std::string mass = magnesium[static_cast<std::size_t>(by.molar_mass_digits)];
    if (by.decimal_sign == DecimalSign::comma) std::replace(mass.begin(), mass.end(), '.', ',');
    const bool room = by.conversion == Conventions::Conversion::none;
    const std::string standard(standard_conditions_names[static_cast<std::size_t>(by.standard)]);
    const bool wet = by.vapour == Conventions::Vapour::not_subtracted;
    return app.say(Message{"course.words"}
                       .text("standard", room ? app.say("course.room") : app.say("conventions.standard." + standard))
                       .text("vapour", app.say(wet ? "course.wet" : "course.dry"))
                       .text("pressure", std::string(info(by.pressure_unit).symbol))
                       .text("volume", std::string(info(named_unit(UnitId::millilitre, by.volume_unit)).symbol))
                       .text("mass", mass));
}

class Courses : private PageColumn {
public:
    Courses(App& app, Ui& ui, float top) : PageColumn(app, ui, top - 18, 860, 860) {}

    float draw() {
        if (app_.offered_course()) offer();
        chooser();
        keep();
        own();
        y_ += 4;
        ui_.rule({margin_, y_}, {margin_ + width_, y_});
        return y_ + 12;
    }

private:
    /// What differs between the conventions of the record and a course, in a sentence.
    void differences(const std::string& key, const std::string& course, const std::vector<std::string_view>& names) {
        std::vector<std::string> words;
        for (const std::string_view name : names) words.push_back(app_.say("conventions." + std::string(name)));
        paragraph(key,
                  app_.say(Message{"conventions.course.differs"}
                               .text("course", course)
                               .text("conventions", app_.language().list(words))),
                  small, 6);
    }

    void offer() {
        const OwnCourse& offered = *app_.offered_course();
        const auto names = differing(offered.conventions, app_.record().conventions);
        paragraph("conventions.offer", app_.say(Message{"course.offered"}.text("name", offered.name)),
                  {Face::semibold, 16, Ink::text}, 2);
        if (!names.empty()) differences("courses.offer_differs", offered.name, names);
        y_ += 2;
        Flow flow(margin_, y_, width_, row_ + 6, 10);
        if (press_in(flow, "conventions.offer_use", "course.use")) {
            app_.use_offered();
        } else if (press_in(flow, "conventions.offer_keep", "course.keep")) {
            app_.keep_course(offered);
        } else if (press_in(flow, "conventions.offer_leave", "course.leave")) {
            app_.leave_offered();
        }
        y_ = flow.bottom() + 6;
        ui_.rule({margin_, y_}, {margin_ + width_, y_});
        y_ += 12;
    }

    void chooser() {
        const Conventions& now = app_.record().conventions;
        Ui::Choice choice;
        // The course that these conventions are, or are nearest to.
        std::string nearest;
        std::vector<std::string_view> differs(99);
        const auto add = [&](std::string value, std::string words, const Conventions& by) {
            auto names = differing(by, now);
            if (names.size() < differs.size()) {
                differs = std::move(names);
                nearest = words;
                choice.chosen = value;
            }
            choice.options.emplace_back(std::move(value), std::move(words));
        };
        for (std::size_t i = 0; i < app_.own_courses().size(); ++i) {
            const OwnCourse& course = app_.own_courses()[i];
            add("own." + std::to_string(i), course.name, course.conventions);
        }
        double accepted = 0;
        for (const Course& course : courses()) {
            Conventions by = course.conventions;
            by.answers = now.answers;
            add(std::string(course.key), course_words(app_, by), by);
            if (differs.empty() && choice.chosen == course.key) accepted = course.accepted;
        }
        const bool exact = differs.empty();
        if (!exact) {
            choice.chosen.clear();
            choice.options.insert(choice.options.begin(), {std::string(), app_.say("conventions.course.own")});
        }
        const std::string key = "conventions.course";
        const Type name{Face::semibold, 16, Ink::text};
        const float label = std::ceil(ui_.text_width(app_.say(key), name)) + 14;
        ui_.label(key + ".label", key, {margin_, y_, label, row_}, app_.say(key), name);
        const bool beside = width_ - label > 420;
        if (!beside) y_ += row_ - 4;
        float wide = 120;
        for (const auto& [value, words] : choice.options) wide = std::max(wide, ui_.text_width(words, Type{}) + 34);
        wide = std::min(wide, beside ? width_ - label : width_);
        if (exact) choice.shown = fitted(ui_, nearest, Type{}, wide - 26);
        ui_.select(key, {beside ? margin_ + label : margin_, y_, wide, row_}, choice);
        y_ += row_ + 4;
        if (!exact) differences("courses.differs", nearest, differs);
        if (accepted > 0 && app_.entry(Field::accepted_value).text.empty()) compare(accepted);
        y_ += 6;
    }

    /// The value that the course compares with, put down as a reading by the person's own press.
    void compare(double accepted) {
        const std::string number = format_fixed(accepted, 1, app_.language().decimal_sign());
        const std::string words = app_.say(
            Message{"course.compare"}.text("value", app_.language().with_unit(number, UnitId::litre_per_mole)));
        if (ui_.button("conventions.compare", {margin_, y_ + 2, std::ceil(ui_.text_width(words, Type{})) + 28, row_}, words,
                       Ui::ButtonLook::framed)) {
            app_.compare_with(number);
        }
        y_ += row_ + 4;
    }

    /// Name and field, below it where there is no room; behind or below them that of presses which take `presses`.
    Flow named(const std::string& key, const std::string& words, const std::string& value, bool invalid, float presses) {
        const float label = ui_.text_width(words, Type{}) + 12;
        const bool beside = label + 180 <= width_;
        ui_.label(key + ".label", key, {margin_, y_, label, row_}, words);
        if (!beside) y_ += row_ - 4;
        Ui::Field field;
        field.value = value;
        field.number = false;
        field.invalid = invalid;
        field.input_mode = "text";
        const float left = beside ? margin_ + label : margin_;
        const float wide = std::min(260.0f, margin_ + width_ - left);
        ui_.field(key, {left, y_, wide, row_}, field);
        const float behind = left + wide + 12;
        const float room = margin_ + width_ - behind;
        if (presses <= room) return {behind, y_, room, row_ + 6, 10};
        y_ += row_ + 8;
        return {margin_, y_, width_, row_ + 6, 10};
    }

    void keep() {
        const std::string& name = app_.course_name();
        Flow flow = named("conventions.course_name", app_.say("conventions.course_name"), name, false,
                          press_width("conventions.course_keep") + 10 + press_width("records.import"));
        if (press_in(flow, "conventions.course_keep", "conventions.course_keep")) {
            app_.keep_course({name, app_.record().conventions, app_.record().conventions_kept});
        }
        press_in(flow, "conventions.course_file", "records.import");
        ui_.opens_file();
        y_ = flow.bottom() + 2;
    }

    void own() {
        const std::size_t open = app_.open_course();
        Flow flow(margin_, y_, width_, row_ + 6, 8);
        for (std::size_t i = 0; i < app_.own_courses().size(); ++i) {
            const std::string name = fitted(ui_, app_.own_courses()[i].name, Type{}, width_ - 28);
            Rect rect = flow.next(std::ceil(ui_.text_width(name, Type{})) + 28);
            rect.h = row_;
            if (ui_.button("conventions.own." + std::to_string(i), rect, name, Ui::ButtonLook::page, i == open,
                           app_.say(Message{"conventions.own_course"}.text("name", app_.own_courses()[i].name)))) {
                app_.open_own_course(i);
                return;
            }
        }
        if (app_.own_courses().empty()) return;
        y_ = flow.bottom() + 4;
        if (open >= app_.own_courses().size()) return;
        const bool bad = !is_course_name(app_.own_name());
        Flow presses = named("conventions.own_name", app_.say("conventions.own_name"), app_.own_name(), bad,
                             press_width("records.copy_link") + press_width("records.export") + 20 + press_width("records.delete"));
        if (press_in(presses, "conventions.own_link", "records.copy_link")) app_.copy_course_link();
        if (press_in(presses, "conventions.own_file", "records.export")) app_.save_course();
        if (press_in(presses, "conventions.own_forget", "records.delete")) app_.forget_course();
        y_ = presses.bottom() + 4;
        if (bad) paragraph("conventions.own_name.problem", app_.say(Message{"course.name"}), {Face::regular, 15, Ink::warning}, 4);
    }
};

}  // namespace

float draw_courses(App& app, Ui& ui, float top) { return Courses(app, ui, top).draw(); }

}  // namespace overwater
