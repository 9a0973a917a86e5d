#pragma once

#include <optional>
#include <string_view>
#include <vector>

/// Finding parts of a JSON text as they stand, letter by letter: a record of a newer program is handed on as it came, and
/// a file of many records is taken apart before each is read under the limits of core/record/json.hpp. Any bytes may be
/// given; depth costs nothing. What lies inside a part is not checked here.

namespace overwater {

/// The value of a member of the object that `json` is, the last one where the name is there twice; nothing where there is
/// none or the text is no whole object.
std::optional<std::string_view> member_text(std::string_view json, std::string_view name);

/// The elements of the array that `json` is; nothing where the text is no whole array.
std::optional<std::vector<std::string_view>> element_texts(std::string_view json);

}  // namespace overwater
