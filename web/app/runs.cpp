// What the runs of a record come to together, and when results are shown.

#include <algorithm>

#include "core/result/run_checks.hpp"
#include "web/app/app.hpp"
#include "web/panels/wording.hpp"

namespace overwater {

namespace {

constexpr std::string_view molar_volume_step = "molar_volume";

}  // namespace

void App::give_answer() {
    const NumberText number = parse_number(answer_draft_, info(overwater::unit_of(sought())).measure);
    if (number.state != NumberText::State::number || refused()) return;
    before_change("answers.show");
    Answer answer;
    answer.step = molar_volume_step;
    answer.text = answer_draft_;
    answer.unit = number.unit == UnitId::none ? overwater::unit_of(sought()) : number.unit;
    record_.runs[run_].answers.push_back(std::move(answer));
    answer_draft_.clear();
    ++interaction_.write;
    after_change("answers.show");
}

std::string App::run_result(std::size_t run) const {
    const Output output = sought();
    if (!reveals(run)) return say("runs.withheld");
    if (!assessments_[run].has(output)) return say("runs.incomplete");
    const Working working(assessments_[run], record_.conventions);
    const WorkingStep* step = working.step(output);
    return language_.with_unit(
        format_fixed(in_unit(output, step->value, step->unit), std::max(step->shown_decimals, 2), language_.decimal_sign()),
        step->unit);
}

std::string App::mean_words() const {
    const Output output = sought();
    const UnitId unit = overwater::unit_of(output);
    double sum = 0;
    double low = 0;
    double high = 0;
    int count = 0;
    for (std::size_t run = 0; run < assessments_.size(); ++run) {
        const auto value = assessments_[run].value(output);
        if (!value || !reveals(run)) continue;
        low = count == 0 ? *value : std::min(low, *value);
        high = count == 0 ? *value : std::max(high, *value);
        sum += *value;
        ++count;
    }
    if (count < 2) return {};
    const auto number = [this, unit](double value) {
        return format_fixed(from_base(value, unit), 2, language_.decimal_sign());
    };
    return say(Message{"results.mean"}
                   .count("number", count)
                   .text("mean", language_.with_unit(number(sum / count), unit))
                   .text("low", number(low))
                   .text("high", language_.with_unit(number(high), unit)));
}

std::vector<std::string> App::run_remarks() const {
    std::vector<std::string> remarks;
    for (std::size_t run = 0; run < record_.runs.size(); ++run) {
        if (!reveals(run)) return remarks;
    }
    for (const RunCheck& check : run_checks(assessments_)) remarks.push_back(say(check.message));
    return remarks;
}

}  // namespace overwater
