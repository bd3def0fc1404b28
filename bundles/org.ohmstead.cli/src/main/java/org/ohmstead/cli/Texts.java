// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.util.List;
import java.util.Locale;
import org.ohmstead.metrology.Verdict;
import org.ohmstead.model.DistortionMeasure;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.Mode;
import org.ohmstead.model.PowerKind;
import org.ohmstead.model.Range;
import org.ohmstead.units.QuantityFormat;

/** The wording that the tables of several words share. */
final class Texts {
    private static final QuantityFormat TWO = QuantityFormat.digits(2);
    private static final QuantityFormat THREE = QuantityFormat.digits(3);
    private static final QuantityFormat FOUR = QuantityFormat.digits(4);
    private static final int MOST_NAMES = 8;
    private static final double SECONDS_PER_MINUTE = 60;
    private static final double SECONDS_PER_HOUR = 3600;
    private static final double LONGEST_IN_SECONDS = 120;
    private static final double LONGEST_IN_MINUTES = 7200;

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

    /** Returns a time in the unit that fits, with three digits: 0.15 s, 12 s, 10 min, 100 h. */
    static String time(double seconds) {
        if (seconds < LONGEST_IN_SECONDS) {
            return three(seconds) + " s";
        }
        return seconds < LONGEST_IN_MINUTES
                ? three(seconds / SECONDS_PER_MINUTE) + " min"
                : three(seconds / SECONDS_PER_HOUR) + " h";
    }

    /** Returns a number with three significant digits, without an exponent. */
    static String three(double value) {
        return THREE.format(value);
    }

    /** Returns the same with two, as befits an uncertainty. */
    static String two(double value) {
        return TWO.format(value);
    }

    /** Returns the same with four. */
    static String four(double value) {
        return FOUR.format(value);
    }

    /** Returns a range as "1.2 to 3.4", or the one number when both ends look alike. */
    static String range(Range range, int decimals) {
        String low = fixed(range.low(), decimals);
        String high = fixed(range.high(), decimals);
        return low.equals(high) ? low : low + " to " + high;
    }

    /** Returns the first few of some names, and how many more there are. */
    static String some(List<String> names) {
        String first = String.join(", ", names.subList(0, Math.min(MOST_NAMES, names.size())));
        return names.size() > MOST_NAMES ? first + " and " + (names.size() - MOST_NAMES) + " more" : first;
    }
}
