#include "core/matter/formula_signs.hpp"

#include <algorithm>

#include "core/quantity/plain_number.hpp"

namespace overwater::formula_signs {

CodePoint sign_at(std::string_view text, std::size_t at) {
    CodePoint sign = code_point_at(text, at);
    if (sign.bytes == 0) return sign;
    sign.value = folded(sign.value);
    if (sign.value == 0x2010 || sign.value == 0x2011 || sign.value == 0x2014) sign.value = U'-';  // other dashes
    return sign;
}

std::size_t sign_start(std::string_view text, std::size_t at) {
    // A code point is four bytes at the most.
    for (std::size_t back = 1; back < 4 && back <= at; ++back) {
        if (code_point_at(text, at - back).bytes > back) return at - back;
    }
    return at;
}

std::size_t after_spaces(std::string_view text, std::size_t at) {
    for (CodePoint sign = code_point_at(text, at); sign.bytes != 0 && is_space(sign.value);
         sign = code_point_at(text, at)) {
        at += sign.bytes;
    }
    return at;
}

std::optional<Digit> digit_of(char32_t sign) {
    const auto digit = [](char32_t value, Height height) { return Digit{static_cast<int>(value), height}; };
    if (is_digit(sign)) return digit(sign - U'0', Height::normal);
    if (sign >= 0x2080 && sign <= 0x2089) return digit(sign - 0x2080, Height::lowered);
    if (sign == 0xB9) return digit(1, Height::raised);
    if (sign == 0xB2) return digit(2, Height::raised);
    if (sign == 0xB3) return digit(3, Height::raised);
    if (sign == 0x2070 || (sign >= 0x2074 && sign <= 0x2079)) return digit(sign - 0x2070, Height::raised);
    return std::nullopt;
}

Number number_at(std::string_view text, std::size_t at) {
    Number number;
    number.at = at;
    while (true) {
        const CodePoint sign = sign_at(text, number.end());
        const std::optional<Digit> digit = digit_of(sign.value);
        if (!digit || (number.digits != 0 && digit->height != number.height)) return number;
        if (number.digits == 0) {
            number.height = digit->height;
            number.leading_zero = digit->value == 0;
        }
        number.value = std::min(number.value * 10 + digit->value, largest_count + 1);
        number.length += sign.bytes;
        ++number.digits;
    }
}

FormulaProblem problem_of(const Number& number) {
    if (number.leading_zero) return {FormulaProblemKind::count_zero, number.at, number.length};
    if (number.value > largest_count) return {FormulaProblemKind::count_too_large, number.at, number.length};
    return {};
}

std::size_t broken_number(std::string_view text, const Number& number, bool point_is_decimal) {
    const CodePoint next = sign_at(text, number.end());
    const bool ready_fraction =
        (next.value >= 0xBC && next.value <= 0xBE) || (next.value >= 0x2150 && next.value <= 0x215F);  // ½ and others
    if (ready_fraction) return number.length + next.bytes;
    if (number.length == 0 || number.height != Height::normal) return 0;
    const bool breaks = next.value == U'/' || next.value == 0x2044 || next.value == U',' ||
                        (next.value == U'.' && (point_is_decimal || (number.leading_zero && number.digits == 1)));
    const Number rest = number_at(text, number.end() + next.bytes);
    if (!breaks || rest.length == 0) return 0;
    return rest.end() - number.at;
}

int raised_charge_sign(char32_t sign) {
    if (sign == 0x207A) return 1;
    return sign == 0x207B ? -1 : 0;
}

bool is_dot(char32_t sign) {
    switch (sign) {
    case U'.':
    case U'*':
    case 0xB7:    // middle dot
    case 0x2022:  // bullet
    case 0x2027:  // hyphenation point
    case 0x2219:  // bullet operator
    case 0x22C5:  // dot operator
    case 0x30FB:  // katakana middle dot
    case 0xFF65: return true;
    default: return false;
    }
}

std::size_t arrow_at(std::string_view text, std::size_t at) {
    CodePoint sign = sign_at(text, at);
    switch (sign.value) {
    case 0x2192:
    case 0x2194:
    case 0x21C4:
    case 0x21CB:
    case 0x21CC:
    case 0x21D2:
    case 0x21D4:
    case 0x27F6:
    case 0x27F7:
    case 0x27F9:
    case 0x279E: return sign.bytes;
    default: break;
    }
    std::size_t end = at;
    const bool both_ways = sign.value == U'<';
    if (both_ways) end += sign.bytes, sign = sign_at(text, end);
    const char32_t shaft = sign.value;
    if (shaft != U'-' && shaft != U'=') return 0;
    while (sign.value == shaft && sign.bytes != 0) end += sign.bytes, sign = sign_at(text, end);
    if (sign.value == U'>') return end + sign.bytes - at;
    return shaft == U'=' && !both_ways ? end - at : 0;
}

StateSign state_at(std::string_view text, std::size_t at) {
    const CodePoint first = sign_at(text, at);
    if (first.value == 0x2191) return {State::evolved, first.bytes};
    if (first.value == 0x2193) return {State::precipitated, first.bytes};
    if (first.value != U'(') return {};
    std::size_t end = at + first.bytes;
    const CodePoint letter = sign_at(text, end);
    end += letter.bytes;
    State state = State::none;
    switch (letter.value) {
    case U's': state = State::solid; break;
    case U'l': state = State::liquid; break;
    case U'g': state = State::gas; break;
    case U'a': {
        const CodePoint second = sign_at(text, end);
        if (second.value != U'q') return {};
        end += second.bytes;
        state = State::aqueous;
        break;
    }
    default: return {};
    }
    const CodePoint last = sign_at(text, end);
    if (last.value != U')') return {};
    return {state, end + last.bytes - at};
}

}  // namespace overwater::formula_signs
