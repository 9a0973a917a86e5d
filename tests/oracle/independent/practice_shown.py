"""What the instruments of a practice run show, for compare_practice.py: physics in decimal arithmetic of 40 digits."""

from decimal import ROUND_FLOOR, Decimal as D, getcontext

from independent.practice_draws import Bench, decode

getcontext().prec = 40

R = D("8.31446261815324")
G = D("9.80665")
ZERO = D("273.15")
MMHG = D("13595.1") * G / 1000
INHG = D("13595.1") * G * D("0.0254")
MOLAR = {"magnesium": D("24.305"), "zinc": D("65.38"), "aluminium": D("26.982")}
RATIO = {"magnesium": D(1), "zinc": D(1), "aluminium": D("1.5")}


def vapour(celsius):
    """IAPWS-IF97 region 4, basic equation as published, Pa."""
    n = [D(x) for x in ("0.11670521452767E4", "-0.72421316703206E6", "-0.17073846940092E2", "0.12020824702470E5",
                        "-0.32325550322333E7", "0.14915108613530E2", "-0.48232657361591E4", "0.40511340542057E6",
                        "-0.23855557567849", "0.65017534844798E3")]
    t = celsius + ZERO
    theta = t + n[8] / (t - n[9])
    a = theta**2 + n[0] * theta + n[1]
    b = n[2] * theta**2 + n[3] * theta + n[4]
    c = n[5] * theta**2 + n[6] * theta + n[7]
    return (2 * c / (-b + (b * b - 4 * a * c).sqrt()))**4 * 1000000


def density(t):
    """CIPM 2001, kg/m3."""
    return D("999.974950") * (1 - (t + D("-3.983035"))**2 * (t + D("301.797")) /
                              (D("522528.9") * (t + D("69.34881"))))


def ring(bore):
    """mL; bore in mm."""
    rows = (("9.5", "0.076"), ("11", "0.107"), ("13", "0.155"), ("15", "0.209"), ("18", "0.30"))
    rows = [(D(a), D(b)) for a, b in rows]
    for (x0, y0), (x1, y1) in zip(rows, rows[1:]):
        if x0 <= bore <= x1:
            return y0 + (y1 - y0) * (bore - x0) / (x1 - x0)
    raise AssertionError


EXPONENT = G / (D("287.05287") * D("0.0065"))


def altimeter(reported, height):
    p0 = D(101325)
    return p0 * ((reported / p0)**(1 / EXPONENT) - D("0.0065") * height / D("288.15"))**EXPONENT


def reduced(reported, height, outside):
    mean = outside + ZERO + D("0.0065") * height / 2
    return reported * (-(G * height) / (D("287.05287") * mean)).exp()


def nearest(x):
    return int((D(x) + D("0.5")).to_integral_value(rounding=ROUND_FLOOR))


class Shown:
    """What the instruments show; every number a string, as a perfect reader types it."""

    def __init__(self, b):
        self.b = b
        self.pressure()
        tenths = b.temperature + b.temperature_error + (b.size if b.cause == "hot_liquid" else 0)
        if b.fahrenheit:
            self.temperature = f"{nearest(D(tenths) * 9 / 10 + 160) * D('0.2'):.1f}"
        else:
            self.temperature = f"{D(tenths) / 10:.1f}"
        given = b.end_space + b.end_space_error
        self.size = b.size if b.cause else None
        if b.cause == "end_space_off":
            if b.sign < 0:
                self.size = min(b.size, b.end_space - 20)
            given += b.sign * self.size
        self.end_space = f"{D(nearest(D(given) / 5) * 5) / 100:.2f}"
        self.beyond = D(b.end_space) / 100 - 2 * ring(D(b.bore) / 10) if b.inverted else D(0)
        self.mishap_size = None
        self.runs = [self.one(i, run) for i, run in enumerate(b.runs)]

    def pressure(self):
        b = self.b
        step, places, unit, book = {"hPa": ("0.1", 1, D(100), "1013"), "kPa": ("0.01", 2, D(1000), "101.3"),
                                    "mmHg": ("0.1", 1, MMHG, "760"), "inHg": ("0.005", 3, INHG, "29.92"),
                                    "report hPa": ("0.1", 1, D(100), "1013"),
                                    "report inHg": ("0.01", 2, INHG, "29.92")}[b.air]
        told = D(b.pressure + (b.pressure_error if b.kind == "at_the_bench" else 0))
        read = nearest(told / unit / D(step)) * D(step)
        if read == D(book):
            read += D(step)
        self.barometer = f"{read:.{places}f}"
        self.air = D(b.pressure)
        if b.kind == "altimeter_setting":
            self.air = altimeter(read * unit, b.height) + b.pressure_error
        elif b.kind == "reduced_to_sea_level":
            self.air = reduced(read * unit, b.height, b.outdoor) + b.pressure_error
        elif b.cause == "sea_level_pressure":
            self.air = altimeter(D(b.pressure), b.size)

    def dry(self, celsius, level):
        b = self.b
        column = density(D(b.temperature) / 10) * G * level / 10000
        return self.air + (column if b.stands == "higher_outside" else -column) - vapour(celsius)

    def one(self, index, run):
        b, out = self.b, {}
        cause = b.cause if b.cause and b.run in (-1, index) else None
        size = D(self.size) if cause else D(0)
        t = D(b.temperature) / 10
        start_gas = D(0)
        if b.start:
            start_gas = self.dry(t, run["start_level"]) * (D(run["start_gas"] * b.step) / 100 + self.beyond)
        room = D(b.capacity * run["share"]) / 1000 + self.beyond
        gas = (self.dry(t, run["level"]) * room - start_gas) / (R * (t + ZERO)) / 1000
        a_milligram = RATIO[b.metal] / MOLAR[b.metal]
        wanted = gas / a_milligram / (D(b.purity) / 1000)
        off = None
        if b.mass_from == "ribbon":
            per_mm = D(b.mass_per_metre) / 100
            length = nearest(wanted / per_mm * 10)
            out["ribbon_length"] = f"{D(length) / 100:.2f}"
            metal = D(length + run["length_error"]) / 10 * per_mm * (1 + D(b.ribbon_error) / 10000)
        else:
            digit = 10 if b.coarse and wanted >= 80 else 1
            mass = nearest(wanted * 10 / digit) * digit
            metal = (mass + D(run["weighing_error"] * digit) / 100) / 10
            if cause in ("wet_metal", "balance_off"):
                off = nearest(mass * size / 1000 / digit) * digit
                mass += off if cause == "wet_metal" else -b.sign * off
            places = 4 if digit == 1 else 3
            dish = run["dish"] // digit * digit
            if b.mass_from == "weighed":
                out["mass_of_metal"] = f"{D(mass) / 10000:.{places}f}"
            else:
                out["mass_before"] = f"{D(dish + mass) / 10000:.{places}f}"
                out["mass_after"] = f"{D(dish) / 10000:.{places}f}"
            out["places"] = places
        pure = metal * b.purity / 1000
        if cause in ("metal_left", "oxide_coat"):
            pure *= 1 - size / 1000
        made = pure * a_milligram * (1 - D(run["dissolved"]) / 10000)
        warm = t + (size / 10 if cause == "gas_warm" else 0)
        level = run["level"] + (int(size) if cause == "levels_not_equal" else 0)
        volume = (made * R * (warm + ZERO) * 1000 + start_gas) / self.dry(warm, level)
        if cause == "air_bubble":
            volume += size / 100
        if cause == "gas_lost":
            volume -= size * b.step / 100
        mark = b.capacity - (volume - self.beyond) if b.inverted else volume
        grid = D(b.step) / 100
        out["scale_reading"] = f"{nearest((mark + run['scale_error'] * grid) / grid) * grid:.2f}"
        out["start_reading"] = f"{b.capacity - run['start_gas'] * grid:.2f}"
        places = 2 if b.cm else 1
        for name in ("level", "start_level"):
            out[name + "_difference"] = f"{D(run[name] + run[name + '_error']) / (100 if b.cm else 10):.{places}f}"
        if cause:
            base = {"air_bubble": "1e-8", "gas_lost": "1e-8", "end_space_off": "1e-8", "metal_left": "1e-3",
                    "oxide_coat": "1e-3", "gas_warm": "0.1", "hot_liquid": "0.1", "levels_not_equal": "1e-4",
                    "sea_level_pressure": "1"}
            if off is not None:
                found = off * D("1e-7")
            else:
                found = size * D(base[cause]) * (b.step if cause == "gas_lost" else 1)
            if self.mishap_size is None:
                self.mishap_size = found
        return out


FIELDS = ["mass_of_metal", "mass_before", "mass_after", "ribbon_length", "mass_per_metre", "purity", "acid_volume",
          "acid_concentration", "tube_capacity", "end_space", "start_reading", "start_level_difference",
          "scale_reading", "level_difference", "tube_bore", "temperature", "barometer", "height_above_sea_level",
          "outdoor_temperature",
          "metal", "acid", "mass_from", "number_at_closed_end", "liquid_stands", "pressure_kind"]


def sheet(entries):
    return ",".join(f"{field} {entries[field]}" for field in FIELDS if field in entries)


def lines_of(code):
    """What a perfect reader puts down; the dials and the mishap."""
    b = Bench(decode(code))
    s = Shown(b)
    air = b.air.split()[-1]
    shared = {"metal": b.metal, "acid": b.acid, "acid_volume": ("15.0" if b.capacity == 100 else "10.0") + " mL",
              "acid_concentration": b.strength + " mol/L", "mass_from": b.mass_from, "pressure_kind": b.kind,
              "number_at_closed_end": "largest" if b.inverted else "zero", "tube_capacity": f"{b.capacity} mL",
              "temperature": s.temperature + (" degF" if b.fahrenheit else " degC"),
              "barometer": f"{s.barometer} {air}"}
    if b.purity_given:
        shared["purity"] = f"{D(b.purity) / 10:.1f} %"
    if b.mass_from == "ribbon":
        shared["mass_per_metre"] = f"{D(b.mass_per_metre) / 100:.2f} g/m"
    if b.inverted:
        shared["end_space"] = s.end_space + " mL"
    if b.bore_given:
        shared["tube_bore"] = f"{D(b.bore) / 10:.1f} mm"
    if b.kind != "at_the_bench":
        shared["height_above_sea_level"] = f"{b.height} m"
    if b.kind == "reduced_to_sea_level":
        shared["outdoor_temperature"] = f"{b.outdoor} degC"
    thermometer = "degF 0 1400 2000" if b.fahrenheit else "degC -100 600 1000"
    dials = [f"temperature -1 thermometer {thermometer}",
             "barometer -1 " + {"hPa": "barometer_dial hPa 9400 10600 1000", "kPa": "barometer_dial kPa 940 1060 100",
                                "mmHg": "mercury_column mmHg 7000 8000 1000", "inHg": "barometer_dial inHg 280 315 50",
                                "report hPa": "weather_report hPa", "report inHg": "weather_report inHg"}[b.air]]
    ruler, length = ("ruler cm 0 300 100", "cm") if b.cm else ("ruler mm 0 3000 1000", "mm")
    tube = f"tube_scale mL 0 {b.capacity * 10} {b.step * 100}"
    sheets = [sheet(shared)]
    for i, shown in enumerate(s.runs):
        run = {"scale_reading": shown["scale_reading"] + " mL", "liquid_stands": b.stands}
        for field in ("mass_of_metal", "mass_before", "mass_after"):
            if field in shown:
                run[field] = shown[field] + " g"
                dials.append(f"{field} {i} balance_display g")
        if b.mass_from == "ribbon":
            run["ribbon_length"] = shown["ribbon_length"] + " cm"
            dials.append(f"ribbon_length {i} ruler cm 0 150 100")
        if b.start:
            run["start_reading"] = shown["start_reading"] + " mL"
            run["start_level_difference"] = f"{shown['start_level_difference']} {length}"
            dials += [f"start_reading {i} {tube}", f"start_level_difference {i} {ruler}"]
        dials.append(f"scale_reading {i} {tube}")
        if b.stands != "level":
            run["level_difference"] = f"{shown['level_difference']} {length}"
            dials.append(f"level_difference {i} {ruler}")
        sheets.append(sheet(run))
    end = f"{b.cause} {b.run} {b.sign} {nearest(s.mishap_size * 10**9)}" if b.cause else ""
    return ";".join(sheets), ",".join(dials) + "," + end
