#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace overwater {

/// Begins a fragment that holds a course (core/record/course_json.hpp).
inline constexpr std::string_view course_link = "course=";

/// A text in the fragment of the page's address, which no server gets to see: `name` and the text in the alphabet of
/// RFC 4648, 5 (base64url), without padding.
std::string fragment_of(std::string_view name, std::string_view text);

/// The text in a fragment that begins with `name`; empty where what stands there is no base64url. Nothing where the
/// fragment is of another name.
std::optional<std::string> text_in_fragment(std::string_view name, std::string_view fragment);

}  // namespace overwater
