// The student's own answers: typed, checked, and helped at the pace that the conventions or the practice code say.

#include <algorithm>

#include "core/quantity/gum.hpp"
#include "web/app/app.hpp"
#include "web/browser/platform.hpp"
#include "web/panels/answer_words.hpp"
#include "web/panels/wording.hpp"

namespace overwater {

namespace {

using Answers = Conventions::Answers;

constexpr std::string_view prefix = "sheet.";
/// The answer to the result that opens it (record.md).
constexpr std::string_view own_answer_step = "molar_volume";
constexpr std::string_view unit_suffix = ".unit";

/// Under which the changes of an answer stand in the record's history.
std::string history_name(const SheetStep& step) { return "answers." + std::string(step_name(step)); }

bool is_number(const SheetStep& step, std::string_view text) {
    return read_answer(step.output, text).number.state == NumberText::State::number;
}

StatedStep stated(const SheetStep& step, const StatedValue& value) {
    return {step.output, value.si, 2 * value.half_unit};
}

/// What the student had before the step `at` of the sheet.
std::vector<StatedStep> had_before(const MarkedSheet& sheet, std::size_t at, Output result) {
    const SheetStep& step = sheet.steps[at].step;
    std::vector<StatedStep> had;
    std::vector<StatedStep> results;
    std::optional<StatedStep> mean;
    for (std::size_t i = 0; i < at; ++i) {
        const MarkedStep& before = sheet.steps[i];
        const auto& value = before.answer.value;
        if (before.step.mean) {
            if (value) mean = stated(before.step, *value);
        } else if (step.run < 0) {
            // A run's own number, or the right one where it is blank.
            if (before.step.output == result && before.judgement != Judgement::not_known) {
                results.push_back(value ? stated(before.step, *value)
                                        : StatedStep{result, before.right, to_base(0.01, before.unit)});
            }
        } else if (before.step.run == step.run && value) {
            had.push_back(stated(before.step, *value));
        }
    }
    if (step.run >= 0) return had;
    if (step.mean || results.empty()) return results;
    std::vector<double> values;
    for (const StatedStep& one : results) values.push_back(one.value);
    return {mean.value_or(StatedStep{result, sample_of(values).mean, results.front().last_digit})};
}

}  // namespace

std::vector<SheetStep> App::steps_at_hand() const {
    std::vector<SheetStep> steps = sheet_steps(record_);
    std::erase_if(steps, [this](const SheetStep& step) { return step.run >= 0 && step.run != static_cast<int>(run_); });
    return steps;
}

const Answer* App::answer_to(const SheetStep& step) const {
    return overwater::answer_to(answers_of(record_, step), step_name(step));
}

const CheckedStep* App::checked(const SheetStep& step) const { return answers_desk_.find(step); }

/// When answers are judged: hidden ones not before the teacher's word.
Answers App::answers_pace() const {
    const Answers pace = practice_ ? conventions_of(practice_->settings).answers : record_.conventions.answers;
    return pace == Answers::hidden && reveals(0) ? Answers::live : pace;
}

/// Whether a number was typed for the step, now or before.
bool App::attempted(const SheetStep& step) const {
    if (const Answer* answer = answer_to(step); answer != nullptr && is_number(step, answer->text)) return true;
    return std::any_of(record_.history.begin(), record_.history.end(), [&](const Change& change) {
        return change.run == step.run && change.field == history_name(step) && is_number(step, change.text);
    });
}

/// The corrected step says the numbers before it too: these must have been attempted as well.
bool App::may_show_step(const SheetStep& step) const {
    const Answers pace = answers_pace();
    if (pace == Answers::live) return true;
    if (pace == Answers::hidden) return false;
    for (const SheetStep& one : sheet_steps(record_)) {
        const bool needed = one == step || step.run < 0 || (one.run == step.run && !reveals(static_cast<std::size_t>(step.run)));
        if (needed && !attempted(one)) return false;
        if (one == step) break;
    }
    return true;
}

Help App::next_help(const CheckedStep& checked) const {
    const Judgement judgement = checked.marked.judgement;
    const bool wrong = judgement == Judgement::not_right;
    const bool open = wrong || judgement == Judgement::blank || judgement == Judgement::no_number;
    if (checked.changed || !open || answers_pace() == Answers::hidden) return Help::none;
    if (wrong && checked.help == Help::judgement) return Help::slip;
    return checked.help != Help::step && may_show_step(checked.marked.step) ? Help::step : Help::none;
}

void App::check_steps(const std::vector<SheetStep>& steps) {
    const bool judges = answers_pace() != Answers::hidden;
    const MarkedSheet sheet = judges ? mark_sheet(record_, {}, &steps) : MarkedSheet{};
    const std::vector<SheetStep> all = sheet_steps(record_);
    for (const SheetStep& step : steps) {
        CheckedStep one;
        one.marked.step = step;
        const auto at = static_cast<std::size_t>(std::find(all.begin(), all.end(), step) - all.begin());
        if (judges) {
            one.marked = sheet.steps[at];
            one.had = had_before(sheet, at, sought_output(record_));
        } else {
            const Answer* answer = answer_to(step);
            if (answer != nullptr) one.marked.answer = read_answer(step.output, answer->text, answer->unit);
        }
        std::erase_if(answers_desk_.checked, [&](const CheckedStep& before) { return before.marked.step == step; });
        answers_desk_.checked.push_back(std::move(one));
    }
    for (const SheetStep& step : steps) take_as_own_answer(step);
    platform::wake(2);
}

/// The result, typed and checked, is the answer of one's own after which the page shows its results.
void App::take_as_own_answer(const SheetStep& step) {
    const Answer* answer = answer_to(step);
    const bool result = step.run >= 0 && step.output == sought_output(record_);
    if (!result || answer == nullptr || !is_number(step, answer->text)) return;
    if (answers_pace() != Answers::after_attempt || reveals(static_cast<std::size_t>(step.run)) || read_only_) return;
    before_change("sheet.own");
    Answer own = *answer;
    own.step = own_answer_step;
    answers_of(record_, step).push_back(std::move(own));
    keep_answers_desk("sheet.own", [](CheckedStep&) {});
}

void App::help_with(const SheetStep& step) {
    CheckedStep* before = answers_desk_.find(step);
    const Help next = before == nullptr ? Help::none : next_help(*before);
    if (next == Help::none) {
        // Pressed again without a change, what has been said stays.
        const Help said = before == nullptr || before->changed ? Help::judgement : before->help;
        check_steps({step});
        answers_desk_.find(step)->help = said;
    } else {
        before->help = next;
    }
    status_ = answer_words(*this, *checked(step));
    platform::wake(2);
}

void App::check_all() {
    const std::vector<SheetStep> steps = steps_at_hand();
    check_steps(steps);
    int right = 0;
    for (const SheetStep& step : steps) {
        const Judgement judgement = checked(step)->marked.judgement;
        right += judgement == Judgement::right || judgement == Judgement::carried_forward ? 1 : 0;
    }
    const bool judges = answers_pace() != Answers::hidden;
    status_ = judges ? say(Message{"sheet.checked"}.count("all", static_cast<long long>(steps.size())).count("number", right))
                     : say("sheet.not_judged");
}

/// What was checked survives a change of an answer, and tells where it no longer holds.
template <class Mark>
void App::keep_answers_desk(const std::string& key, Mark mark) {
    AnswersDesk desk = std::move(answers_desk_);
    after_change(key);
    for (CheckedStep& one : desk.checked) mark(one);
    answers_desk_ = std::move(desk);
}

bool App::sheet_typed(const std::string& key, const std::string& text) {
    if (!key.starts_with(prefix)) return false;
    std::string_view name = std::string_view(key).substr(prefix.size());
    const bool unit = name.ends_with(unit_suffix);
    if (unit) name.remove_suffix(unit_suffix.size());
    const std::vector<SheetStep> steps = steps_at_hand();
    const auto step = std::find_if(steps.begin(), steps.end(), [&](const SheetStep& one) { return step_name(one) == name; });
    if (step == steps.end() || refused()) return true;
    before_change(key);
    std::vector<Answer>& answers = answers_of(record_, *step);
    auto answer = std::find_if(answers.begin(), answers.end(), [&](const Answer& one) { return one.step == name; });
    if (answer == answers.end()) {
        answers.emplace_back().step = name;
        answer = answers.end() - 1;
    }
    if (unit) {
        answer->unit = unit_by_key(text).value_or(UnitId::none);
        ++interaction_.write;
    } else {
        answer->text = text;
        remember(step->run, history_name(*step), text);
    }
    if (answer->text.empty() && answer->unit == UnitId::none && answer->kept.empty()) answers.erase(answer);
    // What comes after it on the sheet may follow from it: then it is judged anew, without a search for slips.
    const bool judges = !answers_desk_.checked.empty() && answers_pace() != Answers::hidden;
    const std::vector<SheetStep> none;
    const MarkedSheet now = judges ? mark_sheet(record_, {}, &none) : MarkedSheet{};
    keep_answers_desk(key, [&](CheckedStep& one) {
        const auto at = std::find_if(now.steps.begin(), now.steps.end(),
                                     [&](const MarkedStep& marked) { return marked.step == one.marked.step; });
        const bool otherwise = at != now.steps.end() && (at->judgement != one.marked.judgement || at->expected != one.marked.expected ||
                                                         at->does_not_follow != one.marked.does_not_follow);
        one.changed = one.changed || one.marked.step == *step || otherwise;
    });
    return true;
}

}  // namespace overwater
