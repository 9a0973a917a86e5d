#pragma once

#include <vector>

#include "core/record/json_members.hpp"
#include "core/record/record.hpp"

namespace overwater {

/// Reads entries by field; unknown fields are kept. An entry whose unit does not belong to its field is complained about
/// and, in a newer record, kept whole: its number must not be taken for one in the usual unit.
void read_entries(const Json& object, const JsonPlace& place, Complaints& complaints, Entries& into);
Json entries_json(const Entries& entries);

void read_answers(const Json& object, const JsonPlace& place, Complaints& complaints, std::vector<Answer>& into);
Json answers_json(const std::vector<Answer>& answers);

/// Puts a text under `name` unless it is empty: a missing text reads as an empty one.
void put_text(Json& object, const char* name, const std::string& text);

}  // namespace overwater
