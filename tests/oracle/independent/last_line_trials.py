"""Trials of the slip search for other last lines than the molar volume: each slip alone, and right answers."""

import collections

from independent.invented_runs import Invented
from independent.right_routes import one_route
from independent.run_facts import KPA, UNITS
from independent.slip_search import answer, equal_by_number, explanations, places
from independent.slip_trials import Case
from independent.wrong_ways import SOUGHT, steps

RECORDS = 25  # of each last line
EACH = 3      # records a slip is tried in
RIGHT = 60
ROUTES = 20000
# Random routes do not come to the ends that the worst of all roundings together reach: three figures of an amount that
# begins with 1 are half a per cent, and an alloy multiplies it. Within the width of the band once more nothing is asked.
EDGE = 1.0


class LastLineTrials:
    def __init__(self, pool, asker, rng):
        self.pool, self.asker = pool, asker
        self.asked, self.right = [], []
        self.counts = collections.Counter()
        for target in SOUGHT:
            cases = [Case(rng, number, pool.table, Invented(rng, target), ROUTES) for number in range(RECORDS)]
            for name in pool.table:
                self.choose(target, name, cases)
            for _ in range(RIGHT):
                self.work_rightly(target, rng.choice(cases), rng)

    def choose(self, target, name, cases):
        """A slip shows in the last line, or, where it is one of comparing, in the percent error."""
        slip = self.pool.table[name]
        line = "percent_error" if slip.axis == "percent_error" else SOUGHT[target]
        left = EACH
        for case in cases:
            if left == 0 or name not in case.singles or line not in case.right:
                continue
            given, why = self.pool.question(case, name, line)
            if why:
                self.counts[why] += 1
            if given is None or why:
                continue
            self.asked.append((target, name, case, line, given, self.asker.ask(case.record, [given])))
            left -= 1

    def work_rightly(self, target, case, rng):
        lines = [SOUGHT[target]] + (["percent_error"] if "percent_error" in case.right else [])
        line = rng.choice(lines)
        unit = rng.choice([UNITS[case.run.barometer_unit], KPA])
        out = steps(case.run, (), one_route(rng, case.run, unit, line == "percent_error"))
        given = answer(line, out[line], rng.choice([3, 4]), case.run)
        self.right.append((target, line, given, float(case.right[line]), self.asker.ask(case.record, [given])))

    def judge(self, checks):
        tried = collections.defaultdict(set)
        for target, name, case, line, given, index in self.asked:
            found = self.asker[index]
            self.pool.compare_values(case, line, found)
            if found["kind"].startswith("right") and case.can_be_right(line, given, EDGE):
                self.counts["at the edge of the band"] += 1
                continue
            first = [e for place, e in places(found) if place == 1]
            good = any(e["slips"] == [name] or equal_by_number(case.run, e["slips"], [name], [line]) for e in first)
            tried[target].add(name)
            checks.that(good, f"{target}, {name}: {line} {given['text']} {given['unit']}: {found['kind']}, first "
                              f"{[e['slips'] for e in explanations(found)][:4]}")
        for target in SOUGHT:
            checks.that(len(tried[target]) >= 40, f"{target}: {len(tried[target])} slips tried")
        for wanted in ("share_of_the_other", "equivalent_not_halved", "millimetre_with_atmosphere", "ratio_twice"):
            checks.that(any(wanted in names for names in tried.values()), f"{wanted} has no test")
        for target, line, given, plainly, index in self.right:
            found = self.asker[index]
            checks.that(found["kind"] in ("right", "right_by_route"),
                        f"right answer accused: {target}: {line} {given['text']} {given['unit']}, plainly {plainly:g}: "
                        f"{found['kind']} {[e['slips'] for e in explanations(found)][:2]}")

    def report(self):
        print(f"other last lines: {len(self.asked)} slips, {len(self.right)} right answers; apart:", dict(self.counts))
