#include "web/panels/plan_words.hpp"

#include <algorithm>

#include "core/quantity/number_format.hpp"
#include "web/app/app.hpp"
#include "web/panels/doubt_words.hpp"

namespace overwater {

std::string reading_words(const App& app, const Entries& sheet, Field field, bool with_unit) {
    const Reading reading = read_entry(field, sheet.at(field));
    if (!reading.there) return {};
    const std::string number = format_fixed(from_base(reading.base, reading.unit), std::max(0, -reading.last_place),
                                            app.language().decimal_sign());
    return with_unit ? app.language().with_unit(number, reading.unit) : number;
}

std::string withheld_words(const App& app, const Plan& plan, PlanOutput output) {
    const PlanState& state = plan.state(output);
    if (state.kind == OutputState::Kind::not_possible) {
        return app.say(Message{"state.not_possible"}.text("reason", app.say(state.reason)));
    }
    if (state.kind != OutputState::Kind::waiting) return {};
    std::vector<std::string> names;
    for (std::size_t i = 0; i < field_count; ++i) {
        const auto field = static_cast<Field>(i);
        if (state.waiting_for.has(field)) names.push_back(app.say("field." + std::string(name_of(field))));
    }
    for (const PlanField field : state.waiting_for_asked) {
        if (field != PlanField::consent) names.push_back(app.say(label_of(field)));
    }
    return names.empty() ? std::string()
                         : app.say(Message{"state.waiting"}.text("readings", app.language().list(names)));
}

std::string cheapest_words(const App& app, const Plan& plan) {
    if (!plan.has(PlanOutput::doubt) || !plan.cheapest) return {};
    return app.say(Message{"plan.cheapest"}.text(
        "improvement", improvement_words(app, plan.budget, plan.improvements[*plan.cheapest])));
}

}  // namespace overwater
