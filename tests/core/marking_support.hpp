#pragma once

#include <doctest/doctest.h>

#include <string>
#include <string_view>
#include <vector>

#include "core/lesson/marking.hpp"

/// A student's sheet to mark, and what is found on it.

namespace overwater::test {

/// Record A of the method (invented), as a sheet without answers.
inline Record sheet_a() {
    Record record;
    const auto type = [&](Field field, const char* text) { record.shared.edit(field).text = text; };
    type(Field::mass_of_metal, "0.0412");
    type(Field::metal, "magnesium");
    type(Field::acid, "hydrochloric");
    type(Field::number_at_closed_end, "largest");
    type(Field::tube_capacity, "50");
    type(Field::end_space, "2.35");
    type(Field::scale_reading, "9.15");
    type(Field::level_difference, "112");
    type(Field::liquid_stands, "higher_inside");
    type(Field::temperature, "21.4");
    type(Field::barometer, "99.62");
    return record;
}

inline void answer(std::vector<Answer>& answers, std::string_view step, const char* text, UnitId unit = UnitId::none) {
    Answer one;
    one.step = std::string(step);
    one.text = text;
    one.unit = unit;
    answers.push_back(one);
}

/// The step with this name, of the run or of the whole sheet.
inline const MarkedStep& step(const MarkedSheet& sheet, std::string_view name, int run = 0) {
    for (const MarkedStep& marked : sheet.steps) {
        if (step_name(marked.step) == name && (marked.step.run == run || marked.step.run < 0)) return marked;
    }
    FAIL("no step " << name);
    return sheet.steps.front();
}

/// The first slip of the likeliest explanation.
inline std::string slip_in(const MarkedStep& marked) {
    if (marked.finding.explanations.empty()) return "";
    return std::string(slip_table[marked.finding.explanations.front().slips.slips[0]].name);
}

}  // namespace overwater::test
