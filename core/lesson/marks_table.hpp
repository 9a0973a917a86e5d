#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/lesson/marking.hpp"
#include "core/lesson/sheet_table.hpp"

/// What a marked class comes to as a table.

namespace overwater {

/// A sheet of the class, marked.
struct MarkedRow {
    std::string group;  ///< its number, or the name of its record
    std::vector<std::string_view> asked;  ///< names of the steps that the sheet asked for; empty: all of them
    MarkedSheet sheet;
    std::vector<Misread> misread;
};

/// Marks the row's sheet; steps that it did not ask for are left out of it and cost nothing.
void mark(MarkedRow& row, const Record& record, const MarkingRules& rules);

/// The sign of a judgement: ✓ right, → right from the step before, ✗ not right, – not there or not to be judged.
std::string_view sign_of(Judgement judgement);

/// One thing to be said of a sheet; what `step` and `field` leave open belongs to the whole sheet.
struct Remark {
    enum class Kind : std::uint8_t {
        slip,            ///< a step is not right
        no_number,       ///< a step's answer cannot be read
        does_not_follow, ///< right, but not from the numbers before it
        misread,         ///< a practice reading
        blank,           ///< so many steps have no answer
        readings,        ///< so many steps could not be judged: readings are missing
        unit,            ///< a unit is missing or wrong: once a sheet
        figures          ///< likewise
    };
    Kind kind = Kind::slip;
    std::size_t step = 0;  ///< index into the sheet's steps
    Misread reading;
    int count = 0;
};

/// The most telling first: wrong steps in the order of the sheet, then misread readings, then what costs once a sheet, then
/// what is missing. Empty where all is right.
std::vector<Remark> remarks_of(const MarkedRow& row);

/// The steps of all sheets together, in the order of the one with most steps; those it lacks behind.
std::vector<SheetStep> all_steps(const std::vector<MarkedRow>& rows);

/// A number of points, as short as it is: "5", "5.5".
std::string points_text(double points, DecimalSign sign);

}  // namespace overwater
