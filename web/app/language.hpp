#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/quantity/message.hpp"
#include "core/quantity/number_format.hpp"

namespace overwater {

/// The sentences of the interface in one language. English is the only one yet; `en-x-pseudo` is English with accents
/// and 40 % longer, to see what would be cut off in another language.
class Language {
public:
    explicit Language(std::string tag = "en");

    const std::string& tag() const { return tag_; }
    void set_decimal_sign(DecimalSign sign) { sign_ = sign; }
    DecimalSign decimal_sign() const { return sign_; }

    /// The sentence of a key that has no places.
    std::string say(std::string_view key) const;
    /// The sentence of a message with its places filled: quantities with their units, names of readings, counts.
    std::string say(const Message& message) const;
    /// "a, b and c".
    std::string list(const std::vector<std::string>& items) const;
    /// A number with the unit's sign behind a space that does not break.
    std::string with_unit(const std::string& number, UnitId unit) const;
    /// The places {name} of a key's sentence, for tests.
    static std::vector<std::string> places_of(std::string_view key);
    static bool knows(std::string_view key);

private:
    std::string sentence(std::string_view key, bool plural) const;
    std::string argument(const Argument& argument) const;
    std::string tag_;
    bool pseudo_ = false;
    DecimalSign sign_ = DecimalSign::point;
};

}  // namespace overwater
