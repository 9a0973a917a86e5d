#include "core/quantity/number_text.hpp"

#include <array>
#include <cmath>

#include "core/quantity/plain_number.hpp"

namespace overwater {
namespace {

NumberText failed(Problem problem, std::size_t at) {
    NumberText result;
    result.state = NumberText::State::not_a_number;
    result.problem = problem;
    result.problem_at = at;
    return result;
}

struct UnitText {
    UnitId unit = UnitId::none;
    Problem problem = Problem::none;
    std::size_t at = 0;
};

/// Reads what stands before a plus-minus sign or the end as a unit; `none` if nothing stands there.
UnitText read_unit(TextReader& reader, Measure expected) {
    reader.skip_spaces();
    UnitText result;
    result.at = reader.at;
    std::size_t end = reader.at;
    while (!reader.at_end() && reader.plus_minus_signs() == 0) {
        const bool is_gap = is_space(reader.peek());
        reader.skip();
        if (!is_gap) end = reader.at;
    }
    const std::string_view typed = reader.text.substr(result.at, end - result.at);
    if (typed.empty()) return result;
    if (const auto unit = unit_by_typed_text(typed, expected)) {
        result.unit = *unit;
    } else if (is_unit_of_some_measure(typed)) {
        result.problem = Problem::wrong_kind_of_unit;
    } else {
        const char32_t first = folded(code_point_at(typed, 0).value);
        const bool is_letter = (first >= U'A' && first <= U'Z') || (first >= U'a' && first <= U'z') ||
                               (first >= 0xA1 && first != not_utf8);
        result.problem = is_letter ? Problem::unknown_unit : Problem::stray_character;
    }
    return result;
}

/// A unit after `±`: of the measure, or a percentage of the value.
UnitText read_plus_minus_unit(TextReader& reader, Measure expected) {
    const TextReader before = reader;
    const UnitText unit = read_unit(reader, expected);
    if (unit.problem != Problem::wrong_kind_of_unit) return unit;
    reader = before;
    const UnitText share = read_unit(reader, Measure::fraction);
    return share.problem == Problem::none ? share : unit;
}

/// Puts the doubt into `result`, in the unit of its value.
void set_plus_minus(NumberText& result, const PlainNumber& doubt, UnitId unit, Measure expected) {
    result.has_plus_minus = true;
    result.plus_minus = doubt.value;
    result.plus_minus_last_place = doubt.last_place();
    if (unit == UnitId::percent && expected != Measure::fraction) {
        const double size = std::fabs(result.value);
        result.plus_minus = size * (doubt.value / 100.0);
        const int first_place = size > 0.0 ? static_cast<int>(std::floor(std::log10(size))) : 0;
        result.plus_minus_last_place = doubt.last_place() - 2 + first_place;
        return;
    }
    if (result.unit == UnitId::none) result.unit = unit;
    if (unit == UnitId::none || unit == result.unit) return;
    const double ratio = info(unit).factor / info(result.unit).factor;
    result.plus_minus = doubt.value * ratio;
    result.plus_minus_last_place += static_cast<int>(std::lround(std::log10(ratio)));
}

} // namespace

NumberText parse_number(std::string_view utf8, Measure expected) {
    TextReader reader{utf8};
    for (std::size_t signs = 0; !reader.at_end(); reader.skip()) {
        if (++signs > longest_number_text) return failed(Problem::too_long, reader.at);
    }
    reader.at = 0;
    reader.skip_spaces();
    if (reader.at_end()) return {};
    const std::size_t start = reader.at;

    const bool stands_for_plus_minus = reader.plus_minus_signs() != 0;
    const bool negative = !stands_for_plus_minus && reader.accept(U'-');
    const bool has_sign = negative || (!stands_for_plus_minus && reader.accept(U'+'));
    reader.skip_spaces();
    if (has_sign && reader.at_end()) return failed(Problem::sign_alone, start);

    const PlainNumber number = read_plain_number(reader);
    if (number.problem == Problem::no_digits) {
        return reader.has_digit_left() ? failed(Problem::stray_character, number.problem_at)
                                       : failed(Problem::no_digits, start);
    }
    if (number.problem != Problem::none) return failed(number.problem, number.problem_at);

    NumberText result;
    result.state = NumberText::State::number;
    result.value = negative && number.value != 0.0 ? -number.value : number.value;
    result.last_place = number.last_place();
    result.comma_before_three_digits = number.comma_before_three_digits;
    const bool is_zero = number.leading_zeros() == number.size;
    if (!is_zero) {
        const std::size_t unsure = number.has_decimal_sign ? 0 : number.trailing_zeros();
        result.figures = static_cast<int>(number.size - number.leading_zeros() - unsure);
        result.ambiguous_zeros = unsure > 0;
    }

    const UnitText unit = read_unit(reader, expected);
    if (unit.problem != Problem::none) return failed(unit.problem, unit.at);
    result.unit = unit.unit;
    const std::size_t plus_minus_at = reader.at;
    if (reader.at_end()) return result;

    reader.skip(reader.plus_minus_signs());
    reader.skip_spaces();
    if (reader.at_end()) return failed(Problem::missing_plus_minus, plus_minus_at);
    const PlainNumber doubt = read_plain_number(reader);
    if (doubt.problem == Problem::no_digits) {
        return reader.has_digit_left() ? failed(Problem::stray_character, doubt.problem_at)
                                       : failed(Problem::missing_plus_minus, plus_minus_at);
    }
    if (doubt.problem != Problem::none) return failed(doubt.problem, doubt.problem_at);
    const UnitText doubt_unit = read_plus_minus_unit(reader, expected);
    if (doubt_unit.problem != Problem::none) return failed(doubt_unit.problem, doubt_unit.at);
    if (!reader.at_end()) return failed(Problem::stray_character, reader.at);
    set_plus_minus(result, doubt, doubt_unit.unit, expected);
    if (!std::isfinite(result.plus_minus)) return failed(Problem::too_large, plus_minus_at);
    return result;
}

std::string_view key_of(Problem problem) {
    constexpr std::array<std::string_view, static_cast<std::size_t>(Problem::count)> keys{"",
                                                                                          "no_digits",
                                                                                          "sign_alone",
                                                                                          "two_decimal_signs",
                                                                                          "unknown_unit",
                                                                                          "wrong_kind_of_unit",
                                                                                          "stray_character",
                                                                                          "too_large",
                                                                                          "too_small",
                                                                                          "too_long",
                                                                                          "missing_plus_minus"};
    const auto row = static_cast<std::size_t>(problem);
    return row < keys.size() ? keys[row] : std::string_view{};
}

} // namespace overwater
