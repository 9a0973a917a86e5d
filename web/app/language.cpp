#include "web/app/language.hpp"

#include <cstdint>
#include <utility>

#include "core/quantity/catalogue.hpp"
#include "generated/text_en.hpp"

namespace overwater {

namespace {

constexpr std::string_view english_tag = "en";
constexpr std::string_view french_tag = "fr";
constexpr const char* pseudo_tag = "en-x-pseudo";

Catalogue& english() {
    static Catalogue catalogue(text_keys, text_en);
    return catalogue;
}

/// FNV-1a (Fowler, Noll and Vo), as tools/text_table.py has it.
std::uint32_t fingerprint(std::string_view text, std::uint32_t value) {
    for (const char c : text) value = (value ^ static_cast<unsigned char>(c)) * 16777619U;
    return value;
}

constexpr std::size_t first_line = 9;

/// The number that the first line of a packed text states.
std::uint32_t stated(const char* line) {
    std::uint32_t value = 0;
    for (std::size_t i = 0; i + 1 < first_line; ++i) {
        value = value * 16 + static_cast<std::uint32_t>(line[i] <= '9' ? line[i] - '0' : line[i] - 'a' + 10);
    }
    return value;
}

void replace(std::string& text, const std::string& name, std::string_view value) {
    for (std::size_t at = text.find(name); at != std::string::npos; at = text.find(name, at + value.size())) {
        text.replace(at, name.size(), value);
    }
}

/// The place of a tag among the languages; English for one that is none.
std::size_t place_of(std::string_view tag) {
    if (tag == pseudo_tag) return languages - 1;
    for (std::size_t i = 1; i < language_names.size(); ++i) {
        if (tag == language_names[i].tag) return i;
    }
    return 0;
}

}  // namespace

const char* language_for(std::string_view wanted) {
    if (wanted == pseudo_tag) return pseudo_tag;
    return language_names[place_of(wanted.substr(0, wanted.find('-')))].tag;
}

bool Language::learn(std::string_view tag, std::string packed) {
    if (packed.size() <= first_line || packed.back() != '\n') return false;
    const std::string_view body(packed.data() + first_line, packed.size() - first_line);
    if (stated(packed.data()) != fingerprint(body, text_keys_fingerprint)) return false;
    Catalogue catalogue(text_keys, body);
    if (!catalogue.whole()) return false;
    catalogue.add(more_keys_, {});
    // A long text stays where it is when it is moved, and with it what looks into it.
    Learnt& learnt = learnt_[place_of(tag)];
    learnt.text = std::move(packed);
    learnt.catalogue = std::move(catalogue);
    return true;
}

void Language::learn_more(std::string_view keys, std::string_view sentences) {
    if (!more_keys_.empty()) return;
    more_keys_ = keys;
    english().add(keys, sentences);
    for (Learnt& learnt : learnt_) {
        if (!learnt.text.empty()) learnt.catalogue.add(keys, {});
    }
}

bool Language::speak(std::string_view tag) {
    const std::size_t place = place_of(tag);
    if (place > 0 && learnt_[place].text.empty()) return false;
    spoken_ = place;
    tag_ = tag;
    return true;
}

const LanguageName& Language::name() const { return language_names[spoken_ % language_names.size()]; }

DecimalSign Language::usual_decimal_sign() const {
    return tag_.starts_with(english_tag) ? DecimalSign::point : DecimalSign::comma;
}

bool Language::knows(std::string_view key) { return english().knows(key); }

std::string_view Language::sentence_in(std::size_t language, std::string_view key, bool one) const {
    return (language == 0 ? english() : learnt_[language].catalogue).sentence(key, one);
}

std::string Language::sentence(std::string_view key, bool one) const {
    const std::string_view text = sentence_in(spoken_, key, one);
    std::string words(text.data() == nullptr ? key : text);
    // Where the two ways are offered, each keeps its own name.
    const bool offers = key.starts_with("conventions.volume_unit");
    if (volume_unit_ == Conventions::VolumeUnit::cm3 && !offers) {
        replace(words, "mL", "cm³");
        replace(words, "L/mol", "dm³/mol");
        replace(words, "mol/L", "mol/dm³");
    }
    return words;
}

std::string Language::say(std::string_view key) const { return sentence(key, false); }

std::string Language::say(const Message& message) const {
    bool one = false;
    for (const Argument& a : message.arguments) {
        if (a.kind == Argument::Kind::count) one = a.count == 1 || (a.count == 0 && tag_ == french_tag);
    }
    std::string text = sentence(message.key, one);
    for (const Argument& a : message.arguments) replace(text, '{' + std::string(a.name) + '}', argument(a));
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

std::string Language::as_typed(const std::string& number, UnitId unit) {
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
