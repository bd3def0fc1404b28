// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.look;

import java.util.Objects;
import java.util.function.DoubleFunction;
import org.ohmstead.units.StatedValue;

/**
 * A value and its expanded uncertainty as they are shown, with the user's decimal sign.
 *
 * @param value rounded to the uncertainty
 * @param expanded the uncertainty with two significant digits; empty when there is none
 */
public record Stated(String value, String expanded) {
    public Stated {
        Objects.requireNonNull(value, "value");
        Objects.requireNonNull(expanded, "expanded");
    }

    /**
     * Returns the pair as {@link StatedValue} rounds it.
     *
     * @param value finite
     * @param expandedUncertainty in the unit of the value; unless it is above 0 there is none
     * @param alone writes a value without uncertainty
     */
    public static Stated of(double value, double expandedUncertainty, DoubleFunction<String> alone) {
        if (!(expandedUncertainty > 0)) {
            return new Stated(alone.apply(value), "");
        }
        StatedValue rounded = StatedValue.of(value, expandedUncertainty);
        return new Stated(Numbers.localised(rounded.value()), Numbers.localised(rounded.uncertainty()));
    }

    /** Returns "97.3 ± 2.1", or the value alone when there is no uncertainty. */
    public String text() {
        return expanded.isEmpty() ? value : value + "\u00a0\u00b1\u00a0" + expanded;
    }
}
