#!/usr/bin/python3
"""Works practice runs out again, from their codes alone: code, generator, rules and physics written a second time, in
decimal arithmetic of 40 digits, so that readings which hang on the last bits of a double would differ.

usage: compare_practice.py PATH_OF_PRINT_PRACTICE [SEEDS]
       compare_practice.py --golden     prints the rows of tests/core/practice_golden.cpp
"""

import subprocess
import sys

from check import Checks
from independent.practice_draws import decode, encode, word_of
from independent.practice_shown import lines_of


def golden():
    """Twenty codes of all kinds."""
    for i in range(20):
        settings = dict(version=1, seed=[0, 9999, 4711, 1234, 2718][i % 5], difficulty=[0, 1, 2, 1, 2][i // 4],
                        mishap=i % 2, release=i % 3, standard=i % 5, vapour=i // 5 % 3, student=[0, 1, 17, 840][i % 4])
        code = encode(settings)
        words = lines_of(code)[0].replace(";", ",;").split(",")
        print(f'    {{"{code}",')
        row, rows = "", []
        for k, part in enumerate(words):
            piece = part + ("," if k + 1 < len(words) and not words[k + 1].startswith(";") else "")
            if len(row) + len(piece) > 105:
                rows.append(row)
                row = ""
            row += piece
        rows.append(row)
        print("\n".join(f'     "{r}"' for r in rows) + "},")


def main():
    if sys.argv[1:] == ["--golden"]:
        golden()
        return
    if len(sys.argv) < 2:
        sys.exit(__doc__)
    checks = Checks()
    for line in subprocess.run(sys.argv[1:], capture_output=True, text=True, check=True).stdout.splitlines():
        code, truth, dials, word = line.split("|")
        settings = decode(code)
        checks.that(encode(settings) == code, f"{code}: the code of its settings is {encode(settings)}")
        checks.that(word_of(settings) == word, f"{code}: word {word}, expected {word_of(settings)}")
        expected_truth, expected_dials = lines_of(code)
        checks.that(truth == expected_truth, f"{code}: readings\n  {truth}\nexpected\n  {expected_truth}")
        checks.that(dials == expected_dials, f"{code}: dials\n  {dials}\nexpected\n  {expected_dials}")
    checks.finish()


if __name__ == "__main__":
    main()
