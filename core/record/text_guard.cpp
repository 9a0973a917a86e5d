#include "core/record/text_guard.hpp"

#include <array>

#include "core/quantity/utf8.hpp"
#include "core/record/json.hpp"

namespace overwater {

namespace {

bool is_utf8(std::string_view text) {
    for (std::size_t at = 0; at < text.size();) {
        const CodePoint point = code_point_at(text, at);
        if (point.value == not_utf8) return false;
        at += point.bytes;
    }
    return true;
}

/// Follows the brackets, without asking whether they fit together: that is the parser's task.
std::optional<Message> refuse_shape(std::string_view text) {
    // Colons of each open object or array. A member costs a search among those before it, so their number is capped.
    std::array<std::size_t, most_record_levels + 1> members{};
    std::size_t level = 0;
    bool in_string = false;
    for (std::size_t at = 0; at < text.size(); ++at) {
        const char sign = text[at];
        if (in_string) {
            if (sign == '\\') ++at;
            if (sign == '"') in_string = false;
            continue;
        }
        switch (sign) {
            case '"': in_string = true; break;
            case '{':
            case '[':
                if (level == most_record_levels) {
                    return Message{"import.too_deep"}.count("levels", static_cast<long long>(most_record_levels));
                }
                members[++level] = 0;
                break;
            case '}':
            case ']':
                if (level > 0) --level;
                break;
            case ':':
                if (++members[level] > most_record_members) {
                    return Message{"import.too_many_members"}.count("members",
                                                                    static_cast<long long>(most_record_members));
                }
                break;
            default: break;
        }
    }
    return std::nullopt;
}

}  // namespace

std::optional<Message> refuse_text(std::string_view text) {
    if (text.size() > most_record_bytes) return Message{"import.too_large"};
    if (!is_utf8(text)) return Message{"import.not_utf8"};
    return refuse_shape(text);
}

std::string_view without_byte_order_mark(std::string_view text) {
    constexpr std::string_view mark = "\xEF\xBB\xBF";
    if (text.substr(0, mark.size()) == mark) text.remove_prefix(mark.size());
    return text;
}

}  // namespace overwater
