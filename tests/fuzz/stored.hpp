#pragma once

#include "core/record/stored.hpp"
#include "tests/fuzz/record.hpp"

/// What lies in the browser's storage.

namespace overwater::fuzz {

inline std::string_view holds_for_stored(std::string_view bytes) {
    const auto read = stored_to(bytes);
    if (!read) return kept;
    if (read->record.runs.empty() || read->record.runs.size() > most_runs) return "a record has 1 to 6 runs";
    if (read->newer) return kept;
    const auto again = stored_to(stored_from(read->record, read->revision, read->saved, read->app));
    if (!again) return "what was stored can be read";
    if (again->record != read->record) return "a record comes back from storage as it was";
    if (again->revision != read->revision) return "the revision comes back";
    if (again->saved != read->saved || again->app != read->app) return "when and by what it was written comes back";
    return again->newer ? "what was stored is of this version" : kept;
}

}  // namespace overwater::fuzz
