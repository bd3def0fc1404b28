// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.ohmstead.model.Cable;
import org.ohmstead.model.Supply;
import org.ohmstead.model.SupplyLimits;

class SupplyNodeTest {
    private static final double CLOSED_FORM = 1e-6;

    private static SupplySource source(double volts, double ohms) {
        return new SupplySource(volts, ohms, OptionalDouble.empty(), false);
    }

    private static SupplySource limited(double volts, double ohms, double limitAmps) {
        return new SupplySource(volts, ohms, OptionalDouble.of(limitAmps), false);
    }

    private static SupplyAnswer.Delivered delivered(SupplyNode node, SupplyDemand demand) {
        return assertInstanceOf(SupplyAnswer.Delivered.class, node.answer(demand));
    }

    @Test
    void feedsAConstantPower() {
        // Closed form V = (V_s + sqrt(V_s^2 - 4 R P)) / 2: 14.4 V, 10 mohm, 600 W.
        SupplyNode node = new SupplyNode(source(14.4, 0), 0.01);
        SupplyAnswer.Delivered answer = delivered(node, new SupplyDemand.ConstantPower(600));
        assertEquals(13.970524, answer.terminalVolts(), CLOSED_FORM);
        assertEquals(42.947565, answer.amps(), CLOSED_FORM);
        assertEquals(5184, node.highestWatts().orElseThrow(), 1e-9);
        assertEquals(600, answer.terminalWatts(), 1e-9);
        assertEquals(14.4 * answer.amps(), 600 + answer.cableWatts() + answer.sourceWatts(), 1e-9);
    }

    @Test
    void agreesWithACircuitSimulator() {
        // ngspice 39, operating point: 14.4 V, 4 mohm, 10 mohm, then a source of current 600 W / v(a) to ground.
        SupplyNode node = new SupplyNode(source(14.4, 0.004), 0.010);
        SupplyAnswer.Delivered power = delivered(node, new SupplyDemand.ConstantPower(600));
        assertEquals(13.79090282138, power.terminalVolts(), 1e-8);
        assertEquals(14.22597223468, power.outputVolts(), 1e-8);
        assertEquals(43.5069413299, power.amps(), 1e-7);
        // ngspice 39: 14.4 V, 20 mohm, a source of current (v(a) - 1.6) / pi to ground.
        SupplyNode thin = new SupplyNode(source(14.4, 0), 0.020);
        SupplyAnswer.Delivered stage = delivered(thin, new SupplyDemand.Stage(Math.PI, 1.6));
        assertEquals(14.31902815193, stage.terminalVolts(), 1e-8);
        assertEquals(4.04859240341, stage.amps(), 1e-8);
    }

    @Test
    void feedsAClassAbBridge() {
        // Closed form V_pk = (V_s - V_sat) / (1 + 2 R_c / (pi R)): 14.4 V, 20 mohm, 2 ohm, 1.6 V.
        SupplyAnswer.Delivered answer =
                delivered(new SupplyNode(source(14.4, 0), 0.02), new SupplyDemand.Stage(Math.PI / 2 * 2, 1.6));
        assertEquals(4.048592, answer.amps(), CLOSED_FORM);
        assertEquals(14.319028, answer.terminalVolts(), CLOSED_FORM);
        double peakVolts = answer.terminalVolts() - 1.6;
        assertEquals(12.719028, peakVolts, CLOSED_FORM);
        assertEquals(40.443419, peakVolts * peakVolts / (2 * 2), CLOSED_FORM);
    }

    @Test
    void refusesMoreThanTheCableCanCarry() {
        // V_s^2 / (4 R) = 5184 W.
        SupplyNode node = new SupplyNode(source(14.4, 0), 0.01);
        SupplyNoSolution none =
                assertInstanceOf(SupplyNoSolution.class, node.answer(new SupplyDemand.ConstantPower(5185)));
        assertTrue(none.reason().contains("5180 W"), none.reason());
        assertTrue(none.remedy().contains("thicker or shorter cable"));
        // Just at the most the terminals have half of the volts.
        assertEquals(7.2, delivered(node, new SupplyDemand.ConstantPower(5184)).terminalVolts(), 1e-6);
        assertInstanceOf(SupplyNoSolution.class, node.answer(new SupplyDemand.ConstantCurrent(1500)));
    }

    @Test
    void saysHowTheSupplyFoldsBack() {
        SupplyNode node = new SupplyNode(limited(14.4, 0.002, 30), 0.008);
        SupplyAnswer.InLimit converter =
                assertInstanceOf(SupplyAnswer.InLimit.class, node.answer(new SupplyDemand.ConstantPower(600)));
        assertTrue(converter.terminalVolts().isEmpty());
        assertTrue(converter.reason().contains("folds back"), converter.reason());
        // I (V - R I) = 30 A x 14.1 V.
        assertEquals(423, converter.highestWatts(), 1e-9);
        delivered(node, new SupplyDemand.ConstantPower(422.9));
        assertInstanceOf(SupplyAnswer.InLimit.class, node.answer(new SupplyDemand.ConstantPower(423.1)));
        // A load of 0.3 ohm holds the volts where its current is the limit: 9 V.
        SupplyAnswer.InLimit resistance =
                assertInstanceOf(SupplyAnswer.InLimit.class, node.answer(new SupplyDemand.Stage(0.3, 0)));
        assertEquals(9, resistance.terminalVolts().orElseThrow(), 1e-9);
        assertInstanceOf(SupplyAnswer.InLimit.class, node.answer(new SupplyDemand.ConstantCurrent(31)));
    }

    @Test
    void neverGivesMoreVoltsForMoreDemand() {
        Random random = new Random(20261126);
        for (int i = 0; i < 2000; i++) {
            SupplyNode node = new SupplyNode(
                    source(9 + 8 * random.nextDouble(), 0.02 * random.nextDouble()), 1e-4 + 0.03 * random.nextDouble());
            double most = node.highestWatts().orElseThrow();
            double watts = most * random.nextDouble();
            SupplyAnswer.Delivered less = delivered(node, new SupplyDemand.ConstantPower(watts * random.nextDouble()));
            SupplyAnswer.Delivered more = delivered(node, new SupplyDemand.ConstantPower(watts));
            assertTrue(more.terminalVolts() <= less.terminalVolts() && more.amps() >= less.amps());
            assertTrue(more.terminalVolts() >= node.source().openVolts() / 2 * (1 - 1e-12));
            double volts = node.source().openVolts();
            assertEquals(watts, volts * more.amps() - node.totalOhms() * more.amps() * more.amps(), 1e-9 * most);
        }
    }

    @Test
    void takesNothingForNothing() {
        SupplyNode stiff = new SupplyNode(source(13.8, 0), 0);
        assertTrue(stiff.highestWatts().isEmpty());
        assertEquals(13.8, delivered(stiff, new SupplyDemand.ConstantPower(0)).terminalVolts(), 0);
        assertEquals(50, delivered(stiff, new SupplyDemand.ConstantPower(690)).amps(), 1e-12);
        assertEquals(0, delivered(stiff, new SupplyDemand.Stage(1, 20)).amps(), 0);
    }

    @Test
    void letsABatterySag() {
        // (12.72 - 12.12) V / 60 A = 10 mohm; at 100 A it sags by 1 V.
        SupplySource battery = new BatteryReading(12.72, 12.12, 60).source();
        assertEquals(0.010, battery.sourceOhms(), 1e-12);
        assertEquals(1, battery.sagVolts(100), 1e-9);
        assertTrue(battery.battery() && battery.limitAmps().isEmpty());
        SupplyAnswer.Delivered answer =
                delivered(new SupplyNode(battery, 0.005), new SupplyDemand.ConstantCurrent(100));
        assertEquals(11.72, answer.outputVolts(), 1e-9);
        assertEquals(11.22, answer.terminalVolts(), 1e-9);
        assertTrue(BatteryReading.note().contains("charge"));
        assertTrue(assertThrows(IllegalArgumentException.class, () -> new BatteryReading(12, 12.5, 10))
                .getMessage()
                .contains("loadedVolts"));
    }

    @Test
    void takesTheBenchAsItIs() {
        Supply bench = new Supply("bench", 0, 16, 60);
        assertEquals(
                60, SupplySource.of(bench, SupplyLimits.NONE, 14.4).limitAmps().orElseThrow(), 0);
        SupplyLimits battery = new SupplyLimits(
                true, OptionalDouble.of(0.008), OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty());
        SupplySource source = SupplySource.of(bench, battery, 12.6);
        assertTrue(source.limitAmps().isEmpty());
        assertEquals(0.008, source.sourceOhms(), 0);
    }

    @Test
    void settlesWithAWarmCable() {
        CableLead lead = CableLead.of(new Cable(10, 10, OptionalDouble.empty()), SupplyLimits.NONE);
        SupplyFeed feed = new SupplyFeed(source(14.4, 0.002), lead);
        SupplyDemand demand = new SupplyDemand.ConstantPower(800);
        SupplyFeed.Warm warm = feed.settled(demand, 1, 25);
        SupplyAnswer.Delivered answer = assertInstanceOf(SupplyAnswer.Delivered.class, warm.answer());
        CableHeating.Settled cable = warm.cable().orElseThrow();
        // Both at once: the current that the warm cable lets through warms it to just that temperature.
        assertEquals(cable.loopOhms(), answer.cableDropVolts() / answer.amps(), 1e-9);
        CableHeating.Settled again = assertInstanceOf(CableHeating.Settled.class, lead.settled(answer.amps(), 25));
        assertEquals(again.conductorCelsius(), cable.conductorCelsius(), 1e-6);
        SupplyAnswer.Delivered cold = assertInstanceOf(SupplyAnswer.Delivered.class, feed.at(demand, 25));
        assertTrue(cold.terminalVolts() > answer.terminalVolts() && cold.amps() < answer.amps());
        assertTrue(feed.settled(demand, SupplyWaveform.RECTIFIED_SINE.rmsRatio(), 25)
                        .cable()
                        .orElseThrow()
                        .conductorCelsius()
                > cable.conductorCelsius());
    }

    @Test
    void saysWhenTheWarmCableCannotCarryIt() {
        CableLead thin = CableLead.of(new Cable(1.5, 10, OptionalDouble.empty()), SupplyLimits.NONE);
        SupplyFeed.Warm warm =
                new SupplyFeed(source(14.4, 0), thin).settled(new SupplyDemand.ConstantPower(440), 1, 25);
        SupplyNoSolution none = assertInstanceOf(SupplyNoSolution.class, warm.answer());
        assertTrue(warm.cable().isEmpty() && none.remedy().contains("thicker"), none.remedy());
    }
}
