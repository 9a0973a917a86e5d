#include <doctest/doctest.h>

#include <string>

#include "core/lesson/practice_code.hpp"

using namespace overwater;

// What is just still a practice code, and what is none any more. The rules are those of practice.md.

namespace {

PracticeSettings some() {
    PracticeSettings s;
    s.seed = 4711;
    s.student = 17;
    s.difficulty = Difficulty::hard;
    return s;
}

std::string key_of_reason(const std::string& code) {
    const DecodedPractice decoded = decode_practice(code);
    return decoded.settings ? "" : std::string(decoded.reason.key);
}

}  // namespace

TEST_CASE("seeds from 0 to 9999, numbers in the roster from 0 to 840, and the version of this generator") {
    const auto coded = [](int version, int seed, int student) {
        PracticeSettings s = some();
        s.version = version;
        s.seed = seed;
        s.student = student;
        CHECK(can_be_coded(s) == !code_of(s).empty());
        CHECK(can_be_coded(s) == !release_word(s).empty());
        return can_be_coded(s);
    };
    CHECK(coded(1, 0, 0));
    CHECK(coded(1, 9999, 840));
    CHECK_FALSE(coded(0, 0, 0));
    CHECK_FALSE(coded(2, 0, 0));
    CHECK_FALSE(coded(1, -1, 0));
    CHECK_FALSE(coded(1, 10000, 0));
    CHECK_FALSE(coded(1, 0, -1));
    CHECK_FALSE(coded(1, 0, 841));
    PracticeSettings last = some();
    last.standard = StandardConditions::twenty_five_celsius_1_atmosphere;
    CHECK(can_be_coded(last));
    last.standard = StandardConditions::own;
    CHECK_FALSE(can_be_coded(last));
}

TEST_CASE("dashes of all widths, dots, strokes, commas and spaces between the groups of a code do not count") {
    const std::string code = code_of(some());
    const std::string first = code.substr(0, 5);
    const std::string second = code.substr(6);
    for (const char* sign : {"-", " ", ".", "/", "_", ",", "\t", "\n", "\u00a0", "\u00b7", "\u2010", "\u2011", "\u2012",
                             "\u2013", "\u2014", "\u2015", "\u2212", ""}) {
        CAPTURE(std::string(sign));
        const DecodedPractice decoded = decode_practice(sign + first + sign + sign + second + sign);
        REQUIRE(decoded.settings.has_value());
        CHECK(*decoded.settings == some());
    }
    // Their neighbours in the tables of characters are no dashes.
    for (const char* sign :
         {"+", ";", ":", "!", "\u00b6", "\u00b8", "\u2016", "\u2211", "\u2213", "@", "[", "`", "{", "\xc2\x80"}) {
        CAPTURE(std::string(sign));
        CHECK(key_of_reason(first + sign + second) == "practice.code.unknown_character");
    }
    // What cannot be read is told as it was typed, half a character as a question mark.
    CHECK(decode_practice(first + "\u00e9").reason.arguments.at(0).text == "\u00e9");
    CHECK(decode_practice(first + "\xc3").reason.arguments.at(0).text == "?");
}

TEST_CASE("each letter and digit counts, in small letters as in capitals") {
    for (int seed = 0; seed < 400; ++seed) {
        PracticeSettings s = some();
        s.seed = 25 * seed;
        s.student = seed;
        std::string small = code_of(s);
        for (char& c : small) c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
        const DecodedPractice decoded = decode_practice(small);
        REQUIRE(decoded.settings.has_value());
        CHECK(*decoded.settings == s);
    }
}

TEST_CASE("a code has nine characters, no more and no fewer") {
    const std::string code = code_of(some());
    CHECK(key_of_reason(code) == "");
    CHECK(key_of_reason(code.substr(0, 9)) == "practice.code.too_short");
    CHECK(key_of_reason(code + "0") == "practice.code.too_long");
    const DecodedPractice longer = decode_practice(code + "00");
    REQUIRE(longer.reason.arguments.size() == 2);
    CHECK(longer.reason.arguments[0].count == 9);
    CHECK(longer.reason.arguments[1].count == 11);
}

TEST_CASE("codes for a roster: from any number on, to its end") {
    PracticeSettings s = some();
    CHECK(codes_for(s, 0, 3).size() == 3);
    CHECK(codes_for(s, 840, 3).size() == 1);
    CHECK(codes_for(s, 841, 3).empty());
    CHECK(codes_for(s, 5, 0).empty());
    CHECK(codes_for(s, -1, 3).empty());
    s.student = 5;
    CHECK(codes_for(some(), 5, 2).at(0) == code_of(s));
    const std::string of_class = code_of(some());
    CHECK(code_for(of_class, 5) == code_of(s));
    CHECK(code_for(of_class, 0).has_value());
    CHECK(code_for(of_class, 840).has_value());
    CHECK_FALSE(code_for(of_class, 841).has_value());
    CHECK_FALSE(code_for(of_class, -1).has_value());
}

TEST_CASE("a release word is three syllables that can be said aloud, and is heard whatever stands around it") {
    for (int student = 0; student < 300; ++student) {
        PracticeSettings s = some();
        s.student = student;
        const std::string word = release_word(s);
        REQUIRE(word.size() == 6);
        for (std::size_t i = 0; i < 6; i += 2) {
            CHECK(std::string("bdlmnrtv").find(word[i]) != std::string::npos);
            CHECK(std::string("aeio").find(word[i + 1]) != std::string::npos);
        }
        std::string said = "@[`{ 1";
        for (const char c : word) said += std::string(1, static_cast<char>(c - 'a' + 'A')) + "@[`{";
        CHECK(is_release_word(s, said));
        CHECK(is_release_word(s, word));
        CHECK_FALSE(is_release_word(s, word + "a"));
        CHECK_FALSE(is_release_word(s, word + "z"));
        CHECK_FALSE(is_release_word(s, word + "A"));
        CHECK_FALSE(is_release_word(s, word + "Z"));
        CHECK_FALSE(is_release_word(s, word.substr(1)));
    }
}

TEST_CASE("what is asked of a class stands in its conventions") {
    PracticeSettings s;
    s.vapour = PracticeVapour::table_interpolated;
    s.release = Release::after_attempt;
    CHECK(conventions_of(s).vapour == Conventions::Vapour::table);
    CHECK(conventions_of(s).vapour_rows == Conventions::VapourRows::interpolated);
    CHECK(conventions_of(s).answers == Conventions::Answers::after_attempt);
    s.vapour = PracticeVapour::formula;
    s.release = Release::at_once;
    CHECK(conventions_of(s).vapour == Conventions::Vapour::formula);
    CHECK(conventions_of(s).vapour_rows == Conventions::VapourRows::interpolated);
    CHECK(conventions_of(s).answers == Conventions::Answers::live);
}
