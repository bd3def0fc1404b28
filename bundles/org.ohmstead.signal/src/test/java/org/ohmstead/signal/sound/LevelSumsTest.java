// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.sound;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.signal.FrequencyWeighting;

/** All from closed forms: sums of powers and of phasors. */
class LevelSumsTest {
    private static final double ROUNDED = 6e-7;

    @Test
    void addsWhatHasNothingToDoWithOneAnother() {
        // 10 lg (10^8.5 + 10^8.8 + 10^9.0).
        assertEquals(92.894072, LevelSums.incoherentDb(List.of(85.0, 88.0, 90.0)), ROUNDED);
        assertEquals(70, LevelSums.incoherentDb(List.of(70.0)), 1e-12);
    }

    @ParameterizedTest
    @CsvSource({"2, 3.0103", "3, 4.7712", "4, 6.0206", "10, 10.0000"})
    void addsEqualOnes(int count, double gainDb) {
        assertEquals(60 + gainDb, LevelSums.incoherentDb(Collections.nCopies(count, 60.0)), 5e-5);
    }

    @ParameterizedTest
    @CsvSource({"0, 3.0103", "1, 2.5390", "2, 2.1244", "3, 1.7643", "6, 0.9732", "10, 0.4139", "20, 0.0432"})
    void addsByTheDifference(double differenceDb, double gainDb) {
        assertEquals(80 + gainDb, LevelSums.incoherentDb(List.of(80.0, 80 - differenceDb)), 5e-5);
    }

    @ParameterizedTest
    @CsvSource({"0, 6.0206", "60, 4.7712", "90, 3.0103", "120, 0"})
    void addsTwoOfOneFrequency(double degrees, double gainDb) {
        assertEquals(70 + gainDb, LevelSums.coherentDb(List.of(new Phasor(70, 0), new Phasor(70, degrees))), 5e-5);
    }

    @Test
    void saysThatOppositeOnesLeaveNothing() {
        List<Phasor> opposite = List.of(new Phasor(70, 0), new Phasor(70, 180));
        assertThrows(IllegalArgumentException.class, () -> LevelSums.coherentDb(opposite));
    }

    @Test
    void averagesOverTime() {
        // 10 lg ((15 10^10 + 45 10^9.4) / 60).
        double leqDb = LevelSums.equivalentDb(List.of(new TimedLevel(100, 15 * 60), new TimedLevel(94, 45 * 60)));
        assertEquals(96.418621, leqDb, ROUNDED);
    }

    @Test
    void takesTheBackgroundOff() {
        // 10 lg (10^6.5 - 10^6.0); sensitivities 1 / (1 - q) and q / (1 - q) with q = 10^-0.5.
        Level found = LevelSums.withoutBackground(new Level(65, 0.3), new Level(60, 0.5));
        assertEquals(63.349115, found.valueDb(), ROUNDED);
        double q = Math.pow(10, -0.5);
        assertEquals(Math.hypot(0.3, 0.5 * q) / (1 - q), found.standardUncertaintyDb(), 1e-9);
        // The same by small steps of both levels.
        double byTotal = (LevelSums.withoutBackground(Level.exact(65.001), Level.exact(60))
                                .valueDb()
                        - found.valueDb())
                / 0.001;
        assertEquals(1 / (1 - q), byTotal, 1e-3);
        assertThrows(
                IllegalArgumentException.class, () -> LevelSums.withoutBackground(Level.exact(60), Level.exact(60)));
    }

    @Test
    void subtractsIndependentLevels() {
        Level change = LevelSums.difference(new Level(103, 0.3), new Level(100, 0.4));
        assertEquals(3, change.valueDb(), 1e-12);
        assertEquals(0.5, change.standardUncertaintyDb(), 1e-12);
        assertEquals(1, change.expandedUncertaintyDb(), 1e-12);
    }

    /** Octaves from 63 Hz to 8 kHz: 95, 92, 88, 85, 82, 80, 76, 70 dB; the A-weighting by the table of IEC 61672-1. */
    @Test
    void addsWeightedOctaves() {
        double[] levels = {95, 92, 88, 85, 82, 80, 76, 70};
        double[] table = {-26.2, -16.1, -8.6, -3.2, 0, 1.2, 1.0, -1.1};
        List<Double> plain = new ArrayList<>();
        List<Double> weighted = new ArrayList<>();
        List<Double> exact = new ArrayList<>();
        for (int i = 0; i < levels.length; i++) {
            plain.add(levels[i]);
            weighted.add(levels[i] + table[i]);
            exact.add(levels[i] + FrequencyWeighting.A.gainDb(FractionalOctave.OCTAVE.centreHz(i - 4)));
        }
        assertEquals(97.783435, LevelSums.incoherentDb(plain), ROUNDED);
        assertEquals(88.014990, LevelSums.incoherentDb(weighted), ROUNDED);
        assertEquals(88.014990, LevelSums.incoherentDb(exact), 0.03);
    }

    @Test
    void expectsLevelsFromPower() {
        assertEquals(104.9897, ExpectedLevel.freeFieldDb(88, 50, 1), 5e-5);
        assertEquals(104.9897 - 6.0206, ExpectedLevel.freeFieldDb(88, 50, 2), 1e-4);
        assertEquals(3.0103, ExpectedLevel.changeDb(100, 200), 5e-5);
        // 100 W and 80 W: 0.97 dB.
        assertEquals(-0.9691, ExpectedLevel.changeDb(100, 80), 5e-5);
        assertEquals(1000, ExpectedLevel.wattsFor(100, 10), 1e-9);
        // 2.83 V at 4 ohm are 2.0022 W, 3.0151 dB re 1 W.
        assertEquals(91 - 3.0151, ExpectedLevel.sensitivityForOneWattDb(91, 2.83, 4), 5e-5);
        assertThrows(IllegalArgumentException.class, () -> ExpectedLevel.changeDb(0, 10));
    }

    /** Middles and names of IEC 61260-1. */
    @ParameterizedTest
    @CsvSource({
        "OCTAVE, -4, 63.095734, 63",
        "OCTAVE, -5, 31.622777, 31.5",
        "OCTAVE, 3, 7943.2823, 8000",
        "THIRD_OCTAVE, -17, 19.952623, 20",
        "THIRD_OCTAVE, -19, 12.589254, 12.5",
        "THIRD_OCTAVE, -8, 158.48932, 160",
        "THIRD_OCTAVE, 13, 19952.623, 20000",
        "THIRD_OCTAVE, -15, 31.622777, 31.5"
    })
    void namesBands(FractionalOctave width, int x, double centreHz, double nominalHz) {
        assertEquals(centreHz, width.centreHz(x), 1e-7 * centreHz);
        assertEquals(nominalHz, width.nominalHz(x), 1e-9 * nominalHz);
        assertEquals(x, width.bandOf(nominalHz));
        assertEquals(width.highHz(x), width.lowHz(x + 1), 1e-9 * centreHz);
        assertTrue(width.name(x).startsWith(nominalHz == 31.5 || nominalHz == 12.5 ? Double.toString(nominalHz) : ""));
    }
}
