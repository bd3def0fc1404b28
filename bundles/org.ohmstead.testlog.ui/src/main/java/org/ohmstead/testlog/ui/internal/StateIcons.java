// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiConsumer;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.ImageGcDrawer;
import org.eclipse.swt.widgets.Control;
import org.ohmstead.workbench.look.Tones;

/** A small drawing for each state, told apart by shape as well as by colour; disposed with the control they were made for. */
final class StateIcons {
    private static final int SIZE = 14;

    private final Control owner;
    private final Map<RowState, Image> images = new EnumMap<>(RowState.class);
    private Optional<Image> overdue = Optional.empty();
    private Tones tones;

    StateIcons(Control owner) {
        this.owner = owner;
        owner.addDisposeListener(event -> disposeImages());
    }

    Image of(RowState state) {
        follow();
        return images.computeIfAbsent(state, key -> draw((gc, with) -> draw(gc, key, with)));
    }

    /** Returns the drawing for an instrument whose calibration had run out: a clock. */
    Image ofOverdue() {
        follow();
        Image image = overdue.orElseGet(() -> draw((gc, with) -> {
            colour(gc, with.warning());
            gc.drawOval(1, 1, 12, 12);
            gc.drawPolyline(new int[] {7, 4, 7, 7, 10, 9});
        }));
        overdue = Optional.of(image);
        return image;
    }

    private void follow() {
        Tones now = Tones.of(owner);
        if (!now.equals(tones)) {
            disposeImages();
            tones = now;
        }
    }

    private void disposeImages() {
        images.values().forEach(Image::dispose);
        images.clear();
        overdue.ifPresent(Image::dispose);
        overdue = Optional.empty();
    }

    private Image draw(BiConsumer<GC, Tones> drawing) {
        Tones with = tones;
        ImageGcDrawer drawer = new ImageGcDrawer() {
            @Override
            public void drawOn(GC gc, int width, int height) {
                gc.setAntialias(SWT.ON);
                gc.setLineWidth(2);
                gc.setLineCap(SWT.CAP_ROUND);
                drawing.accept(gc, with);
            }

            @Override
            public int getGcStyle() {
                return SWT.TRANSPARENT;
            }
        };
        return new Image(owner.getDisplay(), drawer, SIZE, SIZE);
    }

    private static void draw(GC gc, RowState state, Tones tones) {
        switch (state) {
            case VALID -> {
                colour(gc, tones.ok());
                gc.drawPolyline(new int[] {3, 7, 6, 10, 11, 4});
            }
            case VOIDED -> {
                colour(gc, tones.mutedText());
                gc.drawOval(2, 2, 10, 10);
                gc.drawLine(4, 10, 10, 4);
            }
            case UNREADABLE -> {
                colour(gc, tones.error());
                gc.fillPolygon(new int[] {7, 1, 13, 12, 1, 12});
                gc.setForeground(tones.background());
                gc.drawLine(7, 5, 7, 8);
                gc.drawPoint(7, 10);
            }
            case NOTE -> {
                colour(gc, tones.accent());
                gc.drawLine(3, 4, 11, 4);
                gc.drawLine(3, 7, 11, 7);
                gc.drawLine(3, 10, 8, 10);
            }
            case JOINING -> {
                colour(gc, tones.accent());
                gc.drawLine(2, 7, 12, 7);
                gc.drawLine(3, 12, 8, 7);
            }
            case ARCHIVING -> {
                colour(gc, tones.accent());
                gc.drawRectangle(2, 4, 10, 8);
                gc.drawLine(1, 4, 13, 4);
                gc.drawLine(6, 8, 8, 8);
            }
            case VOIDING -> {
                colour(gc, tones.warning());
                gc.drawLine(4, 4, 10, 10);
                gc.drawLine(10, 4, 4, 10);
            }
        }
    }

    private static void colour(GC gc, Color tone) {
        gc.setForeground(tone);
        gc.setBackground(tone);
    }
}
