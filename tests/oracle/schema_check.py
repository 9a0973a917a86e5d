#!/usr/bin/python3
"""Checks record.schema.json with an independent validator (python3-jsonschema, draft 2020-12): that the schema itself is
valid, that the records of the repository fit it, that it refuses what is wrong, and that it names the same fields, units
and choices as the C++ sources."""
import copy
import json
import pathlib
import re

import jsonschema

root = pathlib.Path(__file__).resolve().parents[2]
schema = json.loads((root / "core/record/record.schema.json").read_text(encoding="utf-8"))
validator = jsonschema.Draft202012Validator(schema)
passed = failed = 0


def check(name, good):
    global passed, failed
    if good:
        passed += 1
    else:
        failed += 1
        print("FAILED:", name)


def source(path):
    return (root / path).read_text(encoding="utf-8")


def strings(text):
    return re.findall(r'"([^"]*)"', text)


def record(path):
    return json.loads(source(path))


try:
    jsonschema.Draft202012Validator.check_schema(schema)
    check("the schema is valid", True)
except jsonschema.SchemaError as error:
    check(f"the schema is valid: {error.message}", False)

fixture = record("tests/core/fixtures/record_v1.json")
demos = sorted((root / "assets/demo").glob("*.json"))
check("there is a demo record", bool(demos))
for path in [root / "tests/core/fixtures/record_v1.json", *demos]:
    errors = list(validator.iter_errors(json.loads(path.read_text(encoding="utf-8"))))
    check(f"{path.name} fits: {errors[:1]}", not errors)
for path in demos:
    check(f"{path.name} is marked as invented", json.loads(path.read_text(encoding="utf-8")).get("invented") is True)

# Every example record in record.md fits too.
examples = re.findall(r"```json\n(.*?)```", source("core/record/record.md"), re.S)
check("record.md shows a record, a course and an outcome", len(examples) == 3)
check("the record in record.md fits", validator.is_valid(json.loads(examples[0])))
for example in examples[1:]:
    json.loads(example)

# What is wrong is refused: the path of the member, and a value that cannot stand there.
wrong = [
    (["overwater"], "outcome"), (["version"], 2), (["version"], "1"), (["name"], None), (["invented"], 0),
    (["created"], "31.1.2026"), (["apparatus"], "syringe"), (["target"], "molar_weight"), (["shared", "gas"], {"text": "argon"}),
    (["shared", "gas_is"], {"text": "damp"}), (["shared", "second_metal"], {"text": "calcium_carbonate"}),
    (["shared", "apparatus"], {"text": "bucket"}), (["shared", "target"], {"text": "density"}),
    (["shared", "latitude"], {"text": 51}), (["shared", "molar_mass"], {"text": "24.3", "unit": "kg"}), (["runs"], []), (["runs"], [{}] * 7), (["runs", 0], 5),
    (["runs", 0, "entries", "scale_reading"], "9.15"), (["runs", 0, "entries", "scale_reading", "text"], 9.15),
    (["runs", 0, "entries", "scale_reading", "unit"], "g"), (["runs", 0, "entries", "later_field"], 1),
    (["shared", "temperature", "unit"], "°C"), (["shared", "temperature", "repeats"], [1]),
    (["shared", "end_space", "shape"], "gaussian"), (["shared", "metal", "text"], "gold"),
    (["conventions", "standard"], "15C_1atm"), (["conventions", "own_celsius"], -273.15),
    (["conventions", "own_pascal"], 0), (["conventions", "pressure_unit"], "g"), (["answers", "mean"], "22.7"),
    (["answers", "mean", "unit"], "furlong"), (["history", 0, "run"], 6), (["history", 0, "run"], 0.5),
]
for path, value in wrong:
    bad = copy.deepcopy(fixture)
    place = bad
    for step in path[:-1]:
        place = place[step]
    place[path[-1]] = value
    check(f"{path} = {value!r} is refused", not validator.is_valid(bad))
for name in ("overwater", "version"):
    check(f"a record without {name} is refused", not validator.is_valid({k: v for k, v in fixture.items() if k != name}))

# The same names as in the sources.
defs = schema["$defs"]
field_names = strings(re.search(r"field_names\{(.*?)\};", source("core/bench/field.hpp"), re.S).group(1))
check("fields", sorted(field_names) == sorted(defs["entries"]["properties"]))

unit_rows = re.findall(r'\{UnitId::\w+, Measure::(\w+), "([^"]*)"', source("core/quantity/unit_table.cpp"))
keys = {}
for measure, key in unit_rows:
    if key:
        keys.setdefault(measure, []).append(key)
check("units of answers", sorted(k for group in keys.values() for k in group)
      == sorted(defs["answers"]["additionalProperties"]["properties"]["unit"]["enum"]))
used = set()
rows = re.search(r"field_infos\{\{(.*?)\}\};", source("core/bench/entry.cpp"), re.S).group(1)
for measure, field in re.findall(r"Measure::(\w+), .*?// (\w+)", rows):
    name = defs["entries"]["properties"][field]["$ref"].rsplit("/", 1)[1]
    typed = field_names.index(field) < field_names.index("metal")
    check(f"{field} is measured in {measure}", name == (measure if measure != "number" else "plain_number" if typed else field))
    used.add(name)
for measure in sorted(used & set(keys)):
    check(f"units of {measure}", sorted(defs[measure]["properties"]["unit"]["enum"]) == sorted(keys[measure]))

# The choices among the entries, in the order of the sources; none chosen is a choice too.
lists = "".join(source(f"core/{file}") for file in ("bench/apparatus.hpp", "matter/gas.hpp", "matter/reaction.hpp", "bench/entry.cpp"))
in_sources = [[""] + strings(body) for body in re.findall(r"(?:names|acids|masses|ends|stands|pressures|moist)\{(.*?)\};", lists, re.S)]
targets = defs["target_name"]["enum"]
check("choices of target", ["", *targets] in in_sources)
for field in field_names[field_names.index("metal"):]:
    if field not in ("target", "second_metal"):
        check(f"choices of {field}", defs[field]["properties"]["text"]["enum"] in in_sources)
metals = strings(re.search(r"substance_names\{(.*?)\};", lists, re.S).group(1))[:6]
check("choices of second_metal", defs["second_metal"]["properties"]["text"]["enum"] == ["", *metals])
check("choices of the record's apparatus", ["", *schema["properties"]["apparatus"]["enum"]] in in_sources)

names = source("core/record/convention_names.hpp") + source("core/result/conventions.hpp")
conventions = defs["conventions"]["properties"]
tables = [strings(body) for body in re.findall(r"(?:names|standard_conditions_names)\{(.*?)\};", names, re.S)]
for name, rule in conventions.items():
    if name == "pressure_unit":
        check(name, sorted(rule["enum"]) == sorted(["as_typed", *keys["pressure"]]))
    elif "enum" in rule:
        check(f"choices of {name}", rule["enum"] in tables)
check("every choice of the sources is in the schema",
      all(table in [rule.get("enum") for rule in conventions.values()] for table in tables))
# What came later is missing in the fixture, which never changes.
check("the fixture holds every convention", set(conventions) - {"volume_unit"} <= set(fixture["conventions"]))
check("the fixture holds every member", set(schema["properties"]) <= set(fixture))

print(f"{passed} passed, {failed} failed")
raise SystemExit(failed != 0)
