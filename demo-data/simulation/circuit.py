# Copyright 2026 the Ohmstead authors.
# SPDX-License-Identifier: Apache-2.0
"""Runs the amplifier netlist in ngspice and reads back waveforms and the simulator's own figures."""

import math
import pathlib
import re
import string
import subprocess
import tempfile
from dataclasses import dataclass, field

import numpy

TEMPLATE = pathlib.Path(__file__).with_name("amplifier.cir.in")
HIGHEST_ORDER = 20
BURST_SECONDS = 0.02
BURST_PERIOD_SECONDS = 0.5
BURST_REST_RATIO = 0.1
# The first and the last cycle of a burst are left out of every burst figure.
BURST_WINDOW_CYCLES = 18


@dataclass(frozen=True)
class Setup:
    """What is fixed on the bench while one step's levels are run through."""

    mode: str
    load_ohms: float
    supply_volts: float
    frequency_hz: float
    burst: bool = False

    @property
    def outputs(self):
        """Vector names of what the capture records, in channel order."""
        return ["vd"] if self.mode == "bridged" else ["v(oa)", "v(ob)"]

    @property
    def channel_names(self):
        return ["bridge"] if self.mode == "bridged" else ["A", "B"]


@dataclass(frozen=True)
class Timing:
    """When the simulation stops and which stretch of it the figures come from, in seconds."""

    stop: float
    window_start: float
    window_cycles: int
    meter_start: float
    meter_stop: float


@dataclass
class Outcome:
    """Noise-free result of one run: full-band waveform and the simulator's figures per channel."""

    terminal_volts: float
    supply_amps: float
    rms: list
    harmonics: list
    time: numpy.ndarray = None
    waveforms: list = field(default_factory=list)
    burst_terminal_volts: float = math.nan

    def fundamental(self, channel):
        return self.harmonics[channel][1]

    def thd_f(self, channel, highest=HIGHEST_ORDER):
        magnitudes = self.harmonics[channel]
        return math.sqrt(sum(m * m for m in magnitudes[2 : highest + 1])) / magnitudes[1]


def continuous_timing(setup, capture_start, capture_seconds, tail_seconds):
    """Steady tone: figures over the whole cycles that fit in the capture, from its first sample on."""
    cycles = int(capture_seconds * setup.frequency_hz)
    window_stop = capture_start + cycles / setup.frequency_hz
    # The simulator's Fourier analysis takes the last cycle before the end of the run.
    stop = max(capture_start + capture_seconds, window_stop) + tail_seconds
    return Timing(stop, capture_start, cycles, capture_start, window_stop)


def burst_timing(first_burst, stop):
    """Bursts: figures over 18 cycles inside the first one, meters averaged over one burst period."""
    start = first_burst + 0.001
    return Timing(stop, start, BURST_WINDOW_CYCLES, first_burst, min(first_burst + BURST_PERIOD_SECONDS, stop))


def simulate(setup, peak_volts, timing, burst_delay=0.0, keep_waveforms=True, wide=False):
    """One ngspice run, with longer steps when only figures are wanted.

    Raises RuntimeError with the simulator's last lines when it did not finish.
    """
    with tempfile.TemporaryDirectory() as folder:
        raw = pathlib.Path(folder, "wave.raw")
        netlist = pathlib.Path(folder, "run.cir")
        netlist.write_text(_netlist(setup, peak_volts, timing, burst_delay, raw if keep_waveforms else None, wide))
        done = subprocess.run(["ngspice", "-b", str(netlist)], capture_output=True, text=True, check=False)
        log = done.stdout + done.stderr
        if "run-finished" not in log or re.search(r"timestep too small|singular matrix|aborted", log):
            raise RuntimeError(f"ngspice did not finish {setup} at {peak_volts} V: {log[-800:]}")
        outcome = _read_figures(log, setup)
        if keep_waveforms:
            outcome.time, outcome.waveforms = _read_raw(raw)
    return outcome


def _netlist(setup, peak_volts, timing, burst_delay, raw, wide):
    bridged = setup.mode == "bridged"
    load = setup.load_ohms
    fill = {
        "supplyVolts": repr(setup.supply_volts),
        "loadLines": f"Rload oa ob {load!r}" if bridged else f"Rla oa 0 {load!r}\nRlb ob 0 {load!r}",
        "peakVolts": repr(peak_volts),
        "frequencyHz": repr(setup.frequency_hz),
        "restRatio": repr(BURST_REST_RATIO if setup.burst else 1.0),
        "burstDelay": repr(burst_delay),
        "polarityB": "-1" if bridged else "1",
        "maxStep": ("12u" if raw else "20u") if setup.frequency_hz < 100 else ("3u" if raw else "4u"),
        "stopTime": repr(timing.stop),
        "controlLines": "\n".join(_control(setup, timing, raw, wide)),
    }
    return string.Template(TEMPLATE.read_text()).substitute(fill)


def _control(setup, timing, raw, wide):
    start = timing.window_start
    stop = start + timing.window_cycles / setup.frequency_hz
    lines = ["set numdgt=9", "run", "let vd=v(oa)-v(ob)"]
    for number, vector in enumerate(setup.outputs):
        lines.append(f"meas tran rms{number} RMS {vector} from={start!r} to={stop!r}")
    lines.append(f"meas tran terminals AVG v(bat) from={timing.meter_start!r} to={timing.meter_stop!r}")
    lines.append(f"meas tran inburst AVG v(bat) from={start!r} to={stop!r}")
    lines.append(f"meas tran amps AVG i(Vs) from={timing.meter_start!r} to={timing.meter_stop!r}")
    if raw is not None:
        lines += ["set filetype=binary", f"write {raw} {' '.join(setup.outputs)}"]
    per_window = 1
    if setup.burst:
        # Fourier analysis with one period = the 18 cycles: every 18th line is a harmonic of the tone.
        per_window = timing.window_cycles
        lines += [f"let cut-tstart={start!r}", f"let cut-tstop={stop + 4e-6!r}", "cutout"]
    highest = 500 if wide else HIGHEST_ORDER
    lines.append(f"set nfreqs={highest * per_window + 1}")
    lines.append(f"set fourgridsize={36000 if setup.burst else 10000 if wide else 4000}")
    for vector in setup.outputs:
        lines.append(f"fourier {setup.frequency_hz / per_window!r} {vector}")
    lines.append("echo run-finished")
    return lines


def _read_figures(log, setup):
    def measured(name):
        found = re.search(rf"^{name}\s+=\s+(\S+)", log, re.MULTILINE)
        if not found:
            raise RuntimeError(f"ngspice gave no '{name}' for {setup}: {log[-800:]}")
        return float(found.group(1))

    tables = re.split(r"Fourier analysis for ", log)[1:]
    harmonics = []
    for table in tables:
        rows = re.findall(r"^\s*(\d+)\s+(\S+)\s+(\S+)\s+\S+\s+\S+\s+\S+\s*$", table, re.MULTILINE)
        magnitudes = [float(row[2]) for row in rows]
        harmonics.append(magnitudes[::BURST_WINDOW_CYCLES] if setup.burst else magnitudes)
    if len(harmonics) != len(setup.outputs) or any(len(h) <= HIGHEST_ORDER for h in harmonics):
        raise RuntimeError(f"ngspice gave no whole Fourier table for {setup}: {log[-800:]}")
    return Outcome(
        terminal_volts=measured("terminals"),
        supply_amps=-measured("amps"),
        rms=[measured(f"rms{number}") for number in range(len(setup.outputs))],
        harmonics=harmonics,
        burst_terminal_volts=measured("inburst"),
    )


def _read_raw(path):
    content = path.read_bytes()
    marker = b"Binary:\n"
    at = content.index(marker)
    header = content[:at].decode("ascii")
    variables = int(re.search(r"No\. Variables:\s*(\d+)", header).group(1))
    points = int(re.search(r"No\. Points:\s*(\d+)", header).group(1))
    table = numpy.frombuffer(content, dtype="<f8", count=variables * points, offset=at + len(marker))
    table = table.reshape(points, variables)
    return table[:, 0].copy(), [table[:, column].copy() for column in range(1, variables)]
