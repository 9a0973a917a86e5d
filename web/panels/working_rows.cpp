#include "web/panels/working_rows.hpp"

#include <algorithm>
#include <cmath>

#include "core/explain/reason.hpp"
#include "web/app/app.hpp"
#include "web/panels/wording.hpp"

namespace overwater {

namespace {

constexpr float number_width = 26;
constexpr float formula_size = 16;
constexpr float letters_size = 14;
constexpr float smallest_letters = 11;
constexpr float baseline_below_middle = 5;  ///< of a text of 16 px
constexpr float row_air = 4.5f;

Formula equation(const WorkingStep& step, const Formula& right_side) {
    return Formula::of(Formula::Kind::row, {step.symbol, Formula::leaf(Formula::Kind::operation, "="), right_side});
}

/// Where everything of a row lies, so that its height is known before it is drawn.
struct Layout {
    float size = 0;  ///< of the formula
    float baseline = 0;
    bool formula_below = false;
    float name_room = 0;     ///< the name breaks into lines no wider
    float name_height = 0;
    float name_width = 0;    ///< of its longest line
    bool state_below = false;
    float height = 0;
    float text_line = 0;  ///< middle of the name's first line and of the result
};

void set_name(Layout& out, Ui& ui, const std::string& name, float room) {
    const auto broken = ui.lines(name, Type{}, room);
    out.name_room = room;
    out.name_height = Ui::line_height(Type{}) * static_cast<float>(broken.size());
    out.name_width = 0;
    for (const std::string& line : broken) out.name_width = std::max(out.name_width, ui.text_width(line, Type{}));
}

Layout layout_of(App& app, Ui& ui, float width, Output output) {
    Layout out;
    const std::string name = step_name(app, output);
    const float name_width = ui.text_width(name, Type{});
    const WorkingStep* step = app.working().step(output);
    out.text_line = 15;
    if (step == nullptr) {
        // What it waits for stands behind the name, or below it where little room is left.
        out.state_below = number_width + name_width + 14 > width * 0.55f;
        set_name(out, ui, name, out.state_below ? width - number_width : name_width + 2);
        const float left = out.state_below ? number_width : number_width + name_width + 14;
        const auto lines = ui.lines(app.shown_briefly(output), Type{}, width - left);
        const float state = Ui::line_height(Type{}) * static_cast<float>(lines.size());
        out.height = std::max(30.0f, state + (out.state_below ? out.name_height : 0) + 8);
        return out;
    }
    const Ui::SetFormula& formula = ui.set_within(equation(*step, step->numbers), formula_size, Ink::text,
                                                  width - number_width, smallest_letters);
    out.size = formula.size;
    out.baseline = formula.baseline;
    const float result = ui.text_width(result_text(app, output), {Face::semibold, 16, Ink::text});
    out.formula_below = number_width + name_width + 12 + formula.picture.width + 16 + result > width;
    set_name(out, ui, name, std::min(name_width + 2, width - number_width - 12 - result));
    if (out.formula_below) {
        out.height = out.name_height + 4 + std::max(formula.picture.height + 9, 30.0f);
        return out;
    }
    // Name, formula and result stand on one baseline.
    out.text_line = std::max(15.0f, std::round(out.baseline - baseline_below_middle + row_air));
    const float below = formula.picture.height - out.baseline;
    out.height = std::max(30.0f, std::round(out.text_line + baseline_below_middle + below + row_air));
    return out;
}

/// What stands below a row in full. Without `draws` it only takes its measure.
class Below {
public:
    Below(App& app, Ui& ui, Rect area, const std::string& key, bool draws)
        : app_(app), ui_(ui), area_(area), key_(key), draws_(draws), y_(area.y) {}

    float show(const WorkingStep& step, const std::vector<std::string>& remarks) {
        formula(".letters", equation(step, step.letters));
        int number = 0;
        for (const Formula& line : step.conversions) formula(".conversion" + std::to_string(++number), line);
        const std::string_view reason = reason_of(app_.assessment(), step.output);
        if (!reason.empty()) words(".reason", app_.say(reason), Ink::soft);
        number = 0;
        for (const std::string& remark : remarks) words(".remark" + std::to_string(++number), remark, Ink::text);
        return y_ - area_.y;
    }

private:
    /// As large as letters are, smaller where the room is too narrow for it.
    void formula(const std::string& part, const Formula& whole) {
        const Ui::SetFormula& shown = ui_.set_within(whole, letters_size, Ink::soft, area_.w, smallest_letters);
        if (draws_) {
            ui_.formula(key_ + part, {area_.x, y_ + shown.baseline}, whole, spoken_formula(app_, whole), shown.size,
                        Ink::soft);
        }
        y_ += shown.picture.height + 8;
    }

    void words(const std::string& part, const std::string& text, Ink ink) {
        const Type type{Face::regular, 14, ink};
        if (draws_) ui_.text(key_ + part, {area_.x, y_ - 2, area_.w, 0}, text, type);
        y_ += Ui::line_height(type) * static_cast<float>(ui_.lines(text, type, area_.w).size()) + 4;
    }

    App& app_;
    Ui& ui_;
    Rect area_;
    std::string key_;
    bool draws_;
    float y_;
};

}  // namespace

std::string result_text(const App& app, Output output) { return app.shown(output); }

float working_row_height(App& app, Ui& ui, float width, Output output) {
    return layout_of(app, ui, width, output).height;
}

float draw_working_row(App& app, Ui& ui, Rect area, Output output, int number, const std::string& prefix,
                       RowDetail detail, const std::vector<std::string>& remarks) {
    const Layout layout = layout_of(app, ui, area.w, output);
    const std::string key = prefix + std::string(name_of(output));
    const WorkingStep* step = app.working().step(output);
    const float line = area.y + layout.text_line - 11;
    float height = layout.height;
    if (step != nullptr && detail == RowDetail::full) {
        height += Below(app, ui, {0, 0, area.w - number_width, 0}, key, false).show(*step, remarks);
    }
    ui.open(key, Role::list_item, {area.x, area.y, area.w, height}, {});
    ui.draw_text({area.x, line + 3}, std::to_string(number), {Face::regular, 16, Ink::soft});
    ui.text(key + ".name", {area.x + number_width, line, layout.name_room, 0}, step_name(app, output));
    const float after_name = area.x + number_width + layout.name_width + (step == nullptr ? 14.0f : 12.0f);
    if (step == nullptr) {
        const float left = layout.state_below ? area.x + number_width : after_name;
        ui.text(key + ".state", {left, line + (layout.state_below ? layout.name_height : 0), area.x + area.w - left, 0},
                app.shown_briefly(output), {Face::regular, 16, Ink::soft});
    } else {
        const Point at = layout.formula_below
                             ? Point{area.x + number_width, area.y + layout.name_height + 6}
                             : Point{after_name, area.y + layout.text_line + baseline_below_middle - layout.baseline};
        const Formula whole = equation(*step, step->numbers);
        ui.formula(key + ".formula", {at.x, at.y + layout.baseline}, whole, spoken_formula(app, whole), layout.size,
                   Ink::text);
        ui.output(key + ".value", {area.x + area.w - 160, line, 160, 22}, result_text(app, output), step_name(app, output),
                  {Face::semibold, 16, Ink::text}, Anchor::end);
    }
    if (step != nullptr && detail == RowDetail::full) {
        Below(app, ui, {area.x + number_width, area.y + layout.height, area.w - number_width, 0}, key, true)
            .show(*step, remarks);
    }
    ui.close();
    return height;
}

}  // namespace overwater
