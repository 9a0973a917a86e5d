#include "web/panels/how_sure_tables.hpp"

#include <algorithm>
#include <cmath>

#include "web/app/app.hpp"
#include "web/draw/doubt_pictures.hpp"
#include "web/panels/doubt_words.hpp"
#include "web/panels/table.hpp"
#include "web/panels/types.hpp"

namespace overwater {

namespace {

constexpr Type name_type{};
constexpr Type number_type{Face::semibold, 16, Ink::text};
/// What is less than a thousandth changes nothing that is shown.
constexpr double least_share = 0.0005;

/// So small a bar could not be seen.
constexpr double least_bar = 0.005;

/// A contribution with two digits of its own: it may be far smaller than the whole.
std::string effect_words(const App& app, const Budget& budget, double si) {
    const UnitId unit = unit_of_budget(app, budget);
    const double value = difference_from_base(si, unit);
    return app.language().with_unit(format_significant(value, 2, app.language().decimal_sign()), unit);
}

std::string percent_words(const App& app, double share) {
    const double percent = 100 * share;
    return app.language().with_unit(format_fixed(percent, percent < 0.95 ? 1 : 0, app.language().decimal_sign()),
                                    UnitId::percent);
}

/// Told apart: what the page assumes, what a person said, what was read several times, what is published.
BarPattern pattern_of(DoubtFrom from) {
    switch (from) {
        case DoubtFrom::assumed: return BarPattern::hatched;
        case DoubtFrom::repeated: return BarPattern::striped;
        case DoubtFrom::published: return BarPattern::hollow;
        default: return BarPattern::solid;
    }
}

float draw_bars(App& app, Ui& ui, Rect area, const Budget& budget) {
    std::vector<BudgetBar> bars;
    BarLabels labels;
    std::vector<std::string> spoken;
    const auto legend = [&](BarPattern pattern, std::string_view key) {
        for (const PatternWords& there : labels.legend) {
            if (there.pattern == pattern) return;
        }
        labels.legend.push_back({pattern, app.say(key)});
    };
    for (const BudgetRow& row : budget.rows) {
        if (row.share < least_bar) continue;
        BudgetBar bar;
        bar.label = doubt_name(app, row.doubt);
        bar.share = row.share;
        bar.words = percent_words(app, row.share);
        bar.pattern = pattern_of(row.doubt.from);
        legend(bar.pattern, bar.pattern == BarPattern::hatched   ? "sure.legend.assumed"
                            : bar.pattern == BarPattern::striped ? "sure.legend.repeated"
                            : bar.pattern == BarPattern::hollow  ? "sure.legend.published"
                                                                 : "sure.legend.known");
        spoken.push_back(app.say(Message{"sure.bar"}.text("name", bar.label).text("share", bar.words)));
        bars.push_back(std::move(bar));
    }
    labels.description = app.say(Message{"sure.bars"}.text("list", app.language().list(spoken)));
    const Picture picture = draw_budget_bars(std::move(bars), labels, area.w, ui.measure());
    ui.picture("sure.bars", {area.x, area.y}, picture);
    return picture.height;
}

}  // namespace

float draw_budget_table(App& app, Ui& ui, Rect area, const Budget& budget) {
    Element table = table_of(app.say("sure.budget"),
                             {app.say("sure.column.name"), app.say("sure.column.size"), app.say("sure.column.shape"),
                              app.say("sure.column.u"), app.say("sure.column.share")});
    Element body = Element::named("tbody");
    float y = area.y + draw_bars(app, ui, area, budget) + 14;
    const float top = y;
    const std::string comma = app.say("list.comma");
    ui.draw_text({area.x, y}, app.say("sure.column.name"), small);
    ui.draw_text({area.x + area.w, y}, app.say("sure.column.u"), small, Anchor::end);
    y += 22;
    ui.rule({area.x, y}, {area.x + area.w, y}, Ink::field_edge);
    for (const BudgetRow& row : budget.rows) {
        if (row.share < least_share) continue;
        const std::string name = doubt_name(app, row.doubt);
        const std::string size = doubt_size(app, row.doubt);
        const std::string how =
            app.say("shape." + std::string(name_of(row.doubt.shape))) + comma + doubt_source(app, row.doubt);
        const std::string effect = app.say(
            Message{"doubt.plus_minus"}.text("value", effect_words(app, budget, row.contribution)));
        const float effect_width = ui.text_width(effect, number_type);
        const float room = area.w - effect_width - 16;
        float line = y + 7;
        for (const std::string& words : ui.lines(name, name_type, room)) {
            ui.draw_text({area.x, line}, words, name_type);
            line += 21;
        }
        for (const std::string& words : ui.lines(size + comma + how, small, room)) {
            ui.draw_text({area.x, line}, words, small);
            line += 18;
        }
        ui.draw_text({area.x + area.w, y + 7}, effect, number_type, Anchor::end);
        y = line + 6;
        ui.rule({area.x, y}, {area.x + area.w, y});
        body.add(table_row(name, {size, how, effect, percent_words(app, row.share)}));
    }
    table.add(std::move(body));
    ui.table("sure.budget.table", {area.x, top, area.w, y - top}, std::move(table));
    return y - area.y;
}

namespace {

/// The numbers of the trials, one below the other.
class TrialNumbers {
public:
    TrialNumbers(App& app, Ui& ui, Rect area, const Certainty& certainty)
        : app_(app), ui_(ui), area_(area), certainty_(certainty), y_(area.y) {}

    float draw() {
        const MonteCarloResult& result = *certainty_.result();
        const Budget& budget = certainty_.budget();
        Element table = table_of(app_.say("sure.trials"),
                                 {app_.say("sure.trials_column.name"), app_.say("sure.trials_column.value")});
        if (result.has_mean) {
            row("sure.mean", to_its_doubt_with_unit(app_, budget, result.mean));
            row("sure.u_of_trials", to_its_doubt_with_unit(app_, budget, result.u));
        }
        row("sure.median_name", to_its_doubt_with_unit(app_, budget, result.median));
        row("sure.symmetric", interval_words(app_, budget, result.symmetric));
        row("sure.shortest", interval_words(app_, budget, result.shortest));
        if (certainty_.verdict().shows_plus_minus) {
            row("sure.linear", interval_words(app_, budget, linear_interval(budget)));
        }
        table.add(std::move(body_));
        ui_.table("sure.trials.table", {area_.x, area_.y, area_.w, y_ - area_.y}, std::move(table));
        return y_ - area_.y;
    }

private:
    void row(std::string_view key, const std::string& value) {
        const std::string name = app_.say(key);
        const float value_width = ui_.text_width(value, number_type);
        float line = y_ + 7;
        for (const std::string& words : ui_.lines(name, name_type, std::max(120.0f, area_.w - value_width - 16))) {
            ui_.draw_text({area_.x, line}, words, name_type);
            line += 21;
        }
        ui_.draw_text({area_.x + area_.w, y_ + 7}, value, number_type, Anchor::end);
        y_ = line + 5;
        ui_.rule({area_.x, y_}, {area_.x + area_.w, y_});
        body_.add(table_row(name, {value}));
    }

    App& app_;
    Ui& ui_;
    Rect area_;
    const Certainty& certainty_;
    float y_;
    Element body_ = Element::named("tbody");
};

std::string agreement_words(const App& app, const Certainty& certainty) {
    const MonteCarloResult& result = *certainty.result();
    if (result.symmetric.open_above || !certainty.verdict().shows_plus_minus) return app.say("sure.agree_open");
    const Budget& budget = certainty.budget();
    const Agreement agreement = compared(budget, result.symmetric);
    const UnitId unit = unit_of_budget(app, budget);
    // The differences are small against the digits shown: one digit more says how small.
    const auto number = [&](double si) {
        const double value = difference_from_base(si, unit);
        return app.language().with_unit(format_significant(value, 1, app.language().decimal_sign()), unit);
    };
    return app.say(Message{agreement.to_digits_shown ? "sure.agree" : "sure.agree_not"}
                       .text("low", number(agreement.low))
                       .text("high", number(agreement.high))) +
           ' ' +
           app.say(Message{"sure.clause_8"}
                       .text("tolerance", number(agreement.tolerance))
                       .text("outcome", app.say(agreement.validated ? "sure.clause_8.yes" : "sure.clause_8.no")));
}

float draw_distribution(App& app, Ui& ui, Rect area, const Certainty& certainty) {
    const MonteCarlo& trials = *certainty.trials();
    const Budget& budget = certainty.budget();
    const UnitId unit = unit_of_budget(app, budget);
    const auto shown = [unit](double si) { return from_base(si, unit); };
    const auto counts = trials.histogram();
    const auto axis_number = [&app](double value, int decimals) {
        return format_fixed(value, decimals, app.language().decimal_sign());
    };
    const Verdict& verdict = certainty.verdict();
    HistogramView view;
    view.counts.assign(counts.begin(), counts.end());
    view.low = shown(trials.histogram_low());
    view.high = shown(trials.histogram_high());
    view.number = axis_number;
    const CoverageInterval linear = linear_interval(budget);
    CoverageInterval interval = linear;
    double value = budget.value;
    view.description = app.say("sure.trials");
    const auto accepted = app.assessment().value(Output::accepted_value);
    const bool compares = accepted && verdict.kind != Verdict::Kind::no_interval;
    if (const MonteCarloResult* result = certainty.result()) {
        interval = result->symmetric;
        if (!verdict.shows_plus_minus) value = result->median;
        Message message{compares ? "sure.histogram_accepted" : "sure.histogram"};
        message.text("median", to_its_doubt_with_unit(app, budget, result->median))
            .text("interval", interval_words(app, budget, interval));
        if (compares) message.text("accepted", to_its_doubt_with_unit(app, budget, *accepted));
        view.description = app.say(message);
    }
    view.interval_low = shown(interval.low);
    view.interval_high = interval.open_above ? without_end : shown(interval.high);
    view.value = shown(value);
    view.value_words = to_its_doubt(app, budget, value);
    view.interval_low_words = to_its_doubt(app, budget, interval.low);
    if (!interval.open_above) view.interval_high_words = to_its_doubt(app, budget, interval.high);
    if (verdict.shows_plus_minus) {
        view.curve_mean = shown(budget.value + budget.offset);
        view.curve_deviation = difference_from_base(budget.u, unit);
        view.curve_words = app.say("sure.curve");
    }
    if (compares) {
        view.accepted = shown(*accepted);
        view.accepted_words = app.say(Message{"results.accepted"}.text("value", to_its_doubt(app, budget, *accepted)));
    }
    const float tall = std::clamp(area.w * 0.42f, 200.0f, 250.0f);
    ui.picture("sure.histogram", {area.x, area.y}, draw_histogram(view, area.w, tall, ui.measure()));
    return tall;
}

}  // namespace

float draw_trials(App& app, Ui& ui, Rect area, const Certainty& certainty) {
    float y = area.y;
    if (certainty.trials() != nullptr) y += draw_distribution(app, ui, {area.x, y, area.w, 0}, certainty) + 8;
    if (certainty.result() == nullptr) {
        const std::size_t made = certainty.trials() == nullptr ? 0 : certainty.trials()->made();
        const auto number = [&](std::size_t n) {
            return format_fixed(static_cast<double>(n), 0, app.language().decimal_sign());
        };
        return y - area.y + ui.text("sure.trials.running", {area.x, y, area.w, 0},
                                    app.say(Message{"sure.trials_running"}
                                                .text("done", number(made))
                                                .text("all", number(monte_carlo_trials))),
                                    small);
    }
    y += TrialNumbers(app, ui, {area.x, y, area.w, 0}, certainty).draw() + 10;
    y += ui.text("sure.agreement", {area.x, y, area.w, 0}, agreement_words(app, certainty), small);
    return y - area.y;
}

}  // namespace overwater
