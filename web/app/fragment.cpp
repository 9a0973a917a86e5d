#include "web/app/fragment.hpp"

#include <cstdint>

namespace overwater {

namespace {

constexpr std::string_view alphabet = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";

}  // namespace

std::string fragment_of(std::string_view name, std::string_view text) {
    std::string out(name);
    std::uint32_t bits = 0;
    int waiting = 0;
    for (const char c : text) {
        bits = bits << 8U | static_cast<unsigned char>(c);
        for (waiting += 8; waiting >= 6; waiting -= 6) out += alphabet[bits >> (waiting - 6) & 63U];
    }
    if (waiting > 0) out += alphabet[bits << (6 - waiting) & 63U];
    return out;
}

std::optional<std::string> text_in_fragment(std::string_view name, std::string_view fragment) {
    if (!fragment.starts_with(name)) return std::nullopt;
    std::string text;
    std::uint32_t bits = 0;
    int waiting = 0;
    for (const char c : fragment.substr(name.size())) {
        const std::size_t six = alphabet.find(c);
        if (six == std::string_view::npos) return std::string();
        bits = bits << 6U | static_cast<std::uint32_t>(six);
        waiting += 6;
        if (waiting < 8) continue;
        waiting -= 8;
        text += static_cast<char>(bits >> waiting & 0xFFU);
    }
    return text;
}

}  // namespace overwater
