#include "web/app/files_scan.hpp"

#include <cstddef>

namespace overwater {

namespace {

class Scan {
public:
    explicit Scan(std::string_view text) : text_(text) {}

    bool take(char sign) {
        space();
        if (at_ >= text_.size() || text_[at_] != sign) return false;
        ++at_;
        return true;
    }
    bool at_end() {
        space();
        return at_ == text_.size();
    }
    /// The next string, number, word, object or array; empty where there is none that ends.
    std::string_view value() {
        space();
        const std::size_t begin = at_;
        std::size_t depth = 0;
        while (at_ < text_.size()) {
            const char sign = text_[at_];
            if (sign == '"') {
                if (!string()) return {};
            } else if (sign == '{' || sign == '[') {
                ++depth;
                ++at_;
            } else if (sign == '}' || sign == ']') {
                if (depth == 0) break;
                --depth;
                ++at_;
            } else if (depth == 0 && (sign == ',' || sign == ':' || is_space(sign))) {
                break;
            } else {
                ++at_;
                continue;
            }
            if (depth == 0) break;
        }
        return depth == 0 ? text_.substr(begin, at_ - begin) : std::string_view{};
    }

private:
    static bool is_space(char sign) { return sign == ' ' || sign == '\t' || sign == '\n' || sign == '\r'; }
    void space() {
        while (at_ < text_.size() && is_space(text_[at_])) ++at_;
    }
    bool string() {
        for (++at_; at_ < text_.size(); ++at_) {
            if (text_[at_] == '\\') {
                ++at_;
            } else if (text_[at_] == '"') {
                ++at_;
                return true;
            }
        }
        return false;
    }

    std::string_view text_;
    std::size_t at_ = 0;
};

}  // namespace

std::optional<std::string_view> member_text(std::string_view json, std::string_view name) {
    Scan scan(json);
    if (!scan.take('{')) return std::nullopt;
    std::optional<std::string_view> found;
    if (scan.take('}')) return std::nullopt;
    do {
        const std::string_view key = scan.value();
        if (key.size() < 2 || key.front() != '"' || !scan.take(':')) return std::nullopt;
        const std::string_view value = scan.value();
        if (value.empty()) return std::nullopt;
        if (key.substr(1, key.size() - 2) == name) found = value;
    } while (scan.take(','));
    return scan.take('}') && scan.at_end() ? found : std::nullopt;
}

std::optional<std::vector<std::string_view>> element_texts(std::string_view json) {
    Scan scan(json);
    if (!scan.take('[')) return std::nullopt;
    std::vector<std::string_view> elements;
    if (scan.take(']')) {
        if (!scan.at_end()) return std::nullopt;
        return elements;
    }
    do {
        const std::string_view value = scan.value();
        if (value.empty()) return std::nullopt;
        elements.push_back(value);
    } while (scan.take(','));
    if (!scan.take(']') || !scan.at_end()) return std::nullopt;
    return elements;
}

}  // namespace overwater
