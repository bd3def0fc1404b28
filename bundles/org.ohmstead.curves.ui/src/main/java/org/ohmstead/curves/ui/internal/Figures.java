// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.ui.internal;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Optional;
import java.util.regex.Pattern;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.look.Stated;

/** Numbers as this view shows them. */
final class Figures {
    private static final Pattern NUMBER = Pattern.compile("\\d{1,6}(\\.\\d{0,6})?");

    private Figures() {}

    static Stated stated(double value, double expandedUncertainty) {
        return Stated.of(value, expandedUncertainty, alone -> fixed(alone, 1));
    }

    static String fixed(double value, int places) {
        return Numbers.localised(rounded(value, places).toPlainString());
    }

    private static BigDecimal rounded(double value, int places) {
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(places, RoundingMode.HALF_UP);
        return rounded.scale() < 0 ? rounded.setScale(0) : rounded;
    }

    /** Returns the number with a sign in front, also above 0; what rounds to 0 has none. */
    static String signed(double value, int places) {
        String text = fixed(value, places);
        return rounded(value, places).signum() > 0 ? "+" + text : text;
    }

    /** Returns supply volts with one decimal place, or with two when they need them. */
    static String volts(double supplyVolts) {
        return fixed(supplyVolts, rounded(supplyVolts, 2).stripTrailingZeros().scale() > 1 ? 2 : 1);
    }

    /** Reads a number above zero, with a decimal point or comma. */
    static Optional<Double> read(String text) {
        String plain = text.strip().replace(',', '.');
        if (!NUMBER.matcher(plain).matches()) {
            return Optional.empty();
        }
        return Optional.of(Double.valueOf(plain)).filter(value -> value > 0);
    }

    /** Returns a probability in percent that never claims certainty: "> 99.9" and "< 0.1" at the ends. */
    static String probability(double probability) {
        double percent = 100 * probability;
        if (percent > 99.9) {
            return Numbers.localised("> 99.9");
        }
        if (percent < 0.1) {
            return Numbers.localised("< 0.1");
        }
        return fixed(percent, 1);
    }
}
