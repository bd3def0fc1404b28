// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.ohmstead.model.DistortionMeasure;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.signal.ChannelAnalysis;
import org.ohmstead.signal.Clipping;

class EndPointFinderTest {
    private static final EndPoint ONE_PERCENT = new EndPoint.DistortionLimit(0.01, DistortionMeasure.THD_F);

    /**
     * An ideal hard clipper at 20 V peak into 4 ohm, driven in steps of 0.25 dB over the onset, with a floor of 0.03 %; powers and
     * distortions from the closed form of the clipped sine (mean square (theta - sin(2 theta)/2)/pi + k^2 (1 - 2 theta/pi), first
     * harmonic (2/pi)(theta + k sqrt(1 - k^2)), theta = asin k). The exact 1 % point lies at 52.375 W.
     */
    private static List<AnalyzedLevel> hardClipper() {
        double[][] rows = {
            {-6, 12.5594, 0.0003},
            {-3, 25.0594, 0.0003},
            {0, 50.0000, 0.0003},
            {0.25, 52.3645, 0.0099458},
            {0.50, 54.3739, 0.0218861},
            {0.75, 56.1857, 0.0341154},
            {1.00, 57.8526, 0.0462669}
        };
        List<AnalyzedLevel> levels = new ArrayList<>();
        for (double[] row : rows) {
            levels.add(level(row[0], row[1], row[2], row[0] > 0 ? row[0] : 0));
        }
        return levels;
    }

    @Test
    void findsTheOnePercentPointOfAHardClipper() {
        EndPointResult result = EndPointFinder.find(hardClipper(), ONE_PERCENT);
        assertEquals(EndPointOutcome.REACHED, result.outcome());
        assertEquals(52.375, result.powerWatts(), 0.02);
        assertEquals(Math.sqrt(52.375 * 4), result.outputVoltsRms(), 0.005);
        assertEquals(0.01, result.thdFRatio(), 1e-9);
        assertEquals(3, result.nearestLevel());
        assertTrue(result.interpolationHalfWidthWatts() < 0.05, "was " + result.interpolationHalfWidthWatts());
    }

    @Test
    void crossoverDistortionAtLowLevelsIsNotTheEnd() {
        List<AnalyzedLevel> levels = new ArrayList<>();
        levels.add(level(-40, 0.005, 0.05, 0));
        levels.add(level(-20, 0.5, 0.012, 0));
        levels.addAll(hardClipper());
        assertEquals(52.375, EndPointFinder.find(levels, ONE_PERCENT).powerWatts(), 0.02);
    }

    @Test
    void saysWhenTheSweepDoesNotGetThere() {
        EndPointResult below = EndPointFinder.find(hardClipper().subList(0, 3), ONE_PERCENT);
        assertEquals(EndPointOutcome.NOT_REACHED, below.outcome());
        assertEquals(50, below.powerWatts());
        EndPointResult beyond = EndPointFinder.find(hardClipper().subList(4, 7), ONE_PERCENT);
        assertEquals(EndPointOutcome.ALREADY_BEYOND, beyond.outcome());
        assertEquals(54.3739, beyond.powerWatts());
        assertThrows(IllegalArgumentException.class, () -> EndPointFinder.find(List.of(), ONE_PERCENT));
    }

    @Test
    void findsTheOnsetOfClipping() {
        EndPointResult result = EndPointFinder.find(hardClipper(), new EndPoint.ClippingOnset());
        // The first clipped level knows that it lies 0.25 dB over the onset, which places the onset at 0 dB: 50 W.
        assertEquals(50, result.powerWatts(), 1e-9);
    }

    @Test
    void readsAFixedLevelBetweenTwoOthers() {
        EndPointResult result = EndPointFinder.find(hardClipper(), new EndPoint.FixedLevel(-4.5));
        // Halfway in dB is the geometric mean of the powers: closed form.
        assertEquals(Math.sqrt(12.5594 * 25.0594), result.powerWatts(), 1e-9);
        assertEquals(
                EndPointOutcome.NOT_REACHED,
                EndPointFinder.find(hardClipper(), new EndPoint.FixedLevel(3)).outcome());
        assertEquals(
                EndPointOutcome.ALREADY_BEYOND,
                EndPointFinder.find(hardClipper(), new EndPoint.FixedLevel(-30)).outcome());
        assertEquals(
                57.8526,
                EndPointFinder.find(hardClipper(), new EndPoint.FixedLevel(1)).powerWatts());
    }

    @Test
    void supplyVoltsAreThoseOfTheEndPoint() {
        List<AnalyzedLevel> levels = hardClipper();
        EndPointResult result = EndPointFinder.find(levels, ONE_PERCENT);
        double low = levels.get(3).supplyVolts();
        double high = levels.get(4).supplyVolts();
        assertTrue(result.supplyVolts() <= low && result.supplyVolts() >= high, "was " + result.supplyVolts());
        assertTrue(result.supplyAmps().isPresent());
    }

    private static AnalyzedLevel level(double driveDb, double powerWatts, double thdFRatio, double overDb) {
        Clipping clipping = overDb > 0 ? new Clipping(true, overDb, 0.1, overDb, overDb) : Clipping.NONE;
        ChannelAnalysis analysis = new ChannelAnalysis(
                1000,
                Math.sqrt(powerWatts * 4),
                20,
                0,
                3,
                powerWatts,
                Math.sqrt(powerWatts * 4),
                powerWatts,
                thdFRatio,
                thdFRatio / Math.hypot(1, thdFRatio),
                thdFRatio,
                40,
                List.of(),
                clipping,
                Optional.empty(),
                20,
                20_000,
                List.of());
        return new AnalyzedLevel(
                driveDb, 14.4 - driveDb * 0.01, OptionalDouble.of(10 + driveDb), "0", powerWatts, analysis);
    }
}
