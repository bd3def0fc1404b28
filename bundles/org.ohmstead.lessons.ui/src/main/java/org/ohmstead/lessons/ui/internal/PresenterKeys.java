// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.ui.internal;

import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Listener;
import org.eclipse.swt.widgets.Scale;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Text;
import org.ohmstead.plot.ui.ChartCanvas;

/** The keys before a room, those of a hand-held pointer among them; a slider or field that has the focus keeps its own. */
final class PresenterKeys {
    private static final int OPTIONS = 9;

    private final PresenterWindow window;
    private final Shell shell;
    private final Listener filter = this::press;

    PresenterKeys(PresenterWindow window, Shell shell) {
        this.window = window;
        this.shell = shell;
        shell.getDisplay().addFilter(SWT.KeyDown, filter);
    }

    void stop() {
        shell.getDisplay().removeFilter(SWT.KeyDown, filter);
    }

    private void press(Event event) {
        if (event.widget instanceof Control control && !control.isDisposed() && control.getShell() == shell) {
            if (act(event, control)) {
                event.doit = false;
                event.type = SWT.None;
            }
        }
    }

    /** Returns whether the key was ours. */
    private boolean act(Event event, Control control) {
        if ((event.stateMask & SWT.MODIFIER_MASK) != 0) {
            return false;
        }
        switch (event.keyCode) {
            case SWT.PAGE_DOWN -> window.next();
            case SWT.PAGE_UP -> window.back();
            case SWT.F5 -> window.toggleFullScreen();
            case SWT.ESC -> leave();
            default -> {
                return free(control) && (step(event) || digit(event));
            }
        }
        return true;
    }

    private void leave() {
        if (shell.getFullScreen()) {
            window.toggleFullScreen();
        } else {
            window.close();
        }
    }

    private boolean step(Event event) {
        switch (event.keyCode) {
            case SWT.ARROW_RIGHT, SWT.ARROW_DOWN -> window.next();
            case SWT.ARROW_LEFT, SWT.ARROW_UP -> window.back();
            case SWT.HOME -> window.goToEnd(false);
            case SWT.END -> window.goToEnd(true);
            default -> {
                return false;
            }
        }
        return true;
    }

    private boolean digit(Event event) {
        int digit = event.character - '1';
        if (digit < 0 || digit >= OPTIONS) {
            return false;
        }
        window.choose(digit);
        return true;
    }

    /** Returns whether a control has no use for arrows of its own. */
    private static boolean free(Control control) {
        boolean option = control instanceof Button button && (button.getStyle() & SWT.RADIO) != 0;
        boolean chart = control.getParent() instanceof ChartCanvas;
        return !(control instanceof Scale || control instanceof Text || control instanceof Combo || chart || option);
    }
}
