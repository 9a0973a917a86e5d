#pragma once

#include <initializer_list>
#include <string_view>
#include <utility>

#include "core/lesson/plan.hpp"

/// Plans to try, and what is said about them.

namespace overwater::test {

/// Magnesium and hydrochloric acid in a measuring tube of 50 mL, levels equal, in a room of 25 °C at 1 atm.
inline PlanSheet usual_plan() {
    PlanSheet sheet;
    const auto put = [&sheet](Field field, const char* text) { sheet.bench.edit(field).text = text; };
    put(Field::metal, "magnesium");
    put(Field::acid, "hydrochloric");
    put(Field::tube_capacity, "50 mL");
    put(Field::number_at_closed_end, "zero");
    put(Field::liquid_stands, "level");
    put(Field::temperature, "25");
    put(Field::barometer, "101.325");
    return sheet;
}

inline PlanSheet with(PlanSheet sheet, std::initializer_list<std::pair<Field, const char*>> changes) {
    for (const auto& [field, text] : changes) sheet.bench.edit(field).text = text;
    return sheet;
}
inline PlanSheet asking(PlanSheet sheet, std::initializer_list<std::pair<PlanField, const char*>> changes) {
    for (const auto& [field, text] : changes) sheet.edit(field) = text;
    return sheet;
}
inline PlanSheet with_instrument(PlanSheet sheet, Field field, const char* key) {
    sheet.bench.edit(field).instrument = key;
    return sheet;
}

inline bool says(const Plan& plan, std::string_view key) {
    for (const Message& message : plan.says) {
        if (message.key == key) return true;
    }
    return false;
}
/// A remark with this key below the field.
inline bool remarks(const Plan& plan, PlanField field, std::string_view key) {
    for (const PlanCheck& check : plan.asked.checks) {
        if (check.field == field && check.message.key == key) return true;
    }
    return false;
}
inline bool remarks(const Plan& plan, Field field, std::string_view key) {
    for (const Check& check : plan.checks) {
        if (check.field == field && check.message.key == key) return true;
    }
    return false;
}

inline bool waits_for(const Plan& plan, PlanOutput output, Field field) {
    const PlanState& state = plan.state(output);
    return state.kind == OutputState::Kind::waiting && state.waiting_for.has(field);
}
inline bool waits_for(const Plan& plan, PlanOutput output, PlanField field) {
    const PlanState& state = plan.state(output);
    for (const PlanField asked : state.waiting_for_asked) {
        if (asked == field) return state.kind == OutputState::Kind::waiting;
    }
    return false;
}
/// The key of the reason why an output is not possible; "" where it is not so.
inline std::string_view reason(const Plan& plan, PlanOutput output) {
    const PlanState& state = plan.state(output);
    return state.kind == OutputState::Kind::not_possible ? state.reason.key : std::string_view{};
}

}  // namespace overwater::test
