// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.OptionalDouble;
import org.ohmstead.units.QuantityFormat;

/** Numbers and times as the sheet prints them: decimal point, true minus sign, no exponent form. */
final class Figures {
    static final char MINUS = '\u2212';
    static final String NONE = "\u2013";
    private static final int HASH_DIGITS = 10;
    private static final DateTimeFormatter MINUTE =
            DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT).withZone(ZoneOffset.UTC);
    private static final DateTimeFormatter CLOCK =
            DateTimeFormatter.ofPattern("HH:mm:ss", Locale.ROOT).withZone(ZoneOffset.UTC);
    private static final DateTimeFormatter DAY =
            DateTimeFormatter.ofPattern("uuuu-MM-dd", Locale.ROOT).withZone(ZoneOffset.UTC);

    private Figures() {}

    static String fixed(double value, int places) {
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(places, RoundingMode.HALF_UP);
        return rounded.toPlainString().replace('-', MINUS);
    }

    static String fixed(OptionalDouble value, int places) {
        return value.isPresent() ? fixed(value.getAsDouble(), places) : NONE;
    }

    /** Returns the number with its sign in front, also for what is above 0; what rounds to 0 has none. */
    static String signed(double value, int places) {
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(places, RoundingMode.HALF_UP);
        String text = rounded.abs().toPlainString();
        if (rounded.signum() == 0) {
            return text;
        }
        return (rounded.signum() < 0 ? MINUS : '+') + text;
    }

    /** Returns the number with so many significant digits, trailing zeros kept. */
    static String significant(double value, int digits) {
        return QuantityFormat.digits(digits).format(value).replace('-', MINUS);
    }

    /** Returns the number with at most so many significant digits and without trailing zeros: 4, 1.33, 14.4. */
    static String brief(double value, int digits) {
        String text = QuantityFormat.digits(digits).format(value);
        if (text.indexOf('.') >= 0) {
            text = text.replaceAll("0+$", "").replaceAll("\\.$", "");
        }
        return text.replace('-', MINUS);
    }

    static String ohms(double value) {
        return brief(value, 4) + "\u00a0\u03a9";
    }

    static String volts(double value) {
        return brief(value, 4) + "\u00a0V";
    }

    static String hertz(double value) {
        return value >= 1000 ? brief(value / 1000, 4) + "\u00a0kHz" : brief(value, 4) + "\u00a0Hz";
    }

    /** Returns a ratio in percent: 0.0123 at two digits gives "1.2". */
    static String percent(double ratio, int digits) {
        return brief(ratio * 100, digits);
    }

    /** Returns the beginning of a hash, long enough to tell the files of one test apart. */
    static String shortHash(String hash) {
        return hash.length() <= HASH_DIGITS ? hash : hash.substring(0, HASH_DIGITS);
    }

    static String minute(Instant time) {
        return MINUTE.format(time);
    }

    /** Returns the time of day in UTC without its date. */
    static String clock(Instant time) {
        return CLOCK.format(time);
    }

    static String day(Instant time) {
        return DAY.format(time);
    }
}
