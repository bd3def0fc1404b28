// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.ui.internal;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import org.ohmstead.lessons.Control;

/** The places that a slider on the screen can have, from 0 to {@link #last}, and the values that they stand for. */
final class SliderPlaces {
    private static final int SMOOTH = 400;
    private static final int MOST = 20_000;
    private static final int PAGES = 10;

    private final Control.Slider slider;
    private final int last;
    private final boolean stepped;

    SliderPlaces(Control.Slider slider) {
        this.slider = slider;
        double steps = slider.step() > 0 ? Math.rint((slider.most() - slider.least()) / slider.step()) : 0;
        stepped = !slider.logarithmic() && steps >= 1 && steps <= MOST;
        last = stepped ? (int) steps : SMOOTH;
    }

    int last() {
        return last;
    }

    /** Returns how many places a leap by the page keys goes. */
    int page() {
        return Math.max(1, last / PAGES);
    }

    /** Returns the value at a place; where there are no steps, one with no more digits than are shown. */
    double value(int place) {
        double share = (double) place / last;
        if (stepped) {
            return slider.nearest(slider.least() + share * (slider.most() - slider.least()));
        }
        BigDecimal exact = BigDecimal.valueOf(slider.atPlace(share));
        return slider.nearest(exact.round(new MathContext(slider.digits(), RoundingMode.HALF_EVEN))
                .doubleValue());
    }

    /** Returns the place nearest to a value. */
    int place(double value) {
        return (int) Math.rint(slider.placeOf(value) * last);
    }
}
