// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.ohmstead.model.Mode;
import org.ohmstead.units.Unit;
import org.ohmstead.workbench.form.Measure;

class TablePasteTest {
    private static final List<Claim> ROWS = List.of(Claim.of("A", 4, 90), Claim.of("B", 2, 150));

    private static List<Claim> paste(String text, int firstColumn, List<Integer> targets) {
        return new PastedCells<>(Claim.spec(), TabbedText.read(text), firstColumn).into(ROWS, targets, firstColumn);
    }

    private static String refusal(String text, int firstColumn) {
        return assertThrows(IllegalArgumentException.class, () -> paste(text, firstColumn, List.of(0, 1)))
                .getMessage();
    }

    @Test
    void readsUnitsLetterCodesAndCommas() {
        List<Claim> pasted = paste("4R7\t0.1 kW\n0,5 \u03a9\t90", 2, List.of(0, 1));
        assertEquals(4.7, pasted.get(0).loadOhms());
        assertEquals(100, pasted.get(0).powerWatts());
        assertEquals(0.5, pasted.get(1).loadOhms());
        assertEquals(90, pasted.get(1).powerWatts());
    }

    @Test
    void appendsRowsForWhatGoesBeyondTheLast() {
        List<Claim> pasted = paste("B2\tBridged\t8\nC\tsingle\t3", 0, List.of(1));
        assertEquals(3, pasted.size());
        assertEquals(List.of("A", "B2", "C"), pasted.stream().map(Claim::name).toList());
        assertEquals(Mode.BRIDGED, pasted.get(1).mode());
        assertEquals(50, pasted.get(2).powerWatts(), "from the new row");
    }

    @Test
    void namesTheCellThatDoesNotFitAndWhatWouldBeRight() {
        String message = refusal("4\t90\n5\tmany", 2);
        assertEquals(
                "Nothing was pasted: row 2 on the clipboard, column \"Power (W)\": \"many\" does not begin with a number; "
                        + "write for example 90 W.",
                message);
    }

    @Test
    void quotesTheTextThatTheModelRefuses() {
        String message = refusal("-4", 2);
        assertEquals(
                "Nothing was pasted: row 1 on the clipboard, column \"Load (\u03a9)\": \"-4\" does not fit. "
                        + "It must be a number above 0.",
                message);
    }

    @Test
    void refusesMoreColumnsThanThereAre() {
        assertTrue(refusal("yes\tx", 8).contains("2 cells"));
    }

    @Test
    void refusesToOverwriteWhatFollowsFromOtherValuesButAcceptsTheSame() {
        assertTrue(refusal("90\t99", 3).contains("column \"Current (A)\""));
        String same = Claim.spec().columns().get(4).copied(ROWS.get(0).withPowerWatts(64));
        assertEquals("4", same);
        assertEquals(64, paste("64\t4", 3, List.of(0)).get(0).powerWatts());
    }

    @Test
    void leavesOutAFirstRowThatRepeatsTheHeaders() {
        assertEquals(
                7, paste("Load (\u03a9)\tpower (w)\n7\t8", 2, List.of(0)).get(0).loadOhms());
    }

    @Test
    void anEmptyCellClearsWhatMayBeEmptyAndNothingElse() {
        List<Claim> rows = List.of(ROWS.get(0).withGainDb(OptionalDouble.of(26)));
        PastedCells<Claim> empty = new PastedCells<>(Claim.spec(), List.of(List.of("")), 6);
        assertEquals(
                OptionalDouble.empty(), empty.into(rows, List.of(0), 6).get(0).gainDb());
        assertTrue(refusal("\t5", 2).contains("column \"Load (\u03a9)\""));
    }

    /** Limits of a sweep: neither may pass the other. */
    private record Span(double from, double to) {
        Span {
            if (!(from < to)) {
                throw new IllegalArgumentException("from is " + from + "; it must lie below " + to);
            }
        }
    }

    @Test
    void cellsThatOnlyFitTogetherGoInTogether() {
        TableSpec<Span> spec = TableSpec.of(
                "spans",
                "span",
                "spans",
                List.of(
                        Columns.quantity(
                                "from",
                                "From",
                                Measure.of(Unit.HERTZ),
                                Span::from,
                                (span, from) -> new Span(from, span.to())),
                        Columns.quantity(
                                "to",
                                "To",
                                Measure.of(Unit.HERTZ),
                                Span::to,
                                (span, to) -> new Span(span.from(), to))));
        List<Span> pasted = new PastedCells<>(spec, List.of(List.of("200", "1 kHz")), 0)
                .into(List.of(new Span(20, 100)), List.of(0), 0);
        assertEquals(List.of(new Span(200, 1000)), pasted);
    }
}
