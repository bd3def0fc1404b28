// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.ui;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.ohmstead.plot.ui.internal.Figures;
import org.ohmstead.units.text.Messages;

/**
 * What stands under the crosshair.
 *
 * @param x where the crosshair is, in the unit of the x axis
 * @param xText the same as it is written, with its unit
 * @param entries one for each visible series that has a value there, in the order of the plot
 * @param bands one for each visible band that spans x
 * @param point the data point that the pointer is on, if any
 */
public record PlotReadOut(
        double x, String xText, List<Entry> entries, List<BandEntry> bands, Optional<ChosenPoint> point) {
    private static final Messages TEXTS = Messages.of(Figures.class);

    /** Copies the lists. */
    public PlotReadOut {
        Objects.requireNonNull(xText, "xText");
        entries = List.copyOf(entries);
        bands = List.copyOf(bands);
        Objects.requireNonNull(point, "point");
    }

    /**
     * The value of one series.
     *
     * @param series its name
     * @param tone the index of its colour
     * @param x the place of the value: that of the crosshair on a line, that of the nearest point else
     * @param y the value
     * @param dataPoint whether it is a point of the data; false between two points of a line
     * @param barHalfLength the half length of the point's uncertainty bar, usually the expanded uncertainty
     * @param text the value as it is written, with unit and uncertainty
     */
    public record Entry(
            String series, int tone, double x, double y, boolean dataPoint, OptionalDouble barHalfLength, String text) {
        /** Checks the parameters. */
        public Entry {
            Objects.requireNonNull(series, "series");
            Objects.requireNonNull(barHalfLength, "barHalfLength");
            Objects.requireNonNull(text, "text");
        }
    }

    /**
     * The edges of one band.
     *
     * @param band its name
     * @param tone the index of its colour
     * @param lower the lower edge
     * @param upper the upper edge
     * @param text both as they are written, with their unit
     */
    public record BandEntry(String band, int tone, double lower, double upper, String text) {
        /** Checks the parameters. */
        public BandEntry {
            Objects.requireNonNull(band, "band");
            Objects.requireNonNull(text, "text");
        }
    }

    /** Returns the entry of the series with the name. */
    public Optional<Entry> entry(String series) {
        return entries.stream().filter(each -> each.series().equals(series)).findFirst();
    }

    /** Returns the whole as one sentence, for those who hear it. */
    public String sentence() {
        String values = Stream.concat(
                        entries.stream().map(each -> named(each.series(), each.text())),
                        bands.stream().map(each -> named(each.band(), each.text())))
                .collect(Collectors.joining("; "));
        return values.isEmpty()
                ? TEXTS.text("readOut.sentence.none", xText)
                : TEXTS.text("readOut.sentence", xText, values);
    }

    private static String named(String name, String text) {
        return name.isBlank() ? text : name + " " + text;
    }
}
