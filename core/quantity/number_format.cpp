#include "core/quantity/number_format.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

#include "core/quantity/decimal.hpp"

namespace overwater {
namespace {

constexpr int most_figures = 15; // what every decimal text survives on its way through a double and back (DBL_DIG)

Decimal digits_of(double magnitude) { return decimal_of(magnitude, most_figures); }

/// Whether what follows the first `kept` digits (none, if negative) calls for one more in the last place kept.
bool rounds_away(const std::string& text, int kept, Rounding rounding) {
    if (kept < 0) return false;
    const auto at = static_cast<std::size_t>(kept);
    if (at >= text.size()) return false;
    if (text[at] != '5') return text[at] > '5';
    if (text.find_first_not_of('0', at + 1) != std::string::npos) return true;
    if (rounding == Rounding::half_up) return true;
    const char last_kept = at == 0 ? '0' : text[at - 1];
    return (last_kept - '0') % 2 != 0;
}

/// `digits` rounded to a multiple of 10^place; ends at that place exactly, filled with zeros. No digits if it becomes
/// zero.
Decimal rounded(const Decimal& digits, int place, Rounding rounding) {
    if (digits.digits.empty()) return {};
    const int kept = digits.first_place - place + 1;
    const bool away = rounds_away(digits.digits, kept, rounding);
    Decimal result;
    result.first_place = digits.first_place;
    if (kept > 0) {
        result.digits = digits.digits.substr(0, static_cast<std::size_t>(kept));
        result.digits.resize(static_cast<std::size_t>(kept), '0');
    }
    if (!away) return result.digits.empty() ? Decimal{} : result;
    std::size_t at = result.digits.size();
    while (at > 0 && result.digits[at - 1] == '9') result.digits[--at] = '0';
    if (at > 0) {
        ++result.digits[at - 1];
    } else {
        result.digits.insert(result.digits.begin(), '1');
        ++result.first_place;
    }
    return result;
}

constexpr std::string_view minus = "\u2212";

/// The digits with the decimal sign in its place and at least one digit before it; `decimals` is 0 or more.
std::string plain_text(const Decimal& digits, int decimals, DecimalSign sign) {
    std::string whole;
    std::string fraction;
    const int lowest = -decimals;
    const int highest = digits.digits.empty() ? 0 : std::max(0, digits.first_place);
    for (int place = highest; place >= lowest; --place) {
        const int index = digits.first_place - place;
        const bool stands = index >= 0 && index < static_cast<int>(digits.digits.size());
        (place >= 0 ? whole : fraction) += stands ? digits.digits[static_cast<std::size_t>(index)] : '0';
    }
    if (fraction.empty()) return whole;
    return whole + (sign == DecimalSign::comma ? ',' : '.') + fraction;
}

std::string raised(int number) {
    constexpr std::array<std::string_view, 10> raised_digits{"\u2070", "\u00B9", "\u00B2", "\u00B3", "\u2074",
                                                             "\u2075", "\u2076", "\u2077", "\u2078", "\u2079"};
    std::string text(number < 0 ? "\u207B" : "");
    for (const char digit : std::to_string(std::abs(number)))
        text += raised_digits[static_cast<std::size_t>(digit - '0')];
    return text;
}

std::string with_power_of_ten(const Decimal& digits, DecimalSign sign) {
    Decimal mantissa = digits;
    mantissa.first_place = 0;
    std::string text = plain_text(mantissa, static_cast<int>(digits.digits.size()) - 1, sign);
    text += ' ';
    text += "\u00D7";
    text += ' ';
    text += "10";
    return text + raised(digits.first_place);
}

std::string signed_text(double value, bool is_zero, const std::string& magnitude) {
    return value < 0.0 && !is_zero ? std::string(minus) + magnitude : magnitude;
}

} // namespace

std::string format_fixed(double value, int decimals, DecimalSign sign, Rounding rounding) {
    if (!std::isfinite(value)) return {};
    const int places = std::clamp(decimals, -most_figures, 2 * most_figures);
    const Decimal digits = digits_of(std::fabs(value));
    if (digits.first_place >= most_figures) return format_significant(value, most_figures, sign, rounding);
    const Decimal result = rounded(digits, -places, rounding);
    return signed_text(value, result.digits.empty(), plain_text(result, std::max(0, places), sign));
}

std::string format_significant(double value, int figures, DecimalSign sign, Rounding rounding) {
    if (!std::isfinite(value)) return {};
    const Decimal digits = digits_of(std::fabs(value));
    if (digits.digits.empty()) return "0";
    const int wanted = std::clamp(figures, 1, most_figures);
    Decimal result = rounded(digits, digits.first_place - wanted + 1, rounding);
    result.digits.resize(static_cast<std::size_t>(wanted), '0'); // 9.996 became 10.00: one digit too many
    const bool is_small = result.first_place < -4;
    const bool is_large = result.first_place >= 6 && result.first_place >= wanted;
    const std::string magnitude = is_small || is_large ? with_power_of_ten(result, sign)
                                                       : plain_text(result, std::max(0, -result.last_place()), sign);
    return signed_text(value, false, magnitude);
}

std::string without_end_zeros(std::string number, DecimalSign sign) {
    const char decimal = sign == DecimalSign::comma ? ',' : '.';
    if (number.find(decimal) == std::string::npos) return number;
    while (number.back() == '0') number.pop_back();
    if (number.back() == decimal) number.pop_back();
    return number;
}

double round_to_place(double value, int place, Rounding rounding) {
    if (!std::isfinite(value)) return value;
    const Decimal result = rounded(digits_of(std::fabs(value)), std::clamp(place, -400, 400), rounding);
    if (result.digits.empty()) return 0.0;
    const double magnitude = nearest_double(result.digits, result.last_place());
    if (!std::isfinite(magnitude)) return value;
    return value < 0.0 ? -magnitude : magnitude;
}

int place_of_figures(double value, int figures) {
    const int wanted = std::clamp(figures, 1, most_figures);
    if (!std::isfinite(value)) return 1 - wanted;
    const Decimal digits = digits_of(std::fabs(value));
    if (digits.digits.empty()) return 1 - wanted;
    return rounded(digits, digits.first_place - wanted + 1, Rounding::half_up).first_place - wanted + 1;
}

namespace {

constexpr double powers_of_ten[]{1e0,  1e1,  1e2,  1e3,  1e4,  1e5,  1e6,  1e7,  1e8,  1e9,  1e10, 1e11,
                                 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22};
constexpr int exact_powers = 22;  // greater ones are no doubles

/// `value` rounded to figures by arithmetic, or NaN where its decimal text has to decide: near a tie or a power of ten,
/// very large or very small. A whole number over an exact power of ten is the double nearest to the decimal text.
double rounded_by_arithmetic(double value, int figures) {
    const double size = std::fabs(value);
    if (!(size > 1e-12 && size < 1e12)) return NAN;
    const double scale = size < 1 ? size * 1e13 : size;  // 10 to 10^13, or 1 to 10^12
    int exponent = 0;
    while (scale >= powers_of_ten[exponent + 1]) ++exponent;
    if (scale > powers_of_ten[exponent + 1] * (1 - 1e-13) || scale < powers_of_ten[exponent] * (1 + 1e-13)) return NAN;
    const int place = (size < 1 ? exponent - 13 : exponent) - figures + 1;
    if (place < -exact_powers) return NAN;
    const double units = place < 0 ? size * powers_of_ten[-place] : size / powers_of_ten[place];
    if (!(units < 1e9) || std::fabs(units - std::floor(units) - 0.5) < 1e-5) return NAN;
    const double whole = std::floor(units + 0.5);
    return std::copysign(place < 0 ? whole / powers_of_ten[-place] : whole * powers_of_ten[place], value);
}

}  // namespace

double to_figures(double value, int figures) {
    const double quick = rounded_by_arithmetic(value, figures);
    return std::isnan(quick) ? round_to_place(value, place_of_figures(value, figures)) : quick;
}

double cut_to_figures(double value, int figures) {
    // The place of 15 digits is that of the number itself: rounding to fewer could move it to the next power of ten.
    const int place = place_of_figures(value, 15) + 15 - figures;
    const double rounded = round_to_place(value, place);
    const double beyond = std::fabs(rounded) - std::fabs(value);
    if (!(beyond > 1e-14 * std::fabs(value))) return rounded;
    const double unit = std::copysign(std::pow(10.0, place), value);
    return round_to_place(rounded - unit, place);
}

double power_without_minus(double value) {
    const int exponent = place_of_figures(value, 15) + 14;
    return exponent < 0 ? value * std::pow(10.0, -2 * exponent) : value;
}

} // namespace overwater
