#include "web/panels/practice_words.hpp"

#include "web/app/app.hpp"
#include "web/panels/wording.hpp"

namespace overwater {

std::string practice_kind_words(const Language& language, const PracticeSettings& settings) {
    const auto named = [&](std::string_view group, std::string_view name) {
        return language.say(std::string(group) + std::string(name));
    };
    return language.say(
        Message{"practice.kind"}
            .text("difficulty", named("practice.difficulty.", name_of(settings.difficulty)))
            .text("standard", named("conventions.standard.",
                                    standard_conditions_names[static_cast<std::size_t>(settings.standard)]))
            .text("vapour", named("practice.vapour.", name_of(settings.vapour)))
            .text("release", named("practice.release.", name_of(settings.release))));
}

std::string mishap_words(const Language& language, const Mishap& mishap) {
    const UnitId unit = info(mishap.cause).unit;
    // A difference of temperatures has no offset.
    const double size = difference_from_base(mishap.size, unit);
    const std::string shown = language.with_unit(format_significant(size, 2, language.decimal_sign()), unit);
    const bool one = mishap.run >= 0;
    Message message{one ? "practice.mishap_one" : "practice.mishap_all"};
    message.text("cause", language.say("cause." + std::string(name_of(mishap.cause))));
    message.text("size", shown);
    message.text("way", language.say(mishap.sign > 0 ? "practice.too_high" : "practice.too_low"));
    if (one) message.count("run", mishap.run + 1);
    return language.say(message);
}

std::string typed_words(const App& app, Field field) {
    const Reading& reading = app.assessment().readings[field];
    const std::string& text = app.entry(field).text;
    // A unit that was typed stands there already.
    const bool number_alone = reading.there && reading.number.unit == UnitId::none;
    return number_alone ? Language::as_typed(text, app.unit_of(app.entry(field), reading.unit)) : text;
}

}  // namespace overwater
