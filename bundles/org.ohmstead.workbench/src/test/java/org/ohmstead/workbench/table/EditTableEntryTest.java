// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.CCombo;
import org.eclipse.swt.widgets.Text;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.ohmstead.model.Mode;

class EditTableEntryTest {
    private final TableStage stage = new TableStage(Claim.of("A", 4, 90), Claim.of("B", 2, 150), Claim.of("C", 1, 200));

    @AfterEach
    void close() {
        stage.close();
    }

    private Claim row(int index) {
        return stage.table.rows().get(index);
    }

    private void enterInto(int row, String column, String text) {
        stage.table.select(row, column);
        stage.press(SWT.F2);
        stage.type(text);
        stage.enter();
    }

    @Test
    void takesQuantitiesAsPeopleWriteThem() {
        enterInto(0, "load", "4R7");
        assertEquals(4.7, row(0).loadOhms());
        enterInto(0, "load", "3,9 ohm");
        assertEquals(3.9, row(0).loadOhms());
        enterInto(1, "power", "0.2 kW");
        assertEquals(200, row(1).powerWatts());
        enterInto(1, "distortion", "10 %");
        assertEquals(0.1, row(1).distortionRatio());
        enterInto(2, "gain", "-0.1 dB");
        assertEquals(OptionalDouble.of(-0.1), row(2).gainDb());
        enterInto(2, "stated", "2026-03-02");
        assertEquals(Optional.of(LocalDate.of(2026, 3, 2)), row(2).statedOn());
        assertEquals(
                List.of(
                        "Change rating load",
                        "Change rating load",
                        "Change rating power",
                        "Change rating distortion",
                        "Change rating gain",
                        "Change rating stated on"),
                stage.names);
    }

    @Test
    void typingBeginsWithWhatWasTyped() {
        stage.table.select(0, "load");
        stage.press(0, '7', '7');
        assertEquals("7", stage.entry(Text.class).getText());
        assertEquals(1, stage.entry(Text.class).getCaretPosition());
        stage.enter();
        assertEquals(7, row(0).loadOhms());
    }

    @Test
    void enterAndF2BeginWithTheTextOfTheCellSelected() {
        stage.table.select(0, "load");
        stage.enter();
        assertEquals("4", stage.entry(Text.class).getSelectionText());
        stage.press(SWT.ESC);
        stage.press(SWT.F2);
        assertEquals("4", stage.entry(Text.class).getText());
    }

    @Test
    void enterCommitsAndGoesDown() {
        enterInto(0, "load", "8");
        assertFalse(stage.editing());
        assertEquals(List.of("B"), stage.selectedNames());
        assertEquals(2, stage.table.focus().column());
        stage.waitFor(() -> stage.table.table().isFocusControl());
    }

    @Test
    void tabCommitsAndOpensTheNextCellThatCanBeEdited() {
        stage.table.select(0, "power");
        stage.press(SWT.F2);
        stage.type("95");
        stage.tab(true);
        assertEquals(95, row(0).powerWatts());
        assertEquals(5, stage.table.focus().column(), "the current is worked out and is passed over");
        assertTrue(stage.editing());
        stage.tab(false);
        assertEquals(3, stage.table.focus().column());
        assertEquals("95", stage.entry(Text.class).getText());
    }

    @Test
    void tabGoesOnInTheNextRowAndStopsAfterTheLast() {
        stage.table.select(0, "confirmed");
        stage.table.focus().go(stage.table.lines().all().get(1), 0);
        stage.press(SWT.F2);
        stage.tab(false);
        assertEquals(8, stage.table.focus().column(), "the check mark of the row before");
        assertEquals(List.of("A"), stage.selectedNames());
        stage.table.select(2, "stated");
        stage.press(SWT.F2);
        stage.tab(true);
        assertEquals(8, stage.table.focus().column());
        assertFalse(stage.editing());
    }

    @Test
    void escapeGivesUpWhatWasTyped() {
        stage.table.select(0, "load");
        stage.press(SWT.F2);
        stage.type("nonsense");
        stage.enter();
        assertFalse(stage.table.message().isEmpty());
        stage.press(SWT.ESC);
        assertFalse(stage.editing());
        assertEquals("", stage.table.message());
        assertEquals(4, row(0).loadOhms());
        assertEquals(List.of(), stage.names);
    }

    @Test
    void textThatDoesNotReadStaysWithTheReasonBelow() {
        enterInto(1, "load", "4 V");
        assertEquals("4 V", stage.entry(Text.class).getText());
        assertEquals(
                "Load: \"V\" is not a unit that fits here; write for example 4R7 or 4.7 \u03a9.",
                stage.table.message());
        assertEquals(stage.table.message(), stage.entry(Text.class).getToolTipText());
        assertEquals(2, row(1).loadOhms());
        stage.type("4");
        stage.enter();
        assertEquals(4, row(1).loadOhms());
        assertEquals("", stage.table.message());
    }

    @Test
    void whatTheRecordRefusesStaysToo() {
        enterInto(0, "load", "-4");
        assertEquals("Load: \"-4\" does not fit. It must be a number above 0.", stage.table.message());
        assertTrue(stage.editing());
    }

    @Test
    void whatTheOwnerRefusesStaysToo() {
        stage.table.onChange((name, rows) -> {
            throw new IllegalArgumentException("Another rating has this name.");
        });
        enterInto(0, "name", "B");
        assertEquals("Name: \"B\" does not fit. Another rating has this name.", stage.table.message());
        assertEquals("B", stage.entry(Text.class).getText());
        assertEquals("A", row(0).name());
    }

    @Test
    void refusedTextOutlivesTheLossOfTheFocusAndOtherRowsComing() {
        enterInto(1, "load", "four");
        stage.find("filter", Text.class).setFocus();
        stage.waitFor(() -> stage.find("filter", Text.class).isFocusControl());
        assertEquals("four", stage.entry(Text.class).getText());
        stage.table.setRows(List.of(Claim.of("New", 8, 10), row(0), row(1), row(2)));
        stage.pump();
        assertEquals("four", stage.entry(Text.class).getText());
        assertFalse(stage.table.message().isEmpty());
        stage.type("3");
        assertTrue(stage.table.settled());
        assertEquals(3, row(2).loadOhms());
    }

    @Test
    void goodTextIsCommittedWhenTheFocusGoes() {
        stage.table.select(0, "load");
        stage.press(SWT.F2);
        stage.waitFor(() -> stage.entry(Text.class).isFocusControl());
        stage.type("16");
        stage.find("filter", Text.class).setFocus();
        stage.waitFor(() -> !stage.editing());
        assertEquals(16, row(0).loadOhms());
        assertTrue(stage.find("filter", Text.class).isFocusControl(), "the focus stays where the user put it");
    }

    @Test
    void theEditorClosesWhenItsRowGoes() {
        stage.table.select(2, "load");
        stage.press(SWT.F2);
        stage.table.setRows(stage.table.rows().subList(0, 2));
        assertFalse(stage.editing());
    }

    @Test
    void unchangedTextIsNoChange() {
        enterInto(0, "load", "4.0");
        assertEquals(List.of(), stage.names);
        assertFalse(stage.editing());
    }

    @Test
    void choosesFromAListByLetterAndEnter() {
        stage.table.select(0, "mode");
        stage.press(0, 'b', 'b');
        CCombo combo = stage.entry(CCombo.class);
        assertEquals("bridged", combo.getText());
        assertEquals(Mode.values().length, combo.getItemCount());
        stage.enter();
        assertEquals(Mode.BRIDGED, row(0).mode());
        assertEquals("bridged", stage.cell(0, 1));
    }

    @Test
    void spaceSetsAndTakesAwayACheckMark() {
        stage.table.select(0, "confirmed");
        stage.press(0, ' ', ' ');
        assertTrue(row(0).confirmed());
        assertTrue(stage.cell(0, 8).endsWith("yes"));
        stage.press(0, ' ', ' ');
        assertFalse(row(0).confirmed());
        assertFalse(stage.editing());
    }

    @Test
    void saysThatAWorkedOutCellIsNotTyped() {
        stage.table.select(0, "amps");
        stage.press(0, '5', '5');
        assertFalse(stage.editing());
        assertTrue(stage.table.message().contains("\"Current\" follows from other values"));
    }

    @Test
    void arrowsHomeAndEndMoveTheFocusedCell() {
        stage.table.select(0, "load");
        stage.press(SWT.ARROW_RIGHT);
        assertEquals(3, stage.table.focus().column());
        stage.press(SWT.HOME);
        stage.press(SWT.ARROW_LEFT);
        assertEquals(0, stage.table.focus().column());
        stage.press(SWT.END);
        assertEquals(8, stage.table.focus().column());
    }

    @Test
    void readOnlySaysSoAndOpensNothing() {
        stage.table.select(0, "load");
        stage.table.setReadOnly(true);
        stage.press(0, '5', '5');
        assertFalse(stage.editing());
        assertTrue(stage.table.message().startsWith("Read-only"));
        stage.press(SWT.DEL);
        stage.press(SWT.INSERT);
        assertEquals(3, stage.table.rows().size());
    }
}
