#pragma once

#include <string>

#include "web/app/language.hpp"

namespace overwater {

/// What a record with this name is called on the page: its name, or that it has none.
std::string record_title(const Language& language, const std::string& name);
/// What a copy of it is called.
std::string copy_title(const Language& language, const std::string& name);

}  // namespace overwater
