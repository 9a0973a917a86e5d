#include "web/panels/plan_result.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/quantity/number_format.hpp"
#include "web/app/app.hpp"
#include "web/panels/panels.hpp"
#include "web/panels/plan_words.hpp"
#include "web/panels/remark.hpp"
#include "web/panels/table.hpp"
#include "web/panels/types.hpp"

namespace overwater {

namespace {

constexpr Type large{Face::semibold, 24, Ink::text};

/// What the outputs are called where one of them has no amount.
constexpr std::array<const char*, plan_output_count> output_keys{
    "plan.output.window", "field.ribbon_length", "output.gas_volume", "field.scale_reading",   "plan.output.overflow",
    "field.acid",         "plan.output.doubt",   "plan.output.class", "plan.output.class_acid"};

/// Sentences that ask for a change.
bool is_warning(std::string_view key) {
    if (key.starts_with("plan.overflow.")) return key != "plan.overflow.fits" && key != "plan.overflow.hardly";
    return key == "plan.acid.slow" || key == "plan.acid.brisk" || key == "plan.acid.consent" ||
           key == "plan.thin_air" || key == "plan.little";
}

class PlanResult {
public:
    PlanResult(App& app, Ui& ui, const Rect& area)
        : app_(app), ui_(ui), sheet_(app.plan_desk().sheet), plan_(app.plan_desk().plan), area_(area), y_(area.y) {}

    float draw() {
        amounts();
        if (!plan_.caution.empty()) {
            y_ += ui_.text("plan.caution", {area_.x, y_ + 2, area_.w, 0}, app_.say(plan_.caution), small) + 8;
        }
        withheld();
        presses();
        window();
        sentences();
        return y_ - area_.y;
    }

private:
    std::string figures(double base, UnitId unit, int figures) const {
        return app_.language().with_unit(
            format_significant(from_base(base, unit), figures, app_.language().decimal_sign()), unit);
    }
    std::string decimals(double base, UnitId unit, int decimals) const {
        return app_.language().with_unit(format_fixed(from_base(base, unit), decimals, app_.language().decimal_sign()),
                                         unit);
    }

    /// The few numbers that are looked for first.
    void amounts() {
        if (!plan_.has(PlanOutput::gas)) return;
        Flow flow(area_.x, y_, area_.w, 58, 24);
        const std::string& from = sheet_.bench.at(Field::mass_from).text;
        const PlanPoint& chosen = plan_.chosen;
        // As balance or ruler will show it.
        std::string mass = reading_words(app_, plan_.expected_sheet, Field::mass_of_metal);
        if (from == "ribbon") mass = reading_words(app_, plan_.expected_sheet, Field::ribbon_length);
        if (mass.empty() || from == "by_difference") mass = figures(chosen.mass, UnitId::gram, 3);
        amount(flow, "plan.amount.mass", from == "ribbon" ? "field.ribbon_length" : "field.mass_of_metal", mass);
        amount(flow, "plan.amount.gas", "output.gas_volume", decimals(chosen.gas_volume, UnitId::millilitre, 1));
        if (plan_.has(PlanOutput::scale_reading)) {
            amount(flow, "plan.amount.reading", "field.scale_reading",
                   reading_words(app_, plan_.expected_sheet, Field::scale_reading));
        }
        if (plan_.has(PlanOutput::acid)) {
            amount(flow, "plan.amount.acid", "field.acid",
                   app_.say(Message{"plan.amount.acid_of"}
                                .figures("volume", plan_.acid.volume, UnitId::millilitre, 3)
                                .figures("strength", plan_.acid.concentration, UnitId::mole_per_litre, 2)));
        }
        if (plan_.has(PlanOutput::doubt) && plan_.budget.value > 0) {
            amount(flow, "plan.amount.doubt", "plan.output.doubt",
                   app_.say(Message{"plan.amount.within"}.figures("share", plan_.budget.expanded / plan_.budget.value,
                                                                  UnitId::percent, 2)));
        }
        y_ = flow.bottom() + 4;
        sentence("plan.says.cheapest", cheapest_words(app_, plan_), false);
    }

    void amount(Flow& flow, const std::string& key, const char* words, const std::string& value) {
        const std::string name = app_.say(words);
        const float wide = std::ceil(std::max(ui_.text_width(value, large), ui_.text_width(name, small))) + 2;
        const Rect place = flow.next(std::min(wide, area_.w));
        ui_.text(key + ".name", {place.x, place.y, place.w, 0}, name, small);
        ui_.output(key, {place.x, place.y + 19, place.w, 34}, value, name, large);
    }

    /// Why there are no amounts; what several outputs share is said once.
    void withheld() {
        std::vector<std::string> said;
        for (std::size_t i = 0; i < plan_output_count; ++i) {
            const auto output = static_cast<PlanOutput>(i);
            // Whoever weighs needs no ribbon.
            if (output == PlanOutput::ribbon_window) continue;
            const std::string words = withheld_words(app_, plan_, output);
            if (words.empty() || std::find(said.begin(), said.end(), words) != said.end()) continue;
            said.push_back(words);
            const bool refused = plan_.state(output).kind == OutputState::Kind::not_possible;
            y_ += draw_remark(
                ui_, {area_.x, y_, area_.w, 0}, "plan.withheld." + std::string(name_of(output)),
                app_.say(Message{"print.pair"}.text("name", app_.say(output_keys[i])).text("value", words)), refused);
        }
        if (!said.empty()) y_ += 4;
    }

    bool press(Flow& flow, const std::string& key, const char* name) {
        const std::string words = app_.say(name);
        Rect rect = flow.next(std::ceil(ui_.text_width(words, Type{})) + 28);
        rect.h -= 8;
        return ui_.button(key, rect, words, Ui::ButtonLook::framed);
    }

    void presses() {
        const float row = (ui_.touch() ? 44.0f : 32.0f) + 8;
        Flow flow(area_.x, y_ + 2, area_.w, row, 10);
        if (press(flow, "plan.print", "plan.print")) app_.print_cards();
        const std::string words = app_.say("plan.show_reading");
        const Rect box = flow.next(std::min(area_.w, std::ceil(ui_.text_width(words, Type{})) + 32));
        // Answered by App::plan_changed.
        ui_.check_box("plan.show_reading", {box.x, box.y, box.w, box.h - 8}, words, app_.plan_desk().show_reading);
        if (press(flow, "plan.begin", "plan.begin")) app_.begin_planned_run();
        if (press(flow, "plan.copy_link", "plan.copy_link")) app_.copy_plan_link();
        if (press(flow, "plan.from_record", "plan.from_record")) app_.plan_from_record();
        if (app_.has_plan_before() && press(flow, "plan.before", "plan.before")) app_.plan_before();
        y_ = flow.bottom() + 4;
    }

    /// The mass window and what is chosen of it, side by side.
    void window() {
        if (!plan_.has(PlanOutput::mass_window)) return;
        std::vector<const PlanPoint*> points;
        std::vector<std::string> columns{app_.say(label_of(PlanField::share))};
        for (const PlanPoint& point : plan_.window) {
            points.push_back(&point);
            columns.push_back(decimals(point.share, UnitId::percent, 0));
        }
        if (plan_.has(PlanOutput::gas)) {
            points.push_back(&plan_.chosen);
            columns.push_back(app_.say("plan.column.chosen"));
        }
        Element table = table_of(app_.say("plan.output.window"), columns);
        Element body = Element::named("tbody");
        const float top = y_;
        const float size = area_.w < 380 ? 13.0f : 15.0f;
        name_width_ = std::min(150.0f, area_.w * 0.3f);
        line(columns[0], {columns.begin() + 1, columns.end()}, {Face::semibold, size - 1, Ink::soft});
        for (int row = 0; row < 4; ++row) {
            if (row == 1 && !plan_.has(PlanOutput::ribbon_window)) continue;
            constexpr std::array<const char*, 4> names{"field.mass_of_metal", "field.ribbon_length",
                                                       "output.gas_volume", "field.scale_reading"};
            std::vector<std::string> cells;
            for (const PlanPoint* point : points) cells.push_back(cell(*point, row));
            const std::string name = app_.say(names[static_cast<std::size_t>(row)]);
            line(name, cells, {Face::semibold, size, Ink::text});
            body.add(table_row(name, cells));
        }
        table.add(std::move(body));
        ui_.table("plan.table", {area_.x, top, area_.w, y_ - top}, std::move(table));
        y_ += 8;
    }

    std::string cell(const PlanPoint& point, int row) const {
        if (row == 0) return figures(point.mass, UnitId::gram, 3);
        if (row == 1) return decimals(point.ribbon_length, UnitId::centimetre, 1);
        if (row == 2) return decimals(point.gas_volume, UnitId::millilitre, 1);
        if (&point == &plan_.chosen && !plan_.has(PlanOutput::scale_reading)) return "–";
        return decimals(point.scale_reading, UnitId::millilitre, 1);
    }

    void line(const std::string& name, const std::vector<std::string>& cells, const Type& type) {
        float below = y_ + 4;
        for (const std::string& words : ui_.lines(name, small, name_width_ - 6)) {
            ui_.draw_text({area_.x, below + 2}, words, small);
            below += 19;
        }
        const float wide = (area_.w - name_width_) / static_cast<float>(cells.size());
        float right = area_.x + name_width_;
        for (const std::string& words : cells) ui_.draw_text({right += wide, y_ + 5}, words, type, Anchor::end);
        y_ = below + 5;
        ui_.rule({area_.x, y_}, {area_.x + area_.w, y_});
    }

    void sentences() {
        int number = 0;
        for (const Message& message : plan_.says) {
            const bool loud = is_warning(message.key);
            sentence("plan.says." + std::to_string(number++), app_.say(message), loud);
        }
    }

    void sentence(const std::string& key, const std::string& words, bool loud) {
        if (words.empty()) return;
        if (loud) {
            y_ += draw_remark(ui_, {area_.x, y_ + 2, area_.w, 0}, key, words, true) + 2;
        } else {
            y_ += ui_.text(key, {area_.x, y_, area_.w, 0}, words, {Face::regular, 15, Ink::text}) + 5;
        }
    }

    App& app_;
    Ui& ui_;
    const PlanSheet& sheet_;
    const Plan& plan_;
    Rect area_;
    float y_;
    float name_width_ = 0;
};

}  // namespace

float draw_plan_result(App& app, Ui& ui, const Rect& area) { return PlanResult(app, ui, area).draw(); }

}  // namespace overwater
