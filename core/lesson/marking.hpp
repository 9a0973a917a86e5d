#pragma once

#include <cstdint>
#include <vector>

#include "core/lesson/mean_slip.hpp"
#include "core/lesson/sheet_steps.hpp"
#include "core/lesson/stated.hpp"
#include "core/record/record.hpp"

/// A student's sheet marked step by step: right, right from an earlier slip, or not right and by which slip. What a step
/// should be is always worked out from what the student had before it (method.md, section 7).

namespace overwater {

/// The teacher's choices.
struct MarkingRules {
    double points_per_step = 1;
    double points_carried = 1;     ///< for a step that is right from an earlier slip
    double points_off_unit = 1;    ///< once a sheet
    double points_off_figures = 0; ///< once a sheet
    double tolerance = 0;          ///< relative, beside what rounding and routes give: 0.01 for 1 %
    int spare_figures = 1;         ///< how many figures more or fewer than the rule says are let pass

    friend bool operator==(const MarkingRules&, const MarkingRules&) = default;
};

enum class Judgement : std::uint8_t {
    blank,
    no_number,        ///< something that cannot be read: nothing is guessed
    not_known,        ///< the step cannot be worked out: readings are missing
    right,
    carried_forward,  ///< right for what stood before it
    not_right
};

struct MarkedStep {
    SheetStep step;
    StatedAnswer answer;
    Judgement judgement = Judgement::blank;
    bool does_not_follow = false;  ///< the right number, but not from the student's own numbers before it
    bool unit_missing = false;
    bool unit_wrong = false;       ///< right in another unit than the one written
    int figures_off = 0;           ///< above 0: so many too many
    double right = 0;              ///< by the readings alone, SI
    double expected = 0;           ///< from what the student had before it, SI
    UnitId unit = UnitId::none;    ///< in which `expected` is shown
    int decimals = 0;              ///< ... and with how many decimals
    SlipFinding finding;           ///< where it is not right
    MeanSlip mean_slip = MeanSlip::none;
    double points = 0;
};

struct MarkedSheet {
    std::vector<MarkedStep> steps;
    bool unit_cost = false;     ///< a unit was missing or wrong
    bool figures_cost = false;
    double points = 0;
    double most_points = 0;     ///< of all steps that could be marked
};

/// Marks the answers in `record` (those of its runs, and of the whole record) by its own readings and conventions. Where
/// `explained` is given, slips are searched for those steps alone: some milliseconds each that is not right.
MarkedSheet mark_sheet(const Record& record, const MarkingRules& rules = {},
                       const std::vector<SheetStep>* explained = nullptr);

}  // namespace overwater
