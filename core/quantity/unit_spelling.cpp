#include <array>

#include "core/quantity/unit_table.hpp"
#include "core/quantity/utf8.hpp"

/// The spellings of units that people type. A typed text is first brought to a plain form (no spaces, dots, carets,
/// middle dots or parentheses; raised digits lowered; degree signs spelt `deg`), so that one row serves many ways of
/// typing.

namespace overwater {
namespace {

enum class Capitals : bool { free, matter };

struct Spelling {
    UnitId unit;
    std::string_view plain;
    Capitals capitals = Capitals::free;
};

constexpr Spelling spellings[] = {
    {UnitId::gram, "g"},
    {UnitId::gram, "gram"},
    {UnitId::gram, "gramme"},
    {UnitId::gram, "gr"},
    {UnitId::milligram, "mg", Capitals::matter}, // Mg is magnesium, and a tonne
    {UnitId::milligram, "milligram"},
    {UnitId::milligram, "milligramme"},
    {UnitId::kilogram, "kg"},
    {UnitId::kilogram, "kilogram"},
    {UnitId::kilogram, "kilogramme"},

    {UnitId::millimetre, "mm"},
    {UnitId::millimetre, "millimetre"},
    {UnitId::millimetre, "millimeter"},
    {UnitId::centimetre, "cm"},
    {UnitId::centimetre, "centimetre"},
    {UnitId::centimetre, "centimeter"},
    {UnitId::metre, "m"},
    {UnitId::metre, "metre"},
    {UnitId::metre, "meter"},
    {UnitId::inch, "in"},
    {UnitId::inch, "inch"},
    {UnitId::inch, "inches"},
    {UnitId::inch, "\""},
    {UnitId::foot, "ft"},
    {UnitId::foot, "foot"},
    {UnitId::foot, "feet"},
    {UnitId::foot, "'"},

    {UnitId::millilitre, "mL"},
    {UnitId::millilitre, "millilitre"},
    {UnitId::millilitre, "milliliter"},
    {UnitId::cubic_centimetre, "cm3"},
    {UnitId::cubic_centimetre, "cc"},
    {UnitId::cubic_centimetre, "ccm"},
    {UnitId::cubic_centimetre, "cubiccentimetre"},
    {UnitId::cubic_centimetre, "cubiccentimeter"},
    {UnitId::litre, "L"},
    {UnitId::litre, "litre"},
    {UnitId::litre, "liter"},
    {UnitId::cubic_decimetre, "dm3"},
    {UnitId::cubic_decimetre, "cubicdecimetre"},
    {UnitId::cubic_decimetre, "cubicdecimeter"},
    {UnitId::microlitre, "uL"},
    {UnitId::microlitre, "microlitre"},
    {UnitId::microlitre, "microliter"},

    {UnitId::kilopascal, "kPa"},
    {UnitId::kilopascal, "kilopascal"},
    {UnitId::hectopascal, "hPa"},
    {UnitId::hectopascal, "hectopascal"},
    {UnitId::pascal, "Pa"},
    {UnitId::pascal, "pascal"},
    {UnitId::millibar, "mbar"},
    {UnitId::millibar, "millibar"},
    {UnitId::millibar, "mb"},
    {UnitId::bar, "bar"},
    {UnitId::atmosphere, "atm"},
    {UnitId::atmosphere, "atmosphere"},
    {UnitId::torr, "Torr"},
    {UnitId::millimetre_of_mercury, "mmHg"},
    {UnitId::millimetre_of_mercury, "mmofHg"},
    {UnitId::millimetre_of_mercury, "mmofmercury"},
    {UnitId::millimetre_of_mercury, "millimetresofmercury"},
    {UnitId::millimetre_of_mercury, "millimetersofmercury"},
    {UnitId::inch_of_mercury, "inHg"},
    {UnitId::inch_of_mercury, "inofHg"},
    {UnitId::inch_of_mercury, "inchHg"},
    {UnitId::inch_of_mercury, "inchesHg"},
    {UnitId::inch_of_mercury, "inchesofHg"},
    {UnitId::inch_of_mercury, "inchesofmercury"},
    {UnitId::inch_of_mercury, "inchesmercury"},
    {UnitId::inch_of_mercury, "\"Hg"},
    {UnitId::pound_per_square_inch, "psi"},
    {UnitId::pound_per_square_inch, "psia"},
    {UnitId::pound_per_square_inch, "lb/in2"},
    {UnitId::pound_per_square_inch, "lbf/in2"},

    {UnitId::celsius, "C"},
    {UnitId::celsius, "degC"},
    {UnitId::celsius, "celsius"},
    {UnitId::celsius, "degcelsius"},
    {UnitId::celsius, "degreecelsius"},
    {UnitId::celsius, "degreescelsius"},
    {UnitId::celsius, "degreesC"},
    {UnitId::celsius, "centigrade"},
    {UnitId::kelvin, "K"},
    {UnitId::kelvin, "kelvin"},
    {UnitId::kelvin, "degK"},
    {UnitId::fahrenheit, "F"},
    {UnitId::fahrenheit, "degF"},
    {UnitId::fahrenheit, "fahrenheit"},
    {UnitId::fahrenheit, "degfahrenheit"},
    {UnitId::fahrenheit, "degreefahrenheit"},
    {UnitId::fahrenheit, "degreesfahrenheit"},
    {UnitId::fahrenheit, "degreesF"},

    {UnitId::gram_per_millilitre, "g/mL"},
    {UnitId::gram_per_millilitre, "gmL-1"},
    {UnitId::gram_per_millilitre, "g/cm3"},
    {UnitId::gram_per_millilitre, "gcm-3"},
    {UnitId::gram_per_millilitre, "g/cc"},
    {UnitId::gram_per_millilitre, "kg/L"},
    {UnitId::kilogram_per_cubic_metre, "kg/m3"},
    {UnitId::kilogram_per_cubic_metre, "kgm-3"},
    {UnitId::kilogram_per_cubic_metre, "g/L"},

    {UnitId::mole, "mol"},
    {UnitId::mole, "mole"},
    {UnitId::millimole, "mmol", Capitals::matter},
    {UnitId::millimole, "millimole"},
    {UnitId::gram_per_mole, "g/mol"},
    {UnitId::gram_per_mole, "gmol-1"},
    {UnitId::litre_per_mole, "L/mol"},
    {UnitId::litre_per_mole, "Lmol-1"},
    {UnitId::cubic_decimetre_per_mole, "dm3/mol"},
    {UnitId::cubic_decimetre_per_mole, "dm3mol-1"},
    {UnitId::mole_per_litre, "mol/L"},
    {UnitId::mole_per_litre, "molL-1"},
    {UnitId::mole_per_litre, "mol/litre"},
    {UnitId::mole_per_litre, "mol/liter"},
    {UnitId::mole_per_litre, "M", Capitals::matter}, // m is molal
    {UnitId::mole_per_litre, "molar"},
    {UnitId::mole_per_cubic_decimetre, "mol/dm3"},
    {UnitId::mole_per_cubic_decimetre, "moldm-3"},
    {UnitId::gram_per_metre, "g/m"},
    {UnitId::gram_per_metre, "gm-1"},
    {UnitId::gram_per_metre, "mg/mm", Capitals::matter},
    {UnitId::gram_per_centimetre, "g/cm"},
    {UnitId::gram_per_centimetre, "gcm-1"},
    {UnitId::joule_per_mole_kelvin, "J/mol/K"},
    {UnitId::joule_per_mole_kelvin, "J/molK"},
    {UnitId::joule_per_mole_kelvin, "J/Kmol"},
    {UnitId::joule_per_mole_kelvin, "J/K/mol"},
    {UnitId::joule_per_mole_kelvin, "Jmol-1K-1"},
    {UnitId::joule_per_mole_kelvin, "JK-1mol-1"},

    {UnitId::percent, "%"},
    {UnitId::percent, "percent"},
};

constexpr std::size_t longest_plain = 32;

/// A text in plain form; longer than every spelling means that it is none of them.
struct Plain {
    std::array<char, longest_plain> letters{};
    std::size_t size = 0;
    bool is_possible = true;

    void add(std::string_view more) {
        for (const char letter : more) {
            if (size == longest_plain) {
                is_possible = false;
                return;
            }
            letters[size++] = letter;
        }
    }
    std::string_view view() const { return {letters.data(), size}; }
};

/// What one code point beyond ASCII becomes; an empty view drops it; nothing means that no unit has it.
std::optional<std::string_view> plain_of_sign(char32_t sign) {
    switch (sign) {
    case 0xB0: // degree sign
    case 0xBA: // the raised o beside it on some keyboards
    case 0x2DA: return "deg";
    case 0x2103: return "degC";
    case 0x2109: return "degF";
    case 0x212A: return "K";
    case 0x2113: return "L";
    case 0xB5:
    case 0x3BC: return "u";
    case 0xB9: return "1";
    case 0xB2: return "2";
    case 0xB3: return "3";
    case 0x2010:
    case 0x2011:
    case 0x2012:
    case 0x2013:
    case 0x207B:
    case 0x2212: return "-";
    case 0x2044:
    case 0x2215: return "/";
    case 0x201C:
    case 0x201D:
    case 0x2033: return "\"";
    case 0x2019:
    case 0x2032: return "'";
    case 0x66A: return "%";
    case 0xB7:
    case 0x2219:
    case 0x22C5: return "";
    default: return std::nullopt;
    }
}

Plain plain_of(std::string_view text) {
    Plain plain;
    for (std::size_t at = 0; at < text.size() && plain.is_possible;) {
        CodePoint sign = code_point_at(text, at);
        at += sign.bytes;
        if (is_space(sign.value)) continue;
        if (sign.value >= 0xFF01 && sign.value <= 0xFF5E) sign.value -= 0xFEE0; // full-width forms
        if (sign.value < 0x80) {
            const char letter = static_cast<char>(sign.value);
            constexpr std::string_view without_meaning = ".^*()";
            if (without_meaning.find(letter) == std::string_view::npos) plain.add({&letter, 1});
        } else if (const auto letters = plain_of_sign(sign.value)) {
            plain.add(*letters);
        } else {
            plain.is_possible = false;
        }
    }
    return plain;
}

constexpr char lower(char letter) { return letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter + 32) : letter; }

bool equal_but_for_capitals(std::string_view a, std::string_view b) {
    if (a.size() != b.size()) return false;
    for (std::size_t i = 0; i < a.size(); ++i) {
        if (lower(a[i]) != lower(b[i])) return false;
    }
    return true;
}

/// Whether a person who typed `typed` wrote this spelling, or the plural of this word.
bool means(std::string_view typed, const Spelling& spelling) {
    if (typed == spelling.plain) return true;
    if (spelling.capitals == Capitals::matter) return false;
    if (equal_but_for_capitals(typed, spelling.plain)) return true;
    const bool is_word = spelling.plain.size() >= 3;
    return is_word && lower(typed.back()) == 's' &&
           equal_but_for_capitals(typed.substr(0, typed.size() - 1), spelling.plain);
}

} // namespace

std::optional<UnitId> unit_by_typed_text(std::string_view text, Measure expected) {
    const Plain plain = plain_of(text);
    if (!plain.is_possible || plain.size == 0) return std::nullopt;
    for (const Spelling& spelling : spellings) {
        if (info(spelling.unit).measure == expected && means(plain.view(), spelling)) return spelling.unit;
    }
    return std::nullopt;
}

bool is_unit_of_some_measure(std::string_view text) {
    for (int measure = 0; measure <= static_cast<int>(Measure::fraction); ++measure) {
        if (unit_by_typed_text(text, static_cast<Measure>(measure))) return true;
    }
    return false;
}

} // namespace overwater
