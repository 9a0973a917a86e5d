#!/usr/bin/python3
"""The draws and the model of the Monte Carlo written a second time, in NumPy, from the publications alone.

Run by itself it prints the numbers that tests/core/monte_carlo_draws.cpp and monte_carlo.cpp pin for both builds, and checks the
generator against published vectors and the distributions against scipy.

Generator: xoshiro256+ 1.0, jump and SplitMix64 as published by Blackman and Vigna. Normal: Wichura's AS 241 (PPND16). Student's t:
Bailey, Math. Comp. 62 (1994) 779.
"""

import math

import numpy as np
import scipy.stats
from iapws.iapws97 import _PSat_T

from check import Checks

LANES = 8
MASK = (1 << 64) - 1
JUMP = (0x180EC6D33CFD0ABA, 0xD5A61266F0C9392C, 0xA9582618E03FC9AA, 0x39ABDC4529B1661C)


def rotated(x, k):
    return (x << k | x >> (64 - k)) & MASK


def stepped(s):
    """The next state, in Python's whole numbers."""
    t = s[1] << 17 & MASK
    s2, s3 = s[2] ^ s[0], s[3] ^ s[1]
    s1, s0 = s[1] ^ s2, s[0] ^ s3
    return (s0, s1, s2 ^ t, rotated(s3, 45))


def words_from(state, count):
    found = []
    for _ in range(count):
        found.append((state[0] + state[3]) & MASK)
        state = stepped(state)
    return found


def jumped(state):
    out = [0, 0, 0, 0]
    for word in JUMP:
        for bit in range(64):
            if word >> bit & 1:
                out = [a ^ b for a, b in zip(out, state)]
            state = stepped(state)
    return tuple(out)


def splitmix(seed):
    out = []
    for _ in range(4):
        seed = (seed + 0x9E3779B97F4A7C15) & MASK
        z = seed
        z = (z ^ z >> 30) * 0xBF58476D1CE4E5B9 & MASK
        z = (z ^ z >> 27) * 0x94D049BB133111EB & MASK
        out.append(z ^ z >> 31)
    return tuple(out)


class Generator:
    def __init__(self, seed):
        states = [splitmix(seed)]
        while len(states) < LANES:
            states.append(jumped(states[-1]))
        self.s = [np.array([state[i] for state in states], dtype=np.uint64) for i in range(4)]

    def words(self, count):
        """`count` rows of one word per lane."""
        out = np.empty((count, LANES), dtype=np.uint64)
        s0, s1, s2, s3 = self.s
        k17, k45, k19 = np.uint64(17), np.uint64(45), np.uint64(19)
        for row in out:
            np.add(s0, s3, out=row)
            t = s1 << k17
            s2 ^= s0
            s3 ^= s1
            s1 ^= s2
            s0 ^= s3
            s2 ^= t
            s3 = s3 << k45 | s3 >> k19
        self.s = [s0, s1, s2, s3]
        return out


def uniform(words):
    """(j + 1/2) 2^-52 with j the upper 52 bits."""
    return ((words >> np.uint64(12)).astype(np.float64) + 0.5) * 2.0**-52


def checksum(bits):
    """h = 31 h + word, modulo 2^64."""
    h = 0
    for word in bits.ravel().tolist():
        h = (31 * h + word) & MASK
    return h


def bits_of(values):
    return np.ascontiguousarray(values).view(np.uint64)


A = (3.3871328727963666080, 1.3314166789178437745e2, 1.9715909503065514427e3, 1.3731693765509461125e4, 4.5921953931549871457e4,
     6.7265770927008700853e4, 3.3430575583588128105e4, 2.5090809287301226727e3)
B = (1.0, 4.2313330701600911252e1, 6.8718700749205790830e2, 5.3941960214247511077e3, 2.1213794301586595867e4,
     3.9307895800092710610e4, 2.8729085735721942674e4, 5.2264952788528545610e3)
C = (1.42343711074968357734, 4.63033784615654529590, 5.76949722146069140550, 3.64784832476320460504, 1.27045825245236838258,
     2.41780725177450611770e-1, 2.27238449892691845833e-2, 7.74545014278341407640e-4)
D = (1.0, 2.05319162663775882187, 1.67638483018380384940, 6.89767334985100004550e-1, 1.48103976427480074590e-1,
     1.51986665636164571966e-2, 5.47593808499534494600e-4, 1.05075007164441684324e-9)


def polynomial(coefficients, x):
    total = np.full_like(x, coefficients[-1])
    for c in reversed(coefficients[:-1]):
        total = total * x + c
    return total


E = (6.65790464350110377720, 5.46378491116411436990, 1.78482653991729133580, 2.96560571828504891230e-1, 2.65321895265761230930e-2,
     1.24266094738807843860e-3, 2.71155556874348757815e-5, 2.01033439929228813265e-7)
F = (1.0, 5.99832206555887937690e-1, 1.36929880922735805310e-1, 1.48753612908506148525e-2, 7.86869131145613259100e-4,
     1.84631831751005468180e-5, 1.42151175831644588870e-7, 2.04426310338993978564e-15)
LN2_HIGH, LN2_LOW = 6.93147180369123816490e-1, 1.90821492927058770002e-10  # their sum, to 33 digits, is ln 2; the first ends in zeros


def log(x):
    """The program's logarithm, operation by operation, for the same last bits: x = m 2^e, ln m = 2 artanh((m - 1)/(m + 1))."""
    m, e = np.frexp(x)
    low = m < 0.70710678118654757
    m, e = np.where(low, 2 * m, m), (e - low).astype(np.float64)
    s = (m - 1) / (m + 1)
    return e * LN2_HIGH + (2 * s * polynomial(tuple(1 / k for k in range(1, 22, 2)), s * s) + e * LN2_LOW)


def exp(x):
    """x = k ln 2 + r, the series of e^r to r^14."""
    k = np.rint(np.minimum(x, 700.0) * 1.44269504088896340736)
    r = (np.minimum(x, 700.0) - k * LN2_HIGH) - k * LN2_LOW
    return np.ldexp(polynomial(tuple(1 / math.factorial(n) for n in range(15)), r), k.astype(int))


def cos_pi(v):
    """cos(pi v) as the series of sin(pi (1/2 - v))."""
    x = 3.14159265358979323846 * (0.5 - v)
    return x * polynomial(tuple((-1) ** n / math.factorial(2 * n + 1) for n in range(11)), x * x)


def normal(u):
    q = u - 0.5
    r = 0.180625 - q * q
    middle = q * polynomial(A, r) / polynomial(B, r)
    r = np.sqrt(-log(np.minimum(u, 1 - u)))
    size = np.where(r <= 5, polynomial(C, r - 1.6) / polynomial(D, r - 1.6), polynomial(E, r - 5) / polynomial(F, r - 5))
    return np.where(np.abs(q) <= 0.425, middle, np.copysign(size, q))


def student(w, v, degrees):
    return np.sqrt(degrees * (exp(-2 / degrees * log(w)) - 1)) * cos_pi(v)


# Record A of the method (invented), in SI units and degrees Celsius, and its doubts in the order in which they are drawn.
RECORD_A = {"mass": 0.0412e-3, "reading": 9.15e-6, "end_space": 2.35e-6, "celsius": 21.4, "barometer": 99620.0, "column": 0.112}
DOUBTS_A = (("mass", "triangular", 0.1e-6), ("reading", "rectangular", 0.05e-6), ("reading", "rectangular", 0.10e-6),
            ("end_space", "rectangular", 0.10e-6), ("celsius", "rectangular", 0.5), ("barometer", "rectangular", 100.0),
            ("column", "rectangular", 1e-3))


def vapour_pressure(kelvin):
    """IAPWS-IF97 region 4, in Pa, for whole arrays."""
    n = (1167.0521452767, -724213.16703206, -17.073846940092, 12020.82470247, -3232555.0322333, 14.91510861353,
         -4823.2657361591, 405113.40542057, -0.23855557567849, 650.17534844798)
    t = kelvin + n[8] / (kelvin - n[9])
    a, b, c = t**2 + n[0] * t + n[1], n[2] * t**2 + n[3] * t + n[4], n[5] * t**2 + n[6] * t + n[7]
    return (2 * c / (-b + np.sqrt(b**2 - 4 * a * c))) ** 4 * 1e6


def molar_volume(mass, reading, end_space, celsius, barometer, column):
    """m3/mol at 0 degrees Celsius and 100 kPa. Upside-down 50 mL scale, magnesium, liquid higher inside; density: CIPM 2001."""
    kelvin = celsius + 273.15
    density = 999.97495 * (1 - (celsius - 3.983035) ** 2 * (celsius + 301.797) / (522528.9 * (celsius + 69.34881)))
    dry = barometer - density * 9.80665 * column - vapour_pressure(kelvin)
    return (50e-6 - reading + end_space) / (mass / 24.305e-3) * (dry / 1e5) * (273.15 / kelvin)


def trials_of_record_a(trials, seed):
    """The values by the program's own draws, in its order: pack by pack, doubt by doubt; a triangular one takes two words."""
    generator = Generator(seed)
    per_pack = sum(2 if shape == "triangular" else 1 for _, shape, _ in DOUBTS_A)
    packs = -(-trials // LANES)
    u = uniform(generator.words(packs * per_pack)).reshape(packs, per_pack, LANES)
    inputs = dict(RECORD_A)
    column = 0
    for name, shape, a in DOUBTS_A:
        draw = u[:, column]
        column += 1
        if shape == "triangular":
            draw = (draw + u[:, column]) / 2
            column += 1
        inputs[name] = inputs[name] + (-a + 2 * a * draw)
    return molar_volume(**inputs).ravel()[:trials]


def intervals(values):
    """JCGM 101, 7.7: median, symmetric and shortest 95 % interval."""
    y = np.sort(values)
    count = len(y)
    q = int(0.95 * count + 0.5)
    r = (count - q + 1) // 2
    best = int(np.argmin(y[q:] - y[: count - q]))
    return np.median(y), (y[r - 1], y[r + q - 1]), (y[best], y[best + q])


def main():
    checks = Checks()
    # Vectors published with other implementations and made with the authors' program: xoshiro256plus.c from the state 1 2 3 4
    # (rand_xoshiro, Rust), and the state after a jump from 0 0 0 1 (xoshiro-fortran).
    checks.that(words_from((1, 2, 3, 4), 10) == [
        5, 211106232532999, 211106635186183, 9223759065350669058, 9250833439874351877, 13862484359527728515, 2346507365006083650,
        1168864526675804870, 34095955243042024, 3466914240207415127], "xoshiro256+ from the state 1 2 3 4")
    checks.that(jumped((0, 0, 0, 1)) == (0x934D05E8B2076310, 0xEABDD0BF76A1BE51, 0x75DD6A992ACCB1E8, 0xC660C602A7330187),
                "a jump from the state 0 0 0 1")
    # SplitMix64 from the seed 1234567: a vector found with many implementations.
    checks.that(splitmix(1234567)[:3] == (6457827717110365317, 3203168211198807973, 9817491932198370423), "SplitMix64")

    words = Generator(1).words(12500)
    checks.that(words[:, 0].tolist() == words_from(splitmix(1), 12500), "lane 0 in NumPy and in whole numbers")
    print("first word of each lane, seed 1:", ", ".join(f"{w:#x}" for w in words[0].tolist()))
    print("checksum of the first 100000 words, seed 1:", hex(checksum(words)))
    u = uniform(words)
    print("checksum of their uniforms:", hex(checksum(bits_of(u))))

    # The C library's, good to one unit in the last place; NumPy's own are off by up to three on some processors.
    by_c = lambda function, values: np.array([function(value) for value in values.ravel()]).reshape(values.shape)
    checks.that(np.max(np.abs(log(u) / by_c(math.log, u) - 1)) < 5e-16, "the logarithm against the C library's")
    x = 1400 * u - 700
    checks.that(np.max(np.abs(exp(x) / by_c(math.exp, x) - 1)) < 5e-16, "the exponential against the C library's")
    checks.that(np.max(np.abs(cos_pi(u) - by_c(math.cos, np.pi * u))) < 4e-16, "the cosine against the C library's")

    z = normal(u)
    exact = scipy.stats.norm.ppf(u)
    checks.that(np.max(np.abs(z - exact) / np.maximum(1, np.abs(exact))) < 2e-15, "AS 241 against scipy")
    print("checksum of the first 100000 normals, seed 1:", hex(checksum(bits_of(z))))
    many = uniform(Generator(2).words(25000)).reshape(12500, 2, LANES)
    for degrees in (1, 2.5, 4, 9):
        t = student(many[:, 0], many[:, 1], degrees)
        checks.that(scipy.stats.kstest(t.ravel(), scipy.stats.t(degrees).cdf).pvalue > 0.001, f"Bailey's t with {degrees} degrees")
        print(f"checksum of the first 100000 of Student's t, {degrees} degrees, seed 2:", hex(checksum(bits_of(t))))

    for celsius in (20.9, 21.4, 21.9):
        expected = _PSat_T(celsius + 273.15) * 1e6
        checks.close(float(vapour_pressure(np.array(celsius + 273.15))), expected, 1e-11 * expected, f"vapour pressure, {celsius} C")
    values = trials_of_record_a(100_000, 1)
    median, symmetric, shortest = intervals(values)
    print("record A, 100000 trials, seed 1: mean, u, median, symmetric, shortest in m3/mol")
    for number in (np.mean(values), np.std(values, ddof=1), median, *symmetric, *shortest):
        print("   ", repr(float(number)))
    checks.finish()


if __name__ == "__main__":
    main()
