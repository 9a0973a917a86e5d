#pragma once

#include <string>
#include <string_view>

namespace overwater {

/// A text handed to a function, not kept: std::string_view whose conversions are calls. There are a thousand of them in
/// the panels, and each inlined conversion is 40 bytes of WebAssembly.
class TextView : public std::string_view {
public:
    TextView() = default;
    TextView(const char* text);
    TextView(const std::string& text);
    TextView(std::string_view text) : std::string_view(text) {}
};

}  // namespace overwater
