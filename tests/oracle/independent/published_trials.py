"""Published wrong answers: each of the slips named is first shown to give the answer, then asked for."""

from independent.published_slips import PUBLISHED
from independent.run_facts import record_json, run_of
from independent.slip_search import explanations, half_unit, places, si
from independent.wrong_ways import Route, steps

# As mg-hs-1998-46or45 went.
COARSE = Route(zero=273.0, figures={"amount_of_metal": 3, "amount_of_gas": 3, "volume_at_standard": 4})


def shown_by(entries, conventions, answers, slips):
    """The largest distance of an answer from what the slips give, in halves of its last digit; by the exact way or the
    coarse one."""
    run = run_of(entries, conventions)
    if run.celsius is None:  # V/n as collected: the room was not written down
        run.celsius, run.barometer = 20.0, 1e5
    best = None
    for route in (Route(), COARSE):
        out = steps(run, frozenset(slips), route)
        out["mass"] = (run.mass if run.mass is not None else run.ribbon * run.line_density) * (
            1e-3 if "mass_thousandth" in slips else 1.0)
        worst = max(abs(float(out[a["step"]]) - si(a)) / half_unit(a) for a in answers)
        best = worst if best is None else min(best, worst)
    return best


class PublishedTrials:
    def __init__(self, asker):
        self.asker = asker
        self.asked = []
        for name, entries, conventions, published, slips, remark in PUBLISHED:
            answers = [{"step": line, "text": text, "unit": unit} for line, text, unit in published]
            index = asker.ask(record_json(entries, conventions), answers)
            self.asked.append((name, answers, slips, shown_by(entries, conventions, answers, slips), index))
        self.lines = []

    def judge(self, checks):
        for name, answers, slips, distance, index in self.asked:
            last = answers[-1]
            what = f"{name}: {last['step']} {last['text']} {last['unit']} by {' + '.join(sorted(slips))}"
            checks.that(distance <= 1 + 1e-9, f"{what}: the slip itself is {distance:g} half digits off")
            found = self.asker[index]
            named = [place for place, e in places(found) if set(e["slips"]) == slips]
            first = [" + ".join(e["slips"]) for e in explanations(found)][:3]
            checks.that(bool(named) and named[0] <= 3, f"{what}: {found['kind']}, first {first}")
            self.lines.append(f"  {what}: place {named[0] if named else 'none'}")

    def report(self):
        print("published answers")
        print("\n".join(self.lines))
