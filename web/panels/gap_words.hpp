#pragma once

#include <string>

#include "core/explain/gap.hpp"

namespace overwater {

class App;

/// The result that is explained to the place of its doubt, at least two decimals, with its unit.
std::string found_words(const App& app, double si);
/// "−0.13 %": how far `found` lies from `accepted`.
std::string difference_words(const App& app, double found, double accepted);
/// First of all whether there is anything to explain, with result and accepted value.
std::string gap_statement(const App& app, const Gap& gap);
/// A size of a cause in its unit, with two figures; `base` is a difference in the base unit.
std::string cause_size_words(const App& app, Cause cause, double base);
/// "0.14 mL needed, 0.05 mL is usual", or that it is not enough alone.
std::string needs_words(const App& app, const Explanation& explanation);
/// "possible: of a size that was seen".
std::string plausible_words(const App& app, const Explanation& explanation);

}  // namespace overwater
