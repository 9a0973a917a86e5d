#pragma once

#include <string>
#include <string_view>

#include "core/bench/field.hpp"
#include "core/matter/reaction.hpp"
#include "core/result/outcome.hpp"
#include "web/draw/mathml.hpp"

namespace overwater {

class App;
class Working;
struct Assessment;
struct Conventions;
struct Formula;
struct Readings;

/// The words of a choice; the largest number at the closed end is named by the tube's capacity where it is typed.
std::string choice_words(const App& app, Field field, std::string_view value);

/// The balanced equation of what is weighed, with lowered digits and an arrow; empty where nothing or an own reaction was
/// chosen.
std::string equation_words(const App& app, const Readings& readings);

/// The key of the form that a name or a hint has for the vessel of the run, else for a substance that is no metal, else the
/// usual one.
std::string key_for_run(const App& app, std::string usual);

/// What a reading is called: by what is weighed, and by the vessel that the gas is collected in.
std::string field_name(const App& app, Field field);

/// The name of an output, long ("Molar volume at standard conditions") or as a step of the working ("Molar volume").
std::string output_name(const App& app, Output output);
std::string step_name(const App& app, Output output);

/// What an output is compared with: "ideal gas", "as typed", or a known value.
std::string kind_of_known(const App& app, Output output);

/// A formula spoken in the language of the page.
std::string spoken_formula(const App& app, const Formula& formula);

/// The molar volume and percent error that a run comes to, in a few words; what it waits for where there is none.
std::string effect_words(const App& app, const Assessment& assessment, const Working& working,
                         const Conventions& conventions);
/// The percent error as the conventions have it: with its sign, or its size alone.
std::string percent_error_words(const App& app, double fraction, const Conventions& conventions, int decimals);
/// "hydrogen, 0 °C, 100 kPa".
std::string conditions_words(const App& app);
/// Which reading limits the figures of an output: "Mass of metal has 3 figures"; empty where none does.
std::string limit_words(const App& app, Output output);

/// A number with a sign in front also where it is above zero.
std::string signed_number(const std::string& number, double value);

}  // namespace overwater
