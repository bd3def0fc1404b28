// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import java.awt.Font;
import java.awt.FontFormatException;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import org.ohmstead.plot.chart.ChartFonts;

/** The type faces of the sheet. They come with the bundle, so that no folder of the machine is searched for fonts. */
final class SheetFonts {
    static final String FAMILY = "Open Sans";
    private static final float CHART_POINTS = 10;
    private static final List<String> SCREEN_FAMILIES =
            List.of(FAMILY, "Segoe UI", "Helvetica Neue", "Arial", "Liberation Sans", "DejaVu Sans");
    private static final String REGULAR = "OpenSans-Regular.ttf";
    private static final String BOLD = "OpenSans-Semibold.ttf";

    private SheetFonts() {}

    // Read once, not for each sheet: each reading leaves an open copy of the file behind until the program ends.
    private static final class Loaded {
        static final Font REGULAR = load(SheetFonts.REGULAR);
    }

    static InputStream regular() {
        return open(REGULAR);
    }

    static InputStream bold() {
        return open(BOLD);
    }

    static ChartFonts forCharts() {
        Font regular = Loaded.REGULAR.deriveFont(Font.PLAIN, CHART_POINTS);
        return new ChartFonts(regular, regular.deriveFont(Font.BOLD), SCREEN_FAMILIES);
    }

    private static InputStream open(String name) {
        InputStream stream = SheetFonts.class.getResourceAsStream(name);
        if (stream == null) {
            throw new IllegalStateException("The font " + name + " is missing from the report bundle.");
        }
        return stream;
    }

    private static Font load(String name) {
        try (InputStream stream = open(name)) {
            return Font.createFont(Font.TRUETYPE_FONT, stream);
        } catch (IOException e) {
            throw new UncheckedIOException("The font " + name + " of the report bundle cannot be read.", e);
        } catch (FontFormatException e) {
            throw new IllegalStateException("The font " + name + " of the report bundle is damaged.", e);
        }
    }
}
