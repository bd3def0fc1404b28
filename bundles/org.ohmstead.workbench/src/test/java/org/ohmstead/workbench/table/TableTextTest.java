// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.table;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TableTextTest {
    @Test
    void partsCellsByTabsAndRowsByLineEnds() {
        assertEquals(List.of(List.of("A", "4"), List.of("B", "")), TabbedText.read("A\t4\r\nB\t\r\n"));
        assertEquals(List.of(List.of("A", "4"), List.of("B", "")), TabbedText.read("A\t4\nB\t"));
        assertEquals(List.of(List.of("A"), List.of(""), List.of("B")), TabbedText.read("A\n\nB"));
        assertEquals("A\t4\nB\t\n", TabbedText.write(List.of(List.of("A", "4"), List.of("B", ""))));
    }

    // RFC 4180, section 2, rules 5 to 7: quoted fields may hold line breaks, and quotation marks doubled.
    @Test
    void quotesCellsAsRfc4180Does() {
        List<List<String>> cells = List.of(List.of("say \"on\"", "two\nlines", "a\tb"), List.of("plain", "", "x"));
        String text = "\"say \"\"on\"\"\"\t\"two\nlines\"\t\"a\tb\"\nplain\t\tx\n";
        assertEquals(text, TabbedText.write(cells));
        assertEquals(cells, TabbedText.read(text));
    }

    @Test
    void takesALoneQuotationMarkAsItIs() {
        assertEquals(List.of(List.of("\"4 inch", "x")), TabbedText.read("\"4 inch\tx"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"=1+1", "+cmd", "-cmd", "@sum", "\tx", "=HYPERLINK(\"a\")"})
    void makesTextsHarmlessThatASpreadsheetWouldRun(String evil) {
        String written = TabbedText.write(List.of(List.of(evil)));
        assertEquals(written.startsWith("\"") ? 1 : 0, written.indexOf('\''));
        assertEquals(List.of(List.of(evil)), TabbedText.read(written));
    }

    @ParameterizedTest
    @ValueSource(strings = {"-0.1", "+3", "-12,5", "-1e-3", "4 V"})
    void leavesNumbersAlone(String number) {
        assertEquals(number + "\n", TabbedText.write(List.of(List.of(number))));
    }
}
