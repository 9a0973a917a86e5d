#!/usr/bin/python3
"""Compares uncertainty budgets with python3-uncertainties: the same typed readings go through an independently written model
(independent/bench.py). Value, standard uncertainty, each sensitivity and contribution, and the effective degrees of freedom.

usage: compare_budget.py PATH_OF_PRINT_BUDGET
"""

import collections
import math
import subprocess
import sys

import uncertainties

from independent.bench import Bench
from check import Checks

checks = Checks()

# Each is a number of its own in the model; the order of the C++ list.
INPUTS = (
    "mass_of_metal", "mass_before", "mass_after", "ribbon_length", "mass_per_metre", "purity", "acid_volume",
    "acid_concentration", "tube_capacity", "end_space", "start_reading", "starting_bubble", "start_level_difference",
    "scale_reading", "level_difference", "temperature", "barometer", "height_above_sea_level", "outdoor_temperature",
    "vapour_value", "accepted_value", "molar_mass", "gravity", "meniscus_ring", "tube_factor", "injected_volume",
    "flask_volume", "displaced_mass", "pressure_after", "water_activity",
)
# A slope of the vapour pressure by differences is good to about ten digits, the vapour pressure by the formula to twelve.
RELATIVE = 1e-9


def read_lines(program):
    """Entries, conventions, rows and results of each case."""
    cases = collections.defaultdict(lambda: {"entries": {}, "by": {}, "rows": collections.defaultdict(dict), "results": {}})
    for line in subprocess.run([program], capture_output=True, text=True, check=True).stdout.splitlines():
        kind, rest = line.split(",", 1)
        # A name of a case may hold commas; what follows it does not.
        count = {"entry": 6, "convention": 2, "row": 9, "result": 5}[kind]
        name, *fields = rest.rsplit(",", count)
        case = cases[name]
        if kind == "entry":
            case["entries"][fields[0]] = dict(zip(("text", "instrument", "plus_minus", "shape", "repeats"), fields[1:]))
        elif kind == "convention":
            case["by"][fields[0]] = fields[1]
        elif kind == "row":
            output, index, what, *numbers = fields
            case["rows"][output][INPUTS[int(index)], what] = [float(number) for number in numbers]
        else:
            case["results"][fields[0]] = [float(number) for number in fields[1:]]
    return cases


def effective(parts):
    """Welch-Satterthwaite over (contribution, degrees of freedom)."""
    doubt = sum(part ** 4 / degrees for part, degrees in parts)
    return sum(part ** 2 for part, _ in parts) ** 2 / doubt if doubt else math.inf


def compare_rows(bench, slopes, rows, u, what):
    parts = []
    for key, variable in bench.doubts.items():
        slope = slopes.get(variable, 0.0)
        if abs(slope) * variable.std_dev == 0:
            continue
        parts.append((abs(slope) * variable.std_dev, bench.degrees[key]))
        row = rows.get(key)
        checks.that(row is not None, f"{what}: no row for {key}, contribution {parts[-1][0]:g}")
        if row is None:
            continue
        low, high, degrees, of_row, sensitivity, contribution = row
        checks.close(sensitivity, slope, RELATIVE * abs(slope), f"{what}: sensitivity by {key}")
        checks.close(of_row, variable.std_dev, RELATIVE * variable.std_dev, f"{what}: standard uncertainty of {key}")
        checks.close(contribution, parts[-1][0], RELATIVE * u, f"{what}: contribution of {key}")
        checks.that(degrees == bench.degrees[key], f"{what}: degrees of freedom of {key}: {degrees}")
        checks.close((low + high) / 2, bench.middle.get(key, 0.0), RELATIVE * (high - low), f"{what}: middle of {key}")
    for key, row in rows.items():
        known = key in bench.doubts and slopes.get(bench.doubts[key], 0.0) != 0
        checks.that(known, f"{what}: a row more for {key}, contribution {row[-1]:g}")
    return parts


def compare(name, case):
    bench = Bench(case["entries"], case["by"])
    expected = bench.outputs()
    checks.that("percent_error" in case["results"], f"{name}: has a result")
    for output, (value, u, degrees, offset) in case["results"].items():
        what = f"{name}: {output}"
        checks.that(output in expected, f"{what}: is in the independent model")
        if output not in expected:
            continue
        found = expected[output]
        nominal, std_dev = uncertainties.nominal_value(found), uncertainties.std_dev(found)
        # A percent error is a small difference of large numbers.
        checks.close(value, nominal, 1e-10 * max(abs(nominal), 1.0 if output == "percent_error" else 0.0), what)
        checks.close(u, std_dev, RELATIVE * std_dev, f"{what}: standard uncertainty")
        slopes = found.derivatives if hasattr(found, "derivatives") else {}
        parts = compare_rows(bench, slopes, case["rows"][output], std_dev, what)
        expected_degrees = effective(parts)
        checks.that(degrees == expected_degrees or abs(degrees / expected_degrees - 1) < 1e-7,
                    f"{what}: {degrees} effective degrees of freedom, expected {expected_degrees}")
        moved = sum(slopes.get(bench.doubts[key], 0.0) * middle for key, middle in bench.middle.items())
        checks.close(offset, moved, RELATIVE * std_dev + 1e-300, f"{what}: offset by one-sided doubts")


def check_record_a(rows):
    """The shares of the variance that the method prints, in percent, without the row of the meniscus; U about 0.12 L/mol."""
    squares = {key: row[-1] ** 2 for key, row in rows.items() if key[1] != "meniscus"}
    whole = sum(squares.values())
    printed = {("temperature", "reading"): 28, ("end_space", "reading"): 24, ("scale_reading", "class_limit"): 24,
               ("mass_of_metal", "reading"): 13}
    for key, percent in printed.items():
        checks.that(round(100 * squares.get(key, 0) / whole) == percent, f"record A: share of {key}")
    checks.close(1.96e3 * math.sqrt(whole), 0.12, 0.005, "record A: U in L/mol")


def main():
    if len(sys.argv) != 2:
        sys.exit(__doc__)
    cases = read_lines(sys.argv[1])
    for name, case in cases.items():
        compare(name, case)
    check_record_a(cases["record A"]["rows"]["molar_volume_standard"])
    checks.finish()


main()
