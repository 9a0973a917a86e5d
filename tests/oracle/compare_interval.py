#!/usr/bin/python3
"""Compares the Monte Carlo's 95 % intervals with OpenTURNS: the same typed readings, distributions read from them by the
independent model's rules (independent/bench.py), and the formulas written here once more as a symbolic function.

Both are 10^6 trials, so both have errors. Every tolerance is four standard errors of the difference, from the number of trials
and the density at the place, which is estimated from the sample of OpenTURNS; nothing is allowed beside that.

usage: compare_interval.py PATH_OF_PRINT_INTERVAL
"""

import collections
import math
import subprocess
import sys

import numpy as np
import openturns

from check import Checks
from independent.bench import DIVISORS, Bench

checks = Checks()
TRIALS = 1_000_000
COVERED = 950_000
SIGMAS = 4

# IAPWS R7-97, equation 30; Tanaka et al., Metrologia 38 (2001) 301; L/mol at 0 degrees Celsius and 100 kPa. `sign` is
# that of the column; the names are those of the inputs.
FORMULA = """
var k := temperature + 273.15;
var theta := k - 0.23855557567849 / (k - 650.17534844798);
var a := theta^2 + 1167.0521452767 * theta - 724213.16703206;
var b := -17.073846940092 * theta^2 + 12020.824702470 * theta - 3232555.0322333;
var c := 14.915108613530 * theta^2 - 4823.2657361591 * theta + 405113.40542057;
var vapour := 1e6 * (2 * c / (sqrt(b^2 - 4 * a * c) - b))^4 + (vapour_value - read_off);
var rho := 999.97495 * (1 - (temperature - 3.983035)^2 * (temperature + 301.797) / 522528.9 / (temperature + 69.34881));
var dry := barometer + sign * rho * gravity * level_difference - vapour;
var volume := 50e-6 - scale_reading + end_space - 2 * meniscus_ring;
y := 1e3 * volume * molar_mass / mass_of_metal * dry * 273.15 / (k * 1e5);
"""
INPUTS = ("mass_of_metal", "molar_mass", "scale_reading", "end_space", "meniscus_ring", "level_difference", "gravity",
          "temperature", "vapour_value", "barometer")


class Distributions(Bench):
    """The doubts as distributions of OpenTURNS beside the standard uncertainties; `nominal` the readings alone."""

    def __init__(self, entries):
        self.drawn = {}
        super().__init__(entries, {"vapour": 0, "real": 0, "converted": 1, "pascal": 1e5})
        self.nominal = {name: getattr(self.values[name], "nominal_value", self.values[name]) for name in INPUTS}

    def doubt(self, name, kind, half_width, shape="rectangular"):
        super().doubt(name, kind, half_width, shape)
        if half_width:
            self.drawn[name, kind] = {
                "rectangular": lambda: openturns.Uniform(-half_width, half_width),
                "triangular": lambda: openturns.Triangular(-half_width, 0, half_width),
                "normal": lambda: openturns.Normal(0, half_width / DIVISORS["normal"]),
            }[shape]()

    def one_sided(self, name, kind, width):
        super().one_sided(name, kind, width)
        self.drawn[name, kind] = openturns.Uniform(0, width)

    def put(self, name, kind, u, degrees=math.inf):
        super().put(name, kind, u, degrees)
        if u and not math.isinf(degrees):
            self.drawn[name, kind] = openturns.Student(degrees, 0, u)  # the scale is s/sqrt n: JCGM 101, 6.4.9

    def sample(self):
        doubts = [doubt for doubt in self.drawn if doubt[0] in INPUTS]  # acid in excess takes no part
        of_doubts = openturns.ComposedDistribution([self.drawn[doubt] for doubt in doubts])
        deviations = np.asarray(of_doubts.getSample(TRIALS))
        readings = np.tile([self.nominal[name] for name in INPUTS], (TRIALS, 1))
        for index, (name, _) in enumerate(doubts):
            readings[:, INPUTS.index(name)] += deviations[:, index]
        sign = 1 if self.text("liquid_stands") == "higher_outside" else -1
        formula = FORMULA.replace("sign", str(sign)).replace("read_off", repr(self.nominal["vapour_value"]))
        model = openturns.SymbolicFunction(INPUTS, ["y"], formula)
        return np.sort(np.asarray(model(openturns.Sample(readings)))[:, 0])


def read_lines(program):
    cases = collections.defaultdict(dict)
    intervals = {}
    for line in subprocess.run([program], capture_output=True, text=True, check=True).stdout.splitlines():
        kind, name, *fields = line.split("|")
        if kind == "interval":
            intervals[name] = [float(number) for number in fields]
        elif fields[1]:
            cases[name][fields[0]] = dict(zip(("text", "instrument", "plus_minus", "shape", "repeats"),
                                              (*fields[1:5], fields[5].replace(";", "|"))))
    return cases, intervals


class Sorted:
    """A sorted sample: quantiles, and how sure they are with two samples of this size."""

    def __init__(self, values, trials):
        self.values = values
        self.both = 1 / len(values) + 1 / trials

    def at(self, p):
        return self.values[min(max(math.ceil(p * len(self.values)), 1), len(self.values)) - 1]

    def slope(self, p):
        """1/density: the quantile's derivative, over a two-hundredth of the probability or what is there."""
        step = min(0.005, p / 2, (1 - p) / 2)
        return (self.at(p + step) - self.at(p - step)) / (2 * step)

    def error(self, p):
        return math.sqrt(p * (1 - p) * self.both) * self.slope(p)

    def length_error(self, p, q):
        """Of the distance of two quantiles, p < q; their covariance is p (1 - q)/(density density)/M."""
        a, b = self.slope(p), self.slope(q)
        return math.sqrt((p * (1 - p) * a * a + q * (1 - q) * b * b - 2 * p * (1 - q) * a * b) * self.both)


def shortest(values):
    lengths = values[COVERED:] - values[: TRIALS - COVERED]
    return lengths, int(np.argmin(lengths))


def compare(name, case, found, alone):
    trials, mean, u, median, low, high, shortest_low, shortest_high = found
    bench = Distributions(case)
    if alone:
        bench.drawn = {key: drawn for key, drawn in bench.drawn.items() if key[0] == "mass_of_metal"}
    values = bench.sample()
    known = Sorted(values, trials)
    checks.that(trials == TRIALS, f"{name}: number of trials")
    if min(bench.degrees.values()) > 4:  # else Student's t has no fourth moment, and with 2 degrees no variance
        spread = values.std(ddof=1)
        checks.close(mean, values.mean(), SIGMAS * spread * math.sqrt(known.both), f"{name}: mean")
        # The variance of a variance, from the sample's fourth moment.
        fourth = np.mean((values - values.mean()) ** 4) / spread**4
        checks.close(u, spread, SIGMAS * spread * math.sqrt((fourth - 1) / 4 * known.both), f"{name}: u")
    for what, value, p in (("median", median, 0.5), ("lower end", low, 0.025), ("upper end", high, 0.975)):
        checks.close(value, known.at(p), SIGMAS * known.error(p), f"{name}: {what}")

    # The shortest: its length, what it covers, and where it begins. As the minimum is flat, it may begin wherever a
    # length of OpenTURNS exceeds the shortest by no more than the error of a length.
    lengths, best = shortest(values)
    p = max(best, 1) / TRIALS
    error = SIGMAS * known.length_error(p, p + 0.95)
    checks.close(shortest_high - shortest_low, lengths[best], error, f"{name}: length of the shortest")
    inside = np.searchsorted(values, shortest_high) - np.searchsorted(values, shortest_low)
    checks.close(inside / TRIALS, 0.95, SIGMAS * math.sqrt(0.95 * 0.05 * known.both), f"{name}: what the shortest covers")
    near = np.flatnonzero(lengths <= lengths[best] + error)
    first, last = near[0] / TRIALS, near[-1] / TRIALS
    checks.that(values[near[0]] - SIGMAS * known.error(max(first, 1e-6)) <= shortest_low
                <= values[near[-1]] + SIGMAS * known.error(last), f"{name}: where the shortest begins: {shortest_low}")
    print(f"{name}: symmetric [{low:.4f}, {high:.4f}], OpenTURNS [{known.at(0.025):.4f}, {known.at(0.975):.4f}]; shortest "
          f"[{shortest_low:.4f}, {shortest_high:.4f}], OpenTURNS [{values[best]:.4f}, {values[best + COVERED]:.4f}]")
    return known


def main():
    if len(sys.argv) != 2:
        sys.exit(__doc__)
    openturns.Log.Show(openturns.Log.NONE)
    openturns.RandomGenerator.SetSeed(20)
    cases, intervals = read_lines(sys.argv[1])
    for name, found in intervals.items():
        known = compare(name, cases[name], found, name == "one figure alone")
        if name == "one figure alone":
            # The method's section 6, to its printed digits, for 22.7 L/mol.
            scale = 22.7 / known.at(0.5)
            for value, printed, p in ((found[4], 18.04, 0.025), (found[5], 30.63, 0.975)):
                checks.close(value * scale, printed, 0.005 + SIGMAS * known.error(p), f"the method's {printed}")
    checks.finish()


main()
