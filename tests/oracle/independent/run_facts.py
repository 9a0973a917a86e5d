"""One run as plain numbers, the accepted routes through it, and a record as the program's JSON, from typed texts."""

import dataclasses

from independent.bench import INCH_HG, R

MM_HG = INCH_HG / 25.4
ATM = 101325.0
KPA = 1e3
HPA = 1e2
UNITS = {
    "": 1.0, "g": 1e-3, "mL": 1e-6, "cm3": 1e-6, "L": 1e-3, "mm": 1e-3, "cm": 1e-2, "m": 1.0, "kPa": KPA, "hPa": HPA,
    "mmHg": MM_HG, "inHg": INCH_HG, "atm": ATM, "degC": 1.0, "g/m": 1e-3, "g/cm": 0.1, "L/mol": 1e-3, "dm3/mol": 1e-3,
    "mol": 1.0, "mmol": 1e-3, "%": 1e-2, "J/mol/K": 1.0, "g/mol": 1e-3,
}


@dataclasses.dataclass
class Run:
    """What one run's record says, read from its texts; None is not there."""
    metal: str = "magnesium"
    purity: float = 1.0
    mass: float = None
    ribbon: float = None        # m
    line_density: float = None  # kg/m
    derived: bool = False       # a mass that was worked out and written down
    zero_closed: bool = False
    capacity: float = 50e-6
    end_space: float = None
    reading: float = None
    start: float = None
    bubble: float = None
    stands: str = "level"
    level: float = 0.0
    celsius: float = 20.0
    barometer: float = None
    barometer_unit: str = "kPa"
    pressure_kind: str = "at_the_bench"
    height: float = None
    vapour: float = None        # typed, Pa; else by formula
    molar_mass: float = None    # by the record's convention; else the abridged one
    standard_celsius: float = 0.0
    standard_pressure: float = 1e5
    accepted: float = None      # typed; else the ideal gas's
    converted: bool = True
    target: str = "molar_volume"
    second: str = None          # the other metal of an alloy
    gas: str = "hydrogen"


@dataclasses.dataclass
class Route:
    """Accepted ways of doing a step; numbers or arrays of as many trials. `figures` rounds a step: 99 is not at all."""
    zero: object = 273.15
    vapour: object = None
    density: object = None
    molar_mass: object = None
    second: object = None      # molar mass of the other metal
    standard_pressure: object = None
    gas_constant: object = R
    accepted_figures: object = 99
    figures: dict = dataclasses.field(default_factory=dict)
    pressure_unit: float = KPA


STANDARDS = {"0C_100kPa": (0.0, 1e5), "0C_1atm": (0.0, ATM), "25C_100kPa": (25.0, 1e5), "25C_1atm": (25.0, ATM)}
MOLAR_MASSES = {"one_decimal": {"magnesium": 24.3e-3}, "whole": {"magnesium": 24e-3}}


def record_json(entries, conventions):
    """`entries`: field -> (text, unit); a choice has no unit."""
    shared = {field: {"text": text, "unit": unit} if unit else {"text": text}
              for field, (text, unit) in entries.items()}
    return {"overwater": "record", "version": 1, "conventions": conventions, "shared": shared,
            "runs": [{"name": "", "entries": {}}]}


def run_of(entries, conventions):
    """The numbers of these typed texts."""
    def number(field):
        if field not in entries:
            return None
        text, unit = entries[field]
        return float(text) * UNITS[unit]

    def choice(field, otherwise):
        return entries.get(field, (otherwise, ""))[0]

    metal = choice("metal", "magnesium")
    mass = number("mass_of_metal")
    if choice("mass_from", "weighed") == "by_difference":
        mass = number("mass_before") - number("mass_after")
    celsius, pressure = STANDARDS[conventions.get("standard", "0C_100kPa")]
    converted = conventions.get("conversion", "standard_conditions") != "none"
    typed = not converted or conventions.get("accepted") == "typed"
    return Run(
        metal=metal, derived=choice("mass_from", "weighed") != "weighed", purity=number("purity") or 1.0, mass=mass, ribbon=number("ribbon_length"),
        line_density=number("mass_per_metre"), zero_closed=choice("number_at_closed_end", "") == "zero",
        capacity=number("tube_capacity"), end_space=number("end_space"), reading=number("scale_reading"),
        start=number("start_reading"), bubble=number("starting_bubble"), stands=choice("liquid_stands", "level"),
        level=number("level_difference") or 0.0, celsius=number("temperature"), barometer=number("barometer"),
        barometer_unit=entries["barometer"][1] if "barometer" in entries else "",
        pressure_kind=choice("pressure_kind", "at_the_bench"), height=number("height_above_sea_level"),
        vapour=number("own_vapour_pressure") if conventions.get("vapour") == "own_value" else None,
        molar_mass=MOLAR_MASSES.get(conventions.get("molar_mass_digits"), {}).get(metal),
        standard_celsius=celsius, standard_pressure=pressure, accepted=number("accepted_value") if typed else None,
        converted=converted, target=choice("target", "molar_volume"), second=choice("second_metal", None),
        gas=choice("gas", "hydrogen"))
