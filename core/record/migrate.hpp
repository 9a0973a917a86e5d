#pragma once

#include "core/record/json_members.hpp"

namespace overwater {

/// Brings a record of version `from` (1 or more) up to `record_version`. A newer one is left as it is.
void migrate(Json& record, int from);

}  // namespace overwater
