// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot;

import java.util.Objects;
import java.util.OptionalInt;

/** Something pointed out in a plot: a limit, a rating, a place worth reading. */
public sealed interface Mark {
    /** Returns what is written beside the mark; may be empty. */
    String text();

    /** Returns the index of its colour in {@link Palette}; empty for the neutral dark grey. */
    OptionalInt tone();

    /**
     * A line across the whole height of the plot.
     *
     * @param x its place along the x axis; finite
     * @param text written at its upper end; may be empty
     * @param tone colour index 0 to 7, or empty for neutral
     */
    record VerticalLine(double x, String text, OptionalInt tone) implements Mark {
        /** Checks the parameters. */
        public VerticalLine {
            Checks.finite("x", x);
            Objects.requireNonNull(text, "text");
            Checks.tone(tone);
        }
    }

    /**
     * A line across the whole width of the plot.
     *
     * @param y its place along the y axis; finite
     * @param text written above its right end; may be empty
     * @param tone colour index 0 to 7, or empty for neutral
     */
    record HorizontalLine(double y, String text, OptionalInt tone) implements Mark {
        /** Checks the parameters. */
        public HorizontalLine {
            Checks.finite("y", y);
            Objects.requireNonNull(text, "text");
            Checks.tone(tone);
        }
    }

    /**
     * A single place.
     *
     * @param x its place along the x axis; finite
     * @param y its place along the y axis; finite
     * @param text written beside it; may be empty
     * @param shape the marker drawn there
     * @param tone colour index 0 to 7, or empty for neutral
     */
    record Point(double x, double y, String text, MarkerShape shape, OptionalInt tone) implements Mark {
        /** Checks the parameters. */
        public Point {
            Checks.finite("x", x);
            Checks.finite("y", y);
            Objects.requireNonNull(text, "text");
            Objects.requireNonNull(shape, "shape");
            Checks.tone(tone);
        }
    }

    /** Returns a neutral vertical line at x. */
    static Mark vertical(double x, String text) {
        return new VerticalLine(x, text, OptionalInt.empty());
    }

    /** Returns a neutral horizontal line at y. */
    static Mark horizontal(double y, String text) {
        return new HorizontalLine(y, text, OptionalInt.empty());
    }

    /** Returns a neutral point at (x, y). */
    static Mark point(double x, double y, String text, MarkerShape shape) {
        return new Point(x, y, text, shape, OptionalInt.empty());
    }

    /** Returns a point at (x, y) in the colour of the series with the same tone, 0 to 7. */
    static Mark point(double x, double y, String text, MarkerShape shape, int tone) {
        return new Point(x, y, text, shape, OptionalInt.of(tone));
    }
}
