#include "core/quantity/text_view.hpp"

namespace overwater {

TextView::TextView(const char* text) : std::string_view(text) {}
TextView::TextView(const std::string& text) : std::string_view(text) {}

}  // namespace overwater
