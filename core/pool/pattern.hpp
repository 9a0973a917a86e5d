#pragma once

#include <string_view>
#include <vector>

#include "core/pool/class_set.hpp"
#include "core/quantity/message.hpp"

namespace overwater {

/// One thing that the numbers of a class say together, with its evidence in the message and the runs it is about.
struct Pattern {
    Message message;                    ///< what the numbers show
    std::string_view suspects;          ///< key of the sentence that says what is usually behind it
    std::vector<std::size_t> points{};  ///< indices into `ClassSet::points`; empty: all of them
};

/// What the class pattern says, the most telling first; empty where nothing stands out. It names first suspects, never a
/// verdict. The bands of percent are those of common slips; limits of scatter and swaps are common practice, no source.
/// Three points or more, else nothing.
std::vector<Pattern> patterns_of(const ClassSet& set);

}  // namespace overwater
