#pragma once

#include <string>
#include <vector>

#include "core/explain/working.hpp"
#include "core/lesson/marking.hpp"

namespace overwater {

/// How much of a checked step is shown; each comes after a press of its own.
enum class Help : std::uint8_t { none, judgement, slip, step };

/// A step of the sheet as it was when it was checked.
struct CheckedStep {
    MarkedStep marked;
    std::vector<StatedStep> had;  ///< the student's numbers before it; of a mean, the values to be averaged
    Help help = Help::judgement;
    bool changed = false;  ///< something was typed since: the judgement no longer holds
};

/// What the page of answers holds beside the record: gone with the page.
struct AnswersDesk {
    std::vector<CheckedStep> checked;

    const CheckedStep* find(const SheetStep& step) const {
        for (const CheckedStep& one : checked) {
            if (one.marked.step == step) return &one;
        }
        return nullptr;
    }
    CheckedStep* find(const SheetStep& step) {
        return const_cast<CheckedStep*>(static_cast<const AnswersDesk*>(this)->find(step));
    }
};

}  // namespace overwater
