#!/usr/bin/python3
"""Compares the fonts that the page unpacks with those that fontTools made of the same outlines: each table that is kept,
the map from characters to glyphs, advances and outlines. Then with Source Sans 3 itself: no point is off by more than one
unit of 1000 an em, no advance at all.

usage: compare_font.py PATH_OF_PRINT_FONT
"""

import io
import pathlib
import subprocess
import sys

from fontTools.ttLib import TTFont

from check import Checks

checks = Checks()
TOP = pathlib.Path(__file__).parents[2]
FAMILY = TOP / "node_modules/@expo-google-fonts/source-sans-3"
SOURCES = ["400Regular/SourceSans3_400Regular.ttf", "600SemiBold/SourceSans3_600SemiBold.ttf"]


def outline(font, name):
    """Contours of a glyph, each a list of (x, y, on-curve)."""
    points, ends, flags = font["glyf"][name].getCoordinates(font["glyf"])
    contours, first = [], 0
    for end in ends:
        contours.append([(*points[i], flags[i] & 1) for i in range(first, end + 1)])
        first = end + 1
    return contours


def sum_of(data):
    data += bytes(-len(data) % 4)
    return sum(int.from_bytes(data[i:i + 4], "big") for i in range(0, len(data), 4)) % 2**32


def compare(found, expected, name):
    made, wanted = TTFont(io.BytesIO(found), checkChecksums=2), TTFont(expected)
    checks.that(sum_of(found) == 0xB1B0AFBA, f"{name}: sum of the file")
    for tag in ("OS/2", "hhea", "maxp", "name", "post", "head"):
        ours, theirs = made.getTableData(tag), wanted.getTableData(tag)
        if tag == "head":
            ours, theirs = (data[:8] + data[12:] for data in (ours, theirs))
        if tag == "hhea":
            ours, theirs = ours[:-2], theirs[:-2]  # how many advances are written out
        checks.that(ours == theirs, f"{name}: table {tag}")
    checks.that(made.getBestCmap().keys() == wanted.getBestCmap().keys(), f"{name}: characters")
    checks.that(len(made.getGlyphOrder()) == len(wanted.getGlyphOrder()), f"{name}: number of glyphs")
    pairs = [(0, ".notdef", ".notdef")] + [(c, made.getBestCmap()[c], g) for c, g in wanted.getBestCmap().items()]
    for character, ours, theirs in pairs:
        what = f"{name}, U+{character:04X}"
        checks.that(outline(made, ours) == outline(wanted, theirs), f"{what}: outline")
        checks.that(made["hmtx"][ours] == wanted["hmtx"][theirs], f"{what}: advance and left side")
    return made


def compare_with_source(made, source, name):
    theirs = source.getBestCmap()
    for character, glyph in made.getBestCmap().items():
        what = f"{name}, U+{character:04X} and Source Sans"
        checks.that(made["hmtx"][glyph][0] == source["hmtx"][theirs[character]][0], f"{what}: advance")
        ours, original = outline(made, glyph), outline(source, theirs[character])
        checks.that([[p[2] for p in c] for c in ours] == [[p[2] for p in c] for c in original], f"{what}: points")
        off = max((max(abs(p[0] - q[0]), abs(p[1] - q[1])) for c, d in zip(ours, original) for p, q in zip(c, d)), default=0)
        # A part of an accented letter is moved to the grid, and then its points.
        most = 2 if source["glyf"][theirs[character]].isComposite() else 1
        checks.that(off <= most, f"{what}: a point is off by {off} units")


def main():
    if len(sys.argv) != 2:
        sys.exit(__doc__)
    generated = pathlib.Path(sys.argv[1]).parents[1] / "include/generated"
    for weight, name in enumerate(["regular", "semibold"]):
        found = subprocess.run([sys.argv[1], str(weight)], capture_output=True, check=True).stdout
        made = compare(found, generated / f"overwater-sans-{name}.ttf", name)
        compare_with_source(made, TTFont(FAMILY / SOURCES[weight]), name)
    checks.finish()


main()
