// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.util.Locale;
import org.ohmstead.metrology.Verdict;
import org.ohmstead.model.DistortionMeasure;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.Mode;
import org.ohmstead.model.PowerKind;

/** The wording that the tables of several words share. */
final class Texts {
    private Texts() {}

    static String mode(Mode mode) {
        return mode.name().toLowerCase(Locale.ROOT);
    }

    static String kind(PowerKind kind) {
        return kind == PowerKind.BURST ? "burst" : "steady";
    }

    static String verdict(Verdict verdict) {
        return verdict.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    static String endPoint(EndPoint endPoint) {
        if (endPoint instanceof EndPoint.DistortionLimit limit) {
            String measure = limit.measure() == DistortionMeasure.THD_PLUS_NOISE_R
                    ? "THD+N"
                    : limit.measure().name();
            return number(100 * limit.ratio()) + " % " + measure;
        }
        if (endPoint instanceof EndPoint.FixedLevel level) {
            return number(level.driveDb()) + " dB drive";
        }
        return "clipping onset";
    }

    static String outcome(EndPointOutcome outcome) {
        return switch (outcome) {
            case REACHED -> "reached";
            case NOT_REACHED -> "not reached: lower bound";
            case ALREADY_BEYOND -> "beyond from the start: upper bound";
        };
    }

    /** Returns a number without needless zeros, for labels. */
    static String number(double value) {
        String text = String.format(Locale.ROOT, "%.6g", value);
        if (!text.contains("e") && text.contains(".")) {
            text = text.replaceAll("0+$", "").replaceAll("\\.$", "");
        }
        return text;
    }

    /** Returns a number with a fixed count of decimals. */
    static String fixed(double value, int decimals) {
        return String.format(Locale.ROOT, "%." + decimals + "f", value);
    }
}
