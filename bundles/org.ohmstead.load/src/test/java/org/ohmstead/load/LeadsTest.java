// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class LeadsTest {
    @Test
    void readsGauges() throws NotationException {
        assertEquals(-3, Leads.gauge("4/0"));
        assertEquals(12, Leads.gauge(" 12 "));
    }

    @Test
    void findsTheInductanceOfWires() {
        // 2e-7 (ln 2000 - 0.75) for 1 m of 2 mm diameter; 4e-7 (arcosh 5 + 0.25) for a pair 10 mm apart.
        assertEquals(1.370180e-6, Leads.straightWireHenries(1, 0.001), 1e-12);
        assertEquals(1.016973e-6, Leads.pairHenries(1, 0.010, 0.001), 1e-12);
        assertEquals(2.5 * 1.016973e-6, Leads.pairHenries(2.5, 0.010, 0.001), 3e-12);
        assertThrows(IllegalArgumentException.class, () -> Leads.pairHenries(1, 0.002, 0.001));
        assertThrows(IllegalArgumentException.class, () -> Leads.straightWireHenries(0.005, 0.001));
    }

    @Test
    void correctsReadingsAtTheTerminals() {
        // (4 / 4.05)^2, (4.05 / 4)^2 - 1, 0.05 / 4.
        TerminalReading four = new TerminalReading(4, 0.05);
        assertEquals(0.9754610, four.loadPowerRatio(), 1e-7);
        assertEquals(0.02515625, four.loadPowerOverstatementRatio(), 1e-12);
        assertEquals(0.0125, four.terminalPowerOverstatementRatio(), 1e-12);
        assertEquals(4.05, four.terminalOhms(), 1e-12);
        assertEquals(1.25, four.leadWatts(100), 1e-12);
        assertEquals(0.9611688, new TerminalReading(1, 0.02).loadPowerRatio(), 1e-7);
        assertEquals(1, new TerminalReading(1, 0).voltsRatio(), 0);
    }

    @Test
    void correctsTwoWireAndFourWireReadings() {
        assertEquals(4.02, Leads.twoWireOhms(4.14, 0.12), 1e-12);
        assertEquals(3.98, Leads.fourWireOhms(9.95, 2.5), 1e-12);
        assertThrows(IllegalArgumentException.class, () -> Leads.twoWireOhms(0.1, 0.12));
    }

    @Test
    void rejectsWhatIsNoGauge() {
        for (String text : new String[] {"", "5/0", "41", "-1", "12 AWG", "abc"}) {
            NotationException fault = assertThrows(NotationException.class, () -> Leads.gauge(text));
            assertTrue(fault.remedy().contains("4/0"));
        }
    }
}
