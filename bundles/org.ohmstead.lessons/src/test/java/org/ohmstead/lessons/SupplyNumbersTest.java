// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.ohmstead.lessons.BuiltIn.at;
import static org.ohmstead.lessons.BuiltIn.figure;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SupplyNumbersTest {
    /** The outside values are printed with 8 digits. */
    private static final double DIGITS = 1e-7;

    /** Closed form V_pk = (2.8 V - 3) R / (R + 0.1), P = V_pk^2 / (2 R), evaluated to 30 digits by another program. */
    @ParameterizedTest
    @CsvSource({
        "11, 8, 47.117208",
        "11, 4, 91.95003",
        "11, 2, 175.247166",
        "12, 8, 57.08642",
        "12, 4, 111.405116",
        "12.6, 2, 236.280816",
        "13.8, 4, 151.125473",
        "13.8, 8, 77.44",
        "14.4, 8, 84.912812",
        "14.4, 4, 165.708792",
        "14.4, 2, 315.823673",
    })
    void powerIntoLoads(String supply, String load, double watts) {
        LessonResult result = at("load-and-power", "supply=" + supply, "load=" + load);
        assertEquals(watts, figure(result, "power"), watts * DIGITS);
    }

    @Test
    void halfTheLoadGivesLessThanTwice() {
        LessonResult result = at("load-and-power");
        // The same closed form: 315.823673 / 165.708792 = 2 (4.1 / 4.2)^2.
        assertEquals(1.905896, figure(result, "ratio"), 1e-6);
        assertEquals(1.905896, ((Answer.Number) result.answer()).value(), 1e-6);
        assertEquals(315.823673, figure(result, "half-load-power"), 1e-5);
        // Ohm's law: 165.708792 W in 4 ohm are sqrt(165.708792 / 4) A.
        assertEquals(Math.sqrt(165.708792 / 4), figure(result, "current"), 1e-6);
        // Without a resistance inside, the factor is 2.
        assertEquals(2, figure(at("load-and-power", "output=0"), "ratio"), 1e-12);
    }

    @Test
    void lowLoadsBringACaution() {
        assertTrue(at("load-and-power", "load=4").cautions().isEmpty());
        assertEquals(1, at("load-and-power", "load=1").cautions().size());
    }

    @Test
    void lowerSupplyTakesMoreThanTheSquareLaw() {
        LessonResult result = at("supply-voltage", "supply=12.6");
        // 123.973635 W at 12.6 V and 165.708792 W at 14.4 V by the closed form above.
        assertEquals(165.708792, figure(result, "rated"), 1e-5);
        assertEquals(123.973635, figure(result, "now"), 1e-5);
        assertEquals(100 * 123.973635 / 165.708792, figure(result, "share"), 1e-5);
        assertEquals(100 * 12.6 * 12.6 / 14.4 / 14.4, figure(result, "square"), 1e-9);
        // The square law is off by 0.100323 dB, and takes 1.159839 dB (20 log10 of 14.4 / 12.6).
        assertEquals(-1.159839 - 0.100323, figure(result, "level"), 2e-6);
    }

    @Test
    void heldRailsKeepThePowerDownToTheKnee() {
        assertEquals(100, figure(at("supply-voltage", "kind=held", "supply=12"), "share"), 1e-9);
        // Below the knee of 11.5 V the line of the closed form goes on: (2.8 * 10 - 3)^2 over (2.8 * 11.5 - 3)^2.
        assertEquals(
                100 * Math.pow(25.0 / 29.2, 2), figure(at("supply-voltage", "kind=held", "supply=10"), "share"), 1e-9);
        // Without volts kept by the transistors the square law holds.
        LessonResult lossless = at("supply-voltage", "loss=0", "supply=11");
        assertEquals(figure(lossless, "square"), figure(lossless, "share"), 1e-9);
    }

    @Test
    void aBridgedPairGivesWhatItsChannelsGiveIntoHalf() {
        LessonResult result = at("bridging", "load=4", "lowest=ohm-2");
        // Twice 315.823673 W; four times 165.708792 W would be 662.835 W, 0.209 dB more.
        assertEquals(631.647346, figure(result, "bridged"), 1e-4);
        assertEquals(165.708792, figure(result, "single"), 1e-5);
        assertEquals(-0.209, figure(result, "short-of-four"), 5e-4);
        assertEquals(2, figure(result, "seen"), 1e-12);
        assertEquals(4, figure(result, "lowest-bridged"), 1e-12);
    }

    @ParameterizedTest
    @CsvSource({
        "4, ohm-2, allowed",
        "4, ohm-4, too-low",
        "3.99, ohm-2, too-low",
        "2, ohm-1, allowed",
        "8, ohm-4, allowed"
    })
    void judgesTheBridgedLoadByWhatAChannelSees(String load, String lowest, String verdict) {
        LessonResult result = at("bridging", "load=" + load, "lowest=" + lowest);
        assertEquals(verdict, ((Answer.Choice) result.answer()).optionId());
        assertEquals(verdict.equals("allowed"), result.cautions().isEmpty());
    }

    /** Bridge-tied output, lossless: the closed form of 14.4 V, 0.02 ohm, 2 ohm, 1.6 V kept. */
    @Test
    void aSteadyToneSagsAndABurstDoesNot() {
        LessonResult result = at("burst-and-steady", "source=0.02", "load=2");
        // V_pk = 12.8 / (1 + 2 * 0.02 / (pi * 2)) = 12.719028 V.
        assertEquals(40.443419, figure(result, "steady"), 1e-6);
        assertEquals(12.8 * 12.8 / 4, figure(result, "burst"), 1e-9);
        assertEquals(20 * Math.log10(12.8 / 12.719028), figure(result, "headroom"), 1e-6);
    }
}
