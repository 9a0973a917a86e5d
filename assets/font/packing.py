"""Packs two weights of a font into two rows of bytes, which web/draw/packed_font.cpp unpacks.

One has the tables that are kept as they are. The other is a list of numbers (number_writer.py): the lengths of these, then
an entry for each glyph. An entry has the glyph of both weights where these agree in everything but places: the heavier one's points are
then written as shifts of the lighter one's. Where they do not agree there are two entries.

What a number may depend on, and what it may well be, has to be the same here and in the C++.
"""
from number_writer import NumberWriter

KEPT_TABLES = ["OS/2", "head", "hhea", "maxp", "name", "post"]
GRID = 2  # outlines lie on every second unit; advances on every one
REGULAR, SEMIBOLD, BOTH = 1, 2, 3

# Kinds of numbers, and for each whether there is a guess and on what it may depend (number_writer.py). More of that would
# pack better and take longer to unpack.
KINDS = {
    "length": "0,",
    "character": "0F,",  # F: from the one before to that before it
    "weights": "0qr,",  # q: of the one before; r: whether the character is 0
    "shape": "0,Qw,",  # Q: weights; w: character/16
    "points": "0G,HG,",  # G: number of the contour; H: how many there are
    "on_curve": "0o,ptul,",  # o, p: of the three and the two points before; l: points left, up to three
    "y_step": "1ftul,fvt,",  # f: on the curve or not, three points; t, u: last turns; v: last y step
    "x_step": "1ftuls,fd,",  # d: this y step, s: its sign
    "y_shift": "1nij,",  # i, j: turns in and out; n: what is likely
    "x_shift": "1nij,",
    "part": "0a,ag,",  # a: number of the part; g: the entry in its place last time
    "part_y": "1a,ae,b,",  # e: its entry; b: that of the first part
    "part_x": "1a,ae,b,",
    "part_y_shift": "1a,ae,b,",
    "part_x_shift": "1a,ae,b,",
    "advance": "1D,",  # D: whether composed
    "advance_shift": "0D,E,",  # E: regular's advance - what was expected
}


def on_grid(font):
    """Moves the outlines, and the parts of composed glyphs, to the grid."""
    def near(v):
        return (v + GRID // 2) // GRID * GRID

    glyphs = font["glyf"]
    for name in font.getGlyphOrder():
        glyph = glyphs[name]
        if glyph.isComposite():
            for part in glyph.components:
                part.x, part.y = near(part.x), near(part.y)
        elif glyph.numberOfContours > 0:
            for i, (x, y) in enumerate(glyph.coordinates):
                glyph.coordinates[i] = near(x), near(y)


class Entry:
    """A glyph for one character, or a part of others. `forms`: the glyph of each weight that has it."""

    def __init__(self, character, name, weights, forms):
        self.character, self.name, self.weights, self.forms = character, name, weights, forms


def alike(name, fonts):
    """Whether the glyph has the same contours, points and parts in both fonts."""
    a, b = (font["glyf"][name] for font in fonts)
    if a.isComposite() != b.isComposite():
        return False
    if a.isComposite():
        return ([part.glyphName for part in a.components] == [part.glyphName for part in b.components]
                and all(alike(part.glyphName, fonts) for part in a.components))
    if a.numberOfContours <= 0 or b.numberOfContours <= 0:
        return a.numberOfContours == b.numberOfContours
    return (list(a.endPtsOfContours) == list(b.endPtsOfContours)
            and [flag & 1 for flag in a.flags] == [flag & 1 for flag in b.flags])


def entries(fonts):
    """Glyph 0, what is part of others and no character in one of the fonts, then the characters in order."""
    maps = [font.getBestCmap() for font in fonts]
    orders = [set(font.getGlyphOrder()) for font in fonts]
    plain = set().union(*(order - set(characters.values()) for order, characters in zip(orders, maps))) - {".notdef"}
    wanted = [(0, name, name) for name in [".notdef", *sorted(plain)]]
    wanted += [(c, maps[0].get(c), maps[1].get(c)) for c in sorted(maps[0].keys() | maps[1].keys())]
    found = []
    for character, *names in wanted:
        there = [name in order for name, order in zip(names, orders)]
        if all(there) and names[0] == names[1] and alike(names[0], fonts):
            found.append(Entry(character, names[0], BOTH, [font["glyf"][names[0]] for font in fonts]))
            continue
        for weight, font, name, here in zip((REGULAR, SEMIBOLD), fonts, names, there):
            if here:
                found.append(Entry(character, name, weight, [font["glyf"][name]]))
    return found


def place(found, name, weights):
    """The first entry that has the glyph in all these weights."""
    return next(i for i, entry in enumerate(found) if entry.name == name and entry.weights & weights == weights)


def sign(v):
    return (v > 0) - (v < 0)


def turn(x, y):
    return sign(x) * 3 + sign(y)


class Packer:
    def __init__(self):
        self.stream = NumberWriter(KINDS.values())
        self.known = self.stream.known
        self.seen_shift = [{}, {}]  # of a coordinate: glyph and shift

    def number(self, kind, value, guess=0):
        self.stream.number(list(KINDS).index(kind), value, guess)

    def length(self, length):
        self.number("length", length)

    def entries(self, fonts, found):
        self.length(len(found))
        alone = [(entry, entry.forms[0]) for i, entry in enumerate(found) if place(found, entry.name, entry.weights) == i]
        self.length(sum(len(glyph.coordinates) for _, glyph in alone if glyph.numberOfContours > 0))
        self.length(sum(len(glyph.components) for _, glyph in alone if glyph.isComposite()) + len(found) - len(alone))
        character, weights, step = 0, BOTH, 0
        self.parts_before, self.offset_before, self.advance_before = [0] * 8, [0] * 4, 0
        for number, entry in enumerate(found):
            before, step = step, entry.character - character - 1
            self.known["F"] = before
            self.number("character", step)
            self.known.update(q=weights, r=int(entry.character == 0))
            self.number("weights", entry.weights)
            character, weights = entry.character, entry.weights
            self.known.update(Q=weights, w=character // 16)
            glyph = entry.forms[0]
            used = [fonts[w - 1] for w in (REGULAR, SEMIBOLD) if entry.weights & w]
            advances = [font["hmtx"][entry.name][0] for font in used]
            composed = True
            if (same := place(found, entry.name, entry.weights)) != number:
                parts = [(same, [(0, 0) for _ in used])]
            elif glyph.isComposite():
                parts = [(place(found, forms[0].glyphName, entry.weights), [(p.x // GRID, p.y // GRID) for p in forms])
                         for forms in zip(*(form.components for form in entry.forms))]
            else:
                composed = False
            if composed:
                self.number("shape", -len(parts))
                self.parts(parts)
                expected = [font["hmtx"][found[parts[0][0]].name][0] if parts[0][0] < number else 0 for font in used]
            else:
                count = max(glyph.numberOfContours, 0)
                self.number("shape", count)
                points = self.contours(number, entry.forms) if count else []
                expected = [min(xs) + max(xs) if (xs := [p[1][w] * GRID for p in points]) else 0
                            for w in range(len(used))]
            self.advances(composed, advances, expected)

    def parts(self, parts):
        for k, (target, offsets) in enumerate(parts):
            self.known.update(a=k, g=self.parts_before[k], e=target, b=parts[0][0] if k else -1)
            self.number("part", target - self.parts_before[k])
            self.parts_before[k] = target
            now = [offsets[0][1], offsets[0][0]]
            if len(offsets) == 2:
                now += [offsets[1][1] - now[0], offsets[1][0] - now[1]]
            for kind, value, guess in zip(("part_y", "part_x", "part_y_shift", "part_x_shift"), now, self.offset_before):
                self.number(kind, value, guess)
            if k:
                self.offset_before = now + self.offset_before[len(now):]

    def advances(self, composed, advances, expected):
        rest = advances[0] - expected[0]
        self.known.update(D=int(composed), E=rest)
        self.number("advance", rest, self.advance_before - expected[0])
        if len(advances) == 2:
            self.number("advance_shift", advances[1] - expected[1] - rest)
        self.advance_before = advances[0]

    def contours(self, number, forms):
        """Returns [on-curve, [x of each weight], [y of each weight]] for each point."""
        glyph = forms[0]
        points, first, y, x = [], 0, 0, 0
        for i, end in enumerate(glyph.endPtsOfContours):
            count = end + 1 - first
            self.known.update(G=i, H=glyph.numberOfContours)
            self.number("points", count)
            contour = [[glyph.flags[j] & 1, *([f.coordinates[j][axis] // GRID for f in forms] for axis in (0, 1))]
                       for j in range(first, end + 1)]
            y, x = self.contour(contour, y, x)
            if len(forms) == 2:
                self.shifts(number, contour)
            points += contour
            first = end + 1
        return points

    def contour(self, contour, y, x):
        on, turned, turned_before, step_y = 7, 0, 0, 0
        for k, (now, xs, ys) in enumerate(contour):
            left = min(len(contour) - k, 3)
            self.known.update(o=on, p=on & 3, t=turned, u=turned_before, l=left)
            self.number("on_curve", now)
            on = (on << 1 | now) & 7
            dy, dx = ys[0] - y, xs[0] - x
            # Many a curve comes back to where it began, or to where it was four points ago.
            back_y, back_x = (contour[0][2][0] - y, contour[max(k - 4, 0)][1][0] - x) if k else (0, 0)
            self.known.update(f=on if k else 8, v=step_y, d=dy, s=sign(dy))
            self.number("y_step", dy, back_y)
            self.number("x_step", dx, back_x)
            turned, turned_before = turn(dx, dy), turned
            step_y, y, x = dy, ys[0], xs[0]
        return y, x

    def shifts(self, number, contour):
        shift = [0, 0]
        for k, (now, xs, ys) in enumerate(contour):
            last, after = contour[k - 1], contour[(k + 1) % len(contour)]
            x, y = xs[0], ys[0]
            steps_in, steps_out = (x - last[1][0], y - last[2][0]), (after[1][0] - x, after[2][0] - y)
            self.known.update(i=turn(*steps_in), j=turn(*steps_out))
            for axis, kind, at, value in ((1, "y_shift", y, ys[1] - y), (0, "x_shift", x, xs[1] - x)):
                seen = self.seen_shift[axis].get(at)
                likely = seen[1] if seen and (axis or seen[0] == number) else shift[axis]
                self.known["n"] = likely
                self.number(kind, value - likely, shift[axis] - likely)
                self.seen_shift[axis][at] = number, value
                shift[axis] = value


def kept_table(font, tag):
    data = font.getTableData(tag)
    if tag == "head":
        data = data[:8] + bytes(4) + data[12:]  # the sum over the whole file
    if tag == "hhea":
        data = data[:-2] + len(font.getGlyphOrder()).to_bytes(2, "big")  # each glyph has an advance of its own
    return data


def packed(plain_fonts, fonts, found):
    """The kept tables of both fonts, and the numbers. `fonts`: both weights, on the grid; `plain_fonts`: the same without
    composed glyphs, for the kept tables; `found`: their entries()."""
    packer = Packer()
    tables = [kept_table(font, tag) for font in plain_fonts for tag in KEPT_TABLES]
    for table in tables:
        packer.length(len(table))
    packer.entries(fonts, found)
    packer.length(sum(len(font.getGlyphOrder()) for font in plain_fonts))
    packer.length(sum(len(glyphs[name].coordinates) for glyphs in (font["glyf"] for font in plain_fonts)
                      for name in glyphs.keys() if glyphs[name].numberOfContours > 0))
    return b"".join(tables), packer.stream.finished()
