#include "web/draw/number_stream.hpp"

#include <algorithm>
#include <cstdlib>

namespace overwater {

namespace {

constexpr int slot_bits = 19;
constexpr double learning = 0.02;
constexpr double first_weight = 0.35;

std::uint32_t mixed(std::uint32_t h, std::uint32_t value) {
    h = (h ^ value) * 0x9E3779B1U;
    return h ^ (h >> 15);
}

/// The bits that stand for a number, the first one lowest (number_writer.py).
std::uint64_t digits(int value) {
    if (value == 0) return 0;
    const auto magnitude = static_cast<std::uint32_t>(std::abs(value));
    int size = 0;
    while ((magnitude >> size) > 1) ++size;
    std::uint64_t bits = (value < 0 ? 3U : 1U) | ((std::uint64_t{1} << size) - 1) << 2;
    for (int j = 0; j < size; ++j) {
        bits |= static_cast<std::uint64_t>(magnitude >> (size - 1 - j) & 1U) << (3 + size + j);
    }
    return bits;
}

}  // namespace

NumberStream::NumberStream(const unsigned char* bytes, const char* contexts)
    : next_(bytes), seen_(std::make_unique<Seen[]>(std::size_t{1} << slot_bits)) {
    for (int i = 0; i < 4; ++i) code_ = code_ << 8 | *next_++;
    for (int kind = 0; *contexts != '\0'; ++kind) {
        contexts_[kind] = contexts;
        while (*contexts++ != ';') {}
    }
    logarithms_[0] = 0;
    for (int k = 0; k < most_seen; ++k) {
        const double z = 1 / (2 * k + 1.8);
        logarithms_[k + 1] = logarithms_[k] + 2 * z * (1 + z * z / 3);
    }
    for (int i = 0; i <= most_chances; ++i) {
        double e = 1 - (i / 64.0 - 8) / 1024;
        for (int k = 0; k < 10; ++k) e *= e;
        chances_[i] = std::clamp(1 / (1 + e), 1.0 / 4096, 4095.0 / 4096);
    }
    for (double& weight : weights_) weight = first_weight;
}

int NumberStream::number(int kind, int guess) {
    const auto first = static_cast<std::uint32_t>(kind * 16);
    const std::uint32_t guess_key = mixed(0, first + 15);
    const std::uint64_t guessed = digits(guess);
    bool right = true;  // the guess, as far as is known
    const char* letter = contexts_[kind];
    const bool guesses = *letter++ == '1';
    std::uint32_t context_keys[most_inputs];
    int contexts = 0;
    for (; *letter != ';'; ++letter) {
        std::uint32_t h = 0;
        for (; *letter != ','; ++letter) h = mixed(h, static_cast<std::uint32_t>(known(*letter)));
        context_keys[contexts] = mixed(mixed(0, first + static_cast<std::uint32_t>(contexts)), h);
        ++contexts;
    }

    int at = 0;
    const auto read = [&](int stage, int node) {
        std::uint32_t keys[most_inputs];
        int inputs = 0;
        for (; inputs < contexts; ++inputs)
            keys[inputs] = mixed(context_keys[inputs], static_cast<std::uint32_t>(node));
        const int said = static_cast<int>(guessed >> at++ & 1U);
        if (guesses)
            keys[inputs++] = mixed(guess_key, static_cast<std::uint32_t>(right ? -1 - 2 * stage - said : node));
        const int found = bit(&weights_[static_cast<std::size_t>((kind * stages + stage) * most_inputs)], keys, inputs);
        right = right && said == found;
        return found;
    };

    if (read(0, 0) == 0) return 0;
    const int negative = read(1, 1);
    int size = 0;
    while (read(2 + size, 2 + negative + 2 * size) != 0) ++size;
    const int start = (size * 2 + negative + 1) << 16;
    int magnitude = 1;
    for (int j = 0; j < size; ++j) magnitude = magnitude * 2 + read(j == size - 1 ? 31 : 16 + j, start + magnitude);
    return negative != 0 ? -magnitude : magnitude;
}

int NumberStream::bit(double* weights, const std::uint32_t* keys, int inputs) {
    double logarithms[most_inputs];
    unsigned char* slots[most_inputs];
    double total = 0;
    for (int i = 0; i < inputs; ++i) {
        unsigned char* seen = slots[i] = seen_[keys[i] >> (32 - slot_bits)];
        logarithms[i] = logarithms_[seen[1]] - logarithms_[seen[0]];
        total += weights[i] * logarithms[i];
    }
    const double chance = chances_[static_cast<int>((std::clamp(total, -8.0, 8.0) + 8) * 64)];
    const std::uint32_t middle = low_ + ((high_ - low_) >> 16) * static_cast<std::uint32_t>(chance * 65536);
    const int found = code_ <= middle ? 1 : 0;
    (found != 0 ? high_ : low_) = found != 0 ? middle : middle + 1;
    while (((low_ ^ high_) >> 24) == 0) {
        low_ <<= 8;
        high_ = high_ << 8 | 255U;
        code_ = code_ << 8 | *next_++;
    }
    const double step = (found - chance) * learning;
    for (int i = 0; i < inputs; ++i) {
        weights[i] += step * logarithms[i];
        unsigned char& same = slots[i][found];
        unsigned char& other = slots[i][1 - found];
        if (same < most_seen) ++same;
        if (other > 2) other = static_cast<unsigned char>((other + 2) >> 1);
    }
    return found;
}

}  // namespace overwater
