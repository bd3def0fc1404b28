# Copyright 2026 the Ohmstead authors.
# SPDX-License-Identifier: Apache-2.0
"""The joint fit of power against supply voltage with SciPy, for comparison.

Reads lines "volts ohms_per_channel channels watts uncertainty" from the standard input. Prints parameters, standard
errors, correlations, chi squared, and for the predictions at 13 V into 4 ohm and at 16 V into 2 ohm bridged the power
and its standard error; with an argument N also the best and the middle of N times in seconds of
the whole, without and with an analytic Jacobian.
"""

import sys
import time

import numpy as np
from scipy.optimize import curve_fit

PLACES = np.array([(13.0, 4.0, 1.0), (16.0, 1.0, 2.0)]).T


def power(x, g, s, o):
    volts, ohms, channels = x
    return channels * ohms * np.maximum(0, g * volts - s) ** 2 / (2 * (ohms + o) ** 2)


def slopes(x, g, s, o):
    volts, ohms, channels = x
    unloaded = np.maximum(0, g * volts - s)
    per_volt = channels * ohms * unloaded / (ohms + o) ** 2
    return np.stack([per_volt * volts, -per_volt, -per_volt * unloaded / (ohms + o)], axis=1)


def fit(data, jac=None):
    x = data[:, :3].T
    p, c = curve_fit(
        power, x, data[:, 3], (2.5, 2.0, 0.05), data[:, 4], absolute_sigma=True, jac=jac,
        xtol=1e-13, ftol=1e-13, gtol=1e-13)
    j = slopes(PLACES, *p)
    return p, c, power(PLACES, *p), np.sqrt(np.einsum("ij,jk,ik->i", j, c, j))


def timed(data, runs, jac):
    times = []
    for _ in range(runs):
        start = time.perf_counter()
        fit(data, jac)
        times.append(time.perf_counter() - start)
    return min(times), np.median(times)


def main():
    data = np.loadtxt(sys.stdin)
    p, c, watts, errors = fit(data, slopes)
    chi = np.sum(((data[:, 3] - power(data[:, :3].T, *p)) / data[:, 4]) ** 2)
    e = np.sqrt(np.diag(c))
    r = c / np.outer(e, e)
    numbers = [*p, *e, r[0, 1], r[0, 2], r[1, 2], chi, watts[0], errors[0], watts[1], errors[1]]
    print(" ".join("%.12g" % number for number in numbers))
    if len(sys.argv) > 1:
        runs = int(sys.argv[1])
        print("%.9g %.9g %.9g %.9g" % (*timed(data, runs, None), *timed(data, runs, slopes)))


main()
