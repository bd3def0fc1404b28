// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.study;

import org.ohmstead.curves.internal.StageCurve;
import org.ohmstead.units.text.Messages;

/** What a supply model can have to be found from readings. */
public enum StageParameter {
    /** Peak output volts of a channel per supply volt, without load. */
    GAIN("V/V", StageCurve.GAIN),
    /** Peak volts lost without load. */
    SATURATION_VOLTS("V", StageCurve.SATURATION),
    /** Peak output volts of a channel without load, where they are steady. */
    STEADY_PEAK_VOLTS("V", StageCurve.SATURATION),
    /** Source resistance of one channel, with its share of the internal supply's. */
    OUTPUT_OHMS("ohm", StageCurve.OUTPUT),
    /** Supply volts from which on the power rises no further. */
    KNEE_VOLTS("V", StageCurve.KNEE),
    /** Highest peak current of one channel. */
    LIMIT_AMPS("A", StageCurve.LIMIT),
    /** Share of the peak volts lost per kelvin of case temperature or per run. */
    DROOP("1", StageCurve.DROOP);

    private static final Messages TEXTS = Messages.of(StageParameter.class);

    private final String unit;
    private final int slot;

    StageParameter(String unit, int slot) {
        this.unit = unit;
        this.slot = slot;
    }

    /** Returns what it is called in a sentence. */
    public String words() {
        return TEXTS.text("parameter." + name());
    }

    /** Returns its unit; "1" for the droop, which is per kelvin or per run. */
    public String unit() {
        return unit;
    }

    int slot() {
        return slot;
    }

    /** Steady peak volts take the place of the loss, with the other sign. */
    double sign() {
        return this == STEADY_PEAK_VOLTS ? -1 : 1;
    }
}
