"""A tube in its room, from the evening before: how much gas fills how much of the scale. Written from the method and not from
the program. SI units; temperatures in degrees Celsius."""

from scipy.optimize import brentq

from independent.bench import G, R, RINGS, compression, density, saturation

# Mole of gas and of acid for a mole of metal (method.md, section 3); standard atomic weights 2021, abridged, with their spread.
METALS = {
    "magnesium": (24.305, 0.002, 1, 2), "zinc": (65.38, 0.02, 1, 2), "aluminium": (26.982, 0.001, 1.5, 3),
    "iron": (55.845, 0.002, 1, 2), "calcium": (40.078, 0.004, 1, 2), "lithium": (6.94, 0.06, 0.5, 1),
}


class Room:
    """The tube in its room. `off` moves single numbers from what is planned."""

    def __init__(self, plan):
        text = {field: entry[0] for field, entry in plan["typed"].items() if entry[0]}
        self.text = text
        self.asked = plan["asked"]
        self.real = plan["real"]
        self.number = lambda field, usual=0.0: float(text.get(field, usual))
        self.capacity = self.number("tube_capacity") * 1e-6
        self.upside_down = text["number_at_closed_end"] == "largest"
        self.end = self.number("end_space") * 1e-6 if self.upside_down else 0.0
        self.celsius = self.number("temperature")
        self.pressure = self.air()
        self.stands = text["liquid_stands"]
        self.hangs = self.stands == "higher_inside" and "level_difference" not in text
        length = self.number("length_of_scale") * 1e-3 or (6e3 if self.capacity > 75e-6 else 11e3) * self.capacity
        # Scales of 2 to 40 mm a mL are possible.
        slope = length / self.capacity / 1e3
        self.per_volume = slope * 1e3 if 2 <= slope <= 40 else 11e3
        self.ring = self.ring_of_bore()
        self.weight, self.spread, self.ratio, self.acid_ratio = METALS[text["metal"]]
        if text["acid"] == "sulfuric":
            self.acid_ratio /= 2
        self.purity = self.number("purity", 100) / 100

    def air(self, off_pressure=0.0, off_height=0.0):
        height = self.number("height_above_sea_level") + off_height
        if "pressure_kind" not in self.text:
            if "barometer" in self.text:
                return float(self.text["barometer"]) * 1e3 + off_pressure
            return self.standard(101325.0, height) + off_pressure
        return self.standard(self.number("barometer") * 100 + off_pressure, height)

    @staticmethod
    def standard(setting, height):
        """Pressure under an altimeter setting; under 1 atm it is that of the standard atmosphere."""
        exponent = G / (287.05287 * 0.0065)
        return 101325.0 * ((setting / 101325.0) ** (1 / exponent) - 0.0065 * height / 288.15) ** exponent

    def ring_of_bore(self):
        """None where the bore is not known, or outside the table."""
        if not self.upside_down or "tube_bore" not in self.text:
            return None
        bore = float(self.text["tube_bore"])
        for (b0, r0), (b1, r1) in zip(RINGS, RINGS[1:]):
            if b0 <= bore <= b1:
                return (r0 + (r1 - r0) * (bore - b0) / (b1 - b0)) * 1e-6
        return None

    def level(self, fill):
        if self.stands == "level":
            return 0.0
        return max(0.0, (self.capacity - fill) * self.per_volume) if self.hangs else self.number("level_difference") * 1e-3

    def gas(self, fill, off=()):
        """Volume, dry pressure and amount of the gas that fills so much of the scale."""
        off = dict(off)
        celsius = self.celsius + off.get("celsius", 0)
        volume = fill + self.end + off.get("end", 0) - 2 * ((self.ring or 0) + off.get("ring", 0))
        level = self.level(fill) + off.get("level", 0)
        column = density(celsius) * (G + off.get("gravity", 0)) * level
        vapour = saturation(celsius) + off.get("vapour", 0)
        air = self.air(off.get("pressure", 0), off.get("height", 0))
        dry = air + (column if self.stands == "higher_outside" else -column) - vapour
        kelvin = celsius + 273.15
        return volume, dry, dry * volume / (R * kelvin) / (compression(kelvin, dry) if self.real else 1)

    def mass(self, amount):
        return amount / self.ratio * self.weight * 1e-3 / self.purity

    def amount(self, mass, weight_off=0.0):
        return mass * self.purity / ((self.weight + weight_off) * 1e-3) * self.ratio

    def fill(self, amount, off=()):
        return brentq(lambda fill: self.gas(fill, off)[2] - amount, -self.end - 2e-6, 40 * self.capacity, xtol=1e-22,
                      rtol=1e-15, maxiter=500)

    def reading(self, fill):
        return self.capacity - fill if self.upside_down else fill

    def share(self, name, usual):
        return float(self.asked.get(name, usual)) / 100
