# Copyright 2026 the Ohmstead authors.
# SPDX-License-Identifier: Apache-2.0
"""Straightforward memoised enumerator, for the benchmark only.

For each subset of the resistors it makes the array of the distinct values of all series-parallel networks of just these, from all
splits of the subset into two; the answer is the nearest value over all subsets of up to the given number of parts.

Arguments: target in ohms, most parts, values in ohms. Prints the nearest value, the seconds taken, those of the processor, and how many values there were.
"""

import itertools
import sys
import time

import numpy


def values_of(subset, ohms, memo):
    if len(subset) == 1:
        return numpy.array([ohms[subset[0]]])
    found = []
    first, rest = subset[0], subset[1:]
    for size in range(len(rest)):
        for chosen in itertools.combinations(rest, size):
            left = memo[(first,) + chosen][:, None]
            right = memo[tuple(index for index in rest if index not in chosen)][None, :]
            total = left + right
            found.append(total.ravel())
            found.append((left * right / total).ravel())
    return numpy.unique(numpy.concatenate(found))


def main():
    target, most = float(sys.argv[1]), int(sys.argv[2])
    ohms = [float(text) for text in sys.argv[3:]]
    start = time.perf_counter()
    processor_start = time.process_time()
    memo = {}
    best = numpy.inf
    count = 0
    for size in range(1, most + 1):
        for subset in itertools.combinations(range(len(ohms)), size):
            values = values_of(subset, ohms, memo)
            if size < most:
                memo[subset] = values
            count += len(values)
            nearest = values[numpy.argmin(numpy.abs(values - target))]
            if abs(nearest - target) < abs(best - target):
                best = nearest
    print(repr(float(best)), time.perf_counter() - start, time.process_time() - processor_start, count)


main()
