#pragma once

#include <array>
#include <cstddef>
#include <cstdint>

#include "core/result/pack.hpp"

/// Random draws for the Monte Carlo: the same bits natively and as WebAssembly, as they are made from whole-number
/// operations, + - * / and square roots alone; the logarithm and the exponential among them are our own.

namespace overwater {

/// Eight generators side by side, each xoshiro256+ 1.0 (Blackman and Vigna, "Scrambled linear pseudorandom number
/// generators", ACM Trans. Math. Softw. 47 (2021) 36; period 2^256 - 1), one per lane of a pack. Lane k starts
/// k jumps of 2^128 draws behind lane 0, so no two ever overlap. The first state is filled from the seed by SplitMix64
/// (Steele, Lea and Flood, OOPSLA 2014), as the generator's authors advise.
class Random {
public:
    static constexpr std::size_t lanes = 8;
    using Numbers = Pack<lanes>;
    using Words = std::array<std::uint64_t, lanes>;
    using State = std::array<std::uint64_t, 4>;

    explicit Random(std::uint64_t seed) : Random(seeded(seed)) {}
    /// Lane 0 in this state (not all zero).
    explicit Random(const State& first);

    /// The next 64 bits of every lane. The low three are weak (linear), so `uniform` leaves the low twelve out.
    Words next() {
        Words out;
        for (std::size_t k = 0; k < lanes; ++k) {
            out[k] = s0_[k] + s3_[k];
            const std::uint64_t shifted = s1_[k] << 17;
            s2_[k] ^= s0_[k];
            s3_[k] ^= s1_[k];
            s1_[k] ^= s2_[k];
            s0_[k] ^= s3_[k];
            s2_[k] ^= shifted;
            s3_[k] = (s3_[k] << 45) | (s3_[k] >> 19);
        }
        return out;
    }

    /// Above 0 and below 1, every multiple (j + 1/2)/2^52 as likely as any other.
    Numbers uniform() {
        const Words words = next();
        Numbers out;
        for (std::size_t k = 0; k < lanes; ++k) {
            // The bits of a number in [1, 2); 1 - 2^-53 less is exact.
            out[k] = __builtin_bit_cast(double, (words[k] >> 12) | 0x3FF0000000000000u) - (1 - 0x1p-53);
        }
        return out;
    }

    /// Symmetric triangular between 0 and 1: the mean of two uniform draws.
    Numbers triangular() {
        const Numbers first = uniform();
        return Numbers(0.5) * (first + uniform());
    }

    /// Standard normal, from one uniform draw.
    Numbers normal();

    /// Student's t with `degrees` of freedom, whole or not, 1 or more; from two uniform draws. Normal from a million
    /// degrees on.
    Numbers student(double degrees);

private:
    static State seeded(std::uint64_t seed);

    // Aligned so that no vector of lanes lies across two lines of the cache.
    alignas(64) Words s0_;
    alignas(64) Words s1_;
    alignas(64) Words s2_;
    alignas(64) Words s3_;
};

/// The quantile of the standard normal, 0 < `probability` < 1, within 1e-15 of the larger of 1 and its size, by + - * /
/// and square roots alone.
double normal_by_rationals(double probability);
/// Natural logarithm of a positive, normal number, within 2 units of the last place or 1e-16, by arithmetic alone.
double log_by_arithmetic(double x);
/// Exponential, -700 to 700 (beyond: at that end), within 2 units of the last place, by arithmetic alone.
double exp_by_arithmetic(double x);

}  // namespace overwater
