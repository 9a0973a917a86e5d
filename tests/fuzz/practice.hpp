#pragma once

#include "core/lesson/practice_code.hpp"
#include "tests/fuzz/property.hpp"

/// Practice codes as typed, and settings that the bytes choose.

namespace overwater::fuzz {

/// A code of our own with one sign changed, by `how`, is none.
inline bool one_change_is_found(std::string code, std::size_t how) {
    constexpr std::string_view signs = "0123456789ACDEFGHJKMNPQRTVWXY";  // practice.md
    const std::size_t place = how % code.size();
    const std::size_t before = signs.find(code[place]);
    if (before == std::string_view::npos) return true;  // the dash
    code[place] = signs[(before + 1 + how / code.size() % (signs.size() - 1)) % signs.size()];
    return !decode_practice(code).settings.has_value();
}

inline std::string_view settings_come_back(const PracticeSettings& settings, std::size_t how) {
    const std::string code = code_of(settings);
    if (code.size() != practice_code_length + 1) return "what can be coded has a code";
    if (decode_practice(code).settings != settings) return "settings come back from their code";
    if (!one_change_is_found(code, how)) return "one wrong sign is found";
    if (!is_release_word(settings, release_word(settings))) return "the word of a code releases it";
    if (code_for(code, settings.student) != code) return "a student's code is that of the roster";
    return kept;
}

inline std::string_view holds_for_practice(std::string_view bytes) {
    const DecodedPractice decoded = decode_practice(bytes);
    if (!decoded.settings && !is_said(decoded.reason)) return "each reason has its sentence";
    std::size_t how = bytes.size();
    for (const char c : bytes) how = how * 31 + static_cast<unsigned char>(c);
    if (decoded.settings) {
        if (!can_be_coded(*decoded.settings)) return "what a code says can be coded";
        const std::string_view broken = settings_come_back(*decoded.settings, how);
        if (!broken.empty()) return broken;
    }
    Bytes in{bytes};
    PracticeSettings chosen;
    chosen.difficulty = static_cast<Difficulty>(in.choice(3));
    chosen.mishap = in.choice(2) == 1;
    chosen.release = static_cast<Release>(in.choice(3));
    chosen.standard = static_cast<StandardConditions>(in.choice(5));
    chosen.vapour = static_cast<PracticeVapour>(in.choice(3));
    chosen.seed = static_cast<int>(in.choice(100) * 100 + in.choice(100));
    chosen.student = static_cast<int>(in.choice(29) * 29 + in.choice(29));
    return can_be_coded(chosen) ? settings_come_back(chosen, how) : "all such settings can be coded";
}

}  // namespace overwater::fuzz
