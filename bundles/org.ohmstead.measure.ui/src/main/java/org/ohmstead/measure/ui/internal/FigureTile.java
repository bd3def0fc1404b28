// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import java.util.List;
import org.eclipse.swt.SWT;
import org.eclipse.swt.accessibility.AccessibleAdapter;
import org.eclipse.swt.accessibility.AccessibleEvent;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Canvas;
import org.eclipse.swt.widgets.Composite;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;

/** A live figure in large type, with where it is going as a sign, a word and a small line. */
final class FigureTile extends Canvas {
    private static final double NUMBER = 3.4;
    private static final double UNIT = 1.5;
    private static final int LEAST_WIDTH = 120;
    private static final int LINE_WIDTH = 2;

    private final Font number;
    private final Font unit;
    private LiveFigure shown;

    FigureTile(Composite parent, LiveFigure.Kind kind) {
        super(parent, SWT.DOUBLE_BUFFERED | SWT.NO_FOCUS);
        Ids.name(this, "console.figure." + kind.id());
        BigFonts fonts = new BigFonts(this);
        number = fonts.times(NUMBER, true);
        unit = fonts.times(UNIT, false);
        shown = LiveFigure.unknown(kind);
        addListener(SWT.Paint, event -> paint(event.gc));
        getAccessible().addAccessibleListener(new AccessibleAdapter() {
            @Override
            public void getName(AccessibleEvent event) {
                event.result = shown.sentence();
            }
        });
    }

    void show(LiveFigure figure) {
        if (!figure.equals(shown)) {
            shown = figure;
            setToolTipText(figure.sentence());
            redraw();
        }
    }

    /** Returns what is shown, as a sentence. */
    String text() {
        return shown.sentence();
    }

    private void paint(GC gc) {
        Rectangle area = getClientArea();
        Tones tones = Tones.of(this);
        gc.setAntialias(SWT.ON);
        gc.setForeground(tones.line());
        gc.drawLine(0, 0, area.width - Spacing.GAP, 0);
        Font small = gc.getFont();
        int line = gc.getFontMetrics().getHeight();
        gc.setForeground(tones.mutedText());
        String caption = shown.kind().words();
        gc.drawText(caption, 0, Spacing.TIGHT, true);
        int captionWidth = gc.textExtent(caption).x;
        drawTrend(gc, tones, captionWidth + Spacing.GAP, area.width - Spacing.GAP);
        boolean known = shown.value().isPresent();
        gc.setForeground(known ? tones.text() : tones.mutedText());
        gc.setFont(number);
        String text = shown.number();
        Point size = gc.textExtent(text);
        int top = line + Spacing.TIGHT;
        gc.drawText(text, 0, top, true);
        int base = top + gc.getFontMetrics().getAscent() + gc.getFontMetrics().getLeading();
        gc.setFont(unit);
        gc.setForeground(tones.mutedText());
        gc.drawText(
                shown.kind().unit(),
                size.x + Spacing.TIGHT,
                base - gc.getFontMetrics().getAscent() - gc.getFontMetrics().getLeading(),
                true);
        gc.setFont(small);
        drawCourse(
                gc, tones, new Rectangle(0, top + size.y, area.width - Spacing.MARGIN, area.height - top - size.y - 2));
    }

    private void drawTrend(GC gc, Tones tones, int left, int right) {
        Trend trend = shown.trend();
        String words = trend == Trend.UNKNOWN ? shown.detail() : trend.arrow() + " " + trend.words();
        if (!shown.detail().isEmpty()
                && trend != Trend.UNKNOWN
                && gc.textExtent(words + "  " + shown.detail()).x < right - left) {
            words = words + "  " + shown.detail();
        }
        gc.setForeground(trend == Trend.RISING || trend == Trend.FALLING ? tones.accent() : tones.mutedText());
        int width = gc.textExtent(words).x;
        if (width < right - left) {
            gc.drawText(words, right - width, Spacing.TIGHT, true);
        }
    }

    private void drawCourse(GC gc, Tones tones, Rectangle area) {
        List<Trend.Sample> course = shown.course();
        if (course.size() < 2 || area.height < Spacing.GAP) {
            return;
        }
        double from = course.get(0).seconds();
        double span = Math.max(1e-3, course.get(course.size() - 1).seconds() - from);
        double low = course.stream().mapToDouble(Trend.Sample::value).min().orElseThrow();
        double high = course.stream().mapToDouble(Trend.Sample::value).max().orElseThrow();
        double room = Math.max(high - low, 1e-6 + 0.01 * Math.abs(high));
        int[] points = new int[2 * course.size()];
        for (int i = 0; i < course.size(); i++) {
            Trend.Sample each = course.get(i);
            points[2 * i] = area.x + (int) Math.round((each.seconds() - from) / span * area.width);
            points[2 * i + 1] = area.y
                    + area.height
                    - LINE_WIDTH
                    - (int) Math.round((each.value() - low) / room * (area.height - 2 * LINE_WIDTH));
        }
        gc.setForeground(tones.accent());
        gc.setLineWidth(LINE_WIDTH);
        gc.drawPolyline(points);
        gc.setLineWidth(1);
    }

    @Override
    public Point computeSize(int widthHint, int heightHint, boolean changed) {
        GC gc = new GC(this);
        try {
            int line = gc.getFontMetrics().getHeight();
            gc.setFont(number);
            int height = line + gc.getFontMetrics().getHeight() + 2 * Spacing.TIGHT + Spacing.MARGIN + Spacing.TIGHT;
            return new Point(widthHint == SWT.DEFAULT ? LEAST_WIDTH : widthHint, height);
        } finally {
            gc.dispose();
        }
    }
}
