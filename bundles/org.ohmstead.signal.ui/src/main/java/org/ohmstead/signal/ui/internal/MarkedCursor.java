// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal;

import java.util.OptionalDouble;
import java.util.function.DoubleFunction;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.plot.ui.ChartCanvas;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Tones;

/** The line below a chart that tells what stands at the cursor, and what lies between it and the user's mark. */
final class MarkedCursor {
    private static final int STILL_POINTS = 3;

    private final Label line;
    private final Runnable markChanged;
    private DoubleFunction<String> readOut = x -> "";
    private Difference difference = (from, to) -> "";
    private OptionalDouble cursor = OptionalDouble.empty();
    private Point pressed = new Point(0, 0);
    private OptionalDouble mark = OptionalDouble.empty();

    /** Tells what lies between two places. */
    @FunctionalInterface
    interface Difference {
        String between(double from, double to);
    }

    /**
     * Watches a chart.
     *
     * @param markChanged called when the mark was set, moved or taken away, so that it is drawn
     */
    MarkedCursor(ChartCanvas chart, Label line, Runnable markChanged) {
        this.line = line;
        this.markChanged = markChanged;
        line.setForeground(Tones.of(line).mutedText());
        chart.addCursorListener(found -> {
            cursor = found.isPresent() ? OptionalDouble.of(found.get().x()) : OptionalDouble.empty();
            tell();
        });
        Control pane = Ids.find(chart, "chart.pane", Control.class);
        pane.addListener(SWT.KeyDown, event -> {
            boolean plain = (event.stateMask & SWT.MODIFIER_MASK & ~SWT.SHIFT) == 0;
            if (plain && Character.toLowerCase(event.character) == 'm') {
                toggleMark();
            }
        });
        pane.addListener(SWT.MouseDown, event -> pressed = new Point(event.x, event.y));
        pane.addListener(SWT.MouseUp, event -> {
            int away = Math.max(Math.abs(event.x - pressed.x), Math.abs(event.y - pressed.y));
            // A drag with Ctrl is the chart's own.
            boolean control = (event.stateMask & SWT.MODIFIER_MASK) == SWT.MOD1;
            if (event.button == 1 && control && away <= STILL_POINTS) {
                toggleMark();
            }
        });
    }

    /** Sets the mark at the cursor; at the mark itself, or without a cursor, takes it away. */
    private void toggleMark() {
        mark = cursor.equals(mark) ? OptionalDouble.empty() : cursor;
        markChanged.run();
        tell();
    }

    /** Tells by whom places are read from now on. */
    void readBy(DoubleFunction<String> newReadOut, Difference newDifference) {
        readOut = newReadOut;
        difference = newDifference;
        tell();
    }

    OptionalDouble mark() {
        return mark;
    }

    /** Takes mark and cursor away, as when something else is shown. */
    void forget() {
        mark = OptionalDouble.empty();
        cursor = OptionalDouble.empty();
        readOut = x -> "";
        difference = (from, to) -> "";
        line.setText("");
    }

    private void tell() {
        String text;
        if (cursor.isEmpty()) {
            text = mark.isPresent()
                    ? Texts.say("plots.markAt", readOut.apply(mark.getAsDouble()))
                    : Texts.say("plots.hint");
        } else {
            text = readOut.apply(cursor.getAsDouble());
            if (mark.isPresent()) {
                text += "   |   " + difference.between(mark.getAsDouble(), cursor.getAsDouble());
            }
        }
        if (!text.equals(line.getText())) {
            line.setText(text);
            line.setToolTipText(text);
        }
    }
}
