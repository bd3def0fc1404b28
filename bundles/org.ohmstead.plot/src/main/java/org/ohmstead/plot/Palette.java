// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot;

import java.util.List;

/**
 * Eight colours for a white background, each with a marker of its own. The colours are ours; they follow the published
 * advice of Okabe and Ito, "Color Universal Design" (2002, revised 2008): vary lightness as well as hue, prefer
 * vermilion to red and bluish green to green, and never let colour alone carry the meaning. Each stands at least 3 to 1
 * against white (WCAG 2.1, 1.4.11).
 */
public final class Palette {
    /** How many tones there are. */
    public static final int TONES = 8;

    /** The neutral dark grey of text and neutral marks, 0xRRGGBB. */
    public static final int INK = 0x2B3138;

    private static final List<Integer> COLOURS =
            List.of(0x0F3FB0, 0xD33A0A, 0x055E5C, 0x7E4895, 0x759644, 0x4681DC, 0x4D2D05, 0xCD6DA1);

    private static final List<MarkerShape> MARKERS = List.of(
            MarkerShape.CIRCLE,
            MarkerShape.SQUARE,
            MarkerShape.TRIANGLE_UP,
            MarkerShape.DIAMOND,
            MarkerShape.TRIANGLE_DOWN,
            MarkerShape.CROSS,
            MarkerShape.PLUS,
            MarkerShape.HOLLOW_CIRCLE);

    private Palette() {}

    /** Returns the colour of the tone, 0 to 7, as 0xRRGGBB. */
    public static int colour(int tone) {
        return COLOURS.get(Checks.tone(tone));
    }

    /** Returns the marker of the tone, 0 to 7. */
    public static MarkerShape marker(int tone) {
        return MARKERS.get(Checks.tone(tone));
    }
}
