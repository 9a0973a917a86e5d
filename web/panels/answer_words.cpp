#include "web/panels/answer_words.hpp"

#include <cstdlib>

#include "web/app/app.hpp"

namespace overwater {

namespace {

constexpr std::size_t most_named = 3;

}  // namespace

std::string slip_sentences(const Language& language, const SlipSet& slips) {
    std::string words;
    for (std::size_t i = 0; i < slips.count; ++i) {
        if (i > 0) words += ' ';
        words += language.say("slip." + std::string(slip_table[slips.slips[i]].name));
    }
    return words;
}

std::string sheet_step_name(const Language& language, const SheetStep& step, bool with_run) {
    const std::string key = (step.mean ? "sheet." : "output.") + std::string(step_name(step));
    if (!with_run || step.run < 0) return language.say(key);
    return language.say(Message{"sheet.of_run"}.text("step", language.say(key)).count("number", step.run + 1));
}

std::string judgement_words(const Language& language, const MarkedStep& step) {
    switch (step.judgement) {
        case Judgement::blank: return language.say("sheet.blank");
        case Judgement::no_number: return language.say("sheet.no_number");
        case Judgement::not_known: return language.say("sheet.not_known");
        case Judgement::right: return language.say(step.does_not_follow ? "sheet.does_not_follow" : "sheet.right");
        case Judgement::carried_forward: return language.say("sheet.carried");
        case Judgement::not_right: break;
    }
    return language.say("sheet.not_right");
}

Ink ink_of(Judgement judgement) {
    const bool good = judgement == Judgement::right || judgement == Judgement::carried_forward;
    return good ? Ink::good : judgement == Judgement::not_right ? Ink::warning : Ink::soft;
}

std::vector<std::string> form_words(const Language& language, const MarkedStep& step) {
    std::vector<std::string> words;
    if (step.unit_wrong) {
        words.push_back(language.say("sheet.unit_wrong"));
    } else if (step.unit_missing) {
        words.push_back(language.say("sheet.unit_missing"));
    }
    if (step.figures_off != 0) {
        words.push_back(language.say(Message{step.figures_off > 0 ? "sheet.figures_more" : "sheet.figures_fewer"}.count(
            "number", std::abs(step.figures_off))));
    }
    return words;
}

std::string nudge_words(const Language& language, const MarkedStep& step) {
    std::string_view of = step_name(step.step);
    if (!step.finding.explanations.empty() && !step.step.mean) {
        of = name_of(slip_table[step.finding.explanations.front().slips.slips[0]].step);
    }
    return language.say("nudge." + std::string(of));
}

std::vector<std::string> slip_words(const Language& language, const MarkedStep& step) {
    std::vector<std::string> words;
    const auto add = [&](const std::string& slips) {
        words.push_back(language.say(Message{words.empty() ? "sheet.likely" : "sheet.or"}.text("slips", slips)));
    };
    if (step.mean_slip != MeanSlip::none) add(language.say("slip.mean." + std::string(name_of(step.mean_slip))));
    for (const SlipExplanation& one : step.finding.explanations) {
        if (one.rank == 1 && words.size() < most_named) add(slip_sentences(language, one.slips));
    }
    if (!words.empty()) return words;
    words.push_back(language.say("sheet.unexplained"));
    if (!step.finding.nearest.empty()) {
        words.push_back(language.say(
            Message{"sheet.nearest"}.text("slips", slip_sentences(language, step.finding.nearest.front().slips))));
    }
    return words;
}

std::string answer_words(const App& app, const CheckedStep& checked) {
    const Language& language = app.language();
    const MarkedStep& step = checked.marked;
    if (app.answers_pace() == Conventions::Answers::hidden) {
        return language.say(step.answer.number.state == NumberText::State::blank ? "sheet.blank" : "sheet.not_judged");
    }
    if (checked.changed) return language.say("sheet.changed");
    std::string words = judgement_words(language, step);
    for (const std::string& more : form_words(language, step)) words += ' ' + more;
    return words;
}

}  // namespace overwater
