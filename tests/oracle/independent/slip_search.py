"""Asks the program which slip gives an answer; the texts of answers, and what two answers have in common."""

import decimal
import json
import math
import subprocess

from independent.run_facts import UNITS
from independent.wrong_ways import steps

UNIT_OF = {"molar_volume_standard": "L/mol", "molar_volume_bench": "L/mol", "accepted_value": "L/mol",
           "percent_error": "%", "gas_constant": "J/mol/K", "gas_volume": "mL", "volume_at_standard": "mL",
           "amount_of_metal": "mol", "amount_of_gas": "mol", "amount_by_volume": "mol", "molar_mass_found": "g/mol",
           "equivalent_mass": "g/mol", "gas_molar_mass": "g/mol", "purity_found": "%", "alloy_share": "%"}


def text_of(value, figures):
    """So many figures, half up; a power of ten where zeros at the end would not tell how many."""
    if value == 0 or not math.isfinite(value):
        return "0"
    number = decimal.Decimal(repr(float(value)))
    step = decimal.Decimal(1).scaleb(number.adjusted() - figures + 1)
    number = number.quantize(step, decimal.ROUND_HALF_UP)
    exponent = number.adjusted()
    if exponent >= figures or exponent < -6:
        return f"{number.scaleb(-exponent):.{figures - 1}f}e{exponent}"
    return f"{number:.{max(figures - 1 - exponent, 0)}f}"


def answer(line, value, figures, run):
    unit = UNIT_OF.get(line, run.barometer_unit)
    if unit == "mL" and value >= 1e-3:
        unit = "L"
    return {"step": line, "text": text_of(float(value) / UNITS[unit], figures), "unit": unit}


def half_unit(given):
    """Half of one unit of the last digit, in SI."""
    return 0.5 * 10.0 ** decimal.Decimal(given["text"]).as_tuple().exponent * UNITS[given["unit"]]


def si(given):
    return float(given["text"]) * UNITS[given["unit"]]


def same(a, b, relative=1e-9):
    return abs(a - b) <= relative * max(abs(a), abs(b))


class Asker:
    """Collects questions, asks them all in one go, and keeps the answers."""

    def __init__(self, program):
        self.program = program
        self.lines = []
        self.found = []

    def ask(self, record, answers):
        self.lines.append(json.dumps({"record": record, "run": 0, "answers": answers}))
        return len(self.lines) - 1

    def run(self):
        try:
            done = subprocess.run([self.program], input="\n".join(self.lines) + "\n", capture_output=True, text=True)
        except OSError as error:
            return -1, str(error)
        for line in done.stdout.splitlines():
            if not line.strip():
                continue
            try:
                self.found.append(json.loads(line))
            except ValueError:
                self.found.append({"kind": "no JSON: " + line[:80], "explanations": []})
        return done.returncode, done.stderr.strip()[:500]

    def __getitem__(self, index):
        nothing = {"kind": "no answer", "explanations": []}
        return self.found[index] if index < len(self.found) else nothing


def explanations(found):
    return found.get("explanations") or []


def places(found):
    """(place, explanation): those of equal rank share a place."""
    ranks = sorted({e["rank"] for e in explanations(found)})
    return [(ranks.index(e["rank"]) + 1, e) for e in explanations(found)]


def numbers(run, slips, lines):
    """What these slips give in these lines, or nothing where they cannot be computed."""
    try:
        out = steps(run, frozenset(slips))
        return [float(out[line]) for line in lines]
    except (ArithmeticError, ValueError, TypeError, KeyError):
        return None


def equal_by_number(run, a, b, lines):
    first, second = numbers(run, a, lines), numbers(run, b, lines)
    return first is not None and second is not None and all(same(x, y) for x, y in zip(first, second))
