#pragma once

#include <string_view>
#include <vector>

#include "core/record/record.hpp"

/// What a student's sheet asks for, in its order, and where the answers to it are kept.

namespace overwater {

/// A step of the sheet: an output of one run, or of the whole sheet.
struct SheetStep {
    Output output = Output::count;
    int run = -1;         ///< index of the run; -1: of the whole sheet
    bool mean = false;    ///< of the molar volumes of the runs

    friend bool operator==(const SheetStep&, const SheetStep&) = default;
};

/// The chain a sheet asks for: gas volume, vapour pressure, dry pressure, amounts, volume at standard conditions and
/// molar volume of each run, then mean (of several runs) and percent error. By the conventions, some are not asked. For
/// another last line the amount of gas by its volume takes the place of what comes from the mass, but for the gas
/// constant; a percent error is asked where something is known to compare with.
std::vector<SheetStep> sheet_steps(const Record& record);

/// Whether any sheet asks for this output.
bool is_on_a_sheet(Output output);

/// The answers among which that to `step` is kept: of its run, or of the whole record.
const std::vector<Answer>& answers_of(const Record& record, const SheetStep& step);
std::vector<Answer>& answers_of(Record& record, const SheetStep& step);

/// The name under which an answer is kept in a record: that of the output, or "mean".
std::string_view step_name(const SheetStep& step);

}  // namespace overwater
