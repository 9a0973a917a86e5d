#!/usr/bin/python3
"""Works plans of random rooms, heights, tubes and metals out again: mass window, predicted reading, overflow, acid, class amounts
by an independently written gas law (independent/plan_room.py; vapour pressure: python3-iapws), solved with scipy; the expected
doubt by python3-uncertainties over the expected readings.

usage: compare_plan.py PATH_OF_PRINT_PLAN
"""

import collections
import itertools
import math
import subprocess
import sys

import uncertainties
from scipy.stats import norm

from check import Checks
from independent.bench import Bench, saturation
from independent.plan_room import Room

checks = Checks()

DEMONSTRATIONS = ("calcium", "lithium")
# Half a division and class limit of the burette of this capacity, class B, mL.
TUBES = {10: (0.025, 0.05), 25: (0.05, 0.10), 50: (0.05, 0.10), 100: (0.1, 0.20)}
LEVELS = ("fits", "warm", "may_pass_scale", "may_leave", "passes_scale", "leaves")


def read_plans(program):
    plans = []
    for line in subprocess.run([program], capture_output=True, text=True, check=True).stdout.splitlines():
        kind, *rest = line.split("|")
        if kind == "case":
            plans.append(collections.defaultdict(dict, real=rest[0] == "1"))
        elif kind in ("typed", "expected"):
            plans[-1][kind][rest[0]] = tuple(rest[1:])
        elif kind == "state":
            plans[-1]["state"][rest[0]] = rest[1:]
        else:
            plans[-1][kind][rest[0]] = float(rest[1]) if kind == "found" else rest[1]
    return plans


def near(found, expected, what, relative=1e-9, floor=0.0):
    checks.close(found, expected, relative * max(abs(expected), floor), what)


def compare_point(room, found, name, fill, amount, mass, what):
    volume, dry, _ = room.gas(fill)
    get = lambda key: found[f"{name}.{key}"]
    near(get("mass"), mass, f"{what}: mass of {name}")
    near(get("share"), fill / room.capacity, f"{what}: share of {name}", floor=1.0)
    near(get("gas_volume"), volume, f"{what}: volume of {name}", floor=room.capacity)
    near(get("scale_reading"), room.reading(fill), f"{what}: reading of {name}", floor=room.capacity)
    near(get("level_difference"), room.level(fill), f"{what}: level of {name}", floor=0.1)
    near(get("pressure_at_bench"), room.pressure, f"{what}: pressure of {name}")
    near(get("dry_gas_pressure"), dry, f"{what}: dry pressure of {name}")
    near(get("amount_of_gas"), amount, f"{what}: amount of {name}")
    per_metre = room.number("mass_per_metre") * 1e-3
    near(get("ribbon_length"), mass / per_metre if per_metre else 0.0, f"{what}: ribbon of {name}")


def compare_window(room, found, what):
    least, most = room.share("least_share", 60), room.share("most_share", 90)
    for name, share in (("least", least), ("middle", (least + most) / 2), ("most", most)):
        fill = share * room.capacity
        amount = room.gas(fill)[2]
        compare_point(room, found, name, fill, amount, room.mass(amount), what)


def chosen_mass(room, plan):
    """The mass typed, or of the share, to the last digit of balance (0.001 g where none is chosen) or ruler."""
    text = room.text
    per_metre = room.number("mass_per_metre") * 1e-3
    ribbon = text.get("mass_from") == "ribbon"
    if ribbon and "ribbon_length" in text:
        return float(text["ribbon_length"]) * 1e-2 * per_metre
    if not ribbon and "mass_of_metal" in text:
        return float(text["mass_of_metal"]) * 1e-3
    exact = room.mass(room.gas(room.share("share", 75) * room.capacity)[2])
    if ribbon:
        return round(exact / per_metre * 1e4) * 1e-4 * per_metre
    digits = 1e7 if plan["typed"].get("mass_of_metal", ("", "", ""))[2] == "balance_100ug" else 1e6
    return round(exact * digits) / digits


def limits(room, plan):
    """(name of the number, lowest and highest deviation, standard uncertainty) of all that moves the gas; the mass last."""
    third, sixth = math.sqrt(3), math.sqrt(6)
    rows = [("celsius", room_half(room, "temperature_within", 3.0)), ("pressure", room_half(room, "pressure_within", 2000.0))]
    if room.stands == "level":
        rows.append(("level", 2e-3))
    else:
        rows += [("level", 1e-3), ("gravity", 0.0264)]
    if "pressure_kind" in room.text:
        rows.append(("height", 20.0))
    rows.append(("vapour", 0.00025 * saturation(room.celsius)))
    rows = [(name, -half, half, half / third) for name, half in rows]
    if room.upside_down:
        if "end_space" in room.text:
            rows.append(("end", -0.1e-6, 0.1e-6, 0.1e-6 / third))
        else:
            rows.append(("end", 0.0, 4e-6, 4e-6 / math.sqrt(12)))
    if room.ring is not None:
        rows.append(("ring", -0.2 * room.ring, 0.2 * room.ring, 0.2 * room.ring / third))
    else:
        most = (0.45e-6 if room.capacity > 75e-6 else 0.25e-6) / 2
        rows.append(("ring", 0.0, most, most / math.sqrt(12)))
    rows.append(("weight", -room.spread, room.spread, room.spread / third))
    if "purity" in room.text:
        digit = 10.0 ** -len(room.text["purity"].partition(".")[2]) / 100
        rows.append(("purity", -digit, digit, digit / third))
    text = plan["expected"]
    if room.text.get("mass_from") == "ribbon":
        rows += [("length", -0.5e-3, 0.5e-3, 0.5e-3 / third), ("per_metre", -0.01e-3, 0.01e-3, 0.01e-3 / third)]
    else:
        digit = 10.0 ** -len(text["mass_of_metal"][0].partition(".")[2]) * 1e-3
        rows.append(("mass", -digit, digit, digit / sixth))
    return rows


def room_half(room, name, usual):
    typed = room.asked.get(name)
    return usual if typed is None else float(typed.split()[0]) * (100 if "hPa" in typed else 1)


def moved_gas(room, mass, off):
    """Amount with the metal's own numbers off."""
    off = dict(off)
    if "length" in off or "per_metre" in off:
        per_metre = room.number("mass_per_metre") * 1e-3
        mass = (mass / per_metre + off.get("length", 0)) * (per_metre + off.get("per_metre", 0))
    amount = (mass + off.get("mass", 0)) * (room.purity + off.get("purity", 0))
    return amount / ((room.weight + off.get("weight", 0)) * 1e-3) * room.ratio


def compare_overflow(room, plan, mass, limited, what):
    found = plan["found"]
    amount = moved_gas(room, mass, ())
    planned = room.fill(min(amount, limited))
    near(found["overflow.planned"], planned, f"{what}: fill", floor=room.capacity)
    near(found["overflow.warm"], room.fill(min(amount, limited), {"celsius": 10}), f"{what}: warm", floor=room.capacity)
    if "expected" not in plan or limited < amount:
        return
    limit = TUBES[round(room.capacity * 1e6)][1] * 1e-6
    off, variance, middle = {}, (limit / math.sqrt(3)) ** 2, 0.0
    for name, low, high, u in limits(room, plan):
        step = 1e-3 * (high - low)
        ends = [room.fill(moved_gas(room, mass, {name: x}), {name: x}) for x in (-step, step)]
        slope = (ends[1] - ends[0]) / (2 * step)
        off[name] = high if slope > 0 else low
        variance += (slope * u) ** 2
        middle += slope * (low + high) / 2
    if limited < math.inf:
        # Acid that may be stronger than its label, and more of it: its half-widths, or the digits of the number.
        volume, strength = room.number("acid_volume"), room.number("acid_concentration")
        limited = (volume + 0.2) * (strength + max(0.05 * strength, 0.1)) * 1e-3 / room.acid_ratio * room.ratio
    upper = room.fill(min(limited, moved_gas(room, mass, off)), off) + limit
    near(found["overflow.upper"], upper, f"{what}: upper end", 1e-7)
    # Slopes there are at the rounded reading, and no longer grow where the gas has passed the last mark.
    u = math.sqrt(variance)
    if planned <= room.capacity:
        near(found["overflow.u"], u, f"{what}: doubt of the fill", 0.01)
        chance = norm.sf((room.capacity - planned - middle) / u)
        checks.close(found["overflow.chance"], chance, 0.01, f"{what}: chance")
    mouth = room.capacity + float(room.asked.get("mouth_space", 0)) * 1e-6
    warm = found["overflow.warm"]
    level = ("leaves" if planned > mouth else "passes_scale" if planned > room.capacity else "may_leave" if upper > mouth
             else "may_pass_scale" if upper > room.capacity else "warm" if warm > room.capacity else "fits")
    checks.that(LEVELS[int(found["overflow.level"])] == level, f"{what}: {level}")


def compare_acid(room, plan, mass, what):
    """States and amounts; what the metal asks for in moles, and the acid's own rules (method.md, sections 3 and 10)."""
    state, reason = plan["state"]["acid"]
    found, text = plan["found"], room.text
    if text["metal"] in DEMONSTRATIONS:
        checks.that(state == "not_possible", f"{what}: no acid for a demonstration")
        return
    needed = mass * room.purity / (room.weight * 1e-3) * room.acid_ratio
    excess = float(room.asked.get("excess", 5))
    volume = float(text["acid_volume"]) * 1e-6 if "acid_volume" in text else None
    strength = float(text["acid_concentration"]) * 1e3 if "acid_concentration" in text else None
    if volume is None:
        volume = excess * needed / strength
    elif strength is None:
        strength = excess * needed / volume
    sulfuric = text["acid"] == "sulfuric"
    if strength > (18.4e3 if sulfuric else 13e3):
        expected = ("not_possible", "check.no_such_acid")
    elif sulfuric and strength > 2e3:
        expected = ("not_possible", "check.strong_sulfuric")
    elif volume > room.capacity:
        expected = ("not_possible", "plan.refusal.acid_no_room")
    elif not sulfuric and strength > 3e3 and room.asked.get("consent") != "yes":
        expected = ("waiting", "")
    else:
        expected = ("value", "")
    checks.that((state, reason) == expected, f"{what}: acid {state} {reason}, expected {expected}")
    if state == "value":
        near(found["acid.needed"], needed, f"{what}: acid needed")
        near(found["acid.volume"], volume, f"{what}: acid volume")
        near(found["acid.concentration"], strength, f"{what}: acid concentration")
        near(found["acid.excess"], volume * strength / needed, f"{what}: acid excess")


def compare_class(room, plan, mass, what):
    found = plan["found"]
    demonstration = room.text["metal"] in DEMONSTRATIONS
    checks.that((plan["state"]["class_metal"][0] == "not_possible") == demonstration, f"{what}: class amounts")
    if demonstration:
        return
    runs = int(room.asked["groups"]) * int(room.asked.get("runs", 1))
    pieces = -(-runs * (100 + int(room.asked.get("spare", 20))) // 100)
    checks.that(found["class.pieces"] == pieces, f"{what}: {pieces} pieces")
    near(found["class.mass"], pieces * mass, f"{what}: mass of the class")
    if "class.acid" in found:
        near(found["class.acid"], pieces * found["acid.volume"], f"{what}: acid of the class")


def compare_doubt(room, plan, what):
    """The expected readings once more, through the independent budget; what it knows of."""
    known = room.text["metal"] in ("magnesium", "zinc", "aluminium") and room.text["acid"] == "hydrochloric"
    usual = {"tube_capacity": "mL", "end_space": "mL", "temperature": "°C", "barometer": "kPa", "mass_of_metal": "g",
             "ribbon_length": "cm", "mass_per_metre": "g/m", "purity": "%", "acid_volume": "mL",
             "acid_concentration": "mol/L", "scale_reading": "mL", "level_difference": "mm", "height_above_sea_level": "m",
             "tube_bore": "mm", "length_of_scale": "mm"}
    tube = room.capacity * 1e6 > 40
    if not known or not tube or "acid_volume" not in plan["expected"] or "acid_concentration" not in plan["expected"]:
        return False
    entries = {}
    for field, (text, unit, instrument) in plan["expected"].items():
        if field in usual and text:
            text = f"{text} {unit or usual[field]}"
        if field == "tube_bore" and room.ring is None:
            continue
        # The digits of a balance to 0.0001 g say the same.
        instrument = "" if instrument == "balance_100ug" else instrument
        entries[field] = {"text": text, "instrument": instrument, "plus_minus": "", "shape": "", "repeats": ""}
    bench = Bench(entries, {"vapour": 0, "real": room.real, "converted": 1, "pascal": 1e5})
    result = bench.outputs()["molar_volume_standard"]
    near(plan["found"]["doubt.value"], uncertainties.nominal_value(result), f"{what}: expected result", 1e-9)
    near(plan["found"]["doubt.u"], uncertainties.std_dev(result), f"{what}: expected doubt", 1e-8)
    return True


def main():
    if len(sys.argv) != 2:
        sys.exit(__doc__)
    tally = collections.Counter()
    for number, plan in enumerate(read_plans(sys.argv[1])):
        what = f"plan {number}"
        room = Room(plan)
        states = plan["state"]
        if room.text["metal"] in DEMONSTRATIONS and room.text["acid"] == "sulfuric":
            checks.that(all(state == "not_possible" for state, _ in states.values()), f"{what}: refused")
            continue
        checks.that(states["mass_window"][0] == "value", f"{what}: mass window")
        compare_window(room, plan["found"], what)
        mass = chosen_mass(room, plan)
        if mass == 0:
            checks.that(states["gas"] == ["not_possible", "plan.refusal.too_coarse"], f"{what}: too coarse")
            continue
        limited = math.inf
        if room.text["metal"] not in DEMONSTRATIONS and {"acid_volume", "acid_concentration"} <= room.text.keys():
            limited = room.number("acid_volume") * room.number("acid_concentration") * 1e-3 / room.acid_ratio * room.ratio
        amount = min(room.amount(mass), limited)
        fill = room.fill(amount)
        compare_point(room, plan["found"], "chosen", fill, amount, mass, what)
        on_scale = 0 <= fill <= room.capacity
        checks.that((states["scale_reading"][0] == "value") == on_scale, f"{what}: on the scale")
        compare_overflow(room, plan, mass, limited, what)
        compare_acid(room, plan, mass, what)
        compare_class(room, plan, mass, what)
        tally["acid limits"] += limited < room.amount(mass)
        tally["on the scale"] += on_scale
        tally["hangs"] += room.hangs
        tally["doubts"] += states["doubt"][0] == "value" and compare_doubt(room, plan, what)
        tally[f"level {LEVELS[int(plan['found']['overflow.level'])]}"] += 1
    for key in itertools.chain(("on the scale", "hangs", "acid limits", "doubts"), (f"level {level}" for level in LEVELS)):
        checks.that(tally[key] >= 5, f"enough plans for: {key} ({tally[key]})")
    checks.finish()


main()
