#pragma once

#include <string>

#include "core/result/budget.hpp"
#include "core/result/verdict.hpp"

namespace overwater {

class App;
class Certainty;

/// The unit a budget's output is shown in.
UnitId unit_of_budget(const App& app, const Budget& budget);
/// Decimals that show the expanded uncertainty of a budget with two digits, in the unit its output is shown in.
int decimals_of_doubt(const App& app, const Budget& budget);
/// A value of the budget's output to the place of its doubt: without its unit, and with it.
std::string to_its_doubt(const App& app, const Budget& budget, double si);
std::string to_its_doubt_with_unit(const App& app, const Budget& budget, double si);

/// U itself, rounded as in GUM 7.2.6, with its unit.
std::string expanded_words(const App& app, const Budget& budget);

/// "22.47 to 22.76 L/mol", or "above 11 L/mol".
std::string interval_words(const App& app, const Budget& budget, const CoverageInterval& interval);
/// "± 0.14 L/mol" where the interval lies evenly about the value and may be used, else "22.47 to 22.76 L/mol at 95 %".
std::string doubt_beside_value(const App& app, const Certainty& certainty);

/// "Tube: limit of its class", "Temperature".
std::string doubt_name(const App& app, const Doubt& doubt);
/// "± 0.5 °C", "0 to 0.25 mL".
std::string doubt_size(const App& app, const Doubt& doubt);
/// "assumed", "typed", "burette 50 mL, class B".
std::string doubt_source(const App& app, const Doubt& doubt);

/// Does the accepted value lie inside, and by how much not. Empty where there is no accepted value or no interval.
std::string verdict_words(const App& app, const Certainty& certainty);
/// The accepted value to the place of the doubt, and of what kind, in the sentence of `key`; empty without one.
std::string accepted_words(const App& app, std::string_view key, const Budget& budget);
/// Why the linear interval is not used; empty where it is.
std::string caution_words(const App& app, const Certainty& certainty);
/// "A thermometer to 0.1 °C instead would bring ± 0.14 to ± 0.13 L/mol."
std::string improvement_words(const App& app, const Budget& budget, const Improvement& improvement);

}  // namespace overwater
