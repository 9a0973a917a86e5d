#pragma once

#include <string>

#include "core/result/conventions.hpp"
#include "web/panels/typed_chemistry.hpp"

namespace overwater {

class App;

/// The name of a substance in sentences and tables, "CaCO₃": without an arrow for what it does.
std::string substance_words(ChemicalFormula formula);

/// What is wrong with `text`, and where if `with_place`: "Character 3: No element has this symbol."
std::string problem_words(const App& app, std::string_view text, const FormulaProblem& problem, bool with_place);

/// How the equation as typed balances, or why it cannot.
std::string balance_words(const App& app, const TypedChemistry& typed);

/// The standard conditions of the record's conventions: "0 °C, 100 kPa".
std::string standard_words(const App& app);

/// A molar mass and its bounds in g/mol, to the decimals of its least certain weight; the bounds with a digit at least.
std::string mass_words(const App& app, double gram_per_mole, double plus_minus, int decimals);

/// The molar mass in kg/mol that the conventions make of a formula: atomic weights rounded where they say so. Zero where an
/// element has no standard atomic weight.
double class_molar_mass(const Conventions& conventions, const ChemicalFormula& formula);

}  // namespace overwater
