#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

#include "core/quantity/message.hpp"
#include "core/record/record.hpp"

/// Records as JSON text (record.md).

namespace overwater {

inline constexpr std::size_t most_record_bytes = 1'000'000;
inline constexpr std::size_t most_record_levels = 32;
inline constexpr std::size_t most_record_members = 256;  ///< in one object

enum class JsonLayout {
    compact,  ///< one line, for storage and links
    indented  ///< by two spaces, for a file
};

struct LoadResult {
    std::optional<Record> record;
    Message problem{""};  ///< why there is no record, or `import.newer`
    bool newer = false;   ///< made by a newer program: to be read, not to be written
};

/// The record in `text`, any bytes. Every part of the record has what record.md promises: 1 to 6 runs, units that belong
/// to their fields, finite numbers. The problem is one of `import.too_large`, `import.too_deep`,
/// `import.too_many_members`, `import.not_utf8`, `import.not_json`, `import.not_a_record`, `import.newer` (with a
/// record), `import.wrong_type` {member, wanted}, `import.unknown_unit` {member, unit}, `import.out_of_range` {member},
/// `import.too_many_runs` {count}.
LoadResult record_from_json(std::string_view text);

/// The record as JSON, members always in the same order. Bytes that are no UTF-8 become U+FFFD.
std::string record_to_json(const Record& record, JsonLayout layout = JsonLayout::indented);

}  // namespace overwater
