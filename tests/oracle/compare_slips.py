#!/usr/bin/python3
"""Wrong answers, computed step by step without any code of the product, go to the program that finds the slip: for each
row of the collection of mistakes, for random pairs, for right answers by accepted routes, and for published answers.

usage: compare_slips.py PATH_OF_PRINT_SLIPS
"""

import pathlib
import random
import sys

from check import Checks
from independent.last_line_trials import LastLineTrials
from independent.published_trials import PublishedTrials
from independent.slip_search import Asker
from independent.slip_trials import PairTrials, Pool, RightTrials, RowTrials

SEED = 20260131
MATRIX = pathlib.Path(__file__).resolve().parents[2] / "build" / "slip_confusion.txt"


def main():
    checks = Checks()
    asker = Asker(sys.argv[1])
    rng = random.Random(SEED)
    pool = Pool(rng)
    trials = [RowTrials(pool, asker, rng), PairTrials(pool, asker, rng), RightTrials(pool, asker, rng),
              PublishedTrials(asker), LastLineTrials(pool, asker, rng)]
    code, complaint = asker.run()
    checks.that(code == 0, f"the program ended with {code}: {complaint}")
    checks.that(len(asker.found) == len(asker.lines), f"{len(asker.found)} answers to {len(asker.lines)} questions")
    for trial in trials:
        trial.judge(checks)
        trial.report()
    lines = trials[0].matrix()
    if MATRIX.parent.is_dir():
        MATRIX.write_text("\n".join(lines) + "\n", encoding="utf-8")
    else:
        print("\n".join(line for line in lines if not line.endswith("all of its own row")))
    pool.check_values(checks)
    checks.finish()


main()
