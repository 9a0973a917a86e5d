#!/usr/bin/python3
"""Compares the statistics of random classes with SciPy and NumPy.

usage: compare_pool.py PATH_OF_PRINT_POOL
"""

import subprocess
import sys

import numpy as np
import scipy.stats

from check import Checks

NAMES = ("mean median s half_width grubbs_index grubbs grubbs_critical dixon origin_slope origin_u origin_residual origin_r2 "
         "intercept slope intercept_u slope_u residual r2 band_at_0 mean_of_ratios mean_of_ratios_u ratio_of_totals "
         "ratio_of_totals_u").split()


def student(coverage, degrees):
    """Two-sided quantile by way of the beta distribution: SciPy's own inverse of Student's t is good to nine digits only."""
    rest = scipy.stats.beta.ppf(1 - coverage, degrees / 2, 0.5)
    return np.sqrt(degrees * (1 - rest) / rest)


def weighted(x, y, weights):
    """Slope of y = b x by weighted least squares, and its standard uncertainty from the scatter."""
    root = np.sqrt(weights)
    slope, left, _, _ = np.linalg.lstsq((root * x)[:, None], root * y, rcond=None)
    return slope[0], np.sqrt(left[0] / (len(x) - 1) / np.sum(weights * x * x))


def expected(x, y):
    n = len(x)
    mean, s = np.mean(y), np.std(y, ddof=1)
    half = student(0.95, n - 1) * s / np.sqrt(n)
    far = int(np.argmax(np.abs(y - mean)))
    t = student(1 - 0.05 / n, n - 2)
    ordered = np.sort(y)
    gap = max(ordered[1] - ordered[0], ordered[-1] - ordered[-2])
    slope, u = weighted(x, y, np.ones(n))
    left = np.sum((y - slope * x) ** 2)
    line = scipy.stats.linregress(x, y)
    rest = np.sqrt(np.sum((y - line.intercept - line.slope * x) ** 2) / (n - 2))
    ratio, ratio_u = weighted(x, y, 1 / x**2)
    total, total_u = weighted(x, y, 1 / x)
    return (mean, np.median(y), s, half, far, abs(y[far] - mean) / s, (n - 1) / np.sqrt(n) * np.sqrt(t * t / (n - 2 + t * t)),
            gap / (ordered[-1] - ordered[0]) if n <= 30 else 0, slope, u, np.sqrt(left / (n - 1)),
            1 - left / np.sum(y * y), line.intercept, line.slope, line.intercept_stderr, line.stderr, rest, line.rvalue**2,
            student(0.95, n - 2) * line.intercept_stderr, ratio, ratio_u, total, total_u)


def main():
    if len(sys.argv) != 2:
        sys.exit(__doc__)
    checks = Checks()
    rng = np.random.default_rng(20260131)
    classes = []
    for number in range(200):
        n = int(rng.integers(3, 40))
        x = rng.uniform(0.8, 2.1, n)
        y = 22.6 * x + rng.normal(0, 0.4, n) + rng.choice([0, -2, 1])
        if number % 5 == 0:
            y[rng.integers(n)] += 6
        classes.append((x, y))
    text = "\n".join(f"{len(x)} " + " ".join(f"{a:.17g} {b:.17g}" for a, b in zip(x, y)) for x, y in classes)
    lines = subprocess.run([sys.argv[1]], input=text, capture_output=True, text=True, check=True).stdout.splitlines()
    checks.that(len(lines) == len(classes), f"{len(lines)} lines for {len(classes)} classes")
    for (x, y), line in zip(classes, lines):
        for name, found, wanted in zip(NAMES, map(float, line.split()), expected(x, y)):
            checks.close(found, wanted, 1e-9 * max(1, abs(wanted)), f"class of {len(x)}: {name}")
    checks.finish()


main()
