// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;

class HeatNetworkTest {
    static HeatNetwork twoDevicesOnOneSink() {
        return devices(1.391304347826087);
    }

    private static HeatNetwork devices(double sinkKelvinPerWatt) {
        return new HeatNetwork.Builder()
                .body("one", 0.8)
                .body("other", 0.8)
                .body("sink", 400)
                .junction("washer")
                .link("one", "washer", 1.5)
                .link("washer", "sink", 0.5)
                .link("other", "sink", 2)
                .toAir("sink", sinkKelvinPerWatt)
                .source("one", "one")
                .source("other", "other")
                .point(point("one"), "one")
                .point(point("other"), "other")
                .point(point("sink"), "sink")
                .point(point("washer"), "washer")
                .build();
    }

    private static HeatPoint point(String name) {
        return new HeatPoint(name, name, OptionalDouble.empty());
    }

    // Ohm's law of heat: two devices of 23 W, 1.5 + 0.5 K/W each, junctions at 150 °C in air of 40 °C need a sink of
    // (110 - 46)/46 K/W.
    @Test
    void settlesByOhmsLawOfHeat() {
        HeatModel model = twoDevicesOnOneSink().model();
        double[] watts = {23, 23};
        assertEquals(150, model.settledCelsius(model.pointIndex("one"), watts, 40), 1e-9);
        assertEquals(150, model.settledCelsius(model.pointIndex("other"), watts, 40), 1e-9);
        assertEquals(104, model.settledCelsius(model.pointIndex("sink"), watts, 40), 1e-9);
        assertEquals(115.5, model.settledCelsius(model.pointIndex("washer"), watts, 40), 1e-9);
    }

    // Conservation of energy: what goes in is either still there or has gone into the air. The outflow is integrated by
    // Simpson's rule.
    @Test
    void keepsTheBalanceOfEnergy() {
        HeatNetwork network = twoDevicesOnOneSink();
        Random random = new Random(3);
        double[] state = network.model().cold();
        double in = 0;
        double out = 0;
        for (int step = 0; step < 40; step++) {
            double[] watts = {60 * random.nextDouble(), 60 * random.nextDouble()};
            double seconds = 30 * random.nextDouble();
            int parts = 200;
            double sum = network.wattsToAir(state, watts);
            for (int i = 1; i <= 2 * parts; i++) {
                network.model().advance(state, watts, seconds / (2 * parts));
                int weight = i == 2 * parts ? 1 : 2 + 2 * (i % 2);
                sum += weight * network.wattsToAir(state, watts);
            }
            in += seconds * (watts[0] + watts[1]);
            out += sum * seconds / (6 * parts);
        }
        assertTrue(out > 0.1 * in, "the test should see heat leave");
        assertEquals(in, out + network.storedJoules(state), 1e-8 * in);
    }

    @Test
    void takesTheTemperaturesOverWhenTheFanIsSwitched() {
        HeatNetwork still = twoDevicesOnOneSink();
        HeatNetwork fan = devices(0.4);
        double[] watts = {23, 23};
        double[] hot = still.model().settled(watts);
        double[] carried = fan.carryFrom(still, hot);
        assertArrayEquals(still.risesKelvin(hot), fan.risesKelvin(carried), 1e-10);
        for (int point = 0; point < 4; point++) {
            assertEquals(
                    still.model().riseKelvin(point, hot, watts), fan.model().riseKelvin(point, carried, watts), 1e-9);
        }
        fan.model().advance(carried, watts, 1e6);
        assertEquals(46 * 0.4, fan.risesKelvin(carried)[2], 1e-9);
    }

    // Reciprocity of a linear network (symmetric conductances): one device warms the other as much as the other way
    // round.
    @Test
    void isReciprocal() {
        HeatModel model = twoDevicesOnOneSink().model();
        for (double seconds : new double[] {1, 20, 300}) {
            double[] one = {1, 0};
            double[] other = {0, 1};
            double[] first = model.cold();
            double[] second = model.cold();
            model.advance(first, one, seconds);
            model.advance(second, other, seconds);
            assertEquals(model.riseKelvin(1, first, one), model.riseKelvin(0, second, other), 1e-12);
        }
    }

    @Test
    void saysWhichNodeHasNoWayToTheAir() {
        HeatNetwork.Builder builder =
                new HeatNetwork.Builder().body("a", 1).body("b", 1).toAir("a", 1);
        IllegalArgumentException thrown = assertThrows(IllegalArgumentException.class, builder::build);
        assertTrue(thrown.getMessage().contains("\"b\""), thrown.getMessage());
    }

    @Test
    void refusesWhatIsThereTwiceOrNotAtAll() {
        HeatNetwork.Builder builder = new HeatNetwork.Builder().body("a", 1);
        assertThrows(IllegalArgumentException.class, () -> builder.body("a", 2));
        assertThrows(IllegalArgumentException.class, () -> builder.link("a", "b", 2));
        assertThrows(IllegalArgumentException.class, () -> builder.link("a", "a", 2));
        assertThrows(IllegalArgumentException.class, () -> builder.toAir("a", -1));
    }

    @Test
    void refusesTimeConstantsTooFarApart() {
        HeatNetwork.Builder builder = new HeatNetwork.Builder()
                .body("tiny", 1e-14)
                .body("huge", 1e9)
                .link("tiny", "huge", 1e-3)
                .toAir("huge", 1e3)
                .source("s", "tiny");
        IllegalArgumentException thrown = assertThrows(IllegalArgumentException.class, builder::build);
        assertTrue(thrown.getMessage().contains("smallest heat capacity"), thrown.getMessage());
    }
}
