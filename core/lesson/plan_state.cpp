#include "core/lesson/plan_state.hpp"

#include <algorithm>
#include <cmath>

namespace overwater {

PlanState PlanState::settled() {
    PlanState state;
    state.kind = Kind::value;
    return state;
}

void PlanState::rule_out(const Message& why) {
    if (kind == Kind::not_possible) return;
    kind = Kind::not_possible;
    reason = why;
}

void PlanState::wait(FieldSet fields) {
    waiting_for = waiting_for | fields;
    if (kind != Kind::not_possible) kind = Kind::waiting;
}

void PlanState::ask(PlanField field) {
    wait({});
    if (std::find(waiting_for_asked.begin(), waiting_for_asked.end(), field) == waiting_for_asked.end()) {
        waiting_for_asked.push_back(field);
    }
}

void PlanState::inherit(const OutputState& other) {
    if (other.kind == Kind::not_possible) rule_out(other.reason);
    if (other.kind == Kind::waiting) wait(other.waiting_for);
}

void PlanState::inherit(const PlanState& other) {
    inherit(static_cast<const OutputState&>(other));
    for (const PlanField field : other.waiting_for_asked) ask(field);
}

void PlanState::needs(const PlanAsked& asked, PlanField field) {
    if (asked.usable(field)) return;
    for (const PlanCheck& check : asked.checks) {
        if (check.field == field && check.weight == Check::Weight::refusal) return rule_out(check.message);
    }
    ask(field);
}

void PlanState::needs_model(const Assessment& all) {
    inherit(all.state(Output::amount_by_volume));
    inherit(all.state(Output::amount_of_gas));
    // A scale with 0 at the closed end can be read without it, but not planned for.
    constexpr Field capacity = Field::tube_capacity;
    if (!all.measured.setup.present.has(capacity)) wait(FieldSet::of(capacity));
    for (const Check& check : all.checks) {
        if (check.field == capacity && check.weight == Check::Weight::refusal) rule_out(check.message);
    }
}

void PlanState::must_be(double dry_pressure, double result) {
    if (!(dry_pressure > 0)) return rule_out(Message{"refusal.no_dry_pressure"});
    if (!std::isfinite(result) || !(result > 0)) rule_out(Message{"refusal.out_of_range"});
}

}  // namespace overwater
