#pragma once

#include <string>
#include <vector>

#include "web/app/answers_desk.hpp"
#include "web/draw/ink.hpp"

namespace overwater {

class App;
class Language;

/// "Gas volume", "Mean"; with its run where the sheet has several.
std::string sheet_step_name(const Language& language, const SheetStep& step, bool with_run = false);
/// What was judged: right, not right ...
std::string judgement_words(const Language& language, const MarkedStep& step);
Ink ink_of(Judgement judgement);
/// What is to be said of unit and figures, each a sentence.
std::vector<std::string> form_words(const Language& language, const MarkedStep& step);
/// What each slip is, in a sentence.
std::string slip_sentences(const Language& language, const SlipSet& slips);
/// The question that leads on, of the step in which the slip was probably made.
std::string nudge_words(const Language& language, const MarkedStep& step);
/// The likely slips, best first, at most three; or that there is none we know of, and the nearest.
std::vector<std::string> slip_words(const Language& language, const MarkedStep& step);
/// All that is said of a checked step before its slip is named, in one.
std::string answer_words(const App& app, const CheckedStep& checked);

}  // namespace overwater
