// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.ui;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.function.BooleanSupplier;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;

/** Runs the event loop and plays events for tests. */
final class UiThread {
    private static final int WAKE_MILLISECONDS = 10;
    private static final long DEADLINE_NANOSECONDS = 30_000_000_000L;

    private UiThread() {}

    static void until(String what, BooleanSupplier condition) {
        Display display = Display.getDefault();
        long deadline = System.nanoTime() + DEADLINE_NANOSECONDS;
        while (!condition.getAsBoolean()) {
            assertTrue(System.nanoTime() < deadline, what + " did not come about");
            if (!display.readAndDispatch()) {
                display.timerExec(WAKE_MILLISECONDS, () -> {});
                display.sleep();
            }
        }
    }

    static void settle(ChartCanvas chart) {
        boolean[] drawn = {false};
        chart.whenDrawn(() -> drawn[0] = true);
        until("the picture", () -> drawn[0]);
    }

    static void mouse(Control control, int type, int button, int stateMask, double x, double y) {
        Event event = new Event();
        event.button = button;
        event.stateMask = stateMask;
        event.x = (int) Math.round(x);
        event.y = (int) Math.round(y);
        control.notifyListeners(type, event);
    }

    static void wheel(Control control, int stateMask, int count, double x, double y) {
        Event event = new Event();
        event.count = count;
        event.stateMask = stateMask;
        event.x = (int) Math.round(x);
        event.y = (int) Math.round(y);
        control.notifyListeners(SWT.MouseVerticalWheel, event);
    }

    static void key(Control control, int keyCode, int stateMask) {
        Event event = new Event();
        event.keyCode = keyCode;
        event.character = keyCode < 0x100 ? (char) keyCode : 0;
        event.stateMask = stateMask;
        control.notifyListeners(SWT.KeyDown, event);
    }
}
