#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/quantity/message.hpp"
#include "core/result/conventions.hpp"

/// A practice run has a code that is read aloud, written on a board and typed. What it is made of: practice.md.

namespace overwater {

enum class Difficulty : std::uint8_t {
    easy,   ///< levels equal, 0 at the closed end, metal weighed on one balance
    usual,  ///< upside-down burettes, end space, a level difference, ribbon by its length
    hard    ///< mixed units, weather reports, a start reading, mass by difference, other metals
};
inline constexpr std::array<std::string_view, 3> difficulty_names{"easy", "usual", "hard"};
constexpr std::string_view name_of(Difficulty difficulty) {
    return difficulty_names[static_cast<std::size_t>(difficulty)];
}

/// When results, working and truth may be seen.
enum class Release : std::uint8_t { at_once, after_attempt, by_word };
inline constexpr std::array<std::string_view, 3> release_names{"at_once", "after_attempt", "by_word"};
constexpr std::string_view name_of(Release release) { return release_names[static_cast<std::size_t>(release)]; }

/// Where the class takes the vapour pressure from.
enum class PracticeVapour : std::uint8_t { formula, table_interpolated, table_nearest };
inline constexpr std::array<std::string_view, 3> practice_vapour_names{"formula", "table_interpolated",
                                                                       "table_nearest"};
constexpr std::string_view name_of(PracticeVapour vapour) {
    return practice_vapour_names[static_cast<std::size_t>(vapour)];
}

/// Everything that a code says. Readings follow from version, seed, student, difficulty and mishap alone: conventions
/// and release change none of them.
struct PracticeSettings {
    int version = 1;  ///< of the generator
    int seed = 0;     ///< 0 to 9999, chosen for the class
    int student = 0;  ///< number in the roster, 1 to 840; 0: the run of the class itself
    Difficulty difficulty = Difficulty::usual;
    bool mishap = false;  ///< something went wrong unseen
    Release release = Release::at_once;
    StandardConditions standard = StandardConditions::zero_celsius_100_kilopascal;  ///< never `own`
    PracticeVapour vapour = PracticeVapour::formula;

    friend bool operator==(const PracticeSettings&, const PracticeSettings&) = default;
};

inline constexpr int practice_version = 1;
inline constexpr int practice_seeds = 10000;
inline constexpr int practice_students = 841;  ///< the class itself counted
inline constexpr std::size_t practice_code_length = 9;

/// Whether every setting can be put into a code.
bool can_be_coded(const PracticeSettings& settings);

/// The code, in its two groups: "0K3FQ-07HT". Empty where the settings cannot be coded.
std::string code_of(const PracticeSettings& settings);

/// What a code says, or why it is none.
struct DecodedPractice {
    std::optional<PracticeSettings> settings;
    Message reason{""};
};

/// Understands a code as typed: capitals, spaces, dashes, dots and slashes do not count; O, I, L, S, Z, B and U are
/// read as 0, 1, 1, 5, 2, 8 and V, which they are taken for. Any one wrong character, any two, and any two exchanged
/// are found.
DecodedPractice decode_practice(std::string_view typed);

/// The codes of the roster's numbers from `first` on, at most up to 840; number 0 is the class's own.
std::vector<std::string> codes_for(const PracticeSettings& settings, int first, int count);

/// The same class with the code of `student`; nothing where the number is none.
std::optional<std::string> code_for(std::string_view class_code, int student);

/// Conventions by which a practice run is computed; `answers` as the release says (by_word: hidden, until the word).
Conventions conventions_of(const PracticeSettings& settings);

/// The word that releases the answers of this code: three syllables. It is worked out from the code and is no secret
/// from anyone who reads this program.
std::string release_word(const PracticeSettings& settings);

/// Whether `typed` is the word of this code or of its class (student 0). Only letters count, in any case.
bool is_release_word(const PracticeSettings& settings, std::string_view typed);

}  // namespace overwater
