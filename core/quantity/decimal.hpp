#pragma once

#include <string>
#include <string_view>

/// Doubles as decimal digits and decimal digits as doubles, each the nearest to the other by whole-number arithmetic: the
/// same digits on every machine, whatever its C library and the language it is set to (printf and strtod write and expect
/// a comma in half of the world). The definition is that of IEEE 754-2019, 5.12.2: correctly rounded, ties to even.

namespace overwater {

/// A positive number as decimal digits: d1.d2d3... x 10^first_place, d1 not '0'; no digits for zero.
struct Decimal {
    std::string digits{};
    int first_place = 0; ///< power of ten of the first digit

    int last_place() const { return first_place - static_cast<int>(digits.size()) + 1; }
};

/// `magnitude` with `figures` digits (1 or more), rounded from its exact binary value. No digits for zero, a negative
/// number, NaN or infinity.
Decimal decimal_of(double magnitude, int figures);

/// The double nearest to `digits` x 10^`last_place`; `digits` are '0' to '9', as many as there are. Infinity from where a
/// double would overflow, 0 below half of the smallest one.
double nearest_double(std::string_view digits, int last_place);

/// For machines (JSON, attributes of the page): `value` with at most `figures` digits and a point, without zeros at the
/// end, with a power of ten ("1e-07") below 10^-5 and from 10^`figures` on. Neither NaN nor infinity may be given.
std::string machine_number(double value, int figures);

} // namespace overwater
