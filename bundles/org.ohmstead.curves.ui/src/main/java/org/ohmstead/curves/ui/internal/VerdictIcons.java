// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.ui.internal;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.ImageGcDrawer;
import org.eclipse.swt.widgets.Control;
import org.ohmstead.curves.RatingOutcome;
import org.ohmstead.metrology.Verdict;
import org.ohmstead.workbench.look.Tones;

/** A drawing for each verdict, of the same shape as the rating's marker in the chart; disposed with the control they were made for. */
final class VerdictIcons {
    static final int SIZE = 14;

    private final Control owner;
    private final Map<Optional<Verdict>, Image> images = new HashMap<>();
    private Tones tones;

    VerdictIcons(Control owner) {
        this.owner = owner;
        owner.addDisposeListener(event -> disposeImages());
    }

    Image of(Optional<RatingOutcome> outcome) {
        Tones now = Tones.of(owner);
        if (!now.equals(tones)) {
            disposeImages();
            tones = now;
        }
        return images.computeIfAbsent(outcome.map(RatingOutcome::verdict), this::draw);
    }

    Color tone(Optional<RatingOutcome> outcome) {
        Tones now = Tones.of(owner);
        return outcome.map(each -> switch (each.verdict()) {
                    case MEETS -> now.ok();
                    case FALLS_SHORT -> now.error();
                    case UNDECIDED -> now.warning();
                })
                .orElse(now.mutedText());
    }

    private void disposeImages() {
        images.values().forEach(Image::dispose);
        images.clear();
    }

    private Image draw(Optional<Verdict> verdict) {
        Tones with = tones;
        ImageGcDrawer drawer = new ImageGcDrawer() {
            @Override
            public void drawOn(GC gc, int width, int height) {
                gc.setAntialias(SWT.ON);
                gc.setLineWidth(2);
                draw(gc, verdict, with);
            }

            @Override
            public int getGcStyle() {
                return SWT.TRANSPARENT;
            }
        };
        return new Image(owner.getDisplay(), drawer, SIZE, SIZE);
    }

    private static void draw(GC gc, Optional<Verdict> verdict, Tones tones) {
        if (verdict.isEmpty()) {
            gc.setForeground(tones.mutedText());
            gc.drawPolygon(new int[] {7, 3, 11, 11, 3, 11});
            return;
        }
        switch (verdict.get()) {
            case MEETS -> {
                gc.setForeground(tones.ok());
                gc.drawPolygon(new int[] {7, 2, 12, 7, 7, 12, 2, 7});
            }
            case FALLS_SHORT -> {
                gc.setForeground(tones.error());
                gc.drawLine(3, 3, 11, 11);
                gc.drawLine(11, 3, 3, 11);
            }
            case UNDECIDED -> {
                gc.setForeground(tones.warning());
                gc.drawRectangle(3, 3, 8, 8);
            }
        }
    }
}
