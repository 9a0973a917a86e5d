#include "core/lesson/practice_code.hpp"

#include <algorithm>

#include "core/quantity/utf8.hpp"

namespace overwater {

namespace {

/// Digits and letters of which none is easily taken for another: without O, I, L, S, Z, B, U. Their number is a
/// prime, so that they are a field in which division always works; the check characters rest on that.
constexpr std::string_view alphabet = "0123456789ACDEFGHJKMNPQRTVWXY";
constexpr int base = 29;
static_assert(alphabet.size() == base);

constexpr std::size_t class_length = 5;
constexpr std::size_t student_length = 2;
constexpr std::size_t data_length = class_length + student_length;
static_assert(practice_code_length == data_length + 2);
static_assert(practice_students == base * base);

constexpr int standards = 5;  // without `own`
constexpr int conventions = standards * 3;
constexpr int settings_a_seed = 3 * 2 * 3 * conventions;
/// What stands in the class's group below the version, whatever the version.
constexpr int a_version = practice_seeds * settings_a_seed;
constexpr int class_values = base * base * base * base * base;
static_assert(class_values / a_version == 7);

using Symbols = std::array<int, practice_code_length>;

/// Two sums over a right code, modulo 29: of its symbols, and of its symbols by place. They are not zero, so that nine
/// equal characters are no code.
constexpr int wanted_sum = 3;
constexpr int wanted_by_place = 1;

struct Sums {
    int plain;
    int by_place;
};
Sums sums_of(const Symbols& symbols, std::size_t count) {
    Sums sums{0, 0};
    for (std::size_t i = 0; i < count; ++i) {
        sums.plain += symbols[i];
        sums.by_place += symbols[i] * (static_cast<int>(i) + 1);
    }
    return {sums.plain % base, sums.by_place % base};
}

void add_checks(Symbols& symbols) {
    const Sums sums = sums_of(symbols, data_length);
    // x + y = p and 8x + 9y = q, so y = q - 8p and x = p - y.
    const int p = (wanted_sum - sums.plain + base) % base;
    const int q = (wanted_by_place - sums.by_place + base) % base;
    const int y = (q + base * 8 - 8 * p) % base;
    symbols[data_length] = (p - y + base) % base;
    symbols[data_length + 1] = y;
}

int class_value(const PracticeSettings& s) {
    int value = (s.version - 1) * practice_seeds + s.seed;
    value = value * 3 + static_cast<int>(s.difficulty);
    value = value * 2 + (s.mishap ? 1 : 0);
    value = value * 3 + static_cast<int>(s.release);
    value = value * standards + static_cast<int>(s.standard);
    return value * 3 + static_cast<int>(s.vapour);
}

/// Takes the lowest digit off `value`, in base `count`.
int taken(int& value, int count) {
    const int digit = value % count;
    value /= count;
    return digit;
}

PracticeSettings settings_from(int of_class, int student) {
    PracticeSettings s;
    s.vapour = static_cast<PracticeVapour>(taken(of_class, 3));
    s.standard = static_cast<StandardConditions>(taken(of_class, standards));
    s.release = static_cast<Release>(taken(of_class, 3));
    s.mishap = taken(of_class, 2) == 1;
    s.difficulty = static_cast<Difficulty>(taken(of_class, 3));
    s.seed = taken(of_class, practice_seeds);
    s.version = of_class + 1;
    s.student = student;
    return s;
}

bool is_separator(char32_t c) {
    // The dashes of all widths, and the minus that keyboards of telephones make of two.
    return is_space(c) || c == '-' || c == '.' || c == '/' || c == '_' || c == ',' || (c >= 0x2010 && c <= 0x2015) ||
           c == 0x2212 || c == 0xB7;
}

char32_t as_meant(char32_t c) {
    if (c >= 'a' && c <= 'z') c -= 'a' - 'A';
    switch (c) {
    case 'O': return '0';
    case 'I':
    case 'L': return '1';
    case 'Z': return '2';
    case 'S': return '5';
    case 'B': return '8';
    case 'U': return 'V';
    default: return c;
    }
}

std::optional<int> symbol_of(char32_t c) {
    if (c >= 0x80) return std::nullopt;
    const std::size_t place = alphabet.find(static_cast<char>(c));
    return place == std::string_view::npos ? std::nullopt : std::optional(static_cast<int>(place));
}

int number_from(const Symbols& symbols, std::size_t begin, std::size_t end) {
    int value = 0;
    for (std::size_t i = begin; i < end; ++i) value = value * base + symbols[i];
    return value;
}

void put_number(Symbols& symbols, std::size_t begin, std::size_t end, int value) {
    for (std::size_t i = end; i > begin; --i) symbols[i - 1] = taken(value, base);
}

DecodedPractice refused(std::string_view key, std::size_t found) {
    DecodedPractice none;
    none.reason = Message{key}.count("wanted", practice_code_length).count("found", static_cast<long long>(found));
    return none;
}

constexpr std::uint64_t mixed(std::uint64_t word) {
    // The finaliser of SplitMix64 (Steele, Lea and Flood, OOPSLA 2014).
    word = (word ^ (word >> 30)) * 0xBF58476D1CE4E5B9u;
    word = (word ^ (word >> 27)) * 0x94D049BB133111EBu;
    return word ^ (word >> 31);
}

}  // namespace

bool can_be_coded(const PracticeSettings& s) {
    return s.version >= 1 && s.version <= practice_version && s.seed >= 0 && s.seed < practice_seeds &&
           s.student >= 0 && s.student < practice_students && static_cast<int>(s.standard) < standards;
}

std::string code_of(const PracticeSettings& settings) {
    if (!can_be_coded(settings)) return {};
    Symbols symbols{};
    put_number(symbols, 0, class_length, class_value(settings));
    put_number(symbols, class_length, data_length, settings.student);
    add_checks(symbols);
    std::string code;
    for (std::size_t i = 0; i < practice_code_length; ++i) {
        if (i == class_length) code += '-';
        code += alphabet[static_cast<std::size_t>(symbols[i])];
    }
    return code;
}

DecodedPractice decode_practice(std::string_view typed) {
    Symbols symbols{};
    std::size_t found = 0;
    for (std::size_t at = 0; at < typed.size();) {
        const CodePoint point = code_point_at(typed, at);
        const std::string_view as_typed = typed.substr(at, point.bytes);
        at += point.bytes;
        if (is_separator(point.value)) continue;
        const auto symbol = symbol_of(as_meant(point.value));
        if (!symbol) {
            DecodedPractice none;
            const bool readable = point.value != not_utf8;
            none.reason =
                Message{"practice.code.unknown_character"}.text("character", readable ? std::string(as_typed) : "?");
            return none;
        }
        if (found < practice_code_length) symbols[found] = *symbol;
        ++found;
    }
    if (found < practice_code_length) return refused("practice.code.too_short", found);
    if (found > practice_code_length) return refused("practice.code.too_long", found);
    const Sums sums = sums_of(symbols, practice_code_length);
    DecodedPractice decoded;
    if (sums.plain != wanted_sum || sums.by_place != wanted_by_place) {
        decoded.reason = Message{"practice.code.check_fails"};
        return decoded;
    }
    const int of_class = number_from(symbols, 0, class_length);
    if (of_class / a_version + 1 > practice_version) {
        decoded.reason = Message{"practice.code.newer"};
        return decoded;
    }
    decoded.settings = settings_from(of_class, number_from(symbols, class_length, data_length));
    return decoded;
}

std::vector<std::string> codes_for(const PracticeSettings& settings, int first, int count) {
    std::vector<std::string> codes;
    PracticeSettings own = settings;
    if (first < 0 || !can_be_coded(settings)) return codes;
    for (own.student = first; own.student - first < count && own.student < practice_students; ++own.student) {
        codes.push_back(code_of(own));
    }
    return codes;
}

std::optional<std::string> code_for(std::string_view class_code, int student) {
    auto settings = decode_practice(class_code).settings;
    if (!settings || student < 0 || student >= practice_students) return std::nullopt;
    settings->student = student;
    return code_of(*settings);
}

Conventions conventions_of(const PracticeSettings& settings) {
    Conventions made;
    made.standard = settings.standard;
    if (settings.vapour != PracticeVapour::formula) made.vapour = Conventions::Vapour::table;
    if (settings.vapour == PracticeVapour::table_nearest) made.vapour_rows = Conventions::VapourRows::nearest;
    switch (settings.release) {
    case Release::at_once: made.answers = Conventions::Answers::live; break;
    case Release::after_attempt: made.answers = Conventions::Answers::after_attempt; break;
    case Release::by_word: made.answers = Conventions::Answers::hidden; break;
    }
    return made;
}

std::string release_word(const PracticeSettings& settings) {
    constexpr std::string_view consonants = "bdlmnrtv";
    constexpr std::string_view vowels = "aeio";
    if (!can_be_coded(settings)) return {};
    const auto of_class = static_cast<std::uint64_t>(class_value(settings));
    std::uint64_t bits = mixed(of_class * practice_students + static_cast<std::uint64_t>(settings.student) + 1);
    std::string word;
    for (int syllable = 0; syllable < 3; ++syllable) {
        word += consonants[bits % consonants.size()];
        bits /= consonants.size();
        word += vowels[bits % vowels.size()];
        bits /= vowels.size();
    }
    return word;
}

bool is_release_word(const PracticeSettings& settings, std::string_view typed) {
    std::string letters;
    for (const char c : typed) {
        if (c >= 'a' && c <= 'z') letters += c;
        if (c >= 'A' && c <= 'Z') letters += static_cast<char>(c - 'A' + 'a');
    }
    PracticeSettings of_class = settings;
    of_class.student = 0;
    return !letters.empty() && (letters == release_word(settings) || letters == release_word(of_class));
}

}  // namespace overwater
