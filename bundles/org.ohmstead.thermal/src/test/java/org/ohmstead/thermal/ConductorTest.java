// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.model.CopperWire;

class ConductorTest {
    /** IEC 60228, highest resistance at 20 degrees, class 2 and class 5, ohm/km. */
    @ParameterizedTest
    @CsvSource({
        "1.5, 12.1, 13.3",
        "2.5, 7.41, 7.98",
        "4, 4.61, 4.95",
        "6, 3.08, 3.30",
        "10, 1.83, 1.91",
        "16, 1.15, 1.21",
        "25, .727, .780",
        "35, .524, .554",
        "50, .387, .386",
        "70, .268, .272",
        "95, .193, .206"
    })
    void holdsTheStandardsTable(double squareMillimetres, double stranded, double flexible) {
        ConductorSize size = ConductorTable.size(squareMillimetres).orElseThrow();
        assertEquals(stranded, size.strandedOhmsPerKilometre(), 0);
        assertEquals(flexible, size.flexibleOhmsPerKilometre(), 0);
        assertTrue(ConductorTable.sizes().contains(size));
        // The highest resistance allowed lies above that of the nominal cross-section of pure copper, by up to a fifth.
        double pure = CopperWire.ohms(squareMillimetres, 1000, 20);
        assertTrue(stranded > pure && flexible < 1.2 * pure, size.toString());
    }

    @Test
    void knowsNoOtherSizes() {
        assertEquals(11, ConductorTable.sizes().size());
        assertTrue(ConductorTable.size(3).isEmpty());
        assertThrows(IllegalArgumentException.class, () -> ConductorTable.size(-1));
    }

    /** Copper: 254.5 / (234.5 + t); rounded: the annex of IEC 60228 prints .980 .893 .820 .781. */
    @ParameterizedTest
    @CsvSource({"20, 1, 1", "25, .9807, .980", "50, .8946, .893", "75, .8223, .820", "90, .7843, .781"})
    void convertsToTwentyDegrees(double celsius, double exact, double rounded) {
        assertEquals(exact, ConductorTable.exactFactor(celsius), 5e-5);
        assertEquals(rounded, ConductorTable.roundedFactor(celsius), 5e-4);
        // Both forms of the exact law are one: 1 / 0.00393 = 254.45.
        assertEquals(1 / CopperWire.temperatureRatio(celsius), ConductorTable.exactFactor(celsius), 1e-4);
    }

    /** Closed form sqrt(rho / (pi f mu0)) for copper of IEC 60028. */
    @ParameterizedTest
    @CsvSource({"20000, .467295e-3", "1000, 2.089807e-3"})
    void findsTheSkinDepth(double frequencyHz, double metres) {
        assertEquals(metres, ConductorMaterial.COPPER.skinDepthMetres(frequencyHz, 20), 1e-6 * metres);
    }

    @Test
    void picksTheSmallestFlexibleSize() {
        // 10 m of 16 mm2 have 12.1 mohm, of 25 mm2 7.8 mohm (IEC 60228 class 5).
        assertEquals(
                25, ConductorTable.smallestFlexible(10, 0.012).orElseThrow().squareMillimetres());
        assertEquals(
                16, ConductorTable.smallestFlexible(10, 0.0121).orElseThrow().squareMillimetres());
        assertTrue(ConductorTable.smallestFlexible(10, 0.001).isEmpty());
    }

    @Test
    void marksCopperCladAluminiumAsFromMemory() {
        ConductorMaterial clad = ConductorMaterial.COPPER_CLAD_ALUMINIUM;
        assertTrue(clad.fromMemory() && clad.source().contains("common practice"));
        assertFalse(ConductorMaterial.COPPER.fromMemory());
        // Common practice: about 1.6 times copper.
        assertEquals(1.6, clad.ohms(10, 1, 20) / ConductorMaterial.COPPER.ohms(10, 1, 20), 0.02);
        assertEquals(CopperWire.ohms(21.1506, 10, 60), ConductorMaterial.COPPER.ohms(21.1506, 10, 60), 1e-15);
    }
}
