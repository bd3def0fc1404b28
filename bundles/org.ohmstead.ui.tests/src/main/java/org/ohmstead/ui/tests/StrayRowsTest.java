// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableItem;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A row that the toolkit makes while a table is emptied reaches nobody and does not stay. */
class StrayRowsTest {
    private static final int ROWS = 40;

    private final Bench bench = Bench.running();
    private final List<Integer> asked = new ArrayList<>();
    private Shell shell;
    private Table table;

    @BeforeEach
    void open() {
        shell = new Shell(bench.shell(), SWT.SHELL_TRIM);
        shell.setLayout(new FillLayout());
        table = new Table(shell, SWT.VIRTUAL | SWT.BORDER);
        table.addListener(SWT.SetData, event -> {
            asked.add(event.index);
            ((TableItem) event.item).setText("row " + event.index);
        });
        table.setItemCount(ROWS);
        shell.setSize(300, 300);
        shell.open();
        bench.pump().until(() -> !asked.isEmpty(), "No row was asked for.");
        bench.pump().settle();
    }

    @AfterEach
    void close() {
        shell.dispose();
        bench.pump().settle();
    }

    @Test
    void rowsWithAPlaceAreAskedForAsEver() {
        assertEquals("row 3", table.getItem(3).getText());
        assertFalse(table.getItem(3).isDisposed());
    }

    @Test
    void nobodyIsAskedForARowWithoutAPlaceWhenTheTableIsEmptied() {
        table.clearAll();
        table.setItemCount(0);
        bench.pump().settle();
        assertTrue(asked.stream().allMatch(index -> index >= 0), asked.toString());
    }

    @Test
    void aRowWithoutAPlaceIsDisposedOf() {
        asked.clear();
        TableItem stray = table.getItem(0);
        Event event = new Event();
        event.item = stray;
        event.index = -1;
        table.notifyListeners(SWT.SetData, event);
        assertTrue(stray.isDisposed(), "it stays");
        assertEquals(List.of(), asked);
    }
}
