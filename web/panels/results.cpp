#include <algorithm>
#include <cmath>

#include "web/app/app.hpp"
#include "web/draw/result_pictures.hpp"
#include "web/draw/typeset.hpp"
#include "web/panels/panels.hpp"
#include "web/panels/working_rows.hpp"
#include "web/panels/wording.hpp"

namespace overwater {

namespace {

constexpr Output main_steps[] = {Output::gas_volume, Output::dry_gas_pressure, Output::amount_of_metal,
                                 Output::amount_of_gas, Output::molar_volume_standard};
constexpr Type soft{Face::regular, 16, Ink::soft};
constexpr Type card_state{Face::regular, 15, Ink::soft};

class Results {
public:
    Results(App& app, Ui& ui, Rect area) : app_(app), ui_(ui), area_(area), y_(area.y) {}

    float draw() {
        ui_.open("results", Role::region, {area_.x, area_.y, area_.w, 0}, app_.say("results.name"));
        headline();
        comparison();
        cards();
        working();
        ui_.close();
        return y_ - area_.y;
    }

private:
    static constexpr Output wanted = Output::molar_volume_standard;

    void headline() {
        const std::string name = output_name(app_, wanted);
        const std::string conditions =
            app_.say("standard." + std::string(standard_conditions_names[static_cast<std::size_t>(
                                       app_.record().conventions.standard)]));
        const float room = area_.w - ui_.text_width(name, soft) - 20;
        y_ += ui_.heading("results.heading", 2, {area_.x, y_, area_.w, 0}, name, soft);
        const bool beside = ui_.text_width(conditions, soft) <= room;
        const float top = beside ? y_ - Ui::line_height(soft) : y_;
        const float tall = ui_.text("results.conditions", {area_.x, top, area_.w, 0}, conditions, soft,
                                    beside ? Anchor::end : Anchor::start);
        if (!beside) y_ += tall;
        y_ += 6;
        if (!app_.assessment().has(wanted)) {
            const Type waiting{Face::regular, 20, Ink::soft};
            const std::string words = app_.shown(wanted);
            const float wide = area_.w;
            const float step = Ui::line_height(waiting);
            const auto broken = ui_.lines(words, waiting, wide);
            float y = y_ + 4;
            for (const std::string& line : broken) {
                ui_.draw_text({area_.x, y}, line, waiting);
                y += step;
            }
            const float height = std::max(60.0f, y - y_ + 8);
            // One output node says it all; the lines above are its drawing.
            ui_.output("result.molar_volume_standard", {area_.x, y_, wide, height}, {}, name, waiting);
            ui_.amend_value(words);
            y_ += height;
            return;
        }
        const Type large{Face::semibold, 52, Ink::text};
        const Type unit{Face::regular, 24, Ink::soft};
        const std::string number = app_.shown_number(wanted);
        const float width = ui_.draw_text({area_.x, y_}, number, large);
        const std::string_view symbol = info(UnitId::litre_per_mole).symbol;
        const float unit_width = ui_.draw_text({area_.x + width + 12, y_ + 24}, symbol, unit);
        ui_.output("result.molar_volume_standard", {area_.x, y_, width + 12 + unit_width, 56}, {}, name, large);
        ui_.amend_value(app_.shown(wanted));
        y_ += 60;
    }

    void comparison() {
        const auto found = app_.assessment().value(wanted);
        const auto accepted = app_.assessment().value(Output::accepted_value);
        const auto error = app_.assessment().value(Output::percent_error);
        if (!found || !accepted || !error) return;
        const auto litres = [](double v) { return from_base(v, UnitId::litre_per_mole); };
        const WorkingStep* step = app_.working().step(wanted);
        const std::string accepted_number =
            format_fixed(litres(*accepted), std::max(step->shown_decimals, 2), app_.language().decimal_sign());
        ResultScaleLabels labels;
        labels.value = app_.shown_number(wanted);
        labels.accepted = app_.say(Message{"results.accepted"}.text("value", accepted_number));
        const std::string percent =
            signed_number(format_fixed(from_base(*error, UnitId::percent), 2, app_.language().decimal_sign()), *error);
        const std::string verdict = app_.say(Message{*error < 0 ? "results.error_low" : "results.error_high"}
                                                 .text("percent", app_.language().with_unit(percent, UnitId::percent))
                                                 .text("accepted", app_.language().with_unit(accepted_number, UnitId::litre_per_mole)));
        labels.description = verdict;
        const Picture scale = draw_result_scale(litres(*found), std::nullopt, litres(*accepted), labels, area_.w, 62,
                                                ui_.measure());
        ui_.picture("results.scale", {area_.x, y_}, scale);
        y_ += 68;
        const Type type{Face::semibold, 16, Ink::text};
        y_ += ui_.text("result.percent_error", {area_.x, y_, area_.w, 0}, verdict, type) + 12;
    }

    /// What stands in a card below its value, and how far below.
    struct Foot {
        std::string words;
        Type type;
        float gap = 0;
    };

    void cards() {
        const bool beside = area_.w > 430;
        const float width = beside ? (area_.w - 22) / 2 : area_.w;
        const Foot parts = pressure_parts();
        const Foot equation = equation_of_reaction();
        float left = card_height(Output::dry_gas_pressure, parts, width);
        float right = card_height(Output::amount_of_gas, equation, width);
        if (beside) left = right = std::max(left, right);
        pressure_card({area_.x, y_, width, left}, parts);
        if (!beside) y_ += left + 12;
        const Rect rect{beside ? area_.x + width + 22 : area_.x, y_, width, right};
        foot(rect, equation, card(rect, Output::amount_of_gas), "results.equation");
        y_ += right + 12;
    }

    float text_height(std::string_view words, Type type, float width) const {
        return Ui::line_height(type) * static_cast<float>(ui_.lines(words, type, width).size());
    }

    /// Height of the value, or of why there is none.
    float body_height(Output output, float width) const {
        if (app_.assessment().has(output)) return 28;
        return std::max(28.0f, text_height(app_.shown(output), card_state, width - 32) + 4);
    }

    float card_height(Output output, const Foot& below, float width) const {
        const float head = 9 + text_height(output_name(app_, output), soft, width - 32) + 1;
        float tall = head + body_height(output, width) + 8;
        if (!below.words.empty()) tall += below.gap + text_height(below.words, below.type, width - 32) - 4;
        return std::max(104.0f, tall);
    }

    /// Name and value, or why there is none. Returns where it ends.
    float card(Rect rect, Output output) {
        ui_.fill(rect, Ink::card, 7);
        ui_.frame(rect, Ink::line, 1, 7);
        const std::string name = output_name(app_, output);
        const float head = ui_.text("card." + std::string(name_of(output)) + ".name",
                                    {rect.x + 16, rect.y + 9, rect.w - 32, 0}, name, soft);
        const Rect body{rect.x + 16, rect.y + 10 + head, rect.w - 32, body_height(output, rect.w)};
        const std::string words = app_.shown(output);
        const std::string key = "result." + std::string(name_of(output));
        if (app_.assessment().has(output)) {
            ui_.output(key, body, words, name, {Face::semibold, 24, Ink::text});
        } else {
            float y = body.y + 2;
            for (const std::string& line : ui_.lines(words, card_state, body.w)) {
                ui_.draw_text({body.x, y}, line, card_state);
                y += Ui::line_height(card_state);
            }
            ui_.output(key, body, {}, name, card_state);
            ui_.amend_value(words);
        }
        return body.bottom();
    }

    void foot(Rect rect, const Foot& below, float y, const char* key) {
        if (below.words.empty()) return;
        ui_.text(key, {rect.x + 16, y + below.gap, rect.w - 32, 0}, below.words, below.type);
    }

    double signed_column() const {
        const double column = app_.assessment().outcome[Output::column_pressure];
        return app_.assessment().readings.liquid_stands == LiquidStands::higher_inside ? column : -column;
    }

    /// The barometer's reading, or what a weather report's comes to at the bench.
    double pressure_at_bench() const {
        const auto worked_out = app_.assessment().value(Output::pressure_at_bench);
        return worked_out ? *worked_out : app_.assessment().measured[Input::barometer];
    }

    Foot pressure_parts() const {
        Foot below{{}, {Face::regular, 13, Ink::soft}, 22};
        const auto& all = app_.assessment();
        if (!all.has(Output::dry_gas_pressure)) return below;
        const double column = all.outcome[Output::column_pressure];
        const WorkingStep& step = *app_.working().step(Output::dry_gas_pressure);
        const auto number = [&](double pascals) {
            return format_fixed(from_base(pascals, step.unit), step.decimals, app_.language().decimal_sign());
        };
        const std::string_view key = column == 0           ? "results.parts_level"
                                     : signed_column() > 0 ? "results.parts_inside"
                                                           : "results.parts_outside";
        Message parts{key};
        parts.text("barometer", number(pressure_at_bench()))
            .text("vapour", number(all.outcome[Output::water_vapour_pressure]));
        if (column != 0) parts.text("column", number(column));
        below.words = app_.say(parts);
        return below;
    }

    Foot equation_of_reaction() const {
        Foot below{{}, {Face::regular, 15, Ink::soft}, 16};
        const Readings& readings = app_.assessment().readings;
        if (!readings.metal) return below;
        below.words = equation_words(app_, reaction(*readings.metal, readings.acid.value_or(Acid::hydrochloric)));
        if (!app_.assessment().has(Output::amount_of_gas)) below.gap = 8;
        return below;
    }

    void pressure_card(Rect rect, const Foot& parts) {
        const float y = card(rect, Output::dry_gas_pressure);
        const auto& all = app_.assessment();
        if (!all.has(Output::dry_gas_pressure)) return;
        const Picture bar = draw_pressure_bar(pressure_at_bench(), signed_column(),
                                              all.outcome[Output::water_vapour_pressure], rect.w - 32, 13);
        ui_.draw_picture({rect.x + 16, y + 5}, bar);
        foot(rect, parts, y, "results.parts");
    }

    void working() {
        const float top = y_;
        float y = top + 4;
        // The card's height follows from its rows, which are measured first.
        float height = 8;
        for (const Output output : main_steps) height += working_row_height(app_, ui_, area_.w - 32, output);
        ui_.fill({area_.x, top, area_.w, height}, Ink::card, 7);
        ui_.frame({area_.x, top, area_.w, height}, Ink::line, 1, 7);
        ui_.open("results.working", Role::list, {area_.x, top, area_.w, height}, app_.say("results.working"));
        int number = 0;
        for (const Output output : main_steps) {
            if (number > 0) ui_.rule({area_.x + 16, y}, {area_.x + area_.w - 16, y});
            ++number;
            y += draw_working_row(app_, ui_, {area_.x + 16, y, area_.w - 32, 0}, output, number, "results.row.",
                                  RowDetail::numbers);
        }
        ui_.close();
        y_ = top + height;
    }

    App& app_;
    Ui& ui_;
    Rect area_;
    float y_;
};

}  // namespace

float draw_results(App& app, Ui& ui, Rect area) { return Results(app, ui, area).draw(); }

}  // namespace overwater
