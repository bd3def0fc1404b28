// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.look;

import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.RGB;
import org.eclipse.swt.widgets.Control;
import org.ohmstead.model.Severity;

/**
 * The colours for accents and messages, made for a light or a dark background. Each text tone stands out from the background by a contrast
 * ratio of at least 4.5 (WCAG 2.2, 1.4.3). A tone never carries a meaning alone: an icon or a word stands beside it.
 *
 * @param dark whether they are meant for a dark background
 * @param background what they are meant to stand on
 * @param text plain text
 * @param mutedText text of less weight
 * @param error text that tells of an error
 * @param warning text that tells of a warning
 * @param ok text that tells of success
 * @param accent the focus and whatever should be seen first
 * @param line separating lines
 */
public record Tones(
        boolean dark,
        Color background,
        Color text,
        Color mutedText,
        Color error,
        Color warning,
        Color ok,
        Color accent,
        Color line) {
    /** The tones for a light background. */
    public static final Tones LIGHT = new Tones(
            false,
            tone(0xFAFAFA),
            tone(0x1F2328),
            tone(0x5A6169),
            tone(0xB3261E),
            tone(0x85560A),
            tone(0x1E6B3A),
            tone(0x0B6E6B),
            tone(0xC9CDD2));

    /** The tones for a dark background. */
    public static final Tones DARK = new Tones(
            true,
            tone(0x2D2F31),
            tone(0xECEDEE),
            tone(0xB0B6BD),
            tone(0xFF9A90),
            tone(0xF2B84B),
            tone(0x84D39B),
            tone(0x5CC4BB),
            tone(0x55595E));

    private static final double DARK_BELOW = 0.18;

    /** The theme of the workbench, once it is known; null outside a workbench. */
    private static volatile Tones ofTheme;

    /**
     * Says which theme the workbench has: its tones go for every control from now on, also for one that has not got its background yet.
     *
     * @param dark whether it is the dark one
     */
    public static void follow(boolean dark) {
        ofTheme = dark ? DARK : LIGHT;
    }

    /** Returns the tones of the workbench's theme, or outside a workbench those that fit the background which a control has now. */
    public static Tones of(Control control) {
        Tones known = ofTheme;
        if (known != null) {
            return known;
        }
        return luminance(control.getBackground().getRGB()) < DARK_BELOW ? DARK : LIGHT;
    }

    /** Returns the tone for the text of a message. */
    public Color of(Severity severity) {
        return switch (severity) {
            case ERROR -> error;
            case WARNING -> warning;
            case NOTE -> mutedText;
        };
    }

    /** Returns the contrast ratio of two colours, 1 to 21, as WCAG 2.2 defines it. */
    public static double contrast(RGB one, RGB other) {
        double a = luminance(one);
        double b = luminance(other);
        return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
    }

    private static double luminance(RGB rgb) {
        return 0.2126 * linear(rgb.red) + 0.7152 * linear(rgb.green) + 0.0722 * linear(rgb.blue);
    }

    private static double linear(int channel) {
        double share = channel / 255.0;
        return share <= 0.04045 ? share / 12.92 : Math.pow((share + 0.055) / 1.055, 2.4);
    }

    private static Color tone(int rgb) {
        return new Color(rgb >> 16 & 0xFF, rgb >> 8 & 0xFF, rgb & 0xFF);
    }
}
