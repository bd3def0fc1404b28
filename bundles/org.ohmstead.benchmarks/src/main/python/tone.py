# Copyright 2026 the Ohmstead authors.
# SPDX-License-Identifier: Apache-2.0
"""The full analysis of a captured tone in NumPy and SciPy, as somebody who knows both would write it.

The same job as ours: read a WAV file of 24 bits; per channel level, direct voltage and peak, the tone's frequency by a least-squares sine
fit with four parameters (IEEE 1057), the amplitude spectrum in volts RMS with a four-term Blackman-Harris window, harmonics up to the
20th within 20 kHz, THD, THD+N from 20 Hz to 20 kHz, and whether and how deeply the tops are clipped. One transform gives spectrum,
harmonics and noise; windows and other tables are kept from one record to the next.
"""

from functools import lru_cache

import numpy as np
import scipy.fft
from scipy.io import wavfile

BLACKMAN_HARRIS = (0.35875, 0.48829, 0.14128, 0.01168)
NOISE_BANDWIDTH_BINS = 1 + sum(a * a / 2 for a in BLACKMAN_HARRIS[1:]) / BLACKMAN_HARRIS[0] ** 2
HIGHEST_ORDER = 20
BAND_LOW_HZ, BAND_HIGH_HZ = 20.0, 20_000.0
EDGE = 1.001
PASSED_SHARE = 0.92
LOBE_BINS = 5


@lru_cache(maxsize=4)
def window(size):
    turn = 2 * np.pi * np.arange(size) / size
    a = BLACKMAN_HARRIS
    return a[0] - a[1] * np.cos(turn) + a[2] * np.cos(2 * turn) - a[3] * np.cos(3 * turn)


@lru_cache(maxsize=4)
def centred_times(size):
    return np.arange(size) - 0.5 * (size - 1)


def window_sum(offset_bins, size):
    """Sum of the window times exp(2 pi i offset k / size), in closed form."""

    def unweighted(offset):
        below = np.sin(np.pi * offset / size)
        safe = np.where(below == 0, 1, below)
        ratio = np.where(below == 0, size, np.sin(np.pi * offset) / safe)
        return ratio * np.exp(1j * np.pi * offset * (size - 1) / size)

    total = BLACKMAN_HARRIS[0] * unweighted(offset_bins)
    for j in range(1, 4):
        sign = -1 if j % 2 else 1
        total = total + sign * 0.5 * BLACKMAN_HARRIS[j] * (unweighted(offset_bins + j) + unweighted(offset_bins - j))
    return total


def read(path, volts_per_full_scale):
    """Returns the rate and one row of volts per channel."""
    rate, data = wavfile.read(path)
    # SciPy hands 24 bits over in the upper bits of 32.
    data = np.atleast_2d(data.T)
    return rate, data * (volts_per_full_scale / 2.0**31)


def sine_fit(volts, start):
    """Fits a cos + b sin + c with the angle per sample unknown; returns that angle and c."""
    size = len(volts)
    times = centred_times(size)
    basis = np.empty((4, size))
    basis[2] = 1.0
    angle = start
    for step in range(15):
        phase = angle * times
        np.cos(phase, out=basis[0])
        np.sin(phase, out=basis[1])
        if step == 0:
            linear = basis[:3]
            a, b, c = np.linalg.solve(linear @ linear.T, linear @ volts)
        basis[3] = times * (b * basis[0] - a * basis[1]) / size
        a, b, c, change = np.linalg.solve(basis @ basis.T, basis @ volts)
        angle += change / size
        if abs(change) < 1e-8:
            break
    return angle, c


@lru_cache(maxsize=1)
def drives():
    return np.linspace(0, 26, 65)


def tips(drive_db, orders):
    """Cosine series of the part of a cosine above the level at which a drive of so many dB cuts it."""
    level = 10 ** (-np.asarray(drive_db, float)[:, None] / 20)
    angle = np.arccos(np.minimum(1, level))
    n = np.asarray(orders, float)[None, :]
    first = (angle - np.sin(angle) * np.cos(angle)) / np.pi
    bottom = np.where(n == 1, 1, np.pi * n * (n * n - 1))
    other = 2 * (np.sin(n * angle) * np.cos(angle) - n * np.cos(n * angle) * np.sin(angle)) / bottom
    return np.where(n == 1, first, other)


@lru_cache(maxsize=4)
def tip_table(count):
    return tips(drives(), np.arange(1, count + 1))


def best_pair(upper, lower, measured):
    """The pair of tips whose cut sine is nearest, with what stays unexplained."""
    count = len(measured)
    orders = np.arange(1, count + 1)
    keep = orders != 2
    signs = np.where(orders % 2 == 0, 1.0, -1.0)
    sine = (orders == 1).astype(float)
    up, low = (sine - upper)[:, keep], (signs * lower)[:, keep]
    wanted = measured[keep]
    square = (up * up).sum(1)[:, None] + 2 * up @ low.T + (low * low).sum(1)[None, :]
    product = (up @ wanted)[:, None] + (low @ wanted)[None, :]
    cost = wanted @ wanted - product * product / square
    i, j = np.unravel_index(np.argmin(cost), cost.shape)
    return i, j, cost[i, j]


def clipping(harmonics, noise_power):
    """Drive over onset in dB of a cut sine; 0 where the harmonics are not those of one."""
    orders = np.arange(1, len(harmonics) + 1)
    turned = harmonics * np.exp(-1j * orders * np.angle(harmonics[0]))
    measured, quadrature = turned.real, turned.imag
    power = np.sum(measured[1:] ** 2)
    if power < 0.5 * np.sum(np.abs(turned[1:]) ** 2) or power < 9 * noise_power or len(harmonics) < 5:
        return 0.0
    table = tip_table(len(harmonics))
    i, j, cost = best_pair(table, table, measured)
    upper, lower, reach = drives()[i], drives()[j], 0.5
    while reach > 1e-5:
        ups = np.maximum(0, upper + reach * np.linspace(-1, 1, 9))
        lows = np.maximum(0, lower + reach * np.linspace(-1, 1, 9))
        i, j, cost = best_pair(tips(ups, orders), tips(lows, orders), measured)
        upper, lower = ups[i], lows[j]
        reach /= 4
    uncut = np.sum(measured[2:] ** 2)
    out_of_phase = np.sum(quadrature[2:] ** 2)
    left = max(0.0, cost + out_of_phase - 2 * noise_power)
    if uncut < 0.05 * power or 1 - left / (uncut + out_of_phase) < 0.85 or max(upper, lower) < 0.02:
        return 0.0
    return max(upper, lower)


def analyse(volts, rate):
    """Returns the figures of one channel by name, and its spectrum in volts RMS."""
    size = len(volts)
    low, high = volts.min(), volts.max()
    alternating = volts - volts.mean()
    transform = scipy.fft.rfft(alternating * window(size))
    spectrum = np.abs(transform)
    spectrum *= np.sqrt(2) / (size * BLACKMAN_HARRIS[0])
    bin_hz = rate / size
    k = int(np.argmax(spectrum))
    before, at, after = np.log(spectrum[k - 1 : k + 2])
    coarse = k + 0.5 * (before - after) / (before - 2 * at + after)
    angle, direct = sine_fit(volts, 2 * np.pi * coarse / size)
    frequency = angle * rate / (2 * np.pi)

    period = rate / frequency
    count = int(round(np.floor(size / period + 1e-6) * period))
    whole = alternating[(size - count) // 2 : (size - count) // 2 + count]
    rms = np.sqrt(whole @ whole / count - whole.mean() ** 2)

    band_end = min(BAND_HIGH_HZ, rate / 2)
    in_band = int(min(HIGHEST_ORDER, np.floor(band_end * EDGE / frequency)))
    passed = int(min(in_band, np.floor(PASSED_SHARE * rate / 2 / frequency)))
    places = np.arange(1, in_band + 1) * frequency / bin_hz
    bins = np.rint(places).astype(int)
    harmonics = 2 * transform[bins] / window_sum(places - bins, size)
    amplitudes = np.abs(harmonics)
    distortion = np.sum(amplitudes[1:] ** 2)

    first, last = int(np.ceil(BAND_LOW_HZ / bin_hz)), int(np.floor(band_end / bin_hz))
    squares = spectrum[first : last + 1] ** 2
    for n in bins:
        squares[max(0, n - LOBE_BINS - first) : max(0, n + LOBE_BINS + 1 - first)] = 0
    noise = np.sum(squares) / NOISE_BANDWIDTH_BINS
    unwanted = distortion / 2 + noise
    fundamental = amplitudes[0] ** 2 / 2
    peak = max(high - direct, direct - low)
    noise_power = passed * 2 * noise * NOISE_BANDWIDTH_BINS / size
    return {
        "frequencyHz": frequency,
        "outputVoltsRms": rms,
        "outputVoltsPeak": peak,
        "dcVolts": direct,
        "crestFactorDb": 20 * np.log10(peak / rms),
        "fundamentalVoltsRms": np.sqrt(fundamental),
        "thdFRatio": np.sqrt(distortion) / amplitudes[0],
        "thdPlusNoiseRRatio": np.sqrt(unwanted / (unwanted + fundamental)),
        "driveOverOnsetDb": clipping(harmonics[:passed], noise_power),
        "spectrumPeakVolts": spectrum[k],
    }, spectrum


def capture(path, volts_per_full_scale):
    """Reads a capture and analyses each channel."""
    rate, channels = read(path, volts_per_full_scale)
    return [analyse(channel, rate)[0] for channel in channels]
