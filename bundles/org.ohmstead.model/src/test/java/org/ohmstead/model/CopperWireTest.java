// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CopperWireTest {
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
    void agreesWithTheWireTable(String gauge, double diameter, double area, double at20, double at75) {
        int number = CopperWire.gauge(gauge).orElseThrow();
        assertEquals(diameter, CopperWire.gaugeDiameterMillimetres(number), 5.1e-5);
        assertEquals(area, CopperWire.gaugeSquareMillimetres(number), 5.1e-5);
        assertEquals(at20, CopperWire.ohms(CopperWire.gaugeSquareMillimetres(number), 1000, 20), 5.1e-6);
        assertEquals(at75, CopperWire.ohms(CopperWire.gaugeSquareMillimetres(number), 1000, 75), 5.1e-6);
        assertEquals(gauge, CopperWire.gaugeText(number));
    }

    @Test
    void givesTheCableItsResistance() {
        // 10 m of 10 mm2: 1/58 ohm (IEC 60028).
        assertEquals(1.0 / 58, new Cable(10, 10, OptionalDouble.empty()).loopOhms(), 1e-15);
        assertEquals(0.003, new Cable(10, 10, OptionalDouble.of(0.003)).loopOhms(), 0);
        // IEC 60028: 0.393 % per kelvin at constant mass.
        assertEquals(1.0786, CopperWire.temperatureRatio(40), 1e-12);
    }

    @Test
    void rejectsWhatIsNoGauge() {
        for (String text : new String[] {"", "5/0", "0/0", "41", "-1", "12 AWG", "abc"}) {
            assertTrue(CopperWire.gauge(text).isEmpty(), text);
        }
        assertThrows(IllegalArgumentException.class, () -> CopperWire.gaugeDiameterMillimetres(-4));
        assertThrows(IllegalArgumentException.class, () -> CopperWire.gaugeText(41));
        assertThrows(IllegalArgumentException.class, () -> CopperWire.ohms(0, 1, 20));
    }
}
