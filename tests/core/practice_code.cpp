#include <doctest/doctest.h>

#include <set>
#include <string>
#include <vector>

#include "core/lesson/practice_code.hpp"

using namespace overwater;

// The rules that a code must keep are those of practice.md; the codes themselves are compared with an independent
// implementation in practice_golden.cpp.

namespace {

const std::string letters = "0123456789ACDEFGHJKMNPQRTVWXY";

std::string key_of_reason(const std::string& code) {
    const DecodedPractice decoded = decode_practice(code);
    return decoded.settings ? "" : std::string(decoded.reason.key);
}

PracticeSettings some(int i) {
    PracticeSettings s;
    s.seed = i * 4919 % practice_seeds;
    s.student = i * 263 % practice_students;
    s.difficulty = static_cast<Difficulty>(i % 3);
    s.mishap = i / 3 % 2 == 1;
    s.release = static_cast<Release>(i / 6 % 3);
    s.standard = static_cast<StandardConditions>(i / 18 % 5);
    s.vapour = static_cast<PracticeVapour>(i / 90 % 3);
    return s;
}

bool comes_back(const PracticeSettings& s) {
    const DecodedPractice decoded = decode_practice(code_of(s));
    return decoded.settings && *decoded.settings == s;
}

/// A code as its nine characters, without the dash.
std::string plain(std::string code) {
    code.erase(code.find('-'), 1);
    return code;
}

}  // namespace

TEST_CASE("a practice code gives back every setting") {
    int wrong = 0;
    std::set<std::string> all;
    for (int i = 0; i < 270; ++i) {  // every choice of difficulty, mishap, release, conditions and vapour
        wrong += comes_back(some(i)) ? 0 : 1;
        all.insert(code_of(some(i)));
    }
    CHECK(wrong == 0);
    CHECK(all.size() == 270);
    PracticeSettings s;
    for (s.seed = 0; s.seed < practice_seeds; ++s.seed) wrong += comes_back(s) ? 0 : 1;
    s = some(100);
    for (s.student = 0; s.student < practice_students; ++s.student) wrong += comes_back(s) ? 0 : 1;
    CHECK(wrong == 0);
}

TEST_CASE("what cannot be coded has no code") {
    PracticeSettings s;
    CHECK(code_of(s).size() == 10);
    s.standard = StandardConditions::own;
    CHECK(code_of(s).empty());
    s = {};
    s.seed = 10000;
    CHECK(code_of(s).empty());
    s = {};
    s.student = 841;
    CHECK(code_of(s).empty());
    s = {};
    s.version = 2;
    CHECK(code_of(s).empty());
    CHECK(release_word(s).empty());
}

TEST_CASE("any wrong character, any two and any two exchanged are found in a practice code") {
    int tried = 0;
    int taken = 0;
    for (int i = 0; i < 200; ++i) {
        const std::string code = plain(code_of(some(i * 37)));
        for (std::size_t at = 0; at < code.size(); ++at) {
            for (const char other : letters) {
                std::string wrong = code;
                wrong[at] = other;
                if (wrong == code) continue;
                ++tried;
                taken += key_of_reason(wrong) == "practice.code.check_fails" ? 0 : 1;
            }
            for (std::size_t with = at + 1; with < code.size(); ++with) {
                std::string wrong = code;
                std::swap(wrong[at], wrong[with]);
                if (wrong == code) continue;
                ++tried;
                taken += key_of_reason(wrong) == "practice.code.check_fails" ? 0 : 1;
            }
        }
    }
    CHECK(tried > 200 * 9 * 28);
    CHECK(taken == 0);
    // Two wrong characters, anywhere, in one code: 36 pairs of places with 28 x 28 characters.
    const std::string code = plain(code_of(some(7)));
    tried = 0;
    for (std::size_t at = 0; at < code.size(); ++at) {
        for (std::size_t with = at + 1; with < code.size(); ++with) {
            for (const char one : letters) {
                for (const char other : letters) {
                    std::string wrong = code;
                    wrong[at] = one;
                    wrong[with] = other;
                    if (one == code[at] || other == code[with]) continue;
                    ++tried;
                    taken += decode_practice(wrong).settings ? 1 : 0;
                }
            }
        }
    }
    CHECK(tried == 36 * 28 * 28);
    CHECK(taken == 0);
}

TEST_CASE("a practice code is read as people write it") {
    PracticeSettings s = some(58);
    for (s.seed = 0; s.seed < 3000; s.seed += 7) {
        const std::string code = code_of(s);
        std::string written;
        for (const char c : plain(code)) {
            const std::string taken_for = "0O1l2z5S8b" + std::string("Vu");
            const std::size_t place = taken_for.find(c);
            const bool has_twin = place != std::string::npos && place % 2 == 0;
            written += has_twin ? taken_for[place + 1] : (c >= 'A' && c <= 'Z') ? static_cast<char>(c + 32) : c;
            written += ' ';
        }
        const DecodedPractice decoded = decode_practice("  " + written);
        REQUIRE(decoded.settings.has_value());
        CHECK(*decoded.settings == s);
    }
    const std::string code = code_of(s);
    CHECK(decode_practice(code.substr(0, 5) + "\xE2\x80\x93" + code.substr(6)).settings.has_value());  // an en dash
    CHECK(decode_practice(code.substr(0, 3) + "." + code.substr(3, 2) + "/" + code.substr(6)).settings.has_value());
}

TEST_CASE("why a text is no practice code") {
    CHECK(key_of_reason("") == "practice.code.too_short");
    CHECK(key_of_reason("K3F-9QA") == "practice.code.too_short");
    CHECK(key_of_reason("0000000000") == "practice.code.too_long");
    CHECK(key_of_reason("K3F-9!A-000") == "practice.code.unknown_character");
    CHECK(key_of_reason("\xFF\xFE") == "practice.code.unknown_character");
    CHECK(key_of_reason("K3F\xC3\xA9") == "practice.code.unknown_character");
    for (const char c : letters) CHECK(key_of_reason(std::string(9, c)) == "practice.code.check_fails");
    const DecodedPractice short_one = decode_practice("0000");
    REQUIRE(short_one.reason.arguments.size() == 2);
    CHECK(short_one.reason.arguments[0].count == 9);
    CHECK(short_one.reason.arguments[1].count == 4);
}

TEST_CASE("a practice code of a newer generator says so") {
    // The first group counts in base 29; version 1 ends before 2 700 000 = 3 23 20 13 13. Whatever follows, exactly one
    // pair of check characters is right.
    for (const std::string& head : std::vector<std::string>{"3RNEE", "YYYYY", "3RNED"}) {
        int newer = 0;
        int wrong = 0;
        for (const char x : letters) {
            for (const char y : letters) {
                const std::string key = key_of_reason(head + "0A" + x + y);
                newer += key == "practice.code.newer" ? 1 : 0;
                wrong += key == "practice.code.check_fails" ? 1 : 0;
            }
        }
        CHECK(newer == (head == "3RNED" ? 0 : 1));
        CHECK(wrong == 29 * 29 - 1);
    }
}

TEST_CASE("a roster's codes follow from the class's") {
    PracticeSettings s = some(11);
    s.student = 0;
    const std::string of_class = code_of(s);
    const auto codes = codes_for(s, 1, 200);
    REQUIRE(codes.size() == 200);
    std::set<std::string> different(codes.begin(), codes.end());
    CHECK(different.size() == 200);
    for (int i = 0; i < 200; ++i) {
        const std::string& code = codes[static_cast<std::size_t>(i)];
        CHECK(code_for(of_class, i + 1) == code);
        CHECK(code.substr(0, 5) == of_class.substr(0, 5));  // one group for the class, one for the student
        CHECK(decode_practice(code).settings->student == i + 1);
    }
    CHECK(codes_for(s, 830, 100).size() == 11);  // up to 840
    CHECK(codes_for(s, -1, 5).empty());
    CHECK_FALSE(code_for(of_class, 841).has_value());
    CHECK_FALSE(code_for("nonsense", 1).has_value());
}

TEST_CASE("a teacher's word releases a code, the class's word all of them") {
    PracticeSettings s = some(23);
    s.student = 0;
    const std::string of_class = release_word(s);
    CHECK(of_class.size() == 6);
    s.student = 12;
    const std::string own = release_word(s);
    CHECK(own != of_class);
    CHECK(is_release_word(s, own));
    CHECK(is_release_word(s, of_class));
    std::string spaced = " ";
    for (const char c : own) spaced += std::string(1, static_cast<char>(c - 32)) + "-";
    CHECK(is_release_word(s, spaced));
    CHECK_FALSE(is_release_word(s, ""));
    CHECK_FALSE(is_release_word(s, "word"));
    s.student = 13;
    CHECK_FALSE(is_release_word(s, own));
}

TEST_CASE("the conventions of a practice code") {
    PracticeSettings s;
    s.standard = StandardConditions::twenty_five_celsius_1_atmosphere;
    s.vapour = PracticeVapour::table_nearest;
    s.release = Release::by_word;
    const Conventions made = conventions_of(s);
    CHECK(made.standard == StandardConditions::twenty_five_celsius_1_atmosphere);
    CHECK(made.vapour == Conventions::Vapour::table);
    CHECK(made.vapour_rows == Conventions::VapourRows::nearest);
    CHECK(made.answers == Conventions::Answers::hidden);
    CHECK(conventions_of(PracticeSettings{}) == Conventions{});
}
