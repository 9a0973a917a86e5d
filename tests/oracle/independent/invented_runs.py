"""Invented, ordinary runs: what a class might read, as typed texts."""

from independent.bench import G, R, density, saturation
from independent.run_facts import UNITS, Run, record_json, run_of
from independent.wrong_ways import GASES, METALS, bench_barometer, steps

BAROMETERS = {"kPa": 2, "hPa": 1, "mmHg": 1, "inHg": 2}  # decimals read


def invent(rng):
    """Entries and conventions of one run. The gas is off by some per cent, as it is in a class."""
    entries = {}

    def put(field, value, decimals, unit):
        entries[field] = (f"{value / UNITS[unit]:.{decimals}f}", unit)
        return float(entries[field][0]) * UNITS[unit]

    metal = rng.choice(["magnesium"] * 6 + ["aluminium", "zinc"])
    entries["metal"] = (metal, "")
    entries["acid"] = ("hydrochloric", "")
    capacity = rng.choice([50, 50, 50, 100])
    zero_closed = rng.random() < 0.3
    entries["number_at_closed_end"] = ("zero" if zero_closed else "largest", "")
    entries["tube_capacity"] = (str(capacity), "mL")
    celsius = put("temperature", rng.uniform(16, 27), 1, "degC")
    pressure = air(rng, put, entries)
    stands = rng.choice(["higher_inside"] * 6 + ["level"] * 2 + ["higher_outside"] * 2)
    entries["liquid_stands"] = (stands, "")
    column = 0.0
    if stands != "level":
        unit, decimals = rng.choice([("mm", 0), ("cm", 1)])
        column = put("level_difference", rng.uniform(0.03, 0.2), decimals, unit) * density(celsius) * G
    dry = pressure - saturation(celsius) + (column if stands == "higher_outside" else -column)
    volume = capacity * 1e-6 * rng.uniform(0.55, 0.85)
    weigh(rng, put, entries, metal, volume * dry / (R * (celsius + 273.15)))
    volume *= 1 + rng.choice([-1, 1]) * (rng.uniform(0.01, 0.06) if rng.random() < 0.85 else rng.uniform(0.08, 0.15))
    scale(rng, put, entries, volume, capacity * 1e-6, zero_closed)
    return entries, choose(rng, put)


def air(rng, put, entries):
    """The barometer, or the weather report with a height; gives the pressure at the bench."""
    unit = rng.choice(list(BAROMETERS))
    if rng.random() < 0.75:
        entries["pressure_kind"] = ("at_the_bench", "")
        return put("barometer", rng.uniform(96.5e3, 103e3), BAROMETERS[unit], unit)
    kind = rng.choice(["altimeter_setting", "reduced_to_sea_level"])
    entries["pressure_kind"] = (kind, "")
    reported = put("barometer", rng.uniform(99.5e3, 103e3), BAROMETERS[unit], unit)
    height = put("height_above_sea_level", rng.uniform(150, 1200), 0, "m")
    return bench_barometer(Run(barometer=reported, pressure_kind=kind, height=height), ())


def weigh(rng, put, entries, metal, gas):
    _, molar_mass, _, ratio = METALS[metal]
    mass = gas / ratio * molar_mass
    how = rng.choice(["weighed", "weighed", "by_difference", "ribbon"]) if metal == "magnesium" else "weighed"
    entries["mass_from"] = (how, "")
    if how == "weighed":
        put("mass_of_metal", mass, 4, "g")
    elif how == "by_difference":
        before = put("mass_before", rng.uniform(12e-3, 30e-3), 4, "g")
        put("mass_after", before - mass, 4, "g")
    else:
        line = put("mass_per_metre", rng.uniform(0.82e-3, 1.5e-3), 3, "g/m")
        put("ribbon_length", mass / line, *rng.choice([(1, "mm"), (2, "cm")]))


def scale(rng, put, entries, volume, capacity, zero_closed):
    decimals = 2 if capacity < 75e-6 and rng.random() < 0.6 else 1
    if zero_closed:
        start = put("start_reading", rng.uniform(0.2e-6, 1.5e-6), decimals, "mL") if rng.random() < 0.2 else 0.0
        put("scale_reading", volume + start, decimals, "mL")
        return
    end = put("end_space", rng.uniform(0.8e-6, 3.5e-6), 2, "mL") if rng.random() < 0.8 else 0.0
    if rng.random() < 0.25:
        start = put("start_reading", capacity - rng.uniform(0.3e-6, 2e-6), decimals, "mL")
        put("scale_reading", start - volume, decimals, "mL")
        return
    bubble = put("starting_bubble", rng.uniform(0.4e-6, 1.2e-6), 1, "mL") if rng.random() < 0.15 else 0.0
    put("scale_reading", capacity + end - volume - bubble, decimals, "mL")


def choose(rng, put):
    if rng.random() < 0.1:
        put("accepted_value", rng.choice([24.0e-3, 24.5e-3]), 1, "L/mol")
        return {"conversion": "none", "accepted": "typed"}
    return {"standard": rng.choice(["0C_100kPa"] * 4 + ["0C_1atm"] * 4 + ["25C_100kPa"] * 2), "accepted": "ideal"}


def invent_for(rng, target):
    """A run for another last line: what is weighed fits the gas of it."""
    while True:
        entries, conventions = invent(rng)
        if "conversion" not in conventions:
            break
    gas = steps(run_of(entries, conventions))["amount_by_volume"]
    entries["target"] = (target, "")
    if target in ("molar_mass", "equivalent_mass", "gas_constant"):
        return entries, conventions
    for field in ("mass_of_metal", "mass_before", "mass_after", "ribbon_length", "mass_per_metre"):
        entries.pop(field, None)

    def put(field, grams):
        entries[field] = (f"{grams:.4f}", "g")

    if target == "gas_molar_mass":
        for field in ("metal", "acid"):
            entries.pop(field)
        entries["gas"] = (rng.choice([gas for gas in GASES if gas != "hydrogen"]), "")
        entries["mass_from"] = ("by_difference", "")
        before = round(rng.uniform(60, 90), 4)
        put("mass_before", before)
        put("mass_after", before - 1e3 * gas * GASES[entries["gas"][0]] * rng.uniform(0.94, 1.06))
        return entries, conventions
    entries["mass_from"] = ("weighed", "")
    share = rng.uniform(0.3, 0.9)
    if target == "alloy":
        first, second = rng.choice([("magnesium", "zinc"), ("aluminium", "zinc"), ("aluminium", "magnesium"), ("zinc", "magnesium")])
        entries.update(metal=(first, ""), second_metal=(second, ""))
        moles = share * METALS[first][3] / METALS[first][1] + (1 - share) * METALS[second][3] / METALS[second][1]
    else:
        moles = share * METALS[entries["metal"][0]][3] / METALS[entries["metal"][0]][1]
    put("mass_of_metal", 1e3 * gas / moles)
    return entries, conventions


class Invented:
    """A record with its run and the right steps."""

    def __init__(self, rng, target=None):
        self.entries, self.conventions = invent_for(rng, target) if target else invent(rng)
        self.run = run_of(self.entries, self.conventions)
        self.record = record_json(self.entries, self.conventions)
        self.pressure_unit = self.run.barometer_unit
