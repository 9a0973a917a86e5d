#include <algorithm>
#include <cmath>

#include "core/result/known_value.hpp"
#include "web/app/app.hpp"
#include "web/draw/result_pictures.hpp"
#include "web/draw/typeset.hpp"
#include "web/panels/doubt_words.hpp"
#include "web/panels/panels.hpp"
#include "web/panels/working_rows.hpp"
#include "web/panels/wording.hpp"

namespace overwater {

namespace {

constexpr Type calm{Face::regular, 16, Ink::soft};
constexpr Type card_state{Face::regular, 15, Ink::soft};

class Results {
public:
    Results(App& app, Ui& ui, Rect area) : app_(app), ui_(ui), area_(area), y_(area.y), wanted_(app.sought()) {}

    float draw() {
        ui_.open("results", Role::region, {area_.x, area_.y, area_.w, 0}, app_.say("results.name"));
        headline();
        if (app_.reveals()) {
            comparison();
            runs();
        } else {
            y_ += draw_withheld(app_, ui_, {area_.x, y_, area_.w, 0});
        }
        cards();
        if (app_.reveals()) working();
        ui_.close();
        return y_ - area_.y;
    }

private:
    void headline() {
        const std::string name = output_name(app_, wanted_);
        const std::string conditions = conditions_words(app_);
        const float room = area_.w - ui_.text_width(name, calm) - 20;
        y_ += ui_.heading("results.heading", 2, {area_.x, y_, area_.w, 0}, name, calm);
        const bool beside = ui_.text_width(conditions, calm) <= room;
        const float top = beside ? y_ - Ui::line_height(calm) : y_;
        const float tall = ui_.touch() ? 44.0f : 24.0f;
        const float press_width = ui_.text_width(conditions, calm) + 4;
        const Rect press{beside ? area_.x + area_.w - press_width : area_.x, top - (beside ? (tall - Ui::line_height(calm)) / 2 : 0), press_width, tall};
        if (ui_.button("results.conditions", press, conditions, Ui::ButtonLook::link, false,
                       app_.say(Message{"results.change_conditions"}.text("conditions", conditions)))) {
            app_.go(PageName::conventions);
        }
        if (!beside) y_ += tall;
        y_ += 6;
        if (!app_.reveals()) return;
        if (!app_.assessment().has(wanted_)) {
            const Type waiting{Face::regular, 20, Ink::soft};
            const std::string words = app_.shown(wanted_);
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
            ui_.output("result.headline", {area_.x, y_, wide, height}, {}, name, waiting);
            ui_.amend_value(words);
            y_ += height;
            return;
        }
        const Type large{Face::semibold, 52, Ink::text};
        const Type unit{Face::regular, 24, Ink::soft};
        const Certainty& certainty = app_.certainty();
        const bool by_doubt = app_.record().conventions.headline == Conventions::Headline::uncertainty &&
                              certainty.known() && certainty.verdict().shows_plus_minus;
        const std::string number = by_doubt ? to_its_doubt(app_, certainty.budget(), certainty.budget().value)
                                            : app_.shown_number(wanted_);
        ui_.draw_text({area_.x, y_}, number, large);
        const float width = ui_.text_width(number, large);
        const std::string_view symbol = info(app_.language().named(unit_of(wanted_))).symbol;
        ui_.draw_text({area_.x + width + 12, y_ + 24}, symbol, unit);
        const float unit_width = ui_.text_width(symbol, unit);
        ui_.output("result.headline", {area_.x, y_, width + 12 + unit_width, 56}, {}, name, large);
        ui_.amend_value(by_doubt ? to_its_doubt_with_unit(app_, certainty.budget(), certainty.budget().value)
                                 : app_.shown(wanted_));
        doubt_beside(width + 12 + unit_width + 20);
        y_ += 60;
    }

    /// The doubt on the number's own line, or below it where there is no room. It leads to where it comes from.
    void doubt_beside(float after) {
        const std::string words = app_.certainty().known() ? doubt_beside_value(app_, app_.certainty()) : std::string();
        if (words.empty()) return;
        constexpr float size = 20;
        const Type type{Face::regular, size, Ink::copper};
        const float wide = std::ceil(ui_.text_width(words, type)) + 4;
        const bool beside = after + wide <= area_.w;
        if (!beside) y_ += 56;
        const float tall = ui_.touch() ? 44.0f : 30.0f;
        const Rect rect{beside ? area_.x + after : area_.x, beside ? y_ + 38 - tall / 2 : y_, wide, tall};
        if (ui_.button("result.doubt", rect, words, Ui::ButtonLook::link, false,
                       app_.say(Message{"results.doubt"}.text("doubt", words)), size)) {
            app_.go(PageName::how_sure);
        }
        if (!beside) y_ += tall - 56;
    }

    void comparison() {
        const auto found = app_.assessment().value(wanted_);
        const auto accepted = known_value(app_.assessment(), wanted_);
        if (!found || !accepted) return;
        const double error = *found / *accepted - 1;
        const auto in_its_unit = [this](double v) { return from_base(v, unit_of(wanted_)); };
        const WorkingStep* step = app_.working().step(wanted_);
        const Certainty& certainty = app_.certainty();
        const Verdict& verdict = certainty.verdict();
        const bool banded = certainty.known() && (verdict.shows_plus_minus || verdict.by_monte_carlo);
        const int decimals = banded ? decimals_of_doubt(app_, certainty.budget()) : step->shown_decimals;
        const std::string accepted_number =
            format_fixed(in_its_unit(*accepted), std::max(decimals, 2), app_.language().decimal_sign());
        ResultScaleLabels labels;
        labels.value = app_.shown_number(wanted_);
        labels.accepted = app_.say(Message{"results.accepted"}.text("value", accepted_number));
        std::optional<ScaleBand> band;
        if (banded) {
            const CoverageInterval& interval = verdict.interval;
            band = ScaleBand{in_its_unit(interval.low), interval.open_above ? without_end : in_its_unit(interval.high)};
            labels.low = to_its_doubt(app_, certainty.budget(), interval.low);
            if (!interval.open_above) labels.high = to_its_doubt(app_, certainty.budget(), interval.high);
        }
        const std::string words = comparison_words(error, accepted_number);
        labels.description = words;
        if (banded) labels.description += ' ' + accepted_words(app_, "sure.accepted", certainty.budget());
        const Picture scale =
            draw_result_scale(in_its_unit(*found), band, in_its_unit(*accepted), labels, area_.w, 62, ui_.measure());
        ui_.picture("results.scale", {area_.x, y_}, scale);
        y_ += 68;
        const bool inside = banded && verdict.kind == Verdict::Kind::inside;
        const Type type{Face::semibold, 16, inside ? Ink::good : Ink::text};
        y_ += ui_.text("result.percent_error", {area_.x, y_, area_.w, 0}, words, type) + 12;
        const std::string caution = caution_words(app_, certainty);
        if (!caution.empty()) {
            y_ += ui_.text("result.caution", {area_.x, y_ - 6, area_.w, 0}, caution, {Face::regular, 14, Ink::warning}) + 6;
        }
    }

    /// Inside or outside the interval; without one only how far off.
    std::string comparison_words(double error, const std::string& accepted_number) const {
        const std::string verdict = verdict_words(app_, app_.certainty());
        if (!verdict.empty()) return verdict;
        return app_.say(Message{error < 0 ? "results.error_low" : "results.error_high"}
                            .text("percent", percent_error_words(app_, error, app_.record().conventions, 2))
                            .text("accepted", app_.language().with_unit(accepted_number, unit_of(wanted_)))
                            .text("kind", kind_of_known(app_, wanted_)));
    }

    /// All runs side by side, their mean and range, and what is odd between them.
    void runs() {
        const std::size_t count = app_.assessments().size();
        if (count < 2) return;
        ui_.open("results.runs", Role::group, {area_.x, y_, area_.w, 0}, app_.say("runs.name"));
        Flow flow(area_.x, y_, area_.w, 24, 18);
        for (std::size_t run = 0; run < count; ++run) {
            const std::string words = app_.say(Message{"results.run"}
                                                   .count("number", static_cast<long long>(run) + 1)
                                                   .text("value", app_.run_result(run)));
            const Type type{run == app_.run() ? Face::semibold : Face::regular, 15, Ink::text};
            const Rect rect = flow.next(std::min(std::ceil(ui_.text_width(words, type)) + 2, area_.w));
            ui_.text("results.run." + std::to_string(run), rect, words, type);
        }
        y_ = flow.bottom();
        const std::string mean = app_.mean_words();
        if (!mean.empty()) {
            y_ += ui_.text("results.mean", {area_.x, y_, area_.w, 0}, mean, {Face::semibold, 15, Ink::text});
        }
        int number = 0;
        for (const std::string& words : app_.run_remarks()) {
            y_ += 2 + ui_.text("results.remark." + std::to_string(number++), {area_.x, y_ + 2, area_.w, 0}, words,
                               {Face::regular, 14, Ink::warning});
        }
        ui_.close();
        y_ += 10;
    }

    /// With the vapour left in, what the tube holds is never called dry.
    /// The amount of gas that the result goes by: what was weighed gives it, or its own volume.
    Output gas() const {
        return is_by_volume(wanted_) ? Output::amount_by_volume : Output::amount_of_gas;
    }

    std::string card_name(Output output) const {
        const bool wet = app_.assessment().measured.setup.vapour == VapourFrom::not_subtracted;
        return output == Output::dry_gas_pressure && wet ? app_.say("output.gas_pressure_wet")
                                                         : output_name(app_, output);
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
        float right = card_height(gas(), equation, width);
        if (beside) left = right = std::max(left, right);
        pressure_card({area_.x, y_, width, left}, parts);
        if (!beside) y_ += left + 12;
        const Rect rect{beside ? area_.x + width + 22 : area_.x, y_, width, right};
        foot(rect, equation, card(rect, gas()), "results.equation");
        y_ += right + 12;
    }

    float text_height(std::string_view words, Type type, float width) const {
        return Ui::line_height(type) * static_cast<float>(ui_.lines(words, type, width).size());
    }

    /// Height of the value, or of why there is none.
    float body_height(Output output, float width) const {
        if (app_.assessment().has(output) || !app_.reveals()) return 28;
        return std::max(28.0f, text_height(app_.shown(output), card_state, width - 32) + 4);
    }

    float card_height(Output output, const Foot& below, float width) const {
        const float head = 9 + text_height(card_name(output), calm, width - 32) + 1;
        float tall = head + body_height(output, width) + 8;
        if (!below.words.empty()) tall += below.gap + text_height(below.words, below.type, width - 32) - 4;
        return std::max(104.0f, tall);
    }

    /// Name and value, or why there is none. Returns where it ends.
    float card(Rect rect, Output output) {
        ui_.fill(rect, Ink::card, 7);
        ui_.frame(rect, Ink::line, 1, 7);
        const std::string name = card_name(output);
        const float head = ui_.text("card." + std::string(name_of(output)) + ".name",
                                    {rect.x + 16, rect.y + 9, rect.w - 32, 0}, name, calm);
        const Rect body{rect.x + 16, rect.y + 10 + head, rect.w - 32, body_height(output, rect.w)};
        if (!app_.reveals()) return body.bottom();
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
        const auto worked_out = app_.assessment().value(
            app_.assessment().measured.setup.apparatus == Apparatus::pressure_sensor ? Output::dry_gas_pressure
                                                                                    : Output::pressure_at_bench);
        return worked_out ? *worked_out : app_.assessment().measured[Input::barometer];
    }

    double vapour_taken_off() const {
        return app_.assessment().value(Output::water_vapour_pressure).value_or(0.0) *
               (is_taken_off(app_.assessment().measured.setup.vapour) ? 1.0 : 0.0);
    }

    Foot pressure_parts() const {
        Foot below{{}, {Face::regular, 13, Ink::soft}, 22};
        const auto& all = app_.assessment();
        if (!all.has(Output::dry_gas_pressure) || !app_.reveals()) return below;
        const double column = all.outcome[Output::column_pressure];
        const WorkingStep& step = *app_.working().step(Output::dry_gas_pressure);
        const auto number = [&](double pascals) {
            return format_fixed(from_base(pascals, step.unit), step.decimals, app_.language().decimal_sign());
        };
        const std::string barometer = number(pressure_at_bench());
        const std::string vapour = number(vapour_taken_off());
        if (all.measured.setup.vapour == VapourFrom::none) {
            // The gas is dry, or only the rise of the pressure counts: nothing is taken off.
        } else if (all.measured.setup.vapour == VapourFrom::not_subtracted) {
            below.words = app_.say(Message{"results.parts_wet"}.text("barometer", barometer));
        } else if (column == 0) {
            const bool levels = has_column(all.measured.setup);
            below.words = app_.say(Message{levels ? "results.parts_level" : "results.parts_vapour"}
                                       .text("barometer", barometer)
                                       .text("vapour", vapour));
        } else {
            below.words = app_.say(Message{signed_column() > 0 ? "results.parts_inside" : "results.parts_outside"}
                                       .text("barometer", barometer)
                                       .text("column", number(column))
                                       .text("vapour", vapour));
        }
        return below;
    }

    Foot equation_of_reaction() const {
        Foot below{{}, {Face::regular, 15, Ink::soft}, 16};
        const Readings& readings = app_.assessment().readings;
        below.words = equation_words(app_, readings);
        if (!app_.assessment().has(gas())) below.gap = 8;
        return below;
    }

    void pressure_card(Rect rect, const Foot& parts) {
        const float y = card(rect, Output::dry_gas_pressure);
        const auto& all = app_.assessment();
        if (!all.has(Output::dry_gas_pressure) || !app_.reveals()) return;
        const Picture bar =
            draw_pressure_bar(pressure_at_bench(), signed_column(), vapour_taken_off(), rect.w - 32, 13);
        ui_.draw_picture({rect.x + 16, y + 5}, bar);
        foot(rect, parts, y, "results.parts");
    }

    void working() {
        const std::vector<Output> steps = main_steps(app_);
        const float top = y_;
        float y = top + 4;
        // The card's height follows from its rows, which are measured first.
        float height = 8;
        for (const Output output : steps) height += working_row_height(app_, ui_, area_.w - 32, output);
        ui_.fill({area_.x, top, area_.w, height}, Ink::card, 7);
        ui_.frame({area_.x, top, area_.w, height}, Ink::line, 1, 7);
        ui_.open("results.working", Role::list, {area_.x, top, area_.w, height}, app_.say("results.working"));
        int number = 0;
        for (const Output output : steps) {
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
    Output wanted_;
};

}  // namespace

float draw_results(App& app, Ui& ui, Rect area) { return Results(app, ui, area).draw(); }

}  // namespace overwater
