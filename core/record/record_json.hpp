#pragma once

#include <optional>

#include "core/record/json.hpp"
#include "core/record/json_members.hpp"

namespace overwater {

/// The record in `json`, any value. Problems as in record_from_json; what concerns the text alone has been settled.
LoadResult read_record(Json json);

Json record_json(const Record& record);

}  // namespace overwater
