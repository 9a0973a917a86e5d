#pragma once

#include <vector>

#include "core/lesson/plan_sheet.hpp"

/// Whether an output of a plan has a value, and how that of several parts comes together: what is not possible counts
/// before what waits.

namespace overwater {

/// As the state of an output of a run, which may also wait for fields of the plan.
struct PlanState : OutputState {
    std::vector<PlanField> waiting_for_asked;

    /// Nothing is missing so far.
    static PlanState settled();
    bool has_value() const { return kind == Kind::value; }

    void rule_out(const Message& why);
    void wait(FieldSet fields);
    void ask(PlanField field);
    void inherit(const OutputState& other);
    void inherit(const PlanState& other);
    /// A field whose text is of no use is waited for, or says itself why nothing is possible.
    void needs(const PlanAsked& asked, PlanField field);
    /// The model can run on this sheet, forwards and backwards.
    void needs_model(const Assessment& all);
    /// What was computed can be: a pressure above zero (Pa) and a finite result above zero.
    void must_be(double dry_pressure, double result);
};

}  // namespace overwater
