// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.ui.internal;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import org.ohmstead.workbench.look.Numbers;

/** Numbers as this view shows them. */
final class Figures {
    private static final int UNCERTAINTY_DIGITS = 2;

    private Figures() {}

    /**
     * A value and its expanded uncertainty, the uncertainty with two significant digits and the value to the same place (GUM 7.2.6);
     * the uncertainty is empty when there is none.
     */
    record Stated(String value, String expanded) {
        String text() {
            return expanded.isEmpty() ? value : value + "\u00a0\u00b1\u00a0" + expanded;
        }
    }

    static Stated stated(double value, double expandedUncertainty) {
        if (!(expandedUncertainty > 0)) {
            return new Stated(fixed(value, 1), "");
        }
        BigDecimal rounded = BigDecimal.valueOf(expandedUncertainty)
                .round(new MathContext(UNCERTAINTY_DIGITS, RoundingMode.HALF_UP));
        int places = UNCERTAINTY_DIGITS - 1 - (rounded.precision() - rounded.scale() - 1);
        return new Stated(fixed(value, places), fixed(rounded.doubleValue(), places));
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
