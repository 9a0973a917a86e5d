#include "web/panels/working_rows.hpp"

#include <algorithm>
#include <cmath>

#include "web/app/app.hpp"
#include "web/draw/typeset.hpp"
#include "web/panels/wording.hpp"

namespace overwater {

namespace {

constexpr float number_width = 26;
constexpr float formula_size = 16;
constexpr float letters_size = 14;

Formula equation(const WorkingStep& step, const Formula& right_side) {
    return Formula::of(Formula::Kind::row, {step.symbol, Formula::leaf(Formula::Kind::operation, "="), right_side});
}

/// Where everything of a row lies, so that its height is known before it is drawn.
struct Layout {
    Picture formula;
    float baseline = 0;
    bool formula_below = false;
    float name_width = 0;
    float height = 0;
    float text_line = 0;  ///< middle of the line of name and result
};

Layout layout_of(App& app, Ui& ui, float width, Output output) {
    Layout out;
    out.name_width = ui.text_width(step_name(app, output), Type{});
    const WorkingStep* step = app.working().step(output);
    if (step == nullptr) {
        const float left = number_width + out.name_width + 14;
        const auto lines = ui.lines(app.shown_briefly(output), Type{}, width - left);
        out.height = std::max(30.0f, Ui::line_height(Type{}) * static_cast<float>(lines.size()) + 8);
        out.text_line = 15;
        return out;
    }
    out.formula = typeset(equation(*step, step->numbers), formula_size, Ink::text, ui.measure(), &out.baseline);
    const float result = ui.text_width(app.shown(output), {Face::semibold, 16, Ink::text});
    out.formula_below = number_width + out.name_width + 12 + out.formula.width + 16 + result > width;
    const float tall = std::max(out.formula.height + 9, 30.0f);
    out.height = out.formula_below ? 30 + tall - 4 : std::round(tall);
    out.text_line = out.formula_below ? 15 : out.height / 2;
    return out;
}

}  // namespace

float working_row_height(App& app, Ui& ui, float width, Output output) {
    return layout_of(app, ui, width, output).height;
}

float draw_working_row(App& app, Ui& ui, Rect area, Output output, int number, const std::string& prefix,
                       RowDetail detail) {
    const Layout layout = layout_of(app, ui, area.w, output);
    const std::string key = prefix + std::string(name_of(output));
    const WorkingStep* step = app.working().step(output);
    const float line = area.y + layout.text_line - 11;
    ui.open(key, Role::list_item, {area.x, area.y, area.w, layout.height}, {});
    ui.draw_text({area.x, line + 3}, std::to_string(number), {Face::regular, 16, Ink::soft});
    ui.text(key + ".name", {area.x + number_width, line, layout.name_width + 2, 0}, step_name(app, output));
    const float after_name = area.x + number_width + layout.name_width + 12;
    if (step == nullptr) {
        ui.text(key + ".state", {after_name, line, area.x + area.w - after_name, 0}, app.shown_briefly(output),
                {Face::regular, 16, Ink::soft});
    } else {
        const Point at = layout.formula_below
                             ? Point{area.x + number_width, area.y + 28}
                             : Point{after_name, area.y + (layout.height - layout.formula.height) / 2};
        const Formula whole = equation(*step, step->numbers);
        ui.formula(key + ".formula", {at.x, at.y + layout.baseline}, whole, spoken_formula(app, whole), formula_size,
                   Ink::text);
        ui.output(key + ".value", {area.x + area.w - 160, line, 160, 22}, app.shown(output), step_name(app, output),
                  {Face::semibold, 16, Ink::text}, Anchor::end);
    }
    float height = layout.height;
    if (step != nullptr && detail == RowDetail::letters_too) {
        const Formula letters = equation(*step, step->letters);
        float baseline = 0;
        const float tall = typeset(letters, letters_size, Ink::soft, ui.measure(), &baseline).height;
        ui.formula(key + ".letters", {area.x + number_width, area.y + height + baseline}, letters,
                   spoken_formula(app, letters), letters_size, Ink::soft);
        height += tall + 8;
    }
    ui.close();
    return height;
}

}  // namespace overwater
