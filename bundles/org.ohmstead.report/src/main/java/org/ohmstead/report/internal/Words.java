// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import org.ohmstead.metrology.Verdict;
import org.ohmstead.model.DistortionMeasure;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.MeterQuantity;
import org.ohmstead.model.Mode;
import org.ohmstead.model.PowerKind;
import org.ohmstead.model.Severity;
import org.ohmstead.model.Stimulus;
import org.ohmstead.model.SupplyType;

/** What the sheet calls the cases of the model. */
final class Words {
    private Words() {}

    static String of(Mode mode) {
        return switch (mode) {
            case STEREO -> "Stereo";
            case BRIDGED -> "Bridged";
            case SINGLE -> "Single channel";
        };
    }

    static String of(PowerKind kind) {
        return kind == PowerKind.CONTINUOUS ? "Continuous" : "Burst";
    }

    static String of(EndPoint endPoint) {
        if (endPoint instanceof EndPoint.DistortionLimit limit) {
            return Figures.percent(limit.ratio(), 3) + "\u00a0%\u00a0" + of(limit.measure());
        }
        if (endPoint instanceof EndPoint.FixedLevel level) {
            return "drive of " + Figures.fixed(level.driveDb(), 1) + "\u00a0dB";
        }
        return "clipping onset";
    }

    static String of(DistortionMeasure measure) {
        return switch (measure) {
            case THD_F -> "THD_F";
            case THD_R -> "THD_R";
            case THD_PLUS_NOISE_R -> "THD+N_R";
        };
    }

    static String of(Stimulus stimulus) {
        String tone = Figures.hertz(stimulus.frequencyHz());
        if (stimulus instanceof Stimulus.ToneBurst burst) {
            return tone + " burst, " + timing(burst);
        }
        return tone + " sine";
    }

    static String timing(Stimulus.ToneBurst burst) {
        return Figures.brief(burst.onSeconds() * 1000, 4) + "\u00a0ms of "
                + Figures.brief(burst.periodSeconds() * 1000, 4) + "\u00a0ms, "
                + Figures.brief(burst.lowLevelDb(), 4) + "\u00a0dB between";
    }

    static String of(EndPointOutcome outcome) {
        return switch (outcome) {
            case REACHED -> "reached";
            case NOT_REACHED -> "\u2265\u00a0bound";
            case ALREADY_BEYOND -> "\u2264\u00a0bound";
        };
    }

    /** Returns the sign that belongs before a power that is only a bound. */
    static String bound(EndPointOutcome outcome) {
        return switch (outcome) {
            case REACHED -> "";
            case NOT_REACHED -> "\u2265\u00a0";
            case ALREADY_BEYOND -> "\u2264\u00a0";
        };
    }

    static String of(Verdict verdict) {
        return switch (verdict) {
            case MEETS -> "meets";
            case FALLS_SHORT -> "falls short";
            case UNDECIDED -> "undecided";
        };
    }

    static String mark(Verdict verdict) {
        return switch (verdict) {
            case MEETS -> "meets";
            case FALLS_SHORT -> "short";
            case UNDECIDED -> "undecided";
        };
    }

    static String of(SupplyType type) {
        return switch (type) {
            case UNREGULATED -> "unregulated converter";
            case REGULATED -> "regulated converter";
            case DIRECT -> "output stage runs from the supply itself";
            case UNKNOWN -> "not stated";
        };
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

    static String unit(MeterQuantity quantity) {
        return switch (quantity) {
            case OUTPUT_VOLTS, SUPPLY_VOLTS -> "V";
            case SUPPLY_AMPS -> "A";
            case LOAD_OHMS -> "\u03a9";
            case TEMPERATURE_CELSIUS -> "\u00b0C";
        };
    }

    static String of(Severity severity) {
        return switch (severity) {
            case ERROR -> "error";
            case WARNING -> "warning";
            case NOTE -> "note";
        };
    }
}
