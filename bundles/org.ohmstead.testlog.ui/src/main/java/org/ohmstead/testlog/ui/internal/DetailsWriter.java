// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.util.ArrayList;
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
    private final List<Line> lines = new ArrayList<>();
    private int lastCells;

    /** Where a cell stands in the text. */
    record Place(int start, int end, Cell cell) {}

    private record Line(int index, int[] tabStops, int wrapIndent, boolean spaceAbove) {}

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
        GC gc = new GC(target);
        try {
            gc.setFont(target.getFont());
            int[] widths = widths(gc, grid);
            for (List<Cell> row : grid.rows()) {
                int[] stops = new int[row.size() - 1];
                int left = widths[0] + columnGap;
                for (int column = 1; column < row.size(); column++) {
                    int own = gc.stringExtent(row.get(column).text()).x;
                    stops[column - 1] = grid.rightAligned() ? left + widths[column] - own : left;
                    left += widths[column] + columnGap;
                }
                line(row, stops, grid.rightAligned() ? 0 : widths[0] + columnGap, false);
                styleLast(0, tones.mutedText(), null);
            }
        } finally {
            gc.dispose();
        }
    }

    private static int[] widths(GC gc, Details.Grid grid) {
        int[] widths = new int[grid.rows().get(0).size()];
        for (List<Cell> row : grid.rows()) {
            for (int column = 0; column < widths.length; column++) {
                int own = gc.stringExtent(row.get(column).text()).x;
                widths[column] = Math.max(widths[column], own);
            }
        }
        if (!grid.rightAligned()) {
            widths[0] = Math.min(WIDEST_LABEL, widths[0]);
        }
        return widths;
    }

    private void line(List<Cell> cells, int[] tabStops, int wrapIndent, boolean spaceAbove) {
        if (!lines.isEmpty()) {
            content.append('\n');
        }
        lines.add(new Line(lines.size(), tabStops, wrapIndent, spaceAbove));
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

    void finish() {
        target.setText(content.toString());
        for (Line line : lines) {
            if (line.tabStops().length > 0) {
                target.setLineTabStops(line.index(), 1, line.tabStops());
            }
            target.setLineWrapIndent(line.index(), 1, line.wrapIndent());
            if (line.spaceAbove()) {
                target.setLineVerticalIndent(line.index(), Spacing.GAP);
            }
        }
        target.setStyleRanges(styles.toArray(new StyleRange[0]));
    }
}
