#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "core/record/record.hpp"

/// What lies in the browser's storage under a record's key (record.md).

namespace overwater {

struct Stored {
    std::int64_t revision = 0;  ///< grows by one with each write; tells who wrote last
    std::string saved;          ///< UTC
    std::string app;            ///< version of the program that wrote it
    Record record;
    bool newer = false;  ///< written by a newer program: to be read, not to be written
};

/// The text to store: one line, at most `most_record_bytes` if it is to be read again.
std::string stored_from(const Record& record, std::int64_t revision, std::string_view saved,
                        std::string_view app = {});

/// What a stored text holds; nothing if it is damaged or no record. Any bytes may be given.
std::optional<Stored> stored_to(std::string_view text);

}  // namespace overwater
