#pragma once

#include <cstddef>
#include <cstdint>
#include <string>

/// What is wrong with a typed formula or equation, and where. No sentence: whoever shows it chooses the words.

namespace overwater {

/// Limits, so that hostile text is cheap. They are far above what a school writes: proteins are left out.
inline constexpr std::size_t longest_formula_text = 200;    ///< bytes of a formula
inline constexpr std::size_t longest_equation_text = 2000;  ///< bytes of an equation
inline constexpr std::size_t most_substances = 24;          ///< of an equation, both sides together
inline constexpr std::size_t deepest_brackets = 8;
inline constexpr int largest_count = 9999;          ///< of one index, one coefficient or one charge ...
inline constexpr int largest_atom_count = 1000000;  ///< ... and of one element when brackets are multiplied out

enum class FormulaProblemKind : std::uint8_t {
    none,
    nothing_there,        ///< no text, nothing beside a plus sign, nothing on a side of the arrow, nothing after a dot
    too_long,             ///< at the first byte that is too much
    too_deep,             ///< at the bracket that is too much
    too_many_substances,  ///< at the first substance that is too much
    not_utf8,             ///< bytes that are no text
    unknown_character,    ///< a sign that no formula has
    unknown_symbol,       ///< letters that are no element's symbol; `likely` if other capitals make them one
    unmatched_bracket,    ///< at the bracket that lacks its other half, or that closes one of another shape
    empty_bracket,        ///< at both brackets
    count_zero,       ///< a count, coefficient or charge of 0 or with a 0 in front (often a typed 0 for the letter O)
    count_too_large,  ///< at the count, or at the formula's element whose counts multiply to too many
    count_not_whole,  ///< a half or a decimal number
    count_out_of_place,  ///< a count with nothing in front of it
    stray_sign,          ///< a plus or minus that neither ends a formula nor stands between two
    stray_state,         ///< a state symbol or gas arrow that does not end its formula, or a second one
    no_arrow,            ///< an equation without arrow: at its end
    second_arrow,        ///< at the second one
    no_weight,           ///< molar_mass: an element without a standard atomic weight
};

/// Bytes of the text as typed; a position is always on the first byte of a character, or at the text's end.
struct FormulaProblem {
    FormulaProblemKind kind = FormulaProblemKind::none;
    std::size_t at = 0;
    std::size_t length = 0;  ///< 0 where something is missing

    std::string likely{};       ///< unknown_symbol: what to put in place of the whole run of letters ...
    std::size_t likely_at = 0;  ///< ... that begins here
    std::size_t likely_length = 0;

    bool none() const { return kind == FormulaProblemKind::none; }
};

}  // namespace overwater
