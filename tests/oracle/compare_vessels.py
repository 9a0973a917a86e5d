#!/usr/bin/python3
"""Compares runs in other vessels, with other gases and other last lines with an independently written model: value, standard
uncertainty (python3-uncertainties) and offset of every output. Vapour by python3-iapws, density of water by CIPM 2001, second
virial coefficients by the fits of standards.md, section 5, gravity by the National Physical Laboratory's form.

usage: compare_vessels.py PATH_OF_PRINT_VESSELS
"""

import collections
import math
import subprocess
import sys

import uncertainties
from uncertainties import ufloat

from check import Checks
from independent.bench import G, R, UNITS, density, saturation, slope_by_differences

checks = Checks()
# A slope of the vapour pressure by differences is good to about ten digits.
RELATIVE = 1e-9
PASCAL = 100000.0
KELVIN = 273.15

# Standard atomic weights 2021, abridged, with their bounds: g/mol.
WEIGHTS = {"H": (1.0080, 0.0002), "C": (12.011, 0.002), "O": (15.999, 0.001), "Mg": (24.305, 0.002), "Al": (26.982, 0.001),
           "Cl": (35.45, 0.01), "K": (39.098, 0.001), "Ca": (40.078, 0.004), "Zn": (65.38, 0.02)}
# Atoms, gas, moles of gas, moles of hydrochloric and of sulfuric acid, each a mole.
SAMPLES = {
    "magnesium": ({"Mg": 1}, "hydrogen", 1, 2, 1),
    "zinc": ({"Zn": 1}, "hydrogen", 1, 2, 1),
    "aluminium": ({"Al": 1}, "hydrogen", 1.5, 3, 1.5),
    "calcium_carbonate": ({"Ca": 1, "C": 1, "O": 3}, "carbon_dioxide", 1, 2, 1),
    "potassium_chlorate": ({"K": 1, "Cl": 1, "O": 3}, "oxygen", 1.5, 0, 0),
}
GASES = {"carbon_dioxide": {"C": 1, "O": 2}}
VIRIAL = {"hydrogen": (14.541, -5.918, -2.390), "oxygen": (-15.857, -63.170, -11.714),
          "carbon_dioxide": (-123.008, -282.978, -165.414)}
WEIGHED = ("mass_of_metal", "mass_before", "mass_after", "displaced_mass")
# Half-widths where nothing was typed for them (method, section 6; small volumes by a 10 mL cylinder, class B).
HALF = {"temperature": 0.5, "barometer": 100.0, "pressure_after": 100.0, "level_difference": 1e-3, "end_space": 0.10e-6,
        "injected_volume": 0.2e-6, "flask_volume": 0.2e-6, "acid_volume": 0.2e-6}
# In these nothing but the last digit is doubtful.
BY_DIGITS = ("purity", "molar_mass", "water_activity", "tube_factor")


def quantity(text):
    """Value and one unit of the last digit, SI."""
    digits, _, unit = text.partition(" ")
    factor = {"": 1.0, "g/mol": 1e-3, **UNITS}[unit]
    return float(digits) * factor, 10.0 ** -len(digits.partition(".")[2]) * factor


def gravity(latitude, height):
    s, twice = (math.sin(math.radians(k * latitude)) for k in (1, 2))
    return 9.780327 * (1 + 0.0053024 * s * s - 0.0000058 * twice * twice) - 3.086e-6 * height


def compression(gas, kelvin, pascal):
    b0, b1, b2 = VIRIAL.get(gas, (0, 0, 0))
    x = 298.15 / kelvin - 1
    return 1 + (b0 + b1 * x + b2 * x ** 2) * 1e-6 * pascal / (R * kelvin)


vapour_pressure = uncertainties.wrap(saturation, [lambda t: slope_by_differences(saturation, t, 0.02)])


class Vessel:
    def __init__(self, texts, real):
        self.texts = texts
        self.real = real
        self.offsets = []  # (doubt, middle) of the one-sided ones
        self.vessel = texts["apparatus"]
        self.column = self.vessel in ("tube_over_water", "generator_flask")

    def get(self, field, half=None, shape=math.sqrt(3)):
        """A reading with its doubt."""
        value, digit = quantity(self.texts[field])
        if field in BY_DIGITS:
            return value + ufloat(0, digit / math.sqrt(3))
        if field in WEIGHED:
            return value + ufloat(0, digit / math.sqrt(6))
        if field == "acid_concentration":
            return value + ufloat(0, max(0.05 * value, digit) / math.sqrt(3))
        return value + ufloat(0, max(HALF[field] if half is None else half, digit) / shape)

    def plain(self, field, otherwise):
        return quantity(self.texts[field])[0] if field in self.texts else otherwise

    def outputs(self):
        t = self.texts
        out = {}
        celsius = self.get("temperature")
        out["absolute_temperature"] = kelvin = celsius + KELVIN
        out["water_density"] = density(celsius)
        out["water_vapour_pressure"] = vapour = self.vapour(celsius)
        self.acceleration(t)
        out["pressure_at_bench"] = bench = self.bench_pressure(celsius)
        if self.vessel == "pressure_sensor":
            dry = self.get("pressure_after") - bench
        else:
            dry = bench if t.get("gas_is") == "dry" else bench - vapour
        if self.column:
            out["column_pressure"] = column = self.column_pressure(out["water_density"])
            dry = dry + (column if t["liquid_stands"] == "higher_outside" else -column)
        out["dry_gas_pressure"] = dry
        out["gas_volume"] = volume = self.volume(out)
        self.amounts(out)
        standard = (dry / PASCAL) * (KELVIN / kelvin)
        accepted = R * KELVIN / PASCAL
        if self.real:
            out["compression_factor"] = compression(self.gas, kelvin, dry)
            out["standard_compression_factor"] = compression(self.gas, KELVIN, PASCAL)
            standard = standard * out["standard_compression_factor"] / out["compression_factor"]
            accepted = accepted * out["standard_compression_factor"]
        out["accepted_value"] = accepted
        out["volume_at_standard"] = volume * standard
        out["amount_by_volume"] = by_volume = volume * standard / accepted
        if t.get("target") == "gas_molar_mass":
            out["gas_molar_mass"] = self.mass / by_volume
            known = sum(WEIGHTS[symbol][0] * count * 1e-3 for symbol, count in GASES[self.gas].items())
            out["percent_error"] = out["gas_molar_mass"] / known - 1
            return out
        gas = out["amount_of_gas"]
        out["molar_volume_bench"] = volume / gas
        out["dry_gas_at_barometer"] = volume / gas * dry / bench
        out["gas_constant"] = dry * volume / gas / kelvin
        out["molar_volume_standard"] = volume / gas * standard
        if t.get("target") not in ("alloy", "equivalent_mass"):  # an alloy is not known beforehand
            out["percent_error"] = out["molar_volume_standard"] / accepted - 1
        if self.acid_left_out(out):
            return out
        out["molar_mass_found"] = self.ratio * self.pure / by_volume
        out["purity_found"] = by_volume * self.molar_mass / self.ratio / self.mass
        if self.gas == "hydrogen":
            out["equivalent_mass"] = self.pure / (2 * by_volume)
            if t.get("target") == "equivalent_mass":
                known = uncertainties.nominal_value(self.molar_mass) / (2 * self.ratio)
                out["percent_error"] = out["equivalent_mass"] / known - 1
        if t.get("target") == "alloy":
            atoms, _, ratio, *_ = SAMPLES[t["second_metal"]]
            second = ratio / sum(WEIGHTS[symbol][0] * count * 1e-3 for symbol, count in atoms.items())
            out["alloy_share"] = (by_volume / self.mass - second) / (self.ratio / self.molar_mass - second)
        return out

    def vapour(self, celsius):
        """The formula's own stated doubt is 0.025 %, rectangular."""
        nominal = saturation(uncertainties.nominal_value(celsius))
        moved = vapour_pressure(celsius) + ufloat(0, 0.00025 * nominal / math.sqrt(3))
        return self.get("water_activity") * moved if "water_activity" in self.texts else moved

    def acceleration(self, t):
        """Known with a latitude; else anything between the equator and a pole, about the standard value."""
        if "latitude" in t:
            self.g = gravity(float(t["latitude"]), self.plain("height_above_sea_level", 0.0))
        else:
            self.g = G + ufloat(0, (9.80665 - 9.78025) / math.sqrt(3))

    def bench_pressure(self, celsius):
        read = self.get("barometer")
        if self.texts.get("pressure_kind") != "mercury_column":
            return read
        t = self.plain("barometer_temperature", uncertainties.nominal_value(celsius))
        to_zero = 1 - (1.818e-4 - 1.84e-5) * t / (1 + 1.818e-4 * t)
        return read * to_zero * uncertainties.nominal_value(self.g) / G

    def column_pressure(self, water):
        if self.texts["liquid_stands"] == "level":
            # ±2 mm by eye; under which acceleration makes no difference to it.
            return water * uncertainties.nominal_value(self.g) * ufloat(0, 2e-3 / math.sqrt(3))
        return water * self.g * self.get("level_difference")

    def scale(self):
        """Half a division and the limit: of a burette, of 50 mL where nothing else is known; a syringe's division and
        limit are 1 mL (common practice, no source)."""
        if self.vessel == "gas_syringe":
            return 0.5e-6, 1.0e-6
        return (0.1e-6, 0.20e-6) if self.large() else (0.05e-6, 0.10e-6)

    def large(self):
        return self.plain("tube_capacity", 50e-6) > 75e-6

    def mark(self, field):
        """On a scale: half a division read, at least a unit of the last digit."""
        return self.get(field, self.scale()[0])

    def volume(self, out):
        t = self.texts
        if self.vessel == "displaced_water":
            return self.get("displaced_mass") / out["water_density"]
        if self.vessel == "pressure_sensor":
            self.acid = self.get("acid_volume")
            return self.get("flask_volume") - self.acid
        volume = self.mark("scale_reading") + ufloat(0, self.scale()[1] / math.sqrt(3))
        if t.get("number_at_closed_end") == "largest":
            volume = quantity(t["tube_capacity"])[0] - volume
        if "tube_factor" in t:
            volume = self.get("tube_factor") * volume
        if t.get("number_at_closed_end") == "largest":
            volume = volume + self.get("end_space")
        if "start_reading" in t:
            out["gas_at_end"] = volume
            out["gas_at_start"] = start = self.mark("start_reading")
            volume = volume - start
        elif self.column:
            # Twice a ring of liquid that nobody measured, 0.25 mL at the most, 0.45 mL for the larger tubes.
            width = (0.45e-6 if self.large() else 0.25e-6) / 2
            ring = ufloat(0, width / math.sqrt(12))
            self.offsets.append((ring, width / 2))
            volume = volume - 2 * ring
        if "injected_volume" in t:
            volume = volume - self.get("injected_volume")
        return volume

    def amounts(self, out):
        t = self.texts
        if t.get("mass_from") == "by_difference":
            out["mass"] = self.mass = self.get("mass_before") - self.get("mass_after")
        else:
            self.mass = self.get("mass_of_metal")
        if t.get("target") == "gas_molar_mass":
            self.gas = t["gas"]
            return
        if t["metal"] == "own":
            self.gas, self.ratio, acid = t["gas"], float(t["gas_per_mole"]), 0
            self.molar_mass = self.get("molar_mass")
        else:
            atoms, self.gas, self.ratio, *acids = SAMPLES[t["metal"]]
            acid = acids[t.get("acid") == "sulfuric"]
            bounds = sum(WEIGHTS[symbol][1] * count for symbol, count in atoms.items()) * 1e-3
            self.molar_mass = sum(WEIGHTS[symbol][0] * count for symbol, count in atoms.items()) * 1e-3 + ufloat(
                0, bounds / math.sqrt(3))
        self.pure = self.mass * self.get("purity") if "purity" in t else self.mass
        out["amount_of_metal"] = metal = self.pure / self.molar_mass
        if acid and "acid" in t:
            out["acid_needed"] = acid * metal
        if "acid_concentration" in t:
            concentration = self.get("acid_concentration")
            out["amount_of_acid"] = concentration * self.acid
            out["acid_volume_needed"] = out["acid_needed"] / concentration
            out["acid_excess"] = out["amount_of_acid"] / out["acid_needed"]
        out["amount_of_gas"] = self.ratio * (out["amount_of_acid"] / acid if self.acid_left_out(out) else metal)

    @staticmethod
    def acid_left_out(out):
        """Less acid than needed: metal is left over, and the gas says nothing of all of it."""
        return "acid_excess" in out and out["acid_excess"] < 1


def read_lines(program):
    cases = collections.defaultdict(lambda: {"entry": {}, "convention": {}, "value": {}, "result": {}})
    for line in subprocess.run([program], capture_output=True, text=True, check=True).stdout.splitlines():
        kind, rest = line.split(",", 1)
        name, key, *fields = rest.rsplit(",", {"entry": 2, "convention": 2, "value": 2, "result": 4}[kind])
        cases[name][kind][key] = fields[0] if kind == "entry" else [float(field) for field in fields]
    return cases


def compare(name, case):
    vessel = Vessel(case["entry"], case["convention"]["real"][0] == 1)
    expected = vessel.outputs()
    if vessel.texts.get("pressure_kind") != "mercury_column":
        del expected["pressure_at_bench"]
    # No vapour in what is counted: no such step.
    if vessel.vessel == "pressure_sensor" or vessel.texts.get("gas_is") == "dry":
        del expected["water_vapour_pressure"]
    # An alloy is no one substance of which a molar mass or a purity could be found.
    if vessel.texts.get("target") == "alloy":
        for output in ("molar_mass_found", "purity_found", "equivalent_mass"):
            del expected[output]
    checks.that(set(case["value"]) == set(expected), f"{name}: outputs {set(case['value']) ^ set(expected)}")
    for output, (value,) in case["value"].items():
        if output not in expected:
            continue
        nominal = uncertainties.nominal_value(expected[output])
        scale = 1.0 if output == "percent_error" else abs(nominal)
        # With the levels equal there is no column: exactly nothing.
        checks.close(value, nominal, 1e-10 * scale, f"{name}: {output}")
    for output, (value, u, offset) in case["result"].items():
        what = f"{name}: {output}"
        if output not in expected:
            continue
        found = expected[output]
        nominal, std_dev = uncertainties.nominal_value(found), uncertainties.std_dev(found)
        checks.close(value, nominal, 1e-10 * (1.0 if output == "percent_error" else abs(nominal)), f"{what}: with its doubt")
        checks.close(u, std_dev, RELATIVE * std_dev, f"{what}: standard uncertainty")
        slopes = found.derivatives if hasattr(found, "derivatives") else {}
        moved = sum(slopes.get(doubt, 0.0) * middle for doubt, middle in vessel.offsets)
        checks.close(offset, moved, RELATIVE * std_dev + 1e-300, f"{what}: offset by one-sided doubts")


def main():
    if len(sys.argv) != 2:
        sys.exit(__doc__)
    cases = read_lines(sys.argv[1])
    checks.that(len(cases) >= 14, "all cases are there")
    for name, case in cases.items():
        compare(name, case)
    checks.finish()


main()
