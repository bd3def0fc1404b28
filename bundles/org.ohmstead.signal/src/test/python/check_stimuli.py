# Copyright 2026 the Ohmstead authors.
# SPDX-License-Identifier: Apache-2.0
"""An independent look at test signals with NumPy and SciPy.

Reads lines "how path numbers..." from the standard input and prints a line "name=value ..." for each. Levels are in dBFS with
0 for a sine at full scale (AES17); noise figures are of 20 Hz to 20 kHz.
"""

import sys

import numpy as np
from scipy import signal
from scipy.io import wavfile


def samples(path):
    rate, data = wavfile.read(path)
    # SciPy gives 24-bit samples in the upper bytes of 32.
    full = {np.dtype(np.int16): 2.0**15, np.dtype(np.int32): 2.0**31, np.dtype(np.float32): 1.0}[data.dtype]
    return rate, data.astype(float) / full


def db(ratio):
    return 20 * np.log10(ratio)


def common(x):
    rms = np.sqrt(np.mean(x**2))
    return {"rms": db(rms * np.sqrt(2)), "peak": db(np.max(np.abs(x))), "crest": np.max(np.abs(x)) / rms}


def lines(x, rate, count):
    """The strongest lines of a record of whole cycles, and what else there is in the band over them."""
    power = np.abs(np.fft.rfft(x) / len(x)) ** 2 * 4
    power[0] = 0
    hertz = np.fft.rfftfreq(len(x), 1 / rate)
    strongest = np.sort(np.argsort(power)[-count:])
    band = (hertz >= 20) & (hertz <= 20000)
    band[strongest] = False
    rest = np.sqrt(np.sum(power[band]) / np.sum(power[strongest]))
    found = {"rest": db(rest)}
    for number, k in enumerate(strongest):
        found["hz%d" % number] = hertz[k]
        found["db%d" % number] = 10 * np.log10(power[k])
    return found


def tones(rate, x, count):
    return common(x) | lines(x, rate, int(count))


def bursts(rate, x, on, period):
    n_on, n_period = round(on * rate), round(period * rate)
    whole = x[: len(x) // n_period * n_period].reshape(-1, n_period)
    loud, low = whole[:, :n_on], whole[:, n_on:]
    rms = lambda part: db(np.sqrt(np.mean(part**2)) * np.sqrt(2))
    inside = lines(loud[3], rate, 1)
    return common(x) | {"on": rms(loud), "low": rms(low), "hz": inside["hz0"], "rest": inside["rest"]}


def steps(rate, x, seconds):
    n = round(seconds * rate)
    found = [lines(x[i : i + n], rate, 1) for i in range(0, len(x), n)]
    hertz = np.array([each["hz0"] for each in found])
    level = np.array([each["db0"] for each in found])
    octaves = np.diff(np.log2(hertz))
    return common(x) | {
        "count": len(found), "first": hertz[0], "last": hertz[-1], "low": level.min(), "high": level.max(),
        "rest": max(each["rest"] for each in found), "narrow": octaves.min(), "wide": octaves.max()}


def sweep(rate, x, first, last, seconds, fade_in, fade_out, level):
    t = np.arange(len(x)) / rate
    ideal = 10 ** (level / 20) * signal.chirp(t, first, seconds, last, method="logarithmic", phi=-90)
    inside = (t > fade_in) & (t < seconds - fade_out)
    difference = (x - ideal)[inside]
    return common(x) | {"rest": db(np.std(difference) / np.std(ideal[inside]))}


def pink(rate, x, low, high):
    hertz, density = signal.welch(x, rate, nperseg=1 << 16)
    ends = 1000 * 2.0 ** np.arange(-5, 4.5, 1 / 3)
    middles = np.sqrt(ends[1:] * ends[:-1])
    bands = [np.mean(density[(hertz >= a) & (hertz < b)]) for a, b in zip(ends[:-1], ends[1:])]
    octaves = np.log2(middles)
    slope, offset = np.polyfit(octaves, 10 * np.log10(bands), 1)
    worst = np.max(np.abs(10 * np.log10(bands) - slope * octaves - offset))
    power = np.abs(np.fft.rfft(x)) ** 2
    lines_hertz = np.fft.rfftfreq(len(x), 1 / rate)
    outside = (lines_hertz < low * 0.999) | (lines_hertz > high * 1.001)
    return common(x) | {
        "slope": slope, "worst": worst, "outside": 10 * np.log10(np.sum(power[outside]) / np.sum(power))}


HOW = {"tones": tones, "bursts": bursts, "steps": steps, "sweep": sweep, "pink": pink}


def main():
    for line in sys.stdin:
        how, path, *numbers = line.split()
        rate, x = samples(path)
        found = HOW[how](rate, x, *map(float, numbers))
        print(" ".join("%s=%.12g" % each for each in found.items()))


main()
