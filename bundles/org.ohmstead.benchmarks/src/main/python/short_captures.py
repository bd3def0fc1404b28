# Copyright 2026 the Ohmstead authors.
# SPDX-License-Identifier: Apache-2.0
"""Many short captures from the disk to their figures, one after the other, as tone.py has it: the reference of the row "short-captures".

Arguments: volts per full scale, and the folder of the captures.
"""

import os
import sys

import tone
import turns


def figures(scale, folder):
    count, volts, distortion, clipped = 0, 0.0, 0.0, 0
    for entry in sorted(os.listdir(folder)):
        for channel in tone.capture(os.path.join(folder, entry), scale):
            count += 1
            volts += channel["outputVoltsRms"]
            distortion += channel["thdFRatio"]
            clipped += channel["driveOverOnsetDb"] > 0
    return {"count": count, "voltsSum": volts, "thdSum": distortion, "clipped": clipped}


SCALE, FOLDER = float(sys.argv[1]), sys.argv[2]
turns.serve(lambda: figures(SCALE, FOLDER), figures(SCALE, FOLDER))
