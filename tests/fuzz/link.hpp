#pragma once

#include "tests/fuzz/property.hpp"
#include "web/app/fragment.hpp"

/// Texts in the fragment of an address.

namespace overwater::fuzz {

inline std::string_view holds_for_link(std::string_view bytes) {
    for (const std::string_view name : {"record=", "plan="}) {
        const auto text = text_in_fragment(name, bytes);
        if (text.has_value() != bytes.starts_with(name)) return "a fragment is known by its name";
        if (text && !text->empty() && text_in_fragment(name, fragment_of(name, *text)) != text)
            return "what was read can be written and read again";

        // The bytes as the text of a link of our own.
        const std::string fragment = fragment_of(name, bytes);
        if (text_in_fragment(name, fragment) != std::string(bytes)) return "a text comes back from its link";
        if (fragment.size() - name.size() != (bytes.size() * 4 + 2) / 3) return "three bytes are four signs";
        constexpr std::string_view signs =
            "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";  // RFC 4648, 5
        if (fragment.find_first_not_of(signs, name.size()) != std::string::npos) return "a link holds base64url alone";
    }
    return kept;
}

}  // namespace overwater::fuzz
