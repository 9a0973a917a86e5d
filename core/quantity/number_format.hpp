#pragma once

#include <cstdint>
#include <string>

/// Numbers as text. Every rounding starts from the decimal text of the number with 15 significant digits, not from its
/// binary value: a typed 2.675 is 2.67499999999999982 inside, and a person who rounds it half up gets 2.68. Fifteen
/// digits are what every typed decimal survives, and they wipe out the last-bit noise of a short calculation (5e-5
/// - 9.15e-6 + 2.3e-6 is a tie at 43.15 mL, as on paper). No locale and no stream takes part.

namespace overwater {

enum class DecimalSign : std::uint8_t { point, comma };

/// What happens to a tie: away from zero (most classrooms), or to the even digit (ISO 80000-1:2009 Annex B rule A, ASTM
/// E29).
enum class Rounding : std::uint8_t { half_up, half_to_even };

/// `value` with `decimals` digits after the decimal sign: 2.675, 2 -> "2.68". Negative `decimals` round to tens,
/// hundreds ... Minus is U+2212; a result that rounds to zero has no minus. From 10^15 on, where the digits would be
/// invented, it is written with a power of ten. NaN and infinity give an empty text.
std::string format_fixed(double value, int decimals, DecimalSign sign, Rounding rounding = Rounding::half_up);

/// `value` with `figures` significant digits (1 to 15, clamped): 0.03899, 3 -> "0.0390". Below 10^-4, and from 10^6 on
/// where zeros would have to be filled in, with a power of ten: "1.2 × 10⁻⁷". Zero is "0". NaN and infinity give an
/// empty text.
std::string format_significant(double value, int figures, DecimalSign sign, Rounding rounding = Rounding::half_up);

/// A formatted number without the zeros at the end of its decimals, nor a sign that nothing follows: "25.400" -> "25.4".
std::string without_end_zeros(std::string number, DecimalSign sign);

/// `value` rounded to a multiple of 10^`place` (-2 for hundredths): the double nearest to the rounded decimal text.
/// NaN and infinity come back unchanged; the result is never -0.
double round_to_place(double value, int place, Rounding rounding = Rounding::half_up);

/// The power of ten of the last of `figures` (1 to 15, clamped) significant digits of `value`, half-up rounding
/// counted: 22.68, 3 -> -1; 9.996, 3 -> -1 (it rounds to 10.0). For zero: 1 - figures.
int place_of_figures(double value, int figures);

/// `value` rounded half up to `figures` (1 to 15) significant digits.
double to_figures(double value, int figures);

/// `value` with the digits after `figures` (1 to 15) significant ones left away: 0.00158, 1 -> 0.001.
double cut_to_figures(double value, int figures);

/// What comes of `value` where the minus of its power of ten is lost: 1.7 x 10^-3 -> 1.7 x 10^3. From 1 on as it is.
double power_without_minus(double value);

} // namespace overwater
