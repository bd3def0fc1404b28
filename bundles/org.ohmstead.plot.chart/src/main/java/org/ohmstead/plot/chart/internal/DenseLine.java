// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart.internal;

import java.awt.Color;
import java.util.Arrays;

/**
 * Draws a solid line with round joins that goes to and fro between top and bottom so often that a renderer of any shapes, which sorts the
 * edges in each row of pixels, takes far too long. It asks only that the line never goes back to the left: then a vertical cut meets the
 * line's stroke in one stretch, however many points make it. So along each of eight cuts through each column of pixels the highest and
 * lowest place is sought, and a pixel takes the mean of what the eight cover of it.
 */
final class DenseLine {
    private static final int CUTS = 8;
    private static final int WEIGHT = 32;
    private static final int FULL = CUTS * WEIGHT;
    private static final int TILE = 16;

    private final PixelGround ground;
    private final int left;
    private final int top;
    private final int width;
    private final int height;
    private final double[] upper;
    private final double[] lower;
    /** What becomes of a blank pixel, by the share that is covered; most are blank. */
    private final int[] onBlank = new int[FULL + 1];

    /**
     * Prepares drawing into a part of the pixels.
     *
     * @param left first column
     * @param top first row
     * @param right column after the last
     * @param bottom row after the last
     */
    DenseLine(PixelGround ground, int left, int top, int right, int bottom) {
        this.ground = ground;
        this.left = Math.max(0, left);
        this.top = Math.max(0, top);
        width = Math.max(0, Math.min(ground.width(), right) - this.left);
        height = Math.max(0, Math.min(ground.height(), bottom) - this.top);
        upper = new double[width * CUTS];
        lower = new double[width * CUTS];
    }

    /**
     * Draws the line.
     *
     * @param x places in pixels, never falling
     * @param y places in pixels, equally many
     * @param half half the width of the line in pixels
     */
    void draw(double[] x, double[] y, double half, Color colour) {
        Arrays.fill(upper, Double.POSITIVE_INFINITY);
        Arrays.fill(lower, Double.NEGATIVE_INFINITY);
        for (int i = 0; i < x.length; i++) {
            // From here on in cuts across and in pixels down, from the upper left corner of the part.
            double across = x[i] - left;
            double down = y[i] - top;
            reachAround(across, down, half);
            if (i > 0) {
                reachAlong(x[i - 1] - left, y[i - 1] - top, across, down, half);
            }
        }
        int solid = colour.getRGB() & 0xFFFFFF;
        for (int share = 0; share <= FULL; share++) {
            onBlank[share] = mixed(ground.blank(), solid, share);
        }
        int[] changes = new int[(height + 2) * TILE];
        for (int first = 0; first < width; first += TILE) {
            paint(new Tile(changes, first, Math.min(TILE, width - first)), solid);
        }
    }

    private int firstCut(double x) {
        return (int) Math.max(0, Math.ceil(x * CUTS - 0.5));
    }

    private int lastCut(double x) {
        return (int) Math.min(upper.length - 1.0, Math.floor(x * CUTS - 0.5));
    }

    /** The round join at a point. */
    private void reachAround(double x, double y, double half) {
        int last = lastCut(x + half);
        for (int cut = firstCut(x - half); cut <= last; cut++) {
            double aside = (cut + 0.5) / CUTS - x;
            double reach = Math.sqrt(Math.max(0, half * half - aside * aside));
            upper[cut] = Math.min(upper[cut], y - reach);
            lower[cut] = Math.max(lower[cut], y + reach);
        }
    }

    /** The edges of the stroke between two points; where they run side by side with the cuts, the joins are all there is. */
    private void reachAlong(double fromX, double fromY, double toX, double toY, double half) {
        double length = Math.hypot(toX - fromX, toY - fromY);
        if (!(toX > fromX)) {
            return;
        }
        double slope = (toY - fromY) / (toX - fromX);
        double shift = half * (toY - fromY) / length;
        double rise = half * length / (toX - fromX);
        int last = lastCut(toX + shift);
        for (int cut = firstCut(fromX + shift); cut <= last; cut++) {
            double y = fromY + slope * ((cut + 0.5) / CUTS - fromX) - rise;
            upper[cut] = Math.min(upper[cut], y);
        }
        last = lastCut(toX - shift);
        for (int cut = firstCut(fromX - shift); cut <= last; cut++) {
            double y = fromY + slope * ((cut + 0.5) / CUTS - fromX) + rise;
            lower[cut] = Math.max(lower[cut], y);
        }
    }

    /** Paints some columns side by side, row by row, as memory likes it. */
    private void paint(Tile tile, int colour) {
        double highest = height;
        double lowest = 0;
        // Where every cut is covered, and so every pixel wholly.
        double fullFrom = 0;
        double fullTo = height;
        for (int column = 0; column < tile.columns; column++) {
            int cut = (tile.first + column) * CUTS;
            for (int i = cut; i < cut + CUTS; i++) {
                double from = Math.max(0, upper[i]);
                double to = Math.min(height, lower[i]);
                fullFrom = Math.max(fullFrom, from);
                fullTo = Math.min(fullTo, to);
                if (from < to) {
                    tile.change(column, from, 1);
                    tile.change(column, to, -1);
                    highest = Math.min(highest, from);
                    lowest = Math.max(lowest, to);
                }
            }
        }
        int start = (int) Math.min(highest, lowest);
        int end = Math.min(height, (int) lowest + 1);
        int fullStart = (int) Math.ceil(Math.min(fullFrom, height)) + 1;
        int fullEnd = (int) Math.floor(Math.max(fullTo, 0));
        if (fullStart < fullEnd) {
            paintMixed(start, fullStart, tile, colour);
            for (int row = fullStart; row < fullEnd; row++) {
                int place = (top + row) * ground.width() + left + tile.first;
                Arrays.fill(ground.pixels(), place, place + tile.columns, colour);
            }
            paintMixed(fullEnd, end, tile, colour);
        } else {
            paintMixed(start, end, tile, colour);
        }
        Arrays.fill(tile.changes, start * TILE, ((int) lowest + 2) * TILE, 0);
    }

    private void paintMixed(int from, int to, Tile tile, int colour) {
        int[] pixels = ground.pixels();
        int[] covered = tile.covered;
        int[] changes = tile.changes;
        int blank = ground.blank();
        for (int row = from; row < to; row++) {
            int place = (top + row) * ground.width() + left + tile.first;
            for (int column = 0; column < tile.columns; column++) {
                int share = covered[column] + changes[row * TILE + column];
                covered[column] = share;
                if (share > 0) {
                    int under = pixels[place + column];
                    pixels[place + column] = under == blank ? onBlank[share] : mixed(under, colour, share);
                }
            }
        }
    }

    /** Returns the mean of two colours with weights of together {@link #FULL}; red and blue are reckoned in one go. */
    private static int mixed(int under, int over, int share) {
        int redAndBlue = (under & 0xFF00FF) * (FULL - share) + (over & 0xFF00FF) * share + 0x800080;
        int green = (under & 0xFF00) * (FULL - share) + (over & 0xFF00) * share + 0x8000;
        return redAndBlue >>> 8 & 0xFF00FF | green >>> 8 & 0xFF00;
    }

    /** Some columns side by side. */
    private static final class Tile {
        private final int[] changes;
        private final int[] covered = new int[TILE];
        private final int first;
        private final int columns;

        Tile(int[] changes, int first, int columns) {
            this.changes = changes;
            this.first = first;
            this.columns = columns;
        }

        /** Notes that the cover of a column begins or ends at a place: what lies below in its row, and in the next row the rest. */
        void change(int column, double place, int sign) {
            int row = (int) place;
            int above = (int) ((place - row) * WEIGHT + 0.5);
            changes[row * TILE + column] += sign * (WEIGHT - above);
            changes[(row + 1) * TILE + column] += sign * above;
        }
    }
}
