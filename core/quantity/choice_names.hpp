#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>

namespace overwater {

/// The enumerator whose place in `names` has this name, or nothing. `names` are in the order of the enumeration.
template <class Choice, std::size_t Count>
constexpr std::optional<Choice> choice_named(const std::array<std::string_view, Count>& names, std::string_view name) {
    for (std::size_t i = 0; i < Count; ++i) {
        if (names[i] == name) return static_cast<Choice>(static_cast<std::uint8_t>(i));
    }
    return std::nullopt;
}

}  // namespace overwater
