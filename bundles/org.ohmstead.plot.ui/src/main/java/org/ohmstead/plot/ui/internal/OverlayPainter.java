// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.ohmstead.plot.chart.ChartLayout;
import org.ohmstead.plot.chart.ChartLook;
import org.ohmstead.plot.ui.ChosenPoint;
import org.ohmstead.plot.ui.PlotReadOut;
import org.ohmstead.units.text.Messages;

/** Draws what changes with every move of the mouse over the finished picture: crosshair, values, rectangle. */
final class OverlayPainter {
    private static final Messages TEXTS = Messages.of(OverlayPainter.class);
    private static final int PADDING = 8;
    private static final int OFFSET = 14;
    private static final int SWATCH = 8;
    private static final int SWATCH_WIDTH = 12;
    private static final int AREA_ALPHA = 90;
    private static final int COLUMN_GAP = 14;
    private static final int RING = 7;
    private static final int MOST_ROWS = 12;
    private static final int BAND_ALPHA = 40;
    private static final int GRIP_WIDTH = 9;
    private static final int GRIP_HEIGHT = 16;

    private final GC gc;
    private final ChartLook look;
    private final Font bold;

    OverlayPainter(GC gc, ChartLook look, Font bold) {
        this.gc = gc;
        this.look = look;
        this.bold = bold;
        gc.setAntialias(SWT.ON);
    }

    /** How the sample before a name is drawn: as a point, a line or an area, after what the value comes from. */
    private enum Sample {
        NONE,
        POINT,
        LINE,
        AREA
    }

    private record Row(int tone, Sample sample, boolean strong, String name, String value) {}

    void paint(ChartModel model, Picture picture) {
        ChartLayout layout = picture.layout();
        model.line().ifPresent(place -> paintLine(layout, place));
        model.rubberBand().ifPresent(this::paintBand);
        if (model.rubberBand().isPresent() || model.readOut().isEmpty()) {
            return;
        }
        PlotReadOut readOut = model.readOut().get();
        double x = layout.x().toPosition(readOut.x());
        if (x < layout.left() - 1 || x > layout.left() + layout.width() + 1) {
            return;
        }
        paintCross(layout, readOut, x);
        model.pointed().ifPresent(point -> paintRing(layout, point));
        paintBox(layout, readOut, (int) Math.round(x));
    }

    /** The line that the user can drag, with a grip at its upper end. */
    private void paintLine(ChartLayout layout, double place) {
        int x = (int) Math.round(layout.x().toPosition(place));
        if (x < layout.left() - 1 || x > layout.left() + layout.width() + 1) {
            return;
        }
        int top = (int) layout.top();
        gc.setForeground(SwtColours.of(look.ink()));
        gc.setBackground(SwtColours.of(look.ink()));
        gc.setLineWidth(2);
        gc.drawLine(x, top, x, (int) (layout.top() + layout.height()));
        gc.setLineWidth(1);
        gc.fillRoundRectangle(x - GRIP_WIDTH / 2, top, GRIP_WIDTH, GRIP_HEIGHT, 4, 4);
        gc.setForeground(SwtColours.of(look.background()));
        gc.drawLine(x - 1, top + 4, x - 1, top + GRIP_HEIGHT - 5);
        gc.drawLine(x + 1, top + 4, x + 1, top + GRIP_HEIGHT - 5);
    }

    private void paintBand(Rectangle band) {
        Color accent = SwtColours.of(look.tone(0));
        gc.setBackground(accent);
        gc.setForeground(accent);
        gc.setAlpha(BAND_ALPHA);
        gc.fillRectangle(band);
        gc.setAlpha(255);
        gc.setLineWidth(1);
        gc.drawRectangle(band.x, band.y, band.width - 1, band.height - 1);
    }

    private void paintCross(ChartLayout layout, PlotReadOut readOut, double x) {
        int across = (int) Math.round(x);
        gc.setForeground(SwtColours.of(look.mutedInk()));
        gc.setLineWidth(1);
        gc.drawLine(across, (int) layout.top(), across, (int) (layout.top() + layout.height()));
        for (PlotReadOut.Entry entry : readOut.entries()) {
            double y = layout.y().toPosition(entry.y());
            if (y >= layout.top() && y <= layout.top() + layout.height()) {
                int atX = (int) Math.round(layout.x().toPosition(entry.x()));
                gc.setBackground(SwtColours.of(look.tone(entry.tone())));
                gc.setForeground(SwtColours.of(look.background()));
                gc.fillOval(atX - 4, (int) Math.round(y) - 4, 8, 8);
                gc.drawOval(atX - 4, (int) Math.round(y) - 4, 8, 8);
            }
        }
        gc.setForeground(SwtColours.of(look.mutedInk()));
    }

    private void paintRing(ChartLayout layout, ChosenPoint point) {
        int x = (int) Math.round(layout.x().toPosition(point.x()));
        int y = (int) Math.round(layout.y().toPosition(point.y()));
        gc.setForeground(SwtColours.of(look.ink()));
        gc.setLineWidth(2);
        gc.drawOval(x - RING, y - RING, 2 * RING, 2 * RING);
        gc.setLineWidth(1);
    }

    private static List<Row> rows(PlotReadOut readOut) {
        List<Row> rows = new ArrayList<>();
        Optional<String> pointed = readOut.point().map(ChosenPoint::series);
        readOut.entries()
                .forEach(each -> rows.add(new Row(
                        each.tone(),
                        each.dataPoint() ? Sample.POINT : Sample.LINE,
                        pointed.filter(each.series()::equals).isPresent(),
                        each.series(),
                        each.text())));
        readOut.bands().forEach(each -> rows.add(new Row(each.tone(), Sample.AREA, false, each.band(), each.text())));
        if (rows.size() > MOST_ROWS) {
            int more = rows.size() - MOST_ROWS + 1;
            List<Row> fewer = new ArrayList<>(rows.subList(0, MOST_ROWS - 1));
            fewer.add(new Row(0, Sample.NONE, false, TEXTS.text("readOut.more", Integer.toString(more)), ""));
            return fewer;
        }
        return rows;
    }

    private void paintBox(ChartLayout layout, PlotReadOut readOut, int x) {
        List<Row> rows = rows(readOut);
        Font plain = gc.getFont();
        int lineHeight = gc.getFontMetrics().getHeight() + 2;
        gc.setFont(bold);
        int nameWidth = 0;
        int valueWidth = 0;
        int width = gc.textExtent(readOut.xText()).x;
        for (Row row : rows) {
            gc.setFont(row.strong() ? bold : plain);
            Point name = gc.textExtent(row.name());
            nameWidth = Math.max(nameWidth, name.x);
            valueWidth = Math.max(valueWidth, gc.textExtent(row.value()).x);
        }
        width = Math.max(width, SWATCH_WIDTH + 6 + nameWidth + COLUMN_GAP + valueWidth) + 2 * PADDING;
        int height = (rows.size() + 1) * lineHeight + 2 * PADDING - 2;
        int right = (int) (layout.left() + layout.width());
        boolean toTheRight = x + OFFSET + width <= right || x - OFFSET - width < layout.left();
        int left = toTheRight ? x + OFFSET : x - OFFSET - width;
        int top = (int) layout.top() + OFFSET / 2;
        paintGround(new Rectangle(left, top, width, height));
        gc.setForeground(SwtColours.of(look.ink()));
        gc.setFont(bold);
        gc.drawText(readOut.xText(), left + PADDING, top + PADDING - 2, true);
        int y = top + PADDING - 2 + lineHeight;
        for (Row row : rows) {
            gc.setFont(row.strong() ? bold : plain);
            paintRow(row, left + PADDING, left + width - PADDING, y, lineHeight);
            y += lineHeight;
        }
        gc.setFont(plain);
    }

    private void paintGround(Rectangle box) {
        gc.setBackground(SwtColours.of(look.background()));
        gc.fillRoundRectangle(box.x, box.y, box.width, box.height, 6, 6);
        gc.setForeground(SwtColours.of(look.zeroLine()));
        gc.drawRoundRectangle(box.x, box.y, box.width - 1, box.height - 1, 6, 6);
    }

    private void paintRow(Row row, int left, int right, int y, int lineHeight) {
        int textLeft = left;
        int middle = y + lineHeight / 2 - 1;
        gc.setBackground(SwtColours.of(look.tone(row.tone())));
        switch (row.sample()) {
            case POINT -> gc.fillOval(left + 2, middle - 4, SWATCH, SWATCH);
            case LINE -> gc.fillRectangle(left, middle - 1, SWATCH_WIDTH, 2);
            case AREA -> {
                gc.setAlpha(AREA_ALPHA);
                gc.fillRectangle(left, middle - SWATCH / 2, SWATCH_WIDTH, SWATCH);
                gc.setAlpha(255);
            }
            case NONE -> {
                // The row that only counts what has no room.
            }
        }
        textLeft += SWATCH_WIDTH + 6;
        gc.setForeground(SwtColours.of(look.mutedInk()));
        gc.drawText(row.name(), textLeft, y, true);
        gc.setForeground(SwtColours.of(look.ink()));
        gc.drawText(row.value(), right - gc.textExtent(row.value()).x, y, true);
    }
}
