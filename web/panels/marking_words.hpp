#pragma once

#include <string>

#include "core/lesson/marks_table.hpp"

namespace overwater {

class Language;

/// A remark in a sentence.
std::string remark_words(const Language& language, const MarkedRow& row, const Remark& remark);
/// All remarks on a sheet, one behind the other; where there is none, that all is right.
std::string all_remarks(const Language& language, const MarkedRow& row);

}  // namespace overwater
