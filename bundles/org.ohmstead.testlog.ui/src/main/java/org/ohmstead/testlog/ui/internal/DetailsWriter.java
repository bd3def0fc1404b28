// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import org.eclipse.swt.custom.StyleRange;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.graphics.GC;
import org.ohmstead.testlog.ui.internal.Details.Cell;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;

/** Lays blocks out as lines with tab stops, so that figures stand under one another on the right. */
final class DetailsWriter {
    private static final int WIDEST_LABEL = 190;

    private final StyledText target;
    private final Font bold;
    private final int columnGap;
    private final Tones tones;
    private final StringBuilder content = new StringBuilder();
    private final List<StyleRange> styles = new ArrayList<>();
    private final List<Place> places = new ArrayList<>();
    private final Deque<Lines> lines = new ArrayDeque<>();
    private int lastCells;

    /** Where a cell stands in the text. */
    record Place(int start, int end, Cell cell) {}

    /** Lines that follow one another and are laid out alike. */
    private record Lines(int first, int count, int[] tabStops, int wrapIndent, boolean spaceAbove) {
        /** Returns whether a line below these belongs to them; space is kept above single lines only. */
        boolean goOn(int[] stopsBelow, int indentBelow, boolean spaceBelow) {
            return !spaceAbove && !spaceBelow && wrapIndent == indentBelow && Arrays.equals(tabStops, stopsBelow);
        }

        Lines longer() {
            return new Lines(first, count + 1, tabStops, wrapIndent, spaceAbove);
        }
    }

    DetailsWriter(StyledText target, Font bold, int columnGap) {
        this.target = target;
        this.bold = bold;
        this.columnGap = columnGap;
        this.tones = Tones.of(target);
    }

    List<Place> places() {
        return places;
    }

    void write(Details.Block block) {
        if (block instanceof Details.Title title) {
            line(List.of(Cell.of(title.text())), new int[0], 0, false);
            styleLast(0, tones.text(), bold);
        } else if (block instanceof Details.Heading heading) {
            line(List.of(Cell.of(heading.text())), new int[0], 0, true);
            styleLast(0, tones.accent(), bold);
        } else if (block instanceof Details.Paragraph paragraph) {
            line(List.of(paragraph.cell()), new int[0], 0, false);
            if (paragraph.warning()) {
                styleLast(0, tones.warning(), null);
            }
        } else if (block instanceof Details.Grid grid) {
            writeGrid(grid);
        }
    }

    private void writeGrid(Details.Grid grid) {
        int[][] own = extents(grid);
        int[] widths = widths(own, grid);
        for (int index = 0; index < own.length; index++) {
            int[] stops = new int[widths.length - 1];
            int left = widths[0] + columnGap;
            for (int column = 1; column < widths.length; column++) {
                stops[column - 1] = grid.rightAligned() ? left + widths[column] - own[index][column] : left;
                left += widths[column] + columnGap;
            }
            line(grid.rows().get(index), stops, grid.rightAligned() ? 0 : widths[0] + columnGap, false);
            styleLast(0, tones.mutedText(), null);
        }
    }

    /** How wide each cell is. */
    private int[][] extents(Details.Grid grid) {
        GC gc = new GC(target);
        try {
            gc.setFont(target.getFont());
            return grid.rows().stream()
                    .map(row -> row.stream()
                            .mapToInt(cell -> gc.stringExtent(cell.text()).x)
                            .toArray())
                    .toArray(int[][]::new);
        } finally {
            gc.dispose();
        }
    }

    private static int[] widths(int[][] own, Details.Grid grid) {
        int[] widths = new int[own[0].length];
        for (int[] row : own) {
            for (int column = 0; column < widths.length; column++) {
                widths[column] = Math.max(widths[column], row[column]);
            }
        }
        if (!grid.rightAligned()) {
            widths[0] = Math.min(WIDEST_LABEL, widths[0]);
        }
        return widths;
    }

    private void line(List<Cell> cells, int[] tabStops, int wrapIndent, boolean spaceAbove) {
        Lines before = lines.peekLast();
        if (before != null) {
            content.append('\n');
        }
        if (before != null && before.goOn(tabStops, wrapIndent, spaceAbove)) {
            lines.removeLast();
            lines.add(before.longer());
        } else {
            int first = before == null ? 0 : before.first() + before.count();
            lines.add(new Lines(first, 1, tabStops, wrapIndent, spaceAbove));
        }
        for (int column = 0; column < cells.size(); column++) {
            if (column > 0) {
                content.append('\t');
            }
            Cell cell = cells.get(column);
            int start = content.length();
            // A line break inside a cell would begin a line of its own.
            content.append(cell.text().replaceAll("[\\t\\r\\n]+", " "));
            places.add(new Place(start, content.length(), cell));
        }
        lastCells = cells.size();
    }

    private void styleLast(int column, Color tone, Font font) {
        Place place = places.get(places.size() - lastCells + column);
        if (place.end() > place.start()) {
            styles.add(DetailsPane.tinted(place.start(), place.end() - place.start(), tone, font));
        }
    }

    /** Puts the words into the target. */
    void begin() {
        target.setText(content.toString());
        target.setStyleRanges(styles.toArray(new StyleRange[0]));
    }

    /** Returns how many steps there are left to {@link #layOut}. */
    int steps() {
        return lines.size();
    }

    /** Lays lines out, some steps further; the target measures all that is above and in sight anew at each of them. */
    void layOut(int most) {
        for (int step = 0; step < most && !lines.isEmpty(); step++) {
            Lines some = lines.removeFirst();
            if (some.tabStops().length > 0) {
                target.setLineTabStops(some.first(), some.count(), some.tabStops());
            }
            if (some.wrapIndent() > 0) {
                target.setLineWrapIndent(some.first(), some.count(), some.wrapIndent());
            }
            if (some.spaceAbove()) {
                target.setLineVerticalIndent(some.first(), Spacing.GAP);
            }
        }
    }
}
