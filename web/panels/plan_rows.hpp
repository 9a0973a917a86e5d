#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/lesson/plan.hpp"
#include "web/app/control_key.hpp"
#include "web/ui/ui.hpp"

namespace overwater {

class App;

/// Rows of the plan's fields, one below the other from `x_`, `y_` on, `width_` wide.
class PlanRows {
protected:
    static constexpr float column_gap = 30;
    static constexpr float least_of_two = 620;  ///< room for two columns
    static constexpr float smallest = 13;       ///< size of words that are set smaller rather than cut

    PlanRows(App& app, Ui& ui, const Rect& area);

    static std::string key_of(Field field, ControlPart part = ControlPart::text);
    static std::string key_of(PlanField field);

    /// What is said about fields that have no row.
    void leftover();

    void group(const char* words);

    std::string field_name(Field field) const;

    std::string number_in(double base, UnitId unit) const;

    /// The name of a row; returns where its control goes and moves on below the row.
    Rect label(const std::string& key, const std::string& words, float wide);

    void remarks(const std::string& key);

    void describe(Ui::Field& about, const std::string& key) const;

    /// A field; `blank` is what holds while nothing is typed.
    void field(const std::string& key, const std::string& words, const Rect& box, Ui::Field& about,
               const std::string& blank);

    /// A reading; while it is blank, what the plan expects it to be, where it plans it at all.
    void typed(Field of, std::string blank = {});

    /// Beside its name, or below where its longest words need more room.
    void select(const std::string& key, const std::string& words, const Ui::Choice& about);

    void choice(Field of);

    void form();

    void asked(PlanField of, std::string_view unit = {}, const std::string& blank = {});

    /// How far a guess may be off, in the unit of the guess.
    void within(PlanField of, Field guess, double usual);

    Ui::Choice instruments_of(Field field) const;

    float room_for(const Ui::Choice& about, float size) const;

    void instrument(Field field, const Rect& place);

    void note(const std::string& key, const Message& message, Check::Weight weight);

    /// A remark about a field of the run or of the plan.
    struct Said {
        std::string key;  ///< of the field's control
        const Message* message;
        bool loud;
        bool shown = false;
    };

    App& app_;
    Ui& ui_;
    const PlanSheet& sheet_;
    const Plan& plan_;
    Rect area_;
    float x_;
    float y_;
    float row_;
    float box_;
    float width_ = 0;
    float label_ = 0;
    std::vector<Said> said_;
};

}  // namespace overwater
