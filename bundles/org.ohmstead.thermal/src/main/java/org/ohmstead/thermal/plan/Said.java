// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import java.util.Locale;
import org.ohmstead.units.text.Messages;

/** Numbers as people say them. */
final class Said {
    private static final Messages TEXTS = Messages.of(Said.class);
    private static final double SECONDS_PER_MINUTE = 60;
    private static final double SECONDS_PER_HOUR = 3600;
    private static final double MINUTES_FROM = 100;

    private Said() {}

    /** Returns a length of time such as "45 s", "12.5 min" or "3.2 h". */
    static String time(double seconds) {
        if (seconds < MINUTES_FROM) {
            return three(seconds) + " s";
        }
        return seconds < MINUTES_FROM * SECONDS_PER_MINUTE
                ? three(seconds / SECONDS_PER_MINUTE) + " min"
                : three(seconds / SECONDS_PER_HOUR) + " h";
    }

    /** Returns a number of about three digits. */
    static String three(double value) {
        double size = Math.abs(value);
        String text = String.format(
                Locale.ROOT, size >= 100 ? "%.0f" : size >= 10 ? "%.1f" : size >= 1 ? "%.2f" : "%.3f", value);
        return text.indexOf('.') < 0 ? text : text.replaceFirst("0+$", "").replaceFirst("\\.$", "");
    }

    static String celsius(double value) {
        return TEXTS.text(
                "said.celsius", String.format(Locale.ROOT, "%.1f", value).replaceFirst("\\.0$", ""));
    }
}
