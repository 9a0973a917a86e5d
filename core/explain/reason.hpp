#pragma once

#include <string_view>

#include "core/result/assess.hpp"

namespace overwater {

/// Key of the sentence that says why a step of the working is done as it is done in this run; empty for an output that
/// is no step of a working, or that this run does not ask for.
std::string_view reason_of(const Assessment& assessment, Output output);

}  // namespace overwater
