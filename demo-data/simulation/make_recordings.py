# Copyright 2026 the Ohmstead authors.
# SPDX-License-Identifier: Apache-2.0
"""Makes the demo's captures: finds where each step reaches 1 % THD, runs its levels, writes WAV and tables.

Everything comes from ngspice; the seeds are fixed, so the same ngspice gives the same files.

    python3 make_recordings.py [--out ../recordings] [--tables .] [--only REGEX] [--jobs 2]
"""

import argparse
import csv
import dataclasses
import datetime
import json
import math
import pathlib
import re
import zlib
from concurrent.futures import ThreadPoolExecutor

import numpy

import circuit
import recorder

SOURCE_FULL_PEAK_VOLTS = 2.0 * math.sqrt(2.0)
LIMIT = 0.01
SEED = 20260302
SUPPLIES = (11.5, 12.5, 13.5, 14.4)
CONTINUOUS_LEVELS_DB = (-20.0, -12.0, -6.0, -2.5, -0.8, -0.4, -0.2, 0.0, 0.2, 0.5, 1.2, 2.8)
BURST_LEVELS_DB = (-1.0, -0.2, 0.0, 0.2, 1.0)
# Where the search begins: drive at 14.4 V without sag, and how much one ohm of load takes off it.
ROUGH_DB = 7.9
ROUGH_OHM_DB = 2.2
SETTLE_SECONDS = 0.085
FIRST_BURST_SECONDS = 0.08
BEFORE_BURST_SECONDS = 0.015
BURST_CAPTURE_SECONDS = 0.545
MORNING = datetime.datetime(2026, 3, 2, 8, 31, 10, tzinfo=datetime.timezone.utc)
IDLE_WATTS = 24.0


class Step:
    """One cell of the plan: a setup, its name, and its place in the day."""

    def __init__(self, setup):
        self.setup = setup
        supply = f"{setup.supply_volts:.1f}".replace(".", "V")
        self.name = f"{'burst-' if setup.burst else ''}{setup.mode}-{setup.load_ohms:g}ohm-{supply}"
        self.volts_per_full_scale = 100.0 if setup.mode == "bridged" else 50.0
        self.hum_volts = 0.25e-3 if setup.mode == "bridged" else 0.5e-3

    def file_name(self, level_number):
        hertz = self.setup.frequency_hz
        tone = f"{hertz / 1000:g}kHz" if hertz >= 1000 else f"{hertz:g}Hz"
        return f"{self.name}-{tone}-L{level_number:02d}.wav"


def plan():
    """Light loads first, stereo before bursts before bridged, supply volts rising."""
    setups = [circuit.Setup("stereo", r, v, 1000.0) for r in (8.0, 4.0, 2.0, 1.0) for v in SUPPLIES]
    setups += [circuit.Setup("stereo", r, v, 1000.0, burst=True) for r in (4.0, 2.0) for v in (12.5, 14.4)]
    setups += [circuit.Setup("bridged", r, v, 40.0) for r in (8.0, 4.0, 2.0) for v in SUPPLIES]
    return [Step(setup) for setup in setups]


def generator(text):
    """A random generator of its own for each name, so that no run depends on another's order."""
    return numpy.random.default_rng([SEED, zlib.crc32(text.encode("ascii"))])


def peak_volts(drive_db):
    return SOURCE_FULL_PEAK_VOLTS * 10.0 ** (drive_db / 20.0)


def search_timing(setup):
    if setup.burst:
        return circuit.burst_timing(FIRST_BURST_SECONDS, FIRST_BURST_SECONDS + 0.021)
    return circuit.continuous_timing(setup, SETTLE_SECONDS, 4.0 / setup.frequency_hz, 0.0)


def find_limits(step):
    """Drive and figures at 1 % THD for each channel, by bracketing; closes to 0.3 % of the limit."""
    setup = step.setup
    tried = {}

    def run(drive):
        if drive not in tried:
            tried[drive] = circuit.simulate(
                setup, peak_volts(drive), search_timing(setup), FIRST_BURST_SECONDS if setup.burst else 0.0, False
            )
        return tried[drive]

    found = []
    for channel in range(len(setup.outputs)):
        found.append(_close_in(run, tried, channel, setup))
    return found


def _close_in(run, tried, channel, setup):
    def excess(drive):
        return run(drive).thd_f(channel) / LIMIT - 1.0

    per_channel_ohms = setup.load_ohms / (2.0 if setup.mode == "bridged" else 1.0)
    rough = 20.0 * math.log10(setup.supply_volts / 14.4) - ROUGH_DB - ROUGH_OHM_DB / per_channel_ohms
    low = max((d for d in tried if excess(d) <= 0.0), default=rough)
    while excess(low) > 0.0:
        low -= 0.6
    high = min((d for d in tried if excess(d) > 0.0), default=low + 0.4)
    while excess(high) <= 0.0:
        low, high = high, high + 0.6
    for turn in range(40):
        below, above = excess(low), excess(high)
        share = 0.5 if turn % 3 == 2 else min(0.95, max(0.05, -below / (above - below)))
        middle = low + share * (high - low)
        here = excess(middle)
        if abs(here) < 0.003:
            return middle, run(middle)
        low, high = (middle, high) if here <= 0.0 else (low, middle)
    raise RuntimeError(f"{setup}: 1 % THD not found between {low} and {high} dB")


def run_level(step, number, drive_db, out):
    """Simulates one level, writes its capture, returns the outcome and the window within the capture."""
    setup = step.setup
    file_name = step.file_name(number)
    random = generator(file_name)
    phase = random.uniform(0.0, 1.0) / setup.frequency_hz
    if setup.burst:
        start = FIRST_BURST_SECONDS - BEFORE_BURST_SECONDS - phase
        count = int(BURST_CAPTURE_SECONDS * recorder.SAMPLE_RATE_HZ) + int(random.integers(0, 48))
        timing = circuit.burst_timing(FIRST_BURST_SECONDS, start + count / recorder.SAMPLE_RATE_HZ + 0.002)
    else:
        start = SETTLE_SECONDS + phase
        samples_per_cycle = recorder.SAMPLE_RATE_HZ / setup.frequency_hz
        cycles = (30 if setup.frequency_hz > 100 else 6) + random.uniform(0.2, 0.8)
        count = int(cycles * samples_per_cycle)
        timing = circuit.continuous_timing(setup, start, count / recorder.SAMPLE_RATE_HZ, 0.002)
    outcome = circuit.simulate(
        setup, peak_volts(drive_db), timing, FIRST_BURST_SECONDS if setup.burst else 0.0, True, setup.frequency_hz < 100
    )
    channels = [recorder.sample(outcome.time, w, start, count) for w in outcome.waveforms]
    if not setup.burst:
        _check_steady(file_name, channels, setup)
    recorded = [recorder.disturb(samples, step.hum_volts, random) for samples in channels]
    recorder.write_wav(out / file_name, recorded, step.volts_per_full_scale)
    outcome.time, outcome.waveforms = None, []
    return outcome, timing.window_start - start


def _check_steady(file_name, channels, setup):
    cycle = round(recorder.SAMPLE_RATE_HZ / setup.frequency_hz)
    for samples in channels:
        last = samples[-cycle:]
        drift = max(
            math.sqrt(float(numpy.mean((samples[k : k + cycle] - samples[k + cycle : k + 2 * cycle]) ** 2)))
            for k in (0, len(samples) - 2 * cycle)
        )
        if drift > 1e-4 * math.sqrt(float(numpy.mean(last**2))):
            raise RuntimeError(f"{file_name}: successive cycles differ by {drift} V, not settled")


def run_step(step, out):
    """Both searches and all levels of one step, with the supply raised until the terminals carry the step's volts at 1 %."""
    wanted = step.setup.supply_volts
    at_first = find_limits(step)
    drop = wanted - sum(outcome.terminal_volts for _, outcome in at_first) / len(at_first)
    step.setup = dataclasses.replace(step.setup, supply_volts=round(wanted + drop, 3))
    limits = find_limits(step)
    centre = round(sum(drive for drive, _ in limits) / len(limits) * 20.0) / 20.0
    offsets = BURST_LEVELS_DB if step.setup.burst else CONTINUOUS_LEVELS_DB
    levels = []
    for number, offset in enumerate(offsets, start=1):
        drive_db = round(centre + offset, 2)
        levels.append((number, drive_db, *run_level(step, number, drive_db, out)))
    watts = [outcome.rms[c] ** 2 / step.setup.load_ohms for c, (_, outcome) in enumerate(limits)]
    drives = ", ".join(f"{drive:.2f} dB" for drive, _ in limits)
    print(f"{step.name}: 1 % at {drives}, {', '.join(f'{w:.2f} W' for w in watts)}", flush=True)
    return limits, levels


RESULT_COLUMNS = (
    "file step channel stimulus frequencyHz loadOhms windowStartSeconds windowCycles fundamentalVoltsPeak highestOrder "
    "thdFPercent thdFPercentTo20kHz outputVoltsRms powerWatts terminalVolts terminalVoltsInWindow supplyAmps"
).split()
LIMIT_COLUMNS = (
    "step channel stimulus frequencyHz loadOhms driveDb thdFPercent outputVoltsRms powerWatts terminalVolts "
    "terminalVoltsInWindow supplyAmps"
).split()


def result_rows(step, number, outcome, window_start):
    setup = step.setup
    for channel, name in enumerate(setup.channel_names):
        wide = 500 if setup.frequency_hz < 100 else circuit.HIGHEST_ORDER
        yield [
            step.file_name(number),
            step.name,
            name,
            "burst" if setup.burst else "continuous",
            f"{setup.frequency_hz:g}",
            f"{setup.load_ohms:g}",
            f"{window_start:.7f}",
            circuit.BURST_WINDOW_CYCLES if setup.burst else 30 if setup.frequency_hz > 100 else 6,
            f"{outcome.fundamental(channel):.6g}",
            circuit.HIGHEST_ORDER,
            f"{100 * outcome.thd_f(channel):.5g}",
            f"{100 * outcome.thd_f(channel, wide):.5g}",
            f"{outcome.rms[channel]:.6g}",
            f"{outcome.rms[channel] ** 2 / setup.load_ohms:.6g}",
            f"{outcome.terminal_volts:.6g}",
            f"{outcome.burst_terminal_volts:.6g}",
            f"{outcome.supply_amps:.6g}",
        ]


def limit_rows(step, limits):
    setup = step.setup
    for channel, (drive, outcome) in enumerate(limits):
        yield [
            step.name,
            setup.channel_names[channel],
            "burst" if setup.burst else "continuous",
            f"{setup.frequency_hz:g}",
            f"{setup.load_ohms:g}",
            f"{drive:.4f}",
            f"{100 * outcome.thd_f(channel):.5g}",
            f"{outcome.rms[channel]:.6g}",
            f"{outcome.rms[channel] ** 2 / setup.load_ohms:.6g}",
            # A search run of bursts ends with the burst: no long average to give there.
            "" if setup.burst else f"{outcome.terminal_volts:.6g}",
            f"{outcome.burst_terminal_volts:.6g}",
            "" if setup.burst else f"{outcome.supply_amps:.6g}",
        ]


def manifest(steps, results):
    """The day in order: times, meter readings and temperatures for each capture."""
    random = generator("the day")
    moment = MORNING
    thermometer = recorder.CaseThermometer()
    entries = []
    previous = None
    for step, (_, levels) in zip(steps, results):
        setup = step.setup
        moved = previous is not None and (previous.mode, previous.load_ohms, previous.burst) != (
            setup.mode,
            setup.load_ohms,
            setup.burst,
        )
        pause = 0.0 if previous is None else (720.0 if moved else 150.0) + float(random.integers(0, 60))
        thermometer.spend(pause, IDLE_WATTS / 2)
        moment += datetime.timedelta(seconds=pause)
        for number, drive_db, outcome, _ in levels:
            drive_seconds = 4.0
            rest_seconds = float(random.integers(12, 24))
            spent = 0.0 if setup.burst else sum(rms**2 for rms in outcome.rms) / setup.load_ohms
            watts = outcome.terminal_volts * outcome.supply_amps - spent
            thermometer.spend(rest_seconds, IDLE_WATTS)
            thermometer.spend(drive_seconds, watts)
            moment += datetime.timedelta(seconds=rest_seconds + drive_seconds)
            hours = (moment - MORNING).total_seconds() / 3600.0
            ambient = round(21.8 + 1.9 * (1.0 - math.exp(-hours / 3.0)) + float(random.uniform(-0.1, 0.1)), 1)
            entries.append(
                {
                    "step": step.name,
                    "file": step.file_name(number),
                    "driveDb": drive_db,
                    "voltsPerFullScale": [step.volts_per_full_scale] * len(setup.outputs),
                    "supplyVolts": recorder.read_supply_volts(outcome.terminal_volts, random),
                    "supplyAmps": recorder.read_supply_amps(outcome.supply_amps, random),
                    "caseCelsius": thermometer.case_celsius(ambient),
                    "ambientCelsius": ambient,
                    "recordedAt": moment.strftime("%Y-%m-%dT%H:%M:%SZ"),
                }
            )
        previous = setup
    return entries


def write_manifest(path, entries):
    lines = ",\n".join("    " + json.dumps(entry) for entry in entries)
    path.write_text('{\n  "formatVersion": 1,\n  "recordings": [\n' + lines + "\n  ]\n}\n", encoding="ascii")


def write_table(path, columns, rows):
    with path.open("w", newline="", encoding="ascii") as out:
        table = csv.writer(out, lineterminator="\n")
        table.writerow(columns)
        table.writerows(rows)


def main():
    here = pathlib.Path(__file__).resolve().parent
    arguments = argparse.ArgumentParser(description="Simulates the bench day and writes captures, manifest and tables.")
    arguments.add_argument("--out", type=pathlib.Path, default=here.parent / "recordings", help="captures' folder")
    arguments.add_argument("--tables", type=pathlib.Path, default=here, help="folder of the simulator's tables")
    arguments.add_argument("--only", default="", help="regular expression: only steps whose name it finds")
    arguments.add_argument("--jobs", type=int, default=2, help="simulations at the same time")
    options = arguments.parse_args()
    options.out.mkdir(parents=True, exist_ok=True)
    options.tables.mkdir(parents=True, exist_ok=True)
    steps = [step for step in plan() if re.search(options.only, step.name)]
    with ThreadPoolExecutor(options.jobs) as pool:
        results = list(pool.map(lambda step: run_step(step, options.out), steps))
    rows = [
        row
        for step, (_, levels) in zip(steps, results)
        for number, _, outcome, window_start in levels
        for row in result_rows(step, number, outcome, window_start)
    ]
    write_table(options.tables / "simulator-results.csv", RESULT_COLUMNS, rows)
    limits = [row for step, (found, _) in zip(steps, results) for row in limit_rows(step, found)]
    write_table(options.tables / "simulator-endpoints.csv", LIMIT_COLUMNS, limits)
    write_manifest(options.out / "recordings.json", manifest(steps, results))
    print(f"{len(rows)} result rows, {len(steps)} steps")


if __name__ == "__main__":
    main()
