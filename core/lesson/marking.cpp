#include "core/lesson/marking.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "core/explain/working.hpp"
#include "core/quantity/gum.hpp"
#include "core/result/evaluate.hpp"

namespace overwater {

namespace {

/// Who goes on with the digits of the calculator has had any number that rounds to what was written down. Of three figures
/// or more that is rounding (method.md, section 7); what was written with fewer is taken as it stands.
double rounded_away(const StatedValue& value) {
    return value.half_unit <= 0.005 * std::fabs(value.si) * (1 + 1e-9) ? value.half_unit : 0;
}

Band around(double value, double reach) { return {value - reach, value + reach}; }

/// One run on the sheet: what its readings give, and what the student had of it so far.
struct MarkedRun {
    Assessment right;
    RouteBands bands;     ///< by the readings alone
    Outcome<double> own;  ///< `ready`: stated by the student
    std::vector<StatedValue> stated;  ///< the same, with what was rounded away
    std::vector<WorkingStep> working;
};

class Marker {
public:
    Marker(const Record& record, const MarkingRules& rules, const std::vector<SheetStep>* explained)
        : record_(record), rules_(rules), explained_(explained) {
        for (std::size_t i = 0; i < record.runs.size(); ++i) {
            MarkedRun& run = runs_.emplace_back();
            run.right = assess(readings_of(record, i), record.conventions);
            run.bands = route_bands(run.right);
            run.working = Working(run.right, record.conventions).steps();
        }
    }

    MarkedSheet mark() {
        MarkedSheet sheet;
        for (const SheetStep& step : sheet_steps(record_)) sheet.steps.push_back(marked(step));
        add_points(sheet);
        return sheet;
    }

private:
    MarkedStep marked(const SheetStep& step) {
        MarkedStep out;
        out.step = step;
        out.unit = unit_of(step.output);
        const Answer* answer = answer_to(answers_of(record_, step), step_name(step));
        if (answer != nullptr) out.answer = read_answer(step.output, answer->text, answer->unit);
        if (step.run < 0) {
            judge_sheet_step(out);
        } else {
            judge_run_step(out, runs_[static_cast<std::size_t>(step.run)]);
        }
        return out;
    }

    /// Blank and unreadable answers are not judged; neither is what cannot be worked out.
    static bool settled_without_judging(MarkedStep& out, bool known) {
        if (!known) {
            out.judgement = Judgement::not_known;
        } else if (out.answer.number.state == NumberText::State::not_a_number) {
            out.judgement = Judgement::no_number;
        } else if (!out.answer.value) {
            out.judgement = Judgement::blank;
        } else {
            return false;
        }
        return true;
    }

    void judge_run_step(MarkedStep& out, MarkedRun& run) {
        const Output output = out.step.output;
        const bool known = run.right.has(output);
        if (known) out.right = run.right.outcome[output];
        out.expected = out.right;
        if (known) out.expected = from_own(run, run.own, output);
        show_as(out, run);
        if (settled_without_judging(out, known)) return;
        const RouteBands by_own = route_bands(run.right, run.own);
        Band own_band = as_a_step(output, by_own[output]);
        for (const StatedValue& before : run.stated) {
            Outcome<double> unrounded = run.own;
            unrounded.put(before.output, before.si + rounded_away(before));
            const double moved = std::fabs(from_own(run, unrounded, output) - out.expected);
            own_band = {own_band.low - moved, own_band.high + moved};
        }
        judge(out, as_a_step(output, run.bands[output]), own_band, out.right, out.expected);
        if (is_explained(out)) {
            const StatedValue stated[]{*out.answer.value};
            out.finding = find_slips(run.right, stated, run.own);
        }
        run.own.put(output, out.answer.value->si);
        run.stated.push_back(*out.answer.value);
    }

    static double from_own(const MarkedRun& run, const Outcome<double>& own, Output output) {
        return evaluate(run.right.measured, Method{}, run.right.outcome.ready - own.ready, own)[output];
    }

    /// Right by the readings, or for what the student had before; else in another unit; else not.
    void judge(MarkedStep& out, const Band& right_band, const Band& own_band, double right, double expected) const {
        const auto fits = [&](const StatedValue& value, const Band& band, double exact) {
            const double off = std::fabs(value.si - exact);
            return is_right(value, band) || off <= value.half_unit * (1 + 1e-9) ||
                   off <= rules_.tolerance * std::fabs(exact);
        };
        const auto judged = [&](const StatedValue& value) {
            const bool follows = fits(value, own_band, expected);
            if (fits(value, right_band, right)) {
                out.does_not_follow = !follows;
                return Judgement::right;
            }
            return follows ? Judgement::carried_forward : Judgement::not_right;
        };
        out.unit_missing = !out.answer.unit_given;
        out.judgement = judged(*out.answer.value);
        if (out.judgement != Judgement::not_right) return;
        out.does_not_follow = false;
        const NumberText& number = out.answer.number;
        // A number of one figure is near enough to something in some unit.
        if (out.answer.value->half_unit > 0.02 * std::fabs(out.answer.value->si)) return;
        for (const UnitId other : units_of(info(out.answer.unit).measure)) {
            StatedValue value = *out.answer.value;
            value.si = to_base(number.value, other);
            value.half_unit = 0.5 * difference_to_base(std::pow(10.0, number.last_place), other);
            const Judgement there = judged(value);
            if (there == Judgement::not_right) continue;
            // The number is the right one, only its unit is not: what follows goes on with the quantity meant.
            out.judgement = there;
            out.unit_wrong = !out.unit_missing;
            out.answer.value = value;
            return;
        }
    }

    bool is_explained(const MarkedStep& out) const {
        return out.judgement == Judgement::not_right &&
               (explained_ == nullptr || std::find(explained_->begin(), explained_->end(), out.step) != explained_->end());
    }

    void show_as(MarkedStep& out, const MarkedRun& run) const {
        for (const WorkingStep& step : run.working) {
            if (step.output != out.step.output) continue;
            out.unit = step.unit;
            out.decimals = step.decimals;
            count_figures(out, step.figures);
        }
    }

    void count_figures(MarkedStep& out, int figures) const {
        out.figures_off = {};
        if (out.answer.value && figures < 15) {
            const int off = out.answer.number.figures - figures;
            if (std::abs(off) > rules_.spare_figures) out.figures_off = off;
        }
    }

    /// Mean and percent error come of the last lines that the student had, and where one is blank of the right one.
    void judge_sheet_step(MarkedStep& out) {
        const Output last = sought_output(record_);
        std::vector<double> right;
        std::vector<double> own;
        Band band{0, 0};
        Band own_band{0, 0};
        for (std::size_t i = 0; i < runs_.size(); ++i) {
            const MarkedRun& run = runs_[i];
            if (!record_.runs[i].counts() || !run.right.has(last)) continue;
            right.push_back(run.right.outcome[last]);
            own.push_back(run.own.ready.has(last) ? run.own[last] : right.back());
            const Band here = run.bands[last];
            const Band there = run.own.ready.has(last) ? around(own.back(), rounded_away(run.stated.back())) : here;
            band = {band.low + here.low, band.high + here.high};
            own_band = {own_band.low + there.low, own_band.high + there.high};
        }
        if (right.empty()) {
            settled_without_judging(out, false);
            return;
        }
        const auto count = static_cast<double>(right.size());
        if (out.step.mean) take_ratio_of_totals(band, right);
        band = {band.low / count, band.high / count};
        own_band = {own_band.low / count, own_band.high / count};
        double exact = sample_of(right).mean;
        double expected = out_of_mean(own);
        if (own_mean_) own_band = around(expected, rounded_away(*own_mean_));
        show_as(out, runs_.front());
        if (!out.step.mean) {
            band = compared(band);
            own_band = compared(own_band);
            exact = percent_error_of(exact);
            expected = percent_error_of(expected);
            // That of the mean may have more figures than that of the first run.
            count_figures(out, figures_shown(out.step.output, expected, out.unit, out.decimals));
        }
        out.right = exact;
        out.expected = expected;
        if (settled_without_judging(out, runs_.front().right.has(out.step.output))) return;
        if (!out.step.mean && record_.conventions.percent_error == Conventions::PercentError::magnitude) {
            out.answer.value->si = std::copysign(out.answer.value->si, expected);
        }
        judge(out, band, own_band, exact, expected);
        if (is_explained(out)) explain_sheet_step(out, own);
        if (out.step.mean) own_mean_ = *out.answer.value;
    }

    /// All volumes over all amounts is a mean too, weighted by the amounts: an accepted way. So is all mass over all
    /// amounts; a share has no such totals.
    void take_ratio_of_totals(Band& sums, const std::vector<double>& values) const {
        const Output sought = sought_output(record_);
        if (sought == Output::purity_found || sought == Output::alloy_share) return;
        const Output weight = is_by_volume(sought) ? Output::amount_by_volume : Output::amount_of_gas;
        double weighted = 0;
        double weights = 0;
        std::size_t k = 0;
        for (std::size_t i = 0; i < runs_.size(); ++i) {
            const Assessment& run = runs_[i].right;
            if (!record_.runs[i].counts() || !run.has(sought)) continue;
            weighted += values[k++] * run.outcome[weight];
            weights += run.outcome[weight];
        }
        const double moved = static_cast<double>(values.size()) * (weighted / weights - sample_of(values).mean);
        sums.low += std::min(moved, 0.0);
        sums.high += std::max(moved, 0.0);
    }

    void explain_sheet_step(MarkedStep& out, std::vector<double> values) {
        const StatedValue& stated = *out.answer.value;
        if (!out.step.mean) {
            Outcome<double> before;
            before.put(sought_output(record_), out_of_mean(values));
            const StatedValue answers[]{stated};
            out.finding = find_slips(runs_.front().right, answers, before);
            for (double& value : values) value = percent_error_of(value);
        }
        if (values.size() > 1) out.mean_slip = mean_slip_of(values, stated.si, stated.half_unit);
    }
    double out_of_mean(const std::vector<double>& values) const { return own_mean_ ? own_mean_->si : sample_of(values).mean; }

    double percent_error_of(double found) const {
        const Assessment& run = runs_.front().right;
        Outcome<double> known;
        known.put(sought_output(record_), found);
        return evaluate(run.measured, Method{}, run.outcome.ready - known.ready, known)[Output::percent_error];
    }
    /// With the accepted value as each class has it.
    Band compared(Band found) const {
        const Assessment& run = runs_.front().right;
        Band reached{HUGE_VAL, -HUGE_VAL};
        for (const double end : {found.low, found.high}) {
            Outcome<double> known;
            known.put(sought_output(record_), end);
            const Band band = route_bands(run, known)[Output::percent_error];
            reached = {std::min(reached.low, band.low), std::max(reached.high, band.high)};
        }
        return reached;
    }

    void add_points(MarkedSheet& sheet) const {
        for (MarkedStep& step : sheet.steps) {
            if (step.judgement == Judgement::not_known) continue;
            sheet.most_points += rules_.points_per_step;
            if (step.judgement == Judgement::right) step.points = rules_.points_per_step;
            if (step.judgement == Judgement::carried_forward) step.points = rules_.points_carried;
            sheet.points += step.points;
            sheet.unit_cost = sheet.unit_cost || step.unit_missing || step.unit_wrong;
            sheet.figures_cost = sheet.figures_cost || step.figures_off != 0;
        }
        if (sheet.unit_cost) sheet.points -= rules_.points_off_unit;
        if (sheet.figures_cost) sheet.points -= rules_.points_off_figures;
        sheet.points = std::max(sheet.points, 0.0);
    }

    const Record& record_;
    const MarkingRules& rules_;
    const std::vector<SheetStep>* explained_;
    std::vector<MarkedRun> runs_;
    std::optional<StatedValue> own_mean_;
};

}  // namespace

MarkedSheet mark_sheet(const Record& record, const MarkingRules& rules, const std::vector<SheetStep>* explained) {
    return Marker(record, rules, explained).mark();
}

}  // namespace overwater
