#pragma once

#include <cmath>

#include "core/quantity/decimal.hpp"
#include "core/quantity/number_text.hpp"
#include "tests/fuzz/property.hpp"

/// Typed numbers with units. The first byte chooses the measure expected.

namespace overwater::fuzz {

inline std::string_view holds_for_number(std::string_view bytes) {
    using State = NumberText::State;
    Bytes in{bytes};
    const auto expected = static_cast<Measure>(in.choice(static_cast<unsigned>(Measure::fraction) + 1));
    const NumberText read = parse_number(in.left, expected);

    if (!std::isfinite(read.value) || !std::isfinite(read.plus_minus)) return "every number is finite";
    if (read.plus_minus < 0) return "no half-width is below zero";
    if ((read.problem != Problem::none) != (read.state == State::not_a_number)) return "what is no number says why";
    if (read.state != State::number) {
        if (read.value != 0 || read.has_plus_minus) return "what is no number has no value";
        if (read.problem_at > in.left.size()) return "the problem begins within the text";
        if (read.state == State::blank) return kept;
        return is_said("text." + std::string(key_of(read.problem))) ? kept : "each problem has its sentence";
    }
    if (read.value == 0 && std::signbit(read.value)) return "zero has no sign";
    if (read.figures < 0 || read.figures > static_cast<int>(longest_number_text)) return "figures are digits typed";
    if (read.unit != UnitId::none && info(read.unit).measure != expected) return "the unit is of the measure expected";

    // Seventeen digits tell every double from every other.
    const std::string unit = ' ' + std::string(info(read.unit).symbol);
    std::string written = machine_number(read.value, 17) + unit;
    if (read.has_plus_minus) written += " ± " + machine_number(read.plus_minus, 17) + unit;
    const NumberText again = parse_number(written, expected);
    if (again.state != State::number) return "what was read can be written and read again";
    if (again.value != read.value) return "the value comes back";
    if (again.unit != read.unit) return "the unit comes back";
    if (again.has_plus_minus != read.has_plus_minus || again.plus_minus != read.plus_minus)
        return "the half-width comes back";
    return kept;
}

}  // namespace overwater::fuzz
