"""The ways that count as right (method.md, section 7), at random, and the band that they reach."""

import math

import numpy as np
import scipy.constants

from independent.bench import R, density, saturation
from independent.run_facts import ATM, KPA, UNITS, Route
from independent.wrong_ways import SOUGHT, steps

MOLAR_MASSES = {"magnesium": (24, 24.3, 24.31, 24.305), "aluminium": (27, 27.0, 26.98, 26.982),
                "zinc": (65, 65.4, 65.38, 65.38), "oxygen": (32, 32.0, 32.00, 31.998), "nitrogen": (28, 28.0, 28.01, 28.014),
                "carbon_dioxide": (44, 44.0, 44.01, 44.009), "methane": (16, 16.0, 16.04, 16.043)}
GAS_CONSTANTS = (8.31, 8.314, 0.0821 * ATM / 1e3, 0.08206 * ATM / 1e3)
TORR = scipy.constants.torr
ROUNDED = ("absolute_temperature", "water_vapour_pressure", "column_pressure", "dry_gas_pressure", "gas_volume",
           "amount_of_metal", "amount_of_gas", "volume_at_standard", "amount_by_volume", "mass")
LINES = ("gas_volume", "water_vapour_pressure", "column_pressure", "dry_gas_pressure", "amount_of_metal",
         "amount_of_gas", "molar_volume_bench", "volume_at_standard", "molar_volume_standard", "gas_constant",
         "accepted_value", "percent_error", "amount_by_volume", "molar_mass_found", "equivalent_mass", "purity_found",
         "alloy_share", "gas_molar_mass")


def table_row(celsius):
    return round(saturation(celsius) / TORR, 1)


def vapours(celsius):
    """Formula, table interpolated and written to its last digit, nearest row."""
    below = math.floor(celsius)
    low, high = table_row(below), table_row(below + 1)
    between = round(low + (high - low) * (celsius - below), 1)
    return saturation(celsius), between * TORR, table_row(math.floor(celsius + 0.5)) * TORR


def routes(run, draws, unit, result_rounded):
    """`draws(choices)` picks one of a list for each trial: a number or an array. `result_rounded`: the comparison goes
    on with a molar volume as it was written down."""
    route = Route(zero=draws([273.15, 273.0]), vapour=draws(vapours(run.celsius)), pressure_unit=unit)
    if run.stands != "level":
        route.density = draws([None, 1000.0, 13595.1 / 13.6], run)
    route.molar_mass = draws([m * 1e-3 for m in MOLAR_MASSES[run.gas if run.target == "gas_molar_mass" else run.metal]])
    if run.second:
        route.second = draws([m * 1e-3 for m in MOLAR_MASSES[run.second]])
    if run.standard_pressure == ATM:
        route.standard_pressure = draws([ATM, 101300.0])
    route.gas_constant = draws([R, R, R, R, *GAS_CONSTANTS])
    route.accepted_figures = draws([99, 3, 4, 5])
    results = ("molar_volume_standard", "molar_volume_bench") if run.target == "molar_volume" else (SOUGHT[run.target],)
    names = ROUNDED + (results if result_rounded else ())
    route.figures = {name: draws([99, 99, 3, 4]) for name in names}
    return route


def one_route(rng, run, unit, result_rounded):
    def draws(choices, which=None):
        chosen = rng.choice(list(choices))
        return density(which.celsius) if chosen is None else chosen

    route = routes(run, draws, unit, result_rounded)
    if route.gas_constant != R:
        route.accepted_figures = 99
    return route


def bands(run, seed, trials=3000):
    """Lowest and highest value of each line over many routes, the pressures in the barometer's unit or in kPa."""
    generator = np.random.default_rng(seed)
    low, high = {}, {}
    for unit in {UNITS[run.barometer_unit], KPA}:
        for result_rounded in (False, True):
            def draws(choices, which=None):
                values = [density(which.celsius) if c is None else c for c in choices]
                return np.asarray(values)[generator.integers(0, len(values), trials)]

            found = steps(run, (), routes(run, draws, unit, result_rounded))
            for name in LINES:
                if name not in found:
                    continue
                if result_rounded and name != "percent_error":
                    continue
                value = np.asarray(found[name])
                low[name] = min(low.get(name, math.inf), float(np.min(value)))
                high[name] = max(high.get(name, -math.inf), float(np.max(value)))
    return {name: (low[name], high[name]) for name in LINES if name in low}
