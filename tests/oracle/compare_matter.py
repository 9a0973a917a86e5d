#!/usr/bin/python3
"""Compares what the program print_matter prints with python3-iapws, python3-periodictable, scipy and Python's decimal.

usage: compare_matter.py PATH_OF_PRINT_MATTER
"""

import decimal
import subprocess
import sys

import periodictable
import scipy.constants
from iapws import IAPWS95
from iapws.iapws97 import _PSat_T

from check import Checks

checks = Checks()


def rows_by_kind(program):
    rows = {}
    for line in subprocess.run([program], check=True, capture_output=True, text=True).stdout.splitlines():
        kind, *rest = line.split(",")
        rows.setdefault(kind, []).append(rest)
    return rows


def check_vapour_pressure(rows):
    """IAPWS-IF97 region 4 as python3-iapws has it: the same equation, so only the last bits may differ."""
    checks.that(len(rows) == 1001, "vapour pressures from 0 to 100 degrees in tenths")
    for celsius, found in rows:
        expected = _PSat_T(float(celsius) + 273.15) * 1e6
        checks.close(float(found), expected, 1e-11 * expected, f"vapour pressure at {celsius} C")


def check_water_density(rows):
    """CIPM 2001 from its coefficients in 40-digit decimal arithmetic, and IAPWS-95, another equation, within 0.0012 kg/m3."""
    checks.that(len(rows) == 401, "densities of water from 0 to 40 degrees in tenths")
    decimal.getcontext().prec = 40
    a1, a2, a3, a4, a5 = map(decimal.Decimal, ("-3.983035", "301.797", "522528.9", "69.34881", "999.974950"))
    for celsius, found in rows:
        t = decimal.Decimal(float(celsius))
        expected = float(a5 * (1 - (t + a1) ** 2 * (t + a2) / (a3 * (t + a4))))
        checks.close(float(found), expected, 1e-12 * expected, f"density of water at {celsius} C")
        if float(celsius) % 1 == 0:
            other = IAPWS95(T=float(celsius) + 273.15, P=0.101325).rho
            checks.close(float(found), other, 0.0012, f"density of water at {celsius} C against IAPWS-95")


def check_mercury_density(rows):
    """Beattie's polynomial in decimal arithmetic."""
    c0, c1, c2, c3, c4 = map(decimal.Decimal, ("13595.0828", "1.815868E-4", "5.4583E-9", "3.4980E-11", "1.5558E-14"))
    for celsius, found in rows:
        t = decimal.Decimal(float(celsius))
        expected = float(c0 / (1 + c1 * t + c2 * t**2 + c3 * t**3 + c4 * t**4))
        checks.close(float(found), expected, 1e-12 * expected, f"density of mercury at {celsius} C")


def check_atomic_weights(rows):
    """periodictable 1.6 carries the table of 1999/2001: all but zinc lie within the bounds of 2021."""
    for symbol, value, plus_minus in rows:
        library = periodictable.elements.symbol(symbol).mass
        inside = abs(library - float(value)) <= float(plus_minus)
        if symbol == "Zn":
            checks.that(abs(library - 65.409) < 1e-9, "the library's zinc is still the old 65.409: if not, drop this exception")
        else:
            checks.that(inside, f"{symbol}: {value} +- {plus_minus}, library {library}")


def check_units_and_constants(units, constants):
    found = {key: float(value) for key, value in units}
    c = scipy.constants
    for key, expected in {
        "atm": c.atm, "bar": c.bar, "Torr": c.torr, "psi": c.psi, "in": c.inch, "ft": c.foot, "L": c.liter,
        "degF": c.convert_temperature(1, "F", "C"), "K": c.convert_temperature(1, "K", "C"), "kPa": c.kilo, "hPa": c.hecto,
        "mL": c.milli * c.liter, "uL": c.micro * c.liter, "mg": c.milli * c.gram, "g": c.gram, "cm": c.centi, "mm": c.milli,
        "%": c.centi, "mmol": c.milli,
    }.items():
        checks.close(found[key], expected, 1e-14 * abs(expected), f"unit {key}")
    found = {key: float(value) for key, value in constants}
    for key, expected in {
        "gas_constant": c.k * c.N_A,  # scipy's own R is cut off after ten digits
        "standard_gravity": c.g, "standard_atmosphere": c.atm, "standard_state_pressure": c.bar,
        "avogadro_constant": c.N_A, "boltzmann_constant": c.k,
    }.items():
        checks.close(found[key], expected, 2.3e-16 * expected, f"constant {key}")


def check_numbers(rows):
    """Python's float() reads decimals correctly rounded; its decimal module rounds the typed text exactly."""
    decimal.getcontext().prec = 400
    checks.that(len(rows) == 20000, "numbers read and rounded")
    for text, value, place, up, even in rows:
        checks.that(float(value) == float(text), f"{text} read as {value}")
        unit = decimal.Decimal((0, (1,), int(place)))
        for found, rule in ((up, decimal.ROUND_HALF_UP), (even, decimal.ROUND_HALF_EVEN)):
            expected = float(decimal.Decimal(text).quantize(unit, rounding=rule))
            checks.that(float(found) == expected, f"{text} to 10^{place}, {rule}: {found}, expected {expected!r}")


def main():
    if len(sys.argv) != 2:
        sys.exit(__doc__)
    rows = rows_by_kind(sys.argv[1])
    check_vapour_pressure(rows["vapour_pressure"])
    check_water_density(rows["water_density"])
    check_mercury_density(rows["mercury_density"])
    check_atomic_weights(rows["atomic_weight"])
    check_units_and_constants(rows["unit"], rows["constant"])
    check_numbers(rows["number"])
    checks.finish()


main()
