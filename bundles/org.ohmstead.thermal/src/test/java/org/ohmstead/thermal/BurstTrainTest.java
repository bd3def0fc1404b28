// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class BurstTrainTest {
    private static final FosterChain CHAIN = new FosterChain(List.of(
            new FosterStage(0.05, 0.002),
            new FosterStage(0.25, 0.05),
            new FosterStage(0.6, 1.5),
            new FosterStage(1.2, 400)));

    private final HeatModel model = CHAIN.model();
    private final BurstTrain train = new BurstTrain(new double[] {1}, 0.02, new double[] {0}, 0.48);

    // Closed form of the pulse train per watt: 0.2084848 at the peak and 0.0683340 at the trough.
    @Test
    void settlesBetweenPeakAndTroughOfTheClosedForm() {
        double[] watts = {0};
        assertEquals(0.2084848, model.riseKelvin(0, train.settledAfterLoud(model), watts), 1e-6);
        assertEquals(0.0683340, model.riseKelvin(0, train.settledBeforeLoud(model), watts), 1e-6);
        HeatPeak peak = train.settledPeak(model, 0);
        assertEquals(0.2084848, peak.riseKelvin(), 1e-6);
        assertEquals(0.02, peak.afterSeconds(), 1e-12);
        assertEquals(0.2084848 - 0.04 * 2.1, train.rippleKelvin(model, 0), 1e-6);
    }

    @Test
    void jumpsOverPeriodsAsIfGoneThroughOneByOne() {
        BurstTrain twoLevels = new BurstTrain(new double[] {30}, 0.5, new double[] {4}, 1.25);
        double[] jumped = {1, 2, 3, 4};
        double[] walked = jumped.clone();
        twoLevels.advance(model, jumped, 1000);
        for (int i = 0; i < 1000; i++) {
            model.advance(walked, twoLevels.loudWatts(), twoLevels.loudSeconds());
            model.advance(walked, twoLevels.quietWatts(), twoLevels.quietSeconds());
        }
        assertArrayEquals(walked, jumped, 1e-9);
    }

    @Test
    void stayAsTheyAreOnceSettled() {
        double[] state = train.settledBeforeLoud(model);
        double[] before = state.clone();
        train.advance(model, state, 7);
        assertArrayEquals(before, state, 1e-15);
    }

    @Test
    void averagesThePowers() {
        BurstTrain uneven = new BurstTrain(new double[] {100, 8}, 1, new double[] {10, 0}, 3);
        assertArrayEquals(new double[] {32.5, 2}, uneven.averageWatts(), 1e-12);
        assertEquals(0.25, uneven.dutyRatio(), 1e-15);
    }

    @Test
    void findsAPeakInTheQuietPart() {
        HeatNetwork network = new HeatNetwork.Builder()
                .body("near", 1)
                .body("far", 1)
                .link("near", "far", 1)
                .toAir("far", 1)
                .source("s", "near")
                .point(new HeatPoint("far", "far place", OptionalDouble.empty()), "far")
                .build();
        BurstTrain sparse = new BurstTrain(new double[] {10}, 0.1, new double[] {0}, 20);
        HeatPeak peak = sparse.settledPeak(network.model(), 0);
        assertTrue(peak.afterSeconds() > 0.1, "it is hottest later than the end of the power");
        double[] state = sparse.settledAfterLoud(network.model());
        double sampled = 0;
        for (int i = 0; i < 2000; i++) {
            network.model().advance(state, new double[] {0}, 0.01);
            sampled = Math.max(sampled, network.model().riseKelvin(0, state, new double[] {0}));
        }
        assertEquals(sampled, peak.riseKelvin(), 1e-4 * sampled);
        assertTrue(peak.riseKelvin() >= sampled);
    }

    @Test
    void refusesUnlikeNumbersOfPowers() {
        assertThrows(IllegalArgumentException.class, () -> new BurstTrain(new double[] {1}, 1, new double[] {1, 2}, 1));
        assertThrows(IllegalArgumentException.class, () -> new BurstTrain(new double[] {1}, 0, new double[] {1}, 1));
    }
}
