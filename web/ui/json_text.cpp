#include "web/ui/json_text.hpp"

#include <cmath>

#include "core/quantity/decimal.hpp"

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
            constexpr const char* hexadecimal = "0123456789abcdef";
            out_ += "\\u00";
            out_ += hexadecimal[byte / 16];
            out_ += hexadecimal[byte % 16];
        } else {
            out_ += c;
        }
    }
    out_ += '"';
}

JsonText& JsonText::key(const TextView& name) {
    separate();
    quote(name);
    out_ += ':';
    need_comma_ = false;
    return *this;
}

JsonText& JsonText::text(const TextView& value) {
    separate();
    quote(value);
    return *this;
}

JsonText& JsonText::number(double value) {
    separate();
    out_ += std::isfinite(value) ? machine_number(value, 7) : "0";
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
