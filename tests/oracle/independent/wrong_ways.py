"""One run worked out step by step as a person does, each step rightly or in one of the ways in which people go wrong.
From the meaning of each slip (a collection of mistakes in published reports) and the method, with formulas of its own;
IF97 and the density from bench.py. SI units, temperatures in degrees Celsius. Nothing is rounded unless the slip or the
route is about rounding."""

import math

import numpy as np

from independent.bench import G, INCH_HG, R, density, saturation
from independent.run_facts import ATM, HPA, KPA, MM_HG, Route
# Atomic number, molar mass, molar mass of the chloride (35.45 g/mol for Cl; CIAAW 2021, abridged), gas per metal.
METALS = {
    "magnesium": (12, 24.305e-3, (24.305 + 2 * 35.45) * 1e-3, 1.0),
    "aluminium": (13, 26.982e-3, (26.982 + 3 * 35.45) * 1e-3, 1.5),
    "zinc": (30, 65.38e-3, (65.38 + 2 * 35.45) * 1e-3, 1.0),
}
HYDROGEN = 2.016e-3
GASES = {"hydrogen": HYDROGEN, "oxygen": 31.998e-3, "nitrogen": 28.014e-3, "carbon_dioxide": 44.009e-3, "methane": 16.043e-3}
SOUGHT = {"molar_mass": "molar_mass_found", "equivalent_mass": "equivalent_mass", "purity": "purity_found",
          "alloy": "alloy_share", "gas_molar_mass": "gas_molar_mass", "gas_constant": "gas_constant"}
MANGANESE = 54.938e-3
NUMBER_AS = {  # the number of the first unit taken for the second
    "kilopascal_as_millimetre": MM_HG / KPA, "millimetre_as_kilopascal": KPA / MM_HG,
    "hectopascal_as_millimetre": MM_HG / HPA, "millimetre_as_hectopascal": HPA / MM_HG,
    "inch_as_millimetre": MM_HG / INCH_HG, "inch_as_kilopascal": KPA / INCH_HG,
}
POWERS = {
    "mass_thousandfold": 1e3, "mass_thousandth": 1e-3, "mass_hundredfold": 1e2, "mass_hundredth": 1e-2,
    "mass_tenfold": 10.0, "mass_tenth": 0.1, "amount_millimole_as_mole": 1e3, "amount_tenfold": 10.0,
    "amount_tenth": 0.1, "column_tenth": 0.1, "column_tenfold": 10.0, "column_hundredth": 0.01,
    "millilitre_as_litre": 1e3, "litre_as_millilitre": 1e-3,
}
NEIGHBOURS = {"vapour_row_above": 1.0, "vapour_row_below": -1.0, "vapour_five_degrees_above": 5.0,
              "vapour_five_degrees_below": -5.0}


def to_figures(x, figures):
    """Half up, as on paper."""
    if isinstance(figures, int) and figures > 15:
        return x
    size = np.where(np.asarray(x) == 0, 1.0, np.abs(x))
    scale = 10.0 ** (np.minimum(figures, 15) - 1 - np.floor(np.log10(size) + 1e-12))
    return np.where(np.asarray(figures) > 15, x, np.sign(x) * np.floor(size * scale * (1 + 1e-12) + 0.5) / scale)


def cut(x, figures):
    scale = 10.0 ** (figures - 1 - math.floor(math.log10(x) + 1e-12))
    return math.floor(x * scale * (1 + 1e-12)) / scale


def other_standard_pressure(pressure):
    return 1e5 if pressure == ATM else ATM


def mirrored(reading, beyond):
    """Between two whole mL the tenths are counted from the wrong one: 14.4 or 13.4 for 13.6."""
    millilitres = reading * 1e6
    whole = math.floor(millilitres + 1e-9)
    part = millilitres - whole
    if part < 1e-9:
        return reading
    return (whole + (2 if beyond else 1) - part) * 1e-6


def bench_barometer(run, ways):
    if "barometer_one_atmosphere" in ways:
        return ATM
    if "barometer_one_bar" in ways:
        return 1e5
    pressure = run.barometer
    for name, factor in NUMBER_AS.items():
        if "barometer_" + name in ways:
            pressure = pressure * factor
    if run.pressure_kind == "at_the_bench" or "barometer_not_reduced" in ways:
        return pressure
    # ICAO Doc 7488: 15 °C, 6.5 K/km, 287.05287 J/(kg K).
    if run.pressure_kind == "altimeter_setting":
        exponent = G / (287.05287 * 0.0065)
        base = (pressure / ATM) ** (1 / exponent) - 0.0065 * run.height / 288.15
        return ATM * base ** exponent
    mean = 288.15 - 0.0065 * run.height + 0.0065 * run.height / 2
    return pressure * math.exp(-G * run.height / (287.05287 * mean))


def vapour_of(run, ways, route):
    if "vapour_celsius_number" in ways:
        return run.celsius * MM_HG
    celsius = 25.0 if "vapour_of_25_celsius" in ways else run.celsius
    for name, rows in NEIGHBOURS.items():
        if name in ways:
            celsius += rows
    typed = run.vapour if run.vapour is not None else saturation(run.celsius)
    value = route.vapour if route.vapour is not None else typed
    if celsius != run.celsius:
        value = value + saturation(celsius) - saturation(run.celsius)
    for name, factor in NUMBER_AS.items():
        if "vapour_" + name in ways:
            value = value * factor
    return value


def column_of(run, ways, route):
    if run.stands == "level":
        return 0.0
    kilograms = route.density if route.density is not None else density(run.celsius)
    if "column_as_mercury" in ways:
        kilograms = 13595.1
    return powers(kilograms * G * run.level, ways, "column_")


def powers(x, ways, begins):
    for name in ways:
        if name in POWERS and name.startswith(begins):
            x = x * POWERS[name]
    return x


def volume_of(run, ways):
    reading = run.reading
    if "mirrored_beyond" in ways or "mirrored_within" in ways:
        reading = mirrored(reading, "mirrored_beyond" in ways)
    end = run.end_space or 0.0
    if "end_space_ignored" in ways or "reading_alone" in ways:
        end = 0.0
    if "end_space_subtracted" in ways:
        end = -end

    def room(mark):
        if run.zero_closed:
            return run.capacity - mark if "counted_from_capacity" in ways else mark
        if "reading_taken_as_gas" in ways or "reading_alone" in ways:
            return mark + end
        return run.capacity - mark + end

    volume = room(reading)
    if "start_ignored" not in ways:
        volume -= room(run.start) if run.start is not None else run.bubble or 0.0
    if "end_space_added_to_difference" in ways:
        volume += run.end_space
    return powers(powers(volume, ways, "millilitre_"), ways, "litre_")


def mass_of(run, ways):
    mass = run.mass
    if mass is None:
        mass = run.ribbon * (1e-3 if "mass_nominal_ribbon" in ways else run.line_density)
    mass = powers(mass, ways, "mass_")
    if "mass_one_figure" in ways:
        mass = float(to_figures(mass, 1))
    if "mass_one_figure_cut" in ways:
        mass = cut(mass, 1)
    return mass


def molar_mass_of(run, ways, route):
    number, usual, salt, _ = METALS[run.metal]
    molar_mass = route.molar_mass if route.molar_mass is not None else run.molar_mass or usual
    if "molar_mass_atomic_number" in ways:
        molar_mass = number * 1e-3
    if "molar_mass_of_salt" in ways:
        molar_mass = salt
    if "molar_mass_of_hydrogen" in ways:
        molar_mass = HYDROGEN
    if "molar_mass_of_manganese" in ways:
        molar_mass = MANGANESE
    if "molar_mass_doubled" in ways:
        molar_mass = 2 * molar_mass
    return molar_mass


def metal_of(run, ways, route):
    """Amount of metal."""
    amount = powers(mass_of(run, ways) * run.purity / molar_mass_of(run, ways, route), ways, "amount_")
    for name, figures in (("amount_one_figure", 1), ("amount_two_figures", 2)):
        if name in ways:
            amount = float(to_figures(amount, figures))
        if name + "_cut" in ways:
            amount = cut(amount, figures)
    if "amount_minus_lost" in ways:
        amount *= 10.0 ** (-2 * math.floor(math.log10(amount)))
    return amount


def ratio_of(run, ways):
    right = METALS[run.metal][3]
    return {"ratio_half": right / 2, "ratio_twice": right * 2, "ratio_one": 1.0,
            "ratio_upside_down": 1 / right}.get(next((w for w in ways if w.startswith("ratio_")), ""), right)


def accepted_of(run, ways, route):
    if "accepted_at_room" in ways:
        return 24.0e-3
    if "accepted_at_standard" in ways:
        return 22.4e-3
    if run.accepted is not None:
        return run.accepted
    pressure = run.standard_pressure
    if "accepted_other_pressure" in ways:
        pressure = other_standard_pressure(pressure)
    return to_figures(route.gas_constant * (run.standard_celsius + 273.15) / pressure, route.accepted_figures)


def conversion(run, ways, route, dry, barometer, kelvin):
    """The factor from the bench to standard conditions."""
    if "no_conversion" in ways:
        return 1.0
    if "only_over_temperature" in ways:
        return 1 / kelvin
    celsius = run.standard_celsius
    if "standard_other_temperature" in ways:
        celsius = 25.0 if celsius == 0 else 0.0
    standard_kelvin = celsius if "celsius_both" in ways else celsius + route.zero
    if "standard_temperature_dropped" in ways:
        standard_kelvin = 1.0
    pressure = run.standard_pressure if route.standard_pressure is None else route.standard_pressure
    if "standard_other_pressure" in ways:
        pressure = other_standard_pressure(run.standard_pressure)
    by_pressure = (barometer if "whole_pressure" in ways else dry) / pressure
    by_temperature = standard_kelvin / kelvin
    if "pressure_upside_down" in ways or "both_upside_down" in ways:
        by_pressure = 1 / by_pressure
    if "temperature_upside_down" in ways or "both_upside_down" in ways:
        by_temperature = 1 / by_temperature
    if "pressure_left_out" in ways:
        by_pressure = 1.0
    if "temperature_left_out" in ways:
        by_temperature = 1.0
    return by_pressure * by_temperature


def compare(found, accepted, ways):
    if "error_ratio" in ways:
        return found / accepted
    if "error_over_found" in ways:
        return (found - accepted) / found
    if "error_sign_lost" in ways:
        return (accepted - found) / accepted
    return (found - accepted) / accepted * (0.01 if "error_as_fraction" in ways else 1.0)


RIGHT = Route()


def steps(run, ways=frozenset(), route=RIGHT):
    """Every step's value, with the slips named in `ways`, by the accepted `route`."""
    out = {}

    def put(name, value, unit=1.0):
        if name in route.figures:
            value = to_figures(value / unit, route.figures[name]) * unit
        out[name] = value
        return value

    unit = route.pressure_unit
    as_celsius = "celsius_in_gas_law" in ways or "celsius_both" in ways
    kelvin = put("absolute_temperature", run.celsius if as_celsius else run.celsius + route.zero)
    vapour = put("water_vapour_pressure", vapour_of(run, ways, route), unit)
    column = put("column_pressure", column_of(run, ways, route), unit)
    barometer = bench_barometer(run, ways)
    dry = barometer
    if "column_ignored" not in ways:
        inside = (run.stands == "higher_inside") != ("column_wrong_side" in ways)
        dry = dry - column if inside else dry + column
    if "vapour_ignored" not in ways:
        dry = dry + vapour if "vapour_added" in ways else dry - vapour
    dry = put("dry_gas_pressure", dry, unit)
    volume = put("gas_volume", volume_of(run, ways))
    accepted = put("accepted_value", accepted_of(run, ways, route))
    law_pressure = barometer if "whole_pressure" in ways else dry
    if "millimetre_with_atmosphere" in ways:
        law_pressure = law_pressure * 760
    tenfold = 10.0 if "gas_constant_tenfold" in ways else 1.0
    factor = conversion(run, ways, route, dry, barometer, kelvin)
    by_law = law_pressure * volume / (tenfold * R * kelvin)
    at_standard = put("volume_at_standard", volume * factor)
    wrong_constant = "gas_constant_tenfold" in ways or "millimetre_with_atmosphere" in ways
    by_volume = put("amount_by_volume", by_law if wrong_constant else at_standard / accepted)
    if run.target != "gas_molar_mass":
        metal = put("amount_of_metal", metal_of(run, ways, route))
        if "circular_by_gas_law" in ways:
            gas = by_law
        elif "circular_by_accepted_value" in ways:
            gas = volume / accepted
        elif "circular_by_volume_at_standard" in ways:
            gas = volume * factor / accepted
        else:
            gas = ratio_of(run, ways) * metal
        gas = put("amount_of_gas", gas)
        bench = put("molar_volume_bench", volume / gas)
        # By way of the volume at standard conditions where that was rounded, else at once: the same without rounding.
        standard = put("molar_volume_standard", at_standard / gas)
        put("gas_constant", tenfold * law_pressure * volume / (gas * kelvin))
    if run.target != "molar_volume":
        known = last_line(run, ways, route, out, put, by_volume)
        if known is not None:
            put("percent_error", compare(out[SOUGHT[run.target]], known, ways))
    else:
        put("percent_error", compare(standard if run.converted else bench, accepted, ways))
    return out


def last_line(run, ways, route, out, put, gas):
    """What is sought where it is not the molar volume, from the amount of gas by its volume; gives what is known of it."""
    if run.target == "gas_constant":
        return route.gas_constant
    mass = mass_of(run, ways)
    if run.derived:
        mass = put("mass", mass)
    if run.target == "gas_molar_mass":
        put("gas_molar_mass", mass / gas)
        return GASES[run.gas] if route.molar_mass is None else route.molar_mass
    known = METALS[run.metal][1] if route.molar_mass is None else route.molar_mass
    ratio = ratio_of(run, ways)
    if run.target == "molar_mass":
        put("molar_mass_found", mass * run.purity * ratio / gas)
        return known
    if run.target == "equivalent_mass":
        put("equivalent_mass", mass * run.purity / gas / (1 if "equivalent_not_halved" in ways else 2))
        return known / (2 * METALS[run.metal][3])
    first = ratio / molar_mass_of(run, ways, route)
    if run.target == "purity":
        share = gas / mass / first
    else:
        _, usual, _, moles = METALS[run.second]
        second = moles / (usual if route.second is None else route.second)
        share = (gas / mass - second) / (first - second)
    put(SOUGHT[run.target], 1 - share if "share_of_the_other" in ways else share)
    return None
