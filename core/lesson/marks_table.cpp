#include "core/lesson/marks_table.hpp"

#include <algorithm>

#include "core/quantity/number_format.hpp"

namespace overwater {

void mark(MarkedRow& row, const Record& record, const MarkingRules& rules) {
    row.sheet = mark_sheet(record, rules);
    if (row.asked.empty()) return;
    std::erase_if(row.sheet.steps, [&](const MarkedStep& step) {
        const bool asked = std::find(row.asked.begin(), row.asked.end(), step_name(step.step)) != row.asked.end();
        if (!asked && step.judgement != Judgement::not_known) row.sheet.most_points -= rules.points_per_step;
        return !asked;
    });
}

std::string_view sign_of(Judgement judgement) {
    switch (judgement) {
        case Judgement::right: return "✓";
        case Judgement::carried_forward: return "→";
        case Judgement::not_right: return "✗";
        case Judgement::blank:
        case Judgement::no_number:
        case Judgement::not_known: break;
    }
    return "–";
}

std::vector<Remark> remarks_of(const MarkedRow& row) {
    std::vector<Remark> remarks;
    const auto add = [&](Remark::Kind kind, std::size_t step, int count) {
        Remark remark;
        remark.kind = kind;
        remark.step = step;
        remark.count = count;
        remarks.push_back(remark);
    };
    int blank = 0;
    int open = 0;
    for (std::size_t i = 0; i < row.sheet.steps.size(); ++i) {
        const MarkedStep& step = row.sheet.steps[i];
        blank += step.judgement == Judgement::blank ? 1 : 0;
        open += step.judgement == Judgement::not_known ? 1 : 0;
        if (step.judgement == Judgement::not_right) add(Remark::Kind::slip, i, 0);
        if (step.judgement == Judgement::no_number) add(Remark::Kind::no_number, i, 0);
        if (step.does_not_follow) add(Remark::Kind::does_not_follow, i, 0);
    }
    for (const Misread& reading : row.misread) {
        add(Remark::Kind::misread, 0, 0);
        remarks.back().reading = reading;
    }
    if (row.sheet.unit_cost) add(Remark::Kind::unit, 0, 0);
    if (row.sheet.figures_cost) add(Remark::Kind::figures, 0, 0);
    if (blank > 0) add(Remark::Kind::blank, 0, blank);
    if (open > 0) add(Remark::Kind::readings, 0, open);
    return remarks;
}

std::vector<SheetStep> all_steps(const std::vector<MarkedRow>& rows) {
    std::vector<SheetStep> steps;
    const MarkedRow* longest = nullptr;
    for (const MarkedRow& row : rows) {
        if (longest == nullptr || row.sheet.steps.size() > longest->sheet.steps.size()) longest = &row;
    }
    const auto add = [&](const MarkedRow& row) {
        for (const MarkedStep& step : row.sheet.steps) {
            if (std::find(steps.begin(), steps.end(), step.step) == steps.end()) steps.push_back(step.step);
        }
    };
    if (longest != nullptr) add(*longest);
    for (const MarkedRow& row : rows) add(row);
    return steps;
}

std::string points_text(double points, DecimalSign sign) { return without_end_zeros(format_fixed(points, 2, sign), sign); }

}  // namespace overwater
