# Copyright 2026 the Ohmstead authors.
# SPDX-License-Identifier: Apache-2.0
"""The recorder and the meters of the simulated bench: band limit, noise, hum, offset, 24-bit WAV, readings."""

import wave

import numpy
from scipy import interpolate, signal

SAMPLE_RATE_HZ = 48000
OVERSAMPLING = 16
# Pass band to 20.5 kHz, stop band from 23.9 kHz, 105 dB; the filter is symmetric, so it delays nothing.
PASS_HZ = 20500.0
STOP_HZ = 23900.0
NOISE_VOLTS_RMS = 0.25e-3


def _low_pass():
    rate = SAMPLE_RATE_HZ * OVERSAMPLING
    taps, beta = signal.kaiserord(105.0, (STOP_HZ - PASS_HZ) / (rate / 2))
    taps += 1 - taps % 2
    return signal.firwin(taps, (PASS_HZ + STOP_HZ) / 2, window=("kaiser", beta), fs=rate)


LOW_PASS = _low_pass()
# What the simulation must reach beyond either end of a capture for the filter to be full.
MARGIN_SECONDS = (len(LOW_PASS) // 2 + 2) / (SAMPLE_RATE_HZ * OVERSAMPLING)


def sample(time, waveform, start, count):
    """The waveform band-limited and sampled at 48 kHz: count samples, the first at time start."""
    keep = numpy.concatenate(([True], numpy.diff(time) > 1e-9))
    curve = interpolate.CubicSpline(time[keep], waveform[keep])
    half = len(LOW_PASS) // 2
    fine = numpy.arange(-half, (count - 1) * OVERSAMPLING + half + 1) / (SAMPLE_RATE_HZ * OVERSAMPLING) + start
    if fine[0] < time[0] or fine[-1] > time[-1]:
        raise ValueError(f"capture {start} s, {count} samples: simulation covers {time[0]} to {time[-1]} s")
    return signal.oaconvolve(curve(fine), LOW_PASS, mode="valid")[::OVERSAMPLING]


def disturb(samples, hum_volts, random):
    """Adds what a real recorder adds: noise, hum at 50 Hz and 100 Hz, and a steady offset."""
    seconds = numpy.arange(len(samples)) / SAMPLE_RATE_HZ
    phases = random.uniform(0.0, 2.0 * numpy.pi, 2)
    offset = random.uniform(1.0e-3, 4.0e-3)
    hum = numpy.sin(2 * numpy.pi * 50 * seconds + phases[0]) + 0.6 * numpy.sin(2 * numpy.pi * 100 * seconds + phases[1])
    return samples + offset + hum_volts * hum + random.normal(0.0, NOISE_VOLTS_RMS, len(samples))


def write_wav(path, channels, volts_per_full_scale):
    """Writes 24-bit PCM; refuses to clip."""
    scaled = numpy.rint(numpy.stack(channels, axis=1) / volts_per_full_scale * 2**23).astype("<i4")
    if numpy.max(numpy.abs(scaled)) >= 2**23:
        raise ValueError(f"{path.name}: {volts_per_full_scale} V full scale is too small")
    octets = scaled.reshape(-1, 1).view("u1").reshape(-1, 4)[:, :3].tobytes()
    with wave.open(str(path), "wb") as out:
        out.setnchannels(len(channels))
        out.setsampwidth(3)
        out.setframerate(SAMPLE_RATE_HZ)
        out.writeframes(octets)


def read_supply_volts(true_volts, random):
    """4.5-digit meter, 20 V range: within 0.03 % of reading + 2 counts of 1 mV; half of that is used."""
    return round(true_volts + random.uniform(-0.5, 0.5) * (0.0003 * true_volts + 0.002), 3)


def read_supply_amps(true_amps, random):
    """Shunt meter: within 0.2 % of reading + 2 counts of 10 mA; half of that is used."""
    return round(true_amps + random.uniform(-0.5, 0.5) * (0.002 * true_amps + 0.02), 2)


class CaseThermometer:
    """An invented lumped case: warms with the dissipated watts, reads to 0.1 degree."""

    KELVIN_PER_WATT = 0.42
    JOULES_PER_KELVIN = 2100.0

    def __init__(self):
        self._rise_kelvin = 3.5

    def spend(self, seconds, watts):
        decay = numpy.exp(-seconds / (self.KELVIN_PER_WATT * self.JOULES_PER_KELVIN))
        self._rise_kelvin = self._rise_kelvin * decay + watts * self.KELVIN_PER_WATT * (1.0 - decay)

    def case_celsius(self, ambient_celsius):
        return round(float(ambient_celsius + self._rise_kelvin), 1)
