#include "web/app/language.hpp"

#include <algorithm>
#include <array>
#include <cstring>

#include "core/quantity/catalogue.hpp"
#include "generated/text_en.hpp"

namespace overwater {

namespace {

const Catalogue& english() {
    static const Catalogue catalogue(text_keys, text_en);
    return catalogue;
}

/// Letters with accents for plain ones, so that a pseudo text stays legible and shows which glyphs are missing.
constexpr std::array<std::string_view, 26> accented{"á", "ƀ", "ç", "ď", "é", "f", "ğ", "ĥ", "í", "ĵ", "ķ", "ļ", "m",
                                                    "ñ", "ö", "p", "q", "ř", "š", "ť", "ü", "v", "ŵ", "x", "ý", "ž"};

std::string pseudo(std::string_view sentence) {
    std::string out;
    std::size_t letters = 0;
    bool in_place = false;
    for (const char c : sentence) {
        if (c == '{') in_place = true;
        if (!in_place && c >= 'a' && c <= 'z') {
            // ƀ is not in every subset; b is legible as it is.
            out += c == 'b' ? std::string_view("b") : accented[static_cast<std::size_t>(c - 'a')];
        } else {
            out += c;
        }
        if (c == '}') in_place = false;
        if (!in_place) ++letters;
    }
    const std::size_t padding = (letters * 2 + 4) / 5;
    for (std::size_t i = 0; i < padding; ++i) out += i % 6 == 0 && padding > 6 ? " " : "ö";
    return out;
}

void replace(std::string& text, std::string_view place, std::string_view value) {
    const std::string name = '{' + std::string(place) + '}';
    for (std::size_t at = text.find(name); at != std::string::npos; at = text.find(name, at + value.size())) {
        text.replace(at, name.size(), value);
    }
}

}  // namespace

Language::Language(std::string tag) : tag_(std::move(tag)), pseudo_(tag_ == "en-x-pseudo") {
    if (!pseudo_) tag_ = "en";
}

bool Language::knows(std::string_view key) { return english().knows(key); }

std::string Language::sentence(std::string_view key, bool plural) const {
    const std::string_view text = english().sentence(key, !plural);
    if (text.data() == nullptr) return std::string(key);
    return pseudo_ ? pseudo(text) : std::string(text);
}

std::string Language::say(std::string_view key) const { return sentence(key, true); }

std::string Language::say(const Message& message) const {
    bool plural = true;
    for (const Argument& a : message.arguments) {
        if (a.kind == Argument::Kind::count) plural = a.count != 1;
    }
    std::string text = sentence(message.key, plural);
    for (const Argument& a : message.arguments) replace(text, a.name, argument(a));
    return text;
}

std::string Language::argument(const Argument& a) const {
    switch (a.kind) {
        case Argument::Kind::quantity: {
            const double value = from_base(a.base, a.unit);
            return with_unit(a.significant ? format_significant(value, a.digits, sign_)
                                           : format_fixed(value, a.digits, sign_),
                             a.unit);
        }
        case Argument::Kind::count: return format_fixed(static_cast<double>(a.count), 0, sign_);
        case Argument::Kind::field: return say("field." + std::string(a.field));
        case Argument::Kind::text: break;
    }
    return a.text;
}

std::string Language::with_unit(const std::string& number, UnitId unit) const {
    const std::string_view symbol = info(unit).symbol;
    return symbol.empty() ? number : number + "\u00a0" + std::string(symbol);
}

std::string Language::list(const std::vector<std::string>& items) const {
    std::string out;
    for (std::size_t i = 0; i < items.size(); ++i) {
        if (i > 0) out += i + 1 == items.size() ? say("list.and") : say("list.comma");
        out += items[i];
    }
    return out;
}

std::vector<std::string> Language::places_of(std::string_view key) {
    std::vector<std::string> places;
    const std::string_view text = english().sentence(key, false);
    for (std::size_t at = text.find('{'); at != std::string_view::npos; at = text.find('{', at + 1)) {
        const std::size_t end = text.find('}', at);
        if (end == std::string_view::npos) break;
        places.emplace_back(text.substr(at + 1, end - at - 1));
    }
    return places;
}

}  // namespace overwater
