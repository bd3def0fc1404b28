// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.util.Locale;

/** Says how long something lasts. */
final class Spans {
    private static final double MINUTE = 60;
    private static final double HOUR = 3600;
    private static final double SEVERAL = 2;

    private Spans() {}

    static String say(double seconds) {
        if (seconds < 1) {
            return String.format(Locale.ROOT, "%.3g s", seconds);
        }
        if (seconds < SEVERAL * MINUTE) {
            return String.format(Locale.ROOT, "%.1f s", seconds);
        }
        if (seconds < SEVERAL * HOUR) {
            return String.format(Locale.ROOT, "%.1f min", seconds / MINUTE);
        }
        return String.format(Locale.ROOT, "%.1f h", seconds / HOUR);
    }
}
