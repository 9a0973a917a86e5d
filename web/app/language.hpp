#pragma once

#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "core/quantity/catalogue.hpp"
#include "core/quantity/message.hpp"
#include "core/quantity/number_format.hpp"
#include "core/result/conventions.hpp"

namespace overwater {

/// A language that can be chosen: its BCP 47 tag, the same where there is little room, and its name in itself.
struct LanguageName {
    const char* tag;
    const char* shown;
    const char* name;
};
inline constexpr std::array<LanguageName, 4> language_names{{{"en", "EN", "English"},
                                                             {"de", "DE", "Deutsch"},
                                                             {"es", "ES", "Espa\u00f1ol"},
                                                             {"fr", "FR", "Fran\u00e7ais"}}};

/// These and the one for tests, which comes last.
inline constexpr std::size_t languages = language_names.size() + 1;

/// The tag among these, or `en-x-pseudo`, that serves a person who asks for `wanted` ("de-AT"); else `en`.
const char* language_for(std::string_view wanted);

/// The sentences of the interface. English is in the program; the text of another language is learnt while it runs.
class Language {
public:
    Language() = default;
    Language(const Language&) = delete;
    Language& operator=(const Language&) = delete;

    /// Takes the text of a language, as tools/text_table.py writes it. False where it was written for other keys or is
    /// damaged: then nothing has changed.
    bool learn(std::string_view tag, std::string packed);
    /// Takes the keys of the program's second part and their English sentences, which come with it. Texts of other languages
    /// have theirs already.
    void learn_more(std::string_view keys, std::string_view sentences);
    /// Says everything in this language from now on. False where its text was not learnt: then nothing has changed.
    bool speak(std::string_view tag);
    const std::string& tag() const { return tag_; }
    /// Of the one spoken.
    const LanguageName& name() const;

    void set_decimal_sign(DecimalSign sign) { sign_ = sign; }
    DecimalSign decimal_sign() const { return sign_; }
    /// How volumes are named from now on: where sentences and units say mL, L/mol and mol/L, they say cm³, dm³/mol and
    /// mol/dm³ instead.
    void set_volume_unit(Conventions::VolumeUnit unit) { volume_unit_ = unit; }
    /// The unit as it is named.
    UnitId named(UnitId unit) const { return named_unit(unit, volume_unit_); }
    /// The one that people write in this language.
    DecimalSign usual_decimal_sign() const;

    /// The sentence of a key that has no places.
    std::string say(std::string_view key) const;
    /// The sentence of a message with its places filled: quantities with their units, names of readings, counts.
    std::string say(const Message& message) const;
    /// The sentence of a key in one of `languages`; empty where its text was not learnt.
    std::string_view sentence_in(std::size_t language, std::string_view key, bool one = false) const;
    /// "a, b and c".
    std::string list(const std::vector<std::string>& items) const;
    /// A number with the sign of the unit, as it is named, behind a space that does not break.
    std::string with_unit(const std::string& number, UnitId unit) const { return as_typed(number, named(unit)); }
    /// The sign of the unit alone, as it is named.
    std::string sign_of(UnitId unit) const { return std::string(info(named(unit)).symbol); }
    /// The same with the unit that somebody typed or chose, which is not named otherwise.
    static std::string as_typed(const std::string& number, UnitId unit);
    /// The places {name} of a key's sentence, for tests.
    static std::vector<std::string> places_of(std::string_view key);
    static bool knows(std::string_view key);

private:
    std::string sentence(std::string_view key, bool one) const;
    std::string argument(const Argument& argument) const;

    struct Learnt {
        std::string text;
        Catalogue catalogue;  ///< looks into the text
    };
    std::array<Learnt, languages> learnt_;
    std::string_view more_keys_;  ///< of the second part; empty while that is not there
    std::size_t spoken_ = 0;
    std::string tag_ = "en";
    DecimalSign sign_ = DecimalSign::point;
    Conventions::VolumeUnit volume_unit_ = Conventions::VolumeUnit::mL;
};

}  // namespace overwater
