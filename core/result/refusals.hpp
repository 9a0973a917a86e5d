#pragma once

#include <vector>

#include "core/result/assess.hpp"

namespace overwater {

/// What each typed text makes impossible or cannot be read as: texts that are no number, readings beyond the scale,
/// masses that are not above zero, and the like.
std::vector<Check> refusals(const Readings& readings);

/// The key of the sentence for a text that is no number.
std::string_view key_of_text(Problem problem);

}  // namespace overwater
