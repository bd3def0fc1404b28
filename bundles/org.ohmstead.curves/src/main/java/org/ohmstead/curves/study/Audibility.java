// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.study;

import org.ohmstead.units.text.Messages;

/**
 * Whether a difference of level could be heard when two amplifiers are switched over directly, with nothing else
 * changed. Sources differ: just noticeable differences of 0.3 to 0.5 dB loud and about 1 dB at moderate level are
 * reported from direct comparison, others call 3 dB the least that is noticed in daily use; the bounds here are taken
 * from these.
 */
public enum Audibility {
    /** Below 0.3 dB. */
    NOT_HEARD,
    /** From 0.3 dB to below 1 dB. */
    DIRECT_COMPARISON_AT_BEST,
    /** From 1 dB to below 3 dB. */
    ABOUT_THRESHOLD,
    /** From 3 dB on. */
    CLEAR;

    private static final Messages TEXTS = Messages.of(Audibility.class);

    private static final double HEARD_FROM_DB = 0.3;
    private static final double THRESHOLD_DB = 1;
    private static final double CLEAR_FROM_DB = 3;

    /** Returns the class of a difference in dB of either sign. */
    public static Audibility of(double differenceDb) {
        double size = Math.abs(differenceDb);
        if (size < HEARD_FROM_DB) {
            return NOT_HEARD;
        }
        if (size < THRESHOLD_DB) {
            return DIRECT_COMPARISON_AT_BEST;
        }
        return size < CLEAR_FROM_DB ? ABOUT_THRESHOLD : CLEAR;
    }

    /** Returns how it is said in a sentence. */
    public String words() {
        return TEXTS.text("audibility." + name());
    }
}
