// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart.internal;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;

/** Numbers of the form 1, 2 or 5 times a power of ten, exactly, and how they are written: plainly. */
final class RoundNumbers {
    private static final double SLACK = 1e-9;
    private static final int LARGEST_PLAIN_EXPONENT = 12;

    private RoundNumbers() {}

    /** A step of mantissa times ten to the exponent. */
    record Step(int mantissa, int exponent) {
        double value() {
            return BigDecimal.valueOf(mantissa, -exponent).doubleValue();
        }

        /** The exact multiple, so that 3 times 0.1 is 0.3. */
        BigDecimal times(long count) {
            return BigDecimal.valueOf(mantissa * count, -exponent);
        }

        Step next() {
            return switch (mantissa) {
                case 1 -> new Step(2, exponent);
                case 2 -> new Step(5, exponent);
                default -> new Step(1, exponent + 1);
            };
        }
    }

    /** The smallest step that divides the span into at most the given number of parts. */
    static Step step(double span, double mostParts) {
        double wanted = span / mostParts;
        Step step = new Step(1, (int) Math.floor(Math.log10(wanted)) - 1);
        while (step.value() < wanted * (1 - SLACK)) {
            step = step.next();
        }
        return step;
    }

    /** All multiples of the step from lower to upper, both included. */
    static List<BigDecimal> multiples(Step step, double lower, double upper) {
        List<BigDecimal> found = new ArrayList<>();
        double size = step.value();
        long last = (long) Math.floor(upper / size + SLACK);
        for (long i = (long) Math.ceil(lower / size - SLACK); i <= last; i++) {
            found.add(step.times(i));
        }
        return found;
    }

    /** All 1 to 9 times powers of ten from lower to upper, both included. */
    static List<Step> logPlaces(double lower, double upper) {
        List<Step> found = new ArrayList<>();
        int last = (int) Math.floor(Math.log10(upper) + SLACK);
        for (int exponent = (int) Math.floor(Math.log10(lower)); exponent <= last; exponent++) {
            for (int mantissa = 1; mantissa <= 9; mantissa++) {
                Step place = new Step(mantissa, exponent);
                if (place.value() >= lower * (1 - SLACK) && place.value() <= upper * (1 + SLACK)) {
                    found.add(place);
                }
            }
        }
        return found;
    }

    /** Writes the number without exponent as long as that stays readable; minus is a hyphen. */
    static String plain(BigDecimal number) {
        BigDecimal shown = number.signum() == 0 ? BigDecimal.ZERO.setScale(Math.max(0, number.scale())) : number;
        if (shown.signum() != 0 && Math.abs(shown.precision() - shown.scale()) > LARGEST_PLAIN_EXPONENT) {
            return shown.stripTrailingZeros().toString();
        }
        return shown.toPlainString();
    }
}
