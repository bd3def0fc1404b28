// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumSet;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class PaletteTest {
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

    private static double luminance(double[] linear) {
        return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2];
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

    /** WCAG 2.1, 1.4.11: graphical objects 3 to 1 against what is beside them; 1.4.3: text 4.5 to 1. */
    @Test
    void standsOutFromWhite() {
        for (int tone = 0; tone < Palette.TONES; tone++) {
            double contrast = 1.05 / (luminance(linear(Palette.colour(tone))) + 0.05);
            assertTrue(contrast >= 3, "tone " + tone + " has contrast " + contrast);
        }
        assertTrue(1.05 / (luminance(linear(Palette.INK)) + 0.05) >= 4.5);
    }

    @ParameterizedTest
    @EnumSource
    void tonesStayApartForEverySight(Sight sight) {
        for (int first = 0; first < Palette.TONES; first++) {
            for (int second = first + 1; second < Palette.TONES; second++) {
                double[] one = lab(sight.seen(linear(Palette.colour(first))));
                double[] other = lab(sight.seen(linear(Palette.colour(second))));
                double distance = Math.hypot(Math.hypot(one[0] - other[0], one[1] - other[1]), one[2] - other[2]);
                assertTrue(
                        distance >= CLEARLY_DIFFERENT,
                        "tones " + first + " and " + second + " are only " + distance + " apart");
            }
        }
    }

    @Test
    void everyToneHasAMarkerOfItsOwn() {
        Set<MarkerShape> markers = EnumSet.noneOf(MarkerShape.class);
        for (int tone = 0; tone < Palette.TONES; tone++) {
            markers.add(Palette.marker(tone));
        }
        assertEquals(Palette.TONES, markers.size());
    }

    @ParameterizedTest
    @ValueSource(ints = {-1, 8})
    void rejectsTonesItDoesNotHave(int tone) {
        assertThrows(IllegalArgumentException.class, () -> Palette.colour(tone));
        assertThrows(IllegalArgumentException.class, () -> Palette.marker(tone));
    }
}
