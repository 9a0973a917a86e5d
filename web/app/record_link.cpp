#include "web/app/record_link.hpp"

#include <cstdint>

#include "core/record/json.hpp"

namespace overwater {

namespace {

constexpr std::string_view name = "record=";
constexpr std::string_view alphabet = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";

}  // namespace

std::string record_fragment(const Record& record) {
    std::string out(name);
    std::uint32_t bits = 0;
    int waiting = 0;
    for (const char c : record_to_json(record, JsonLayout::compact)) {
        bits = bits << 8U | static_cast<unsigned char>(c);
        for (waiting += 8; waiting >= 6; waiting -= 6) out += alphabet[bits >> (waiting - 6) & 63U];
    }
    if (waiting > 0) out += alphabet[bits << (6 - waiting) & 63U];
    return out;
}

std::optional<std::string> record_text_in(std::string_view fragment) {
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
