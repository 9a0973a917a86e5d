#pragma once

#include "core/lesson/text_table.hpp"
#include "tests/fuzz/property.hpp"

/// Delimited text, as spreadsheets write it.

namespace overwater::fuzz {

/// Whether `written` is what a spreadsheet may be given for `cell`: the cell, the same behind an apostrophe, or with the
/// hyphen for a minus sign.
inline bool stands_for(const std::string& written, const std::string& cell) {
    constexpr std::string_view minus = "−";
    const std::string with_hyphen = cell.starts_with(minus) ? '-' + cell.substr(minus.size()) : cell;
    return written == with_hyphen || written == '\'' + with_hyphen;
}

inline std::string_view holds_for_table(std::string_view bytes) {
    const TextTable read = read_table(bytes);
    if (read.lines.size() != read.rows.size()) return "each row has its line";
    const auto ends = static_cast<std::size_t>(
        std::count_if(bytes.begin(), bytes.end(), [](char c) { return c == '\n' || c == '\r'; }));
    for (std::size_t i = 0; i < read.lines.size(); ++i) {
        if (read.lines[i] <= (i > 0 ? read.lines[i - 1] : 0)) return "each row begins in a line of its own";
        if (read.lines[i] > ends + 1) return "no line is behind the last one";
    }
    if (read.rows.empty()) return kept;
    // No table of ours has a header of one cell above rows of several: nothing in it would tell the separator.
    const bool wider = std::any_of(read.rows.begin(), read.rows.end(), [](const auto& row) { return row.size() > 1; });
    if (read.rows.front().size() == 1 && wider) return kept;

    const TextTable again = read_table(delimited(read.rows, read.separator));
    if (again.open_quote) return "what is written closes its quotes";
    if (again.rows.size() != read.rows.size()) return "each row is written as one row";
    for (std::size_t i = 0; i < read.rows.size(); ++i) {
        if (again.rows[i].size() != read.rows[i].size()) return "each cell is written as one cell";
        for (std::size_t k = 0; k < read.rows[i].size(); ++k) {
            const std::string& written = again.rows[i][k];
            if (!stands_for(written, read.rows[i][k])) return "a cell comes back as it was";
            if (!written.empty() && std::string_view("=@\t\r").find(written[0]) != std::string_view::npos)
                return "no cell is carried out as a formula";
        }
    }
    const TextTable twice = read_table(delimited(again.rows, again.separator));
    return twice.rows == again.rows ? kept : "what was written once is written the same again";
}

}  // namespace overwater::fuzz
