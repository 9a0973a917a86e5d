#!/usr/bin/python3
"""Record A of the method, computed without any code of the product.

Vapour pressure: IAPWS-IF97 by python3-iapws. Density: CIPM 2001 from its coefficients. Constants: scipy. Checked against the
digits the method prints, and, if asked, the program `evaluate` is checked against both.

usage: record_a.py [PATH_OF_EVALUATE RECORD_JSON]
"""

import json
import math
import subprocess
import sys

import scipy.constants
from iapws.iapws97 import _PSat_T

from check import Checks

checks = Checks()

GAS_CONSTANT = scipy.constants.k * scipy.constants.N_A  # scipy's own R is cut off after ten digits

# The readings of record A, in SI units and degrees Celsius.
MASS = 0.0412e-3
MOLAR_MASS = 24.305e-3
CAPACITY = 50e-6
READING = 9.15e-6
END_SPACE = 2.35e-6
COLUMN = 0.112
CELSIUS = 21.4
BAROMETER = 99.62e3

# The digits the method prints: name, unit in SI, printed text.
PRINTED = {
    "gas_volume": (1e-6, "43.20"),
    "water_vapour_pressure": (1.0, "2549.94"),
    "water_density": (1.0, "997.907"),
    "column_pressure": (1.0, "1096.05"),
    "dry_gas_pressure": (1.0, "95974.0"),
    "amount_of_metal": (1e-3, "1.69512"),
    "amount_of_gas": (1e-3, "1.69512"),
    "molar_volume_bench": (1e-3, "25.4849"),
    "dry_gas_at_barometer": (1e-3, "24.5521"),
    "ideal_at_barometer": (1e-3, "24.584"),
    "gas_constant": (1.0, "8.30380"),
    "molar_volume_standard": (1e-3, "22.6818"),
    "percent_error": (0.01, "-0.128"),
    "percent_error_real": (0.01, "-0.190"),
    "molar_volume_one_atmosphere": (1e-3, "22.3852"),
    "molar_volume_class_table": (1e-3, "22.6826"),
    "wrong_way": (1e-3, "6.038"),
}

# Record A by the ways of courses: molar mass g/mol, vapour, state °C and Pa (None: as collected, against 24.0 L/mol); printed
# with the digits of tests/core/course.cpp: molar volume and accepted value in L/mol, percent error.
COURSES = {
    "0C_1atm_mmHg": (24.305, "table", 0, 101325, "22.3860", "22.4140", "-0.1246"),
    "0C_1atm_torr": (24.305, "table", 0, 101325, "22.3860", "22.4140", "-0.1246"),
    "0C_1atm_kPa": (24.305, "formula", 0, 101325, "22.3852", "22.4140", "-0.1283"),
    "0C_100kPa_kPa": (24.305, "formula", 0, 100000, "22.6818", "22.7110", "-0.1283"),
    "0C_100kPa_kPa_cm3": (24.31, "formula", 0, 100000, "22.6865", "22.7110", "-0.1077"),
    "room_kPa_cm3_24": (24, "left in", None, None, "25.1650", "24.0000", "4.8544"),
    "room_kPa_cm3": (24.3, "left in", None, None, "25.4796", "24.0000", "6.1650"),
    "0C_1atm_Pa_cm3": (24, "formula", 0, 101325, "22.1043", "22.4140", "-1.3815"),
    "25C_1atm_kPa_wet": (24, "left in", 25, 101325, "24.7684", "24.4654", "1.2387"),
    "0C_1atm_hPa_wet": (24.3, "left in", 0, 101325, "22.9752", "22.4140", "2.5041"),
    "room_hPa": (24.3, "left in", None, None, "25.4796", "24.0000", "6.1650"),
    "20C_1atm_hPa_wet": (24.3, "left in", 20, 101325, "24.6575", "24.0551", "2.5041"),
    "25C_1atm_hPa_wet": (24.3, "left in", 25, 101325, "25.0781", "24.4654", "2.5041"),
    "0C_1atm_mmHg_comma": (24.3, "table", 0, 101325, "22.3814", "22.4140", "-0.1452"),
    "0C_1atm_hPa": (24.3, "formula", 0, 101325, "22.3806", "22.4140", "-0.1488"),
    "0C_1atm_atm": (24.31, "formula", 0, 101325, "22.3898", "22.4140", "-0.1077"),
}

# What `evaluate` gives for record A; the other rows belong to other conventions.
OUTPUTS = (
    "gas_volume", "water_vapour_pressure", "column_pressure", "dry_gas_pressure", "amount_of_metal", "amount_of_gas",
    "molar_volume_bench", "dry_gas_at_barometer", "molar_volume_standard", "gas_constant", "percent_error",
    "volume_at_standard", "amount_by_volume", "molar_mass_found", "purity_found",
)


def density_of_water(celsius):
    """kg/m3; CIPM 2001: Tanaka et al., Metrologia 38 (2001) 301."""
    return 999.974950 * (1 - (celsius - 3.983035) ** 2 * (celsius + 301.797) / (522528.9 * (celsius + 69.34881)))


def record_a():
    """Every row of the table, in SI units (percent errors as fractions)."""
    kelvin = CELSIUS + 273.15
    rows = {"gas_volume": CAPACITY - READING + END_SPACE}
    rows["water_vapour_pressure"] = _PSat_T(kelvin) * 1e6
    rows["water_density"] = density_of_water(CELSIUS)
    rows["column_pressure"] = rows["water_density"] * scipy.constants.g * COLUMN
    rows["dry_gas_pressure"] = dry = BAROMETER - rows["column_pressure"] - rows["water_vapour_pressure"]
    rows["amount_of_metal"] = rows["amount_of_gas"] = amount = MASS / MOLAR_MASS
    rows["molar_volume_bench"] = bench = rows["gas_volume"] / amount
    rows["dry_gas_at_barometer"] = bench * dry / BAROMETER
    rows["ideal_at_barometer"] = GAS_CONSTANT * kelvin / BAROMETER
    rows["gas_constant"] = dry * bench / kelvin

    def standard(volume, dry_pressure, pressure):
        return volume / amount * dry_pressure / pressure * 273.15 / kelvin

    rows["molar_volume_standard"] = found = standard(rows["gas_volume"], dry, 1e5)
    rows["molar_volume_one_atmosphere"] = standard(rows["gas_volume"], dry, 101325.0)
    rows["percent_error"] = found / (GAS_CONSTANT * 273.15 / 1e5) - 1
    rows["percent_error_real"] = found / 22.7249e-3 - 1
    # Other last lines: an ideal gas's molar volume taken as known, so that the balance is not needed for the gas.
    rows["volume_at_standard"] = reduced = rows["gas_volume"] * dry / 1e5 * 273.15 / kelvin
    rows["amount_by_volume"] = by_volume = reduced * 1e5 / (GAS_CONSTANT * 273.15)
    rows["molar_mass_found"] = MASS / by_volume
    rows["purity_found"] = by_volume * MOLAR_MASS / MASS
    torr = scipy.constants.torr
    low, high = (round(_PSat_T(whole + 273.15) * 1e6 / torr, 1) for whole in (21, 22))
    interpolated = round(low + (high - low) * 0.4, 1) * torr
    checks.close(interpolated / torr, 19.1, 1e-9, "class table interpolated to a tenth")
    rows["molar_volume_class_table"] = standard(
        rows["gas_volume"], BAROMETER - rows["column_pressure"] - interpolated, 1e5)
    rows["wrong_way"] = standard(READING + END_SPACE, dry, 1e5)
    return rows


def check_courses(rows):
    """Each course's way from the readings again: V = n(metal) and gas law alone, no step of the product."""
    torr = scipy.constants.torr
    for name, (molar_mass, vapour, celsius, pascal, found, accepted, error) in COURSES.items():
        wet = BAROMETER - rows["column_pressure"]
        # To a tenth of a torr: 18.7 at 21 °C, 19.8 at 22 °C, and between them 19.1.
        dry = wet - {"table": 19.1 * torr, "formula": rows["water_vapour_pressure"], "left in": 0.0}[vapour]
        volume = rows["gas_volume"] / (MASS / (molar_mass * 1e-3))
        compared = 24.0e-3
        if celsius is not None:
            volume *= dry / pascal * (celsius + 273.15) / (CELSIUS + 273.15)
            compared = GAS_CONSTANT * (celsius + 273.15) / pascal
        for what, value, text in (("molar volume", volume * 1e3, found), ("accepted value", compared * 1e3, accepted),
                                  ("percent error", 100 * (volume / compared - 1), error)):
            half_a_place = 0.5 * 10.0 ** -len(text.partition(".")[2])
            checks.close(value, float(text), half_a_place * (1 + 1e-9), f"{name}: {what}")


def check_printed(rows):
    checks.close(rows["water_vapour_pressure"] / scipy.constants.torr, 19.126, 0.0005, "vapour pressure in torr")
    for name, (unit, text) in PRINTED.items():
        half_a_place = 0.5 * 10.0 ** -len(text.partition(".")[2])
        checks.close(rows[name] / unit, float(text), half_a_place * (1 + 1e-9), f"{name} as printed")


def check_evaluate(rows, program, record):
    run = subprocess.run([program, record], capture_output=True, text=True)
    checks.that(run.returncode == 0, f"evaluate ended with {run.returncode}: {run.stderr.strip()}")
    if run.returncode != 0:
        return
    result = json.loads(run.stdout)["runs"][0]
    outputs = result["outputs"]
    for name in OUTPUTS:
        output = outputs.get(name, {})
        checks.that(output.get("state") == "value", f"evaluate gives a value for {name}: {output}")
        # 1e-12 for rounding; a percent error is a small difference of large numbers.
        tolerance = 1e-12 * (1.0 if name == "percent_error" else abs(rows[name]))
        checks.close(output.get("si", math.nan), rows[name], tolerance, f"evaluate: {name}")
    other = result.get("other_ways", {}).get("wrong_way", {}).get("molar_volume_standard", math.nan)
    other = other.get("si", math.nan) if isinstance(other, dict) else other
    checks.close(other, rows["wrong_way"], 1e-12 * rows["wrong_way"], "evaluate: read the wrong way")


def main():
    if len(sys.argv) not in (1, 3):
        sys.exit(__doc__)
    rows = record_a()
    check_printed(rows)
    check_courses(rows)
    if len(sys.argv) == 3:
        check_evaluate(rows, sys.argv[1], sys.argv[2])
    checks.finish()


main()
