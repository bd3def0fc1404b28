// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.table;

import java.util.List;
import org.eclipse.swt.SWT;
import org.eclipse.swt.dnd.Clipboard;
import org.eclipse.swt.dnd.TextTransfer;
import org.eclipse.swt.dnd.Transfer;
import org.eclipse.swt.events.KeyListener;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Table;

/** Rows of a table that is only looked at, as text for a spreadsheet. */
public final class CopiedTable {
    private CopiedTable() {}

    /**
     * Returns rows as lines, a tab between cells. A tab or line end within a cell, which would shift what follows, becomes a blank, and
     * so does a blank that does not break.
     */
    public static String text(List<List<String>> rows) {
        return TabbedText.write(rows.stream()
                .map(row -> row.stream().map(CopiedTable::plain).toList())
                .toList());
    }

    private static String plain(String cell) {
        return cell.replace('\u00a0', ' ').replaceAll("[\\t\\r\\n]+", " ");
    }

    /** Has Ctrl+C (on macOS Cmd+C) copy the selected rows of a table, and Ctrl+A select all of them. */
    public static void onKeys(Table table, Runnable copy) {
        table.addKeyListener(KeyListener.keyPressedAdapter(event -> {
            if (event.stateMask == SWT.MOD1 && event.keyCode == 'c') {
                copy.run();
            } else if (event.stateMask == SWT.MOD1 && event.keyCode == 'a') {
                table.selectAll();
            }
        }));
    }

    /** Puts a text on the clipboard; an empty one leaves there what is on it. */
    public static void toClipboard(Display display, String text) {
        if (text.isEmpty()) {
            return;
        }
        Clipboard clipboard = new Clipboard(display);
        try {
            clipboard.setContents(new Object[] {text}, new Transfer[] {TextTransfer.getInstance()});
        } finally {
            clipboard.dispose();
        }
    }
}
