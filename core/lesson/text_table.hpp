#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace overwater {

struct TextTable {
    char separator = ',';
    std::vector<std::vector<std::string>> rows;  ///< lines that hold nothing are left out
    std::vector<std::size_t> lines;              ///< number of the line in which each row begins, from 1
    bool open_quote = false;                     ///< a quote had no end: what follows it is one cell
};

/// Takes delimited text apart by RFC 4180, and as spreadsheets write it: separated by tab, semicolon or comma, whichever
/// stands first in this order in the header line outside of quotes; lines end in CR, LF or both; a cell may be quoted,
/// with "" for a quote in it; a byte order mark is passed over. Any bytes may be given.
TextTable read_table(std::string_view text);

/// The rows as text that spreadsheets open: RFC 4180 with `separator`, a byte order mark in front since without one some
/// take UTF-8 for another code. A cell that would be taken for a formula begins with an apostrophe; numbers that may be
/// below zero are to be written with the sign U+2212, which begins none.
std::string delimited(const std::vector<std::vector<std::string>>& rows, char separator);

}  // namespace overwater
