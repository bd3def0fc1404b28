// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.drawing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.ohmstead.load.Network;
import org.ohmstead.load.NetworkNotation;
import org.ohmstead.load.NotationException;
import org.ohmstead.load.Stock;
import org.ohmstead.units.text.Language;

class GermanListTest {
    private String before;

    @BeforeEach
    void speakGerman() {
        before = System.getProperty(Language.PROPERTY);
        System.setProperty(Language.PROPERTY, "de");
    }

    @AfterEach
    void speakAsBefore() {
        if (before == null) {
            System.clearProperty(Language.PROPERTY);
        } else {
            System.setProperty(Language.PROPERTY, before);
        }
    }

    @Test
    void theListSpeaksGerman() throws NotationException {
        Network network = NetworkNotation.parse("(8R2@50W||8R2@50W)+0R47@25W", Stock.EMPTY);
        String text = WiringList.of(network, WiringList.Use.of(40)).text();
        assertTrue(text.startsWith("VORSICHT\n! Verbrennung: "), text);
        assertTrue(text.contains("\n! Klemmen unter Spannung: A und B "), text);
        assertTrue(text.contains("\n4. Verbindung C: "), text);
        assertTrue(text.contains("Nr. 2 Anschluss 1 anschließen (führt 2.96 A)."), text);
    }

    @Test
    void aFaultIsSaidInGerman() {
        NotationException fault = null;
        try {
            NetworkNotation.parse("8R2||", Stock.EMPTY);
        } catch (NotationException expected) {
            fault = expected;
        }
        assertEquals(
                "Zeichen 6: Am Ende fehlt etwas. Dort ein Bauteil oder einen Wert wie 8R2 schreiben oder das Zeichen"
                        + " davor entfernen.",
                fault == null ? "" : fault.getMessage());
    }
}
