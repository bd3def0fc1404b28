// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart.internal;

import java.awt.Font;
import java.awt.FontFormatException;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;

/** The two faces that come with this bundle, so that charts look alike on every machine and a PDF can embed them. */
public final class BundledFonts {
    /** The name of both faces together. */
    public static final String FAMILY = "Open Sans";

    private static final String REGULAR_FILE = "OpenSans-Regular.ttf";
    private static final String BOLD_FILE = "OpenSans-Semibold.ttf";

    private BundledFonts() {}

    // Read once: each reading leaves a copy of the file behind until the virtual machine ends.
    private static final class Loaded {
        static final Font REGULAR = load(REGULAR_FILE);
        static final Font BOLD = load(BOLD_FILE);
    }

    /** Returns the regular face, 1 point. */
    public static Font regular() {
        return Loaded.REGULAR;
    }

    /** Returns the bold face, 1 point. */
    public static Font bold() {
        return Loaded.BOLD;
    }

    static InputStream openRegular() {
        return open(REGULAR_FILE);
    }

    static InputStream openBold() {
        return open(BOLD_FILE);
    }

    private static InputStream open(String name) {
        InputStream stream = BundledFonts.class.getResourceAsStream(name);
        if (stream == null) {
            throw new IllegalStateException("The font " + name + " is missing from the chart bundle.");
        }
        return stream;
    }

    private static Font load(String name) {
        try (InputStream stream = open(name)) {
            return Font.createFont(Font.TRUETYPE_FONT, stream);
        } catch (IOException e) {
            throw new UncheckedIOException("The font " + name + " of the chart bundle cannot be read.", e);
        } catch (FontFormatException e) {
            throw new IllegalStateException("The font " + name + " of the chart bundle is damaged.", e);
        }
    }
}
