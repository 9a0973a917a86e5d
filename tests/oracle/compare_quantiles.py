#!/usr/bin/python3
"""Compares the quantiles of Student's t and of the standard normal with SciPy. Student's t by way of the beta distribution,
which SciPy has from Boost; its own inverse of Student's t is good to nine digits only.

usage: compare_quantiles.py PATH_OF_PRINT_QUANTILES
"""

import math
import subprocess
import sys

import scipy.special
import scipy.stats

from check import Checks

checks = Checks()


def student(coverage, degrees):
    """|T| is below this with probability `coverage`; T^2/(T^2 + degrees) is a beta variable."""
    if math.isinf(degrees) or degrees > 1e9:
        z = -scipy.special.ndtri((1 - coverage) / 2)
        return z if math.isinf(degrees) else z + (z**3 + z) / (4 * degrees)
    low = scipy.stats.beta.ppf(coverage, 0.5, degrees / 2)
    if low < 0.5:
        return math.sqrt(degrees * low / (1 - low))
    rest = scipy.stats.beta.ppf(1 - coverage, degrees / 2, 0.5)
    return math.sqrt(degrees * (1 - rest) / rest)


def main():
    if len(sys.argv) != 2:
        sys.exit(__doc__)
    lines = subprocess.run([sys.argv[1]], capture_output=True, text=True, check=True).stdout.splitlines()
    for line in lines:
        kind, *numbers = line.split(",")
        numbers = [float(number) for number in numbers]
        if kind == "student":
            coverage, degrees, found = numbers
            expected = student(coverage, degrees)
            what = f"t for {coverage} and {degrees} degrees of freedom"
        else:
            probability, found = numbers
            expected = scipy.special.ndtri(probability)
            what = f"normal quantile of {probability}"
        checks.close(found, expected, 1e-10 * max(abs(expected), 1e-3), what)
    checks.finish()


main()
