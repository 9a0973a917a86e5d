#!/usr/bin/python3
"""Compares what the program print_chemistry prints with python3-periodictable, python3-sympy and scipy.

usage: compare_chemistry.py PATH_OF_PRINT_CHEMISTRY

Atomic weights against the library's within the abridged bounds; formulas made at random against the library's own reader
of formulas; equations made at random against sympy's null space and, where that has several dimensions, scipy's linear
programming.
"""

import math
import random
import subprocess
import sys

import periodictable
import scipy.optimize
import sympy

from check import Checks

checks = Checks()

# periodictable 1.6 carries the table of 1999/2001. CIAAW has changed these since by more than the abridged bounds of 2021.
CHANGED_SINCE = {"Zn": 65.409, "Ge": 72.64, "Se": 78.96}
FORMULAS = 400
EQUATIONS = 2000


# ---- atomic weights

def check_weights(rows, without):
    checks.that(len(rows) == 84 and len(without) == 34, f"{len(rows)} elements with a weight, {len(without)} without")
    for number, symbol, value, plus_minus, decimals, lowest, highest in rows:
        library = periodictable.elements[int(number)]
        checks.that(library.symbol == symbol, f"number {number} is {library.symbol}, not {symbol}")
        value, plus_minus, lowest, highest = map(float, (value, plus_minus, lowest, highest))
        inside = abs(library.mass - value) <= plus_minus + 1e-9
        if symbol in CHANGED_SINCE:
            checks.that(not inside and abs(library.mass - CHANGED_SINCE[symbol]) < 1e-9,
                        f"the library's {symbol} is still the old one: if not, drop this exception")
        else:
            checks.that(inside, f"{symbol}: {value} +- {plus_minus}, library {library.mass}")
        checks.that(value - plus_minus <= lowest + 1e-9 and highest - 1e-9 <= value + plus_minus,
                    f"{symbol}: {value} +- {plus_minus} does not cover [{lowest}, {highest}]")
        checks.that(round(value, int(decimals)) == value, f"{symbol}: {value} has more than {decimals} decimals")
    for number, symbol in without:
        library = periodictable.elements[int(number)]
        checks.that(library.symbol == symbol, f"number {number} is {library.symbol}, not {symbol}")
        # Without a standard weight the library has a mass number.
        checks.that(library.mass == int(library.mass), f"{symbol} has the weight {library.mass} in the library")


# ---- formulas

def random_formula(rng, levels):
    text = ""
    for _ in range(rng.randint(1, 4)):
        if levels and rng.random() < 0.3:
            text += "(" + random_formula(rng, levels - 1) + ")"
        else:
            text += rng.choice([e.symbol for e in periodictable.elements if e.number > 0])
        if rng.random() < 0.6:
            text += str(rng.randint(2, 30))
    return text


def check_formulas(texts, rows, weights):
    checks.that(len(rows) == len(texts), f"{len(rows)} formulas printed")
    for text, (problem, mass, plus_minus, atoms) in zip(texts, rows):
        found = {symbol: int(count) for symbol, count in (one.split(":") for one in atoms.split())}
        library = {element.symbol: int(count) for element, count in periodictable.formula(text).atoms.items()}
        checks.that(problem == "0" and found == library, f"{text}: {found}, library {library}")
        if all(symbol in weights for symbol in library):
            value = math.fsum(count * weights[symbol][0] for symbol, count in library.items())
            bound = math.fsum(count * weights[symbol][1] for symbol, count in library.items())
            checks.close(float(mass), value, 1e-12 * value, f"molar mass of {text}")
            checks.close(float(plus_minus), bound, 1e-12 * bound, f"bounds of {text}")
            # The library's own weights are within the bounds, but for the changed ones.
            if not set(library) & set(CHANGED_SINCE):
                checks.close(float(mass), periodictable.formula(text).mass, bound + 1e-6, f"{text} against the library")
        else:
            checks.that(float(mass) == 0, f"{text} has a mass without a weight")


# ---- equations

def substance_text(atoms, charge):
    text = "".join(symbol + (str(n) if n > 1 else "") for symbol, n in atoms.items())
    if charge:
        text += "^" + (str(abs(charge)) if abs(charge) > 1 else "") + ("+" if charge > 0 else "-")
    return text


def random_equation(rng):
    """Substances of few elements, so that every kind of outcome comes up; some with charges and electrons."""
    elements = rng.sample(["H", "C", "N", "O", "S", "K", "Fe", "Cl"], rng.randint(1, 4))
    charged = rng.random() < 0.3
    substances = []
    for _ in range(rng.randint(2, min(7, len(elements) + 3))):
        chosen = [e for e in elements if rng.random() < 0.6] or [rng.choice(elements)]
        atoms = {e: rng.randint(1, 12 if rng.random() < 0.2 else 4) for e in chosen}
        charge = rng.randint(-3, 3) if charged and rng.random() < 0.5 else 0
        if (atoms, charge) not in substances:
            substances.append((atoms, charge))
    if len(substances) < 2:
        return random_equation(rng)
    if charged and rng.random() < 0.3:
        substances.append(({}, -1))
    rng.shuffle(substances)
    reactants = rng.randint(1, len(substances) - 1)
    texts = ["e^-" if not atoms else substance_text(atoms, charge) for atoms, charge in substances]
    text = " + ".join(texts[:reactants]) + " -> " + " + ".join(texts[reactants:])
    return text, substances, reactants


def rows_of(substances, reactants, with_charge):
    names = sorted({e for atoms, _ in substances for e in atoms})
    sign = [1 if i < reactants else -1 for i in range(len(substances))]
    rows = [[s * atoms.get(name, 0) for s, (atoms, _) in zip(sign, substances)] for name in names]
    if with_charge and any(charge for _, charge in substances):
        rows.append([s * charge for s, (_, charge) in zip(sign, substances)])
    return rows


def positive_by_scipy(rows):
    found = scipy.optimize.linprog([1] * len(rows[0]), A_eq=rows, b_eq=[0] * len(rows), bounds=(1, None), method="highs")
    return found.status == 0


def smallest_whole(vector):
    multiple = sympy.ilcm(*[number.q for number in vector])
    whole = [int(number * multiple) for number in vector]
    factor = math.gcd(*whole)
    whole = [number // factor for number in whole]
    return [-number for number in whole] if sum(number < 0 for number in whole) * 2 > len(whole) else whole


def expected_kind(substances, reactants):
    """The outcomes that are right, and the coefficients if there are any."""
    elements = rows_of(substances, reactants, False)
    if any(min(row) >= 0 or max(row) <= 0 for row in elements):
        return {"one_side"}, None, None
    rows = rows_of(substances, reactants, True)
    basis = sympy.Matrix(rows).nullspace()
    if len(basis) == 1:
        whole = smallest_whole(list(basis[0]))
        if min(whole) > 0:
            return {"balanced"}, whole, 1
    if len(basis) > 1 and positive_by_scipy(rows):
        return {"several"}, None, len(basis)
    # No positive solution. Without the charge there is one, or there is none at all, or one of the wrong sign.
    if positive_by_scipy(elements):
        return {"charge"}, None, None
    without_charge = sympy.Matrix(elements).nullspace()
    if not without_charge:
        return {"no_solution"}, None, None
    vectors = basis or without_charge
    if len(vectors) > 1:
        return {"wrong_side"}, None, None
    whole = list(vectors[0])
    mixed = any(number > 0 for number in whole) and any(number < 0 for number in whole)
    return {"wrong_side" if mixed else "no_part"}, None, None


def check_equations(made, rows):
    checks.that(len(rows) == len(made), f"{len(rows)} equations printed")
    seen = {}
    for (text, substances, reactants), (problem, kind, independent, _, coefficients) in zip(made, rows):
        kinds, whole, dimensions = expected_kind(substances, reactants)
        seen[kind] = seen.get(kind, 0) + 1
        checks.that(problem == "0", f"{text} is not read: {problem}")
        checks.that(kind in kinds, f"{text}: {kind}, expected {kinds}")
        if whole:
            checks.that([int(n) for n in coefficients.split()] == whole, f"{text}: {coefficients}, sympy {whole}")
        if dimensions:
            checks.that(int(independent) == dimensions, f"{text}: {independent} solutions, sympy {dimensions}")
    for kind in ("balanced", "several", "one_side", "charge", "no_solution", "wrong_side", "no_part"):
        checks.that(seen.get(kind, 0) >= 5, f"{seen.get(kind, 0)} equations come out as {kind}: too few to mean anything")


def main():
    if len(sys.argv) != 2:
        sys.exit(__doc__)
    rng = random.Random(20220504)
    formulas = [random_formula(rng, 2) for _ in range(FORMULAS)]
    formulas = [text for text in formulas if len(text) <= 200]
    equations = [random_equation(rng) for _ in range(EQUATIONS)]
    typed = "".join(f"F {text}\n" for text in formulas) + "".join(f"E {text}\n" for text, _, _ in equations)
    printed = subprocess.run([sys.argv[1]], input=typed, check=True, capture_output=True, text=True).stdout
    rows = {}
    for line in printed.splitlines():
        kind, *rest = line.split(",")
        rows.setdefault(kind, []).append(rest)
    check_weights(rows["weight"], rows["no_weight"])
    weights = {symbol: (float(value), float(plus_minus)) for _, symbol, value, plus_minus, *_ in rows["weight"]}
    check_formulas(formulas, rows["formula"], weights)
    check_equations(equations, rows["equation"])
    checks.finish()


main()
