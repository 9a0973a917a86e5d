"""Where a source of the core can be changed, for tools/mutate: a constant, a sign, a condition, a unit."""
import dataclasses
import re

# What is no code: comments, texts, single characters, lines for the preprocessor, static assertions.
NO_CODE = re.compile(
    r"//[^\n]*|/\*.*?\*/|R\"(\w*)\(.*?\)\1\"|\"(?:\\.|[^\"\\\n])*\"|(?<![\w'])'(?:\\.|[^'\\\n])+'"
    r"|^[ \t]*#(?:\\\n|[^\n])*|\bstatic_assert\s*\([^;]*;", re.S | re.M)

NUMBER = re.compile(r"(?<![\w.'])(\d[\d']*(?:\.\d+)?(?:[eE][+-]?\d+)?)(?:[uUlLfF]*)(?![\w.'])")
SIGNS = {" + ": " - ", " - ": " + ", " * ": " / ", " / ": " * ", " += ": " -= ", " -= ": " += ", "++": "--"}
SIGN = re.compile("|".join(re.escape(sign) for sign in SIGNS))
MINUS = re.compile(r"(?:(?<=[(\[{])|(?<=return )|(?<== )|(?<=, )|(?<=\? )|(?<=: ))-(?=[\w(])")
COMPARISONS = {" < ": " <= ", " <= ": " < ", " > ": " >= ", " >= ": " > ", " == ": " != ", " != ": " == ", " && ": " || ",
               " || ": " && "}
COMPARISON = re.compile("|".join(re.escape(sign) for sign in COMPARISONS))
CONDITION = re.compile(r"\b(?:if|while) \(")

# Units that one is taken for another of, by the names of core/quantity.
UNITS = [
    ["kilogram", "gram", "milligram"],
    ["metre", "centimetre", "millimetre", "inch", "foot"],
    ["litre", "millilitre", "microlitre"],
    ["pascal", "hectopascal", "kilopascal", "bar", "atmosphere", "torr", "inch_of_mercury", "pound_per_square_inch"],
    ["celsius", "kelvin", "fahrenheit"],
    ["kilogram_per_cubic_metre", "gram_per_millilitre"],
    ["mole", "millimole"],
    ["gram_per_metre", "gram_per_centimetre"],
]
SAME_MEASURE = {unit: [other for other in units if other != unit] for units in UNITS for unit in units}
# Only as a constant: behind `UnitId::`, or as the factor or argument that it is.
UNIT = re.compile(r"(?<=UnitId::)(\w+)|(?<![\w.:])(\w+)(?=\.factor|\)|,| \*)")
# Here units are defined and not used: their constants and rows are changed as numbers.
DEFINES_UNITS = {"core/quantity/unit_table.hpp", "core/quantity/units.hpp"}


@dataclasses.dataclass
class Site:
    """A place and what may stand there instead."""
    path: str
    kind: str
    at: int
    line: int
    before: str
    choices: list
    after: str = ""

    def with_change(self, draw):
        return dataclasses.replace(self, after=draw.choice(self.choices))

    def applied_to(self, text):
        return text[:self.at] + self.after + text[self.at + len(self.before):]

    def __str__(self):
        return f"{self.path}:{self.line}: {self.kind}: `{self.before.strip()}` -> `{self.after.strip()}`"


def other_numbers(text):
    """The number with one of its first five significant digits changed; a small whole number is one more or less."""
    mantissa = re.match(r"[\d.']+", text).group()
    if re.fullmatch(r"\d{1,2}", mantissa):
        number, rest = int(mantissa), text[len(mantissa):]
        return [str(other) + rest for other in (number + 1, number - 1) if other >= 0]
    first = re.search("[1-9]", mantissa)
    if not first:
        return []
    places = [i for i, c in enumerate(mantissa) if c.isdigit() and i >= first.start()][:5]
    return [text[:i] + str((int(text[i]) + step) % 10) + text[i + 1:] for i in places for step in (1, 9)]


def closing(code, opened):
    """Where the bracket that is opened at `opened` is closed."""
    depth = 0
    for at in range(opened, len(code)):
        depth += (code[at] == "(") - (code[at] == ")")
        if depth == 0:
            return at
    return None


def sites_of(path, text):
    code = NO_CODE.sub(lambda match: re.sub(r"[^\n]", "\x01", match.group()), text)
    sites = []

    def add(kind, at, before, choices):
        if choices:
            sites.append(Site(path, kind, at, code.count("\n", 0, at) + 1, before, choices))

    for match in NUMBER.finditer(code):
        add("constant", match.start(1), match.group(1), other_numbers(match.group(1)))
    for match in SIGN.finditer(code):
        add("sign", match.start(), match.group(), [SIGNS[match.group()]])
    for match in MINUS.finditer(code):
        add("sign", match.start(), "-", [""])
    for match in COMPARISON.finditer(code):
        add("condition", match.start(), match.group(), [COMPARISONS[match.group()]])
    for match in CONDITION.finditer(code):
        end = closing(code, match.end() - 1)
        inner = text[match.end():end]
        # A condition that declares something cannot be put into brackets.
        if end and ";" not in inner and not re.search(r"[^=!<>]=[^=]", inner):
            add("condition", match.end(), inner, [f"!({inner})"])
    for match in UNIT.finditer(code):
        if path not in DEFINES_UNITS:
            add("unit", match.start(), match.group(), SAME_MEASURE.get(match.group(), []))
    return sites
