#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "core/quantity/message.hpp"
#include "core/record/record.hpp"

/// A class's sheets as they come out of a spreadsheet: delimited text with a header line, one row a run.

namespace overwater {

/// More is no class.
inline constexpr std::size_t longest_table = 1'000'000;
inline constexpr std::size_t most_sheets = 1000;

/// The words that name a column in the language of the page, beside the names of the records.
struct ColumnName {
    std::string words;
    std::string_view name;  ///< "group", "run", "practice_code", a field, an output of the sheet, "mean",
                            ///< "left_out" (why a run does not count), or "passed_over"
};
/// The words of a choice, such as "higher inside".
struct ChoiceName {
    std::string words;
    Field field = Field::count;
    std::string_view value;
};

struct ClassSheet {
    int group = 0;  ///< as the column says, else the number of the sheet
    Record record;
};

struct ClassTable {
    std::vector<ClassSheet> sheets;
    std::vector<std::string_view> asked;  ///< the steps that have a column
    std::vector<Field> readings;          ///< those that have a column
    std::vector<Field> from_open;   ///< readings without a column that rows without a code have from the open record
    std::vector<Message> problems;  ///< whatever was not taken
};

/// The sheets in `text`. Rows with the same group, or without one the same practice code, are runs of one sheet. Readings
/// that a row lacks are those of `open` (conventions too), or by the practice code what its instruments truly show. A
/// unit stands in the cell, or for all of a column in brackets behind its name.
///
/// With `SheetsFor::pooling` answers are passed over, what has to be there is a reading, and nothing that a group reads for
/// itself (mass, scale reading, whatever has a column) is taken from `open`.
enum class SheetsFor : std::uint8_t { marking, pooling };
ClassTable read_sheets(std::string_view text, const std::vector<ColumnName>& columns,
                       const std::vector<ChoiceName>& choices, const Record& open,
                       SheetsFor purpose = SheetsFor::marking);

/// A reading of a practice run that is off by more than half a division, or a digit that was not copied.
struct Misread {
    Field field = Field::count;
    int run = -1;  ///< index of the run; -1: of all
};
/// Those of a record with a practice code; readings that have no text do not count.
std::vector<Misread> misread(const Record& record);
/// Gives a record with a practice code the true readings where it has none. False where the code is none.
bool complete_from_code(Record& record);

}  // namespace overwater
