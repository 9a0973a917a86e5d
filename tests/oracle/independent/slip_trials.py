"""Trials of the slip search: single slips by row, random pairs, and right answers by accepted routes."""

import collections

from independent.invented_runs import Invented
from independent.right_routes import bands, one_route
from independent.run_facts import KPA, UNITS
from independent.slip_names import last_line, read_table, thinkable
from independent.slip_search import (answer, equal_by_number, explanations, half_unit, numbers, places, same, si,
                                     text_of)
from independent.wrong_ways import SOUGHT, steps

NOT_COMPUTABLE = {12, 21, 31, 32, 33, 34, 35}
ROWS = set(range(1, 37)) - NOT_COMPUTABLE
RECORDS = 120
EACH = 5       # records a slip is tried in
PAIRS = 500
RIGHT = 1000
FIRST_STEP = {
    "volume": "gas_volume", "reading": "gas_volume", "volume_scale": "gas_volume", "vapour": "water_vapour_pressure",
    "vapour_use": "dry_gas_pressure", "barometer": "dry_gas_pressure", "column": "dry_gas_pressure",
    "column_size": "column_pressure", "mass": "amount_of_metal", "molar_mass": "amount_of_metal",
    "amount": "amount_of_metal", "gas_ratio": "amount_of_gas", "circular": "amount_of_gas",
    "accepted": "accepted_value",
}
POSITIVE = ("gas_volume", "dry_gas_pressure", "amount_of_metal", "amount_of_gas", "molar_volume_bench",
            "molar_volume_standard", "gas_constant", *SOUGHT.values())
GIVEN = ("gas_volume", "dry_gas_pressure", "amount_of_gas")


class Case:
    """An invented run with its right steps, what right work reaches, and each single slip's steps."""

    def __init__(self, rng, number, table, made=None, routes=3000):
        made = made or Invented(rng)
        self.run, self.record = made.run, made.record
        self.right = steps(self.run)
        self.bands = bands(self.run, number, routes)
        self.singles = {}
        for name, slip in table.items():
            if thinkable(slip, self.run) and (out := self.possible({name})) is not None:
                if any(not same(out[line], self.right[line], 1e-12) for line in out):
                    self.singles[name] = out

    def possible(self, slips):
        try:
            out = {line: float(value) for line, value in steps(self.run, frozenset(slips)).items()}
        except (ArithmeticError, ValueError):
            return None
        return out if all(out.get(line, 1) > 0 for line in POSITIVE) else None

    def can_be_right(self, line, given, wider=0.0):
        """Whether right work, rounded to as many figures, may have come to this answer."""
        low, high = self.bands[line]
        more, half = wider * (high - low), half_unit(given)
        # Rounded to the same place, the ends of the band move by up to half a unit.
        ends = [round(end / half / 2) * half * 2 for end in (low - more, high + more, float(self.right[line]))]
        return min(ends) - 0.01 * half <= si(given) <= max(ends) + 0.01 * half


class Pool:
    def __init__(self, rng):
        self.table = read_table()
        self.cases = [Case(rng, number, self.table) for number in range(RECORDS)]
        self.differing = {}
        self.compared = 0

    def compare_values(self, case, line, found):
        """The program's own value of each explanation beside ours."""
        for e in explanations(found):
            ours = numbers(case.run, e["slips"], [line])
            self.compared += 1
            if ours is None or not (same(ours[0], e["value"], 1e-8) or abs(ours[0] - e["value"]) < 1e-12):
                self.differing.setdefault(" + ".join(e["slips"]), (line, ours, e["value"]))

    def check_values(self, checks):
        checks.that(self.compared > 0 and not self.differing,
                    f"values of {len(self.differing)} explanations differ: {dict(list(self.differing.items())[:6])}")
        print(f"values of explanations compared: {self.compared}, slip sets differing: {len(self.differing)}")

    def question(self, case, name, line):
        """The answer in this line of a person who made the slip, and why it tells nothing; both are nothing where the slip
        does not show in the line."""
        value = case.singles[name][line]
        if same(value, float(case.right[line]), 1e-12):
            return None, None
        given = answer(line, value, 4, case.run)
        if case.can_be_right(line, given):
            return given, "in the band"
        text = text_of(value, 4)
        for other, out in case.singles.items():
            if other != name and text_of(out[line], 4) == text and not same(out[line], value) and (
                    self.table[other].commonness >= self.table[name].commonness):
                return given, "digits of a commoner slip"
        return given, None


class RowTrials:
    def __init__(self, pool, asker, rng):
        self.pool, self.asker = pool, asker
        self.asked = []
        self.apart = collections.Counter()
        for name, slip in pool.table.items():
            self.choose(name, slip, pool, rng)
        self.confusion = collections.defaultdict(collections.Counter)
        self.passed = self.failed = self.edge = 0

    def choose(self, name, slip, pool, rng):
        cases = [case for case in pool.cases if name in case.singles]
        rng.shuffle(cases)
        left = EACH
        for own_step in (False, True):
            for case in cases:
                line = FIRST_STEP.get(slip.axis) if own_step else last_line([slip], case.run)
                if left == 0 or line is None:
                    break
                given, why = pool.question(case, name, line)
                if why:
                    self.apart[name, why] += 1
                if given is None or why:
                    continue
                self.asked.append((slip, case, line, given, asker_index(self.asker, case, [given])))
                left -= 1

    def judge(self, checks):
        tested = set()
        for slip, case, line, given, index in self.asked:
            found = self.asker[index]
            self.pool.compare_values(case, line, found)
            if found["kind"].startswith("right") and case.can_be_right(line, given, 0.25):
                self.edge += 1
                continue
            tested.add(slip.row)
            first = [e for place, e in places(found) if place == 1]
            good = any(e["slips"] == [slip.name] for e in first) and all(
                e["slips"] == [slip.name] or equal_by_number(case.run, e["slips"], [slip.name], [line])
                or self.same_text(case, line, given, e) for e in first)
            shown = first[0]["slips"] if first else [found["kind"]]
            rows = "+".join(str(self.pool.table[n].row) if n in self.pool.table else n for n in shown)
            if rows != str(slip.row) and any(e["slips"] == [slip.name] for e in first):
                rows += " (sharing the place)"
            self.confusion[slip.row][rows] += 1
            self.passed += good
            self.failed += not good
            checks.that(good, f"row {slip.row}, {slip.name}: {line} {given['text']} {given['unit']}: {found['kind']}, "
                              f"first {[e['slips'] for e in explanations(found)][:4]}")
        for row in sorted(ROWS):
            checks.that(row in tested, f"row {row} of the mistakes has no test")

    def same_text(self, case, line, given, e):
        ours = numbers(case.run, e["slips"], [line])
        return len(e["slips"]) == 1 and ours is not None and answer(line, ours[0], 4, case.run)["text"] == given["text"]

    def report(self):
        print(f"rows: {self.passed} of {self.passed + self.failed} first; at the edge of the band {self.edge}")
        never = sorted(set(self.pool.table) - {slip.name for slip, *_ in self.asked})
        print("  not tried, in the band or with the digits of a commoner one in every record:", *never or ["none"])
        print("  apart:", ", ".join(f"{name} {why} {n}" for (name, why), n in sorted(self.apart.items())))

    def matrix(self):
        lines = ["row of the slip made: row of the first explanation, how often"]
        for row in sorted(self.confusion):
            counts = self.confusion[row]
            own = set(counts) == {str(row)}
            listed = ", ".join(f"{other} x {n}" for other, n in counts.most_common())
            lines.append(f"{row}: {listed}" + ("  all of its own row" if own else ""))
        return lines


def asker_index(asker, case, answers):
    return asker.ask(case.record, answers)


class PairTrials:
    """Random pairs, drawn by how common each slip is."""
    # Figures of the answers, whether steps before are given too, and the share that has to be found.
    LEVELS = {"4 figures": (4, False, 0.95), "3 figures": (3, False, 0.80), "3 figures, steps given": (3, True, 0.95)}

    def __init__(self, pool, asker, rng):
        self.pool, self.asker = pool, asker
        self.asked = {level: [] for level in self.LEVELS}
        self.apart = {level: collections.Counter() for level in self.LEVELS}
        self.results = {}
        count = 0
        while count < PAIRS:
            case = rng.choice(pool.cases)
            pair = self.draw(case, rng)
            if pair is None:
                continue
            names, line, out = pair
            count += 1
            for level, (figures, with_steps, _) in self.LEVELS.items():
                self.put(level, case, names, line, out, figures, with_steps)

    def draw(self, case, rng):
        table = self.pool.table
        names = list(case.singles)
        first = rng.choices(names, [table[n].commonness for n in names])[0]
        others = [n for n in names if table[n].axis != table[first].axis]
        second = rng.choices(others, [table[n].commonness for n in others])[0]
        line = last_line([table[first], table[second]], case.run)
        out = case.possible({first, second})
        if line is None or out is None:
            return None
        others = [float(case.right[line]), case.singles[first][line], case.singles[second][line]]
        if any(same(out[line], other) for other in others):
            return None
        return frozenset((first, second)), line, out

    def put(self, level, case, names, line, out, figures, with_steps):
        lines = [step for step in GIVEN if with_steps] + [line]
        answers = [answer(step, out[step], figures, case.run) for step in lines]
        if case.can_be_right(line, answers[-1]):
            self.apart[level]["in the band of right answers"] += 1
            return
        for single in case.singles.values():
            if [answer(step, single[step], figures, case.run) for step in lines] == answers:
                self.apart[level]["given by one slip alone"] += 1
                return
        self.asked[level].append((case, names, lines, answers, asker_index(self.asker, case, answers)))

    def judge(self, checks):
        for level, (_, _, share) in self.LEVELS.items():
            found_at = collections.Counter()
            missed = []
            for case, names, lines, answers, index in self.asked[level]:
                found = self.asker[index]
                if len(lines) == 1:
                    self.pool.compare_values(case, lines[0], found)
                if found["kind"].startswith("right") and case.can_be_right(lines[-1], answers[-1], 0.25):
                    self.apart[level]["at the edge of the band"] += 1
                    continue
                place = next((place for place, e in places(found) if set(e["slips"]) == names or len(e["slips"]) <= 2
                              and equal_by_number(case.run, e["slips"], names, lines)), None)
                found_at[place if place is not None and place <= 3 else "later" if place else "missed"] += 1
                if place is None or place > 3:
                    missed.append((" + ".join(sorted(names)), [e["slips"] for e in explanations(found)][:3]))
            total = sum(found_at.values())
            good = sum(found_at[place] for place in (1, 2, 3))
            self.results[level] = (good, total, found_at, missed)
            checks.that(total > 0 and good >= share * total, f"pairs at {level}: {good} of {total}, {share:.0%} wanted")

    def report(self):
        for level, (good, total, found_at, missed) in self.results.items():
            percent = 100 * good / total if total else 0
            print(f"pairs at {level}: {good} of {total} among the first three, {percent:.1f} %;", dict(found_at),
                  "apart:", dict(self.apart[level]))
            for names, first in missed[:6]:
                print("   missed:", names, "found:", first)


class RightTrials:
    def __init__(self, pool, asker, rng):
        self.pool, self.asker = pool, asker
        self.asked = []
        self.counts = collections.Counter()
        for number in range(RIGHT):
            case = rng.choice(pool.cases)
            line = rng.choice(["molar_volume_standard" if case.run.converted else "molar_volume_bench"] * 6 +
                              ["percent_error"] * 3 + ["gas_constant"])
            unit = rng.choice([UNITS[case.run.barometer_unit], KPA])
            out = steps(case.run, (), one_route(rng, case.run, unit, line == "percent_error"))
            for figures in (3, 4):
                self.asked.append((case, line, "", self.ask(case, out, [line], figures, unit)))
            given = [step for step in GIVEN if rng.random() < 0.7]
            if line == "percent_error" and rng.random() < 0.5:
                given.append("molar_volume_standard" if case.run.converted else "molar_volume_bench")
            asked = self.ask(case, out, given + [line], rng.choice([3, 4]), unit)
            self.asked.append((case, line, ", steps given", asked))

    def ask(self, case, out, lines, figures, unit):
        answers = [answer(line, out[line], figures, case.run) for line in lines]
        for given in answers:
            if given["step"] == "dry_gas_pressure" and unit == KPA:
                given.update(text=text_of(out["dry_gas_pressure"] / KPA, figures), unit="kPa")
        return asker_index(self.asker, case, answers), answers

    def judge(self, checks):
        for case, line, how, (index, answers) in self.asked:
            found = self.asker[index]
            good = found["kind"] in ("right", "right_by_route")
            self.counts[line + how, "right" if good else "accused"] += 1
            first = [e["slips"] for e in explanations(found)][:2]
            texts = [f"{given['step']} {given['text']} {given['unit']}" for given in answers]
            checks.that(good, f"right answer accused: {texts}, plainly {float(case.right[line]):g}: {found['kind']} "
                              f"{first}")

    def report(self):
        print("right answers:", ", ".join(f"{line} {kind} {n}" for (line, kind), n in sorted(self.counts.items())))
