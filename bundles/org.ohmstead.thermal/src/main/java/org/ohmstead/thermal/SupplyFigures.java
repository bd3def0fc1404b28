// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.util.Locale;
import org.ohmstead.units.QuantityFormat;

/** Numbers in sentences. */
final class SupplyFigures {
    private static final QuantityFormat THREE = QuantityFormat.digits(3);

    private SupplyFigures() {}

    /** Returns a number with three significant digits, without an exponent. */
    static String three(double value) {
        return THREE.format(value);
    }

    /** Returns a number to a tenth. */
    static String tenth(double value) {
        return format("%.1f", value);
    }

    /** Returns a number in a format of {@link String#format}, with a point whatever the language. */
    static String format(String format, double value) {
        return String.format(Locale.ROOT, format, value);
    }

    /** Returns a time in the unit that fits: 0.15 s, 12.0 s, 10.0 min, 100 h. */
    static String time(double seconds) {
        if (seconds < 120) {
            return three(seconds) + " s";
        }
        return seconds < 7200 ? three(seconds / 60) + " min" : three(seconds / 3600) + " h";
    }
}
