#include "web/panels/doubt_words.hpp"

#include <algorithm>
#include <cmath>

#include "core/quantity/gum.hpp"
#include "core/quantity/units.hpp"
#include "core/result/known_value.hpp"
#include "web/app/app.hpp"
#include "web/panels/wording.hpp"

namespace overwater {

namespace {

/// The unit a deviation of this input is shown in: that of the reading, else one that is usual.
UnitId unit_of_input(const App& app, Input input) {
    const Field field = field_of(input);
    switch (input) {
        case Input::molar_mass: return UnitId::gram_per_mole;
        case Input::meniscus_ring: return UnitId::millilitre;
        case Input::vapour_value: return UnitId::pascal;
        case Input::gravity: return UnitId::none;
        default: break;
    }
    if (field == Field::count) return UnitId::none;
    const Reading& reading = app.assessment().readings[field];
    return reading.there && info(reading.unit).measure == info(field).measure ? reading.unit : info(field).usual_unit;
}

std::string number_of_doubt(const App& app, double in_unit) {
    return format_fixed(in_unit, decimals_of_half_width(in_unit), app.language().decimal_sign());
}

}  // namespace

UnitId unit_of_budget(const App& app, const Budget& budget) {
    return shown_unit(budget.output, app.assessment().readings, app.record().conventions);
}

int decimals_of_doubt(const App& app, const Budget& budget) {
    return std::max(0, decimals_of_uncertainty(difference_from_base(budget.expanded, unit_of_budget(app, budget)), 2));
}

std::string to_its_doubt(const App& app, const Budget& budget, double si) {
    return format_fixed(from_base(si, unit_of_budget(app, budget)), decimals_of_doubt(app, budget),
                        app.language().decimal_sign(), app.record().conventions.rounding);
}

std::string to_its_doubt_with_unit(const App& app, const Budget& budget, double si) {
    return app.language().with_unit(to_its_doubt(app, budget, si), unit_of_budget(app, budget));
}

std::string expanded_words(const App& app, const Budget& budget) {
    const UnitId unit = unit_of_budget(app, budget);
    const double rounded = rounded_uncertainty(difference_from_base(budget.expanded, unit));
    return app.language().with_unit(format_fixed(rounded, decimals_of_doubt(app, budget), app.language().decimal_sign()),
                                    unit);
}

std::string interval_words(const App& app, const Budget& budget, const CoverageInterval& interval) {
    const std::string low = to_its_doubt(app, budget, interval.low);
    if (interval.open_above) {
        return app.say(Message{"doubt.interval_open"}.text("low", app.language().with_unit(low, unit_of_budget(app, budget))));
    }
    return app.say(Message{"doubt.interval"}.text("low", low).text(
        "high", to_its_doubt_with_unit(app, budget, interval.high)));
}

std::string doubt_beside_value(const App& app, const Certainty& certainty) {
    const Budget& budget = certainty.budget();
    const Verdict& verdict = certainty.verdict();
    const bool even = std::fabs(budget.offset) < 0.05 * budget.expanded;
    if (even && verdict.shows_plus_minus && !verdict.by_monte_carlo) {
        return app.say(Message{"doubt.plus_minus"}.text("value", expanded_words(app, budget)));
    }
    // Without a denominator the linear interval says nothing, so nothing is said until the trials are done.
    if (!verdict.shows_plus_minus && !verdict.by_monte_carlo) return {};
    return app.say(Message{"doubt.at_95"}.text("interval", interval_words(app, budget, verdict.interval)));
}

std::string doubt_name(const App& app, const Doubt& doubt) {
    const Field field = field_of(doubt.input);
    const std::string kind = "doubt.kind." + std::string(name_of(doubt.kind));
    switch (doubt.kind) {
        case DoubtKind::reading:
            if (doubt.input == Input::scale_reading || doubt.input == Input::start_reading) {
                return app.say(Message{"doubt.kind.scale_reading"}.text("reading", field_name(app, field)));
            }
            return field_name(app, field);
        case DoubtKind::scatter:
            return app.say(Message{"doubt.kind.scatter"}
                               .text("reading", field_name(app, field))
                               .count("number", static_cast<long long>(std::lround(doubt.degrees)) + 1));
        case DoubtKind::not_measured: return app.say(Message{"doubt.kind.not_measured"}.text("reading", field_name(app, field)));
        default: return app.say(kind);
    }
}

std::string doubt_size(const App& app, const Doubt& doubt) {
    const UnitId unit = unit_of_input(app, doubt.input);
    const auto in_unit = [unit](double base) {
        return unit == UnitId::none ? base : difference_from_base(base, unit);
    };
    const auto with_unit = [&](const std::string& number) {
        return unit == UnitId::none ? number : app.language().with_unit(number, unit);
    };
    // Two rings of liquid are missing in the gas: that is what a person can picture.
    const double times = doubt.input == Input::meniscus_ring ? 2.0 : 1.0;
    if (doubt.low == -doubt.high) {
        return app.say(Message{"doubt.plus_minus"}.text(
            "value", with_unit(number_of_doubt(app, times * in_unit(doubt.high)))));
    }
    const std::string low = doubt.low == 0 ? "0" : number_of_doubt(app, times * in_unit(doubt.low));
    return app.say(Message{"doubt.interval"}.text("low", low).text(
        "high", with_unit(number_of_doubt(app, times * in_unit(doubt.high)))));
}

std::string doubt_source(const App& app, const Doubt& doubt) {
    if (doubt.from == DoubtFrom::instrument) {
        const Instrument* instrument = app.assessment().readings[field_of(doubt.input)].doubt.instrument;
        if (instrument != nullptr) return app.say("instrument." + std::string(instrument->key));
    }
    return app.say("doubt.from." + std::string(name_of(doubt.from)));
}

std::string verdict_words(const App& app, const Certainty& certainty) {
    const Verdict& verdict = certainty.verdict();
    const Output output = certainty.budget().output;
    const auto known = known_value(app.assessment(), output);
    if (verdict.kind == Verdict::Kind::no_interval || !known) return {};
    if (!verdict.shows_plus_minus && verdict.preliminary) return {};
    const std::string percent = percent_error_words(app, certainty.budget().value / *known - 1, app.record().conventions, 2);
    if (verdict.kind == Verdict::Kind::inside) return app.say(Message{"verdict.inside"}.text("percent", percent));
    const std::string by = to_its_doubt_with_unit(app, certainty.budget(), verdict.outside_by);
    return app.say(Message{verdict.kind == Verdict::Kind::found_too_high ? "verdict.found_too_high" : "verdict.found_too_low"}
                       .text("by", by)
                       .text("percent", percent));
}

std::string accepted_words(const App& app, std::string_view key, const Budget& budget) {
    const auto accepted = known_value(app.assessment(), budget.output);
    if (!accepted) return {};
    // Never fewer than two decimals: 22.7 would hide which accepted value it is.
    const UnitId unit = unit_of_budget(app, budget);
    const std::string number = format_fixed(from_base(*accepted, unit), std::max(2, decimals_of_doubt(app, budget)),
                                            app.language().decimal_sign());
    return app.say(Message{key}
                       .text("accepted", app.language().with_unit(number, unit))
                       .text("kind", kind_of_known(app, budget.output)));
}

std::string caution_words(const App& app, const Certainty& certainty) {
    const Caution caution = certainty.caution();
    if (caution == Caution::none || !certainty.known()) return {};
    const BudgetRow& first = certainty.budget().rows.front();
    const std::string name = doubt_name(app, first.doubt);
    if (caution == Caution::one_input) {
        return app.say(Message{"caution.one_input"}.text("name", name).quantity("share", first.share, UnitId::percent, 0));
    }
    if (caution == Caution::no_denominator) {
        const Input input = first.doubt.input;
        const bool balance =
            input == Input::mass_of_metal || input == Input::mass_before || input == Input::mass_after;
        if (balance) return app.say("caution.balance");
        return app.say(Message{"caution.no_denominator"}.text("name", name));
    }
    return app.say("caution.disagrees");
}

std::string improvement_words(const App& app, const Budget& budget, const Improvement& improvement) {
    using Way = Improvement::Way;
    Message message{""};
    const Field field = field_of(improvement.input);
    switch (improvement.way) {
        case Way::finer_instrument:
            message = Message{"improve.finer"}.text("instrument", app.say("instrument." + std::string(improvement.better->key)));
            break;
        case Way::measure_it:
            message = Message{"improve.measure"}.text("reading", field_name(app, field));
            break;
        case Way::ribbon_by_length: message = Message{"improve.ribbon"}; break;
        case Way::more_metal: message = Message{"improve.more_metal"}; break;
        case Way::read_again:
            message = Message{"improve.again"}.text("reading", field_name(app, field));
            break;
    }
    const UnitId unit = unit_of_budget(app, budget);
    const int decimals = std::max(0, decimals_of_uncertainty(difference_from_base(improvement.expanded, unit), 2));
    Message gain{"improve.bring"};
    gain.text("now", to_its_doubt(app, budget, budget.expanded))
        .text("then", app.language().with_unit(
                          format_fixed(difference_from_base(improvement.expanded, unit),
                                       std::max(decimals, decimals_of_doubt(app, budget)), app.language().decimal_sign()),
                          unit));
    return app.say(message) + ' ' + app.say(gain);
}

}  // namespace overwater
