// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot;

/** The outline of a marker; together with the colour it tells series apart, so that neither is needed alone. */
public enum MarkerShape {
    /** Filled circle. */
    CIRCLE,
    /** Filled square. */
    SQUARE,
    /** Filled triangle, point upwards. */
    TRIANGLE_UP,
    /** Filled diamond. */
    DIAMOND,
    /** Filled triangle, point downwards. */
    TRIANGLE_DOWN,
    /** Diagonal cross of two strokes. */
    CROSS,
    /** Upright cross of two strokes. */
    PLUS,
    /** Circle of which only the outline is drawn. */
    HOLLOW_CIRCLE,
    /** Square of which only the outline is drawn. */
    HOLLOW_SQUARE,
    /** Diamond of which only the outline is drawn; the usual one for a rating. */
    HOLLOW_DIAMOND,
    /** Triangle, point upwards, of which only the outline is drawn. */
    HOLLOW_TRIANGLE_UP;

    /** Returns whether the inside of the outline is painted in the colour of the series. */
    public boolean isFilled() {
        return switch (this) {
            case CIRCLE, SQUARE, TRIANGLE_UP, DIAMOND, TRIANGLE_DOWN -> true;
            case CROSS, PLUS, HOLLOW_CIRCLE, HOLLOW_SQUARE, HOLLOW_DIAMOND, HOLLOW_TRIANGLE_UP -> false;
        };
    }
}
