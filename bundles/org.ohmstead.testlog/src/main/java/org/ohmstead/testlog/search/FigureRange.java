// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.search;

import java.util.Locale;
import java.util.Set;

/**
 * A range that a figure of an entry must lie in, both ends included.
 *
 * @param figureId "power" (watts) and "thd" (ratio) of the weakest channel of a reading, "supply" (volts) of a reading or figures; or
 *     the id of a measured figure, such as "dampingFactor", of which one value must lie in the range
 * @param least lower end; negative infinity when there is none
 * @param most upper end, not below {@code least}; infinity when there is none
 */
public record FigureRange(String figureId, double least, double most) {
    /** Id of a reading's power in watts. */
    public static final String POWER = "power";

    /** Id of a reading's harmonics over the fundamental. */
    public static final String THD = "thd";

    /** Id of the supply in volts. */
    public static final String SUPPLY = "supply";

    static final Set<String> OF_READINGS = Set.of(POWER, THD, SUPPLY);

    public FigureRange {
        if (!isId(figureId)) {
            throw new IllegalArgumentException("figureId is \"" + figureId
                    + "\"; it must begin with a letter and hold letters, digits, points, hyphens and underlines only");
        }
        String word = figureId.toLowerCase(Locale.ROOT);
        if (FindKey.ofWord(word).isPresent()) {
            throw new IllegalArgumentException(
                    "figureId is \"" + figureId + "\", which a query uses for something else; it must be another name");
        }
        figureId = OF_READINGS.contains(word) ? word : figureId;
        boolean ends = least < Double.POSITIVE_INFINITY && most > Double.NEGATIVE_INFINITY;
        if (!ends || !(least <= most)) {
            throw new IllegalArgumentException("the range of " + figureId + " goes from " + least + " to " + most
                    + "; its upper end must not be below its lower end");
        }
    }

    /** Returns whether a text can be the id of a figure. */
    static boolean isId(String text) {
        return text.matches("[A-Za-z][A-Za-z0-9_.-]*");
    }

    /** Returns whether a value lies in the range. */
    public boolean holds(double value) {
        return value >= least && value <= most;
    }
}
