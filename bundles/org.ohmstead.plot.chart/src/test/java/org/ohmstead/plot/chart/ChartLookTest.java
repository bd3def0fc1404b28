// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.ohmstead.plot.Palette;

class ChartLookTest {
    /** In CIELAB units; about seven times the just noticeable 2.3 (Mahy, Van Eycken, Oosterlinck 1994). */
    private static final double CLEARLY_DIFFERENT = 16;

    /** Matrices for linear RGB at severity 1.0 of Machado, Oliveira, Fernandes (IEEE TVCG 15, 2009). */
    private enum Sight {
        NORMAL(1, 0, 0, 0, 1, 0, 0, 0, 1),
        PROTANOPE(0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998),
        DEUTERANOPE(0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.011820, 0.042940, 0.968881),
        TRITANOPE(1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.303900);

        private final double[] matrix;

        Sight(double... matrix) {
            this.matrix = matrix;
        }

        double[] seen(double[] linear) {
            double[] seen = new double[3];
            for (int row = 0; row < 3; row++) {
                for (int column = 0; column < 3; column++) {
                    seen[row] += matrix[3 * row + column] * linear[column];
                }
                seen[row] = Math.max(0, Math.min(1, seen[row]));
            }
            return seen;
        }
    }

    /** IEC 61966-2-1 (sRGB) to linear light. */
    private static double[] linear(int colour) {
        double[] linear = new double[3];
        for (int i = 0; i < 3; i++) {
            double value = (colour >> (16 - 8 * i) & 0xFF) / 255.0;
            linear[i] = value <= 0.04045 ? value / 12.92 : Math.pow((value + 0.055) / 1.055, 2.4);
        }
        return linear;
    }

    private static double luminance(int colour) {
        double[] linear = linear(colour);
        return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2];
    }

    /** WCAG 2.1, definition of contrast ratio. */
    private static double contrast(int one, int other) {
        double lighter = Math.max(luminance(one), luminance(other));
        double darker = Math.min(luminance(one), luminance(other));
        return (lighter + 0.05) / (darker + 0.05);
    }

    /** CIE 1976 L*a*b* from linear sRGB, white D65. */
    private static double[] lab(double[] linear) {
        double x = 0.4124564 * linear[0] + 0.3575761 * linear[1] + 0.1804375 * linear[2];
        double y = 0.2126729 * linear[0] + 0.7151522 * linear[1] + 0.0721750 * linear[2];
        double z = 0.0193339 * linear[0] + 0.1191920 * linear[1] + 0.9503041 * linear[2];
        double fx = compressed(x / 0.9504700);
        double fy = compressed(y);
        double fz = compressed(z / 1.0888300);
        return new double[] {116 * fy - 16, 500 * (fx - fy), 200 * (fy - fz)};
    }

    private static double compressed(double ratio) {
        return ratio > 216.0 / 24389 ? Math.cbrt(ratio) : (24389.0 / 27 * ratio + 16) / 116;
    }

    @Test
    void everythingIsLegibleOnTheDarkGround() {
        // WCAG 2.1, 1.4.3: text 4.5 to 1; the tones are texts too, as names of lines.
        assertTrue(contrast(ChartLook.DARK.ink(), ChartLook.DARK.background()) >= 7);
        assertTrue(contrast(ChartLook.DARK.mutedInk(), ChartLook.DARK.background()) >= 4.5);
        for (int tone = 0; tone < Palette.TONES; tone++) {
            double contrast = contrast(ChartLook.DARK.tone(tone), ChartLook.DARK.background());
            assertTrue(contrast >= 4.5, "tone " + tone + " has contrast " + contrast);
        }
    }

    @ParameterizedTest
    @EnumSource
    void darkTonesStayApart(Sight sight) {
        for (int first = 0; first < Palette.TONES; first++) {
            for (int second = first + 1; second < Palette.TONES; second++) {
                double[] one = lab(sight.seen(linear(ChartLook.DARK.tone(first))));
                double[] other = lab(sight.seen(linear(ChartLook.DARK.tone(second))));
                double distance = Math.hypot(Math.hypot(one[0] - other[0], one[1] - other[1]), one[2] - other[2]);
                assertTrue(
                        distance >= CLEARLY_DIFFERENT,
                        "tones " + first + " and " + second + " are only " + distance + " apart");
            }
        }
    }

    @Test
    void lightLookHasTheColoursOfThePalette() {
        assertEquals(0xFFFFFF, ChartLook.LIGHT.background());
        assertEquals(Palette.colour(3), ChartLook.LIGHT.tone(3));
        assertFalse(ChartLook.LIGHT.isDark());
        assertTrue(ChartLook.DARK.isDark());
    }

    @Test
    void rejectsWhatIsNoSetOfColours() {
        assertThrows(IllegalArgumentException.class, () -> new ChartLook(0, 0, 0, 0, 0, 0, 0, List.of(1)));
        assertThrows(
                IllegalArgumentException.class,
                () -> new ChartLook(0x1000000, 0, 0, 0, 0, 0, 0, ChartLook.DARK.tones()));
        assertThrows(IllegalArgumentException.class, () -> ChartLook.DARK.tone(8));
    }
}
