"""The experiment in Python, written from the method and not from the program: doubts of the readings as `ufloat`s of
python3-uncertainties, and the way from them to every output. SI units; temperatures in degrees Celsius."""

import math
import statistics

import scipy.constants
import uncertainties
from iapws.iapws97 import _PSat_T
from uncertainties import ufloat, umath

R = scipy.constants.k * scipy.constants.N_A
G = scipy.constants.g
INCH_HG = 25.4 * 13595.1 * G * 1e-3
UNITS = {
    "g": 1e-3, "mL": 1e-6, "mm": 1e-3, "cm": 1e-2, "m": 1.0, "kPa": 1e3, "hPa": 1e2, "inHg": INCH_HG,
    "mmHg": 13595.1 * G * 1e-3, "g/m": 1e-3, "mol/L": 1e3, "L/mol": 1e-3, "%": 1e-2, "°C": 1.0, "°F": 5 / 9,
}
# The method's section 3, per mole of metal: gas, acid. Standard atomic weights 2021, abridged, g/mol, with their spread.
METALS = {
    "magnesium": (24.305, 0.002, {"hydrochloric": (1, 2)}),
    "aluminium": (26.982, 0.001, {"hydrochloric": (1.5, 3)}),
    "zinc": (65.38, 0.02, {"hydrochloric": (1, 2)}),
}
# Half-widths where no instrument was chosen (method, sections 2 and 6), or by the chosen one: reading, class limit.
ASSUMED = {
    "end_space": 0.10e-6, "level_difference": 1e-3, "start_level_difference": 1e-3, "temperature": 0.5,
    "barometer": 100.0, "height_above_sea_level": 20.0, "ribbon_length": 0.5e-3, "mass_per_metre": 0.01e-3,
    "starting_bubble": 0.1e-6, "acid_volume": 0.2e-6,
}
CHOSEN = {
    "weighed_water": 0.02e-6, "tape_by_hand": 3e-3, "thermometer_01": 0.2, "mercury_barometer": 50.0, "survey": 5.0,
    "balance_1mg": 1e-6,
}
TUBES = {"burette_50_a": (0.05e-6, 0.05e-6), "cylinder_100_b": (0.5e-6, 1.0e-6),
         50: (0.05e-6, 0.10e-6), 100: (0.1e-6, 0.20e-6)}
DIVISORS = {"rectangular": math.sqrt(3), "triangular": math.sqrt(6), "normal": 1.959963984540054}
MASSES = ("mass_of_metal", "mass_before", "mass_after")
RINGS = [(9.5, 0.076), (11, 0.107), (13, 0.155), (15, 0.209), (18, 0.30), (25, 0.51)]  # bore in mm, ring in mL


def slope_by_differences(function, x, step):
    """First derivative, differences of the sixth order."""
    return sum(weight * (function(x + i * step) - function(x - i * step))
               for i, weight in ((1, 45), (2, -9), (3, 1))) / (60 * step)


def saturation(celsius):
    return _PSat_T(celsius + 273.15) * 1e6


vapour_pressure = uncertainties.wrap(saturation, [lambda t: slope_by_differences(saturation, t, 0.02)])


def density(t):
    """kg/m3; CIPM 2001: Tanaka et al., Metrologia 38 (2001) 301."""
    return 999.974950 * (1 - (t - 3.983035) ** 2 * (t + 301.797) / (522528.9 * (t + 69.34881)))


def compression(kelvin, pascal):
    """Hydrogen; second virial coefficient, fit to Leachman et al. 2009."""
    x = 298.15 / kelvin - 1
    return 1 + (14.541 - 5.918 * x - 2.390 * x ** 2) * 1e-6 * pascal / (R * kelvin)


def quantity(text, unit=None):
    """A typed text: value and one unit of its last digit, in SI, and the unit."""
    digits, _, written = text.partition(" ")
    unit = written or unit
    place = 10.0 ** -len(digits.partition(".")[2])
    value = float(digits)
    return (value - 32) * UNITS[unit] if unit == "°F" else value * UNITS[unit], place * UNITS[unit], unit


class Bench:
    """One run: `values` holds each input of the model as a number with its doubts; `doubts` each of these by input and kind,
    with its degrees of freedom; `middle` the middle of the one-sided ones."""

    def __init__(self, entries, by):
        self.entries = entries
        self.by = {name: float(value) for name, value in by.items()}
        self.doubts = {}
        self.degrees = {}
        self.middle = {}
        self.values = {}
        self.read()

    def text(self, field):
        return self.entries.get(field, {}).get("text", "")

    def doubt(self, name, kind, half_width, shape="rectangular"):
        self.put(name, kind, half_width / DIVISORS[shape])

    def one_sided(self, name, kind, width):
        self.put(name, kind, width / math.sqrt(12))
        self.middle[name, kind] = width / 2

    def put(self, name, kind, u, degrees=math.inf):
        if u == 0:
            return
        variable = ufloat(0, u)
        self.doubts[name, kind] = variable
        self.degrees[name, kind] = degrees
        self.values[name] = self.values.get(name, 0) + variable

    def reading(self, name):
        """A typed reading with its half-width: typed, or of the instrument but never below one unit of the last digit."""
        entry = self.entries.get(name)
        if not entry:
            return
        value, digit, unit = quantity(entry["text"])
        repeats = [text for text in entry["repeats"].split("|") if text]
        series = [value] + [quantity(text, unit)[0] for text in repeats]
        self.values[name] = value = statistics.fmean(series)
        shape = "triangular" if name in MASSES else "rectangular"
        if name == "purity" and value == 1 and not entry["plus_minus"]:
            return  # taken as pure
        if entry["plus_minus"].endswith("%") and unit != "%":
            half_width = abs(value) * float(entry["plus_minus"].rstrip(" %")) / 100
        elif entry["plus_minus"]:
            number, _, written = entry["plus_minus"].partition(" ")
            half_width = float(number) * UNITS[written or unit]
        elif name == "scale_reading" or name == "start_reading":
            half_width = max(self.tube(name)[0], digit)
        else:
            assumed = CHOSEN[entry["instrument"]] if entry["instrument"] else ASSUMED.get(name, 0)
            if name == "acid_concentration":
                assumed = 0.05 * value
            half_width = max(assumed, digit)
        self.doubt(name, "reading", half_width, entry["shape"] or shape)
        if repeats:
            self.put(name, "scatter", statistics.stdev(series) / math.sqrt(len(series)), len(series) - 1)

    def tube(self, name="scale_reading"):
        instrument = self.entries[name]["instrument"]
        return TUBES[instrument or round(quantity(self.text("tube_capacity"))[0] * 1e6)]

    def read(self):
        for name in (*MASSES, "ribbon_length", "mass_per_metre", "purity", "scale_reading", "start_reading",
                     "starting_bubble", "temperature", "barometer", "acid_volume", "acid_concentration",
                     "accepted_value", "height_above_sea_level", "start_level_difference", "outdoor_temperature"):
            self.reading(name)
        values = self.values
        self.doubt("scale_reading", "class_limit", self.tube()[1])
        weight, spread, self.ratios = METALS[self.text("metal")]
        values["molar_mass"] = weight * 1e-3
        self.doubt("molar_mass", "atomic_weight", spread * 1e-3)
        self.upside_down = self.text("number_at_closed_end") == "largest"
        self.capacity = quantity(self.text("tube_capacity"))[0]
        if self.upside_down:
            if self.text("end_space"):
                self.reading("end_space")
            else:
                values["end_space"] = 0
                self.one_sided("end_space", "not_measured", 4e-6)
        self.read_ring()
        self.read_level()
        self.read_air()

    def read_ring(self):
        if self.text("start_reading"):
            return
        bore = self.text("tube_bore")
        if bore:
            millimetres = quantity(bore)[0] * 1e3
            (b0, r0), (b1, r1) = next((low, high) for low, high in zip(RINGS, RINGS[1:]) if low[0] <= millimetres <= high[0])
            ring = (r0 + (r1 - r0) * (millimetres - b0) / (b1 - b0)) * 1e-6
            self.values["meniscus_ring"] = ring
            self.doubt("meniscus_ring", "meniscus", 0.2 * ring)
        else:
            self.values["meniscus_ring"] = 0
            # The allowance is for twice the ring.
            self.one_sided("meniscus_ring", "meniscus", (0.45e-6 if self.capacity > 75e-6 else 0.25e-6) / 2)

    def read_level(self):
        self.values["gravity"] = G
        if self.text("liquid_stands") == "level":
            self.values["level_difference"] = 0
            self.doubt("level_difference", "reading", 2e-3)
            return
        self.reading("level_difference")
        self.read_start_level()
        # Between the equator and a pole, about the standard value.
        self.doubt("gravity", "gravity", 9.80665 - 9.78025)

    def read_start_level(self):
        """Not typed: between that of the end and higher by what the gas pushed down since, in a usual tube."""
        start = self.values.get("start_reading")
        if start is None or self.text("start_level_difference") or self.text("liquid_stands") != "higher_inside":
            return
        pushed = abs(uncertainties.nominal_value(start - self.values["scale_reading"]))
        self.values["start_level_difference"] = uncertainties.nominal_value(self.values["level_difference"])
        self.one_sided("start_level_difference", "not_measured", pushed * (6e3 if self.capacity > 75e-6 else 11e3))

    def read_air(self):
        values = self.values
        height = values.get("height_above_sea_level")
        if height is not None and not self.text("outdoor_temperature"):
            values["outdoor_temperature"] = 15 - 0.0065 * uncertainties.nominal_value(height)
            if self.text("pressure_kind") == "reduced_to_sea_level":
                self.doubt("outdoor_temperature", "not_measured", 15)
        celsius = uncertainties.nominal_value(values["temperature"])
        which = int(self.by["vapour"])
        torr = scipy.constants.torr
        if which == 0:
            values["vapour_value"] = saturation(celsius)
            self.doubt("vapour_value", "formula", 0.00025 * saturation(celsius))
        elif which == 1:
            whole = math.floor(celsius)
            low, high = (round(saturation(whole + i) / torr, 1) for i in (0, 1))
            values["vapour_value"] = round(low + (high - low) * (celsius - whole), 1) * torr
            self.doubt("vapour_value", "rounding", 0.05 * torr)
        elif which == 3:
            value, digit, _ = quantity(self.text("own_vapour_pressure"))
            values["vapour_value"] = value
            self.doubt("vapour_value", "reading", digit)

    def outputs(self):
        """Every output of the run."""
        x = self.values
        out = {"absolute_temperature": x["temperature"] + 273.15, "water_density": density(x["temperature"])}
        kelvin = out["absolute_temperature"]
        celsius = uncertainties.nominal_value(x["temperature"])
        # Looked up at the temperature read; a doubt of that temperature moves it along the formula.
        looked_up = x.get("vapour_value", saturation(celsius))
        out["water_vapour_pressure"] = looked_up + vapour_pressure(x["temperature"]) - saturation(celsius)
        vapour = out["water_vapour_pressure"] if self.by["vapour"] != 4 else 0
        out["pressure_at_bench"] = pressure = self.pressure_at_bench()
        sign = 1 if self.text("liquid_stands") == "higher_outside" else -1
        out["column_pressure"] = out["water_density"] * x["gravity"] * x["level_difference"]
        out["dry_gas_pressure"] = dry = pressure + sign * out["column_pressure"] - vapour
        out["gas_at_end"] = volume = self.room(x["scale_reading"]) - 2 * x.get("meniscus_ring", 0)
        if "start_reading" in x or "starting_bubble" in x:
            start = x["starting_bubble"] if "starting_bubble" in x else self.room(x["start_reading"])
            out["gas_at_start"] = start
            if "start_level_difference" in x:
                column = out["water_density"] * x["gravity"] * x["start_level_difference"]
                out["start_dry_pressure"] = pressure + sign * column - vapour
                start = start * out["start_dry_pressure"] / dry
            volume = volume - start
        out["gas_volume"] = volume
        self.amounts(out)
        gas = out["amount_of_gas"]
        out["molar_volume_bench"] = volume / gas
        out["dry_gas_at_barometer"] = volume / gas * dry / pressure
        out["gas_constant"] = dry * volume / gas / kelvin
        standard = self.by["pascal"]
        out["compression_factor"] = compression(kelvin, dry)
        out["standard_compression_factor"] = compression(273.15, standard)
        found = volume / gas * (dry / standard) * (273.15 / kelvin)
        accepted = R * 273.15 / standard
        if self.by["real"]:
            found = found * out["standard_compression_factor"] / out["compression_factor"]
            accepted *= out["standard_compression_factor"]
        out["molar_volume_standard"] = found
        if not self.by["converted"]:
            found = out["molar_volume_bench"]
        out["accepted_value"] = accepted = x.get("accepted_value", accepted)
        out["percent_error"] = found / accepted - 1
        # The molar volume taken as known: amount of gas, molar mass and purity of the metal.
        converted = (dry / standard) * (273.15 / kelvin)
        if self.by["real"]:
            converted = converted * out["standard_compression_factor"] / out["compression_factor"]
        out["volume_at_standard"] = volume * converted
        out["amount_by_volume"] = by_volume = volume * converted / accepted
        gas_per_metal = self.ratios[self.text("acid")][0]
        out["molar_mass_found"] = gas_per_metal * self.mass * x.get("purity", 1) / by_volume
        # What sets half a mole of hydrogen free.
        out["equivalent_mass"] = self.mass * x.get("purity", 1) / (2 * by_volume)
        out["purity_found"] = by_volume * x["molar_mass"] / gas_per_metal / self.mass
        return out

    def room(self, mark):
        return self.capacity - mark + self.values["end_space"] if self.upside_down else mark

    def pressure_at_bench(self):
        x = self.values
        kind = self.text("pressure_kind")
        if kind == "altimeter_setting":  # ICAO Doc 7488: 15 °C, 6.5 K/km, 287.05287 J/(kg K)
            exponent = G / (287.05287 * 0.0065)
            base = (x["barometer"] / 101325) ** (1 / exponent) - 0.0065 * x["height_above_sea_level"] / 288.15
            return 101325 * base ** exponent
        if kind == "reduced_to_sea_level":
            mean = x["outdoor_temperature"] + 273.15 + 0.0065 * x["height_above_sea_level"] / 2
            return x["barometer"] * umath.exp(-G * x["height_above_sea_level"] / (287.05287 * mean))
        return x["barometer"]

    def amounts(self, out):
        x = self.values
        how = self.text("mass_from")
        mass = x.get("mass_of_metal")
        if how == "by_difference":
            out["mass"] = mass = x["mass_before"] - x["mass_after"]
        elif how == "ribbon":
            out["mass"] = mass = x["ribbon_length"] * x["mass_per_metre"]
        self.mass = mass
        out["amount_of_metal"] = metal = mass * x.get("purity", 1) / x["molar_mass"]
        gas_ratio, acid_ratio = self.ratios[self.text("acid")]
        out["amount_of_acid"] = acid = x["acid_volume"] * x["acid_concentration"]
        out["acid_needed"] = needed = acid_ratio * metal
        out["acid_volume_needed"] = needed / x["acid_concentration"]
        out["acid_excess"] = acid / needed
        out["amount_of_gas"] = gas_ratio * (acid / acid_ratio if acid < needed else metal)
