#pragma once

#include <cstddef>
#include <cstdint>
#include <string_view>

#include "core/quantity/unit_table.hpp"

/// What a person typed, read as a number.
///
/// Grammar (white space of any kind may stand between the parts and around them):
///
///     text     = [ signed [ unit ] [ pm plain [ unit ] ] ]
///     signed   = [ "+" | minus ] plain
///     plain    = mantissa [ exponent ]
///     mantissa = digits, at most one decimal sign, group signs
///     exponent = ("e" | "E") [sign] digits  |  times "10" ( "^" [sign] digits | raised sign and digits )
///     times    = "x" | "X" | "*" | U+00D7 | U+00B7 | U+22C5
///     pm       = U+00B1 | "+/-" | "+-"
///
/// - Minus: ASCII hyphen, U+2212, and the dashes U+2012, U+2013. Digits: ASCII, full-width, Arabic-Indic (both sets).
/// - Decimal sign: point or comma, whatever the language of the machine. Where both stand, or one of them stands more
/// than
///   once, the last kind is decimal if it stands once and the other groups by threes (`1,013.25`, `1.013,25`,
///   `1,013,250`); else `two_decimal_signs`. A single comma before exactly three digits is read as decimal and flagged
///   (`comma_before_three_digits`): the caller knows which reading is possible and asks.
/// - Group sign: a space of any width or an apostrophe, between groups of exactly three digits.
/// - Unit: see `unit_by_typed_text`. A unit after `±` may differ from the first (`0.0412 g ± 0.1 mg`, `3.0 ± 5 %`).
/// - Length: at most 64 code points (`too_long`).
/// - Range: the value is the double nearest to the decimal text, denormal numbers included; beyond the largest double
/// is
///   `too_large`, a nonzero text that would become 0 is `too_small`. No NaN and no infinity ever comes out.
/// - Nothing else is accepted: no hexadecimal, no `inf`, no brackets, no signs inside.
/// - Any bytes may be given; bytes that are not UTF-8 are a stray character. Nothing is thrown, nothing allocated.

namespace overwater {

/// Why a text is no number. Each value has a key by `key_of` and a sentence in the catalogue.
enum class Problem : std::uint8_t {
    none,
    no_digits,          ///< nothing that could be a number: `abc`, `mL`, `,`
    sign_alone,         ///< `-` while the number is still being typed
    two_decimal_signs,  ///< `0.03.90`, `1,01.5`
    unknown_unit,       ///< `36.8 mK3`
    wrong_kind_of_unit, ///< `36.8 kPa` for a volume
    stray_character,    ///< something between or after the parts that has no meaning there
    too_large,          ///< beyond the range of a double
    too_small,          ///< not zero, but nearer to zero than any double
    too_long,           ///< more than 64 code points
    missing_plus_minus, ///< `36.8 ±` with nothing after it
    count
};

struct NumberText {
    enum class State : std::uint8_t { blank, number, not_a_number };

    State state = State::blank;
    Problem problem = Problem::none;
    double value = 0.0; ///< in the unit typed, or plain; meaningful only in the state `number`

    /// Significant figures as schools count them: leading zeros never, zeros at the end only after a decimal sign
    /// (0.0390 -> 3, 9.10 -> 3, 1200 -> 2 and `ambiguous_zeros`). A zero has no first figure: 0, whatever its places.
    int figures = 0;
    bool ambiguous_zeros = false; ///< zeros at the end without a decimal sign: they may have been read or not
    int last_place = 0;           ///< power of ten of the last digit typed: -4 for 0.0390, 0 for 1200

    UnitId unit = UnitId::none; ///< `none` if no unit was typed

    bool has_plus_minus = false;
    double plus_minus = 0.0;       ///< in the same unit as `value`, not negative
    int plus_minus_last_place = 0; ///< power of ten of its last digit, in the unit of `value`

    bool comma_before_three_digits = false; ///< `1,013`: read as 1.013 here, could be meant as 1013

    std::size_t problem_at = 0; ///< byte offset into the text where the problem begins
};

/// Longest text read, in code points.
inline constexpr std::size_t longest_number_text = 64;

/// Reads `utf8` as a number with an optional unit of the measure `expected` (grammar above). Only white space: `blank`.
NumberText parse_number(std::string_view utf8, Measure expected);

/// The name of a problem in message keys: "no_digits", "too_large" ...; "" for `none`.
std::string_view key_of(Problem problem);

} // namespace overwater
