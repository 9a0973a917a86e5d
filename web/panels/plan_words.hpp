#pragma once

#include <string>

#include "core/lesson/plan.hpp"

namespace overwater {

class App;

/// A reading of a sheet with the digits it was written with, in the page's decimal sign: with its unit, or the number
/// alone. Empty where there is none.
std::string reading_words(const App& app, const Entries& sheet, Field field, bool with_unit = true);

/// Why an output of a plan has no amount: what it waits for, or why it is not possible. Empty where there is nothing to
/// say: it has one, or what it waits for is said by the plan itself.
std::string withheld_words(const App& app, const Plan& plan, PlanOutput output);

/// The sentence of the cheapest improvement; empty where there is none.
std::string cheapest_words(const App& app, const Plan& plan);

}  // namespace overwater
