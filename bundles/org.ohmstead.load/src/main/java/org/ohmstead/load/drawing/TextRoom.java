// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.drawing;

/** How much room a text in an ordinary sans-serif font takes at most. */
final class TextRoom {
    private static final int NARROW = 42;
    private static final int USUAL = 66;
    private static final int WIDE = 100;
    private static final int PERCENT = 100;

    private TextRoom() {}

    /** Returns the width in points, an even number. */
    static int width(String text, int fontPoints) {
        int hundredths = text.codePoints().map(TextRoom::hundredthsOfEm).sum();
        int width = (hundredths * fontPoints + PERCENT - 1) / PERCENT;
        return width + width % 2;
    }

    static int ascent(int fontPoints) {
        return fontPoints;
    }

    static int descent(int fontPoints) {
        return (fontPoints + 2) / 3;
    }

    private static int hundredthsOfEm(int letter) {
        if (letter > 0x2000 && letter != 0x2026 || "mwMW@%\u03a9".indexOf(letter) >= 0) {
            return WIDE;
        }
        return " .,:;'|!ijl()[]".indexOf(letter) >= 0 ? NARROW : USUAL;
    }
}
