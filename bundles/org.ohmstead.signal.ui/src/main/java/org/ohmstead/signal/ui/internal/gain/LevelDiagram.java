// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal.gain;

import java.util.Optional;
import org.eclipse.swt.SWT;
import org.eclipse.swt.accessibility.AccessibleAdapter;
import org.eclipse.swt.accessibility.AccessibleEvent;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Canvas;
import org.eclipse.swt.widgets.Composite;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;

/** Draws a {@link LevelLadder}: the source's levels on the left, the load's on the right, and between them where the amplifier clips. */
final class LevelDiagram extends Canvas {
    private static final int HATCH = 9;
    private static final int TINT = 34;
    private static final int TICK = 5;
    private static final int LEAST_BODY = 60;

    private final Messages messages;
    private Optional<LevelLadder> ladder = Optional.empty();

    /** Where things lie, in points. */
    private record Frame(int left, int right, int top, int bottom) {
        int y(LevelLadder ladder, double levelDb) {
            return top + (int) Math.round(ladder.depth(levelDb) * (bottom - top));
        }

        int width() {
            return right - left;
        }
    }

    LevelDiagram(Composite parent, Messages messages) {
        super(parent, SWT.BORDER | SWT.DOUBLE_BUFFERED);
        this.messages = messages;
        Ids.name(this, "gain.diagram");
        setToolTipText(messages.text("diagram.hint"));
        addListener(SWT.Paint, event -> paint(event.gc));
        addListener(SWT.Resize, event -> redraw());
        getAccessible().addAccessibleListener(new AccessibleAdapter() {
            @Override
            public void getName(AccessibleEvent event) {
                event.result = words();
            }
        });
    }

    void show(LevelLadder newLadder) {
        ladder = Optional.of(newLadder);
        redraw();
    }

    /** Returns what is drawn, in words. */
    String words() {
        return ladder.map(LevelLadder::words).orElse("");
    }

    private void paint(GC gc) {
        if (ladder.isEmpty()) {
            return;
        }
        LevelLadder shown = ladder.get();
        Tones tones = Tones.of(this);
        Rectangle area = getClientArea();
        gc.setAntialias(SWT.ON);
        int line = gc.getFontMetrics().getHeight();
        int leftText = gc.stringExtent(messages.text("diagram.source")).x;
        int rightText = gc.stringExtent(messages.text("diagram.load")).x;
        for (LevelLadder.Rung rung : shown.rungs()) {
            leftText = Math.max(leftText, width(gc, rung.inputVolts(), rung.inputLevel()));
            rightText = Math.max(rightText, width(gc, rung.outputVolts(), rung.outputPower()));
        }
        Frame frame = new Frame(
                leftText + Spacing.MARGIN + Spacing.GAP + TICK,
                area.width - rightText - Spacing.MARGIN - Spacing.GAP - TICK,
                line + 2 * Spacing.GAP,
                area.height - Spacing.GAP);
        if (frame.width() < LEAST_BODY
                || frame.bottom() - frame.top() < (2 * shown.rungs().size() + 1) * line) {
            words(gc, area);
            return;
        }
        head(gc, frame, tones, area, line);
        zones(gc, shown, frame, tones, line);
        rungs(gc, shown, frame, tones, line);
    }

    private static int width(GC gc, String one, String other) {
        return Math.max(gc.stringExtent(one).x, gc.stringExtent(other).x);
    }

    /** In too little room the levels are written one below the other. */
    private void words(GC gc, Rectangle area) {
        gc.setClipping(area);
        gc.drawText(words(), Spacing.GAP, Spacing.TIGHT, true);
    }

    private void head(GC gc, Frame frame, Tones tones, Rectangle area, int line) {
        gc.setForeground(tones.mutedText());
        String source = messages.text("diagram.source");
        String load = messages.text("diagram.load");
        gc.drawString(source, frame.left() - gc.stringExtent(source).x - TICK - Spacing.GAP, Spacing.GAP, true);
        gc.drawString(load, frame.right() + TICK + Spacing.GAP, Spacing.GAP, true);
        gc.setForeground(tones.line());
        gc.drawLine(Spacing.GAP, Spacing.GAP + line + 2, area.width - Spacing.GAP, Spacing.GAP + line + 2);
    }

    private void zones(GC gc, LevelLadder shown, Frame frame, Tones tones, int line) {
        int clip = frame.y(shown, shown.clipDb());
        int full = frame.y(shown, shown.fullScaleDb());
        int bottom = frame.bottom();
        gc.setAlpha(TINT);
        gc.setBackground(tones.ok());
        int cleanTop = Math.max(clip, full);
        gc.fillRectangle(frame.left(), cleanTop, frame.width(), bottom - cleanTop);
        gc.setAlpha(255);
        if (shown.clips()) {
            Rectangle clipped = new Rectangle(frame.left(), full, frame.width(), clip - full);
            hatch(gc, clipped, tones.error());
            caption(gc, messages.text("diagram.clipped"), frame.right() - Spacing.GAP, clipped, tones.error(), line);
        }
        int musicTop = frame.y(shown, shown.musicHighDb());
        int musicHeight = frame.y(shown, shown.musicLowDb()) - musicTop;
        gc.setAlpha(2 * TINT);
        gc.setBackground(tones.accent());
        gc.fillRectangle(frame.left(), musicTop, frame.width(), musicHeight);
        gc.setAlpha(255);
        String words = messages.text("diagram.music");
        int width = gc.stringExtent(words).x;
        if (musicHeight >= line && width < frame.width() - 2 * Spacing.GAP) {
            gc.setForeground(tones.accent());
            gc.drawString(words, frame.right() - Spacing.GAP - width, musicTop + musicHeight - line, true);
        }
    }

    private static void hatch(GC gc, Rectangle zone, Color tone) {
        gc.setAlpha(TINT);
        gc.setBackground(tone);
        gc.fillRectangle(zone);
        gc.setAlpha(2 * TINT);
        gc.setForeground(tone);
        gc.setClipping(zone);
        for (int x = zone.x - zone.height; x < zone.x + zone.width; x += HATCH) {
            gc.drawLine(x, zone.y + zone.height, x + zone.height, zone.y);
        }
        gc.setClipping((Rectangle) null);
        gc.setAlpha(255);
    }

    private static void caption(GC gc, String words, int right, Rectangle zone, Color tone, int line) {
        Point size = gc.stringExtent(words);
        if (zone.height >= 2 * line && size.x < zone.width / 3 - Spacing.GAP) {
            gc.setForeground(tone);
            gc.drawString(words, right - size.x, zone.y + (zone.height - size.y) / 2, true);
        }
    }

    private void rungs(GC gc, LevelLadder shown, Frame frame, Tones tones, int line) {
        int[] wishes = shown.rungs().stream()
                .mapToInt(rung -> frame.y(shown, rung.levelDb()) - line)
                .toArray();
        int[] places = LabelPlaces.spread(
                wishes, 2 * line + Spacing.TIGHT, frame.top() - Spacing.GAP, frame.bottom() - 2 * line);
        for (int i = 0; i < places.length; i++) {
            LevelLadder.Rung rung = shown.rungs().get(i);
            int y = frame.y(shown, rung.levelDb());
            gc.setForeground(tone(rung, tones));
            gc.setLineWidth(rung.kind() == LevelLadder.Kind.END_POINT ? 2 : 1);
            gc.setLineStyle(rung.kind() == LevelLadder.Kind.CHECK ? SWT.LINE_DASH : SWT.LINE_SOLID);
            gc.drawLine(frame.left(), y, frame.right(), y);
            gc.setLineStyle(SWT.LINE_SOLID);
            gc.setLineWidth(1);
            int middle = places[i] + line;
            gc.drawLine(frame.left() - TICK, middle, frame.left(), y);
            gc.drawLine(frame.right(), y, frame.right() + TICK, middle);
            int ends = frame.left() - TICK - Spacing.GAP;
            int begins = frame.right() + TICK + Spacing.GAP;
            gc.drawString(rung.inputVolts(), ends - gc.stringExtent(rung.inputVolts()).x, places[i], true);
            gc.drawString(rung.outputVolts(), begins, places[i], true);
            gc.drawString(rung.name(), frame.left() + Spacing.GAP, y - (above(rung) ? line + 1 : -1), true);
            gc.setForeground(tones.mutedText());
            int below = places[i] + line;
            gc.drawString(rung.inputLevel(), ends - gc.stringExtent(rung.inputLevel()).x, below, true);
            gc.drawString(rung.outputPower(), begins, below, true);
        }
        overlap(gc, shown, frame, tones, line);
    }

    /** The name of the end point stands below its line, so that the zone above stays free. */
    private static boolean above(LevelLadder.Rung rung) {
        return rung.kind() != LevelLadder.Kind.END_POINT && rung.kind() != LevelLadder.Kind.FULL_SCALE;
    }

    private void overlap(GC gc, LevelLadder shown, Frame frame, Tones tones, int line) {
        int from = frame.y(shown, 0);
        int to = frame.y(shown, shown.fullScaleDb());
        if (from - to < 2 * line) {
            return;
        }
        int x = frame.left() + 2 * frame.width() / 3;
        gc.setForeground(tones.text());
        gc.drawLine(x, from - 1, x, to + 1);
        gc.drawLine(x, to + 1, x - TICK, to + 1 + TICK);
        gc.drawLine(x, to + 1, x + TICK, to + 1 + TICK);
        gc.drawLine(x, from - 1, x - TICK, from - 1 - TICK);
        gc.drawLine(x, from - 1, x + TICK, from - 1 - TICK);
        String words = messages.text("diagram.overlap", GainRows.db(shown.fullScaleDb()));
        int width = gc.stringExtent(words).x;
        if (from - to >= 3 * line && width < x - frame.left() - 2 * Spacing.GAP) {
            gc.drawString(words, x - Spacing.GAP - width, from - line - Spacing.TIGHT, true);
        }
    }

    private static Color tone(LevelLadder.Rung rung, Tones tones) {
        return switch (rung.kind()) {
            case CLIP -> tones.error();
            case END_POINT, FULL_SCALE -> tones.text();
            case CHECK -> tones.accent();
        };
    }
}
