# Copyright 2026 the Ohmstead authors.
# SPDX-License-Identifier: Apache-2.0
"""A capture from the disk to its figures, as tone.py has it: the reference of the row "analysis".

Arguments: volts per full scale, and files of captures. Several files are done at once, each by a process of its own.
"""

import multiprocessing
import sys

import tone
import turns


def figures(path):
    found = {}
    for number, channel in enumerate(tone.capture(path, SCALE)):
        for name, value in channel.items():
            found["%s.%d" % (name, number)] = value
    return found


SCALE = float(sys.argv[1])
FILES = sys.argv[2:]

if __name__ == "__main__":
    if len(FILES) == 1:
        turns.serve(lambda: figures(FILES[0]), figures(FILES[0]))
    else:
        with multiprocessing.Pool(len(FILES)) as pool:
            turns.serve(lambda: pool.map(figures, FILES, 1), pool.map(figures, FILES, 1)[0])
