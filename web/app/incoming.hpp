#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/record/record.hpp"

namespace overwater {

/// A record as it came in a file.
struct Incoming {
    Record record;
    bool newer = false;      ///< made by a newer program
    std::string as_it_came;  ///< then its JSON
};

struct Incomings {
    std::vector<Incoming> records;
    std::optional<Message> problem;  ///< then nothing of the file is taken
};

/// The records of a file, which holds one or many. Any bytes may be given.
Incomings records_in(std::string_view text);

}  // namespace overwater
