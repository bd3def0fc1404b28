// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart.internal;

import java.awt.geom.Rectangle2D;
import java.util.Arrays;

/** Places sorted into square cells, so that those within a rectangle are counted without going through all. */
final class PointGrid {
    private static final double CELL = 16;
    private static final int FIRST_ROOM = 8;

    private final Rectangle2D area;
    private final int columns;
    private final int rows;
    /** Of each cell x and y of its places in turns; null while it has none. */
    private final double[][] cells;

    private final int[] counts;
    private int size;

    PointGrid(Rectangle2D area) {
        this.area = area;
        columns = (int) (area.getWidth() / CELL) + 1;
        rows = (int) (area.getHeight() / CELL) + 1;
        cells = new double[columns * rows][];
        counts = new int[columns * rows];
    }

    /** Adds a place if it is inside the area. */
    void add(double x, double y) {
        if (!area.contains(x, y)) {
            return;
        }
        int cell = row(y) * columns + column(x);
        int end = 2 * counts[cell];
        if (cells[cell] == null) {
            cells[cell] = new double[2 * FIRST_ROOM];
        } else if (end == cells[cell].length) {
            cells[cell] = Arrays.copyOf(cells[cell], 2 * end);
        }
        cells[cell][end] = x;
        cells[cell][end + 1] = y;
        counts[cell]++;
        size++;
    }

    /** Returns how many places there are. */
    int size() {
        return size;
    }

    /** Returns how many are within the rectangle. */
    int countIn(Rectangle2D place) {
        int count = 0;
        int lastColumn = column(place.getMaxX());
        int lastRow = row(place.getMaxY());
        for (int row = row(place.getMinY()); row <= lastRow; row++) {
            for (int column = column(place.getMinX()); column <= lastColumn; column++) {
                count += countIn(place, row * columns + column);
            }
        }
        return count;
    }

    private int countIn(Rectangle2D place, int cell) {
        int count = 0;
        for (int i = 0; i < 2 * counts[cell]; i += 2) {
            count += place.contains(cells[cell][i], cells[cell][i + 1]) ? 1 : 0;
        }
        return count;
    }

    private int column(double x) {
        return (int) Math.max(0, Math.min(columns - 1.0, (x - area.getMinX()) / CELL));
    }

    private int row(double y) {
        return (int) Math.max(0, Math.min(rows - 1.0, (y - area.getMinY()) / CELL));
    }
}
