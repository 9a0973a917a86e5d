#pragma once

#include <string>
#include <utility>
#include <vector>

#include "core/explain/formula.hpp"
#include "web/ui/node.hpp"

namespace overwater {

/// A formula as a `math` element in display style (MathML Core).
Element mathml_of(const Formula& formula);

/// The words between the parts of a spoken formula, in the language of the page.
struct SpeechWords {
    std::string plus, minus, times, divided_by, equals, approximately;
    std::string negative;                      ///< a minus sign without a left side
    std::string over;                          ///< between numerator and denominator
    std::string begin_fraction, end_fraction;  ///< around a fraction whose parts are not single numbers or symbols
    std::string squared, cubed, to_the_power;
    std::string index;  ///< before a subscript; may be empty
    std::string root_of, end_root;
    std::string open, close;  ///< around parentheses
    /// Symbols and their spoken forms, where they differ: a unit's or a quantity's name.
    std::vector<std::pair<std::string, std::string>> symbols;
};

/// A formula as words in reading order, separated by single spaces.
std::string spoken(const Formula& formula, const SpeechWords& words);

}  // namespace overwater
