#!/usr/bin/env python3
# Copyright 2026 the Ohmstead authors.
# SPDX-License-Identifier: Apache-2.0
"""Makes ../warm-up.csv: the demo amplifier's case as a thermometer would have logged it while it warmed up. Invented, like all of the
demo: 52 W of heat, 0.45 K/W, 2900 J/K, air of 22.5 degrees, 0.15 K of noise, read to a tenth of a degree once a minute."""
import math
import random
from pathlib import Path

WATTS, KELVIN_PER_WATT, JOULES_PER_KELVIN, AIR, NOISE = 52.0, 0.45, 2900.0, 22.5, 0.15
tau = KELVIN_PER_WATT * JOULES_PER_KELVIN
random.seed(20261126)
lines = ["seconds,celsius"]
for minute in range(0, 76):
    seconds = 60 * minute
    celsius = AIR + WATTS * KELVIN_PER_WATT * (1 - math.exp(-seconds / tau)) + random.gauss(0, NOISE)
    lines.append(f"{seconds},{celsius:.1f}")
(Path(__file__).parent.parent / "warm-up.csv").write_text("\n".join(lines) + "\n", encoding="utf-8")
