#!/usr/bin/python3
"""Checks tests/cases/cases.md: each published case once, with a status that means something and its test.

usage: case_list.py

The ids come from tests/cases/ids.txt; where ../shared/cases.json stands beside the project, the two must agree.
"""

import json
import pathlib
import re

from check import Checks

ROOT = pathlib.Path(__file__).resolve().parents[2]
CASES = ROOT / "tests" / "cases"
SOURCE = ROOT.parent / "shared" / "cases.json"
STATUS = re.compile(r"reproduced|error explained|waiting for: \S.+|readings incomplete: \S.+")
COLUMNS = 6

checks = Checks()


def rows_of(text):
    """The rows of the table, header and rule left out."""
    lines = [line for line in text.splitlines() if line.startswith("|")]
    return [[cell.strip() for cell in re.split(r"(?<!\\)\|", line.strip().strip("|"))] for line in lines[2:]]


def faults(rows, ids, tested):
    """What is wrong with the table, as sentences."""
    found = []
    listed = [row[0].strip("`") for row in rows]
    found += [f"{name} is listed {listed.count(name)} times" for name in ids if listed.count(name) != 1]
    found += [f"{name} is no case" for name in listed if name not in ids]
    for name, row in zip(listed, rows):
        if len(row) != COLUMNS:
            found.append(f"{name} has {len(row)} columns")
            continue
        if not all(row):
            found.append(f"{name} has an empty column")
        if not STATUS.fullmatch(row[4]):
            found.append(f"{name} has the status {row[4]!r}")
        named = row[5].strip("`")
        if named != "none" and tested.get(name) != named:
            found.append(f"{name} has no test in {named}")
        if named == "none" and name in tested:
            found.append(f"{name} has a test in {tested[name]} that is not named")
        if row[4] in ("reproduced", "error explained") and named == "none":
            found.append(f"{name} is {row[4]} without a test")
    return found


ids = (CASES / "ids.txt").read_text(encoding="utf-8").split()
checks.that(len(ids) == len(set(ids)) == 39, f"{len(ids)} ids, {len(set(ids))} of them different")
if SOURCE.exists():
    source = [case["id"] for case in json.loads(SOURCE.read_text(encoding="utf-8"))]
    checks.that(source == ids, "ids.txt differs from cases.json")

tested = {}
for path in sorted(CASES.glob("*.cpp")):
    for name in re.findall(r'TEST_CASE\("case ([^:"]+):', path.read_text(encoding="utf-8")):
        checks.that(name in ids, f"{path.name} tests {name}, which is no case")
        checks.that(name not in tested, f"{name} is tested twice")
        tested[name] = path.name

rows = rows_of((CASES / "cases.md").read_text(encoding="utf-8"))
found = faults(rows, ids, tested)
for fault in found:
    checks.that(False, fault)
for row in rows:
    checks.that(True, row[0])

# Each rule finds the fault it is for.
first = rows[0]
checks.that(faults(rows[1:], ids, tested), "a missing row passes")
checks.that(faults(rows + [first], ids, tested), "a row given twice passes")
checks.that(faults(rows + [["`no-such-case`"] + first[1:]], ids, tested), "an unknown id passes")
checks.that(faults([first[:4] + ["done", first[5]]] + rows[1:], ids, tested), "an unknown status passes")
checks.that(faults([first[:5] + ["`no_such_file.cpp`"]] + rows[1:], ids, tested), "a missing test passes")

checks.finish()
