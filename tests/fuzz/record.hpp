#pragma once

#include "core/record/json.hpp"
#include "tests/fuzz/property.hpp"

/// Records as JSON text.

namespace overwater::fuzz {

/// A record that was read: written and read again it is the same, in both layouts.
inline std::string_view comes_back(const Record& record) {
    if (record.runs.empty() || record.runs.size() > most_runs) return "a record has 1 to 6 runs";
    const std::string text = record_to_json(record, JsonLayout::compact);
    const LoadResult compact = record_from_json(text);
    if (!compact.record) return "what was written can be read";
    if (compact.newer) return "what was written is of this version";
    if (*compact.record != record) return "a record comes back as it was";
    if (record_to_json(*compact.record, JsonLayout::compact) != text) return "equal records have equal texts";
    const LoadResult indented = record_from_json(record_to_json(record));
    if (!indented.record || *indented.record != record) return "a file says what storage says";
    return kept;
}

inline std::string_view holds_for_record(std::string_view bytes) {
    const LoadResult load = record_from_json(bytes);
    if (!load.problem.key.empty() && !is_said(load.problem)) return "each problem has its sentence";
    if (load.newer && load.record && load.problem.key != "import.newer") return "a newer record says so";
    if (!load.record) return load.problem.key.empty() ? "what is refused says why" : kept;
    if (!load.newer && !load.problem.key.empty()) return "what is taken has no problem";
    if (load.newer) {
        const std::size_t runs = load.record->runs.size();
        return runs >= 1 && runs <= most_runs ? kept : "a newer record has 1 to 6 runs";
    }
    return comes_back(*load.record);
}

}  // namespace overwater::fuzz
