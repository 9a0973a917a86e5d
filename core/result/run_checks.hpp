#pragma once

#include <cstddef>
#include <vector>

#include "core/quantity/message.hpp"
#include "core/result/assess.hpp"

namespace overwater {

/// A question about runs of one record that do not go together. Nothing is stopped by it.
struct RunCheck {
    std::vector<std::size_t> runs;  ///< their indices in the list given
    Message message;                ///< its places `first` and `second` count the runs from 1
};

/// Compares the runs of one record: two rows exchanged, equal to the last digit, more metal with less gas (which an
/// exchange explains, so it is not said beside one), and rooms that cannot be those of one lesson. Runs that do not
/// count are the caller's to leave out.
std::vector<RunCheck> run_checks(const std::vector<Assessment>& runs);

}  // namespace overwater
