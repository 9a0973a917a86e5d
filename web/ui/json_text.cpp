#include "web/ui/json_text.hpp"

#include <cmath>
#include <cstdio>

namespace overwater {

void JsonText::separate() {
    if (need_comma_) out_ += ',';
    need_comma_ = true;
}

JsonText& JsonText::begin(char bracket) {
    separate();
    out_ += bracket;
    need_comma_ = false;
    return *this;
}

JsonText& JsonText::end(char bracket) {
    out_ += bracket;
    need_comma_ = true;
    return *this;
}

void JsonText::quote(std::string_view value) {
    out_ += '"';
    for (const char c : value) {
        const auto byte = static_cast<unsigned char>(c);
        if (c == '"' || c == '\\') {
            out_ += '\\';
            out_ += c;
        } else if (byte < 0x20) {
            char code[8];
            std::snprintf(code, sizeof code, "\\u%04x", static_cast<unsigned>(byte));
            out_ += code;
        } else {
            out_ += c;
        }
    }
    out_ += '"';
}

JsonText& JsonText::key(std::string_view name) {
    separate();
    quote(name);
    out_ += ':';
    need_comma_ = false;
    return *this;
}

JsonText& JsonText::text(std::string_view value) {
    separate();
    quote(value);
    return *this;
}

JsonText& JsonText::number(double value) {
    separate();
    if (!std::isfinite(value)) value = 0;
    char digits[32];
    std::snprintf(digits, sizeof digits, "%.7g", value);
    out_ += digits;
    return *this;
}

JsonText& JsonText::truth(bool value) {
    separate();
    out_ += value ? "true" : "false";
    return *this;
}

JsonText& JsonText::null() {
    separate();
    out_ += "null";
    return *this;
}

}  // namespace overwater
