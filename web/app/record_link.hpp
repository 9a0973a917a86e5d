#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/record/record.hpp"

namespace overwater {

/// A record in the fragment of the page's address (fragment.hpp): "record=" and its JSON.
std::string record_fragment(const Record& record);

/// The JSON text in a fragment; empty where what stands there is no base64url. Nothing where the fragment has no record.
std::optional<std::string> record_text_in(std::string_view fragment);

}  // namespace overwater
