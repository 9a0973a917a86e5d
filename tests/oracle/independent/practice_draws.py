"""Codes of practice runs and what is drawn from them, for compare_practice.py: whole numbers only."""

MASK = (1 << 64) - 1
ALPHABET = "0123456789ACDEFGHJKMNPQRTVWXY"


def split_mix(word):
    word = ((word ^ word >> 30) * 0xBF58476D1CE4E5B9) & MASK
    word = ((word ^ word >> 27) * 0x94D049BB133111EB) & MASK
    return word ^ word >> 31


class Draws:
    """xoshiro256+ 1.0 (Blackman and Vigna), filled by SplitMix64."""

    def __init__(self, seed):
        self.state = []
        for _ in range(4):
            seed = (seed + 0x9E3779B97F4A7C15) & MASK
            self.state.append(split_mix(seed))

    def word(self):
        s = self.state
        result = (s[0] + s[3]) & MASK
        t = (s[1] << 17) & MASK
        s[2] ^= s[0]
        s[3] ^= s[1]
        s[1] ^= s[2]
        s[0] ^= s[3]
        s[2] ^= t
        s[3] = ((s[3] << 45) | (s[3] >> 19)) & MASK
        return result

    def whole(self, low, high):
        return low + ((self.word() >> 32) * (high - low + 1) >> 32)

    def triangle(self, half):
        first = self.whole(0, half)
        return first - self.whole(0, half)


def encode(c):
    value = 0
    for digit, count in ((c["version"] - 1, None), (c["seed"], 10000), (c["difficulty"], 3), (c["mishap"], 2),
                         (c["release"], 3), (c["standard"], 5), (c["vapour"], 3)):
        value = digit if count is None else value * count + digit
    value = value * 841 + c["student"]
    symbols = [value // 29**k % 29 for k in range(6, -1, -1)]
    for x in range(29):
        for y in range(29):
            nine = symbols + [x, y]
            if sum(nine) % 29 == 3 and sum(i * s for i, s in enumerate(nine, 1)) % 29 == 1:
                text = "".join(ALPHABET[s] for s in nine)
                return text[:5] + "-" + text[5:]
    raise AssertionError


def decode(code):
    symbols = [ALPHABET.index(c) for c in code.replace("-", "")]
    assert len(symbols) == 9
    value = 0
    for symbol in symbols[:7]:
        value = value * 29 + symbol
    value, student = divmod(value, 841)
    value, vapour = divmod(value, 3)
    value, standard = divmod(value, 5)
    value, release = divmod(value, 3)
    value, mishap = divmod(value, 2)
    value, difficulty = divmod(value, 3)
    version, seed = divmod(value, 10000)
    return dict(version=version + 1, seed=seed, difficulty=difficulty, mishap=mishap, release=release,
                standard=standard, vapour=vapour, student=student)


def word_of(c):
    value = (c["version"] - 1) * 10000 + c["seed"]
    for name, count in (("difficulty", 3), ("mishap", 2), ("release", 3), ("standard", 5), ("vapour", 3)):
        value = value * count + c[name]
    bits = split_mix(value * 841 + c["student"] + 1)
    word = ""
    for _ in range(3):
        bits, consonant = divmod(bits, 8)
        bits, vowel = divmod(bits, 4)
        word += "bdlmnrtv"[consonant] + "aeio"[vowel]
    return word


MISHAPS = [  # name, sizes, one run, sign
    ("air_bubble", 140, 200, True, 1), ("gas_lost", 150, 250, True, -1), ("metal_left", 40, 150, True, -1),
    ("oxide_coat", 30, 50, False, -1), ("wet_metal", 40, 90, True, -1), ("balance_off", 40, 90, True, 0),
    ("gas_warm", 50, 100, True, 1), ("hot_liquid", 60, 140, False, -1), ("levels_not_equal", 1600, 2000, True, 1),
    ("end_space_off", 120, 150, False, 0), ("sea_level_pressure", 300, 1200, False, 1)]


class Bench:
    def __init__(self, c):
        d = Draws(((c["version"] * 3 + c["difficulty"]) * 10000 + c["seed"]) * 841 + c["student"])
        tube, stands, mass, barometer, metal, acid, units, start, runs, purity = (
            d.whole(0, most) for most in (7, 7, 7, 7, 5, 3, 5, 3, 5, 2))
        self.metal, self.acid = "magnesium", "hydrochloric"
        self.inverted, self.stands, self.mass_from = False, "level", "weighed"
        self.kind, self.fahrenheit, self.cm, self.coarse = "at_the_bench", False, False, False
        self.start = self.bore_given = self.purity_given = False
        if c["difficulty"] == 0:
            self.capacity = 50 if tube < 4 else 100
            self.air = "hPa" if barometer < 4 else "kPa"
            count = 1
        elif c["difficulty"] == 1:
            self.inverted = tube < 6
            self.capacity = 100 if tube == 7 else 50
            self.stands = ["higher_inside"] * 5 + ["level"] * 2 + ["higher_outside"]
            self.stands = self.stands[stands]
            self.mass_from = "ribbon" if mass >= 6 else "weighed"
            self.air = ["hPa", "hPa", "hPa", "kPa", "kPa", "mmHg", "mmHg", "mmHg"][barometer]
            count = [1, 1, 1, 1, 2, 2][runs]
        else:
            self.metal = ["magnesium", "zinc", "aluminium"][metal // 2]
            if acid == 0 and self.metal != "aluminium":
                self.acid = "sulfuric"
            self.inverted = True
            self.capacity = 50 if tube < 5 else 100
            self.start, self.bore_given = start < 2, start == 2
            self.stands = "higher_inside" if self.start or stands < 6 else "higher_outside"
            self.mass_from = "by_difference" if mass < 4 else "weighed"
            self.air = ["inHg", "inHg", "mmHg", "mmHg", "report inHg"] + ["report hPa"] * 3
            self.air = self.air[barometer]
            self.kind = ["at_the_bench"] * 4 + ["altimeter_setting"] * 2 + ["reduced_to_sea_level"] * 2
            self.kind = self.kind[barometer]
            self.fahrenheit, self.cm = units in (0, 3), units in (0, 2, 4)
            self.coarse = True
            self.purity_given = purity == 0
            count = [1, 1, 2, 2, 3, 3][runs]
        self.step = 2 if self.capacity == 100 else 1
        pure = d.whole(960, 995)
        self.purity = pure if self.purity_given else 1000
        self.temperature, self.temperature_error = d.whole(175, 265), d.triangle(3)
        self.pressure, self.pressure_error = d.whole(97500, 103200), d.triangle(80)
        self.height, self.outdoor = 10 * d.whole(5, 150), d.whole(2, 28)
        self.end_space, self.end_space_error = d.whole(150, 300), d.triangle(8)
        self.bore = d.whole(105, 112) + (38 if self.capacity == 100 else 0)
        self.mass_per_metre, self.ribbon_error = d.whole(85, 125), d.triangle(60)
        strong = d.whole(0, 1)
        self.strength = {("hydrochloric", 0): "2.0", ("hydrochloric", 1): "3.0", ("sulfuric", 0): "1.0",
                         ("sulfuric", 1): "1.5"}[self.acid, strong]
        self.runs = [self.draw_run(d) for _ in range(count)]
        self.cause = None
        if c["mishap"]:
            self.draw_mishap(d)

    def draw_run(self, d):
        run = dict(share=d.whole(630, 870))
        level = d.whole(0, 1000)
        below = (6000 if self.capacity == 100 else 5500) * (1000 - run["share"]) // 1000
        most = 600 if self.stands == "higher_outside" else min(1800, below * 17 // 20)
        run["level"] = 320 + (most - 320) * level // 1000 if self.stands != "level" else 0
        run["level_error"], run["dissolved"] = d.triangle(8), d.whole(10, 60)
        run["weighing_error"], run["length_error"] = d.triangle(100), d.triangle(2)
        run["scale_error"], run["dish"] = d.triangle(8), d.whole(120000, 360000)
        run["start_gas"], run["start_level"] = d.whole(50, 250), 1500 + 1400 * d.whole(0, 1000) // 1000
        run["start_level_error"] = d.triangle(8)
        return run

    def draw_mishap(self, d):
        possible = []
        for row in MISHAPS:
            name = row[0]
            if name == "air_bubble" and (self.capacity != 50 or self.start):
                continue
            if name == "wet_metal" and (self.mass_from == "ribbon" or self.metal == "zinc"):
                continue
            if name == "balance_off" and (self.mass_from != "weighed" or self.metal == "zinc"):
                continue
            if name == "levels_not_equal" and self.stands != "level":
                continue
            if name == "end_space_off" and (not self.inverted or self.start or self.capacity != 50):
                continue
            if name == "sea_level_pressure" and (self.kind != "at_the_bench" or self.air == "mmHg"):
                continue
            possible.append(row)
        self.cause, low, high, one, self.sign = possible[d.whole(0, len(possible) - 1)]
        self.size = d.whole(low, high)
        run, way = d.whole(0, len(self.runs) - 1), d.whole(0, 1)
        self.run = run if one else -1
        if self.sign == 0:
            self.sign = 1 if way else -1
        if self.cause == "levels_not_equal":
            self.runs[run]["share"] = 630 + self.runs[run]["share"] % 40
