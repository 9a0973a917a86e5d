// How sure the result is: the statement, what to improve, the budget; on the right the trials.

#include <algorithm>
#include <cmath>

#include "core/quantity/gum.hpp"
#include "web/app/app.hpp"
#include "web/draw/doubt_pictures.hpp"
#include "web/panels/doubt_words.hpp"
#include "web/panels/how_sure_tables.hpp"
#include "web/panels/panels.hpp"
#include "web/panels/types.hpp"
#include "web/panels/wording.hpp"

namespace overwater {

namespace {

constexpr Type about_type{Face::regular, 14, Ink::soft};

/// What one may want to be sure of.
constexpr Output offered[] = {Output::molar_volume_standard, Output::molar_volume_bench, Output::gas_volume,
                              Output::dry_gas_pressure,      Output::amount_of_gas,      Output::gas_constant,
                              Output::molar_mass_found,      Output::purity_found,       Output::equivalent_mass,
                              Output::alloy_share,           Output::gas_molar_mass};

class HowSure {
public:
    HowSure(App& app, Ui& ui, float top) : app_(app), ui_(ui), top_(top) {}

    void draw() {
        const float margin = page_margin(ui_);
        const float inner = ui_.width() - 2 * margin;
        if (draw_withheld_page(app_, ui_, top_)) return;
        const bool wide = ui_.width() >= 1000;
        const float left = wide ? std::round(inner * 0.56f) : inner;
        area_ = {margin, top_ + 18, left, 0};
        y_ = area_.y;
        choice();
        const Certainty& certainty = app_.looked_at();
        if (!certainty.known()) {
            y_ += ui_.text("sure.waiting", {area_.x, y_, area_.w, 0},
                           app_.say(Message{"sure.waiting"}.text("state", app_.shown(app_.output_looked_at()))), about_type);
            ui_.reach(y_ + 28);
            return;
        }
        statement(certainty);
        improve(certainty);
        budget(certainty);
        if (wide) {
            area_ = {margin + left + 48, top_ + 18, ui_.width() - 2 * margin - left - 48, 0};
            y_ = area_.y;
        } else {
            y_ += 28;
        }
        trials(certainty);
        ui_.reach(ui_.lowest() + 28);
    }

private:
    /// The heading, and of which output.
    void choice() {
        y_ += ui_.heading("sure.heading", 2, {area_.x, y_, area_.w, 0}, app_.say("sure.heading"), heading_type) + 6;
        const float tall = ui_.touch() ? 44.0f : 32.0f;
        const std::string label = app_.say("sure.of");
        const float label_width = ui_.text_width(label, Type{}) + 12;
        ui_.label("sure.of.label", "sure.of", {area_.x, y_, label_width, tall}, label);
        Ui::Choice choice;
        for (const Output output : offered) {
            if (app_.assessment().state(output).kind == OutputState::Kind::not_asked) continue;
            choice.options.emplace_back(std::string(name_of(output)), output_name(app_, output));
        }
        choice.chosen = name_of(app_.output_looked_at());
        ui_.select("sure.of", {area_.x + label_width, y_, std::min(340.0f, area_.w - label_width), tall}, choice);
        y_ += tall + 12;
    }

    std::string with_unit(const Certainty& certainty, double si) const {
        return to_its_doubt_with_unit(app_, certainty.budget(), si);
    }

    /// Value and interval as they should be quoted, and what they say about the accepted value.
    void statement(const Certainty& certainty) {
        const Budget& budget = certainty.budget();
        const Verdict& verdict = certainty.verdict();
        std::string words;
        if (!verdict.shows_plus_minus) {
            const MonteCarloResult* result = certainty.result();
            if (result != nullptr) {
                words = app_.say(Message{"sure.median"}
                                     .text("median", with_unit(certainty, result->median))
                                     .text("interval", interval_words(app_, budget, verdict.interval)));
            }
        } else if (std::fabs(budget.offset) < 0.05 * budget.expanded && !verdict.by_monte_carlo) {
            words = app_.say(Message{"sure.value_even"}
                                 .text("value", to_its_doubt(app_, budget, budget.value))
                                 .text("expanded", expanded_words(app_, budget)));
        } else {
            words = app_.say(Message{"sure.value"}
                                 .text("value", with_unit(certainty, budget.value))
                                 .text("interval", interval_words(app_, budget, verdict.interval)));
        }
        if (!words.empty()) {
            const Type type{Face::semibold, 22, Ink::text};
            y_ += ui_.text("sure.statement", {area_.x, y_, area_.w, 0}, words, type) + 6;
        }
        if (const std::string said = verdict_words(app_, certainty); !said.empty()) {
            const bool inside = verdict.kind == Verdict::Kind::inside;
            y_ += ui_.text("sure.verdict", {area_.x, y_, area_.w, 0}, said,
                           {Face::semibold, 16, inside ? Ink::good : Ink::text}) + 2;
            y_ += ui_.text("sure.accepted", {area_.x, y_, area_.w, 0}, accepted_words(app_, "sure.accepted", budget),
                           about_type) + 4;
        }
        if (const std::string said = caution_words(app_, certainty); !said.empty()) {
            y_ += ui_.text("sure.caution", {area_.x, y_, area_.w, 0}, said, {Face::regular, 15, Ink::warning}) + 4;
        }
        if (std::fabs(budget.offset) >= 0.05 * budget.expanded) {
            y_ += ui_.text("sure.offset", {area_.x, y_, area_.w, 0},
                           app_.say(Message{"sure.offset"}.text("offset", with_unit(certainty, budget.offset))),
                           about_type) + 4;
        }
        y_ += 12;
    }

    void improve(const Certainty& certainty) {
        y_ += ui_.heading("sure.improve", 3, {area_.x, y_, area_.w, 0}, app_.say("sure.improve"),
                          {Face::semibold, 16, Ink::text}) + 2;
        const auto ways = improvements(app_.assessment(), certainty.budget());
        if (ways.empty()) {
            y_ += ui_.text("sure.improve.none", {area_.x, y_, area_.w, 0}, app_.say("sure.improve_none"), Type{});
        }
        int number = 0;
        for (const Improvement& way : ways) {
            y_ += ui_.text("sure.improve." + std::to_string(number++), {area_.x, y_, area_.w, 0},
                           improvement_words(app_, certainty.budget(), way), Type{}) + 4;
        }
        y_ += 14;
    }

    void budget(const Certainty& certainty) {
        const Budget& budget = certainty.budget();
        y_ += ui_.heading("sure.budget", 3, {area_.x, y_, area_.w, 0}, app_.say("sure.budget"),
                          {Face::semibold, 16, Ink::text}) + 2;
        y_ += ui_.text("sure.budget.about", {area_.x, y_, area_.w, 0}, app_.say("sure.budget_about"), about_type) + 8;
        y_ += draw_budget_table(app_, ui_, {area_.x, y_, area_.w, 0}, budget) + 10;
        const bool finite = std::isfinite(budget.degrees);
        // u with the place of its own second digit, not of U's.
        const UnitId unit = unit_of_budget(app_, budget);
        const double u = difference_from_base(budget.u, unit);
        const std::string u_words = app_.language().with_unit(
            format_fixed(u, std::max(0, decimals_of_uncertainty(u, 2)), app_.language().decimal_sign()), unit);
        Message message{finite ? "sure.combined" : "sure.combined_infinite"};
        message.text("u", u_words)
            .text("k", format_fixed(budget.k, 2, app_.language().decimal_sign()))
            .text("expanded", expanded_words(app_, budget));
        if (finite) message.text("degrees", format_fixed(std::floor(budget.degrees), 0, app_.language().decimal_sign()));
        y_ += ui_.text("sure.combined", {area_.x, y_, area_.w, 0}, app_.say(message), Type{});
    }

    void trials(const Certainty& certainty) {
        y_ += ui_.heading("sure.trials", 2, {area_.x, y_, area_.w, 0}, app_.say("sure.trials"), heading_type);
        y_ += ui_.text("sure.trials.about", {area_.x, y_ + 2, area_.w, 0}, app_.say("sure.trials_about"), about_type) + 12;
        y_ += draw_trials(app_, ui_, {area_.x, y_, area_.w, 0}, certainty);
    }

    App& app_;
    Ui& ui_;
    float top_;
    Rect area_;
    float y_ = 0;
};

}  // namespace

void draw_how_sure_page(App& app, Ui& ui, float top) { HowSure(app, ui, top).draw(); }

}  // namespace overwater
