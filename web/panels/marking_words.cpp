#include "web/panels/marking_words.hpp"

#include "web/app/language.hpp"
#include "web/panels/answer_words.hpp"

namespace overwater {

namespace {

/// The likeliest slip alone.
std::string slip_of(const Language& language, const MarkedStep& step) {
    if (step.mean_slip != MeanSlip::none) return language.say("slip.mean." + std::string(name_of(step.mean_slip)));
    if (step.finding.explanations.empty()) return language.say("sheet.unexplained");
    return slip_sentences(language, step.finding.explanations.front().slips);
}

}  // namespace

std::string remark_words(const Language& language, const MarkedRow& row, const Remark& remark) {
    using Kind = Remark::Kind;
    std::string words;
    switch (remark.kind) {
        case Kind::misread: {
            const std::string name = language.say("field." + std::string(name_of(remark.reading.field)));
            if (remark.reading.run < 0) return language.say(Message{"marking.misread"}.text("reading", name));
            return language.say(
                Message{"marking.misread_in_run"}.text("reading", name).count("number", remark.reading.run + 1));
        }
        case Kind::blank: return language.say(Message{"marking.blank"}.count("number", remark.count));
        case Kind::readings: return language.say(Message{"marking.readings"}.count("number", remark.count));
        case Kind::unit: return language.say("marking.unit_cost");
        case Kind::figures: return language.say("marking.figures_cost");
        case Kind::no_number: words = language.say("sheet.no_number"); break;
        case Kind::does_not_follow: words = language.say("sheet.does_not_follow"); break;
        case Kind::slip: words = slip_of(language, row.sheet.steps[remark.step]); break;
    }
    bool several = false;
    for (const MarkedStep& step : row.sheet.steps) several = several || step.step.run > 0;
    return language.say(Message{"marking.of_step"}
                            .text("step", sheet_step_name(language, row.sheet.steps[remark.step].step, several))
                            .text("words", words));
}

std::string all_remarks(const Language& language, const MarkedRow& row) {
    std::string all;
    for (const Remark& remark : remarks_of(row)) {
        if (!all.empty()) all += ' ';
        all += remark_words(language, row, remark);
    }
    return all.empty() ? language.say("marking.all_right") : all;
}

}  // namespace overwater
