// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Listener;

/** The keys of the console, wherever in it the focus is: run next, run all, and Escape twice for the emergency stop. */
final class ConsoleKeys {
    private static final int TWICE_MILLIS = 700;

    private final Composite console;
    private final Keys keys;
    private int lastEscape;
    private boolean escapeSeen;

    /** What the keys do. */
    interface Keys {
        void runNext();

        void runAll();

        void emergencyStop();

        boolean running();
    }

    ConsoleKeys(Composite console, Keys keys) {
        this.console = console;
        this.keys = keys;
        Display display = console.getDisplay();
        Listener pressed = this::pressed;
        display.addFilter(SWT.KeyDown, pressed);
        console.addListener(SWT.Dispose, event -> display.removeFilter(SWT.KeyDown, pressed));
    }

    private void pressed(Event event) {
        if (!(event.widget instanceof Control control) || !within(control)) {
            return;
        }
        boolean enter = event.keyCode == SWT.CR || event.keyCode == SWT.KEYPAD_CR;
        if (enter && event.stateMask == SWT.MOD1) {
            eat(event);
            keys.runNext();
        } else if (enter && event.stateMask == (SWT.MOD1 | SWT.MOD2)) {
            eat(event);
            keys.runAll();
        } else if (event.keyCode == SWT.ESC && keys.running()) {
            escape(event);
        } else {
            escapeSeen = false;
        }
    }

    private void escape(Event event) {
        if (escapeSeen && event.time - lastEscape <= TWICE_MILLIS) {
            escapeSeen = false;
            eat(event);
            keys.emergencyStop();
            return;
        }
        escapeSeen = true;
        lastEscape = event.time;
    }

    private static void eat(Event event) {
        event.doit = false;
        event.type = SWT.None;
    }

    private boolean within(Control control) {
        Control each = control;
        while (each != null && each != console) {
            each = each.getParent();
        }
        return each == console;
    }
}
