#!/usr/bin/python3
"""Makes the two fonts of the page from Source Sans 3 Regular and SemiBold (SIL Open Font License 1.1).

Usage: recipe.py REGULAR.ttf SEMIBOLD.ttf FOLDER

writes font_data.hpp and font_data.cpp into FOLDER: both fonts, packed. web/draw unpacks them, for the canvas and, as
TrueType files, for the browser. The same two files are written here as well, for the tests to compare with. Canvas and
browser have to agree on every advance and line height, so:

* ascender - descender is 1 em in hhea and OS/2 (Dear ImGui takes that sum for the font's size, a browser takes the em);
* no kerning, substitutions or hints: Dear ImGui knows none of them;
* digits, plus and minus share one advance, so columns of figures stand still;
* only the characters of `WANTED` stay;
* outlines lie on every second unit of 1000 an em (off by 0.016 px at 16 px at the most), which is 2 kB less to load;
  advances keep theirs, as an error in them adds up along a line;
* accented letters are outlines of their own in the files, although they are packed as parts.

The font is changed, so by its license it may not keep the reserved name "Source": it is called Overwater Sans.
"""
import copy
import pathlib
import sys

from fontTools import subset
from fontTools.ttLib import TTFont
from fontTools.ttLib.tables._c_m_a_p import CmapSubtable
from fontTools.ttLib.tables._g_l_y_f import Glyph

sys.path.insert(0, str(pathlib.Path(__file__).parents[2] / "tools"))
import packing  # noqa: E402
from cpp_literal import write_file  # noqa: E402

# Source Sans has ascender 1.024 em and descender -0.4 em; both ends lose the same, so the baseline stays where designers
# of line heights expect it. At 16 px the parts are 13 and 3 whole pixels.
ASCENDER, DESCENDER = 812, -188

WANTED = "".join([
    "".join(map(chr, range(0x20, 0x7F))),  # Basic Latin
    "".join(map(chr, range(0xA0, 0x100))),  # Latin-1
    "ŒœŠšŽžŸŁłĆćČčŃńŚśŹźŻżŘřŐőŰűĞğİıŞşẞ",  # of Latin Extended-A what names in class lists have most
    "ΔΣΩαβγδεζηθλμνπρσςτφω",  # Greek of formulas
    "⁰⁴⁵⁶⁷⁸⁹⁺⁻⁼⁽⁾ⁿ₀₁₂₃₄₅₆₇₈₉₊₋₌₍₎ₐₑₒₓₙₘₚₛₜ",  # raised and lowered
    "←→↑↓↔⇌",  # arrows
    "−×÷·±≤≥≈≠∝∞√∑∂∫∆∘µ‰°′″⁄⋅∙",  # signs of arithmetic
    "–—‑‘’‚“”„…•‹›†",  # punctuation
    "▲△▶▸▼▽▾◀◂✓✗●○■□◆",  # marks
    "ℓ℃№€™",
    "\u2002\u2003\u2007\u2008\u2009\u200a\u202f",  # en, em, figure, punctuation, thin, hair and narrow no-break space
    "\ufffd",
])
# Headings, results and the page one is on: texts of our own, never a person's, so only what our languages need.
WANTED_SEMIBOLD = "".join([
    "".join(map(chr, range(0x20, 0x7F))),
    "".join(map(chr, range(0xA0, 0x100))),
    "ŒœŸ₀₁₂₃₄₅₆₇₈₉⁰⁴⁵⁶⁷⁸⁹⁻−×·±≤≥≈°′″–—‘’‚“”„…→ρΔ",
    "\u2007\u2009\u202f\ufffd",
])
SAME_ADVANCE = "0123456789+−±\u2007"
NAMES_KEPT = {0, 13, 14}  # copyright, license, address of the license


def reduced(source, wanted):
    """The changed font, and the wanted characters that the source does not have."""
    font = TTFont(source)
    available = font.getBestCmap()
    missing = [c for c in dict.fromkeys(wanted) if ord(c) not in available]

    options = subset.Options()
    options.layout_features = []
    options.hinting = False
    options.glyph_names = False
    options.notdef_outline = True
    options.name_IDs = sorted(NAMES_KEPT)
    options.drop_tables += ["GPOS", "GSUB", "GDEF", "BASE", "STAT", "kern", "gasp", "DSIG"]
    worker = subset.Subsetter(options)
    worker.populate(unicodes=[ord(c) for c in wanted])
    worker.subset(font)

    characters, advances = font.getBestCmap(), font["hmtx"]
    widths = {advances[characters[ord(c)]][0] for c in SAME_ADVANCE if ord(c) in characters}
    if len(widths) != 1:
        sys.exit(f"recipe: digits and signs of {source} have several advances: {sorted(widths)}")

    line, system = font["hhea"], font["OS/2"]
    line.ascent, line.descent, line.lineGap = ASCENDER, DESCENDER, 0
    system.sTypoAscender, system.sTypoDescender, system.sTypoLineGap = ASCENDER, DESCENDER, 0
    system.usWinAscent, system.usWinDescent = ASCENDER, -DESCENDER
    style = "SemiBold" if system.usWeightClass >= 600 else "Regular"
    names = font["name"]
    for number, text in {1: "Overwater Sans", 2: style, 4: f"Overwater Sans {style}",
                         6: f"OverwaterSans-{style}"}.items():
        names.setName(text, number, 3, 1, 0x409)
    font["head"].modified = font["head"].created  # the same bytes at every build
    return font, missing


def plain(font, found, weight, target):
    """Saves the font with an outline for each character and no composed glyphs, in the order of `found`, and returns it."""
    glyphs, advances = font["glyf"], font["hmtx"].metrics
    outlines, order, metrics, characters = {}, [], {}, {}
    for entry in found:
        if not entry.weights & weight or entry.character == 0 and order:
            continue
        name = f"u{entry.character:04X}" if order else ".notdef"
        points, ends, flags = glyphs[entry.name].getCoordinates(glyphs)
        outline = outlines[name] = Glyph()
        outline.numberOfContours = len(ends)
        if len(ends):
            outline.coordinates, outline.endPtsOfContours, outline.flags = points, list(ends), flags
            outline.program = glyphs[".notdef"].program
            outline.recalcBounds(glyphs)
        metrics[name] = advances[entry.name][0], outline.xMin if len(ends) else 0
        if order:
            characters[entry.character] = name
        order.append(name)
    font.setGlyphOrder(order)
    glyphs.glyphs, glyphs.glyphOrder = outlines, order
    font["hmtx"].metrics = metrics
    table = CmapSubtable.newSubtable(4)
    table.platformID, table.platEncID, table.language, table.cmap = 3, 1, 0, characters
    font["cmap"].tables = [table]
    font.recalcTimestamp = False
    font.save(target)
    return TTFont(target)


def cpp_array(name, data):
    lines = [",".join(map(str, data[i:i + 32])) for i in range(0, len(data), 32)]
    return f"const unsigned char overwater_font_{name}[] = {{\n" + ",\n".join(lines) + "};\n"


def main(regular, semibold, folder):
    folder = pathlib.Path(folder)
    folder.mkdir(parents=True, exist_ok=True)
    names, fonts = ["regular", "semibold"], []
    for source, wanted in (regular, WANTED), (semibold, WANTED_SEMIBOLD):
        font, missing = reduced(source, wanted)
        packing.on_grid(font)
        fonts.append(font)
        print(f"{pathlib.Path(source).name}: {len(font.getBestCmap())} characters; not in the source: "
              + " ".join(c if c.isprintable() and not c.isspace() else f"U+{ord(c):04X}" for c in missing))
    found = packing.entries(fonts)
    files = [folder / f"overwater-sans-{name}.ttf" for name in names]
    copies = [plain(copy.deepcopy(font), found, weight, file) for font, weight, file in zip(fonts, (1, 2), files)]
    tables, data = packing.packed(copies, fonts, found)
    print(f"{sum(file.stat().st_size for file in files)} bytes in two files, {len(data)} packed and {len(tables)} of tables")
    write_file(folder / "font_data.hpp", """// Written by assets/font/recipe.py.
#pragma once

namespace overwater {

/// Overwater Sans, two weights, as web/draw/packed_font.hpp unpacks them.
extern const unsigned char overwater_font_tables[];
extern const unsigned char overwater_font_packed[];
/// On what each kind of number in them may depend (assets/font/packing.py), with a semicolon behind each.
extern const char overwater_font_contexts[];
/// Of both weights, in units of 1000 an em, up from the baseline.
constexpr int overwater_font_ascender = """ + str(ASCENDER) + """;
constexpr int overwater_font_descender = """ + str(DESCENDER) + """;

} // namespace overwater
""")
    contexts = "".join(text + ";" for text in packing.KINDS.values())
    write_file(folder / "font_data.cpp", '// Written by assets/font/recipe.py.\n#include "generated/font_data.hpp"\n\n'
               "namespace overwater {\n\n" + cpp_array("tables", tables) + cpp_array("packed", data)
               + f'const char overwater_font_contexts[] = "{contexts}";\n\n}} // namespace overwater\n')


if __name__ == "__main__":
    if len(sys.argv) != 4:
        sys.exit(__doc__)
    main(*sys.argv[1:])
