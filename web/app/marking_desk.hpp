#pragma once

#include <array>
#include <string>
#include <vector>

#include "core/lesson/marks_table.hpp"
#include "core/lesson/sheet_table.hpp"

namespace overwater {

/// The teacher's choices on the marking page, in the order of their fields.
inline constexpr std::array<std::string_view, 6> marking_rule_names{"step",    "carried",   "unit",
                                                                    "figures", "tolerance", "spare"};

/// What the marking page holds: nothing of it is in the record that is open.
struct MarkingDesk {
    std::array<std::string, marking_rule_names.size()> rules;  ///< as typed
    std::string text;                                          ///< typed or pasted
    std::vector<std::string> problems;                         ///< what was not taken, in words
    std::string from_open;                                     ///< readings that the open record gave, in words
    std::vector<Record> records;
    std::vector<MarkedRow> rows;  ///< of the records; those from `marked` on have to be marked yet
    std::size_t pasted = 0;       ///< how many of the records, the first, came from `text`
    std::size_t marked = 0;
    std::size_t open = ~std::size_t{0};  ///< the row whose steps are shown
};

class App;

/// The column `name` by the words of `key` in each language that is known: a table may come from a page in another one.
void add_column(std::vector<ColumnName>& names, const App& app, const std::string& key, std::string_view name);
/// Every word by which the page names a column, and every choice.
std::vector<ColumnName> sheet_columns(const App& app);
std::vector<ChoiceName> sheet_choices(const App& app);
/// Whether a file's text is JSON, by how it begins.
bool is_json(std::string_view text);

/// What the field of a rule means; nothing where it holds no possible number.
std::optional<double> marking_rule(std::string_view text, std::size_t rule);
MarkingRules marking_rules(const MarkingDesk& desk);

}  // namespace overwater
