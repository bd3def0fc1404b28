// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart;

import java.util.List;
import java.util.stream.IntStream;
import org.ohmstead.plot.Palette;

/**
 * The colours of a chart, each as 0xRRGGBB.
 *
 * @param background the ground of the whole chart
 * @param ink text and neutral marks
 * @param mutedInk the note below the chart and other quiet text
 * @param axisLine axes and their ticks
 * @param zeroLine the line at zero where it lies inside the chart
 * @param grid the grid at labelled ticks
 * @param minorGrid the grid between them
 * @param tones the colours of the tones, as many as {@link Palette#TONES}
 */
public record ChartLook(
        int background,
        int ink,
        int mutedInk,
        int axisLine,
        int zeroLine,
        int grid,
        int minorGrid,
        List<Integer> tones) {
    /** For paper and light screens: the colours of {@link Palette} on white. */
    public static final ChartLook LIGHT = new ChartLook(
            0xFFFFFF,
            Palette.INK,
            0x5C666F,
            0x5C666F,
            0xA3ACB4,
            0xE1E5E8,
            0xF0F2F4,
            IntStream.range(0, Palette.TONES).map(Palette::colour).boxed().toList());

    /**
     * For dark screens: the hues of {@link Palette}, lightened so that each stands at least 4.5 to 1 against the ground
     * (WCAG 2.1, 1.4.3).
     */
    public static final ChartLook DARK = new ChartLook(
            0x1D2126,
            0xDDE2E7,
            0x9AA5AF,
            0x8A95A0,
            0x5A646E,
            0x343B43,
            0x272D33,
            List.of(0x2088FC, 0xED6122, 0x02A58A, 0xB776D6, 0xA7CE55, 0xA3CFFC, 0xBE9454, 0xF099C2));

    private static final int MOST = 0xFFFFFF;
    private static final double MIDDLE = 0.5;

    /** Checks the parameters and copies the tones. */
    public ChartLook {
        tones = List.copyOf(tones);
        if (tones.size() != Palette.TONES) {
            throw new IllegalArgumentException(
                    "tones must have " + Palette.TONES + " colours but has " + tones.size() + ".");
        }
        IntStream.concat(
                        IntStream.of(background, ink, mutedInk, axisLine, zeroLine, grid, minorGrid),
                        tones.stream().mapToInt(Integer::intValue))
                .forEach(ChartLook::check);
    }

    private static void check(int colour) {
        if (colour < 0 || colour > MOST) {
            throw new IllegalArgumentException(
                    "A colour must be from 0 to 0xFFFFFF but is 0x" + Integer.toHexString(colour) + ".");
        }
    }

    /** Returns the colour of the tone, 0 to 7. */
    public int tone(int tone) {
        if (tone < 0 || tone >= tones.size()) {
            throw new IllegalArgumentException(
                    "tone must be from 0 to " + (tones.size() - 1) + " but is " + tone + ".");
        }
        return tones.get(tone);
    }

    /** Returns whether the ground is darker than a middle grey. */
    public boolean isDark() {
        return isDark(background);
    }

    /** Returns whether a colour, 0xRRGGBB, is darker than a middle grey, by the luma weights of ITU-R BT.709. */
    public static boolean isDark(int colour) {
        int red = colour >> 16 & 0xFF;
        int green = colour >> 8 & 0xFF;
        int blue = colour & 0xFF;
        return 0.2126 * red + 0.7152 * green + 0.0722 * blue < MIDDLE * 255;
    }
}
