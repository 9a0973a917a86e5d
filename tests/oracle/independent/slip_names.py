"""The names of the slips with the mistake's row, the kind of step and the commonness, from the product's table. Numbers
of a calculation are never taken from there: what a slip gives is computed in wrong_ways.py."""

import pathlib
import re
import typing

TABLE = pathlib.Path(__file__).resolve().parents[3] / "core" / "lesson" / "slip_table.cpp"
ROW = re.compile(r'\{"(\w+)",\s*(\d+),\s*SlipPart::(\w+),\s*Output::(\w+),\s*offsetof\(Method,\s*(\w+)\),'
                 r'\s*byte\([^)]*\),\s*(\d+)\}')


class Slip(typing.NamedTuple):
    name: str
    row: int
    part: str
    axis: str
    commonness: int


def read_table(path=TABLE):
    found = ROW.findall(pathlib.Path(path).read_text(encoding="utf-8"))
    return {name: Slip(name, int(row), part, axis, int(commonness)) for name, row, part, _, axis, commonness in found}


def thinkable(slip, run):
    """Whether a person with such a run can go wrong in this way; that it changes something is seen from its numbers."""
    name = slip.name
    at_start = run.start is not None
    if slip.axis == "volume" and name != "injected_ignored":
        if name == "counted_from_capacity":
            return run.zero_closed and run.capacity is not None and not at_start
        if name == "end_space_added_to_difference":
            return at_start and run.end_space is not None and not run.zero_closed
        if name == "start_ignored":
            return at_start or run.bubble is not None
        return not run.zero_closed and not at_start and (run.end_space is not None or name.startswith("reading"))
    if slip.axis == "barometer" and "_as_" in name:
        unit = {"inch": "inHg", "millimetre": "mmHg", "kilopascal": "kPa", "hectopascal": "hPa"}[name.split("_")[1]]
        return run.barometer_unit == unit and run.pressure_kind != "altimeter_setting"
    if name == "barometer_not_reduced":
        return run.pressure_kind != "at_the_bench"
    if slip.axis in ("column", "column_size"):
        return run.stands != "level"
    if name == "mass_nominal_ribbon":
        return run.ribbon is not None
    if name == "injected_ignored":
        return False
    if name == "share_of_the_other":
        return run.target in ("purity", "alloy")
    if name == "equivalent_not_halved":
        return run.target == "equivalent_mass"
    if run.target not in ("molar_volume", "gas_constant") and slip.axis in ("circular", "amount"):
        return False
    if name == "molar_mass_of_manganese":
        return run.metal == "magnesium"
    if name == "accepted_at_standard":
        return not run.converted
    if name == "accepted_other_pressure":
        return run.converted
    if name == "celsius_both":
        return run.standard_celsius != 0
    if name == "millimetre_with_atmosphere" or name == "gas_constant_tenfold":
        return True
    if slip.axis in ("conversion", "standard"):
        return run.converted
    return True


def last_line(slips, run):
    """The last line in which these slips show; None where no line shows all of them."""
    comparison = any(slip.part == "comparison" for slip in slips)
    law = any(slip.axis == "gas_law" for slip in slips)
    if comparison and law:
        return None
    if comparison:
        return "percent_error"
    if law:
        return "gas_constant"
    return "molar_volume_standard" if run.converted else "molar_volume_bench"
