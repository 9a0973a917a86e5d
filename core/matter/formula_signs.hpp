#pragma once

#include <cstddef>
#include <optional>
#include <string_view>

#include "core/matter/chemical_formula.hpp"
#include "core/quantity/utf8.hpp"

/// The signs of formulas and equations in all the ways in which they are typed. The inner part of reading them:
/// chemical_formula.hpp and equation.hpp are what the rest of the program uses. Every function takes any bytes and any
/// place in them.

namespace overwater::formula_signs {

/// The sign at byte `at`, with full-width forms and dashes brought to ASCII; no bytes at the end.
CodePoint sign_at(std::string_view text, std::size_t at);

/// Where the sign begins that has the byte `at`.
std::size_t sign_start(std::string_view text, std::size_t at);

/// The first place from `at` on that is no white space.
std::size_t after_spaces(std::string_view text, std::size_t at);

inline bool is_capital(char32_t sign) { return sign >= U'A' && sign <= U'Z'; }
inline bool is_small(char32_t sign) { return sign >= U'a' && sign <= U'z'; }

enum class Height : unsigned char { normal, lowered, raised };

struct Digit {
    int value;
    Height height;
};
std::optional<Digit> digit_of(char32_t sign);

/// A run of digits of one height.
struct Number {
    int value = 0;  ///< at most one above largest_count, where the run stands for more
    std::size_t at = 0;
    std::size_t length = 0;  ///< bytes; 0 if no digit stands here
    int digits = 0;
    Height height = Height::normal;
    bool leading_zero = false;

    std::size_t end() const { return at + length; }
};
Number number_at(std::string_view text, std::size_t at);

/// What is wrong with a number as a count, a coefficient or a charge: zero, too large or none.
FormulaProblem problem_of(const Number& number);

/// The bytes of a fraction or a decimal number where `number` stands: 1/2, 0.5, 1,5 or ½; 0 if it is whole. A full stop
/// counts only where `point_is_decimal`, as it may be the dot of a hydrate.
std::size_t broken_number(std::string_view text, const Number& number, bool point_is_decimal);

/// +1 or −1 for a raised sign of a charge; 0 for any other.
int raised_charge_sign(char32_t sign);

/// A dot before water of crystallization.
bool is_dot(char32_t sign);

/// The bytes of an arrow here: ->, -->, =>, =, ==, <->, <=>, → and like signs; 0 if there is none.
std::size_t arrow_at(std::string_view text, std::size_t at);

struct StateSign {
    State state = State::none;
    std::size_t length = 0;  ///< bytes; 0 if there is none
};
/// (s), (l), (g), (aq), ↑ or ↓ here.
StateSign state_at(std::string_view text, std::size_t at);

}  // namespace overwater::formula_signs
