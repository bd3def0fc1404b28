// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.OptionalDouble;
import org.ohmstead.workbench.look.Coverage;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.look.Stated;

/** Numbers, times and hashes as the test log shows them. */
final class Figures {
    static final String NONE = "\u2013";

    private static final int DIGITS_WITHOUT_UNCERTAINTY = 4;
    private static final int SHORT_HASH = 10;
    private static final DateTimeFormatter SECOND =
            DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm:ss", Locale.ROOT).withZone(ZoneOffset.UTC);

    private static final DateTimeFormatter MINUTE =
            DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT).withZone(ZoneOffset.UTC);

    private Figures() {}

    static Stated stated(double value, double standardUncertainty) {
        return Stated.of(
                value,
                Coverage.expanded(standardUncertainty),
                alone -> Numbers.digits(alone, DIGITS_WITHOUT_UNCERTAINTY));
    }

    static String fixed(double value, int places) {
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(places, RoundingMode.HALF_UP);
        return Numbers.localised((rounded.scale() < 0 ? rounded.setScale(0) : rounded).toPlainString());
    }

    static String fixed(OptionalDouble value, int places) {
        return value.isPresent() ? fixed(value.getAsDouble(), places) : NONE;
    }

    /** Returns a ratio in percent with two significant digits below 10 %, trailing zeros kept: 0.01 gives "1.0". */
    static String percent(double ratio) {
        double percent = 100 * ratio;
        return percent == 0 ? "0" : Numbers.digits(percent, percent < 10 ? 2 : 3);
    }

    static String time(Instant time) {
        return SECOND.format(time);
    }

    static String minute(Instant time) {
        return MINUTE.format(time);
    }

    /** Returns how many decimal places show a figure with so many significant digits, 0 or more. */
    static int places(double value, int digits) {
        return value > 0 ? Math.max(0, digits - 1 - (int) Math.floor(Math.log10(value))) : digits;
    }

    static String shortHash(String hash) {
        return hash.length() <= SHORT_HASH ? hash : hash.substring(0, SHORT_HASH) + "\u2026";
    }
}
