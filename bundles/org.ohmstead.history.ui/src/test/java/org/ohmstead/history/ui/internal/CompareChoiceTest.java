// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.nio.file.Path;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.ohmstead.history.Period;
import org.ohmstead.model.Mode;
import org.ohmstead.model.PowerKind;

class CompareChoiceTest {
    @Test
    void isTheSameAfterItWasKept() throws Exception {
        CompareChoice choice = new CompareChoice(
                List.of(
                        CompareItem.OPEN,
                        new CompareItem(Optional.empty(), Period.parse("2024")),
                        new CompareItem(Optional.of(Path.of("/a b/wren.ohmstead")), Period.parse("2023-05..")),
                        new CompareItem(Optional.of(Path.of("/c")), Period.parse("..2020-02-03"))),
                13.8,
                2.7,
                Mode.BRIDGED,
                PowerKind.BURST,
                Optional.of(Path.of("/d/index.csv")),
                "2024-03",
                "thd");
        assertEquals(choice, CompareChoice.parse(choice.toText()));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "\n\t\n", "item\n", "supplyVolts\t-3\nmode\tSIDEWAYS\nloadOhms\tmany\nkind\t\n"})
    void isAsUsualWhereNothingCanBeRead(String text) {
        assertEquals(CompareChoice.USUAL, CompareChoice.parse(text));
    }

    @Test
    void readsNoMoreThanCanBeCompared() {
        StringBuilder text = new StringBuilder();
        for (int count = 0; count < 30; count++) {
            text.append("item\t/f").append(count).append("\t\n");
        }
        assertEquals(10, CompareChoice.parse(text.toString()).items().size());
    }

    @Test
    void rejectsElevenThings() {
        List<CompareItem> eleven = Collections.nCopies(11, CompareItem.OPEN);
        assertThrows(IllegalArgumentException.class, () -> CompareChoice.USUAL.withItems(eleven));
        assertThrows(IllegalArgumentException.class, () -> CompareChoice.USUAL.withItems(List.of()));
    }

    @ParameterizedTest
    @CsvSource({
        "2024, 2024",
        "2024-02, 2024-02",
        "2024-02-01..2024-02-28, 2024-02-01 to 2024-02-28",
        "2024-01-01..2024-12-31, 2024",
        "2024.., since 2024-01-01"
    })
    void saysAPeriodAsShortAsItCan(String written, String shown) throws Exception {
        assertEquals(shown, new CompareItem(Optional.empty(), Period.parse(written)).shortPeriod());
    }
}
