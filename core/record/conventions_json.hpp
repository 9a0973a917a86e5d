#pragma once

#include <string>
#include <string_view>

#include "core/record/json_members.hpp"
#include "core/result/conventions.hpp"

namespace overwater {

/// Reads conventions. Unknown choices fall back to their defaults and are put into `kept` with the unknown members.
void read_conventions(const Json& object, const JsonPlace& place, Complaints& complaints, Conventions& into,
                      std::string& kept);

/// All conventions by value. A choice in `kept` is written where the known one was left at its default.
Json conventions_json(const Conventions& conventions, std::string_view kept);

}  // namespace overwater
