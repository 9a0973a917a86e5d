#pragma once

#include <cstdint>
#include <memory>

namespace overwater {

/// Reads the whole numbers that assets/font/number_writer.py has written: an arithmetic decoder whose chances are learned
/// from what it has read. Takes 1 MB while it lives.
class NumberStream {
public:
    /// `bytes` end as the writer ends them, in three zeros; `contexts` are the writer's, each with a semicolon behind. Both
    /// stay where they are.
    NumberStream(const unsigned char* bytes, const char* contexts);

    /// What is known by letter. It has to be what the writer knew, as has a guess.
    int& known(int letter) { return known_[letter & (letters - 1)]; }

    /// The next number.
    int number(int kind, int guess = 0);

private:
    static constexpr int letters = 128;
    static constexpr int kinds = 32;
    static constexpr int stages = 32;
    static constexpr int most_inputs = 4;
    static constexpr int most_seen = 250;
    static constexpr int most_chances = 1024;
    using Seen = unsigned char[2];  // how often the next bit was 0 and 1, where the same was known

    int bit(double* weights, const std::uint32_t* keys, int inputs);

    const unsigned char* next_;
    const char* contexts_[kinds];
    int known_[letters] = {};
    std::uint32_t low_ = 0;
    std::uint32_t high_ = 0xFFFFFFFF;
    std::uint32_t code_ = 0;
    // Writer and reader need the same doubles, which a library's log and exp do not promise.
    double logarithms_[most_seen + 1];  // about ln(k + 0.4), less that of 0
    double chances_[most_chances + 1];  // about 1/(1 + exp(-x)), x from -8 to 8
    double weights_[kinds * stages * most_inputs];
    std::unique_ptr<Seen[]> seen_;
};

}  // namespace overwater
