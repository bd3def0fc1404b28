# Copyright 2026 the Ohmstead authors.
# SPDX-License-Identifier: Apache-2.0
"""Checks the captures against the simulator's table, with an analysis of its own.

Reads the WAV files with the standard library, fits tone, harmonics, hum and offset by linear least squares, and
compares RMS, fundamental and THD_F. Ends with status 1 when a figure is off by more than the stated tolerance.

    python3 check_recordings.py [--recordings ../recordings] [--tables .]
"""

import argparse
import csv
import json
import math
import pathlib
import sys
import wave

import numpy

POWER_TOLERANCE = 0.005
THD_TOLERANCE = 0.02
THD_FLOOR = 0.001
HUM_HZ = (50.0, 100.0)


def read_wav(path):
    """Samples between -1 and 1, one column per channel, and the sample rate."""
    with wave.open(str(path), "rb") as source:
        if source.getsampwidth() != 3:
            raise ValueError(f"{path.name}: not 24 bit")
        octets = numpy.frombuffer(source.readframes(source.getnframes()), dtype="u1").reshape(-1, 3).astype("i4")
        whole = octets[:, 0] | octets[:, 1] << 8 | octets[:, 2] << 16
        whole = numpy.where(whole >= 2**23, whole - 2**24, whole)
        return whole.reshape(-1, source.getnchannels()) / 2.0**23, source.getframerate()


def fit(samples, rate, tone_hz, highest, hum):
    """Amplitudes of orders 1..highest and the RMS of the whole periodic part."""
    seconds = numpy.arange(len(samples)) / rate
    frequencies = [order * tone_hz for order in range(1, highest + 1)]
    frequencies += [f for f in HUM_HZ if hum and f % tone_hz]
    columns = [numpy.ones_like(seconds)]
    for frequency in frequencies:
        columns += [numpy.cos(2 * math.pi * frequency * seconds), numpy.sin(2 * math.pi * frequency * seconds)]
    solution = numpy.linalg.lstsq(numpy.stack(columns, axis=1), samples, rcond=None)[0]
    amplitudes = numpy.hypot(solution[1::2], solution[2::2])[:highest]
    return amplitudes, math.sqrt(float(numpy.sum(amplitudes**2)) / 2)


def check_row(row, entry, samples, rate):
    """Relative differences in power, fundamental, and THD_F (the last is None below the floor)."""
    tone = float(row["frequencyHz"])
    channel = 1 if row["channel"] == "B" else 0
    volts = samples[:, channel] * entry["voltsPerFullScale"][channel]
    if row["stimulus"] == "burst":
        first = math.ceil(float(row["windowStartSeconds"]) * rate)
        volts = volts[first : first + round(int(row["windowCycles"]) / tone * rate)]
        power = float(numpy.mean(volts**2)) / float(row["loadOhms"])
    amplitudes, rms = fit(volts, rate, tone, int(row["highestOrder"]), row["stimulus"] != "burst")
    if row["stimulus"] != "burst":
        power = rms**2 / float(row["loadOhms"])
    thd = math.sqrt(float(numpy.sum(amplitudes[1:] ** 2))) / amplitudes[0]
    expected = float(row["thdFPercent"]) / 100
    return (
        power / float(row["powerWatts"]) - 1,
        amplitudes[0] / float(row["fundamentalVoltsPeak"]) - 1,
        thd / expected - 1,
        expected >= THD_FLOOR,
    )


def main():
    here = pathlib.Path(__file__).resolve().parent
    arguments = argparse.ArgumentParser(description="Checks the captures against the simulator's table.")
    arguments.add_argument("--recordings", type=pathlib.Path, default=here.parent / "recordings")
    arguments.add_argument("--tables", type=pathlib.Path, default=here)
    options = arguments.parse_args()
    entries = {e["file"]: e for e in json.loads((options.recordings / "recordings.json").read_text())["recordings"]}
    worst = {"power": 0.0, "fundamental": 0.0, "THD from 0.1 %": 0.0, "THD below 0.1 %": 0.0}
    faults = 0
    with (options.tables / "simulator-results.csv").open(newline="", encoding="ascii") as table:
        rows = list(csv.DictReader(table))
    for row in rows:
        samples, rate = read_wav(options.recordings / row["file"])
        power, fundamental, thd, counts = check_row(row, entries[row["file"]], samples, rate)
        worst["power"] = max(worst["power"], abs(power))
        worst["fundamental"] = max(worst["fundamental"], abs(fundamental))
        kind = "THD from 0.1 %" if counts else "THD below 0.1 %"
        worst[kind] = max(worst[kind], abs(thd))
        if abs(power) > POWER_TOLERANCE or (counts and abs(thd) > THD_TOLERANCE):
            faults += 1
            print(f"{row['file']} {row['channel']}: power {power:+.4%}, THD {thd:+.4%} of {row['thdFPercent']} %")
    for name, value in worst.items():
        print(f"largest difference in {name}: {value:.4%}")
    unlisted = {p.name for p in options.recordings.glob("*.wav")} ^ set(entries)
    print(f"{len(rows)} rows, {len(entries)} captures, {faults} off; files not matched: {sorted(unlisted)}")
    sys.exit(1 if faults or unlisted else 0)


if __name__ == "__main__":
    main()
