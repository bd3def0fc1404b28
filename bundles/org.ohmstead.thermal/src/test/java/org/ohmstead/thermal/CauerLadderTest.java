// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;

class CauerLadderTest {
    private static final double PRINTED = 1e-7;
    private static final double ROUND_TRIP = 1e-9;

    // By hand: Z = 1/(1+s) + 2/(1+10s) = (3+12s)/(1+11s+10s²); divided out gives 5/6, 24/17, 289/54, 27/17.
    @Test
    void turnsAChainOfTwoByTheContinuedFraction() {
        CauerLadder ladder = CauerLadder.of(new FosterChain(List.of(new FosterStage(1, 1), new FosterStage(2, 10))));
        assertEquals(5.0 / 6, ladder.stages().get(0).joulesPerKelvin(), 1e-14);
        assertEquals(24.0 / 17, ladder.stages().get(0).kelvinPerWatt(), 1e-14);
        assertEquals(289.0 / 54, ladder.stages().get(1).joulesPerKelvin(), 1e-14);
        assertEquals(27.0 / 17, ladder.stages().get(1).kelvinPerWatt(), 1e-14);
    }

    // Partial fractions of this ladder's impedance with 30 digits (an independent script).
    @Test
    void turnsALadderOfThreeByItsPoles() {
        FosterChain chain = ladder(new double[] {0.1, 0.5, 1.2}, new double[] {0.3, 0.8, 2.0})
                .fosterChain();
        double[] resistances = {0.0504060469009, 0.202088709493, 1.54750524361};
        double[] taus = {0.0214780183945, 0.340502596634, 3.93801938497};
        for (int i = 0; i < 3; i++) {
            assertEquals(resistances[i], chain.stages().get(i).kelvinPerWatt(), PRINTED * resistances[i]);
            assertEquals(taus[i], chain.stages().get(i).tauSeconds(), PRINTED * taus[i]);
        }
    }

    // Both are the same Z(s): the value at s = 0 and the first term at infinity must agree.
    @Test
    void keepsTheWholeResistanceAndTheFirstCapacity() {
        FosterChain chain = spread(12, 3);
        CauerLadder ladder = CauerLadder.of(chain);
        assertEquals(chain.kelvinPerWatt(), ladder.kelvinPerWatt(), 1e-12 * chain.kelvinPerWatt());
        double first = 1
                / chain.stages().stream()
                        .mapToDouble(stage -> stage.kelvinPerWatt() / stage.tauSeconds())
                        .sum();
        assertEquals(first, ladder.stages().get(0).joulesPerKelvin(), 1e-12 * first);
    }

    @Test
    void comesBackFromLaddersOfUpToTwentyStages() {
        for (int count : new int[] {1, 2, 3, 6, 7, 9, 12, 20}) {
            FosterChain chain = spread(count, count);
            FosterChain back = CauerLadder.of(chain).fosterChain();
            assertEquals(count, back.stages().size());
            for (int i = 0; i < count; i++) {
                FosterStage expected = chain.stages().get(i);
                FosterStage actual = back.stages().get(i);
                assertEquals(expected.tauSeconds(), actual.tauSeconds(), ROUND_TRIP * expected.tauSeconds());
                assertEquals(expected.kelvinPerWatt(), actual.kelvinPerWatt(), ROUND_TRIP * expected.kelvinPerWatt());
            }
        }
    }

    @Test
    void comesBackFromAChain() {
        CauerLadder ladder = ladder(new double[] {0.1, 0.5, 1.2}, new double[] {0.3, 0.8, 2.0});
        CauerLadder back = CauerLadder.of(ladder.fosterChain());
        for (int i = 0; i < 3; i++) {
            CauerStage expected = ladder.stages().get(i);
            assertEquals(expected.kelvinPerWatt(), back.stages().get(i).kelvinPerWatt(), ROUND_TRIP);
            assertEquals(expected.joulesPerKelvin(), back.stages().get(i).joulesPerKelvin(), ROUND_TRIP);
        }
    }

    @Test
    void putsStagesOfOneTimeConstantTogether() {
        CauerLadder ladder = CauerLadder.of(
                new FosterChain(List.of(new FosterStage(1, 5), new FosterStage(2, 5), new FosterStage(1, 5))));
        assertEquals(1, ladder.stages().size());
        assertEquals(4, ladder.kelvinPerWatt(), 1e-14);
        assertEquals(5.0 / 4, ladder.joulesPerKelvin(), 1e-14);
    }

    // The network's eigenvalues come from another algorithm (a symmetric matrix in double precision).
    @Test
    void givesADeviceOnASinkAsTheNetworkOfItsBodies() {
        CauerLadder device = ladder(new double[] {0.2, 0.6}, new double[] {0.02, 0.9});
        CauerLadder sink = ladder(new double[] {0.3, 1.1}, new double[] {40, 300});
        FosterChain chain = device.through(0.5).then(sink).fosterChain();
        HeatNetwork network = new HeatNetwork.Builder()
                .body("fin", 300)
                .toAir("fin", 1.1)
                .ladder("sink", ladder(new double[] {0.3}, new double[] {40}), "fin")
                .ladder("device", device.through(0.5), "sink.1")
                .source("watts", "device.1")
                .point(new HeatPoint("junction", "junction", OptionalDouble.empty()), "device.1")
                .build();
        for (double seconds : new double[] {0.001, 0.1, 1, 10, 100, 1000}) {
            double[] state = network.model().cold();
            network.model().advance(state, new double[] {1}, seconds);
            double rise = network.model().riseKelvin(0, state, new double[] {1});
            assertEquals(rise, chain.kelvinPerWattAfter(seconds), 1e-9 * rise);
        }
        assertEquals(2.7, chain.kelvinPerWatt(), 1e-12);
    }

    @Test
    void refusesAnEmptyLadder() {
        assertThrows(IllegalArgumentException.class, () -> new CauerLadder(List.of()));
    }

    private static CauerLadder ladder(double[] kelvinPerWatt, double[] joulesPerKelvin) {
        List<CauerStage> stages = new ArrayList<>();
        for (int i = 0; i < kelvinPerWatt.length; i++) {
            stages.add(new CauerStage(kelvinPerWatt[i], joulesPerKelvin[i]));
        }
        return new CauerLadder(stages);
    }

    private static FosterChain spread(int count, long seed) {
        Random random = new Random(seed);
        List<FosterStage> stages = new ArrayList<>();
        double tau = 1e-4;
        for (int i = 0; i < count; i++) {
            stages.add(new FosterStage(0.05 + random.nextDouble(), tau));
            tau *= 1.3 + 3 * random.nextDouble();
        }
        return new FosterChain(stages);
    }
}
