// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * A whole plot as data. Bands are drawn first, then series in their order, then marks.
 *
 * @param title the heading; may be empty
 * @param x the horizontal axis
 * @param y the vertical axis
 * @param series the series; every point must have a place on the axes (on a log axis: be above zero)
 * @param bands the bands; every x must have a place on the x axis
 * @param marks the marks; each must have a place on the axes
 * @param note a sentence shown small below the plot (conditions, source), or empty
 */
public record Plot(
        String title, Axis x, Axis y, List<Series> series, List<Band> bands, List<Mark> marks, Optional<String> note) {
    /** Checks the parameters and copies the lists. */
    public Plot {
        Objects.requireNonNull(title, "title");
        Objects.requireNonNull(x, "x");
        Objects.requireNonNull(y, "y");
        series = List.copyOf(series);
        bands = List.copyOf(bands);
        marks = List.copyOf(marks);
        Objects.requireNonNull(note, "note");
        for (Series each : series) {
            for (PlotPoint point : each.points()) {
                place(x, "x", point.x(), each.name());
                place(y, "y", point.y(), each.name());
            }
        }
        for (Band each : bands) {
            for (BandPoint point : each.points()) {
                place(x, "x", point.x(), each.name());
            }
        }
        for (Mark mark : marks) {
            if (mark instanceof Mark.VerticalLine line) {
                place(x, "x", line.x(), line.text());
            } else if (mark instanceof Mark.HorizontalLine line) {
                place(y, "y", line.y(), line.text());
            } else if (mark instanceof Mark.Point point) {
                place(x, "x", point.x(), point.text());
                place(y, "y", point.y(), point.text());
            }
        }
    }

    private static void place(Axis axis, String name, double value, String owner) {
        if (!axis.accepts(value)) {
            throw new IllegalArgumentException(
                    name + " must be above 0 on a log axis but is " + value + " in \"" + owner + "\".");
        }
    }

    /** Returns a plot with axes only. */
    public static Plot of(String title, Axis x, Axis y) {
        return new Plot(title, x, y, List.of(), List.of(), List.of(), Optional.empty());
    }

    /** Returns this plot with one more series, drawn over those it has. */
    public Plot withSeries(Series more) {
        return new Plot(title, x, y, plus(series, more), bands, marks, note);
    }

    /** Returns this plot with one more band. */
    public Plot withBand(Band more) {
        return new Plot(title, x, y, series, plus(bands, more), marks, note);
    }

    /** Returns this plot with one more mark. */
    public Plot withMark(Mark more) {
        return new Plot(title, x, y, series, bands, plus(marks, more), note);
    }

    /** Returns this plot with the note; an empty text takes it away. */
    public Plot withNote(String text) {
        Optional<String> newNote = text.isBlank() ? Optional.empty() : Optional.of(text);
        return new Plot(title, x, y, series, bands, marks, newNote);
    }

    /** Returns this plot with another title; empty for none. */
    public Plot withTitle(String newTitle) {
        return new Plot(newTitle, x, y, series, bands, marks, note);
    }

    /** Returns this plot with other axes, as after zooming. */
    public Plot withAxes(Axis newX, Axis newY) {
        return new Plot(title, newX, newY, series, bands, marks, note);
    }

    private static <T> List<T> plus(List<T> list, T more) {
        List<T> longer = new ArrayList<>(list.size() + 1);
        longer.addAll(list);
        longer.add(more);
        return longer;
    }
}
