#include "web/panels/gap_words.hpp"

#include <algorithm>

#include "web/app/app.hpp"
#include "web/panels/doubt_words.hpp"
#include "web/panels/wording.hpp"

namespace overwater {

std::string found_words(const App& app, double si) {
    const Certainty& certainty = app.certainty();
    const int decimals = certainty.known() ? std::max(2, decimals_of_doubt(app, certainty.budget())) : 2;
    const UnitId unit = unit_of(explained_output(app.assessment()));
    return app.language().with_unit(format_fixed(from_base(si, unit), decimals, app.language().decimal_sign()), unit);
}

std::string difference_words(const App& app, double found, double accepted) {
    const double percent = 100 * (found - accepted) / accepted;
    return app.language().with_unit(signed_number(format_fixed(percent, 2, app.language().decimal_sign()), percent),
                                    UnitId::percent);
}

std::string gap_statement(const App& app, const Gap& gap) {
    const bool judged = app.certainty().verdict().kind != Verdict::Kind::no_interval;
    Message message{gap.nothing_to_explain ? "gap.nothing" : judged ? "gap.more" : "gap.unknown"};
    message.text("found", found_words(app, gap.found)).text("accepted", found_words(app, gap.accepted));
    if (!gap.nothing_to_explain) message.text("percent", difference_words(app, gap.found, gap.accepted));
    return app.say(message);
}

std::string cause_size_words(const App& app, Cause cause, double base) {
    const UnitId unit = info(cause).unit;
    return app.language().with_unit(
        format_significant(difference_from_base(base, unit), 2, app.language().decimal_sign()), unit);
}

std::string needs_words(const App& app, const Explanation& explanation) {
    if (explanation.plausibility == Plausibility::impossible) return app.say("gap.not_enough");
    return app.say(Message{"gap.needs"}
                       .text("size", cause_size_words(app, explanation.cause, explanation.size))
                       .text("usual", cause_size_words(app, explanation.cause, explanation.usual)));
}

std::string plausible_words(const App& app, const Explanation& explanation) {
    return app.say("gap.plausible." +
                   std::string(plausibility_names[static_cast<std::size_t>(explanation.plausibility)]));
}

}  // namespace overwater
