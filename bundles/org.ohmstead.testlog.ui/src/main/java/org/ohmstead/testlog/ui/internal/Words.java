// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import org.ohmstead.model.DistortionMeasure;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.MeterQuantity;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Stimulus;
import org.ohmstead.workbench.look.Numbers;

/** What the test log calls the cases of the model. */
final class Words {
    private Words() {}

    static String of(Mode mode) {
        return switch (mode) {
            case STEREO -> "stereo";
            case BRIDGED -> "bridged";
            case SINGLE -> "single";
        };
    }

    static String of(EndPointOutcome outcome) {
        return switch (outcome) {
            case REACHED -> "reached";
            case NOT_REACHED -> "not reached";
            case ALREADY_BEYOND -> "already beyond";
        };
    }

    /** Returns the sign before a power that is only a bound. */
    static String bound(EndPointOutcome outcome) {
        return switch (outcome) {
            case REACHED -> "";
            case NOT_REACHED -> "\u2265\u00a0";
            case ALREADY_BEYOND -> "\u2264\u00a0";
        };
    }

    static String explain(EndPointOutcome outcome) {
        return switch (outcome) {
            case REACHED -> "The end point lies between two of the levels; the power is interpolated there.";
            case NOT_REACHED -> "Even the highest level stays below the end point; the power is a lower bound.";
            case ALREADY_BEYOND -> "Already the lowest level is beyond the end point; the power is an upper bound.";
        };
    }

    static String of(DistortionMeasure measure) {
        return switch (measure) {
            case THD_F -> "THD_F";
            case THD_R -> "THD_R";
            case THD_PLUS_NOISE_R -> "THD+N_R";
        };
    }

    static String of(EndPoint endPoint) {
        if (endPoint instanceof EndPoint.DistortionLimit limit) {
            return Numbers.percent(limit.ratio()) + " " + of(limit.measure());
        }
        if (endPoint instanceof EndPoint.FixedLevel level) {
            return "drive " + Numbers.shown(level.driveDb()) + " dB";
        }
        return "clipping onset";
    }

    static String of(Stimulus stimulus) {
        String tone = Numbers.shown(stimulus.frequencyHz()) + " Hz";
        if (stimulus instanceof Stimulus.ToneBurst burst) {
            return tone + " burst, " + Numbers.shown(1000 * burst.onSeconds()) + " ms of "
                    + Numbers.shown(1000 * burst.periodSeconds()) + " ms, " + Numbers.shown(burst.lowLevelDb())
                    + " dB between";
        }
        return tone + " steady sine";
    }

    static String of(MeterQuantity quantity) {
        return switch (quantity) {
            case OUTPUT_VOLTS -> "output volts";
            case SUPPLY_VOLTS -> "supply volts";
            case SUPPLY_AMPS -> "supply current";
            case LOAD_OHMS -> "load resistance";
            case TEMPERATURE_CELSIUS -> "temperature";
        };
    }
}
