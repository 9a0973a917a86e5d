#pragma once

#include <cmath>

#include "core/record/outcome_json.hpp"
#include "tests/fuzz/entry.hpp"

/// A whole run of absurd readings. Two bytes choose conventions; each line is an entry: a byte for the field, one for the
/// unit beside it, the text.

namespace overwater::fuzz {

inline std::string_view holds_for_outcome(std::string_view bytes) {
    Bytes in{bytes};
    Record record;
    record.conventions.vapour = static_cast<Conventions::Vapour>(in.choice(5));
    record.conventions.accepted = static_cast<Conventions::Accepted>(in.choice(3));
    while (!in.left.empty()) {
        const auto field = static_cast<Field>(in.choice(static_cast<unsigned>(field_count)));
        Entry& entry = record.shared.edit(field);
        entry.unit = is_choice(field) ? UnitId::none : unit_beside(in, info(field).measure);
        entry.text = in.line();
    }
    const std::vector<Assessment> assessed = assess_runs(record);
    for (std::size_t i = 0; i < output_count; ++i) {
        const auto output = static_cast<Output>(i);
        const OutputState& state = assessed.front().state(output);
        const auto value = assessed.front().value(output);
        if (value.has_value() != (state.kind == OutputState::Kind::value)) return "a value is there or it is not";
        if (value && !std::isfinite(*value)) return "every value is finite";
        if (state.kind == OutputState::Kind::not_possible && !is_said(state.reason)) return "each reason is said";
    }
    for (const Check& check : assessed.front().checks) {
        if (!is_said(check.message)) return "each remark has its sentence";
        for (const Argument& argument : check.message.arguments) {
            if (!std::isfinite(argument.base)) return "each number in a sentence is finite";
        }
    }
    return kept;
}

}  // namespace overwater::fuzz
