// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.ohmstead.metrology.Verdict;
import org.ohmstead.model.DistortionMeasure;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.Mode;
import org.ohmstead.model.PowerKind;
import org.ohmstead.model.Range;
import org.ohmstead.model.Severity;
import org.ohmstead.testlog.search.IndexedEntry;
import org.ohmstead.units.QuantityFormat;
import org.ohmstead.units.text.Messages;

/** What the command line says, from its message files, and the wording that several words share. */
final class Texts {
    private static final QuantityFormat TWO = QuantityFormat.digits(2);
    private static final QuantityFormat THREE = QuantityFormat.digits(3);
    private static final QuantityFormat FOUR = QuantityFormat.digits(4);
    private static final int MOST_NAMES = 8;
    private static final double SECONDS_PER_MINUTE = 60;
    private static final double SECONDS_PER_HOUR = 3600;
    private static final double LONGEST_IN_SECONDS = 120;
    private static final double LONGEST_IN_MINUTES = 7200;

    private static final Messages TEXTS = Messages.of(Texts.class);

    private Texts() {}

    /** Returns a text of the command line; numbers stand in it as they are, without a locale's grouping. */
    static String of(String key, Object... arguments) {
        return TEXTS.text(key, Arrays.stream(arguments).map(String::valueOf).toArray());
    }

    static boolean has(String key) {
        return TEXTS.has(key);
    }

    /** Returns the text that fits a number: that of one under the key's ".one", else that under its ".many". */
    static String count(String key, long number) {
        return of(key + (number == 1 ? ".one" : ".many"), number);
    }

    static String mode(Mode mode) {
        return of("mode." + mode.name());
    }

    static String kind(PowerKind kind) {
        return of("kind." + kind.name());
    }

    static String verdict(Verdict verdict) {
        return of("verdict." + verdict.name());
    }

    static String endPoint(EndPoint endPoint) {
        if (endPoint instanceof EndPoint.DistortionLimit limit) {
            String measure = limit.measure() == DistortionMeasure.THD_PLUS_NOISE_R
                    ? "THD+N"
                    : limit.measure().name();
            return number(100 * limit.ratio()) + " % " + measure;
        }
        if (endPoint instanceof EndPoint.FixedLevel level) {
            return of("endPoint.level", number(level.driveDb()));
        }
        return of("endPoint.clipping");
    }

    static String outcome(EndPointOutcome outcome) {
        return of("outcome." + outcome.name());
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
        return low.equals(high) ? low : between(low, high);
    }

    /** Returns two ends as "1.2 to 3.4". */
    static String between(String low, String high) {
        return of("range.ends", low, high);
    }

    /** Returns the word for an entry's state, and whether an instrument was overdue. */
    static String state(IndexedEntry entry) {
        String word = entry.state().word();
        return entry.overdue() ? of("state.overdue", word) : word;
    }

    /** Returns a line with a name and what is said of it; the names of a language decide how far apart. */
    static String row(String name, String value) {
        return String.format("  %-" + of("row.width") + "s %s", name, value);
    }

    static String yesNo(boolean yes) {
        return of(yes ? "table.yes" : "table.no");
    }

    /** Returns the word for how serious a problem is, in capitals. */
    static String severity(Severity severity) {
        return of("severity." + severity.name());
    }

    /** Returns the first few of some names, and how many more there are. */
    static String some(List<String> names) {
        String first = String.join(", ", names.subList(0, Math.min(MOST_NAMES, names.size())));
        return names.size() > MOST_NAMES ? of("some.more", first, names.size() - MOST_NAMES) : first;
    }
}
