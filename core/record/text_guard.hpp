#pragma once

#include <optional>
#include <string_view>

#include "core/quantity/message.hpp"

namespace overwater {

/// What must hold before a text is given to the JSON parser, which would take any nesting and any number of members:
/// size, levels and members as in json.hpp, and UTF-8. Reads each byte once. Nothing if all is well.
std::optional<Message> refuse_text(std::string_view text);

/// `text` without a byte order mark at its start.
std::string_view without_byte_order_mark(std::string_view text);

}  // namespace overwater
