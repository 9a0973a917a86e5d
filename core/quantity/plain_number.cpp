#include "core/quantity/plain_number.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "core/quantity/decimal.hpp"

namespace overwater {
namespace {

constexpr int largest_exponent = 99999; // beyond every double, and far from the ends of int

char as_char(char32_t digit) { return static_cast<char>(digit); }

/// The digit that a raised one stands for; nothing for another sign.
std::optional<int> raised_digit(char32_t sign) {
    switch (sign) {
    case 0x2070: return 0;
    case 0xB9: return 1;
    case 0xB2: return 2;
    case 0xB3: return 3;
    default: break;
    }
    if (sign >= 0x2074 && sign <= 0x2079) return static_cast<int>(sign - 0x2070);
    return std::nullopt;
}

/// A decimal sign or group sign of the kind point or comma, and how many digits stand before it.
struct Separator {
    char32_t kind;
    std::size_t digits_before;
    std::size_t at;
};

struct Separators {
    std::array<Separator, longest_number_text> items{};
    std::size_t size = 0;
};

/// Whether a space or an apostrophe here parts groups of three: exactly three digits follow, and what stands before
/// is a whole group (of one to three digits where the number begins).
bool is_group_sign(const TextReader& reader, std::size_t digits_since, bool first_group, bool after_decimal_sign) {
    const char32_t sign = reader.peek();
    if (!is_space(sign) && sign != U'\'') return false;
    const bool whole = first_group && !after_decimal_sign ? digits_since >= 1 && digits_since <= 3 : digits_since == 3;
    return whole && is_digit(reader.peek(1)) && is_digit(reader.peek(2)) && is_digit(reader.peek(3)) &&
           !is_digit(reader.peek(4));
}

Separators read_digits(TextReader& reader, PlainNumber& plain) {
    Separators separators;
    std::size_t group_start = 0;
    bool first_group = true;
    while (!reader.at_end()) {
        const char32_t sign = reader.peek();
        if (is_digit(sign)) {
            plain.digits[plain.size++] = as_char(sign);
        } else if (sign == U'.' || sign == U',') {
            separators.items[separators.size++] = {sign, plain.size, reader.at};
            group_start = plain.size;
            first_group = true;
        } else if (is_group_sign(reader, plain.size - group_start, first_group, separators.size > 0)) {
            group_start = plain.size;
            first_group = false;
        } else {
            break;
        }
        reader.skip();
    }
    return separators;
}

/// Whether the first `count` separators part whole groups of three, the last of which ends after `end` digits.
bool part_groups_of_three(const Separators& separators, std::size_t count, std::size_t end, const PlainNumber& plain) {
    const std::size_t first = separators.items[0].digits_before;
    if (first < 1 || first > 3 || plain.digits[0] == '0') return false;
    for (std::size_t i = 0; i < count; ++i) {
        const std::size_t next = i + 1 < count ? separators.items[i + 1].digits_before : end;
        if (next - separators.items[i].digits_before != 3) return false;
    }
    return true;
}

/// Decides which separator is the decimal sign.
void place_decimal_sign(const Separators& separators, PlainNumber& plain) {
    if (separators.size == 0) return;
    const Separator& last = separators.items[separators.size - 1];
    const std::size_t digits_after = plain.size - last.digits_before;
    if (separators.size == 1) {
        plain.has_decimal_sign = true;
        plain.decimals = digits_after;
        plain.comma_before_three_digits = last.kind == U',' && digits_after == 3 && last.digits_before >= 1 &&
                                          last.digits_before <= 3 && plain.digits[0] != '0';
        return;
    }
    std::size_t of_first_kind = 0;
    for (std::size_t i = 0; i < separators.size; ++i) {
        of_first_kind += separators.items[i].kind == separators.items[0].kind ? 1u : 0u;
    }
    const bool groups_only = of_first_kind == separators.size;
    const bool groups_then_decimal = of_first_kind == separators.size - 1 && last.kind != separators.items[0].kind;
    const bool agree = groups_only ? part_groups_of_three(separators, separators.size, plain.size, plain)
                                   : groups_then_decimal && part_groups_of_three(separators, separators.size - 1,
                                                                                 last.digits_before, plain);
    if (!agree) return plain.fail(Problem::two_decimal_signs, separators.items[1].at);
    if (groups_then_decimal) {
        plain.has_decimal_sign = true;
        plain.decimals = digits_after;
    }
}

/// Reads `[sign] digits`, raised or not, as an exponent; nothing if it does not stand there.
std::optional<int> read_exponent(TextReader& reader, bool raised) {
    TextReader ahead = reader;
    const bool negative = ahead.accept(raised ? 0x207B : U'-');
    if (!negative) ahead.accept(raised ? 0x207A : U'+');
    int exponent = 0;
    bool any = false;
    while (!ahead.at_end()) {
        const char32_t sign = ahead.peek();
        std::optional<int> digit = raised_digit(sign);
        if (!raised) digit = is_digit(sign) ? std::optional<int>(static_cast<int>(sign - U'0')) : std::nullopt;
        if (!digit) break;
        exponent = std::min(largest_exponent, exponent * 10 + *digit);
        any = true;
        ahead.skip();
    }
    if (!any) return std::nullopt;
    reader = ahead;
    return negative ? -exponent : exponent;
}

/// Reads `e-2`, `×10⁻²`, `x 10^-2`, if one of them stands here.
void read_power_of_ten(TextReader& reader, PlainNumber& plain) {
    TextReader ahead = reader;
    std::optional<int> exponent;
    if (ahead.accept(U'e') || ahead.accept(U'E')) {
        exponent = read_exponent(ahead, false);
    } else {
        ahead.skip_spaces();
        bool is_times = false;
        for (const char32_t sign : {U'x', U'X', U'*', U'\u00D7', U'\u00B7', U'\u22C5'}) {
            is_times = is_times || ahead.accept(sign);
        }
        ahead.skip_spaces();
        if (!is_times || !ahead.accept(U'1') || !ahead.accept(U'0')) return;
        exponent = ahead.accept(U'^') ? read_exponent(ahead, false) : read_exponent(ahead, true);
    }
    if (!exponent) return;
    plain.exponent = *exponent;
    reader = ahead;
}

/// The double nearest to the digits.
void settle_value(PlainNumber& plain, std::size_t start) {
    const double value = nearest_double({plain.digits.data(), plain.size}, plain.last_place());
    const bool is_zero = plain.leading_zeros() == plain.size;
    if (!std::isfinite(value)) return plain.fail(Problem::too_large, start);
    if (value == 0.0 && !is_zero) return plain.fail(Problem::too_small, start);
    plain.value = value;
}

} // namespace

char32_t folded(char32_t sign) {
    if (sign >= 0xFF01 && sign <= 0xFF5E) sign -= 0xFEE0;             // full-width forms
    if (sign >= 0x660 && sign <= 0x669) return U'0' + (sign - 0x660); // Arabic-Indic digits
    if (sign >= 0x6F0 && sign <= 0x6F9) return U'0' + (sign - 0x6F0); // Extended Arabic-Indic digits
    switch (sign) {
    case 0x2012:
    case 0x2013:
    case 0x2212: return U'-';
    case 0x66B: return U'.'; // Arabic decimal separator
    case 0x66C:              // Arabic thousands separator
    case 0x2019: return U'\'';
    default: return sign;
    }
}

PlainNumber read_plain_number(TextReader& reader) {
    PlainNumber plain;
    const std::size_t start = reader.at;
    const Separators separators = read_digits(reader, plain);
    if (plain.size == 0) {
        plain.fail(Problem::no_digits, start);
        return plain;
    }
    place_decimal_sign(separators, plain);
    read_power_of_ten(reader, plain);
    if (plain.problem == Problem::none) settle_value(plain, start);
    return plain;
}

} // namespace overwater
