# Copyright 2026 the Ohmstead authors.
# SPDX-License-Identifier: Apache-2.0
"""What all references share: they say their figures, then do their work as often as a line of the standard input says."""

import sys
import time


def serve(work, figures):
    """Prints the figures, then for each number read the seconds of so many calls of the work."""
    for name, value in figures.items():
        print("figure", name, repr(float(value)))
    print("ready", flush=True)
    for line in sys.stdin:
        seconds = []
        for _ in range(int(line)):
            start = time.perf_counter()
            work()
            seconds.append(time.perf_counter() - start)
        print("seconds", *map(repr, seconds), flush=True)
