// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.ui.internal;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.ImageGcDrawer;
import org.eclipse.swt.widgets.Control;
import org.ohmstead.curves.RatingOutcome;
import org.ohmstead.workbench.look.Tones;

/** The verdicts as words and shapes: filled disc, triangle on its tip, half disc, dashed ring. Colour only adds to the shape. */
enum VerdictMark {
    MEETS {
        @Override
        void draw(GC gc, Tones tones) {
            fill(gc, tones.ok());
            gc.fillOval(1, 1, 12, 12);
            gc.setForeground(tones.background());
            gc.drawPolyline(new int[] {4, 7, 6, 9, 10, 5});
        }
    },
    FALLS_SHORT {
        @Override
        void draw(GC gc, Tones tones) {
            fill(gc, tones.error());
            gc.fillPolygon(new int[] {1, 2, 13, 2, 7, 13});
        }
    },
    UNDECIDED {
        @Override
        void draw(GC gc, Tones tones) {
            fill(gc, tones.warning());
            gc.drawOval(2, 2, 10, 10);
            gc.fillArc(2, 2, 10, 10, -90, 180);
        }
    },
    NOT_TESTED {
        @Override
        void draw(GC gc, Tones tones) {
            fill(gc, tones.mutedText());
            gc.setLineStyle(SWT.LINE_DOT);
            gc.drawOval(2, 2, 10, 10);
        }
    };

    private static final int SIZE = 14;

    abstract void draw(GC gc, Tones tones);

    /** Returns what the verdict is called. */
    String word() {
        return Texts.say("verdict." + name());
    }

    Color tone(Tones tones) {
        return switch (this) {
            case MEETS -> tones.ok();
            case FALLS_SHORT -> tones.error();
            case UNDECIDED -> tones.warning();
            case NOT_TESTED -> tones.mutedText();
        };
    }

    static VerdictMark of(Optional<RatingOutcome> outcome) {
        if (outcome.isEmpty()) {
            return NOT_TESTED;
        }
        return switch (outcome.get().verdict()) {
            case MEETS -> MEETS;
            case FALLS_SHORT -> FALLS_SHORT;
            case UNDECIDED -> UNDECIDED;
        };
    }

    private static void fill(GC gc, Color colour) {
        gc.setForeground(colour);
        gc.setBackground(colour);
    }

    /** The marks as images; disposed with the control that they were made for. */
    static final class Images {
        private final Control owner;
        private final Map<VerdictMark, Image> images = new EnumMap<>(VerdictMark.class);
        private Tones tones;

        Images(Control owner) {
            this.owner = owner;
            owner.addDisposeListener(event -> clear());
        }

        Image of(VerdictMark mark) {
            Tones now = Tones.of(owner);
            if (!now.equals(tones)) {
                clear();
                tones = now;
            }
            return images.computeIfAbsent(mark, this::make);
        }

        private Image make(VerdictMark mark) {
            Tones with = tones;
            ImageGcDrawer drawer = new ImageGcDrawer() {
                @Override
                public void drawOn(GC gc, int width, int height) {
                    gc.setAntialias(SWT.ON);
                    gc.setLineWidth(2);
                    mark.draw(gc, with);
                }

                @Override
                public int getGcStyle() {
                    return SWT.TRANSPARENT;
                }
            };
            return new Image(owner.getDisplay(), drawer, SIZE, SIZE);
        }

        private void clear() {
            images.values().forEach(Image::dispose);
            images.clear();
        }
    }
}
