// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Menu;
import org.eclipse.swt.widgets.MenuItem;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Reading;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.ui.internal.SavedFilters.Saved;

/** The conditions above the table, and the filters that are kept. */
class FilterTest {
    @TempDir
    Path folder;

    @TempDir
    Path otherFolder;

    private final SavedFilters filters = SavedFilters.ofTheView();
    private Bench bench;

    @BeforeEach
    void setUp() {
        bench = new Bench(folder);
    }

    @AfterEach
    void tearDown() {
        bench.close();
    }

    private void show() {
        bench.open().show(new LogComposite.Keeping(OperatorMemory.ofTheView(), filters, () -> {}));
    }

    private String count() {
        return bench.find("log.filter.count", Label.class).getText();
    }

    private void type(String id, String words) {
        bench.find(id, Text.class).setText(words);
        bench.settle();
    }

    private void six() throws Exception {
        bench.withLog(Samples.six());
        show();
    }

    @Test
    void conditionsMayBeWrittenAmongTheWords() throws Exception {
        six();
        type("log.filter", "load:4 mode:stereo");
        assertEquals("2 of 6", count());
        type("log.filter", "power:100..200");
        assertEquals("2 of 6", count(), "118 and 160 W");
        type("log.filter", "stereo supply:14");
        assertEquals("2 of 6", count());
    }

    @Test
    void whatIsNotUnderstoodIsSaidBelowAndTheRowsStay() throws Exception {
        six();
        type("log.filter", "bridged");
        type("log.filter", "bridged mode:sideways");
        Label error = bench.find("log.filter.error", Label.class);
        assertTrue(error.getText().contains("sideways"), error.getText());
        assertTrue(error.isVisible());
        assertEquals("2 of 6", count());
        type("log.filter", "");
        assertFalse(error.isVisible());
        assertEquals("6 of 6", count());
    }

    @Test
    void daysAndRangesNarrowAndShowAllTakesThemAway() throws Exception {
        six();
        Button more = bench.find("log.more", Button.class);
        Composite panel = bench.find("log.more.panel", Composite.class);
        assertFalse(panel.isVisible());
        more.setSelection(true);
        bench.select(more);
        assertTrue(panel.isVisible());
        type("log.more.from", "2026-03-03");
        assertEquals("0 of 6", count());
        type("log.more.from", "2026-03-02");
        type("log.more.to", "2026-03-02");
        assertEquals("6 of 6", count());
        type("log.more.least", "200");
        assertEquals("2 of 6", count());
        type("log.more.least", "much");
        assertTrue(bench.find("log.filter.error", Label.class).getText().startsWith("\"much\" is not a number."));
        bench.select(bench.find("log.filter.clear", Button.class));
        assertEquals("6 of 6", count());
        assertEquals("", bench.find("log.more.from", Text.class).getText());
    }

    @Test
    void operatorsThatOccurAreOffered() throws Exception {
        six();
        Combo operator = bench.find("log.more.operator", Combo.class);
        assertEquals(List.of("Any", "N. N."), List.of(operator.getItems()));
        operator.select(1);
        bench.select(operator);
        assertEquals("6 of 6", count());
    }

    private Menu menu() {
        Button button = bench.find("log.filters", Button.class);
        FilterMenu menu = (FilterMenu) button.getData(FilterMenu.class.getName());
        return menu.menu();
    }

    private void choose(Menu menu, String... path) {
        Menu at = menu;
        for (int index = 0; index < path.length; index++) {
            String words = path[index];
            MenuItem item = Arrays.stream(at.getItems())
                    .filter(each -> each.getText().equals(words))
                    .findFirst()
                    .orElseThrow(() -> new AssertionError("no " + words));
            assertTrue(item.isEnabled(), words);
            if (index < path.length - 1) {
                at = item.getMenu();
            } else {
                item.notifyListeners(SWT.Selection, new Event());
            }
        }
        bench.settle();
    }

    @Test
    void aFilterIsSavedChosenRenamedAndDeleted() throws Exception {
        six();
        type("log.filter", "load:2");
        choose(menu(), "Save these conditions\u2026");
        assertFalse(bench.find("log.filters.commit", Button.class).isEnabled(), "a name is needed");
        type("log.filters.name", "Low loads");
        bench.select(bench.find("log.filters.commit", Button.class));
        assertFalse(bench.find("log.filters.row", Control.class).isVisible());
        bench.select(bench.find("log.filter.clear", Button.class));
        assertEquals("6 of 6", count());
        choose(menu(), "Low loads");
        assertEquals("2 of 6", count());
        choose(menu(), "Rename", "Low loads");
        type("log.filters.name", "Two ohms");
        bench.select(bench.find("log.filters.commit", Button.class));
        assertTrue(filters.all().stream().anyMatch(each -> each.name().equals("Two ohms")));
        choose(menu(), "Delete", "Two ohms");
        assertEquals(SavedFilters.usual(), filters.all());
    }

    @Test
    void theUsualFiltersAreUnderstood() {
        for (Saved saved : SavedFilters.usual()) {
            assertTrue(saved.usable(), saved.name());
        }
        assertFalse(new Saved("old", "colour:green").usable());
    }

    @Test
    void filtersAreKeptAsText() {
        List<Saved> some = List.of(new Saved("One", "load:4"), new Saved("Two", "a \"b c\""));
        assertEquals(some, SavedFilters.ofText(SavedFilters.toText(some)));
        assertEquals(List.of(), SavedFilters.ofText(SavedFilters.toText(List.of())));
    }

    @Test
    void readingsWithOverdueInstrumentsAreMarkedAndFound() throws Exception {
        List<Reading> readings = new ArrayList<>(Samples.six());
        readings.set(2, Samples.overdue(readings.get(2)));
        bench.withLog(readings);
        show();
        Table table = bench.find("log.table", Table.class);
        assertEquals("overdue", table.getItem(2).getText(LogColumn.INSTRUMENTS.ordinal()));
        assertTrue(table.getItem(2).getImage(LogColumn.INSTRUMENTS.ordinal()) != null, "by a drawing too");
        assertEquals("", table.getItem(1).getText(LogColumn.INSTRUMENTS.ordinal()));
        choose(menu(), "Readings with overdue instruments");
        assertEquals("1 of 6", count());
        assertEquals("R0003", table.getItem(0).getText(0));
    }

    @Test
    void joinedEntriesShowTheirChainAndAreNotVoidedHere() throws Exception {
        bench.withLog(Samples.six());
        try (TestLog log = TestLog.open(bench.logFile());
                TestLog other = TestLog.open(otherFolder.resolve(TestLog.FILE_NAME))) {
            other.append(Samples.reading("stereo-4ohm-12V", Mode.STEREO, 4, 12, 71));
            log.join(other, "North bench", "N. N.");
        }
        show();
        type("log.filter", "chain:B");
        assertEquals("1 of 8", count());
        Table table = bench.find("log.table", Table.class);
        assertEquals("B/R0001", table.getItem(0).getText(0));
        table.setSelection(0);
        bench.select(table);
        assertEquals(Optional.of("B/R0001"), bench.desk.chosenEntry().map(entry -> entry.id()));
        assertFalse(bench.find("log.void", Button.class).isEnabled());
    }
}
