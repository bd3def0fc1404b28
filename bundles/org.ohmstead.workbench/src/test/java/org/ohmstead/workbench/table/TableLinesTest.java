// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

class TableLinesTest {
    private static final Claim A = Claim.of("A", 4, 90);
    private static final Claim B = Claim.of("B", 2, 150);
    private static final Claim C = Claim.of("C", 1, 120);

    private final Lines<Claim> lines = new Lines<>(Claim.spec());

    @BeforeEach
    void fill() {
        lines.replace(List.of(A, B, C));
    }

    private List<String> shown() {
        return lines.visible().stream().map(line -> line.row().name()).toList();
    }

    @Test
    void aLineGoesOnWithItsRowWhenOthersComeAndGo() {
        Line<Claim> second = lines.all().get(1);
        lines.replace(List.of(Claim.of("Z", 8, 40), A, B));
        assertSame(second, lines.all().get(2));
    }

    @Test
    void aLineGoesOnWithItsKeyWhenItsRowMovesAndChanges() {
        Line<Claim> third = lines.all().get(2);
        Set<Line<Claim>> changed = lines.replace(List.of(C.withLoadOhms(3), A, B));
        assertSame(third, lines.all().get(0));
        assertEquals(Set.of(third), changed);
    }

    @Test
    void aRenamedRowKeepsItsLine() {
        Line<Claim> second = lines.all().get(1);
        lines.replace(List.of(A, B.withName("Renamed"), C));
        assertSame(second, lines.all().get(1));
    }

    @Test
    void equalRowsHaveLinesOfTheirOwn() {
        lines.replace(List.of(A, A, A));
        assertNotSame(lines.all().get(0), lines.all().get(1));
        Line<Claim> first = lines.all().get(0);
        lines.replace(List.of(A, A));
        assertSame(first, lines.all().get(0));
    }

    @Test
    void sortsUpwardsThenDownwardsThenNotAtAll() {
        lines.sortBy(3);
        assertEquals(List.of("A", "C", "B"), shown());
        lines.sortBy(3);
        assertEquals(List.of("B", "C", "A"), shown());
        lines.sortBy(3);
        assertEquals(List.of("A", "B", "C"), shown());
        assertEquals(List.of(A, B, C), lines.rows());
    }

    @Test
    void sortsNumbersByTheirValueNotByTheirText() {
        lines.replace(List.of(A.withPowerWatts(1000), B.withPowerWatts(9), C.withPowerWatts(80)));
        lines.sortBy(3);
        assertEquals(List.of("B", "C", "A"), shown());
    }

    @Test
    void filtersByEachWordInAnyCellWhateverItsCase() {
        lines.filter("STEREO 150");
        assertEquals(List.of("B"), shown());
        assertFalse(lines.original());
        lines.filter("  ");
        assertEquals(3, shown().size());
        assertTrue(lines.original());
    }

    @Test
    void aKeptLineStaysInSightUntilTheFilterChanges() {
        lines.filter("150");
        lines.keep(lines.all().get(1));
        lines.replace(List.of(A, B.withPowerWatts(7), C));
        assertEquals(List.of("B"), shown());
        lines.filter("150 ");
        assertEquals(List.of(), shown());
    }
}
