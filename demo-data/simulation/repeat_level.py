# Copyright 2026 the Ohmstead authors.
# SPDX-License-Identifier: Apache-2.0
"""Simulates one steady level again, in seconds, and compares it with the table of the simulator's results."""

import argparse
import csv
import json
import pathlib
import sys

import circuit
import make_recordings

TOLERANCE = 0.001
CABLE_OHMS = 0.0055


def main():
    here = pathlib.Path(__file__).resolve().parent
    arguments = argparse.ArgumentParser(description=__doc__)
    arguments.add_argument("file", help="name of a capture of a steady tone")
    file_name = arguments.parse_args().file
    with (here / "simulator-results.csv").open(newline="", encoding="ascii") as table:
        rows = [row for row in csv.DictReader(table) if row["file"] == file_name]
    entries = json.loads((here.parent / "recordings" / "recordings.json").read_text())["recordings"]
    found = [entry for entry in entries if entry["file"] == file_name]
    if not rows or not found or rows[0]["stimulus"] == "burst":
        sys.exit(f"{file_name}: not a capture of a steady tone in the table and the manifest")
    first = rows[0]
    # The table has the volts at the terminals; the supply stood higher by the drop along the cable.
    supply_volts = float(first["terminalVolts"]) + CABLE_OHMS * float(first["supplyAmps"])
    setup = circuit.Setup(first["step"].split("-")[0], float(first["loadOhms"]), supply_volts, float(first["frequencyHz"]))
    timing = circuit.continuous_timing(setup, make_recordings.SETTLE_SECONDS, 6.0 / setup.frequency_hz, 0.0)
    outcome = circuit.simulate(setup, make_recordings.peak_volts(found[0]["driveDb"]), timing, 0.0, False)
    worst = 0.0
    for channel, row in enumerate(rows):
        ratio = outcome.rms[channel] / float(row["outputVoltsRms"])
        worst = max(worst, abs(ratio - 1.0))
        print(f"{row['channel']}: {outcome.rms[channel]:.5f} V RMS, table {row['outputVoltsRms']}")
    close = worst < TOLERANCE
    print(f"{'within' if close else 'NOT within'} {TOLERANCE:.1%} of the table".replace("0.1%", "0.1 %"))
    sys.exit(0 if close else 1)


if __name__ == "__main__":
    main()
