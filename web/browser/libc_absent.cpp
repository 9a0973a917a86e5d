// Takes the place of C library functions on the page that would bring printf, scanf, 128-bit floating point and demangling
// with them: 12 kB to load (brotli) for nothing the page needs. Numbers are read and written by core/quantity/decimal.hpp.

#include <cstdarg>
#include <cstddef>
#include <cstdlib>
#include <string>

#include "core/quantity/decimal.hpp"

namespace {

bool is_digit(char letter) { return letter >= '0' && letter <= '9'; }

constexpr int most_exponent = 99999;

}  // namespace

// nlohmann/json reads its numbers by this, after it has looked that they are written as RFC 8259, 6 has them.
extern "C" double strtod(const char* text, char** end) {
    const char* at = text;
    const bool minus = *at == '-';
    if (minus) ++at;
    std::string digits;
    int place = 0;
    bool decimals = false;
    for (; is_digit(*at) || (*at == '.' && !decimals); ++at) {
        if (*at == '.') {
            decimals = true;
            continue;
        }
        digits += *at;
        if (decimals) --place;
    }
    if (!digits.empty() && (*at == 'e' || *at == 'E')) {
        const char* power = at + 1;
        const bool below = *power == '-';
        if (*power == '-' || *power == '+') ++power;
        if (is_digit(*power)) {
            int exponent = 0;
            for (; is_digit(*power); ++power) {
                if (exponent < most_exponent) exponent = 10 * exponent + (*power - '0');
            }
            place += below ? -exponent : exponent;
            at = power;
        }
    }
    if (end != nullptr) *end = const_cast<char*>(digits.empty() ? text : at);
    const double magnitude = overwater::nearest_double(digits, place);
    return minus ? -magnitude : magnitude;
}

// Never called; the library has all three in one object.
extern "C" float strtof(const char* text, char** end) { return static_cast<float>(strtod(text, end)); }
extern "C" long double strtold(const char* text, char** end) { return strtod(text, end); }

// Dear ImGui names its windows and nlohmann/json escapes control characters by these: %s, %d, %u, %x and %X, filled with
// zeros to a width ("%04x", "%.4X").
extern "C" int vsnprintf(char* buffer, std::size_t size, const char* format, std::va_list places) {
    std::size_t length = 0;
    const auto put = [&](char letter) {
        if (length + 1 < size) buffer[length] = letter;
        ++length;
    };
    for (const char* at = format; *at != 0; ++at) {
        if (*at != '%') {
            put(*at);
            continue;
        }
        unsigned width = 0;
        for (++at; is_digit(*at) || *at == '.'; ++at) if (*at != '.') width = 10 * width + static_cast<unsigned>(*at - '0');
        if (*at == 's') {
            for (const char* text = va_arg(places, const char*); *text != 0; ++text) put(*text);
            continue;
        }
        const unsigned base = *at == 'x' || *at == 'X' ? 16 : 10;
        unsigned number = va_arg(places, unsigned);
        if (*at == 'd' && static_cast<int>(number) < 0) {
            put('-');
            number = 0 - number;
        }
        char digits[10];
        unsigned count = 0;
        if (width == 0 || width > sizeof digits) width = 1;
        for (; number != 0 || count < width; number /= base) {
            digits[count++] = (*at == 'X' ? "0123456789ABCDEF" : "0123456789abcdef")[number % base];
        }
        while (count > 0) put(digits[--count]);
    }
    if (size > 0) buffer[length < size ? length : size - 1] = 0;
    return static_cast<int>(length);
}
extern "C" int snprintf(char* buffer, std::size_t size, const char* format, ...) {
    std::va_list places;
    va_start(places, format);
    const int length = vsnprintf(buffer, size, format, places);
    va_end(places);
    return length;
}

// Sine and cosine call this beyond a million quarter turns; no angle of a drawing or a latitude comes near.
extern "C" int __rem_pio2_large(double*, double* rest, int, int, int) {
    rest[0] = rest[1] = 0;
    return 0;
}

// What the C++ library says before it gives up; the page says it has stopped (shell/status.mjs).
extern "C" [[noreturn]] void abort_message(const char*, ...) { std::abort(); }
