#pragma once

#include <cmath>

#include "core/bench/readings.hpp"
#include "core/lesson/stated.hpp"
#include "tests/fuzz/property.hpp"

/// One entry of a sheet with what was put down about its doubt. Two bytes choose the field and the unit beside it; the
/// lines are the reading, its half-width, the name of the instrument, and further readings.

namespace overwater::fuzz {

/// A unit of the measure, or none.
inline UnitId unit_beside(Bytes& in, Measure measure) {
    const auto units = units_of(measure);
    const unsigned place = in.choice(static_cast<unsigned>(units.size()) + 1);
    return place == 0 ? UnitId::none : units[place - 1];
}

inline std::string_view holds_for_answer(Output output, std::string_view text) {
    const StatedAnswer answer = read_answer(output, text);
    if (answer.value.has_value() != (answer.number.state == NumberText::State::number))
        return "an answer has a value where its text is a number";
    if (answer.unit != UnitId::none && info(answer.unit).measure != info(unit_of(output)).measure)
        return "the unit of an answer is one of its step";
    return kept;
}

inline std::string_view holds_for_entry(std::string_view bytes) {
    Bytes in{bytes};
    const auto field = static_cast<Field>(in.choice(static_cast<unsigned>(first_choice)));
    Entry entry;
    entry.unit = unit_beside(in, info(field).measure);
    entry.text = in.line();
    entry.plus_minus = in.line();
    entry.instrument = in.line();
    while (!in.left.empty() && entry.repeats.size() < 20) entry.repeats.emplace_back(in.line());

    const Reading reading = read_entry(field, entry);
    const TypedDoubt& doubt = reading.doubt;
    if (!std::isfinite(reading.base)) return "a reading is finite in its base";
    if (doubt.half_width && !(std::isfinite(*doubt.half_width) && *doubt.half_width > 0))
        return "a half-width is finite and above zero";
    if (doubt.half_width && doubt.problem != Problem::none) return "a half-width that is none has no value";
    if (!std::isfinite(doubt.of_mean) || doubt.of_mean < 0) return "a doubt of a mean is finite";
    if (!std::isfinite(doubt.odd) || !std::isfinite(doubt.odd_by)) return "the odd one of several readings is finite";
    if (doubt.count < 1 || doubt.misread < 0) return "readings are counted";
    if (static_cast<std::size_t>(doubt.count + doubt.misread) > entry.repeats.size() + 1)
        return "no reading is counted twice";
    if (reading.unit >= UnitId::count) return "the unit is one";
    if (reading.there && reading.number.state != NumberText::State::number) return "only a number is a reading";
    return holds_for_answer(static_cast<Output>(bytes.size() % output_count), entry.text);
}

}  // namespace overwater::fuzz
