// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal;

import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.TableItem;

/**
 * Rows of virtual tables that belong to no place in their table. On GTK the toolkit makes one when a table is emptied and the list below it
 * asks once more for a row that is just going: the table has forgotten it already, never disposes of it, and whoever styles widgets keeps it
 * for good, so that the next change of the theme fails at a row without a table.
 */
final class StrayRows {
    private StrayRows() {}

    /** Disposes of such a row as soon as its content is asked for, which nobody has, from now on. */
    static void dispose(Display display) {
        display.addFilter(SWT.SetData, StrayRows::asked);
    }

    private static void asked(Event event) {
        if (event.index < 0 && event.item instanceof TableItem stray) {
            event.type = SWT.None;
            stray.dispose();
        }
    }
}
