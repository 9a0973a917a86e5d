#include "web/app/language.hpp"

#include <cstdint>
#include <utility>

#include "core/quantity/catalogue.hpp"
#include "generated/text_en.hpp"

namespace overwater {

namespace {

constexpr std::string_view english_tag = "en";
constexpr std::string_view french_tag = "fr";
constexpr std::string_view pseudo_tag = "en-x-pseudo";

const Catalogue& english() {
    static const Catalogue catalogue(text_keys, text_en);
    return catalogue;
}

/// FNV-1a (Fowler, Noll and Vo), as tools/text_table.py has it.
std::uint32_t fingerprint(std::string_view text, std::uint32_t value = 2166136261U) {
    for (const char c : text) value = (value ^ static_cast<unsigned char>(c)) * 16777619U;
    return value;
}

/// The number that the first line of a packed text states.
std::uint32_t stated(std::string_view line) {
    std::uint32_t value = 0;
    for (const char c : line) value = value * 16 + static_cast<std::uint32_t>(c <= '9' ? c - '0' : c - 'a' + 10);
    return value;
}
constexpr std::size_t first_line = 9;

void replace(std::string& text, std::string_view place, std::string_view value) {
    const std::string name = '{' + std::string(place) + '}';
    for (std::size_t at = text.find(name); at != std::string::npos; at = text.find(name, at + value.size())) {
        text.replace(at, name.size(), value);
    }
}

}  // namespace

/// The text of a language, which its catalogue looks into.
struct Language::Learnt {
    Learnt(std::string_view of, std::string packed)
        : tag(of), text(std::move(packed)), catalogue(text_keys, std::string_view(text).substr(first_line)) {}

    std::string tag;
    std::string text;
    Catalogue catalogue;
};

std::string_view language_for(std::string_view wanted) {
    if (wanted == pseudo_tag) return pseudo_tag;
    for (const LanguageName& language : language_names) {
        if (wanted.substr(0, wanted.find('-')) == language.tag) return language.tag;
    }
    return english_tag;
}

Language::Language() = default;
Language::~Language() = default;

bool Language::learn(std::string_view tag, std::string packed) {
    if (packed.size() <= first_line || packed.back() != '\n') return false;
    const std::string_view body = std::string_view(packed).substr(first_line);
    if (stated(std::string_view(packed).substr(0, first_line - 1)) != fingerprint(body, fingerprint(text_keys))) {
        return false;
    }
    auto learnt = std::make_unique<Learnt>(tag, std::move(packed));
    if (!learnt->catalogue.whole()) return false;
    learnt_.push_back(std::move(learnt));
    return true;
}

bool Language::speak(std::string_view tag) {
    const Learnt* found = nullptr;
    for (const auto& learnt : learnt_) {
        if (learnt->tag == tag) found = learnt.get();
    }
    if (found == nullptr && tag != english_tag) return false;
    spoken_ = found;
    tag_ = tag;
    return true;
}

DecimalSign Language::usual_decimal_sign() const {
    return tag_.starts_with(english_tag) ? DecimalSign::point : DecimalSign::comma;
}

bool Language::knows(std::string_view key) { return english().knows(key); }

std::string Language::sentence(std::string_view key, bool one) const {
    const std::string_view text = (spoken_ == nullptr ? english() : spoken_->catalogue).sentence(key, one);
    return std::string(text.data() == nullptr ? key : text);
}

std::string Language::say(std::string_view key) const { return sentence(key, false); }

std::string Language::say(const Message& message) const {
    bool one = false;
    for (const Argument& a : message.arguments) {
        if (a.kind == Argument::Kind::count) one = a.count == 1 || (a.count == 0 && tag_ == french_tag);
    }
    std::string text = sentence(message.key, one);
    for (const Argument& a : message.arguments) replace(text, a.name, argument(a));
    return text;
}

std::vector<std::string> Language::in_each_language(std::string_view key) const {
    std::vector<std::string> all{say(key)};
    if (spoken_ != nullptr) all.emplace_back(english().sentence(key, false));
    for (const auto& learnt : learnt_) {
        if (learnt.get() != spoken_) all.emplace_back(learnt->catalogue.sentence(key, false));
    }
    return all;
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
