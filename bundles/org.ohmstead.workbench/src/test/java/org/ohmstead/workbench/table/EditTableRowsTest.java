// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.eclipse.swt.SWT;
import org.eclipse.swt.dnd.Clipboard;
import org.eclipse.swt.dnd.TextTransfer;
import org.eclipse.swt.dnd.Transfer;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.MenuItem;
import org.eclipse.swt.widgets.Text;
import org.eclipse.swt.widgets.ToolItem;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.ohmstead.model.Severity;

class EditTableRowsTest {
    private final TableStage stage =
            new TableStage(Claim.of("A", 4, 90), Claim.of("B", 2, 150), Claim.of("C", 1, 120), Claim.of("D", 8, 50));

    @AfterEach
    void close() {
        stage.close();
    }

    private void click(String button) {
        stage.find(button, ToolItem.class).notifyListeners(SWT.Selection, new Event());
        stage.pump();
    }

    private void clickHeader(int column) {
        stage.table.table().getColumn(column).notifyListeners(SWT.Selection, new Event());
        stage.pump();
    }

    private void selectRows(int... rows) {
        stage.table.table().setSelection(rows);
        stage.table.table().notifyListeners(SWT.Selection, new Event());
        stage.pump();
    }

    private void toClipboard(String text) {
        Clipboard clipboard = new Clipboard(stage.display);
        clipboard.setContents(new Object[] {text}, new Transfer[] {TextTransfer.getInstance()});
        clipboard.dispose();
    }

    private String fromClipboard() {
        Clipboard clipboard = new Clipboard(stage.display);
        Object contents = clipboard.getContents(TextTransfer.getInstance());
        clipboard.dispose();
        return (String) contents;
    }

    private List<String> names() {
        return stage.table.rows().stream().map(Claim::name).toList();
    }

    @Test
    void insertAddsARowBelowAndGoesToItsFirstCell() {
        stage.table.select(1, "power");
        stage.press(SWT.INSERT);
        assertEquals(List.of("A", "B", "New", "C", "D"), names());
        assertEquals(List.of("New"), stage.selectedNames());
        assertEquals(0, stage.table.focus().column());
        click("add");
        assertEquals(List.of("A", "B", "New", "New 2", "C", "D"), names());
        assertEquals(List.of("Add rating", "Add rating"), stage.names);
    }

    @Test
    void duplicatesTheSelectedRowsBelowTheLastOfThem() {
        selectRows(0, 2);
        stage.press(SWT.MOD1, 'd', (char) 4);
        assertEquals(List.of("A", "B", "C", "A 2", "C 2", "D"), names());
        assertEquals(List.of("A 2", "C 2"), stage.selectedNames());
        assertEquals(List.of("Duplicate 2 ratings"), stage.names);
    }

    @Test
    void deleteRemovesTheSelectedRowsAndSelectsTheNext() {
        selectRows(1, 2);
        stage.press(0, SWT.DEL, SWT.DEL);
        assertEquals(List.of("A", "D"), names());
        assertEquals(List.of("D"), stage.selectedNames());
        click("remove");
        assertEquals(List.of("A"), names());
        assertEquals(List.of("Remove 2 ratings", "Remove rating"), stage.names);
    }

    @Test
    void movesTheSelectedRowsUpAndDownAsFarAsTheyGo() {
        selectRows(1, 2);
        stage.press(SWT.ALT, SWT.ARROW_UP, (char) 0);
        assertEquals(List.of("B", "C", "A", "D"), names());
        assertEquals(List.of("B", "C"), stage.selectedNames());
        stage.press(SWT.ALT, SWT.ARROW_UP, (char) 0);
        assertEquals(List.of("Move 2 ratings up"), stage.names, "there is no place further up");
        selectRows(3);
        click("up");
        assertEquals(List.of("B", "C", "D", "A"), names());
        click("down");
        assertEquals(List.of("B", "C", "A", "D"), names());
        assertEquals("Move rating down", stage.names.get(2));
    }

    @Test
    void movesNoRowWhileSortedAndSaysWhy() {
        clickHeader(3);
        selectRows(1);
        stage.press(SWT.ALT, SWT.ARROW_UP, (char) 0);
        assertEquals(List.of("A", "B", "C", "D"), names());
        assertTrue(stage.table.message().contains("own order"));
    }

    @Test
    void aHeaderSortsWhatIsSeenAndNotTheRows() {
        clickHeader(3);
        assertEquals(List.of("D", "A", "C", "B"), stage.shownNames());
        assertEquals(stage.table.table().getColumn(3), stage.table.table().getSortColumn());
        assertEquals(SWT.UP, stage.table.table().getSortDirection());
        clickHeader(3);
        assertEquals(List.of("B", "C", "A", "D"), stage.shownNames());
        assertEquals(SWT.DOWN, stage.table.table().getSortDirection());
        clickHeader(3);
        assertEquals(List.of("A", "B", "C", "D"), stage.shownNames());
        assertNull(stage.table.table().getSortColumn());
        assertEquals(List.of("A", "B", "C", "D"), names());
        assertEquals(List.of(), stage.names);
    }

    @Test
    void theFilterShowsWhatMatchesAndCounts() {
        stage.press(SWT.MOD1, 'f', (char) 6);
        Text filter = stage.find("filter", Text.class);
        stage.waitFor(filter::isFocusControl);
        filter.setText("50");
        assertEquals(List.of("B", "D"), stage.shownNames());
        assertEquals("2 of 4", stage.find("count", Label.class).getText());
        filter.setText("none such");
        assertEquals(
                "None of the 4 ratings matches \"none such\". Press Escape in the filter to see all.",
                stage.find("empty", Label.class).getText());
        Event escape = new Event();
        escape.keyCode = SWT.ESC;
        filter.notifyListeners(SWT.KeyDown, escape);
        assertEquals("", filter.getText());
        assertEquals(4, stage.shownNames().size());
        assertEquals("4 ratings", stage.find("count", Label.class).getText());
    }

    @Test
    void anEditedRowStaysInSightThoughItNoLongerMatches() {
        stage.find("filter", Text.class).setText("150");
        stage.table.select(1, "power");
        stage.press(SWT.F2);
        stage.type("7");
        stage.enter();
        assertEquals(List.of("B"), stage.shownNames());
        assertEquals(7, stage.table.rows().get(1).powerWatts());
    }

    @Test
    void selectRevealsARowThatTheFilterHides() {
        stage.find("filter", Text.class).setText("150");
        stage.table.select(3, "load");
        assertEquals(List.of("D"), stage.selectedNames());
        assertEquals(4, stage.shownNames().size());
        assertEquals(2, stage.table.focus().column());
    }

    @Test
    void copiesPlainNumbersWithTheUnitInTheHeader() {
        selectRows(1);
        stage.press(SWT.MOD1, 'c', (char) 3);
        assertEquals("B\tstereo\t2\t150\t8.66\t1\t\t\tno\n", fromClipboard());
        stage.press(SWT.MOD1 | SWT.SHIFT, 'c', (char) 3);
        assertTrue(fromClipboard().startsWith("Name\tMode\tLoad (\u03a9)\tPower (W)\tCurrent (A)\tDistortion (%)\t"));
    }

    @Test
    void aCopiedFormulaIsHarmless() {
        stage.table.setRows(List.of(Claim.of("=1+1", 4, 90)));
        selectRows(0);
        stage.press(SWT.MOD1, 'c', (char) 3);
        assertTrue(fromClipboard().startsWith("'=1+1\t"));
    }

    @Test
    void pastesFromTheFocusedCellOnAsOneChange() {
        toClipboard("4R7\t95\r\n2,2\t0.1 kW\r\n3\t60\r\n");
        stage.table.select(2, "load");
        stage.press(SWT.MOD1, 'v', (char) 22);
        assertEquals(List.of("Paste 3 ratings"), stage.names);
        assertEquals(List.of("A", "B", "C", "D", "New"), names());
        assertEquals(4.7, stage.table.rows().get(2).loadOhms());
        assertEquals(100, stage.table.rows().get(3).powerWatts());
        assertEquals(60, stage.table.rows().get(4).powerWatts());
        assertEquals(List.of("C", "D", "New"), stage.selectedNames());
    }

    @Test
    void pastesNothingWhenOneCellIsBad() {
        toClipboard("4R7\t95\n2,2\tplenty");
        List<Claim> before = stage.table.rows();
        stage.table.select(0, "load");
        stage.press(SWT.MOD1, 'v', (char) 22);
        assertEquals(before, stage.table.rows());
        assertEquals(List.of(), stage.names);
        assertTrue(stage.table.message().contains("row 2 on the clipboard, column \"Power (W)\": \"plenty\""));
    }

    @Test
    void pastesIntoTheOrderThatIsSeen() {
        clickHeader(3);
        toClipboard("51\n91");
        stage.table.select(3, "power");
        stage.press(SWT.MOD1, 'v', (char) 22);
        assertEquals(51, stage.table.rows().get(3).powerWatts());
        assertEquals(91, stage.table.rows().get(0).powerWatts());
    }

    @Test
    void whatIsCopiedCanBePastedBack() {
        selectRows(0, 1, 2, 3);
        stage.press(SWT.MOD1 | SWT.SHIFT, 'c', (char) 3);
        List<Claim> before = stage.table.rows();
        stage.table.setRows(List.of());
        toClipboard(fromClipboard().replaceAll("(?m)^(([^\t]*\t){4})[^\t]*\t(.*)$", "$1$3"));
        stage.press(SWT.MOD1, 'v', (char) 22);
        assertEquals(0, stage.table.rows().size(), "a column is missing: nothing may be shifted into the next");
        assertFalse(stage.table.message().isEmpty());
        stage.table.setRows(before);
        selectRows(0);
        stage.press(SWT.MOD1, 'c', (char) 3);
        stage.table.select(1, "name");
        stage.press(SWT.MOD1, 'v', (char) 22);
        assertEquals(before.get(0), stage.table.rows().get(1), "the worked out column agrees once the others are in");
        assertEquals(List.of("Paste rating"), stage.names);
    }

    @Test
    void aRefusedChangeLeavesTheRowsAndSaysWhy() {
        stage.table.onChange((name, rows) -> {
            throw new IllegalArgumentException("The plan still refers to this rating.");
        });
        stage.table.select(1, "name");
        stage.press(0, SWT.DEL, SWT.DEL);
        assertEquals(4, stage.table.rows().size());
        assertEquals("The plan still refers to this rating.", stage.table.message());
    }

    @Test
    void theOwnerMaySetOtherRowsFromWithinTheChange() {
        stage.table.onChange((name, rows) -> stage.table.setRows(rows.subList(0, 1)));
        stage.table.select(3, "name");
        stage.press(0, SWT.DEL, SWT.DEL);
        assertEquals(List.of("A"), names());
    }

    @Test
    void theSelectionStaysWithItsRowsWhenOthersAreSet() {
        selectRows(1, 3);
        List<Claim> rows = stage.table.rows();
        stage.table.setRows(
                List.of(Claim.of("Z", 1, 1), rows.get(3), rows.get(1).withLoadOhms(3), rows.get(0)));
        assertEquals(List.of("D", "B"), stage.selectedNames());
    }

    @Test
    void anEmptyTableSaysWhatToDoNext() {
        assertFalse(stage.find("empty", Label.class).isVisible());
        stage.table.setRows(List.of());
        assertEquals(
                "No ratings yet. Press Insert to add one, or paste from a spreadsheet.",
                stage.find("empty", Label.class).getText());
        assertTrue(stage.find("empty", Label.class).isVisible());
        stage.press(SWT.INSERT);
        assertEquals(List.of("New"), names());
        assertFalse(stage.find("empty", Label.class).isVisible());
    }

    @Test
    void marksShowAnIconAndAreSaidBelowWhenTheCellHasTheFocus() {
        Mark mark = new Mark(Severity.ERROR, "No step covers this rating.");
        stage.table.setMarks(List.of(new CellMark(1, "power", mark), new CellMark(2, "nowhere", mark)));
        assertNotNull(stage.table.table().getItem(1).getImage(3));
        assertNotNull(stage.table.table().getItem(2).getImage(0), "a column unknown to the table stands for the first");
        assertNull(stage.table.table().getItem(0).getImage(3));
        stage.table.select(1, "power");
        assertEquals("No step covers this rating.", stage.table.message());
        stage.table.select(0, "power");
        assertEquals("", stage.table.message());
        stage.table.setMarks(List.of());
        assertNull(stage.table.table().getItem(1).getImage(3));
    }

    @Test
    void hoverShowsTheMarkBeforeTheColumnsOwnText() {
        CellLabels<Claim> power = new CellLabels<>(Claim.spec(), 3);
        Line<Claim> line = new Line<>(Claim.of("A", 4, 90));
        assertEquals("Stated by the maker; no uncertainty is given.", power.hover(line));
        line.setMarks(List.of(new CellMark(0, "power", new Mark(Severity.NOTE, "Looks low."))));
        assertEquals("Looks low.\nStated by the maker; no uncertainty is given.", power.hover(line));
        CellLabels<Claim> load = new CellLabels<>(Claim.spec(), 2);
        assertTrue(load.hover(new Line<>(Claim.of("A", 0.5, 90))).startsWith("Below 1"));
    }

    @Test
    void readOnlyGreysTheToolsAndExplains() {
        stage.table.select(1, "load");
        assertTrue(stage.find("remove", ToolItem.class).isEnabled());
        stage.table.setReadOnly(true);
        for (String button : List.of("add", "duplicate", "remove", "up", "down")) {
            assertFalse(stage.find(button, ToolItem.class).isEnabled(), button);
        }
        assertEquals("Read-only: these ratings can be looked at and copied, but not changed.", stage.table.message());
        stage.press(SWT.MOD1, 'c', (char) 3);
        assertTrue(fromClipboard().startsWith("B\t"));
    }

    @Test
    void theToolTipsNameTheKeysAndTheMenuHasTheSame() {
        assertTrue(stage.find("add", ToolItem.class).getToolTipText().contains("Insert"));
        assertTrue(stage.find("up", ToolItem.class).getToolTipText().contains("Alt+Up"));
        stage.table.select(1, "load");
        MenuItem duplicate = List.of(stage.table.table().getMenu().getItems()).stream()
                .filter(item -> item.getText().startsWith("&Duplicate"))
                .findFirst()
                .orElseThrow();
        assertTrue(duplicate.getText().endsWith("Ctrl+D"));
        duplicate.notifyListeners(SWT.Selection, new Event());
        assertEquals(List.of("A", "B", "B 2", "C", "D"), names());
    }

    @Test
    void numbersStandToTheRightUnderTheirUnit() {
        assertEquals("Load (\u03a9)", stage.table.table().getColumn(2).getText());
        assertEquals(SWT.RIGHT, stage.table.table().getColumn(2).getAlignment());
        assertEquals(SWT.LEFT, stage.table.table().getColumn(0).getAlignment());
    }

    @Test
    void tellsOfTheSelection() {
        List<String> told = new java.util.ArrayList<>();
        stage.table.onSelection(
                rows -> told.add(String.join(",", rows.stream().map(Claim::name).toList())));
        selectRows(0, 2);
        assertEquals("A,C", told.get(told.size() - 1));
        stage.press(SWT.MOD1, 'a', (char) 1);
        assertEquals("A,B,C,D", told.get(told.size() - 1));
    }
}
