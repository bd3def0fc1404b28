// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.benchmarks;

import java.util.Locale;
import java.util.OptionalDouble;

/** What a row has to reach. */
public sealed interface Goal {
    /**
     * To be so many times faster than the reference, or more.
     *
     * @param factor above 0
     */
    record Faster(double factor) implements Goal {}

    /**
     * To take at most so many times as long as the reference.
     *
     * @param factor above 0
     */
    record TimesAsLong(double factor) implements Goal {}

    /**
     * To stay at or below a number in the unit of the row, whatever others do.
     *
     * @param limit above 0
     */
    record AtMost(double limit) implements Goal {}

    /**
     * To reach a number in the unit of the row.
     *
     * @param limit above 0
     */
    record AtLeast(double limit) implements Goal {}

    /** Nothing to reach: the row is there to be looked at. */
    record Shown() implements Goal {}

    /**
     * Returns how ours stands to the reference, as the kind of goal wants it; empty where there is none.
     *
     * @param ours what was measured of ours
     * @param reference what was measured of the reference, if there is one
     */
    default OptionalDouble ratio(double ours, OptionalDouble reference) {
        if (this instanceof AtMost most) {
            return OptionalDouble.of(ours / most.limit());
        }
        if (this instanceof AtLeast least) {
            return OptionalDouble.of(ours / least.limit());
        }
        if (reference.isEmpty()) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(
                this instanceof TimesAsLong ? ours / reference.getAsDouble() : reference.getAsDouble() / ours);
    }

    /** Returns whether it is met; a goal that needs a reference is not met without one. */
    default boolean isMet(double ours, OptionalDouble reference) {
        OptionalDouble ratio = ratio(ours, reference);
        if (this instanceof Shown) {
            return true;
        }
        if (ratio.isEmpty()) {
            return false;
        }
        if (this instanceof Faster faster) {
            return ratio.getAsDouble() >= faster.factor();
        }
        if (this instanceof AtLeast) {
            return ratio.getAsDouble() >= 1;
        }
        return ratio.getAsDouble() <= (this instanceof TimesAsLong longer ? longer.factor() : 1);
    }

    /** Returns the ratio in words, such as "5.3 times faster". */
    default String ratioText(double ours, OptionalDouble reference) {
        OptionalDouble ratio = ratio(ours, reference);
        if (ratio.isEmpty()) {
            return "-";
        }
        boolean slower = this instanceof Shown && ratio.getAsDouble() < 1;
        double value = slower ? 1 / ratio.getAsDouble() : ratio.getAsDouble();
        String number = String.format(Locale.ROOT, value < 10 ? "%.2f" : "%.0f", value);
        if (slower || this instanceof TimesAsLong) {
            return number + " x the time";
        }
        return this instanceof AtMost || this instanceof AtLeast ? number + " of the limit" : number + " x faster";
    }

    /** Returns the goal in words, such as "5 x faster". */
    default String text(String unit) {
        if (this instanceof Faster faster) {
            return number(faster.factor()) + " x faster";
        }
        if (this instanceof TimesAsLong longer) {
            return "<= " + number(longer.factor()) + " x the time";
        }
        if (this instanceof AtMost most) {
            return "<= " + number(most.limit()) + " " + unit;
        }
        if (this instanceof AtLeast least) {
            return ">= " + number(least.limit()) + " " + unit;
        }
        return "-";
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, value == Math.rint(value) ? "%.0f" : "%.2f", value);
    }
}
