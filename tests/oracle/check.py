"""Counts checks and prints the line `N passed, N failed`."""

import sys


class Checks:
    def __init__(self):
        self.passed = 0
        self.failed = 0

    def that(self, condition, message):
        if condition:
            self.passed += 1
        else:
            self.failed += 1
            if self.failed <= 20:
                print("FAILED:", message)

    def close(self, found, expected, tolerance, message):
        """`tolerance` is absolute; a NaN never passes."""
        self.that(abs(found - expected) <= tolerance, f"{message}: found {found!r}, expected {expected!r} +- {tolerance:g}")

    def finish(self):
        print(f"{self.passed} passed, {self.failed} failed")
        sys.exit(0 if self.failed == 0 and self.passed > 0 else 1)
