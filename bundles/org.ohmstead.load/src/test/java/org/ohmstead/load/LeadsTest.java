// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LeadsTest {
    /** Wire table: diameter mm, cross-section mm2, ohm/km at 20 and 75 degrees (ASTM B258 sizes, copper of IEC 60028). */
    @ParameterizedTest
    @CsvSource({
        "4/0, 11.6840, 107.2193, .16080, .19556",
        "2/0, 9.2658, 67.4309, .25569, .31096",
        "1/0, 8.2515, 53.4751, .32242, .39211",
        "2, 6.5437, 33.6308, .51267, .62348",
        "4, 5.1894, 21.1506, .81517, .99137",
        "6, 4.1154, 13.3018, 1.29617, 1.57634",
        "8, 3.2636, 8.3656, 2.06099, 2.50648",
        "10, 2.5882, 5.2612, 3.27711, 3.98546",
        "12, 2.0525, 3.3088, 5.21081, 6.33712",
        "14, 1.6277, 2.0809, 8.28551, 10.07642",
        "16, 1.2908, 1.3087, 13.17448, 16.02214",
        "18, 1.0237, .8230, 20.94824, 25.47620",
        "24, .5106, .2047, 84.21508, 102.41817"
    })
    void agreesWithTheWireTable(String gauge, double diameter, double area, double at20, double at75)
            throws NotationException {
        int number = Leads.gauge(gauge);
        assertEquals(diameter, Leads.gaugeDiameterMillimetres(number), 5.1e-5);
        assertEquals(area, Leads.gaugeSquareMillimetres(number), 5.1e-5);
        assertEquals(at20, Leads.copperOhms(Leads.gaugeSquareMillimetres(number), 1000, 20), 5.1e-6);
        assertEquals(at75, Leads.copperOhms(Leads.gaugeSquareMillimetres(number), 1000, 75), 5.1e-6);
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
        assertThrows(IllegalArgumentException.class, () -> Leads.gaugeDiameterMillimetres(-4));
    }
}
