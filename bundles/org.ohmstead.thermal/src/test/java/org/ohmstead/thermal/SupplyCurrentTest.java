// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.model.Mode;

class SupplyCurrentTest {
    /** I = P / (efficiency V). */
    @ParameterizedTest
    @CsvSource({".6, 200, 14.4, 23.148148", ".85, 1000, 14.4, 81.699346", ".78, 400, 12.6, 40.700041"})
    void drawsWhatEfficiencyLeaves(double efficiency, double watts, double volts, double amps) {
        SupplyCurrent current = SupplyCurrent.steady(watts, efficiency, volts, SupplyWaveform.SMOOTH);
        assertEquals(amps, current.averageAmps(), 1e-6);
        assertEquals(amps, current.rmsAmps(), 1e-6);
        assertEquals(efficiency, SupplyCurrent.efficiencyRatio(watts, volts, current.averageAmps()), 1e-12);
    }

    @Test
    void findsTheEfficiencyFromReadings() {
        // 2 x 100 W from 14.4 V, 23.5 A: 59.1017 %.
        double watts = SupplyCurrent.outputWatts(Mode.STEREO, 100, 2);
        assertEquals(0.591017, SupplyCurrent.efficiencyRatio(watts, 14.4, 23.5), 1e-6);
        assertEquals(100, SupplyCurrent.outputWatts(Mode.BRIDGED, 100, 2), 0);
        assertEquals(100, SupplyCurrent.outputWatts(Mode.SINGLE, 100, 2), 0);
    }

    @Test
    void knowsTheShapeOfARectifiedSine() {
        // RMS over average of a rectified sine is pi / (2 sqrt 2) = 1.110721, its square pi^2 / 8 = 1.233701; peak
        // over average pi / 2.
        SupplyCurrent current = SupplyCurrent.of(10, SupplyWaveform.RECTIFIED_SINE);
        assertEquals(11.10721, current.rmsAmps(), 5e-6);
        assertEquals(1.233701, Math.pow(current.rmsAmps() / 10, 2), 5e-7);
        assertEquals(15.707963, current.peakAmps(), 1e-6);
        double squares = 0;
        double sum = 0;
        int count = 100_000;
        for (int i = 0; i < count; i++) {
            double sample = 3 + current.peakAmps() * Math.abs(Math.sin(Math.PI * (i + 0.5) / count));
            sum += sample / count;
            squares += sample * sample / count;
        }
        SupplyCurrent idling = current.plusSteady(3);
        assertEquals(sum, idling.averageAmps(), 1e-6);
        assertEquals(Math.sqrt(squares), idling.rmsAmps(), 1e-6);
    }

    @Test
    void averagesBursts() {
        // 20 ms of 100 A in every 500 ms, 5 A between: average 0.04 x 100 + 0.96 x 5 = 8.8; RMS sqrt(400 + 24).
        SupplyCurrent bursts = SupplyCurrent.bursts(
                SupplyCurrent.of(100, SupplyWaveform.SMOOTH), SupplyCurrent.of(5, SupplyWaveform.SMOOTH), 0.02, 0.5);
        assertEquals(8.8, bursts.averageAmps(), 1e-12);
        assertEquals(Math.sqrt(424), bursts.rmsAmps(), 1e-12);
        assertEquals(100, bursts.peakAmps(), 0);
    }

    @Test
    void rejectsWhatCannotBe() {
        assertTrue(assertThrows(
                        IllegalArgumentException.class,
                        () -> SupplyCurrent.steady(100, 1.2, 14.4, SupplyWaveform.SMOOTH))
                .getMessage()
                .contains("efficiencyRatio"));
        assertThrows(IllegalArgumentException.class, () -> new SupplyCurrent(10, 9, 12));
        SupplyCurrent one = SupplyCurrent.of(1, SupplyWaveform.SMOOTH);
        assertThrows(IllegalArgumentException.class, () -> SupplyCurrent.bursts(one, one, 0.5, 0.5));
        assertThrows(IllegalArgumentException.class, () -> SupplyCurrent.outputWatts(Mode.STEREO, 1, 0));
    }

    @Test
    void cautionsWhereverItMatters() {
        assertEquals(5, SupplyCautions.all().size());
        assertTrue(SupplyCautions.fuses().contains("local code"));
        assertTrue(SupplyCautions.cables().contains("local code")
                && SupplyCautions.cables().contains("licensed"));
        assertTrue(SupplyCautions.batteries().contains("Fuse it at its terminal"));
        assertTrue(SupplyCautions.hotParts().contains("burn"));
    }
}
