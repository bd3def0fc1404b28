// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.table;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.eclipse.swt.dnd.Clipboard;
import org.eclipse.swt.dnd.TextTransfer;
import org.eclipse.swt.widgets.Display;
import org.junit.jupiter.api.Test;

class CopiedTableTest {
    @Test
    void cellsArePartedByTabsAndRowsByLineEnds() {
        assertEquals(
                "Power (W)\tNote\n97.3 \u00b1 2.1\tloose lead, tightened\n",
                CopiedTable.text(List.of(
                        List.of("Power (W)", "Note"),
                        List.of("97.3\u00a0\u00b1\u00a02.1", "loose lead,\r\n\ttightened"))));
    }

    @Test
    void noSpreadsheetRunsACellAsAFormula() {
        assertEquals("'=1+1\t-52.31\n", CopiedTable.text(List.of(List.of("=1+1", "-52.31"))));
    }

    @Test
    void anEmptyTextLeavesTheClipboardAlone() {
        Display display = Display.getDefault();
        CopiedTable.toClipboard(display, "kept");
        CopiedTable.toClipboard(display, "");
        Clipboard clipboard = new Clipboard(display);
        Object contents = clipboard.getContents(TextTransfer.getInstance());
        clipboard.dispose();
        assertEquals("kept", contents);
    }
}
