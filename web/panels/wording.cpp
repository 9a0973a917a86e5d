#include "web/panels/wording.hpp"

#include <algorithm>
#include <cmath>

#include "core/explain/symbols.hpp"
#include "core/explain/figures.hpp"
#include "core/explain/formula.hpp"
#include "web/app/app.hpp"

namespace overwater {

std::string choice_words(const App& app, Field field, std::string_view value) {
    // The other metal of an alloy is chosen from the same names.
    const Field named = field == Field::second_metal ? Field::metal : field;
    const std::string key = "choice." + std::string(name_of(named)) + '.' + std::string(value);
    if (field == Field::number_at_closed_end && value == "largest") {
        const Reading& capacity = app.assessment().readings[Field::tube_capacity];
        if (capacity.there) {
            return format_fixed(capacity.number.value, std::clamp(-capacity.last_place, 0, 3),
                                app.language().decimal_sign());
        }
    }
    return app.say(key);
}

std::string equation_words(const App& app, const Readings& readings) {
    // A gas that is weighed itself comes of no reaction, and an alloy of two.
    if (!readings.sample || readings.target == Target::gas_molar_mass || readings.target == Target::alloy) return {};
    const std::string_view equation = reaction(*readings.sample, readings.acid.value_or(Acid::hydrochloric)).equation;
    std::string words;
    bool coefficient = true;  // a number before a formula stays on the line
    for (std::size_t at = 0; at < equation.size(); ++at) {
        const char sign = equation[at];
        const bool digit = sign >= '0' && sign <= '9';
        if (sign == '+') {
            words += app.say("equation.plus");
        } else if (sign == '-') {
            words += app.say("equation.arrow");
            ++at;  // ">"
        } else if (digit && !coefficient) {
            words += lowered(equation.substr(at, 1));
        } else {
            // A capital letter or a bracket ends the number before the formula.
            if (coefficient && !digit && at > 0 && equation[at - 1] >= '0' && equation[at - 1] <= '9') {
                words += app.say("equation.space");
            }
            words += sign;
        }
        coefficient = sign == '+' || sign == '-' || (coefficient && digit);
    }
    return words;
}

std::string kind_of_known(const App& app, Output output) {
    const Setup& setup = app.assessment().measured.setup;
    const bool molar_volume = output == headline_output(app.record().conventions);
    return app.say(!molar_volume          ? "results.accepted_kind.known"
                   : setup.accepted_typed ? "results.accepted_kind.typed"
                   : setup.real_gas       ? "results.accepted_kind.real"
                                          : "results.accepted_kind.ideal");
}

std::string key_for_run(const App& app, std::string usual) {
    const Readings& readings = app.assessment().readings;
    if (readings.apparatus != Apparatus::tube_over_water) {
        std::string here = usual + '.' + std::string(name_of(readings.apparatus));
        if (Language::knows(here)) return here;
    }
    if (weighs_metal(readings)) return usual;
    std::string of_substance = usual + ".substance";
    return Language::knows(of_substance) ? of_substance : usual;
}

std::string field_name(const App& app, Field field) {
    return app.say(key_for_run(app, "field." + std::string(name_of(field))));
}

std::string output_name(const App& app, Output output) {
    return app.say(key_for_run(app, "output." + std::string(name_of(output))));
}

std::string step_name(const App& app, Output output) {
    const std::string key = "step." + std::string(name_of(output));
    return Language::knows(key) ? app.say(key) : output_name(app, output);
}

namespace {

SpeechWords speech_words(const App& app) {
    SpeechWords words;
    words.plus = app.say("speech.plus");
    words.minus = app.say("speech.minus");
    words.times = app.say("speech.times");
    words.divided_by = app.say("speech.divided_by");
    words.equals = app.say("speech.equals");
    words.approximately = app.say("speech.approximately");
    words.negative = app.say("speech.negative");
    words.over = app.say("speech.over");
    words.begin_fraction = app.say("speech.begin_fraction");
    words.end_fraction = app.say("speech.end_fraction");
    words.squared = app.say("speech.squared");
    words.cubed = app.say("speech.cubed");
    words.to_the_power = app.say("speech.to_the_power");
    words.root_of = app.say("speech.root_of");
    words.end_root = app.say("speech.end_root");
    words.open = app.say("speech.open");
    words.close = app.say("speech.close");
    words.symbols.emplace_back("ρ", app.say("speech.rho"));
    words.symbols.emplace_back("°", app.say("speech.standard"));
    words.symbols.emplace_back("→", app.say("speech.gives"));
    return words;
}

}  // namespace

std::string spoken_formula(const App& app, const Formula& formula) {
    // Looked up once a language: a frame speaks ten formulas and more.
    static std::string language;
    static SpeechWords words;
    if (language != app.language().tag()) {
        language = app.language().tag();
        words = speech_words(app);
    }
    return spoken(formula, words);
}

std::string conditions_words(const App& app) {
    const Conventions& conventions = app.record().conventions;
    if (conventions.conversion == Conventions::Conversion::none) return app.say("standard.as_collected");
    if (conventions.standard != StandardConditions::own) {
        return app.say("standard." +
                       std::string(standard_conditions_names[static_cast<std::size_t>(conventions.standard)]));
    }
    const auto number = [&](double value, UnitId unit) {
        return app.language().with_unit(format_significant(value, 6, app.language().decimal_sign()), unit);
    };
    return app.say(Message{"standard.own"}
                       .text("temperature", number(conventions.own_celsius, UnitId::celsius))
                       .text("pressure", number(from_base(conventions.own_pressure, UnitId::kilopascal), UnitId::kilopascal)));
}

std::string percent_error_words(const App& app, double fraction, const Conventions& conventions, int decimals) {
    const bool magnitude = conventions.percent_error == Conventions::PercentError::magnitude;
    const double value = from_base(magnitude ? std::fabs(fraction) : fraction, UnitId::percent);
    const std::string number = format_fixed(value, decimals, conventions.decimal_sign, conventions.rounding);
    return app.language().with_unit(magnitude ? number : signed_number(number, value), UnitId::percent);
}

std::string effect_words(const App& app, const Assessment& assessment, const Working& working,
                         const Conventions& conventions) {
    const Output sought = sought_output(conventions, assessment.readings.target);
    const WorkingStep* result = working.step(sought);
    if (result == nullptr) return {};
    const UnitId unit = unit_of(sought);
    const std::string number = format_fixed(from_base(result->value, unit), 4, conventions.decimal_sign, conventions.rounding);
    const std::string value = app.language().with_unit(number, unit);
    const auto error = assessment.value(Output::percent_error);
    if (!error) return app.say(Message{"conventions.effect"}.text("value", value));
    return app.say(Message{"conventions.effect_error"}.text("value", value).text(
        "error", percent_error_words(app, *error, conventions, 2)));
}

std::string limit_words(const App& app, Output output) {
    const Assessment& all = app.assessment();
    const auto limit = limiting_input(app.working().trace(), all.readings, output);
    if (!limit) return {};
    const auto number = static_cast<long long>(limit->figures);
    const Field field = limit->input == Input::count ? Field::count : field_of(limit->input);
    const std::string reading =
        field == Field::count ? output_name(app, limit->quantity) : app.say("field." + std::string(name_of(field)));
    if (field == Field::count || limit->quantity == Output::count) {
        return app.say(Message{"figures.limited_by"}.text("reading", reading).count("number", number));
    }
    return app.say(Message{"figures.limited_by_sum"}
                       .text("quantity", output_name(app, limit->quantity))
                       .text("reading", reading)
                       .count("number", number));
}

std::string signed_number(const std::string& number, double value) { return value > 0 ? '+' + number : number; }

}  // namespace overwater
