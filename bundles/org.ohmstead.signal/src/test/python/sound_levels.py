# Copyright 2026 the Ohmstead authors.
# SPDX-License-Identifier: Apache-2.0
"""Sound levels with SciPy, by another way than Ohmstead's: analogue poles of IEC 61672-1 (annex E) made digital by the bilinear
transform at eight times the sample rate, and recursive filters for the exponential averages.

Arguments: file of 64-bit big-endian samples in pascals, sample rate, weighting (A, C or Z). Prints Leq, the highest F and S levels and the
C-weighted peak in dB re 20 micropascals, all without the first quarter of a second.
"""

import sys

import numpy as np
from scipy import signal

OVERSAMPLING = 8
LEFT_OUT_SECONDS = 0.25
samples = np.fromfile(sys.argv[1], dtype=">f8").astype(float)
rate = float(sys.argv[2]) * OVERSAMPLING
samples = samples - samples.mean()
left_out = round(LEFT_OUT_SECONDS * rate)
fine = signal.resample_poly(samples, OVERSAMPLING, 1, window=("kaiser", 14.0))

reference, low, high, weighting_low = 1000.0, 10**1.5, 10**3.9, 10**2.45
root = np.sqrt(0.5)
c = low**2 * high**2
b = (1 / (1 - root)) * (reference**2 + c / reference**2 - root * (low**2 + high**2))
f1 = np.sqrt((-b - np.sqrt(b * b - 4 * c)) / 2)
f4 = np.sqrt((-b + np.sqrt(b * b - 4 * c)) / 2)
f2 = (3 - np.sqrt(5)) / 2 * weighting_low
f3 = (3 + np.sqrt(5)) / 2 * weighting_low


def weighted(kind):
    if kind == "Z":
        return fine[left_out:]
    poles = [f1, f1, f4, f4] + ([f2, f3] if kind == "A" else [])
    zeros = np.zeros(4 if kind == "A" else 2)
    poles = -2 * np.pi * np.array(poles)
    _, response = signal.freqs_zpk(zeros, poles, 1.0, worN=[2 * np.pi * 1000])
    sections = signal.zpk2sos(*signal.bilinear_zpk(zeros, poles, 1 / abs(response[0]), rate))
    return signal.sosfilt(sections, fine)[left_out:]


def level(square):
    return 10 * np.log10(square / 20e-6**2)


wave = weighted(sys.argv[3])
squares = wave**2
found = [level(squares.mean())]
for seconds in (0.125, 1.0):
    kept = np.exp(-1 / (rate * seconds))
    found.append(level(signal.lfilter([1 - kept], [1, -kept], squares).max()))
found.append(level((weighted("C") ** 2).max()))
print(" ".join("%.9f" % value for value in found))
