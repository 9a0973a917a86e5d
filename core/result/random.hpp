#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <cstring>

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

    /// The words of `packs` times `per_pack` calls of next(), a few lanes after the other so that their states stay in
    /// registers. Word j of pack p begins at out[(j * packs + p) * lanes].
    void fill(std::uint64_t* out, std::size_t packs, std::size_t per_pack) {
        if (per_pack == 0) return;  // then there may be no room at all
        for (std::size_t lane = 0; lane < lanes; lane += 2 * together) {
            Generators a(*this, lane);
            Generators b(*this, lane + together);
            for (std::size_t p = 0; p < packs; ++p) {
                std::uint64_t* place = out + p * lanes + lane;
                for (std::size_t j = 0; j < per_pack; ++j, place += packs * lanes) {
                    a.next(place);
                    b.next(place + together);
                }
            }
            a.put_back(*this, lane);
            b.put_back(*this, lane + together);
        }
    }

    /// Above 0 and below 1, every multiple (j + 1/2)/2^52 as likely as any other.
    static double uniform_of(std::uint64_t word) {
        // The bits of a number in [1, 2); 1 - 2^-53 less is exact.
        return __builtin_bit_cast(double, (word >> 12) | 0x3FF0000000000000u) - (1 - 0x1p-53);
    }
    Numbers uniform() {
        const Words words = next();
        Numbers out;
        for (std::size_t k = 0; k < lanes; ++k) out[k] = uniform_of(words[k]);
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
    // Lanes that are worked on side by side: as many as there are registers for.
    static constexpr std::size_t together = 4;
    typedef std::uint64_t Together __attribute__((vector_size(32)));
    /// Some lanes, kept in registers.
    struct Generators {
        Generators(const Random& from, std::size_t lane) {
            std::memcpy(&s0, &from.s0_[lane], sizeof s0);
            std::memcpy(&s1, &from.s1_[lane], sizeof s1);
            std::memcpy(&s2, &from.s2_[lane], sizeof s2);
            std::memcpy(&s3, &from.s3_[lane], sizeof s3);
        }
        void put_back(Random& to, std::size_t lane) const {
            std::memcpy(&to.s0_[lane], &s0, sizeof s0);
            std::memcpy(&to.s1_[lane], &s1, sizeof s1);
            std::memcpy(&to.s2_[lane], &s2, sizeof s2);
            std::memcpy(&to.s3_[lane], &s3, sizeof s3);
        }
        void next(std::uint64_t* out) {
            const Together word = s0 + s3;
            std::memcpy(out, &word, sizeof word);
            const Together shifted = s1 << 17;
            s2 ^= s0;
            s3 ^= s1;
            s1 ^= s2;
            s0 ^= s3;
            s2 ^= shifted;
            s3 = (s3 << 45) | (s3 >> 19);
        }
        Together s0, s1, s2, s3;
    };

    static State seeded(std::uint64_t seed);

    // Aligned so that no vector of lanes lies across two lines of the cache.
    alignas(64) Words s0_;
    alignas(64) Words s1_;
    alignas(64) Words s2_;
    alignas(64) Words s3_;
};

/// Student's t from two uniform draws, as Random::student makes it.
double student_of(double w, double v, double degrees);
/// The quantile of the standard normal, 0 < `probability` < 1, within 1e-15 of the larger of 1 and its size, by + - * /
/// and square roots alone.
double normal_by_rationals(double probability);
/// Natural logarithm of a positive, normal number, within 2 units of the last place or 1e-16, by arithmetic alone.
double log_by_arithmetic(double x);
/// Exponential, -700 to 700 (beyond: at that end), within 2 units of the last place, by arithmetic alone.
double exp_by_arithmetic(double x);

}  // namespace overwater
