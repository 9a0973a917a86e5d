#!/usr/bin/python3
"""Record A's interval by NumPy and by OpenTURNS, and its sensitivities by python3-uncertainties, to stand beside the program's
own. One thread each, the same model, distributions and number of trials.

usage: monte_carlo_numpy.py [ROUNDS]
prints "NAME MILLISECONDS LOW HIGH LOW HIGH" (symmetric, shortest; L/mol) and "uncertainties MICROSECONDS U" (L/mol) lines

NumPy: Generator (PCG64), whole arrays, or blocks that stay in the cache; np.partition, then only the two tails are sorted.
"""

import os
import sys
import time

for name in ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS", "MKL_NUM_THREADS"):
    os.environ[name] = "1"

import numpy as np  # noqa: E402 (threads are chosen before it loads)

TRIALS = 1_000_000
COVERED = 950_000
ROUNDS = int(sys.argv[1]) if len(sys.argv) > 1 else 7
# The doubts of record A as the program takes them, eleven of them (method, section 6): 0.025 % of the vapour pressure is
# its formula's, up to twice 0.125 mL stands in the meniscus, 0.0264 m/s2 lie between equator and pole.
OF_VAPOUR = 0.00025 * 2549.94
HIGHEST_RING = 0.125e-6


def vapour_pressure(kelvin, sqrt=np.sqrt):
    """IAPWS-IF97 region 4, equation 30, in Pa."""
    theta = kelvin - 0.23855557567849 / (kelvin - 650.17534844798)
    a = (theta + 1167.0521452767) * theta - 724213.16703206
    b = (-17.073846940092 * theta + 12020.824702470) * theta - 3232555.0322333
    c = (14.915108613530 * theta - 4823.2657361591) * theta + 405113.40542057
    root = 2 * c / (sqrt(b * b - 4 * a * c) - b)
    square = root * root
    return square * square * 1e6


def density(celsius):
    """CIPM 2001, kg/m3."""
    from_greatest = celsius - 3.983035
    return 999.974950 * (1 - from_greatest * from_greatest * (celsius + 301.797) / (522528.9 * (celsius + 69.34881)))


def molar_volume(mass, weight, reading, end_space, ring, column, gravity, celsius, of_vapour, barometer, sqrt=np.sqrt):
    """L/mol at 0 degrees Celsius and 100 kPa."""
    kelvin = celsius + 273.15
    dry = barometer - density(celsius) * gravity * column - (vapour_pressure(kelvin, sqrt) + of_vapour)
    volume = 50e-6 - reading + end_space - 2 * ring
    return 1e3 * volume / (mass / weight) * (dry / 1e5) * (273.15 / kelvin)


def trials(rng, count):
    return molar_volume(
        rng.triangular(0.0411e-3, 0.0412e-3, 0.0413e-3, count),
        rng.uniform(24.303e-3, 24.307e-3, count),
        9.15e-6 + rng.uniform(-0.05e-6, 0.05e-6, count) + rng.uniform(-0.10e-6, 0.10e-6, count),
        rng.uniform(2.25e-6, 2.45e-6, count),
        rng.uniform(0, HIGHEST_RING, count),
        rng.uniform(0.111, 0.113, count),
        rng.uniform(9.80665 - 0.0264, 9.80665 + 0.0264, count),
        rng.uniform(20.9, 21.9, count),
        rng.uniform(-OF_VAPOUR, OF_VAPOUR, count),
        rng.uniform(99520.0, 99720.0, count),
    )


def intervals(values):
    outside = TRIALS - COVERED
    values = np.partition(values, (outside - 1, COVERED))
    low = np.sort(values[:outside])
    high = np.sort(values[COVERED:])
    r = (outside + 1) // 2
    best = np.argmin(high - low)
    return low[r - 1], high[r - 1], low[best], high[best]


def numpy_whole(rng):
    values = trials(rng, TRIALS)
    return values.mean(), values.std(ddof=1), intervals(values)


def numpy_blocks(rng, block=10_000):
    values = np.empty(TRIALS)
    for start in range(0, TRIALS, block):
        values[start : start + block] = trials(rng, block)
    return values.mean(), values.std(ddof=1), intervals(values)


def openturns_way():
    """The distributions as one composed distribution, the model as a symbolic function."""
    import openturns as ot

    ot.TBB.Disable()
    ot.RandomGenerator.SetSeed(1)
    inputs = ot.ComposedDistribution(
        [
            ot.Triangular(0.0411e-3, 0.0412e-3, 0.0413e-3),
            ot.Uniform(24.303e-3, 24.307e-3),
            ot.Uniform(-0.05e-6, 0.05e-6),
            ot.Uniform(-0.10e-6, 0.10e-6),
            ot.Uniform(2.25e-6, 2.45e-6),
            ot.Uniform(0, HIGHEST_RING),
            ot.Uniform(0.111, 0.113),
            ot.Uniform(9.80665 - 0.0264, 9.80665 + 0.0264),
            ot.Uniform(20.9, 21.9),
            ot.Uniform(-OF_VAPOUR, OF_VAPOUR),
            ot.Uniform(99520.0, 99720.0),
        ]
    )
    formula = """
var k := t + 273.15;
var theta := k - 0.23855557567849 / (k - 650.17534844798);
var a := (theta + 1167.0521452767) * theta - 724213.16703206;
var b := (-17.073846940092 * theta + 12020.824702470) * theta - 3232555.0322333;
var c := (14.915108613530 * theta - 4823.2657361591) * theta + 405113.40542057;
var s := 2 * c / (sqrt(b * b - 4 * a * c) - b);
var vapour := s * s * s * s * 1e6 + v;
var d := t - 3.983035;
var rho := 999.974950 * (1 - d * d * (t + 301.797) / (522528.9 * (t + 69.34881)));
var dry := p - rho * g * h - vapour;
var volume := 50e-6 - (9.15e-6 + s1 + s2) + e - 2 * ring;
y := 1e3 * volume / (m / w) * (dry / 1e5) * (273.15 / k);
"""
    model = ot.SymbolicFunction(["m", "w", "s1", "s2", "e", "ring", "h", "g", "t", "v", "p"], ["y"], formula)

    def once():
        values = model(inputs.getSample(TRIALS))
        return values.computeMean()[0], values.computeStandardDeviation()[0], intervals(np.asarray(values)[:, 0])

    return once


def uncertainties_way():
    """The value with its derivatives by every doubt; the doubts themselves are made once."""
    from uncertainties import ufloat, umath

    def rectangular(low, high):
        return ufloat((low + high) / 2, (high - low) / 12**0.5)

    inputs = (
        ufloat(0.0412e-3, 0.1e-6 / 6**0.5),
        rectangular(24.303e-3, 24.307e-3),
        9.15e-6 + rectangular(-0.05e-6, 0.05e-6) + rectangular(-0.10e-6, 0.10e-6),
        rectangular(2.25e-6, 2.45e-6),
        ufloat(0, HIGHEST_RING / 12**0.5),  # sensitivities are taken at the value, without the ring
        rectangular(0.111, 0.113),
        rectangular(9.80665 - 0.0264, 9.80665 + 0.0264),
        rectangular(20.9, 21.9),
        rectangular(-OF_VAPOUR, OF_VAPOUR),
        rectangular(99520.0, 99720.0),
    )

    def once():
        value = molar_volume(*inputs, sqrt=umath.sqrt)
        return len(value.derivatives), value.std_dev

    return once


def measure(name, work):
    start = time.perf_counter()
    result = work()
    spent = time.perf_counter() - start
    print(name, f"{1e3 * spent:.1f}", *(f"{end:.5f}" for end in result[2]), flush=True)


def main():
    rng = np.random.default_rng(1)
    ways = {"numpy_whole": lambda: numpy_whole(rng), "numpy_blocks": lambda: numpy_blocks(rng)}
    try:
        ways["openturns"] = openturns_way()
    except ImportError:
        print("openturns absent")
    sensitivities = uncertainties_way()
    for _ in range(ROUNDS):
        for name, work in ways.items():
            measure(name, work)
        start = time.perf_counter()
        for _ in range(100):
            _, u = sensitivities()
        print("uncertainties", f"{1e4 * (time.perf_counter() - start):.1f}", f"{u:.5f}", flush=True)


main()
