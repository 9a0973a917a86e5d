#include "core/result/random.hpp"

#include <cmath>

// Everything here is straight arithmetic on each lane, without a branch, so that compilers make vector instructions of
// it; the tails of the normal are the exception, as few draws fall there.

namespace overwater {

namespace {

template <std::size_t N>
inline double polynomial(const std::array<double, N>& coefficients, double x) {
    double sum = coefficients[N - 1];
    for (std::size_t i = N - 1; i-- > 0;) sum = sum * x + coefficients[i];
    return sum;
}

constexpr double ln2_high = 6.93147180369123816490e-1;  // its low 32 bits are zero, so a small whole number times it is exact
constexpr double ln2_low = 1.90821492927058770002e-10;

inline double log_of(double x) {
    // x = 2^e m with m in [sqrt 1/2, sqrt 2): the bits of sqrt 1/2 taken off, the exponent is what is left.
    constexpr std::uint64_t sqrt_half = 0x3FE6A09E667F3BCDu;
    const std::uint64_t bits = __builtin_bit_cast(std::uint64_t, x);
    const std::uint64_t shifted = bits - sqrt_half + (std::uint64_t{1023} << 52);
    // A whole number below 2^52 becomes a double by standing in the fraction of 2^52.
    const double e = __builtin_bit_cast(double, (shifted >> 52) | 0x4330000000000000u) - (0x1p52 + 1023);
    const double m = __builtin_bit_cast(double, (shifted & 0xFFFFFFFFFFFFFu) + sqrt_half);
    // ln m = 2 artanh s, s = (m - 1)/(m + 1), |s| < 0.172: the first term left out is below 1e-18.
    static constexpr std::array<double, 11> odd{1.0,      1.0 / 3,  1.0 / 5,  1.0 / 7,  1.0 / 9, 1.0 / 11,
                                                1.0 / 13, 1.0 / 15, 1.0 / 17, 1.0 / 19, 1.0 / 21};
    const double s = (m - 1) / (m + 1);
    return e * ln2_high + (2 * s * polynomial(odd, s * s) + e * ln2_low);
}

inline double exp_of(double x) {
    x = x < -700 ? -700 : x;
    x = x > 700 ? 700 : x;
    // x = k ln 2 + r, |r| < 0.35; adding 1.5 2^52 rounds to a whole number and leaves it in the low bits.
    constexpr double rounder = 0x1.8p52;
    const double shifted = x * 1.44269504088896340736 + rounder;
    const double k = shifted - rounder;
    const double r = (x - k * ln2_high) - k * ln2_low;
    static constexpr std::array<double, 15> inverse_factorials{
        1.0,          1.0,           1.0 / 2,        1.0 / 6,         1.0 / 24,
        1.0 / 120,    1.0 / 720,     1.0 / 5040,     1.0 / 40320,     1.0 / 362880,
        1.0 / 3628800, 1.0 / 39916800, 1.0 / 479001600, 1.0 / 6227020800, 1.0 / 87178291200};
    const std::uint64_t exponent = (__builtin_bit_cast(std::uint64_t, shifted) + 1023) << 52;
    return polynomial(inverse_factorials, r) * __builtin_bit_cast(double, exponent);
}

/// cos(pi v), 0 < v < 1, as the sine of what is missing to a right angle, by its series.
inline double cos_pi(double v) {
    static constexpr std::array<double, 11> series{
        1.0,
        -1.0 / 6,
        1.0 / 120,
        -1.0 / 5040,
        1.0 / 362880,
        -1.0 / 39916800,
        1.0 / 6227020800,
        -1.0 / 1307674368000,
        1.0 / 355687428096000,
        -1.0 / 121645100408832000,
        1.0 / 51090942171709440000.0};
    const double x = 3.14159265358979323846 * (0.5 - v);
    return x * polynomial(series, x * x);
}

// Wichura, Algorithm AS 241 (PPND16), Applied Statistics 37 (1988) 477: relative accuracy about 1e-16. The coefficients
// were compared with two public listings of it.
inline double normal_middle(double q) {
    static constexpr std::array<double, 8> above{3.3871328727963666080,     1.3314166789178437745e+2,
                                                 1.9715909503065514427e+3,  1.3731693765509461125e+4,
                                                 4.5921953931549871457e+4,  6.7265770927008700853e+4,
                                                 3.3430575583588128105e+4,  2.5090809287301226727e+3};
    static constexpr std::array<double, 8> below{1.0,                       4.2313330701600911252e+1,
                                                 6.8718700749205790830e+2,  5.3941960214247511077e+3,
                                                 2.1213794301586595867e+4,  3.9307895800092710610e+4,
                                                 2.8729085735721942674e+4,  5.2264952788528545610e+3};
    const double r = 0.180625 - q * q;
    return q * polynomial(above, r) / polynomial(below, r);
}

/// The upper tail, `outside` the probability above.
double normal_tail(double outside) {
    static constexpr std::array<double, 8> above_near{1.42343711074968357734,    4.63033784615654529590,
                                                      5.76949722146069140550,    3.64784832476320460504,
                                                      1.27045825245236838258,    2.41780725177450611770e-1,
                                                      2.27238449892691845833e-2, 7.74545014278341407640e-4};
    static constexpr std::array<double, 8> below_near{1.0,                       2.05319162663775882187,
                                                      1.67638483018380384940,    6.89767334985100004550e-1,
                                                      1.48103976427480074590e-1, 1.51986665636164571966e-2,
                                                      5.47593808499534494600e-4, 1.05075007164441684324e-9};
    static constexpr std::array<double, 8> above_far{6.65790464350110377720,    5.46378491116411436990,
                                                     1.78482653991729133580,    2.96560571828504891230e-1,
                                                     2.65321895265761230930e-2, 1.24266094738807843860e-3,
                                                     2.71155556874348757815e-5, 2.01033439929228813265e-7};
    static constexpr std::array<double, 8> below_far{1.0,                       5.99832206555887937690e-1,
                                                     1.36929880922735805310e-1, 1.48753612908506148525e-2,
                                                     7.86869131145613259100e-4, 1.84631831751005468180e-5,
                                                     1.42151175831644588870e-7, 2.04426310338993978564e-15};
    const double r = std::sqrt(-log_of(outside));
    return r <= 5 ? polynomial(above_near, r - 1.6) / polynomial(below_near, r - 1.6)
                  : polynomial(above_far, r - 5) / polynomial(below_far, r - 5);
}

constexpr double middle_half_width = 0.425;

}  // namespace

Random::State Random::seeded(std::uint64_t seed) {
    State state;
    for (std::uint64_t& word : state) {
        seed += 0x9E3779B97F4A7C15u;
        std::uint64_t mixed = seed;
        mixed = (mixed ^ (mixed >> 30)) * 0xBF58476D1CE4E5B9u;
        mixed = (mixed ^ (mixed >> 27)) * 0x94D049BB133111EBu;
        word = mixed ^ (mixed >> 31);
    }
    return state;
}

Random::Random(const State& first) {
    // The jump of 2^128 draws, as published with the generator: the sum (xor) of the states at the bits set here.
    constexpr State jump{0x180EC6D33CFD0ABAu, 0xD5A61266F0C9392Cu, 0xA9582618E03FC9AAu, 0x39ABDC4529B1661Cu};
    const auto put = [this](std::size_t lane, const State& s) {
        s0_[lane] = s[0];
        s1_[lane] = s[1];
        s2_[lane] = s[2];
        s3_[lane] = s[3];
    };
    std::array<State, lanes> states{};
    states[0] = first;
    for (std::size_t lane = 1; lane < lanes; ++lane) {
        for (std::size_t k = 0; k < lanes; ++k) put(k, states[lane - 1]);
        for (const std::uint64_t word : jump) {
            for (unsigned bit = 0; bit < 64; ++bit) {
                if ((word >> bit & 1u) != 0) {
                    states[lane][0] ^= s0_[0];
                    states[lane][1] ^= s1_[0];
                    states[lane][2] ^= s2_[0];
                    states[lane][3] ^= s3_[0];
                }
                next();
            }
        }
    }
    for (std::size_t lane = 0; lane < lanes; ++lane) put(lane, states[lane]);
}

Random::Numbers Random::normal() {
    Numbers out = uniform();
    for (std::size_t k = 0; k < lanes; ++k) out[k] = normal_by_rationals(out[k]);
    return out;
}

Random::Numbers Random::student(double degrees) {
    if (!(degrees < 1e6)) return normal();
    const Numbers w = uniform();
    const Numbers v = uniform();
    Numbers out;
    for (std::size_t k = 0; k < lanes; ++k) out[k] = student_of(w[k], v[k], degrees);
    return out;
}

double student_of(double w, double v, double degrees) {
    // sqrt(nu (W^(-2/nu) - 1)) cos(2 pi V), W and V uniform: Bailey, Mathematics of Computation 62 (1994) 779, by the
    // angle instead of its rejection. For whole nu the distribution is that of z/sqrt(sum of nu squares/nu), JCGM 101,
    // 6.4.9. Half a turn is enough, as the cosine takes each value twice.
    const double power = exp_of(-2 / degrees * log_of(w));
    return std::sqrt(degrees * (power - 1)) * cos_pi(v);
}

double normal_by_rationals(double probability) {
    const double q = probability - 0.5;
    if (q < -middle_half_width) return -normal_tail(probability);
    return q > middle_half_width ? normal_tail(1 - probability) : normal_middle(q);
}
double log_by_arithmetic(double x) { return log_of(x); }
double exp_by_arithmetic(double x) { return exp_of(x); }

}  // namespace overwater
