#pragma once

#include <string>

#include "core/lesson/practice_code.hpp"
#include "web/app/language.hpp"

namespace overwater {

/// The teacher's key of a class as an HTML document without styles or scripts: for the numbers 1 to `students` and each
/// of their runs the code, what a perfect eye reads, what follows from it, and what went wrong unseen. Settings that
/// have no code give a key without rows.
std::string practice_key_html(const Language& language, const PracticeSettings& of_class, int students);

}  // namespace overwater
