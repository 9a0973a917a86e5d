#pragma once

#include <string>
#include <vector>

#include "web/ui/node.hpp"

namespace overwater {

/// A cell of a native table: "td", or "th" of a row or a column.
Element table_cell(const char* name, const std::string& words, const char* scope = nullptr);

/// A table with its caption and the names of its columns; the body is for the caller to add.
Element table_of(const std::string& caption, const std::vector<std::string>& columns);

/// A row: its name, and what stands in the other columns.
Element table_row(const std::string& name, const std::vector<std::string>& cells);

}  // namespace overwater
