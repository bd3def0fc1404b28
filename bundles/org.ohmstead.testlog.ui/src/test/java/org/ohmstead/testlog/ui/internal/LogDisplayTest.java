// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.dnd.Clipboard;
import org.eclipse.swt.dnd.TextTransfer;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.MenuItem;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.ohmstead.model.Mode;
import org.ohmstead.workbench.session.DisplaySettings;

/** The log shows numbers and uncertainties as the user wants them, at once. */
class LogDisplayTest {
    private static final DisplaySettings COMMA = new DisplaySettings(2, true);
    /** Half a step of the last of the two digits that an uncertainty has. */
    private static final double HALF_STEP = 0.05;

    @TempDir
    Path folder;

    private Bench bench;

    @BeforeEach
    void setUp() {
        bench = new Bench(folder);
    }

    @AfterEach
    void tearDown() {
        bench.desk.setDisplay(DisplaySettings.USUAL);
        bench.close();
    }

    private String cell(LogColumn column) {
        return bench.find("log.table", Table.class).getItem(0).getText(column.ordinal());
    }

    private String header(LogColumn column) {
        return bench.find("log.table", Table.class).getColumn(column.ordinal()).getText();
    }

    private String clipboard() {
        Clipboard clipboard = new Clipboard(bench.display);
        try {
            return (String) clipboard.getContents(TextTransfer.getInstance());
        } finally {
            clipboard.dispose();
        }
    }

    private void openOne() throws Exception {
        bench.withLog(List.of(Samples.reading("s1", Mode.STEREO, 4, 13.8, 97.26)))
                .open()
                .show();
    }

    @Test
    void theTableFollowsTheDecimalSignWhileItIsOpen() throws Exception {
        openOne();
        assertEquals("13.80", cell(LogColumn.SUPPLY));
        bench.desk.setDisplay(COMMA);
        bench.settle();
        assertEquals("13,80", cell(LogColumn.SUPPLY));
        assertEquals("95,3", cell(LogColumn.POWER));
        assertEquals("1,0", cell(LogColumn.UNCERTAINTY));
        bench.desk.setDisplay(DisplaySettings.USUAL);
        bench.settle();
        assertEquals("13.80", cell(LogColumn.SUPPLY));
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3})
    void theUncertaintyIsTheFactorTimesTheReadingsOwn(int factor) throws Exception {
        openOne();
        bench.desk.setDisplay(new DisplaySettings(factor, false));
        bench.settle();
        double standard = bench.desk
                .log()
                .entries()
                .get(0)
                .reading()
                .orElseThrow()
                .weakestChannel()
                .standardUncertaintyWatts();
        assertTrue(standard > 0, "the sample has an uncertainty");
        assertEquals(factor * standard, Double.parseDouble(cell(LogColumn.UNCERTAINTY)), HALF_STEP);
        assertEquals("\u00b1 (W), k = " + factor, header(LogColumn.UNCERTAINTY));
    }

    @Test
    void theFactorOneShowsHalfOfWhatTwoShows() throws Exception {
        openOne();
        double two = Double.parseDouble(cell(LogColumn.UNCERTAINTY));
        bench.desk.setDisplay(new DisplaySettings(1, false));
        bench.settle();
        assertEquals(two / 2, Double.parseDouble(cell(LogColumn.UNCERTAINTY)), HALF_STEP);
    }

    @Test
    void theDetailsFollow() throws Exception {
        openOne();
        bench.desk.choose(bench.desk.log().entry("R0001"));
        bench.desk.setDisplay(new DisplaySettings(1, true));
        bench.settle();
        String details = bench.find("log.details", StyledText.class).getText();
        assertTrue(details.contains("13,80 V"), details);
        assertTrue(details.contains("Power (W), k = 1"), details);
        assertTrue(details.contains("97,26\u00a0\u00b1\u00a00,50"), details);
        assertTrue(details.contains("Standard, k = 1"), details);
    }

    @Test
    void copiesKeepThePoint() throws Exception {
        openOne();
        bench.desk.setDisplay(COMMA);
        bench.settle();
        Table table = bench.find("log.table", Table.class);
        table.setSelection(0);
        bench.select(table);
        Event key = new Event();
        key.stateMask = SWT.MOD1;
        key.keyCode = 'c';
        table.notifyListeners(SWT.KeyDown, key);
        bench.settle();
        assertTrue(clipboard().contains("\t13.80\t95.3\t1.0\t"), clipboard());
        for (MenuItem item :
                bench.find("log.details", StyledText.class).getMenu().getItems()) {
            if (item.getText().contains("everything")) {
                item.notifyListeners(SWT.Selection, new Event());
            }
        }
        bench.settle();
        assertTrue(clipboard().contains("97.3\u00a0\u00b1\u00a01.0"), clipboard());
    }

    @Test
    void theFilterFindsNumbersByEitherSignAndKeepsTheChosenLoad() throws Exception {
        bench.withLog(List.of(
                        Samples.reading("s1", Mode.STEREO, 4, 13.8, 97.26),
                        Samples.reading("s2", Mode.STEREO, 2.7, 12.5, 120)))
                .open()
                .show();
        Combo load = bench.find("log.filter.load", Combo.class);
        load.select(2);
        bench.select(load);
        assertEquals("2.7 \u03a9", load.getText());
        bench.desk.setDisplay(COMMA);
        bench.settle();
        assertEquals("2,7 \u03a9", load.getText());
        Table table = bench.find("log.table", Table.class);
        assertEquals(1, table.getItemCount());
        bench.find("log.more.figure", Combo.class).select(2); // supply
        for (String volts : List.of("12,5", "12.5")) {
            bench.find("log.more.least", Text.class).setText(volts);
            bench.find("log.more.most", Text.class).setText(volts);
            bench.settle();
            assertEquals(1, table.getItemCount(), volts);
        }
        bench.find("log.more.least", Text.class).setText("");
        bench.find("log.more.most", Text.class).setText("12,49");
        bench.settle();
        assertEquals(0, table.getItemCount());
    }
}
