// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.eclipse.swt.custom.CTabFolder;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Table;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.model.Mode;
import org.ohmstead.plot.ui.ChartCanvas;
import org.ohmstead.testlog.budget.ReadingBudget;
import org.ohmstead.workbench.session.DisplaySettings;

class BudgetPaneTest {
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

    private void showBudget() {
        CTabFolder tabs = bench.find("log.tabs", CTabFolder.class);
        tabs.setSelection(1);
        bench.select(tabs);
    }

    private void choose(int row) {
        Table table = bench.find("log.table", Table.class);
        table.setSelection(row);
        bench.select(table);
    }

    // 0.4 W and 0.3 W are 16 and 9 twenty-fifths of the variance, 0.5 W together; both exactly known, so k at 95 % is
    // that
    // of a normal distribution, 1.96, and the interval 0.98 W to each side.
    @Test
    void showsTableBarsAndBothIntervals() throws Exception {
        bench.withLog(Samples.six()).open().show();
        choose(0);
        showBudget();
        Table table = bench.find("log.budget.table", Table.class);
        assertEquals(3, table.getItemCount());
        assertEquals("0.400", table.getItem(0).getText(1));
        assertEquals("64.0", table.getItem(0).getText(2));
        assertEquals("36.0", table.getItem(1).getText(2));
        assertEquals("0.500", table.getItem(2).getText(1));
        assertEquals("\u221e", table.getItem(2).getText(6));
        String facts = bench.find("log.budget.facts", Label.class).getText();
        assertTrue(facts.startsWith("Power 68.00\u00a0\u00b1\u00a00.98 W at 95 % coverage, k = 1.96"), facts);
        assertTrue(facts.contains("Law of propagation, 95 %: 67.02 to 68.98 W"), facts);
        assertTrue(facts.contains("Monte Carlo, 95 %: 6"), facts);
        String verdict = bench.find("log.budget.verdict", Label.class).getText();
        assertTrue(verdict.startsWith("The law of propagation and the Monte Carlo calculation give the same"), verdict);
        assertTrue(bench.find("log.budget.bars", ChartCanvas.class).message().isEmpty());
    }

    @Test
    void followsTheChosenReadingChannelAndDecimalSign() throws Exception {
        bench.withLog(Samples.six()).open().show();
        choose(0);
        showBudget();
        Combo channel = bench.find("log.budget.channel", Combo.class);
        assertEquals("Channel B", channel.getText());
        channel.select(0);
        bench.select(channel);
        Label facts = bench.find("log.budget.facts", Label.class);
        assertTrue(facts.getText().startsWith("Power 70.00"), facts.getText());
        bench.desk.setDisplay(new DisplaySettings(2, true));
        bench.settle();
        assertTrue(facts.getText().startsWith("Power 70,00"), facts.getText());
        choose(4);
        assertEquals("Channel A+B", channel.getText());
        assertTrue(facts.getText().startsWith("Power 240,00"), facts.getText());
    }

    @Test
    void linesComeByTheirShare() {
        ReadingBudget budget =
                ReadingBudget.of(Samples.reading("s1", Mode.STEREO, 4, 13.8, 90).weakestChannel());
        List<List<String>> rows = BudgetTexts.rows(budget);
        assertEquals("output volts (meter)", rows.get(0).get(0));
        assertEquals("interpolation between levels *", rows.get(1).get(0), "its own, not shared");
        assertEquals("Together", rows.get(2).get(0));
        for (List<String> row : rows) {
            assertEquals(BudgetTexts.HEADERS.size(), row.size());
        }
    }
}
